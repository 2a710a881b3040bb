package org.papermath.record;

/** What sheets are called that measure more or less than others, by the name of what was measured. */
record MeasuredWords(String more, String less, boolean isOfFibre) {
    static MeasuredWords of(String what) {
        return switch (what) {
            case "mass", "weight", "grammage" -> new MeasuredWords("heavier", "lighter", true);
            case "thickness", "caliper" -> new MeasuredWords("thicker", "thinner", false);
            case "width", "breadth" -> new MeasuredWords("wider", "narrower", false);
            case "length", "area" -> new MeasuredWords("larger", "smaller", false);
            case "time", "drain time" -> new MeasuredWords("slower", "quicker", false);
            default -> new MeasuredWords("higher", "lower", false);
        };
    }

    /** For example {@code heavier}. */
    String word(double difference) {
        return difference < 0 ? less : more;
    }
}
