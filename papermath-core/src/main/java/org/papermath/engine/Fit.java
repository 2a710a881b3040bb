package org.papermath.engine;

import org.papermath.numeric.Rounding;

/** Whether one rectangle lies within another, straight or turned by a right angle. */
final class Fit {
    private Fit() {}

    static boolean within(double width, double height, double most, double other) {
        double guard = 1 + Rounding.GUARD;
        return Math.max(width, height) <= Math.max(most, other) * guard
                && Math.min(width, height) <= Math.min(most, other) * guard;
    }

    /** The most of a rectangle that another covers, laid the same way round. */
    static double covered(double width, double height, double most, double other) {
        return Math.min(Math.max(width, height), Math.max(most, other))
                * Math.min(Math.min(width, height), Math.min(most, other));
    }
}
