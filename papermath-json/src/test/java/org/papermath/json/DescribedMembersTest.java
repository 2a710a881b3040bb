package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.papermath.json.mapping.PlanMembers;
import org.papermath.json.schema.SchemaObject;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Every member of every document is described in its schema, from which the pages of the guide are made: with a
 * meaning,
 * with what holds when it is left out, with its units, and with examples that are read.
 */
class DescribedMembersTest {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final Map<String, JsonNode> ROOTS = new TreeMap<>();

    /** Names that are said elsewhere in the document; an example cannot know them. */
    private static final Set<String> ELSEWHERE = Set.of(
            "order.no-recipe",
            "order.no-piece",
            "order.envelope-in-envelope",
            "piece.no-dryer",
            "builder.twice",
            "furnish.sum",
            "furnish.twice",
            "plan.edition",
            "assumption.unit",
            "assumption.order",
            FaultCodes.NAME,
            FaultCodes.REFERENCE_NONE,
            FaultCodes.REFERENCE_MISSING,
            FaultCodes.REFERENCE_UNREADABLE,
            FaultCodes.ONE_OF);

    static {
        for (String name : PapermathSchemas.names()) {
            ROOTS.put(name, MAPPER.readTree(PapermathSchemas.text(name)));
        }
    }

    /** A schema and its place in its document. */
    private record At(JsonNode root, String where) {
        JsonNode schema() {
            return root.at(where);
        }

        At of(String step) {
            return new At(root, where + "/" + step.replace("~", "~0").replace("/", "~1"));
        }

        /** This schema and those it may be instead; of those that hang on a word, the ones a value has, or all. */
        List<At> parts(JsonNode value) {
            List<At> parts = new ArrayList<>(List.of(this));
            JsonNode schema = schema();
            if (schema.has("$ref")) {
                parts.addAll(new At(root, schema.get("$ref").asString().substring(1)).parts(value));
            }
            for (int i = 0; i < schema.path("anyOf").size(); i++) {
                parts.addAll(of("anyOf").of(Integer.toString(i)).parts(value));
            }
            for (int i = 0; i < schema.path("allOf").size(); i++) {
                At one = of("allOf").of(Integer.toString(i));
                String word = one.schema()
                        .get("if")
                        .get("properties")
                        .propertyNames()
                        .iterator()
                        .next();
                if (value == null
                        || one.schema().at("/if/properties/" + word + "/const").equals(value.path(word))) {
                    parts.addAll(one.of("then").parts(value));
                }
            }
            return parts;
        }

        Map<String, At> members(JsonNode value) {
            Map<String, At> members = new LinkedHashMap<>();
            for (At part : parts(value)) {
                for (String name : part.schema().path("properties").propertyNames()) {
                    if (part.schema().get("properties").get(name).isObject()) {
                        members.put(name, part.of("properties").of(name));
                    }
                }
            }
            return members;
        }

        boolean isLeaf() {
            for (At part : parts(null)) {
                if (part.schema().has("properties") && !isKind(part)
                        || part.schema().has("items") && !part.of("items").isLeaf()) {
                    return false;
                }
            }
            return true;
        }
    }

    private static boolean isKind(At part) {
        String[] steps = part.where().split("/");
        return steps.length > 2
                && steps[1].equals("$defs")
                && part.root().get("$defs").get(steps[2]).has("title")
                && !steps[2].startsWith("reading-of");
    }

    /** A member of a schema. */
    private record Member(String document, At at, boolean required) {
        String description() {
            return at.schema().path("description").asString("");
        }

        boolean isFigure() {
            return at.where()
                            .matches("/properties/("
                                    + String.join("|", PlanMembers.types().keySet())
                                    + ")(/.*)?|/\\$defs/(forecast|not-done|notice)/.*")
                    && document.equals("plan");
        }

        @Override
        public String toString() {
            return document + at.where();
        }
    }

    private static List<Member> members() {
        List<Member> all = new ArrayList<>();
        ROOTS.forEach((name, root) -> {
            Set<String> seen = new TreeSet<>();
            members(name, new At(root, ""), seen, all);
        });
        return all;
    }

    private static void members(String document, At at, Set<String> seen, List<Member> all) {
        for (At part : at.parts(null)) {
            if (!seen.add(part.where())) {
                continue;
            }
            JsonNode schema = part.schema();
            for (String name : schema.path("properties").propertyNames()) {
                if (schema.get("properties").get(name).isObject()) {
                    boolean required = schema.path("required")
                            .valueStream()
                            .anyMatch(one -> one.asString().equals(name));
                    At member = part.of("properties").of(name);
                    all.add(new Member(document, member, required));
                    members(document, member, seen, all);
                }
            }
            if (schema.has("items")) {
                members(document, part.of("items"), seen, all);
            }
        }
    }

    @Test
    void everyMemberHasAMeaningAndAnExample() {
        List<Member> all = members();
        assertThat(all).hasSizeGreaterThan(500);
        for (Member member : all) {
            assertThat(member.description()).as(member.toString()).matches("(?s)[A-Z\"].{3,}[.]");
            if (member.at().isLeaf()) {
                assertThat(member.at().schema().path("examples").size())
                        .as("examples of " + member)
                        .isPositive();
            }
        }
    }

    @Test
    void whatMayBeLeftOutSaysWhatThenHolds() {
        for (Member member : members()) {
            boolean says = member.description().contains(SchemaObject.LEFT_OUT);
            assertThat(says).as(member.toString()).isEqualTo(!member.required() && !member.isFigure());
            if (member.at().schema().has("default")) {
                assertThat(says).as(member.toString()).isTrue();
            }
        }
    }

    @Test
    void everyObjectSaysWhatItIs() {
        for (Member member : members()) {
            for (At part : member.at().parts(null)) {
                At object = part.schema().has("items") ? part.of("items") : part;
                if (object.schema().has("properties")
                        && object.schema().path("type").asString("").equals("object")
                        && !isKind(object)) {
                    // An object whose members follow from a word says it under each word.
                    assertThat(object.schema().has("description")
                                    || object.schema()
                                                    .path("allOf")
                                                    .valueStream()
                                                    .allMatch(one ->
                                                            one.get("then").has("description"))
                                            && object.schema().has("allOf"))
                            .as(object.where())
                            .isTrue();
                }
            }
        }
    }

    @Test
    void everyKindListsItsUnits() {
        Set<String> met = new TreeSet<>();
        ROOTS.values()
                .forEach(root -> root.get("$defs")
                        .forEach(one -> Kinds.all().forEach(kind -> {
                            if (one.path("title").asString("").equals(kind.name())) {
                                assertThat(one.get("description").asString())
                                        .isEqualTo("A number and its unit, one of: " + String.join(", ", kind.codes())
                                                + ".");
                                met.add(kind.name());
                            }
                        })));
        assertThat(met).hasSize(Kinds.all().size());
    }

    /** Documents in which every member stands. */
    private static Map<String, List<JsonNode>> whole() {
        ObjectNode order = (ObjectNode) MAPPER.readTree(Concert.ORDER);
        ((ArrayNode) order.get("recipes")).set(0, inline(Concert.RECIPE)).add(inline(Concert.TIMED));
        order.set("studio", inline(Concert.STUDIO));
        order.withArray("pieces").addAll((ArrayNode) MAPPER.readTree(Concert.SHAPES));
        ((ArrayNode) order.get("studio").get("moulds")).addAll((ArrayNode) MAPPER.readTree(Concert.SHAPED_MOULDS));
        order.set("writtenBy", MAPPER.readTree("{\"program\": \"a test\", \"version\": \"1\"}"));
        ((ObjectNode) order.get("weighedIn")).put("pressure", "98 kPa");
        ObjectNode format = order.deepCopy();
        ((ObjectNode) format.get("pieces").get(1))
                .set(
                        "size",
                        MAPPER.readTree(
                                "{\"name\": \"seat card\","
                                        + " \"system\": \"traditional\", \"use\": \"card\", \"sides\": [\"55 mm\", \"90 mm\"]}"));
        ((ObjectNode) format.get("pieces").get(1)).put("dryer", "box");
        ObjectNode recipe = (ObjectNode) MAPPER.readTree(Concert.RECIPE);
        recipe.set("writtenBy", order.get("writtenBy"));
        ObjectNode studio = (ObjectNode) MAPPER.readTree(Concert.STUDIO);
        studio.set("writtenBy", order.get("writtenBy"));
        studio.withArray("moulds").addAll((ArrayNode) MAPPER.readTree(Concert.SHAPED_MOULDS));
        ((ArrayNode) studio.get("onHand"))
                .addObject()
                .put("ovenDry", "80 g")
                .set("fibre", recipe.get("furnish").get(1).get("fibre"));
        ObjectNode record = (ObjectNode) MAPPER.readTree(Batch.RECORD);
        ((ObjectNode) record.get("recipe").get("furnish").get(1).get("fibre"))
                .putArray("kin")
                .add("straw");
        ArrayNode planned = record.putArray("planned");
        for (Kind<?> kind : Kinds.all()) {
            planned.addObject()
                    .put("figure", kind.name())
                    .put("kind", kind.name())
                    .put("value", "1 " + kind.codes().get(0));
        }
        for (JsonNode one : record.get("measured")) {
            one.forEach(value -> {
                if (value.has("read")) {
                    ((ObjectNode) value).put("on", "2027-03-10");
                }
                if (value.has("temperature")) {
                    ((ObjectNode) value).put("pressure", "98 kPa");
                }
                if (value.has("purpose")) {
                    ((ObjectNode) value).put("active", "50 %");
                }
            });
        }
        Map<String, List<JsonNode>> whole = new LinkedHashMap<>();
        whole.put("order", List.of(order, format, withReferences(order)));
        whole.put("recipe", List.of(recipe, MAPPER.readTree(Concert.TIMED)));
        whole.put("studio", List.of(studio));
        whole.put("record", List.of(record));
        for (String shop : List.of(Shop.PRICES, Shop.QUOTATION)) {
            ObjectNode document = (ObjectNode) MAPPER.readTree(shop);
            document.set("writtenBy", order.get("writtenBy"));
            whole.put(document.get("format").asString().substring("papermath/".length()), List.of(document));
        }
        whole.put("plan", plans(order, format));
        return whole;
    }

    private static JsonNode withReferences(JsonNode order) {
        ObjectNode other = ((ObjectNode) order).deepCopy();
        ((ArrayNode) other.get("recipes")).set(0, MAPPER.readTree("{\"ref\": \"papers/reed.json\"}"));
        other.set("studio", MAPPER.readTree("{\"ref\": \"studio.json\"}"));
        return other;
    }

    /** Plans of all equipment, of as good as none, and of what cannot be mailed. */
    private static List<JsonNode> plans(JsonNode... orders) {
        List<JsonNode> plans = new ArrayList<>();
        for (JsonNode order : orders) {
            plans.add(plan(order));
        }
        ObjectNode bare = (ObjectNode) orders[0].deepCopy();
        ObjectNode studio = (ObjectNode) bare.get("studio");
        studio.remove(List.of("vat", "press", "felts", "dryers", "moulds"));
        bare.get("pieces").forEach(piece -> ((ObjectNode) piece).remove("dryer"));
        bare.remove("due");
        ((ObjectNode) bare.get("pieces").get(0)).put("mailedIn", "United States");
        plans.add(plan(bare));
        plans.add(MAPPER.readTree(Concert.planOfSlowStuff()));
        plans.add(MAPPER.readTree(Concert.planOfTwoColours()));
        return plans;
    }

    private static JsonNode plan(JsonNode order) {
        OrderDocument document = PapermathDocuments.readOrder(order.toString()).value();
        return MAPPER.readTree(
                PapermathDocuments.writePlan(MakingPlan.of(document.order(), document.studio()), "a test", "1"));
    }

    private static JsonNode inline(String document) {
        ObjectNode node = (ObjectNode) MAPPER.readTree(document);
        node.remove("format");
        node.remove("version");
        return node;
    }

    /** A member that is written in a document. */
    private record Written(String document, JsonNode root, String pointer, At at) {
        JsonNode with(JsonNode value) {
            JsonNode copy = root.deepCopy();
            ObjectNode object = (ObjectNode) copy.at(pointer.substring(0, pointer.lastIndexOf('/')));
            String name = pointer.substring(pointer.lastIndexOf('/') + 1);
            if (value == null) {
                object.remove(name);
            } else {
                object.set(name, value);
            }
            return copy;
        }

        @Override
        public String toString() {
            return document + ": " + pointer;
        }
    }

    private static void written(Written at, JsonNode value, List<Written> all, List<String> strange) {
        if (value.isObject()) {
            Map<String, At> members = at.at().members(value);
            for (String name : value.propertyNames()) {
                String pointer = at.pointer() + "/" + name.replace("~", "~0").replace("/", "~1");
                At member = members.get(name);
                if (member != null) {
                    Written one = new Written(at.document(), at.root(), pointer, member);
                    all.add(one);
                    written(one, value.get(name), all, strange);
                } else if (!name.startsWith("x-") && !at.pointer().matches(".*/balances/\\d+/(in|out)")) {
                    strange.add(at.document() + pointer);
                }
            }
        } else if (value.isArray()) {
            for (At part : at.at().parts(value)) {
                if (part.schema().has("items")) {
                    for (int i = 0; i < value.size(); i++) {
                        written(
                                new Written(at.document(), at.root(), at.pointer() + "/" + i, part.of("items")),
                                value.get(i),
                                all,
                                strange);
                    }
                    return;
                }
            }
        }
    }

    private static List<Written> written() {
        List<Written> all = new ArrayList<>();
        List<String> strange = new ArrayList<>();
        whole().forEach((name, documents) -> documents.forEach(document ->
                written(new Written(name, document, "", new At(ROOTS.get(name), "")), document, all, strange)));
        assertThat(strange).as("members without a description").isEmpty();
        return all;
    }

    @Test
    void everyMemberThatIsWrittenIsDescribedAndTheOtherWayRound() {
        Set<String> met = new TreeSet<>();
        written().forEach(one -> met.add(one.document() + one.at().where()));
        // A plan is written whole, without references and without what was only said to be checked.
        assertThat(members())
                .filteredOn(member -> !isKind(member.at()))
                .map(Member::toString)
                .filteredOn(member -> !met.contains(member))
                .allMatch(member -> member.matches("plan/.*/(ref|assumptions/items/properties/unit)"
                        // Those of recipes and assumptions are written elsewhere; of a form nothing is kept.
                        + "|record/(.defs/inline-recipe|properties/assumptions/items)/properties/.*"
                        + "|record/.defs/reading-of-.*/properties/planned"));
    }

    @Test
    void everyExampleIsReadInItsPlace() {
        Set<String> tried = new TreeSet<>();
        for (Written one : written()) {
            if (!tried.add(one.document() + one.at().where())) {
                continue;
            }
            At parent = new At(one.at().root(), one.at().where().replaceAll("/properties/[^/]*$", ""));
            if (parent.schema().has("allOf")) {
                // Other members hang on this word; each of its words stands in the documents themselves.
                continue;
            }
            for (JsonNode example : one.at().schema().path("examples")) {
                JsonNode document = one.with(example);
                assertThat(Judged.schema(one.document()).validate(document))
                        .as(one + " as " + example)
                        .isEmpty();
                assertThat(Judged.faults(one.document(), document.toString()))
                        .filteredOn(fault -> !ELSEWHERE.contains(fault.code()))
                        .filteredOn(fault -> fault.pointer().startsWith(one.pointer()))
                        .as(one + " as " + example)
                        .isEmpty();
            }
        }
        assertThat(tried).hasSizeGreaterThan(300);
    }

    @Test
    void everyFigureOfAPlanIsOfTheKindThatIsSaid() {
        int checked = 0;
        for (Written one : written()) {
            String title = one.at().schema().path("title").asString("");
            for (Kind<?> kind : Kinds.all()) {
                JsonNode value = one.root().at(one.pointer());
                if (title.equals(kind.name()) && one.document().equals("plan")) {
                    kind.read(one.at().schema().get("examples").get(0).asString());
                    kind.read(value.asString());
                    checked++;
                } else if (title.equals("forecast of " + kind.name()) && value.has("likely")) {
                    kind.read(value.get("likely").asString());
                    checked++;
                }
            }
        }
        assertThat(checked).isGreaterThan(200);
    }

    @Test
    void whatIsSaidToStandForAMemberThatIsLeftOutDoes() {
        Set<String> tried = new TreeSet<>();
        for (Written one : written()) {
            JsonNode standsFor = one.at().schema().get("default");
            if (standsFor == null
                    || one.document().equals("plan")
                    // A recipe and a studio are tried by themselves, where nothing else names their parts.
                    || one.at().where().startsWith("/$defs/inline")
                    || !tried.add(one.document() + one.at().where())) {
                continue;
            }
            JsonNode said = MAPPER.readTree(again(one.document(), one.with(standsFor)));
            JsonNode leftOut = MAPPER.readTree(again(one.document(), one.with(null)));
            // What was said is written as it was said, also if it is what would have held without it.
            if (leftOut.at(one.pointer()).isMissingNode()
                    && !said.at(one.pointer()).isMissingNode()) {
                assertThat(said.at(one.pointer())).as(one.toString()).isEqualTo(standsFor);
                said = new Written(one.document(), said, one.pointer(), one.at()).with(null);
            }
            assertThat(said).as(one.toString()).isEqualTo(leftOut);
        }
        assertThat(tried).hasSizeGreaterThan(30);
    }

    private static String again(String name, JsonNode document) {
        String text = document.toString();
        return switch (name) {
            case "order" -> PapermathDocuments.writeOrder(PapermathDocuments.readOrder(text, Concert.FILES));
            case "recipe" -> PapermathDocuments.writeRecipe(PapermathDocuments.readRecipe(text));
            case "studio" -> PapermathDocuments.writeStudio(PapermathDocuments.readStudio(text));
            case "prices" -> PapermathDocuments.writePrices(PapermathDocuments.readPrices(text));
            case "quotation" -> PapermathDocuments.writeQuotation(PapermathDocuments.readQuotation(text));
            default -> PapermathDocuments.writeRecord(PapermathDocuments.readRecord(text));
        };
    }
}
