package org.papermath.equation;

/** Water in fibre: the four ways of saying it, and what is dry in what was bought. */
public final class Moisture {
    private Moisture() {}

    /** Moisture ratio M (water over oven-dry mass) from wet-basis moisture w. */
    public static double ratioOfWetBasis(double w) {
        return w / (1 - w);
    }
}
