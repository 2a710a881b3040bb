package org.papermath.quantity;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Units whose name has more than one meaning; they are asked back with what each would give.
 *
 * @source metric cup 250 mL, tablespoon 15 mL (20 mL in Australia), teaspoon 5 mL: recalled, not looked up; the rest
 *     follows from the table of {@link Units}
 */
final class DoubtfulUnit {
    private static final String[] NUMBERS = {"two", "three", "four"};

    /** What a name may mean: so many of a unit of the table. */
    private record Meaning(String code, int times, String note) {}

    /** The meanings of a name, and the unit they are compared in. */
    private record Doubt(String shownIn, List<Meaning> meanings) {
        /** Whether each meaning is one unit of the table, so that its code says it. */
        boolean ofCodes() {
            return meanings.stream().allMatch(meaning -> meaning.times() == 1);
        }
    }

    private static final Doubt GALLON = volume("gal");
    private static final Doubt QUART = volume("qt");
    private static final Doubt PINT = volume("pt");
    private static final Doubt FLUID_OUNCE = volume("floz");
    private static final Doubt CUP =
            new Doubt("mL", List.of(new Meaning("cup_us", 1, "US cup"), new Meaning("mL", 250, "metric cup")));
    private static final Doubt TABLESPOON = new Doubt(
            "mL",
            List.of(
                    new Meaning("tbsp_us", 1, "US tablespoon"),
                    new Meaning("mL", 15, "metric tablespoon"),
                    new Meaning("mL", 20, "Australian tablespoon")));
    private static final Doubt TEASPOON =
            new Doubt("mL", List.of(new Meaning("tsp_us", 1, "US teaspoon"), new Meaning("mL", 5, "metric teaspoon")));
    private static final Doubt HUNDREDWEIGHT = new Doubt(
            "kg", List.of(new Meaning("cwt_us", 1, "US, 100 lb"), new Meaning("cwt_uk", 1, "imperial, 112 lb")));
    private static final Doubt TON = new Doubt(
            "kg",
            List.of(
                    new Meaning("lb", 2000, "short ton"),
                    new Meaning("t", 1, "metric tonne"),
                    new Meaning("lb", 2240, "long ton")));
    private static final Doubt TON_FORCE = new Doubt(
            "kN",
            List.of(
                    new Meaning("tonf_us", 1, "short ton"),
                    new Meaning("tf", 1, "metric ton"),
                    new Meaning("tonf_uk", 1, "long ton")));
    private static final Doubt POINT = new Doubt(
            "um", List.of(new Meaning("pt_paper", 1, "thickness of paper"), new Meaning("pt_type", 1, "size of type")));

    private static final Map<String, Doubt> OF_VOLUME = Map.ofEntries(
            Map.entry("gal", GALLON),
            Map.entry("gallon", GALLON),
            Map.entry("qt", QUART),
            Map.entry("quart", QUART),
            Map.entry("pt", PINT),
            Map.entry("pint", PINT),
            Map.entry("fl oz", FLUID_OUNCE),
            Map.entry("floz", FLUID_OUNCE),
            Map.entry("fluid ounce", FLUID_OUNCE),
            Map.entry("oz", FLUID_OUNCE),
            Map.entry("ounce", FLUID_OUNCE),
            Map.entry("cup", CUP),
            Map.entry("tbsp", TABLESPOON),
            Map.entry("tablespoon", TABLESPOON),
            Map.entry("tsp", TEASPOON),
            Map.entry("teaspoon", TEASPOON));

    private DoubtfulUnit() {}

    private static Doubt volume(String base) {
        return new Doubt("L", List.of(new Meaning(base + "_us", 1, ""), new Meaning(base + "_uk", 1, "")));
    }

    /** The question a name of a unit raises where a kind is wanted; null if it raises none. */
    static @Nullable PapermathException question(Kind<?> kind, String name) {
        return question(kind, name, null);
    }

    /** The same for a number of the unit: the candidates say what the whole would be. */
    static @Nullable PapermathException question(Kind<?> kind, String name, @Nullable BigDecimal number) {
        String word = UnitWords.plain(name);
        if (kind == Kinds.GRAMMAGE && (word.equals("lb") || word.equals("#") || word.equals("pound"))) {
            return ream(kind, name);
        }
        Doubt doubt = doubt(kind, word);
        if (doubt == null || kind.accepts(name)) {
            return null;
        }
        BigDecimal many = number == null ? BigDecimal.ONE : number;
        List<Unclear.Candidate> candidates = new ArrayList<>();
        for (Meaning meaning : doubt.meanings()) {
            double value = many.multiply(BigDecimal.valueOf(meaning.times())).doubleValue();
            String written = Units.number(value) + " " + meaning.code();
            String gives = kind.of(value, meaning.code()).to(doubt.shownIn()).toString();
            candidates.add(new Unclear.Candidate(
                    number == null && doubt.ofCodes() ? meaning.code() : written,
                    meaning.note().isEmpty() ? gives : meaning.note() + ", " + gives));
        }
        return new Unclear(
                "unit.unclear",
                kind.name() + ": \"" + name + "\" is " + NUMBERS[candidates.size() - 2] + " different units.",
                candidates,
                "quantity",
                kind.name(),
                "found",
                name);
    }

    private static @Nullable Doubt doubt(Kind<?> kind, String word) {
        if (kind == Kinds.VOLUME) {
            return OF_VOLUME.get(word);
        }
        if (kind == Kinds.LENGTH) {
            return word.equals("pt") || word.equals("point") ? POINT : null;
        }
        if (kind == Kinds.MASS && (word.equals("cwt") || word.equals("hundredweight"))) {
            return HUNDREDWEIGHT;
        }
        boolean ton = word.equals("ton") || word.equals("ton-force");
        return ton && kind == Kinds.MASS ? TON : ton && kind == Kinds.FORCE ? TON_FORCE : null;
    }

    private static Unclear ream(Kind<?> kind, String name) {
        return new Unclear(
                "grammage.ream-unclear",
                "grammage: pounds are the weight of a ream, and no ream is named. Give the sheet size"
                        + " and the count of the ream.",
                List.of(
                        new Unclear.Candidate("a ream of 500 sheets 20 x 26 in (cover)", "2.704 g/m² per lb"),
                        new Unclear.Candidate("a ream of 500 sheets 25 x 38 in (text)", "1.48 g/m² per lb"),
                        new Unclear.Candidate("a ream of 500 sheets 17 x 22 in (bond)", "3.76 g/m² per lb")),
                "quantity",
                kind.name(),
                "found",
                name);
    }
}
