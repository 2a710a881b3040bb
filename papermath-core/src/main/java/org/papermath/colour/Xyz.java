package org.papermath.colour;

import java.util.Objects;
import org.papermath.quantity.Refused;

/**
 * Tristimulus values: how much of three lights together looks like a colour, to the observer of 2°.
 *
 * @param x of the first, 0 to 200
 * @param y of the second, which is the luminance: 0 for black to 100 for a perfect white, at most 200
 * @param z of the third, 0 to 200
 * @param illuminant in which light
 * @source ISO/CIE 11664-3
 */
public record Xyz(double x, double y, double z, Illuminant illuminant) {
    /**
     * Gives tristimulus values.
     *
     * @param x of the first, 0 to 200
     * @param y of the second, 0 to 200
     * @param z of the third, 0 to 200
     * @param illuminant in which light
     * @throws Refused if a value is out of range
     */
    public Xyz {
        Objects.requireNonNull(illuminant, "illuminant");
        ColourRange.check("X", x, 0, 200);
        ColourRange.check("Y", y, 0, 200);
        ColourRange.check("Z", z, 0, 200);
    }

    /**
     * Returns the same as lightness and two opponent colours.
     *
     * @return L*, a*, b* in the same light
     */
    public Lab lab() {
        return Lab.of(this);
    }

    /**
     * Returns the colour that looks in another light as this does in its own, to an eye used to that light. It is not what
     * the same sheet looks like there: only its {@linkplain Reflectance#xyz reflectance} tells that.
     *
     * @param other the other light
     * @return the corresponding colour
     * @throws Refused if it comes out below zero, as for a colour at the very edge of what is seen
     * @source the matrix of Bradford, in Lam, thesis, University of Bradford, 1985; recalled, not looked up
     */
    public Xyz adaptedTo(Illuminant other) {
        Objects.requireNonNull(other, "other");
        if (other == illuminant) {
            return this;
        }
        double[] seen = Matrix.adaptation(illuminant, other).times(x, y, z);
        return new Xyz(Matrix.rounded(seen[0]), Matrix.rounded(seen[1]), Matrix.rounded(seen[2]), other);
    }

    /**
     * Returns the colour for a screen.
     *
     * @return it as red, green and blue, adapted to D65
     * @throws Refused if a screen cannot show it
     */
    public Srgb srgb() {
        return Srgb.of(this);
    }

    @Override
    public String toString() {
        return "X " + ColourRange.said(x) + " Y " + ColourRange.said(y) + " Z " + ColourRange.said(z) + " ("
                + illuminant + ", 2°)";
    }
}
