package org.papermath.plan;

/** Rounding to whole sheets and to the steps of a tool. */
final class Rounding {
    /** Keeps 220.0000000001 sheets from becoming 221. */
    static final double GUARD = 1e-9;

    private Rounding() {
    }

    static double ceil(double x) {
        return Math.ceil(x - GUARD * Math.max(1, Math.abs(x)));
    }

    static double ceilTo(double x, double step) {
        return x <= 0 ? 0 : ceil(x / step) * step;
    }

    static double roundTo(double x, double step) {
        return Math.rint(x / step) * step;
    }
}
