package org.papermath.engine;

/**
 * How the shifts of a forecast add up to a band. What cannot be below zero must not get a band that is, so most shifts
 * are not added as differences.
 */
public enum Scale {
    /** Above zero, and off by factors: times, masses, thicknesses. */
    FACTOR,
    /** Between nothing and all of something: solids, a consistency, a reading of a tester that ends at 100. */
    SHARE,
    /** Zero or more, and zero can be reached: a shrinkage, what is left over. */
    ROOT,
    /** Of either sign: a play, a surplus. */
    DIFFERENCE;

    /** The result on the scale; not finite where it cannot be calculated there. */
    public double of(double x, double most) {
        return switch (this) {
            case FACTOR -> Math.log(x);
            case SHARE -> Math.log(x / (most - x));
            case ROOT -> Math.sqrt(x);
            case DIFFERENCE -> x;
        };
    }

    /** The result from its place on the scale. */
    public double back(double scaled, double most) {
        return switch (this) {
            case FACTOR -> Math.exp(scaled);
            case SHARE -> most / (1 + Math.exp(-scaled));
            case ROOT -> scaled <= 0 ? 0 : scaled * scaled;
            case DIFFERENCE -> scaled;
        };
    }
}
