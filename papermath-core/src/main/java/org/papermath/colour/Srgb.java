package org.papermath.colour;

import java.util.Locale;
import java.util.Objects;
import org.papermath.quantity.Refused;

/**
 * A colour for a screen: red, green and blue, each 0 to 1 as it stands in a picture.
 *
 * @param red 0 to 1
 * @param green 0 to 1
 * @param blue 0 to 1
 * @source IEC 61966-2-1
 */
public record Srgb(double red, double green, double blue) {
    private static final double SLACK = 1e-9;

    /**
     * Gives a colour.
     *
     * @param red 0 to 1
     * @param green 0 to 1
     * @param blue 0 to 1
     * @throws Refused if a value is out of range
     */
    public Srgb {
        ColourRange.check("red", red, 0, 1);
        ColourRange.check("green", green, 0, 1);
        ColourRange.check("blue", blue, 0, 1);
    }

    /**
     * Reads a colour of 8 bits each.
     *
     * @param red 0 to 255
     * @param green 0 to 255
     * @param blue 0 to 255
     * @return the colour
     * @throws Refused if a value is out of range
     */
    public static Srgb of8Bit(int red, int green, int blue) {
        ColourRange.check("red", red, 0, 255);
        ColourRange.check("green", green, 0, 255);
        ColourRange.check("blue", blue, 0, 255);
        return new Srgb(red / 255.0, green / 255.0, blue / 255.0);
    }

    static Srgb of(Xyz colour) {
        if (!isShown(colour)) {
            throw Refused.of(
                    "colour.beyond-screen",
                    "colour: a screen cannot show " + colour.lab() + "; it is too strong or too bright for it.",
                    "colour",
                    colour.lab().toString());
        }
        return shown(colour);
    }

    /** The nearest a screen comes to a colour, for a picture that says the colour in words besides. */
    static Srgb shown(Xyz colour) {
        double[] light = linear(colour.adaptedTo(Illuminant.D65));
        return new Srgb(encoded(light[0]), encoded(light[1]), encoded(light[2]));
    }

    /** Whether a screen shows a colour as it is. */
    static boolean isShown(Xyz colour) {
        for (double part : linear(colour.adaptedTo(Illuminant.D65))) {
            if (part < -SLACK || part > 1 + SLACK) {
                return false;
            }
        }
        return true;
    }

    private static double[] linear(Xyz colour) {
        return Matrix.TO_SRGB.times(colour.x() / 100, colour.y() / 100, colour.z() / 100);
    }

    private static double encoded(double light) {
        double within = Math.min(1, Math.max(0, light));
        return within <= 0.0031308 ? 12.92 * within : 1.055 * Math.pow(within, 1 / 2.4) - 0.055;
    }

    static double decoded(double value) {
        return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
    }

    /**
     * Returns the tristimulus values.
     *
     * @return the same colour under D65
     */
    public Xyz xyz() {
        double[] seen = Matrix.SRGB.times(decoded(red), decoded(green), decoded(blue));
        return new Xyz(100 * seen[0], 100 * seen[1], 100 * seen[2], Illuminant.D65);
    }

    /**
     * Returns the colour as web pages write it.
     *
     * @return for example {@code #c8a05a}, rounded to 8 bits
     */
    public String hex() {
        return String.format(
                Locale.ROOT, "#%02x%02x%02x", Math.round(red * 255), Math.round(green * 255), Math.round(blue * 255));
    }

    /**
     * Reads a colour as web pages write it.
     *
     * @param text for example {@code #c8a05a}
     * @return the colour
     * @throws Refused if it is not six digits after a number sign
     */
    public static Srgb parse(CharSequence text) {
        Objects.requireNonNull(text, "text");
        String given = text.toString().strip();
        if (!given.matches("#[0-9a-fA-F]{6}")) {
            throw Refused.of(
                    "colour.unreadable",
                    "colour: \"" + given + "\" cannot be read; write six hexadecimal digits as in #c8a05a.",
                    "given",
                    given);
        }
        int all = Integer.parseInt(given.substring(1), 16);
        return of8Bit(all >> 16, all >> 8 & 0xff, all & 0xff);
    }

    @Override
    public String toString() {
        return hex();
    }
}
