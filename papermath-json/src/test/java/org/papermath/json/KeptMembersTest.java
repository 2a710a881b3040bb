package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.IntStream;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Reading;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Kinds;
import org.papermath.record.BatchRecord;
import org.papermath.record.Measurement;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Members of others, at every place, stay with the object they were written in. */
class KeptMembersTest {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    /** Puts members of others into every object, before, between and behind its own; they say where they are. */
    private static JsonNode decorated(String pointer, JsonNode node, List<String> into) {
        if (node instanceof ArrayNode array) {
            ArrayNode all = MAPPER.createArrayNode();
            for (int i = 0; i < array.size(); i++) {
                all.add(decorated(pointer + "/" + i, array.get(i), into));
            }
            return all;
        }
        if (!(node instanceof ObjectNode object)) {
            return node;
        }
        ObjectNode all = MAPPER.createObjectNode();
        int number = 0;
        put(all, pointer, number++, into);
        for (String name : object.propertyNames().stream()
                .filter(one -> !one.startsWith("x-"))
                .toList()) {
            all.set(name, decorated(pointer + "/" + name, object.get(name), into));
            put(all, pointer, number++, into);
            if (number == 2) {
                put(all, pointer, number++, into);
            }
        }
        return all;
    }

    private static void put(ObjectNode object, String pointer, int number, List<String> into) {
        String name = "x-" + number;
        object.set(
                name,
                number == 1 ? MAPPER.readTree("[{\"x-deep\": 1.50}, null]") : MAPPER.valueToTree(pointer + "/" + name));
        into.add(pointer + "/" + name);
    }

    private static <T> void keepsAll(
            Document<T> plain, Function<Document<T>, String> write, Function<String, Document<T>> read) {
        List<String> places = new ArrayList<>();
        JsonNode decorated = decorated("", MAPPER.readTree(write.apply(plain)), places);
        Document<T> document = read.apply(decorated.toString());
        assertThat(document.keptMembers()).containsOnlyKeys(places.toArray(String[]::new));
        assertThat(places).hasSizeGreaterThan(20);
        String written = write.apply(document);
        assertThat(MAPPER.readTree(written).toString()).isEqualTo(decorated.toString());
        assertThat(write.apply(read.apply(written))).isEqualTo(written);
        // An edit of something else changes nothing of it.
        assertThat(write.apply(document.with(read.apply(write.apply(plain)).value())))
                .isEqualTo(written);
    }

    @Test
    void everyPlaceOfEveryDocumentKeepsThemInTheirOrder() {
        keepsAll(
                PapermathDocuments.readRecipe(Concert.RECIPE),
                PapermathDocuments::writeRecipe,
                PapermathDocuments::readRecipe);
        keepsAll(
                PapermathDocuments.readStudio(Concert.STUDIO),
                PapermathDocuments::writeStudio,
                PapermathDocuments::readStudio);
        keepsAll(
                PapermathDocuments.readRecord(Batch.RECORD),
                PapermathDocuments::writeRecord,
                PapermathDocuments::readRecord);
        keepsAll(PapermathDocuments.readRecord(Batch.RECORD), RecordLines::line, PapermathDocuments::readRecord);
        keepsAll(
                Concert.read().inlined().writtenBy("p", "1"),
                PapermathDocuments::writeOrder,
                PapermathDocuments::readOrder);
        keepsAll(
                Concert.read().writtenBy("p", "1"),
                PapermathDocuments::writeOrder,
                text -> PapermathDocuments.readOrder(text, Concert.FILES));
        OrderDocument concert = Concert.read().value();
        keepsAll(
                PapermathDocuments.readPlan(
                        PapermathDocuments.writePlan(MakingPlan.of(concert.order(), concert.studio()), "p", "1")),
                PapermathDocuments::writePlan,
                PapermathDocuments::readPlan);
    }

    /** Editors ask for the schema of a document at its head; it is kept where it stands. */
    @Test
    void theSchemaAnEditorIsToldStays() {
        String text = Concert.RECIPE.replaceFirst("\\{", "{\"\\$schema\": \"schemas/recipe.json\",");
        String written = PapermathDocuments.writeRecipe(PapermathDocuments.readRecipe(text));
        assertThat(written.lines().skip(1).findFirst().orElseThrow().strip())
                .isEqualTo("\"$schema\": \"schemas/recipe.json\",");
        assertThat(PapermathDocuments.writeRecipe(PapermathDocuments.readRecipe(written)))
                .isEqualTo(written);
    }

    @Test
    void anObjectThatSaysTheUsualKeepsThem() {
        String order = """
                {"format": "papermath/order", "version": "1.0", "name": "o",
                 "weighedIn": {"temperature": "23 Cel", "humidity": "50 %", "x-a": 1},
                 "recipes": [{"name": "p", "furnish": [
                   {"fibre": {"id": "abaca", "name": "abaca", "class": "leaf", "x-b": 2},
                    "share": "100 %"}]}],
                 "studio": {"name": "s", "moulds": [{"name": "m", "opening": ["30 cm", "40 cm"],
                   "split": {"across": 1, "along": 1, "strip": "0 mm", "x-c": 3}}]},
                 "pieces": [{"name": "a", "count": 1, "recipe": "p", "grammage": "100 g/m2",
                   "size": {"name": "ISO A5", "system": "ISO A", "use": "sheet", "sides": ["148 mm", "210 mm"],
                            "x-d": 4}}]}
                """;
        Document<OrderDocument> read = PapermathDocuments.readOrder(order);
        assertThat(read.keptMembers()).hasSize(4);
        String written = PapermathDocuments.writeOrder(read);
        Document<OrderDocument> again = PapermathDocuments.readOrder(written);
        assertThat(again.keptMembers()).isEqualTo(read.keptMembers());
        assertThat(again.value()).isEqualTo(read.value());
        OrderDocument same = PapermathDocuments.readOrder(order).value();
        assertThat(PapermathDocuments.writeOrder(read.with(same))).isEqualTo(written);
        assertThat(PapermathDocuments.writeOrder(Document.of(same)))
                .doesNotContain("weighedIn", "split", "leaf", "use");

        String record = Batch.RECORD.replace(
                "\"restraint\": \"blotters\"",
                "\"restraint\": {\"name\": \"blotters\","
                        + " \"subject\": \"blotters\", \"heldAlong\": true, \"heldAcross\": true, \"x-d\": 4}");
        Document<BatchRecord> marks = PapermathDocuments.readRecord(record);
        assertThat(PapermathDocuments.readRecord(PapermathDocuments.writeRecord(marks))
                        .keptMembers())
                .isEqualTo(marks.keptMembers())
                .hasSize(4);
    }

    @Test
    void ownValuesInAnyOrderKeepThem() {
        String studio = """
                {"format": "papermath/studio", "version": "1.0", "name": "s", "assumptions": [
                  {"id": "web.solids-pressed", "subject": "reed", "value": 0.38, "x-own": "reed"},
                  {"id": "order.spare-share", "value": "8 %", "x-own": "spare"},
                  {"id": "beating.rate", "fibre": "abaca", "value": "0.2 1/h", "x-own": "rate"},
                  {"id": "web.solids-couched", "at": "here", "value": "12 %", "x-own": "here"}]}
                """;
        Document<Studio> read = PapermathDocuments.readStudio(studio);
        JsonNode written = MAPPER.readTree(PapermathDocuments.writeStudio(read));
        Map<String, String> own = new LinkedHashMap<>();
        written.get("assumptions")
                .forEach(one ->
                        own.put(one.get("id").asString(), one.get("x-own").asString()));
        assertThat(own)
                .containsOnly(
                        Map.entry("web.solids-pressed", "reed"),
                        Map.entry("order.spare-share", "spare"),
                        Map.entry("beating.rate", "rate"),
                        Map.entry("web.solids-couched", "here"));
        assertThat(PapermathDocuments.writeStudio(PapermathDocuments.readStudio(written.toString())))
                .isEqualTo(PapermathDocuments.writeStudio(read));
    }

    @Test
    void aFurnishStaysInTheOrderItWasSaid() {
        Document<Recipe> read = PapermathDocuments.readRecipe("""
                {"format": "papermath/recipe", "version": "1.0", "name": "r", "furnish": [
                 {"fibre": "kozo", "share": "20 %", "x-own": "kozo"},
                 {"fibre": "abaca", "share": "33.3 %", "x-own": "abaca"},
                 {"fibre": "sisal", "share": "46.7 %", "x-own": "sisal"}]}
                """);
        String written = PapermathDocuments.writeRecipe(read);
        JsonNode furnish = MAPPER.readTree(written).get("furnish");
        furnish.forEach(one -> assertThat(one.get("x-own")).isEqualTo(one.get("fibre")));
        assertThat(furnish)
                .hasSize(3)
                .extracting(one -> one.get("share").asString())
                .containsExactly("20 %", "33.3 %", "46.7 %");
        assertThat(PapermathDocuments.readRecipe(written).value()).isEqualTo(read.value());
    }

    private static Document<OrderDocument> pieces(int count) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < count; i++) {
            text.append(i == 0 ? "" : ", ").append("""
                    {"name": "p%d", "x-own": "p%d", "count": %d, "recipe": "r", "size": "ISO A5",
                     "sample": {"size": ["1 cm", "1 cm"], "mass": "1 g", "caliper": "1 mm", "x-in": "p%d"}}
                    """.formatted(i, i, 1 + i % 2, i));
        }
        return PapermathDocuments.readOrder("""
                {"format": "papermath/order", "version": "1.0", "name": "o", "studio": {"name": "s"},
                 "recipes": [{"name": "r", "furnish": [{"fibre": "abaca", "share": "100 %"}]}], "pieces": [PIECES]}
                """.replace("PIECES", text));
    }

    private static Piece piece(String name, int count, Piece like) {
        return Piece.of(name, count, "r")
                .size(like.format().orElseThrow())
                .sample(like.sample().orElseThrow())
                .build();
    }

    private static JsonNode written(Document<OrderDocument> read, List<Piece> pieces) {
        Order old = read.value().order();
        Order.Builder order = Order.of(old.name());
        old.recipes().forEach(order::recipe);
        pieces.forEach(order::piece);
        return MAPPER.readTree(PapermathDocuments.writeOrder(
                        read.with(new OrderDocument(order.build(), read.value().studio()))))
                .get("pieces");
    }

    /** Pieces are taken out, put in, moved and counted anew, as often and wherever. */
    @Property(tries = 300, seed = "20270311")
    void whateverIsDoneToTheListEveryPieceKeepsItsOwn(@ForAll long seed) {
        Random random = new Random(seed);
        Document<OrderDocument> read = pieces(1 + random.nextInt(7));
        List<Piece> pieces = new ArrayList<>(read.value().order().pieces());
        Piece like = pieces.get(0);
        Set<String> old = new HashSet<>(pieces.stream().map(Piece::name).toList());
        for (int edits = 1 + random.nextInt(6); edits > 0; edits--) {
            int at = random.nextInt(pieces.size());
            switch (random.nextInt(4)) {
                case 0 -> {
                    if (pieces.size() > 1) {
                        pieces.remove(at);
                    }
                }
                case 1 -> pieces.add(at, pieces.remove(random.nextInt(pieces.size())));
                case 2 -> pieces.set(at, piece(pieces.get(at).name(), 50 + random.nextInt(9), like));
                default -> {
                    String name = "new" + edits;
                    if (pieces.stream().noneMatch(one -> one.name().equals(name))) {
                        pieces.add(at, piece(name, 7, like));
                    }
                }
            }
        }
        for (JsonNode one : written(read, pieces)) {
            String name = one.get("name").asString();
            if (old.contains(name)) {
                assertThat(one.get("x-own").asString()).isEqualTo(name);
                assertThat(one.get("sample").get("x-in").asString()).isEqualTo(name);
            }
        }
    }

    /** Any of the pieces get new names in their places; what else stands in the list tells which they were. */
    @Property(tries = 200, seed = "20270312")
    void renamedPiecesKeepTheirOwn(@ForAll long seed) {
        Random random = new Random(seed);
        Document<OrderDocument> read = pieces(1 + random.nextInt(7));
        List<Piece> pieces = new ArrayList<>();
        for (Piece one : read.value().order().pieces()) {
            pieces.add(random.nextBoolean() ? one : piece("late " + one.name(), one.count(), one));
        }
        JsonNode written = written(read, pieces);
        for (int i = 0; i < pieces.size(); i++) {
            assertThat(written.get(i).get("x-own").asString()).isEqualTo("p" + i);
        }
    }

    @Example
    void oneRenamedAndOnePutInElsewhereAreToldApart() {
        Document<OrderDocument> read = pieces(4);
        List<Piece> old = read.value().order().pieces();
        JsonNode written = written(
                read,
                List.of(old.get(0), piece("late", 2, old.get(1)), old.get(2), piece("new", 9, old.get(0)), old.get(3)));
        assertThat(written.get(1).get("x-own").asString()).isEqualTo("p1");
        assertThat(written.get(3).has("x-own")).isFalse();
        assertThat(written.get(4).get("x-own").asString()).isEqualTo("p3");
    }

    private static Measurement.NumberRead number(double read) {
        return new Measurement.NumberRead(
                Reading.of(Kinds.TIME.of(2, "h"), Kinds.TIME.of(1, "min")),
                Reading.of(Kinds.SCHOPPER_RIEGLER.of(read, "SR"), Kinds.SCHOPPER_RIEGLER.of(1, "SR")));
    }

    private static JsonNode measured(Document<BatchRecord> read, double... numbers) {
        BatchRecord.Builder record = BatchRecord.builder("r", LocalDate.of(2027, 3, 12));
        for (double one : numbers) {
            record.add(number(one));
        }
        return MAPPER.readTree(PapermathDocuments.writeRecord(read.with(record.build())))
                .get("measured");
    }

    @Example
    void readingsOfOneSortAreKnownByWhatTheySay() {
        BatchRecord.Builder plain = BatchRecord.builder("r", LocalDate.of(2027, 3, 12));
        IntStream.range(0, 4).forEach(i -> plain.add(number(20 + i)));
        ObjectNode text = (ObjectNode) MAPPER.readTree(PapermathDocuments.writeRecord(Document.of(plain.build())));
        text.get("measured")
                .forEach(
                        one -> ((ObjectNode) one).set("x-own", one.get("number").get("read")));
        Document<BatchRecord> read = PapermathDocuments.readRecord(text.toString());

        JsonNode putIn = measured(read, 7, 20, 21, 8, 22, 23);
        assertThat(putIn.get(0).has("x-own")).isFalse();
        assertThat(putIn.get(3).has("x-own")).isFalse();
        JsonNode takenOut = measured(read, 23, 21);
        JsonNode corrected = measured(read, 20, 21.5, 22, 23);
        assertThat(corrected.get(1).get("x-own").asString()).isEqualTo("21 SR");
        for (JsonNode list : List.of(putIn, takenOut)) {
            list.forEach(one -> {
                if (one.has("x-own")) {
                    assertThat(one.get("x-own")).isEqualTo(one.get("number").get("read"));
                }
            });
        }
        assertThat(takenOut.get(0).has("x-own") && takenOut.get(1).has("x-own")).isTrue();
    }

    @Example
    void partsWrittenInFullBringWhatTheirDocumentsHeld() {
        String order = Concert.ORDER.replace(
                "{\"ref\": \"papers/reed.json\"}",
                "{\"x-note\": \"of the order\", \"x-first\": 1, \"ref\": \"papers/reed.json\", \"x-last\": 2}");
        String recipe = Concert.RECIPE.replace(
                "\"version\": \"1.0\",",
                "\"version\": \"1.0\", \"x-head\": 3,"
                        + " \"writtenBy\": {\"program\": \"p\", \"version\": \"1\", \"x-by\": 4},");
        Document<OrderDocument> read = PapermathDocuments.readOrder(
                order, Concert.files(Map.of("papers/reed.json", recipe, "studio.json", Concert.STUDIO)));
        Document<OrderDocument> full = PapermathDocuments.readOrder(PapermathDocuments.writeOrder(read.inlined()));
        assertThat(full.value()).isEqualTo(read.value());
        assertThat(full.references()).isEmpty();
        assertThat(full.keptMembers())
                .containsOnlyKeys(
                        "/pieces/1/x-colour",
                        "/recipes/0/x-head",
                        "/recipes/0/x-note",
                        "/recipes/0/x-first",
                        "/recipes/0/x-last",
                        "/studio/beater/x-built")
                .containsEntry("/recipes/0/x-note", "{\"grown\": [\"behind\", \"the shed\"]}");
    }

    @Example
    void aReferenceStaysOnlyWithThePartItLeadsTo() {
        Document<OrderDocument> read = Concert.read();
        Recipe old = read.value().order().recipes().get(0);
        Recipe other = Recipe.of("plain", old.furnish()).beating(old.beating()).build();
        Order.Builder order = Order.of("o").recipe(other);
        read.value()
                .order()
                .pieces()
                .forEach(one -> order.piece(Piece.of(one.name(), one.count(), "plain")
                        .size(Kinds.LENGTH.of(10, "cm"), Kinds.LENGTH.of(12, "cm"))
                        .grammage(Kinds.GRAMMAGE.of(90, "g/m2"))
                        .build()));
        String written = PapermathDocuments.writeOrder(
                read.with(new OrderDocument(order.build(), read.value().studio())));
        Document<OrderDocument> again = PapermathDocuments.readOrder(written, Concert.FILES);
        assertThat(again.references()).containsOnlyKeys("/studio");
        assertThat(again.value().order().recipes()).containsExactly(other);
    }
}
