package org.papermath.colour;

import java.util.Objects;
import org.papermath.equation.ColourDifference;
import org.papermath.quantity.Refused;

/**
 * A colour as the eye orders it, and as a colorimeter gives it: lightness L*, from green (below zero) to red a*, from blue
 * (below zero) to yellow b*, to the observer of 2°.
 *
 * @param l lightness, 0 for black to 100 for a perfect white
 * @param a green to red, −150 to 150
 * @param b blue to yellow, −150 to 150
 * @param illuminant in which light
 * @source ISO/CIE 11664-4
 */
public record Lab(double l, double a, double b, Illuminant illuminant) {
    private static final double EDGE = 6.0 / 29;

    /**
     * Gives a colour.
     *
     * @param l lightness, 0 to 100
     * @param a green to red, −150 to 150
     * @param b blue to yellow, −150 to 150
     * @param illuminant in which light
     * @throws Refused if a value is out of range
     */
    public Lab {
        Objects.requireNonNull(illuminant, "illuminant");
        ColourRange.check("L*", l, 0, 110);
        ColourRange.check("a*", a, -150, 150);
        ColourRange.check("b*", b, -150, 150);
    }

    /**
     * Gives a colour under D65.
     *
     * @param l lightness, 0 to 100
     * @param a green to red, −150 to 150
     * @param b blue to yellow, −150 to 150
     * @return the colour
     * @throws Refused if a value is out of range
     */
    public static Lab of(double l, double a, double b) {
        return new Lab(l, a, b, Illuminant.D65);
    }

    static Lab of(Xyz colour) {
        double[] lab = of(colour.x(), colour.y(), colour.z(), colour.illuminant());
        return new Lab(lab[0], lab[1], lab[2], colour.illuminant());
    }

    static double[] of(double x, double y, double z, Illuminant illuminant) {
        Xyz white = illuminant.white();
        double first = bent(x / white.x());
        double second = bent(y / white.y());
        double third = bent(z / white.z());
        return new double[] {116 * second - 16, 500 * (first - second), 200 * (second - third)};
    }

    private static double bent(double share) {
        return share > EDGE * EDGE * EDGE ? Math.cbrt(share) : share / (3 * EDGE * EDGE) + 4.0 / 29;
    }

    /** How fast lightness goes up with the share of the white, but for a factor. */
    static double steepness(double share) {
        return share > EDGE * EDGE * EDGE ? 1 / (3 * Math.cbrt(share * share)) : 1 / (3 * EDGE * EDGE);
    }

    private static double straight(double bent) {
        return bent > EDGE ? bent * bent * bent : 3 * EDGE * EDGE * (bent - 4.0 / 29);
    }

    /**
     * Returns the tristimulus values.
     *
     * @return the same colour in the same light
     * @throws Refused if no surface can have this colour
     */
    public Xyz xyz() {
        Xyz white = illuminant.white();
        double second = (l + 16) / 116;
        return new Xyz(
                Matrix.rounded(white.x() * straight(second + a / 500)),
                Matrix.rounded(white.y() * straight(second)),
                Matrix.rounded(white.z() * straight(second - b / 200)),
                illuminant);
    }

    /**
     * Returns how strong the colour is.
     *
     * @return chroma C*, 0 for a grey
     */
    public double chroma() {
        return Math.hypot(a, b);
    }

    /**
     * Returns which colour it is.
     *
     * @return hue angle, 0° for red, 90° for yellow, 180° for green, 270° for blue; 0 for a grey
     */
    public double hueDegrees() {
        double degrees = Math.toDegrees(Math.atan2(b, a));
        return degrees < 0 ? degrees + 360 : degrees;
    }

    /**
     * Returns how far another colour lies off, as the eye has it.
     *
     * @param other the other, in the same light
     * @return ΔE00: about 1 can just be seen side by side
     * @throws Refused if the lights differ
     * @source CIEDE2000, ISO/CIE 11664-6
     */
    public double difference(Lab other) {
        return ColourDifference.of(values(), sameLight(other).values());
    }

    /**
     * Returns how far another colour lies off, by the older rule.
     *
     * @param other the other, in the same light
     * @return ΔE*ab
     * @throws Refused if the lights differ
     * @source ISO/CIE 11664-4
     */
    public double difference1976(Lab other) {
        sameLight(other);
        return Math.sqrt((l - other.l) * (l - other.l) + (a - other.a) * (a - other.a) + (b - other.b) * (b - other.b));
    }

    /** Another colour that is told in the same light. */
    Lab sameLight(Lab other) {
        Objects.requireNonNull(other, "other");
        requireLight(other.illuminant);
        return other;
    }

    /** Refuses a colour that is told in another light. */
    void requireLight(Illuminant light) {
        if (light != illuminant) {
            throw Refused.of(
                    "colour.other-light",
                    "colour: one is told in " + illuminant + ", the other in " + light
                            + "; bring them to one light first.",
                    "one",
                    illuminant.name(),
                    "other",
                    light.name());
        }
    }

    double[] values() {
        return new double[] {l, a, b};
    }

    @Override
    public String toString() {
        return "L* " + ColourRange.said(l) + " a* " + ColourRange.said(a) + " b* " + ColourRange.said(b) + " ("
                + illuminant + ", 2°)";
    }
}
