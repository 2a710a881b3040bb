package org.papermath.format;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;

/**
 * The reams of the trade: how many sheets they hold, and the quires, bundles and bales that go with them. Two reams are a
 * bundle, ten a bale, where the trade has these; a quire is of 24 sheets, in the long ream of 25.
 *
 * <pre>{@code
 * Ream.SHORT.sheets("2 reams 3 quires 5 sheets"); // 1037
 * Ream.LONG.words(1037); // "2 reams 1 quire 12 sheets"
 * }</pre>
 *
 * @source counts of reams and quires, bundle and bale of the short ream, bundle of the printers' ream: encyclopaedias and
 *     handbooks of the paper trade; mill ream of 18 quires of insides and two of 20 sheets of outsides: Paper and Its Uses
 *     (1914); bundle and bale of the long ream: common practice, no source
 */
public enum Ream {
    /** 472 sheets: 18 quires of 24 good sheets, and a quire of 20 outsides above and below. */
    MILL("mill ream", 472, 24, 40, false),
    /** 480 sheets: 20 quires of 24. Where all are good, a ream of insides. */
    SHORT("short ream", 480, 24, 0, true),
    /** 500 sheets: 20 quires of 25. */
    LONG("long ream", 500, 25, 0, true),
    /** 504 sheets: 21 quires of 24. */
    STATIONERS("stationers' ream", 504, 24, 0, false),
    /** 516 sheets: 21½ quires of 24, also called perfect. */
    PRINTERS("printers' ream", 516, 24, 0, true);

    private static final int REAMS_OF_A_BUNDLE = 2;
    private static final int REAMS_OF_A_BALE = 10;
    private static final int MOST = 1_000_000_000;
    private static final Pattern PART =
            Pattern.compile("(\\d{1,9}|an?)\\s*(bale|bundle|ream|quire|sheet)s?(?:\\s*,\\s*|\\s+and\\s+|\\s+|$)");

    private final String words;
    private final int sheets;
    private final int quire;
    private final int outsides;
    private final boolean bundled;

    Ream(String words, int sheets, int quire, int outsides, boolean bundled) {
        this.words = words;
        this.sheets = sheets;
        this.quire = quire;
        this.outsides = outsides;
        this.bundled = bundled;
    }

    /** {@return its name in the trade, for example {@code short ream}} */
    public String words() {
        return words;
    }

    /** {@return the sheets of the ream} */
    public int sheets() {
        return sheets;
    }

    /** {@return the sheets of a quire of it; in a mill ream of the insides} */
    public int quire() {
        return quire;
    }

    /** {@return the sheets of it that are outsides, made to protect the others; zero but in a mill ream} */
    public int outsides() {
        return outsides;
    }

    /**
     * Returns the reams with a count.
     *
     * @param sheets the sheets of the ream
     * @return the ream of that count
     * @throws Unclear if no ream of the trade has it, with those there are
     */
    public static Ream of(int sheets) {
        return Arrays.stream(values())
                .filter(ream -> ream.sheets == sheets)
                .findFirst()
                .orElseThrow(() -> question("A ream of " + sheets + " sheets is none of those in use."));
    }

    /**
     * Counts the sheets of what is given in the measures of the trade.
     *
     * @param text bales, bundles, reams, quires and sheets, from the largest down, for example
     *     {@code 2 reams 3 quires 5 sheets}; or a number of sheets alone
     * @return the sheets
     * @throws Refused if the text is none, is of more than 1 000 000 000 sheets, or has a measure this ream does not have in
     *     the trade
     */
    public int sheets(String text) {
        Objects.requireNonNull(text, "text");
        String plain = text.strip().toLowerCase(Locale.ROOT);
        long sum = 0;
        long before = Long.MAX_VALUE;
        int at = 0;
        if (plain.matches("\\d{1,9}")) {
            return Integer.parseInt(plain);
        }
        Matcher part = PART.matcher(plain);
        while (at < plain.length()) {
            part.region(at, plain.length());
            if (!part.lookingAt()) {
                throw unreadable(text);
            }
            int each = each(part.group(2));
            if (each >= before) {
                throw unreadable(text);
            }
            before = each;
            sum += (long) each * (part.group(1).startsWith("a") ? 1 : Integer.parseInt(part.group(1)));
            at = part.end();
        }
        if (at == 0 || sum > MOST) {
            throw unreadable(text);
        }
        return (int) sum;
    }

    private int each(String measure) {
        return switch (measure) {
            case "sheet" -> 1;
            case "quire" -> quire;
            case "ream" -> sheets;
            default -> {
                if (!bundled) {
                    throw Refused.of(
                            "ream.no-bundle",
                            measure + ": the trade has none of " + words + "s of " + sheets
                                    + " sheets. Say how many reams it holds.",
                            "found",
                            measure,
                            "sheets",
                            sheets);
                }
                yield sheets * (measure.equals("bale") ? REAMS_OF_A_BALE : REAMS_OF_A_BUNDLE);
            }
        };
    }

    private static Refused unreadable(String text) {
        return Refused.of(
                "ream.unreadable",
                "sheets: \"" + text
                        + "\" is no count of them. Write bales, bundles, reams, quires and sheets, the largest"
                        + " first, such as \"2 reams 3 quires 5 sheets\".",
                "found",
                text);
    }

    /**
     * Says a count of sheets in reams, quires and sheets; {@link #sheets(String)} reads it back.
     *
     * @param count the sheets, zero or more
     * @return for example {@code 2 reams 3 quires 5 sheets}
     * @throws Refused if the count is below zero
     */
    public String words(int count) {
        if (count < 0) {
            throw Refused.of("ream.below-zero", "sheets: " + count + " given; must be 0 or more.", "given", count);
        }
        int rest = count % sheets;
        StringBuilder out = new StringBuilder();
        say(out, count / sheets, "ream");
        say(out, rest / quire, "quire");
        say(out, rest % quire, "sheet");
        return out.length() == 0 ? "0 sheets" : out.toString();
    }

    private static void say(StringBuilder out, int count, String what) {
        if (count > 0) {
            out.append(out.length() == 0 ? "" : " ")
                    .append(count)
                    .append(' ')
                    .append(what)
                    .append(count == 1 ? "" : "s");
        }
    }

    /**
     * Counts the sheets of what is given in the measures of the trade, where no ream is named.
     *
     * @param text as {@link #sheets(String)}
     * @return the sheets, if every ream gives as many
     * @throws Unclear if it hangs on the ream, with what each would give
     * @throws Refused if the text is no count of sheets
     */
    public static int sheetsOfAny(String text) {
        Objects.requireNonNull(text, "text");
        List<Ream> able = Arrays.stream(values())
                .filter(ream -> ream.bundled || !text.toLowerCase(Locale.ROOT).matches(".*(bale|bundle).*"))
                .toList();
        int[] counts =
                able.stream().mapToInt(ream -> ream.sheets(text)).distinct().toArray();
        if (counts.length == 1) {
            return counts[0];
        }
        throw new Unclear(
                "ream.unclear",
                "sheets: \"" + text.strip() + "\" hangs on the ream.",
                able.stream()
                        .map(ream -> new Unclear.Candidate(ream.toString(), ream.sheets(text) + " sheets"))
                        .toList(),
                "found",
                text);
    }

    private static Unclear question(String said) {
        return new Unclear(
                "ream.unclear",
                said,
                Arrays.stream(values())
                        .map(ream -> new Unclear.Candidate(ream.words, ream.sheets + " sheets"))
                        .collect(Collectors.toList()),
                "found",
                said);
    }

    @Override
    public String toString() {
        return words + " of " + sheets;
    }
}
