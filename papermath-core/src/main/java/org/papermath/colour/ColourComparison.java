package org.papermath.colour;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.papermath.equation.ColourDifference;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;

/**
 * Two sheets side by side: how far apart their colours are, which way, and whether anyone would see it. Immutable.
 *
 * @source CIEDE2000, ISO/CIE 11664-6; what is seen: common practice
 */
public final class ColourComparison {
    private static final double SAID = 0.3;

    private final double difference;
    private final double lighter;
    private final double stronger;
    private final String hue;
    private final double turned;
    private final double justSeen;
    private final double seenAtOnce;
    private final Optional<Double> underLamp;

    /** Whether it is seen. */
    public enum Seen {
        /** Not even side by side. */
        NOT_SEEN("cannot be seen side by side"),
        /** By who looks for it, side by side. */
        SEEN_BESIDE("can be seen side by side"),
        /** At once. */
        SEEN_AT_ONCE("is seen at once");

        private final String words;

        Seen(String words) {
            this.words = words;
        }
    }

    private ColourComparison(Lab one, Lab other, Assumptions assumptions, Optional<Double> underLamp) {
        difference = one.difference(other);
        double[] parts = ColourDifference.parts(one.values(), other.values());
        lighter = parts[0];
        stronger = parts[1];
        turned = parts[2];
        hue = towards(one, parts[2]);
        justSeen = assumptions.si("colour.just-seen", Scope.GENERAL);
        seenAtOnce = assumptions.si("colour.seen-at-once", Scope.GENERAL);
        this.underLamp = underLamp;
    }

    /**
     * Compares two colours.
     *
     * @param one the first
     * @param other the other, in the same light
     * @param assumptions where {@code colour.just-seen} and {@code colour.seen-at-once} are looked up
     * @return the comparison
     * @throws org.papermath.quantity.Refused if the lights differ
     */
    public static ColourComparison of(Lab one, Lab other, Assumptions assumptions) {
        Objects.requireNonNull(one, "one");
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(assumptions, "assumptions");
        return new ColourComparison(one, other, assumptions, Optional.empty());
    }

    /**
     * Compares two sheets by day and, where the bands tell it, under a lamp.
     *
     * @param one the first
     * @param other the other
     * @param assumptions where {@code colour.just-seen} and {@code colour.seen-at-once} are looked up
     * @return the comparison
     */
    public static ColourComparison of(Reflectance one, Reflectance other, Assumptions assumptions) {
        Objects.requireNonNull(one, "one");
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(assumptions, "assumptions");
        boolean told = one.bands() != Wavebands.THREE && other.bands() != Wavebands.THREE;
        return new ColourComparison(
                one.lab(),
                other.lab(),
                assumptions,
                told ? Optional.of(one.lab(Illuminant.A).difference(other.lab(Illuminant.A))) : Optional.empty());
    }

    private static String towards(Lab one, double turned) {
        String[] round = {"red", "yellow", "green", "blue"};
        int quarter = (int) (one.hueDegrees() / 90) % 4;
        return turned > 0 ? round[(quarter + 1) % 4] : round[quarter];
    }

    /**
     * Returns how far the two are apart.
     *
     * @return ΔE00 under the light they are told in, of reflectances D65
     */
    public double difference() {
        return difference;
    }

    /**
     * Returns how far the two are apart under a lamp.
     *
     * @return ΔE00 under A; empty where it is not known
     */
    public Optional<Double> differenceUnderLamp() {
        return underLamp;
    }

    /**
     * Returns whether anyone would see it.
     *
     * @return by {@code colour.just-seen} and {@code colour.seen-at-once}
     */
    public Seen seen() {
        if (difference < justSeen) {
            return Seen.NOT_SEEN;
        }
        return difference < seenAtOnce ? Seen.SEEN_BESIDE : Seen.SEEN_AT_ONCE;
    }

    /**
     * Says which way the other colour lies.
     *
     * @return for example {@code darker, duller, towards red}; empty where neither is worth saying
     */
    public String way() {
        List<String> words = new ArrayList<>();
        if (Math.abs(lighter) >= SAID) {
            words.add(lighter > 0 ? "lighter" : "darker");
        }
        if (Math.abs(stronger) >= SAID) {
            words.add(stronger > 0 ? "stronger" : "duller");
        }
        if (Math.abs(turned) >= SAID) {
            words.add("towards " + hue);
        }
        return String.join(", ", words);
    }

    @Override
    public String toString() {
        return "ΔE00 " + ColourRange.said(difference, 1) + (way().isEmpty() ? "" : ": the other is " + way()) + "; it "
                + seen().words
                + underLamp
                        .map(lamp -> "; under a lamp ΔE00 " + ColourRange.said(lamp, 1))
                        .orElse("");
    }
}
