package org.papermath.json.benchmark;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.papermath.json.Document;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.json.RecordLines;
import org.papermath.record.BatchRecord;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * Reading and writing an order of 24 pieces with its recipe and its studio, and a record, against Jackson records of
 * the same shape whose quantities are plain numbers, under strict settings: reading at most 1.6 times, writing at most
 * 1.4 times. Each side reads the very text it writes: an order on lines of its own, a record on one line.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 8, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class DocumentBenchmark {
    private static final JsonMapper STRICT = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(SerializationFeature.INDENT_OUTPUT)
            .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
            .build();
    private static final JsonMapper STRICT_LINE =
            STRICT.rebuild().disable(SerializationFeature.INDENT_OUTPUT).build();

    record Share(String fibre, double share) {}

    record Additive(String name, String purpose, double dose) {}

    record Recipe(
            String name,
            List<Share> furnish,
            double beating,
            double drainability,
            List<Additive> additives,
            double vatConsistency) {}

    record Equipment(String name, double trough, double ratedLoad) {}

    record Vat(String name, double volume, double temperature) {}

    record Mould(String name, List<Double> opening) {}

    record Press(String name, double jack, List<Double> platen) {}

    record Felts(List<Double> size, double grammage, int count) {}

    record Dryer(String kind, String name, int capacity) {}

    record Air(double temperature, double humidity) {}

    record Studio(
            String name,
            Equipment beater,
            Vat vat,
            List<Mould> moulds,
            Press press,
            Felts felts,
            List<Dryer> dryers,
            Air room,
            double scaleStep,
            double fineScaleStep,
            double jugStep,
            double workingDay,
            boolean customaryUnits,
            String edition) {}

    record Piece(
            String name,
            int count,
            String recipe,
            List<Double> size,
            double grammage,
            double spare,
            int kept,
            double trim,
            double gap,
            String dryer) {}

    record Order(
            String format,
            String version,
            String name,
            LocalDate due,
            List<Recipe> recipes,
            Studio studio,
            List<Piece> pieces) {}

    record Reading(double read, double error) {}

    record Measured(String what, Reading couched, Reading pressed, Reading ovenDry, Reading width, Reading height) {}

    record Batch(
            String format,
            String version,
            String name,
            LocalDate date,
            String beater,
            String note,
            List<Measured> measured) {}

    private static final String ORDER = """
            {"format": "papermath/order", "version": "1.0", "name": "spring", "due": "2027-04-09",
             "recipes": [{"name": "plain", "furnish": [{"fibre": "abaca", "share": "70 %"},
               {"fibre": "kozo", "share": "30 %"}], "beating": "2.5 h", "drainability": "31 SR",
               "additives": [{"name": "chalk", "purpose": "carbonate", "dose": "3 %"},
                 {"name": "ochre", "purpose": "pigment", "dose": "1.2 %"}], "vatConsistency": "0.4 %"}],
             "studio": {"name": "boat house", "beater": {"name": "big", "trough": "45 L", "ratedLoad": "900 g"},
               "vat": {"name": "oak", "volume": "70 L", "temperature": "24 Cel"},
               "moulds": [{"name": "half", "opening": ["380 mm", "560 mm"]}],
               "press": {"name": "long", "jack": "180 kN", "platen": ["450 mm", "600 mm"]},
               "felts": {"size": ["450 mm", "620 mm"], "grammage": "500 g/m2", "count": 25},
               "dryers": [{"kind": "boards", "name": "boards", "capacity": 24}],
               "room": {"temperature": "18 Cel", "humidity": "58 %"}},
             "pieces": [PIECES]}
            """.replace(
                    "PIECES", IntStream.range(0, 24).mapToObj("""
            {"name": "piece %d", "count": 70, "recipe": "plain", "size": ["148.5 mm", "210.25 mm"],
             "grammage": "130.5 g/m2", "spare": "12 %%", "kept": 2, "trim": "4 mm", "gap": "3 mm", "dryer": "boards"}
            """::formatted).collect(Collectors.joining(",")));
    private static final String RECORD =
            """
            {"format": "papermath/record", "version": "1.0", "name": "reed, second", "date": "2027-03-11",
             "beater": "big beater", "note": "rain", "measured": [MEASURED]}
            """.replace("MEASURED", IntStream.range(0, 8).mapToObj(i -> """
            {"what": "weighed sheet", "couched": {"read": "41.5 g", "error": "0.1 g"},
             "pressed": {"read": "12.4 g", "error": "0.1 g"}, "ovenDry": {"read": "4.13 g", "error": "0.01 g"},
             "width": {"read": "210 mm", "error": "1 mm"}, "height": {"read": "297 mm", "error": "1 mm"}}
            """).collect(Collectors.joining(",")));

    private final Document<OrderDocument> orderRead = PapermathDocuments.readOrder(ORDER);
    private final Document<BatchRecord> recordRead = PapermathDocuments.readRecord(RECORD);
    private final Order plainOrderRead = STRICT.readValue(plain(writeOrder()), Order.class);
    private final Batch plainRecordRead = STRICT.readValue(plain(writeRecord()), Batch.class);
    private final byte[] order = bytes(writeOrder());
    private final byte[] record = bytes(writeRecord());
    private final byte[] plainOrder = bytes(writePlainOrder());
    private final byte[] plainRecord = bytes(writePlainRecord());

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Takes the units away and leaves the numbers. */
    private static String plain(String document) {
        return document.replaceAll("\"([0-9.]+) [A-Za-z0-9%/]+\"", "$1");
    }

    /** Reads an order. */
    @Benchmark
    public Object readOrder() {
        return PapermathDocuments.readOrder(order, "", reference -> {
            throw new IllegalStateException();
        });
    }

    /** Reads plain numbers in the shape of an order. */
    @Benchmark
    public Object readPlainOrder() {
        return STRICT.readValue(plainOrder, Order.class);
    }

    /** Writes an order. */
    @Benchmark
    public String writeOrder() {
        return PapermathDocuments.writeOrder(orderRead);
    }

    /** Writes plain numbers in the shape of an order. */
    @Benchmark
    public String writePlainOrder() {
        return STRICT.writeValueAsString(plainOrderRead);
    }

    /** Reads a record. */
    @Benchmark
    public Object readRecord() {
        return PapermathDocuments.readRecord(record, "");
    }

    /** Reads plain numbers in the shape of a record. */
    @Benchmark
    public Object readPlainRecord() {
        return STRICT.readValue(plainRecord, Batch.class);
    }

    /** Writes a record on one line. */
    @Benchmark
    public String writeRecord() {
        return RecordLines.line(recordRead);
    }

    /** Writes plain numbers in the shape of a record on one line. */
    @Benchmark
    public String writePlainRecord() {
        return STRICT_LINE.writeValueAsString(plainRecordRead);
    }
}
