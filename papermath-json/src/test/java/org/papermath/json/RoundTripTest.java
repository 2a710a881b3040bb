package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import javax.measure.Quantity;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.DirectMeasurements;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.format.Format;
import org.papermath.format.FormatSystem;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.press.Press;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;
import org.papermath.record.BatchRecord;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Read, written and read again, everything is as it was. */
class RoundTripTest {
    private static final String EDITED = """
            {"format": "papermath/order", "version": "1.0", "x-head": 1, "name": "o",
             "recipes": [{"ref": "papers/reed.json", "x-ref": 2},
                         {"name": "plain", "furnish": [{"fibre": "abaca", "share": "100 %"}], "x-plain": 3}],
             "studio": {"ref": "studio.json"},
             "pieces": [
               {"name": "one", "count": 1, "recipe": "reed", "size": "ISO A5", "grammage": "130 g/m2", "x-n": "one"},
               {"name": "two", "count": 2, "recipe": "plain", "size": "ISO A5", "grammage": "130 g/m2", "x-n": "two",
                "x-m": {"deep": [1, {"x-deeper": null}]}},
               {"name": "three", "x-first": true, "count": 3, "recipe": "plain", "size": "ISO A5",
                "sample": {"size": ["1 cm", "1 cm"], "mass": "1 g", "caliper": "1 mm", "x-s": "three"}}]}
            """;

    private static <T> void sameTwice(
            Document<T> read, Function<Document<T>, String> write, Function<String, Document<T>> reading) {
        String written = write.apply(read);
        Document<T> again = reading.apply(written);
        assertThat(again.keptMembers()).isEqualTo(read.keptMembers());
        assertThat(again.references()).isEqualTo(read.references());
        assertThat(again.writtenBy()).isEqualTo(read.writtenBy());
        assertThat(write.apply(again)).isEqualTo(written);
        assertThat(again.value()).isEqualTo(read.value());
    }

    private static String withWriter(String document) {
        return document.replaceFirst(
                "\"version\": \"1.0\",",
                "\"version\": \"1.0\", \"writtenBy\": {\"program\": \"p\", \"version\": \"2\", \"x-by\": [1]},");
    }

    @Test
    void everyDocumentIsTheSame() {
        sameTwice(
                PapermathDocuments.readRecipe(withWriter(Concert.RECIPE)),
                PapermathDocuments::writeRecipe,
                PapermathDocuments::readRecipe);
        sameTwice(
                PapermathDocuments.readStudio(withWriter(Concert.STUDIO)),
                PapermathDocuments::writeStudio,
                PapermathDocuments::readStudio);
        sameTwice(
                PapermathDocuments.readOrder(withWriter(Concert.ORDER), Concert.FILES),
                PapermathDocuments::writeOrder,
                text -> PapermathDocuments.readOrder(text, Concert.FILES));
        sameTwice(
                PapermathDocuments.readRecord(Batch.RECORD),
                PapermathDocuments::writeRecord,
                PapermathDocuments::readRecord);
        OrderDocument concert = Concert.read().value();
        sameTwice(
                PapermathDocuments.readPlan(
                        PapermathDocuments.writePlan(MakingPlan.of(concert.order(), concert.studio()), "p", "1")
                                .replaceFirst("\"code\"", "\"x-in-the-figures\": 1, \"code\"")),
                PapermathDocuments::writePlan,
                PapermathDocuments::readPlan);
    }

    @Test
    void everyUnitOfEveryKindIsTheSame() {
        BatchRecord.Builder record = BatchRecord.builder("units", LocalDate.of(2027, 3, 1));
        int count = 0;
        for (Kind<?> kind : Kinds.all()) {
            for (String code : kind.codes()) {
                record.planned(kind.name() + " in " + code, amount(kind, code));
                count++;
            }
        }
        assertThat(count).isGreaterThan(100);
        BatchRecord units = record.build();
        BatchRecord read = PapermathDocuments.readRecord(PapermathDocuments.writeRecord(Document.of(units)))
                .value();
        assertThat(read).isEqualTo(units);
        read.planned().forEach((name, amount) -> {
            Amount<?> other = units.planned().get(name);
            assertThat(amount.kind()).isSameAs(other.kind());
            assertThat(amount.getUnit()).isEqualTo(other.getUnit());
            assertThat(Double.doubleToLongBits(amount.value())).isEqualTo(Double.doubleToLongBits(other.value()));
        });
    }

    @Test
    void everySpellingInEitherFormIsTheUnitOfItsCode() {
        StringBuilder planned = new StringBuilder();
        Map<String, String> expected = new LinkedHashMap<>();
        for (Kind<?> kind : Kinds.all()) {
            for (String spelling : kind.spellings()) {
                String number = Units.number(amount(kind, spelling).value());
                String code = kind.codes().stream()
                        .filter(one -> kind.unit(one) == kind.unit(spelling))
                        .findFirst()
                        .orElseThrow();
                for (String value : List.of(
                        JsonMapper.shared().writeValueAsString(number + " " + spelling),
                        "{\"value\": " + number + ", \"unit\": "
                                + JsonMapper.shared().writeValueAsString(spelling) + "}")) {
                    String name = "figure " + expected.size();
                    planned.append(expected.isEmpty() ? "" : ", ")
                            .append("{\"figure\": \"" + name + "\", \"kind\": \"" + kind.name() + "\", \"value\": "
                                    + value + "}");
                    expected.put(name, code.equals("1") ? number : number + " " + code);
                }
            }
        }
        Document<BatchRecord> read = PapermathDocuments.readRecord("""
                {"format": "papermath/record", "version": "1.0", "name": "n", "date": "2027-03-11", "planned": [
                """ + planned + "]}");
        String written = PapermathDocuments.writeRecord(read);
        Map<String, String> found = new LinkedHashMap<>();
        JsonMapper.shared()
                .readTree(written)
                .get("planned")
                .forEach(one ->
                        found.put(one.get("figure").asString(), one.get("value").asString()));
        found.forEach((name, value) -> assertThat(value).as(name).isEqualTo(expected.get(name)));
        assertThat(found).hasSameSizeAs(expected).hasSizeGreaterThan(300);
        assertThat(PapermathDocuments.readRecord(written).value()).isEqualTo(read.value());
    }

    @Test
    void theWeightOfAReamIsTheSameGrammageAgain() {
        Document<OrderDocument> read = PapermathDocuments.readOrder(
                Concert.ORDER.replace(
                        "\"130 g/m2\"", "{\"weight\": \"88 lb\", \"sheet\": [\"25 in\", \"38 in\"], \"count\": 500}"),
                Concert.FILES);
        String written = PapermathDocuments.writeOrder(read);
        Document<OrderDocument> again = PapermathDocuments.readOrder(written, Concert.FILES);
        assertThat(again.value()).isEqualTo(read.value());
        assertThat(PapermathDocuments.writeOrder(again)).isEqualTo(written).contains("\"grammage\": \"130.25");
    }

    @Test
    void unitsOfEquipmentStayThoseItWasWrittenIn() {
        String studio = """
                {"format": "papermath/studio", "version": "1.0", "name": "s",
                 "beater": {"name": "b", "trough": "12 gal_us", "ratedLoad": "2 lb"},
                 "vat": {"name": "v", "volume": "20 gal_us", "temperature": "68 degF"},
                 "moulds": [{"name": "m", "opening": ["12 in", "18.5 in"],
                             "split": {"across": 1, "along": 2, "strip": "0.75 in"}}],
                 "press": {"name": "p", "jack": "20 tonf_us", "platen": ["18 in", "24 in"],
                           "parts": [{"name": "bolts", "rating": "9 tf"}], "daylight": "14 in",
                           "ram": {"diameter": "2.5 in", "takenUp": "40 lbf"},
                           "screw": {"lead": "0.5 in", "meanDiameter": "1.5 in", "collar": "2 in", "lever": "4 ft",
                                     "handForce": "50 lbf"}},
                 "felts": {"size": ["20 in", "26 in"], "grammage": "500 g/m2", "thickness": "0.125 in", "count": 30},
                 "dryers": [{"kind": "fan stack", "name": "d", "capacity": 30, "freeAirFlow": "300 ft3/min"}],
                 "room": {"temperature": "70 degF", "humidity": "0.45", "pressure": "1010 hPa"},
                 "onHand": [{"fibre": "abaca", "ovenDry": "3 lb"}], "scaleStep": "0.1 oz"}
                """;
        List<String> stated = new ArrayList<>();
        quantities(JsonMapper.shared().readTree(studio), stated);
        List<String> written = new ArrayList<>();
        quantities(
                JsonMapper.shared().readTree(PapermathDocuments.writeStudio(PapermathDocuments.readStudio(studio))),
                written);
        assertThat(written).containsAll(stated);
        assertThat(stated).hasSize(30);
    }

    private static void quantities(JsonNode node, List<String> into) {
        node.forEach(one -> quantities(one, into));
        if (node.isString() && node.asString().matches("[0-9].*")) {
            into.add(node.asString());
        }
    }

    @Test
    void everyValueOfTheTableCanBeOnesOwn() {
        Assumptions known = Assumptions.standard();
        int count = 0;
        List<Assumption> rows = new ArrayList<>(Assumptions.standard().all());
        rows.addAll(DirectMeasurements.all());
        for (Assumption row : rows) {
            double low = row.low() + 0.3 * (row.likely() - row.low());
            double high = row.high() - 0.3 * (row.high() - row.likely());
            known = known.with(row.with(
                    row.scope(),
                    row.likely() == low ? low : (low + row.likely()) / 2,
                    low,
                    high,
                    Basis.MEASURED_HERE,
                    new Source("a notebook")));
            known = known.with(row.with(
                    Scope.of("my own").on("here " + row.id()),
                    row.likely(),
                    row.likely(),
                    row.likely(),
                    Basis.GIVEN,
                    new Source("a guess")));
            count++;
        }
        Studio studio = Studio.of("s").assumptions(known).build();
        Studio again = PapermathDocuments.readStudio(PapermathDocuments.writeStudio(Document.of(studio)))
                .value();
        assertThat(again.assumptions().own()).isEqualTo(known.own()).hasSizeGreaterThan(count);
        assertThat(again).isEqualTo(studio);
    }

    /** A value with all its digits, somewhere in the range of the kind. */
    private static <Q extends Quantity<Q>> Amount<Q> amount(Kind<Q> kind, String code) {
        double si = Double.isInfinite(kind.highestSi()) ? Math.PI : kind.highestSi() / Math.PI;
        double least = Double.isInfinite(kind.lowestSi()) ? 0 : kind.lowestSi();
        return kind.ofSi(least + (si - least) * 0.7, code);
    }

    @Test
    void anOrderEditedInTheMiddleKeepsWhatIsOfOthersWithItsPieces() {
        Document<OrderDocument> read = PapermathDocuments.readOrder(EDITED, Concert.FILES);
        List<Piece> pieces = read.value().order().pieces();
        Order.Builder edited = Order.of("o");
        edited.piece(pieces.get(2))
                .piece(pieces.get(0))
                .piece(Piece.of("new", 5, "plain")
                        .size(pieces.get(0).format().orElseThrow())
                        .grammage(Kinds.GRAMMAGE.of(90, "g/m2"))
                        .build());
        edited.recipe(read.value().order().recipes().get(1))
                .recipe(read.value().order().recipes().get(0));
        Document<OrderDocument> now =
                read.with(new OrderDocument(edited.build(), read.value().studio()));
        String written = PapermathDocuments.writeOrder(now);
        Document<OrderDocument> again = PapermathDocuments.readOrder(written, Concert.FILES);

        assertThat(again.value()).isEqualTo(now.value());
        assertThat(again.keptMembers())
                .containsOnlyKeys(
                        "/x-head",
                        "/recipes/0/x-plain",
                        "/recipes/1/x-ref",
                        "/pieces/0/x-first",
                        "/pieces/0/sample/x-s",
                        "/pieces/1/x-n")
                .containsEntry("/pieces/1/x-n", "\"one\"")
                .containsEntry("/pieces/0/sample/x-s", "\"three\"");
        assertThat(again.references())
                .containsOnlyKeys("/recipes/1", "/studio")
                .containsEntry("/recipes/1", "papers/reed.json");
        assertThat(PapermathDocuments.writeOrder(again)).isEqualTo(written);
    }

    @Test
    void aPieceUnderANewNameInItsPlaceKeepsWhatIsOfOthers() {
        Document<OrderDocument> read = PapermathDocuments.readOrder(EDITED, Concert.FILES);
        Order order = read.value().order();
        Order.Builder edited = Order.of("o");
        order.recipes().forEach(edited::recipe);
        edited.piece(order.pieces().get(0))
                .piece(Piece.of("second", 2, "plain")
                        .size(order.pieces().get(1).format().orElseThrow())
                        .grammage(Kinds.GRAMMAGE.of(90, "g/m2"))
                        .build())
                .piece(order.pieces().get(2));
        Document<OrderDocument> again = PapermathDocuments.readOrder(
                PapermathDocuments.writeOrder(
                        read.with(new OrderDocument(edited.build(), read.value().studio()))),
                Concert.FILES);
        assertThat(again.keptMembers()).isEqualTo(read.keptMembers());
    }

    @Test
    void twelveFaultsOfAnOrderAreReportedInOneRunEachAtItsPlace() {
        String text = """
                {
                  "format": "papermath/order",
                  "version": "1.0",
                  "name": "",
                  "due": "2027-02-30",
                  "recipes": [
                    {"name": "plain", "furnish": [{"fibre": "abacca", "share": "100 %"}], "beating": "3 moons"},
                    {"name": "mixed", "furnish": [{"fibre": "abaca", "share": "70 %"},
                                                  {"fibre": "kozo", "share": "20 %"}]}
                  ],
                  "studio": {"name": "shed", "press": {"name": "p", "jack": "20 ton", "platen": ["45 cm"]}},
                  "pieces": [
                    {"name": "card", "count": 2.5, "recipe": "plian", "size": "A6", "grammage": 260},
                    {"name": "box", "count": 3, "recipe": "plain", "size": ["10 cm", "12 cm"], "caliper": "0.5 mm",
                     "grammage": "200 g/m2", "colour": "grey"}
                  ]
                }
                """;
        DocumentException all = catchThrowableOfType(DocumentException.class, () -> PapermathDocuments.readOrder(text));
        assertThat(all.faults())
                .extracting(fault -> fault.line() + ":" + fault.column() + " " + fault.code())
                .containsExactly(
                        "4:11 text.blank",
                        "5:10 date.none",
                        "7:45 fibre.unknown",
                        "7:86 unit.unknown",
                        "8:34 furnish.sum",
                        "11:61 unit.unclear",
                        "11:81 list.length",
                        "13:31 number.not-whole",
                        "13:46 order.no-recipe",
                        "13:63 format.unclear",
                        "13:81 quantity.no-unit",
                        "14:5 member.one-of",
                        "15:30 member.unknown");
        assertThat(all.getMessage()).startsWith("13 faults\n  line 4, column 11, /name: the text is empty.");
        assertThat(all.faults()).allSatisfy(fault -> {
            assertThat(fault.text())
                    .endsWith(fault.text().endsWith("?") ? "?" : ".")
                    .doesNotContain("null", "Optional");
            assertThat(fault.pointer()).startsWith("/");
        });
    }

    @Test
    void aPlanWithoutItsWriterIsNotWritten() {
        OrderDocument concert = Concert.read().value();
        Document<PlanDocument> plan = PapermathDocuments.readPlan(
                PapermathDocuments.writePlan(MakingPlan.of(concert.order(), concert.studio()), "p", "1"));
        assertThatThrownBy(() -> PapermathDocuments.writePlan(Document.of(plan.value())))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aFormatOfOnesOwnKeepsItsName() {
        Format own = Format.of(
                "seat card",
                FormatSystem.TRADITIONAL,
                Format.Use.CARD,
                Kinds.LENGTH.of(9, "cm"),
                Kinds.LENGTH.of(2, "in"));
        Document<OrderDocument> read = PapermathDocuments.readOrder(EDITED, Concert.FILES);
        Order.Builder order = Order.of("o")
                .recipe(read.value().order().recipes().get(1))
                .piece(Piece.of("a", 1, "plain")
                        .size(own)
                        .grammage(Kinds.GRAMMAGE.of(90, "g/m2"))
                        .build());
        Document<OrderDocument> document =
                Document.of(new OrderDocument(order.build(), read.value().studio()));
        OrderDocument again = PapermathDocuments.readOrder(PapermathDocuments.writeOrder(document))
                .value();
        assertThat(again).isEqualTo(document.value());
        assertThat(again.order().pieces().get(0).format()).contains(own);
    }

    @Test
    void aPressWithAnotherJackKeepsTheOrderOfItsParts() {
        Studio studio = Studio.of("s")
                .press(Press.of("p", Kinds.FORCE.of(20, "kN"), Kinds.LENGTH.of(40, "cm"), Kinds.LENGTH.of(50, "cm"))
                        .part("frame", Kinds.FORCE.of(18, "kN"))
                        .part("jack", Kinds.FORCE.of(12, "tonf_us")))
                .build();
        Studio again = PapermathDocuments.readStudio(PapermathDocuments.writeStudio(Document.of(studio)))
                .value();
        assertThat(again.press().orElseThrow().parts())
                .isEqualTo(studio.press().orElseThrow().parts());
        assertThat(again).isEqualTo(studio);
    }

    @Test
    void aValueThatCouldNotBeReadAgainIsNotWritten() {
        Assumption known = Assumptions.standard().all().iterator().next();
        Assumption own = new Assumption(
                "house.luck",
                known.scope(),
                "luck",
                1,
                1,
                1,
                known.shape(),
                0,
                2,
                "1",
                known.role(),
                known.basis(),
                known.source());
        Studio studio =
                Studio.of("s").assumptions(Assumptions.standard().with(own)).build();
        assertThatThrownBy(() -> PapermathDocuments.writeStudio(Document.of(studio)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("there is no assumption \"house.luck\" in edition 2026-11");
    }

    @Test
    void aPlanNotesAValueForAThingThatIsNotHere() {
        String studio = Concert.STUDIO.replace(
                "\"subject\": \"reed\", \"at\": \"boards\"", "\"subject\": \"reed\", \"at\": \"bords\"");
        assertThat(studio).isNotEqualTo(Concert.STUDIO);
        assertThat(strangers(Concert.STUDIO)).isEmpty();
        // A value of the blend itself is one for something that is here, used or not.
        assertThat(strangers(Concert.STUDIO.replace(
                        "\"subject\": \"reed\", \"at\": \"boards\"",
                        "\"subject\": \"60 % cotton-rag + 40 % garden-reed\"")))
                .isEmpty();
        assertThat(strangers(studio))
                .containsExactly("the value of web.solids-pressed[reed@bords] is not used:"
                        + " nothing here is called \"bords\". Check the name.");
    }

    private static List<String> strangers(String studio) {
        OrderDocument order = PapermathDocuments.readOrder(
                        Concert.ORDER, Concert.files(Map.of("papers/reed.json", Concert.RECIPE, "studio.json", studio)))
                .value();
        return MakingPlan.of(order.order(), order.studio()).notices().stream()
                .filter(notice -> notice.code().equals("assumption.stranger"))
                .map(Notice::text)
                .toList();
    }
}
