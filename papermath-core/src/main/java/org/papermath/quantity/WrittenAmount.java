package org.papermath.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * Reads amounts as people write them: with fractions, with words for units, in parts of one measure. Numbers stay
 * fractions of whole numbers until the last step.
 */
final class WrittenAmount {
    private static final String SIGNS = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒";
    private static final String[] SIGN_VALUES = {
        "1/2", "1/3", "2/3", "1/4", "3/4", "1/5", "2/5", "3/5", "4/5", "1/6", "5/6", "1/7", "1/8", "3/8", "5/8", "7/8",
        "1/9", "1/10"
    };
    /** A whole number and a fraction, a fraction, or a number with a point; no longer than a person writes. */
    private static final String NUMBER =
            "(?:(\\d{1,9})(?:\\s*-\\s*|\\s+and\\s+|\\s+)(\\d{1,4})\\s*/\\s*(\\d{1,4})|(\\d{1,9})\\s*/\\s*(\\d{1,4})"
                    + "|((?:\\d{1,18}(?:\\.\\d{0,30})?|\\.\\d{1,30})(?:[eE][+-]?\\d{1,3})?))(?![\\d.,]|/\\s*\\d)";

    private static final Pattern ONE = Pattern.compile("([+-]?)\\s*" + NUMBER + "\\s*(.*)");
    private static final Pattern PART = Pattern.compile(
            NUMBER + "\\s*([A-Za-z_.'\"]+(?:\\s+(?!and\\s)[A-Za-z_.]+)*?)?(?:\\s*,\\s*|\\s+and\\s+|\\s*(?=[\\d.]|$))");
    private static final Pattern COMMA = Pattern.compile("([+-]?\\d+),(\\d+)\\s*(\\D.*)?");

    private static final String SIMPLE = "[+-]?(?:\\d+(?:\\.\\d+)?|\\d+ \\d+/\\d+|\\d+/\\d+)";
    private static final Pattern SIDES =
            Pattern.compile(SIMPLE + "[^\\dx×]{0,8}(?:x|×|by)\\s*" + SIMPLE + "(?:\\D.*)?");
    private static final Pattern RANGE =
            Pattern.compile("\\d+(?:\\.\\d+)?[^\\d/eE]{0,8}?(?:-|–|—|\\bto\\b)\\s*\\d+(?:\\.\\d+)?(?:[^\\d./,].*)?");

    /** A number as a fraction, and the unit behind it. */
    private record Part(BigInteger over, BigInteger under, String unit) {}

    private WrittenAmount() {}

    /** The amount a text means; null if it is none of those this class knows. */
    static <Q extends Quantity<Q>> @Nullable Amount<Q> read(Kind<Q> kind, String text) {
        Amount<Q> perCent = PerCentBasis.read(kind, text);
        if (perCent != null) {
            return perCent;
        }
        String whole = tidy(text);
        refuseTwo(kind, text.strip(), whole);
        Matcher comma = COMMA.matcher(whole);
        if (comma.matches()) {
            return withComma(kind, text.strip(), comma);
        }
        Matcher one = ONE.matcher(whole);
        if (!one.matches()) {
            return null;
        }
        Part part = part(kind, text.strip(), one, 2, one.group(8));
        boolean negative = one.group(1).equals("-");
        UnitWords.Meant meant = part.unit().isEmpty() ? plainNumber(kind) : UnitWords.meant(kind, part.unit());
        if (meant != null) {
            return kind.of(number(part, meant.times(), negative), meant.symbol());
        }
        PapermathException question = DoubtfulUnit.question(kind, part.unit(), decimal(part, negative));
        if (question != null) {
            throw question;
        }
        return inParts(kind, text.strip(), whole.substring(one.end(1)).strip(), negative);
    }

    private static void refuseTwo(Kind<?> kind, String text, String whole) {
        boolean sides = SIDES.matcher(whole).matches();
        if (sides || RANGE.matcher(whole).matches()) {
            throw Refused.of(
                    "quantity.unreadable-number",
                    kind.name() + ": \"" + text + "\" has two numbers where one is read. "
                            + (sides
                                    ? "Give each side by itself, with its unit."
                                    : "Give the least and the most each by itself, with its unit."),
                    "quantity",
                    kind.name(),
                    "found",
                    text,
                    "accepted",
                    kind.accepted());
        }
    }

    /** The same characters for the same signs: blanks, minus, primes, the bar of a fraction. */
    private static String tidy(String text) {
        StringBuilder out = new StringBuilder();
        String same = text.replaceAll("[\\u00A0\\u2007\\u2009\\u202F]", " ")
                .strip()
                .replace('\u2212', '-')
                .replace('\u2044', '/')
                .replaceAll("''|[\\u2033\\u201C\\u201D]", "\"")
                .replaceAll("[\\u2032\\u2018\\u2019]", "'");
        for (int at = 0; at < same.length(); at++) {
            int sign = SIGNS.indexOf(same.charAt(at));
            if (sign < 0) {
                out.append(same.charAt(at));
                continue;
            }
            if (out.length() > 0 && Character.isDigit(out.charAt(out.length() - 1))) {
                out.append(' ');
            }
            out.append(SIGN_VALUES[sign]);
        }
        return out.toString();
    }

    private static UnitWords.@Nullable Meant plainNumber(Kind<?> kind) {
        Units.Symbol symbol = kind.symbolOfText("1");
        return symbol == null ? null : new UnitWords.Meant(symbol, 1);
    }

    private static Part part(Kind<?> kind, String text, Matcher found, int first, @Nullable String unit) {
        String behind = unit == null ? "" : unit.strip();
        String point = found.group(first + 5);
        if (point != null) {
            BigDecimal given = new BigDecimal(point);
            BigDecimal value = given.scale() < 0 ? given.setScale(0) : given;
            return new Part(value.unscaledValue(), BigInteger.TEN.pow(value.scale()), behind);
        }
        boolean mixed = found.group(first) != null;
        BigInteger over = new BigInteger(found.group(first + (mixed ? 1 : 3)));
        BigInteger under = new BigInteger(found.group(first + (mixed ? 2 : 4)));
        if (under.signum() == 0 || (mixed && over.compareTo(under) >= 0)) {
            throw Refused.of(
                    "quantity.fraction",
                    kind.name() + ": \"" + text + "\" has a fraction that is none. "
                            + (under.signum() == 0
                                    ? "Nothing is divided by 0; check the number below the bar."
                                    : "Behind a whole number it must be less than one, as in 5 1/2."),
                    "quantity",
                    kind.name(),
                    "found",
                    text);
        }
        if (mixed) {
            return new Part(new BigInteger(found.group(first)).multiply(under).add(over), under, behind);
        }
        if (over.compareTo(under) > 0) {
            askWhereABlankMayBeMissing(kind, text, found.group(first + 3), under, behind);
        }
        return new Part(over, under, behind);
    }

    /** Nobody writes 25 1/2 as 51/2, but many write 5 1/2 so. */
    private static void askWhereABlankMayBeMissing(
            Kind<?> kind, String text, String over, BigInteger under, String unit) {
        List<Unclear.Candidate> candidates = new ArrayList<>();
        candidates.add(candidate(new BigInteger(over), under, unit));
        for (int at = 1; at < over.length(); at++) {
            BigInteger rest = new BigInteger(over.substring(at));
            if (over.charAt(at) != '0' && rest.compareTo(under) < 0) {
                BigInteger front = new BigInteger(over.substring(0, at));
                Unclear.Candidate split = candidate(front.multiply(under).add(rest), under, unit);
                candidates.add(new Unclear.Candidate(
                        (front + " " + rest + "/" + under + " " + unit).strip(), split.meaning()));
            }
        }
        if (candidates.size() > 1) {
            Unclear.Candidate plain = candidates.get(0);
            candidates.set(0, new Unclear.Candidate(plain.meaning(), over + " over " + under));
            throw new Unclear(
                    "quantity.fraction-unclear",
                    kind.name() + ": \"" + text + "\" may lack a blank.",
                    candidates,
                    "quantity",
                    kind.name(),
                    "found",
                    text);
        }
    }

    private static Unclear.Candidate candidate(BigInteger over, BigInteger under, String unit) {
        return new Unclear.Candidate((Units.number(nearest(over, under)) + " " + unit).strip(), "");
    }

    private static <Q extends Quantity<Q>> @Nullable Amount<Q> withComma(Kind<Q> kind, String text, Matcher found) {
        String unit = found.group(3) == null ? "" : found.group(3);
        String point = found.group(1) + "." + found.group(2);
        if (found.group(2).length() == 3 && found.group(1).matches("[+-]?[1-9]\\d{0,2}")) {
            String none = found.group(1) + found.group(2);
            if (unit.isEmpty() ? kind.accepts("1") : UnitWords.meant(kind, unit) != null) {
                throw new Unclear(
                        "quantity.comma-unclear",
                        kind.name() + ": \"" + text + "\" has a comma, which parts thousands in some places and is the"
                                + " decimal sign in others.",
                        List.of(
                                new Unclear.Candidate((point + " " + unit).strip(), "the comma is the decimal sign"),
                                new Unclear.Candidate((none + " " + unit).strip(), "the comma parts thousands")),
                        "quantity",
                        kind.name(),
                        "found",
                        text);
            }
        }
        return null;
    }

    private static <Q extends Quantity<Q>> @Nullable Amount<Q> inParts(
            Kind<Q> kind, String text, String whole, boolean negative) {
        List<Part> parts = new ArrayList<>();
        Matcher found = PART.matcher(whole);
        int at = 0;
        while (at < whole.length()) {
            found.region(at, whole.length());
            if (!found.lookingAt() || found.end() == at) {
                return null;
            }
            boolean power = at > 0 && Character.isLetter(whole.charAt(at - 1)) && whole.charAt(at - 1) != 'h';
            if (power && found.group(7) == null) {
                // "1 ft2" is no foot and two inches.
                return null;
            }
            parts.add(part(kind, text, found, 1, found.group(7)));
            at = found.end();
        }
        if (parts.size() < 2) {
            return null;
        }
        List<UnitWords.Meant> units = new ArrayList<>();
        for (Part part : parts) {
            UnitWords.Meant meant =
                    part.unit().isEmpty() ? understood(kind, units) : UnitWords.meant(kind, part.unit());
            if (meant == null) {
                PapermathException question = DoubtfulUnit.question(kind, part.unit(), decimal(part, negative));
                if (question != null) {
                    throw question;
                }
                return null;
            }
            units.add(meant);
        }
        return sum(kind, text, parts, units, negative);
    }

    /** Behind feet a bare number is of inches, behind hours of minutes. */
    private static UnitWords.@Nullable Meant understood(Kind<?> kind, List<UnitWords.Meant> before) {
        if (before.size() != 1) {
            return null;
        }
        return switch (before.get(0).symbol().code()) {
            case "ft" -> UnitWords.meant(kind, "in");
            case "h" -> UnitWords.meant(kind, "min");
            default -> null;
        };
    }

    private static <Q extends Quantity<Q>> Amount<Q> sum(
            Kind<Q> kind, String text, List<Part> parts, List<UnitWords.Meant> units, boolean negative) {
        BigInteger over = BigInteger.ZERO;
        BigInteger under = BigInteger.ONE;
        for (int i = 0; i < parts.size(); i++) {
            Part part = parts.get(i);
            if (i > 0) {
                int each = wholeNumber(units.get(i - 1), units.get(i));
                if (each < 2 || part.over().compareTo(part.under().multiply(BigInteger.valueOf(each))) >= 0) {
                    throw wrongParts(kind, text, units.get(i - 1), units.get(i), each);
                }
                over = over.multiply(BigInteger.valueOf(each));
            }
            over = over.multiply(part.under()).add(part.over().multiply(under));
            under = under.multiply(part.under());
        }
        UnitWords.Meant last = units.get(units.size() - 1);
        return kind.of(number(new Part(over, under, ""), last.times(), negative), last.symbol());
    }

    /** How many of the second make one of the first; 0 if no whole number does. */
    private static int wholeNumber(UnitWords.Meant first, UnitWords.Meant second) {
        if (first.symbol().offset() != 0 || second.symbol().offset() != 0) {
            return 0;
        }
        double ratio =
                first.symbol().factor() * first.times() / (second.symbol().factor() * second.times());
        double whole = Math.rint(ratio);
        return Math.abs(ratio - whole) <= 1e-9 * ratio && whole <= 1e7 ? (int) whole : 0;
    }

    private static Refused wrongParts(
            Kind<?> kind, String text, UnitWords.Meant first, UnitWords.Meant second, int each) {
        String one = first.symbol().code();
        String other = second.symbol().code();
        return Refused.of(
                "quantity.parts",
                kind.name() + ": \"" + text + "\" cannot be added up. "
                        + (each < 2
                                ? other + " are no parts of " + one + ". Write both in one unit."
                                : "Behind " + one + " fewer than " + each + " " + other
                                        + " are expected. Check the numbers, or write all in " + other + "."),
                "quantity",
                kind.name(),
                "found",
                text);
    }

    private static double number(Part part, int times, boolean negative) {
        double value = nearest(part.over().multiply(BigInteger.valueOf(times)), part.under());
        return negative ? -value : value;
    }

    private static BigDecimal decimal(Part part, boolean negative) {
        BigDecimal value = new BigDecimal(part.over()).divide(new BigDecimal(part.under()), MathContext.DECIMAL128);
        return negative ? value.negate() : value;
    }

    /**
     * The number nearest to a fraction. A quotient of numbers of m and n bits that is not itself half-way between two
     * neighbours lies from there by more than 2^-(n + 54) of itself, so that many digits decide.
     */
    private static double nearest(BigInteger over, BigInteger under) {
        int digits = 40 + (under.bitLength() + over.bitLength()) / 3;
        return new BigDecimal(over)
                .divide(new BigDecimal(under), new MathContext(digits))
                .doubleValue();
    }
}
