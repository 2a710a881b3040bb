package org.papermath.numeric;

/** Rounding to whole sheets and to the steps of a tool. */
public final class Rounding {
    /** Keeps 220.0000000001 sheets from becoming 221. */
    public static final double GUARD = 1e-9;

    private Rounding() {}

    public static double ceil(double x) {
        return Math.ceil(x - GUARD * Math.max(1, Math.abs(x)));
    }

    public static double ceilTo(double x, double step) {
        return x <= 0 ? 0 : ceil(x / step) * step;
    }

    public static double roundTo(double x, double step) {
        return Math.rint(x / step) * step;
    }

    /** The greatest of 1, 2, 5, 10, 20 … that is no more than a value above zero. */
    public static double niceBelow(double x) {
        double ten = Math.pow(10, Math.floor(Math.log10(x) + GUARD));
        double times = x / ten * (1 + GUARD);
        return times >= 5 ? 5 * ten : times >= 2 ? 2 * ten : ten;
    }
}
