package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.json.mapping.PlanMembers;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Units;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * The reader and the schemas judge the same documents: good ones, and ones made bad in every place in every way, each
 * way with its name. The schemas are judged by an independent validator.
 */
class SchemaTest {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final boolean FULL = Boolean.getBoolean("papermath.long");

    /** One document that is judged, and how it came about. */
    private record Case(String label, String pointer, JsonNode document) {}

    private static Map<String, List<JsonNode>> good() {
        Map<String, List<JsonNode>> good = new LinkedHashMap<>();
        JsonNode order = MAPPER.readTree(Concert.ORDER);
        ObjectNode whole = (ObjectNode) MAPPER.readTree(Concert.ORDER);
        ((ArrayNode) whole.get("recipes")).set(0, inline(Concert.RECIPE)).add(inline(Concert.TIMED));
        whole.set("studio", inline(Concert.STUDIO));
        whole.withArray("pieces").addAll((ArrayNode) MAPPER.readTree(Concert.SHAPES));
        ((ArrayNode) whole.get("studio").get("moulds")).addAll((ArrayNode) MAPPER.readTree(Concert.SHAPED_MOULDS));
        ObjectNode ream = (ObjectNode) MAPPER.readTree(Concert.ORDER);
        ((ObjectNode) ream.get("pieces").get(0))
                .set(
                        "grammage",
                        MAPPER.readTree("{\"weight\": \"110 lb\", \"sheet\": [\"26 in\", \"40 in\"], \"count\": 500}"));
        OrderDocument concert = Concert.read().value();
        good.put("order", FULL ? List.of(order, whole, ream) : List.of(ream, whole));
        good.put("recipe", List.of(MAPPER.readTree(Concert.RECIPE), MAPPER.readTree(Concert.TIMED)));
        good.put("studio", List.of(MAPPER.readTree(Concert.STUDIO)));
        good.put("record", List.of(MAPPER.readTree(Batch.RECORD)));
        good.put("prices", List.of(MAPPER.readTree(Shop.PRICES)));
        good.put("quotation", List.of(MAPPER.readTree(Shop.QUOTATION)));
        good.put(
                "plan",
                List.of(MAPPER.readTree(PapermathDocuments.writePlan(
                        MakingPlan.of(
                                concert.order().toBuilder()
                                        .recipe(PapermathDocuments.readRecipe(Concert.TIMED)
                                                .value())
                                        .build(),
                                concert.studio()),
                        "a test",
                        "1"))));
        return good;
    }

    private static JsonNode inline(String document) {
        ObjectNode node = (ObjectNode) MAPPER.readTree(document);
        node.remove("format");
        node.remove("version");
        node.remove("writtenBy");
        return node;
    }

    private static List<String> read(String name, JsonNode document) {
        return Judged.faults(name, document.toString()).stream()
                .map(Fault::code)
                .toList();
    }

    private static boolean isValid(String name, JsonNode document) {
        return Judged.schema(name).validate(document).isEmpty();
    }

    static List<String> names() {
        return PapermathSchemas.names();
    }

    @Test
    void aPublishedSchemaLeadsToItsFile() {
        for (String name : PapermathSchemas.names()) {
            String file = name + "-1.0.schema.json";
            assertThat(PapermathSchemas.fileName(name)).isEqualTo(file);
            String alone = "\"$id\": \"urn:papermath:" + name + ":1.0\"";
            assertThat(PapermathSchemas.text(name)).contains(alone);
            assertThat(PapermathSchemas.published(name, ""))
                    .isEqualTo(PapermathSchemas.text(name).replace(alone, "\"$id\": \"" + file + '"'));
            assertThat(PapermathSchemas.published(name, "https://example.org/schemas/"))
                    .contains("\"$id\": \"https://example.org/schemas/" + file + '"');
        }
        for (String base : List.of("https://example.org/schemas", "a b/", "https://example.org/x.html#")) {
            assertThatThrownBy(() -> PapermathSchemas.published("order", base))
                    .as(base)
                    .isInstanceOf(IllegalArgumentException.class);
        }
        assertThatThrownBy(() -> PapermathSchemas.published("felt", "")).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @MethodSource("names")
    void theReaderAndTheSchemaAgree(String name) {
        Map<String, Integer> refused = new TreeMap<>();
        Map<String, Integer> accepted = new TreeMap<>();
        List<String> quarrels = new ArrayList<>();
        Set<String> tried = new HashSet<>();
        for (JsonNode document : good().get(name)) {
            assertThat(read(name, document)).isEmpty();
            assertThat(Judged.schema(name).validate(document)).isEmpty();
            cases(document, one -> {
                // Items of one list are alike: in short runs each way is tried on one of them.
                if (FULL
                        || tried.add(one.label()
                                + one.pointer().replaceAll("/[0-9]+", "/*")
                                + one.document().at(one.pointer()).getNodeType()
                                + one.document().at(one.pointer()).size())) {
                    judge(name, one, refused, accepted, quarrels);
                }
            });
        }
        assertThat(quarrels).isEmpty();
        // Each way of going wrong was tried, and each way of going right.
        assertThat(refused)
                .containsKeys(
                        "a member left out",
                        "a member nobody knows",
                        "null",
                        "a text instead",
                        "a number instead",
                        "a list instead",
                        "an object instead",
                        "true instead");
        assertThat(accepted).containsKeys("a member of others");
        if (!name.equals("plan")) {
            assertThat(refused)
                    .containsKeys(
                            "a text left empty",
                            "no unit",
                            "an unknown unit",
                            "another kind's unit",
                            "a number alone",
                            "a list with one more item");
            assertThat(accepted).containsKeys("value and unit", "blanks around");
        }
    }

    private static void judge(
            String name, Case one, Map<String, Integer> refused, Map<String, Integer> accepted, List<String> quarrels) {
        List<String> codes = read(name, one.document());
        assertThat(FaultCodes.meanings().keySet()).containsAll(codes);
        boolean valid = isValid(name, one.document());
        boolean structural = codes.stream()
                .anyMatch(code -> !FaultCodes.seenByTheReaderOnly().contains(code));
        if (codes.isEmpty() && !valid) {
            quarrels.add(one.label() + " at " + one.pointer() + ": only the reader accepts it: "
                    + Judged.schema(name).validate(one.document()));
        } else if (structural && valid) {
            quarrels.add(one.label() + " at " + one.pointer() + ": only the schema accepts it: " + codes);
        }
        (codes.isEmpty() ? accepted : refused).merge(one.label(), 1, Integer::sum);
    }

    /** Makes every place of a document bad in every way, one at a time. */
    private static void cases(JsonNode document, Consumer<Case> to) {
        List<String> pointers = new ArrayList<>();
        pointers("", document, pointers);
        for (String pointer : pointers) {
            // Deep in the figures of a plan anything may stand; a recipe and a studio are gone through for themselves.
            boolean plan = document.has("batches");
            if (plan && pointer.matches("/(batches|pieces|notices|cautions|sensitivity|assumptionsUsed|toBuy)/.*")
                    || !FULL && pointer.matches(plan ? "/(order|studio)/.*/.*" : "/(studio|recipes/0)/.*/.*")) {
                continue;
            }
            new Place(document, pointer, to).spoil();
        }
    }

    private static void pointers(String pointer, JsonNode node, List<String> into) {
        into.add(pointer);
        if (node.isObject()) {
            node.propertyNames()
                    .forEach(name ->
                            pointers(pointer + "/" + name.replace("~", "~0").replace("/", "~1"), node.get(name), into));
        } else if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                pointers(pointer + "/" + i, node.get(i), into);
            }
        }
    }

    private record Place(JsonNode document, String pointer, Consumer<Case> to) {
        private void with(String label, Consumer<JsonNode> change) {
            JsonNode copy = document.deepCopy();
            change.accept(copy.at(pointer));
            to.accept(new Case(label, pointer, copy));
        }

        private void replaced(String label, JsonNode by) {
            if (pointer.isEmpty()) {
                to.accept(new Case(label, pointer, by));
                return;
            }
            JsonNode copy = document.deepCopy();
            int cut = pointer.lastIndexOf('/');
            JsonNode parent = copy.at(pointer.substring(0, cut));
            String step = pointer.substring(cut + 1).replace("~1", "/").replace("~0", "~");
            if (parent instanceof ObjectNode object) {
                object.set(step, by);
            } else {
                ((ArrayNode) parent).set(Integer.parseInt(step), by);
            }
            to.accept(new Case(label, pointer, copy));
        }

        void spoil() {
            JsonNode node = document.at(pointer);
            replaced("null", NODES.nullNode());
            replaced("a text instead", NODES.stringNode("sometimes"));
            replaced("a number instead", NODES.numberNode(7));
            replaced("a list instead", NODES.arrayNode());
            replaced("an object instead", NODES.objectNode());
            replaced("true instead", NODES.booleanNode(true));
            if (node instanceof ObjectNode object) {
                object.propertyNames().forEach(name -> with("a member left out", at -> ((ObjectNode) at).remove(name)));
                with("a member nobody knows", at -> ((ObjectNode) at).put("nobody", 1));
                with("a member of others", at -> ((ObjectNode) at).put("x-own", 1));
                for (String name : List.of(
                        "envelopeFor",
                        "style",
                        "size",
                        "caliper",
                        "grammage",
                        "low",
                        "subject",
                        "fibre",
                        "ref",
                        "count",
                        "unit")) {
                    with("a member of another object", at -> ((ObjectNode) at).put(name, "x"));
                }
            } else if (node instanceof ArrayNode array) {
                with("a list with one more item", at -> ((ArrayNode) at).add("more"));
                if (!array.isEmpty()) {
                    with(
                            "a list with an item twice",
                            at -> ((ArrayNode) at).add(array.get(0).deepCopy()));
                    with("a list with one item less", at -> ((ArrayNode) at).remove(0));
                }
            } else if (node.isNumber()) {
                for (String number : List.of("-1", "0", "1", "0.5", "2.0", "1e2", "1e9", "1e400", "123456789012")) {
                    replaced("another number", MAPPER.readTree(number));
                }
            } else if (node.isString()) {
                text(node.asString());
            }
        }

        private void text(String text) {
            replaced("a text left empty", NODES.stringNode(" "));
            replaced("a text left empty", NODES.stringNode(""));
            replaced("blanks around", NODES.stringNode("  " + text + "\u2003"));
            replaced("a blank that is none", NODES.stringNode("\u00A0"));
            replaced("a longer text", NODES.stringNode(text + "x"));
            replaced("a very long text", NODES.stringNode(text + " ".repeat(300) + "x".repeat(300)));
            replaced("a control character", NODES.stringNode(text + "\u0007"));
            replaced("capitals", NODES.stringNode(text.toUpperCase(java.util.Locale.ROOT)));
            replaced("another day", NODES.stringNode("2027-02-30"));
            replaced("another day", NODES.stringNode("2027-1-1"));
            replaced("a line break behind", NODES.stringNode(text + "\n"));
            replaced("a line break behind", NODES.stringNode(text + "\r\n"));
            String[] parts = text.split(" ", 2);
            if (parts.length == 2 && parts[0].matches("[0-9.]+")) {
                replaced("no unit", NODES.stringNode(parts[0]));
                replaced("an unknown unit", NODES.stringNode(parts[0] + " furlong"));
                replaced("no blank", NODES.stringNode(parts[0] + parts[1]));
                replaced("a comma", NODES.stringNode(parts[0] + ",5 " + parts[1]));
                replaced("a sign", NODES.stringNode("-" + parts[0] + " " + parts[1]));
                replaced("an exponent", NODES.stringNode("+.5E-1 " + parts[1]));
                replaced("no number", NODES.stringNode("some " + parts[1]));
                replaced("a number alone", NODES.numberNode(Double.parseDouble(parts[0])));
                for (Kind<?> kind : FULL ? Kinds.all() : List.of(Kinds.MASS, Kinds.LENGTH, Kinds.NUMBER)) {
                    for (String code : FULL ? kind.spellings() : kind.codes().subList(0, 1)) {
                        replaced("another kind's unit", NODES.stringNode(parts[0] + " " + code));
                    }
                }
                replaced("a huge number", NODES.stringNode("1e4000 " + parts[1]));
                ObjectNode object = NODES.objectNode().put("value", Double.parseDouble(parts[0]));
                replaced("value alone", object.deepCopy());
                replaced("value and unknown unit", object.deepCopy().put("unit", "furlong"));
                replaced("value and unit", object.deepCopy().put("unit", parts[1]));
                replaced(
                        "a member of others in a quantity",
                        object.deepCopy().put("unit", parts[1]).put("x-own", 1));
            }
        }
    }

    /** Goes through a schema and a document together, or through a schema alone. */
    private static final class Walk {
        private final JsonNode definitions;
        private final Set<String> members = new TreeSet<>();
        private final Map<String, JsonNode> choices = new LinkedHashMap<>();

        Walk(JsonNode schema) {
            definitions = schema.get("$defs");
        }

        /** Kinds are tried one by one elsewhere; readings of all kinds are alike. */
        private static String name(JsonNode schema) {
            String name = schema.get("$ref").asString().substring("#/$defs/".length());
            return name.startsWith("reading-of-") ? "reading" : name;
        }

        private static boolean isKind(String name) {
            return Kinds.all().stream().anyMatch(kind -> slug(kind).equals(name));
        }

        private JsonNode resolved(JsonNode schema) {
            return schema.has("$ref")
                    ? definitions.get(schema.get("$ref").asString().substring("#/$defs/".length()))
                    : schema;
        }

        /** Notes every member the schema knows. */
        void all(JsonNode schema, String at, Set<String> gone) {
            if (schema.has("$ref")) {
                if (!isKind(name(schema)) && gone.add(name(schema))) {
                    all(resolved(schema), name(schema), gone);
                }
                return;
            }
            for (String keyword : List.of("anyOf", "allOf")) {
                for (int i = 0; schema.has(keyword) && i < schema.get(keyword).size(); i++) {
                    all(schema.get(keyword).get(i), at + "/" + i, gone);
                }
            }
            for (String keyword : List.of("then", "items")) {
                if (schema.has(keyword)) {
                    all(schema.get(keyword), at, gone);
                }
            }
            if (schema.has("properties")) {
                schema.get("properties").properties().forEach(one -> {
                    members.add(at + "/" + one.getKey());
                    all(one.getValue(), at + "/" + one.getKey(), gone);
                });
            }
        }

        /** Notes the members of a schema that a document has, and where it chooses among words. */
        void with(JsonNode schema, String at, JsonNode data, String pointer) {
            if (schema.has("$ref")) {
                if (!isKind(name(schema))) {
                    with(resolved(schema), name(schema), data, pointer);
                }
                return;
            }
            for (int i = 0; schema.has("anyOf") && i < schema.get("anyOf").size(); i++) {
                if (fits(schema.get("anyOf").get(i), data)) {
                    with(schema.get("anyOf").get(i), at + "/" + i, data, pointer);
                }
            }
            for (int i = 0; schema.has("allOf") && i < schema.get("allOf").size(); i++) {
                Map.Entry<String, JsonNode> word = schema.get("allOf")
                        .get(i)
                        .get("if")
                        .get("properties")
                        .properties()
                        .iterator()
                        .next();
                if (data.get(word.getKey()).equals(word.getValue().get("const"))) {
                    with(schema.get("allOf").get(i).get("then"), at + "/" + i, data, pointer);
                }
            }
            for (int i = 0; schema.has("items") && i < data.size(); i++) {
                with(schema.get("items"), at, data.get(i), pointer + "/" + i);
            }
            if (schema.has("enum")) {
                choices.put(pointer, schema.get("enum"));
            }
            if (schema.has("properties")) {
                schema.get("properties").properties().stream()
                        .filter(one -> data.has(one.getKey()))
                        .forEach(one -> {
                            members.add(at + "/" + one.getKey());
                            with(
                                    one.getValue(),
                                    at + "/" + one.getKey(),
                                    data.get(one.getKey()),
                                    pointer + "/" + one.getKey());
                        });
            }
        }

        private boolean fits(JsonNode schema, JsonNode data) {
            JsonNode one = resolved(schema);
            String type = one.path("type").asString("");
            boolean right = type.isEmpty()
                    || type.equals("object") && data.isObject()
                    || type.equals("array") && data.isArray()
                    || type.equals("string") && data.isString()
                    || type.equals("number") && data.isNumber();
            for (int i = 0;
                    right && one.has("required") && i < one.get("required").size();
                    i++) {
                right = data.has(one.get("required").get(i).asString());
            }
            return right;
        }
    }

    private static String slug(Kind<?> kind) {
        return kind.name().toLowerCase(java.util.Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    }

    /** Documents that are only there to have every member there is in them. */
    private static List<JsonNode> more(String name) {
        if (name.equals("record")) {
            ObjectNode record = (ObjectNode) MAPPER.readTree(Batch.RECORD);
            ArrayNode planned = record.putArray("planned");
            for (Kind<?> kind : Kinds.all()) {
                planned.addObject()
                        .put("figure", kind.name())
                        .put("kind", kind.name())
                        .put(
                                "value",
                                kind == (Kind<?>) Kinds.TEMPERATURE
                                        ? "300 K"
                                        : "0.25 " + kind.codes().get(0));
            }
            record.get("measured").forEach(one -> {
                if (one.has("additive")) {
                    ((ObjectNode) one.get("additive")).put("active", "40 %");
                }
            });
            ((ObjectNode) record.get("recipe").get("furnish").get(1).get("fibre"))
                    .putArray("kin")
                    .add("straw");
            record.get("measured")
                    .forEach(one -> one.forEach(reading -> {
                        if (reading.has("read")) {
                            ((ObjectNode) reading).set("planned", reading.get("read"));
                        }
                    }));
            record.set("assumptions", MAPPER.readTree(Concert.STUDIO).get("assumptions"));
            ObjectNode ofSheet = record.deepCopy();
            ofSheet.set("recipe", inline(Concert.TIMED));
            ObjectNode whole = record.deepCopy();
            whole.set("recipe", inline(Concert.RECIPE));
            return List.of(record, ofSheet, whole);
        }
        if (name.equals("order")) {
            ObjectNode order = (ObjectNode) MAPPER.readTree(Concert.ORDER);
            ((ObjectNode) order.get("weighedIn")).put("pressure", "100 kPa");
            order.putObject("writtenBy").put("program", "p").put("version", "1");
            ((ObjectNode) order.get("pieces").get(3))
                    .putObject("size")
                    .put("name", "poster")
                    .put("system", "traditional")
                    .put("use", "sheet")
                    .putArray("sides")
                    .add("300 mm")
                    .add("40 cm");
            order.withArray("pieces").addAll((ArrayNode) MAPPER.readTree(Concert.SHAPES));
            return List.of(order);
        }
        if (name.equals("recipe") || name.equals("studio")) {
            ObjectNode one = (ObjectNode) MAPPER.readTree(name.equals("recipe") ? Concert.RECIPE : Concert.STUDIO);
            one.putObject("writtenBy").put("program", "p").put("version", "1");
            if (name.equals("studio")) {
                one.withArray("moulds").addAll((ArrayNode) MAPPER.readTree(Concert.SHAPED_MOULDS));
                one.withArray("onHand")
                        .addObject()
                        .put("ovenDry", "1 g")
                        .putObject("fibre")
                        .put("id", "my-reed")
                        .put("name", "my reed")
                        .put("class", "grass")
                        .putArray("kin")
                        .add("straw");
            }
            return List.of(one);
        }
        if (name.equals("prices") || name.equals("quotation")) {
            ObjectNode one = (ObjectNode) MAPPER.readTree(name.equals("prices") ? Shop.PRICES : Shop.QUOTATION);
            one.putObject("writtenBy").put("program", "p").put("version", "1");
            return List.of(one);
        }
        ObjectNode plan = (ObjectNode) good().get("plan").get(0).deepCopy();
        ObjectNode order = (ObjectNode) more("order").get(0);
        List.of("format", "version", "writtenBy", "studio").forEach(order::remove);
        ((ArrayNode) order.get("recipes")).set(0, MAPPER.readTree("{\"ref\": \"papers/reed.json\"}"));
        ((ArrayNode) order.get("recipes")).add(((ObjectNode) inline(Concert.RECIPE)).put("name", "another"));
        return List.of(
                MAPPER.readTree(Concert.planOfSlowStuff()),
                MAPPER.readTree(Concert.planOfTwoColours()),
                plan.set("order", order),
                plan.deepCopy().set("studio", MAPPER.readTree("{\"ref\": \"studio.json\"}")),
                plan.deepCopy().set("studio", inline(more("studio").get(0).toString())));
    }

    @ParameterizedTest
    @MethodSource("names")
    void theDocumentsTriedHaveEveryMemberOfTheSchema(String name) {
        JsonNode schema = MAPPER.readTree(PapermathSchemas.text(name));
        Walk all = new Walk(schema);
        all.all(schema, "", new HashSet<>());
        Walk tried = new Walk(schema);
        List<JsonNode> documents = new ArrayList<>(good().get(name));
        documents.addAll(more(name));
        for (JsonNode document : documents) {
            assertThat(Judged.schema(name).validate(document)).isEmpty();
            assertThat(read(name, document)).isSubsetOf(FaultCodes.REFERENCE_NONE);
            tried.with(schema, "", document, "");
        }
        // Deep in the figures of a plan anything may stand; that they are what is said of them is tried elsewhere.
        String figures = "/(" + String.join("|", PlanMembers.types().keySet()) + ")/.*";
        if (name.equals("plan")) {
            all.members.removeIf(member -> member.matches(figures));
            tried.members.removeIf(member -> member.matches(figures));
        }
        assertThat(all.members).hasSizeGreaterThan(20);
        assertThat(tried.members).isEqualTo(all.members);
    }

    @ParameterizedTest
    @MethodSource("names")
    void everyWordThatCanBeChosenIsReadAndNoOther(String name) {
        JsonNode schema = MAPPER.readTree(PapermathSchemas.text(name));
        int words = 0;
        for (JsonNode document : good().get(name)) {
            Walk walk = new Walk(schema);
            walk.with(schema, "", document, "");
            for (Map.Entry<String, JsonNode> choice : walk.choices.entrySet()) {
                if (choice.getKey().matches(".*/(what|kind|per)")) {
                    continue;
                }
                for (JsonNode word : choice.getValue()) {
                    JsonNode changed = document.deepCopy();
                    int cut = choice.getKey().lastIndexOf('/');
                    JsonNode holder = changed.at(choice.getKey().substring(0, cut));
                    String at = choice.getKey().substring(cut + 1);
                    if (holder instanceof ArrayNode list) {
                        list.set(Integer.parseInt(at), word);
                    } else {
                        ((ObjectNode) holder).set(at, word);
                    }
                    assertThat(Judged.schema(name).validate(changed)).isEmpty();
                    assertThat(read(name, changed))
                            .as(choice.getKey() + ": " + word)
                            .isSubsetOf(FaultCodes.seenByTheReaderOnly());
                    words++;
                }
            }
        }
        // A quotation has nothing to choose from.
        assertThat(words).isGreaterThan(name.equals("quotation") ? -1 : 3);
    }

    @Test
    void theSamplesOfEveryVersionAreGoodByTheSchema() {
        // Members that have other names now stand in the older ones, and are good as long as they are read.
        VersionsTest.samples().forEach(sample -> {
            String version = (String) sample.get()[0];
            String name = (String) sample.get()[1];
            assertThat(Judged.schema(name).validate(MAPPER.readTree(VersionsTest.text(version, name))))
                    .as(name + " " + version)
                    .isEmpty();
        });
    }

    @Test
    void everySpellingOfEveryUnitIsInThePattern() {
        JsonNode definitions = MAPPER.readTree(PapermathSchemas.text("record")).get("$defs");
        int checked = 0;
        for (Kind<?> kind : Kinds.all()) {
            String pattern = definitions
                    .get(slug(kind))
                    .get("anyOf")
                    .get(0)
                    .get("pattern")
                    .asString();
            TreeSet<String> all = new TreeSet<>();
            Kinds.all().forEach(other -> all.addAll(other.spellings()));
            for (String code : all) {
                for (String text : List.of("1 " + code, "1" + code, " 0.5  " + code + " ", "1e1 " + code)) {
                    boolean read = isRead(kind, text);
                    assertThat(java.util.regex.Pattern.compile(pattern)
                                    .matcher(text)
                                    .find())
                            .as(kind.name() + ": " + text)
                            .isEqualTo(read);
                    checked++;
                }
            }
        }
        assertThat(checked).isGreaterThan(10_000);
    }

    private static boolean isRead(Kind<?> kind, String text) {
        try {
            Units.read(kind, text);
            return true;
        } catch (PapermathException e) {
            return e.code().equals("quantity.range");
        }
    }

    @Test
    void thereIsNoSchemaOfWhatIsNoDocument() {
        assertThatThrownBy(() -> PapermathSchemas.text("pulp"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("order, recipe, studio, record, plan");
    }
}
