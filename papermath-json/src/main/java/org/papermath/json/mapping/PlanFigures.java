package org.papermath.json.mapping;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.json.tree.JsonText;
import org.papermath.json.tree.JsonValue;
import org.papermath.json.tree.ReadableText;
import org.papermath.plan.Stage;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;

/** The sorts of values a plan is written with, and what several of its objects are made of. */
public final class PlanFigures {
    static final Sort<String> TEXT = Sort.of(Map.of(), text -> JsonValue.of(JsonValue.Type.TEXT, text));
    static final Sort<List<String>> TEXTS = several("texts", TEXT);
    static final Sort<Integer> COUNT =
            titled("count", Sort.of(Map.of(), count -> JsonValue.of(JsonValue.Type.NUMBER, Integer.toString(count))));
    private static final Sort<Boolean> YES =
            Sort.of(Map.of(), flag -> JsonValue.of(JsonValue.Type.FLAG, Boolean.toString(flag)));
    static final Sort<Boolean> FLAG = titled("true or false", YES);
    private static final Sort<Amount<?>> AMOUNT = Sort.of(Map.of(), amount -> TEXT.form(JsonText.figure(amount)));
    static final Sort<List<Amount<Length>>> SIDES = several("two sides", set(Kinds.LENGTH));

    public static final Members<Estimate<?>> FORECAST = Members.<Estimate<?>>of(
                    "A forecast: in nine makings of ten it comes out between low and high.")
            .has("likely", AMOUNT, Estimate::likely)
            .says("The likely value.", "130.3 g/m2")
            .has("low", AMOUNT, Estimate::low)
            .says("It is below this in one making of twenty.", "125.6 g/m2")
            .has("high", AMOUNT, Estimate::high)
            .says("It is above this in one making of twenty.", "134.7 g/m2")
            .mayHave("openBelow", YES, one -> present(one.isOpenBelow()))
            .says(
                    "Whether the band has no end below: at one end of an assumption, the result cannot be calculated."
                            + " \"low\" is then the least that could be worked out.",
                    true)
            .mayHave("openAbove", YES, one -> present(one.isOpenAbove()))
            .says(
                    "Whether the band has no end above: at one end of an assumption, the result cannot be calculated."
                            + " \"high\" is then the most that could be worked out.",
                    true)
            .mayHave(
                    "fromMakings",
                    AMOUNT,
                    one -> Optional.of(one.fromMakings())
                            .filter(share -> share > 0)
                            .map(share -> Kinds.NUMBER.ofSi(share, "%")))
            .says(
                    "How much of the squared width of the band is from one making to the next; the rest is what is not"
                            + " known of this studio, and shrinks with records.",
                    "35 %")
            .mayHave("scatter", AMOUNT, one -> one.scatter().map(share -> Kinds.NUMBER.ofSi(share, "%")))
            .says("How far single pieces lie apart, up or down, where it is known.", "8 %");

    public static final Members<Stage<?>> NOT_DONE = Members.<Stage<?>>of("A stage without a result.")
            .has(
                    "notDone",
                    Members.<Stage<?>>of("Why there is none.")
                            .has("code", TEXT, Stage::code)
                            .says("A fixed word for programs.", "no-press")
                            .has("reason", TEXT, Stage::reason)
                            .says(
                                    "A sentence for people.",
                                    "the studio has no press: let the sheets drain, or press them between blotters"),
                    stage -> stage)
            .says("Stands alone, in place of all other members of the stage.");

    public static final Members<Notice> NOTICE = Members.<Notice>of("Something the plan should not be read without.")
            .has("level", TEXT, one -> CommonMembers.word(one.level()))
            .says("\"note\" or \"warning\".", "warning")
            .has("code", TEXT, Notice::code)
            .says("A fixed word for programs.", "mail.old")
            .has("text", TEXT, Notice::text)
            .says(
                    "A sentence for people.",
                    "The limits of United States are of 2014, more than a year before 2027-01-22. Ask the carrier"
                            + " before the pieces are made.");
    /** Notices, whose members stand in one place of the schema. */
    static final Sort<List<Notice>> NOTICES = list(Sort.of(ref("notice"), NOTICE::form));

    private static final Members<Fibre> OWN_FIBRE = Members.<Fibre>of("A fibre of your own.")
            .has("id", TEXT, Fibre::id)
            .says("The id values of your own are kept under.", "garden-reed")
            .has("name", TEXT, one -> ReadableText.name(one.name()))
            .says("What it is called.", "garden reed")
            .has("class", TEXT, one -> CommonMembers.word(one.sourceClass()))
            .says("The part of the plant it comes from.", "grass")
            .mayHave("kin", TEXTS, one -> Optional.of(one.kin()).filter(kin -> !kin.isEmpty()))
            .says("Whose values may stand in for it, the nearest first.", List.of("straw", "kraft"));
    static final Sort<Fibre> FIBRE = Sort.of(
            OWN_FIBRE.schema(), fibre -> Fibres.all().contains(fibre) ? TEXT.form(fibre.id()) : OWN_FIBRE.form(fibre));

    private PlanFigures() {}

    /** A setting, to twelve digits. */
    static <Q extends Quantity<Q>> Sort<Amount<Q>> set(Kind<Q> kind) {
        return titled(kind.name(), Sort.of(Map.of(), AMOUNT::form));
    }

    /** A forecast with its band, and how single pieces scatter, if that is known. */
    static <Q extends Quantity<Q>> Sort<Estimate<Q>> band(Kind<Q> kind) {
        return titled("forecast of " + kind.name(), Sort.of(ref("forecast"), FORECAST::form));
    }

    static <V> Sort<List<V>> list(Sort<V> item) {
        return Sort.of(Map.of("items", item.schema()), all -> items(all, item));
    }

    /** Plain values, of which the title says enough. */
    static <V> Sort<List<V>> several(String title, Sort<V> item) {
        return titled(title, Sort.of(Map.of(), all -> items(all, item)));
    }

    /** Values by names that are free. */
    static <V> Sort<Map<String, V>> named(String title, Sort<V> item) {
        return titled(title, Sort.of(Map.of(), all -> {
            Map<String, JsonValue> values = new LinkedHashMap<>();
            all.forEach((name, value) -> values.put(name, item.form(value)));
            return JsonValue.object(values);
        }));
    }

    /** A stage: its result, or why there is none. */
    static <V> Sort<Stage<V>> stage(Sort<V> done) {
        return Sort.of(
                Map.of("anyOf", List.of(ref("not-done"), done.schema())),
                stage -> stage.optional().map(done::form).orElseGet(() -> NOT_DONE.form(stage)));
    }

    static Optional<Integer> boxed(OptionalInt count) {
        return count.stream().boxed().findFirst();
    }

    private static Optional<Boolean> present(boolean flag) {
        return flag ? Optional.of(true) : Optional.empty();
    }

    private static <V> JsonValue items(List<V> all, Sort<V> item) {
        return JsonValue.list(all.stream().map(item::form).toList());
    }

    private static Map<String, Object> ref(String definition) {
        return Map.of("$ref", "#/$defs/" + definition);
    }

    private static <V> Sort<V> titled(String title, Sort<V> sort) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("title", title);
        schema.putAll(sort.schema());
        return Sort.of(schema, sort::form);
    }
}
