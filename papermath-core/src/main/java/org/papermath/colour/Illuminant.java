package org.papermath.colour;

/**
 * A light under which colours are told, each with the observer of 2°.
 *
 * @source spectral power: ISO/CIE 11664-2 (A by its equation, D50 and D65 by the daylight components of CIE 15 at 5003 K and
 *     6504 K); tristimulus values of the white: ASTM E308, recalled, not looked up
 */
public enum Illuminant {
    /** Daylight of a print room, about 5000 K. */
    D50(96.422, 82.521),
    /** Daylight of a north window, about 6500 K. */
    D65(95.047, 108.883),
    /** A lamp with a filament, 2856 K. */
    A(109.850, 35.585);

    private final double x;
    private final double z;

    Illuminant(double x, double z) {
        this.x = x;
        this.z = z;
    }

    /**
     * Returns what a perfect white looks like in this light.
     *
     * @return its tristimulus values, Y = 100
     */
    public Xyz white() {
        return new Xyz(x, 100, z, this);
    }
}
