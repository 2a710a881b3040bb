package org.papermath.quantity;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * Per cents that say of what they are: {@code 4 % w/v}, {@code 65 % wet basis}, {@code 9 % on fibre}. A kind reads those of its
 * own basis; of another it says what is meant there, and what to write where that can be worked out.
 *
 * @source per cent in weight by volume is grams in 100 mL, moisture on the wet basis is water over the whole, on the dry basis
 *     over the oven-dry mass: common practice
 */
enum PerCentBasis {
    /** Grams in 100 g of the whole. */
    BY_MASS("grams in 100 g of the whole", "consistency; solids", "w/w; m/m; by mass; by weight"),
    /** Grams in 100 mL. */
    IN_VOLUME("grams in 100 mL", "fibre per volume; solution strength", "w/v; m/v; weight by volume"),
    /** Of the mass with its water. */
    WET("grams of water in 100 g with the water", "moisture, wet basis", "wet basis; on the wet basis; wb"),
    /** Of the mass without water. */
    DRY("grams of water to 100 g oven-dry", "moisture ratio, dry basis", "dry basis; on the dry basis; db"),
    /** Of the fibre without water. */
    ON_FIBRE(
            "grams to 100 g of oven-dry fibre",
            "dose on oven-dry fibre",
            "on fibre; on fiber; on oven-dry fibre; on oven-dry fiber; on dry fibre; on dry fiber");

    /** Grams in a litre that one gram in 100 mL is. */
    private static final int IN_A_LITRE = 10;

    private static final Pattern PER_CENT =
            Pattern.compile("([0-9]{1,9}(?:\\.[0-9]{1,9})?) ?(?:%|per cent|percent) ?(.+)");

    private static final Map<String, PerCentBasis> BY_WORDS = new HashMap<>();

    static {
        for (PerCentBasis basis : values()) {
            parts(basis.words).forEach(words -> BY_WORDS.put(words, basis));
        }
    }

    private final String meaning;
    /** Names of kinds, with a semicolon between them. */
    private final String kinds;
    /** What people say, with a semicolon between. */
    private final String words;

    PerCentBasis(String meaning, String kinds, String words) {
        this.meaning = meaning;
        this.kinds = kinds;
        this.words = words;
    }

    private static List<String> parts(String text) {
        return List.of(text.split("; ", -1));
    }

    private boolean isOf(String kind) {
        return parts(kinds).contains(kind);
    }

    /** The rows of a kind, its per cent with the words of its basis. */
    static List<Units.Symbol> said(String kind, List<Units.Symbol> symbols) {
        List<Units.Symbol> all = new ArrayList<>();
        for (Units.Symbol symbol : symbols) {
            List<String> also = new ArrayList<>(symbol.also());
            if (symbol.code().equals("%")) {
                for (PerCentBasis basis : values()) {
                    if (basis.isOf(kind)) {
                        parts(basis.words).forEach(words -> also.add("% " + words));
                    }
                }
            }
            all.add(
                    also.size() == symbol.also().size()
                            ? symbol
                            : new Units.Symbol(
                                    symbol.code(),
                                    symbol.behind(),
                                    symbol.label(),
                                    symbol.unit(),
                                    symbol.factor(),
                                    symbol.offset(),
                                    List.copyOf(also)));
        }
        return all;
    }

    /**
     * Reads a per cent that says of what it is.
     *
     * @return the amount, or null if the text is no such per cent
     * @throws Refused if it is one of something else than the kind
     */
    static <Q extends Quantity<Q>> @Nullable Amount<Q> read(Kind<Q> kind, String text) {
        Matcher found = PER_CENT.matcher(text.strip());
        PerCentBasis basis =
                found.matches() ? BY_WORDS.get(found.group(2).strip().toLowerCase(Locale.ROOT)) : null;
        if (basis == null) {
            return null;
        }
        double number = Double.parseDouble(found.group(1));
        if (basis.isOf(kind.name())) {
            return basis == IN_VOLUME ? kind.of(IN_A_LITRE * number, "g/L") : kind.of(number, "%");
        }
        PerCentBasis own = of(kind);
        if (own == null) {
            return null;
        }
        throw Refused.of(
                "unit.unknown",
                kind.name() + ": \"" + text.strip() + "\" is " + basis.meaning + "; " + own.meaning + " are read here. "
                        + basis.advice(own, found.group(1), number),
                "quantity",
                kind.name(),
                "found",
                found.group(2).strip(),
                "accepted",
                kind.accepted());
    }

    private static @Nullable PerCentBasis of(Kind<?> kind) {
        for (PerCentBasis basis : values()) {
            if (basis.isOf(kind.name())) {
                return basis;
            }
        }
        return null;
    }

    /** What to write in place of a per cent of this basis where one of another is read. */
    private String advice(PerCentBasis wanted, String written, double number) {
        double part = number / 100;
        if (this == WET && wanted == DRY && part < 1) {
            return "Write \"" + Units.fourDigits(100 * part / (1 - part)) + " %\".";
        }
        if (this == DRY && wanted == WET) {
            return "Write \"" + Units.fourDigits(100 * part / (1 + part)) + " %\".";
        }
        if (this == IN_VOLUME && wanted == BY_MASS) {
            return "Weigh a litre of it: " + Units.fourDigits(IN_A_LITRE * number)
                    + " g over its mass; where a litre weighs about 1 kg, write \"" + written + " %\".";
        }
        if (this == BY_MASS && wanted == IN_VOLUME) {
            return "Multiply by the mass of a litre; where that is about 1 kg, write \""
                    + Units.fourDigits(IN_A_LITRE * number) + " g/L\".";
        }
        return "Work out the " + wanted.meaning + ", and write that.";
    }
}
