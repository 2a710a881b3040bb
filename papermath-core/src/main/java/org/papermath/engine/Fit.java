package org.papermath.engine;

import org.papermath.equation.PieceLayout;
import org.papermath.numeric.Rounding;

/** Whether one rectangle lies within another, straight or turned by a right angle. */
final class Fit {
    private Fit() {}

    static boolean within(double width, double height, double most, double other) {
        double guard = 1 + Rounding.GUARD;
        return Math.max(width, height) <= Math.max(most, other) * guard
                && Math.min(width, height) <= Math.min(most, other) * guard;
    }

    /** How many rectangles lie side by side on a face, in rows, all the same way round; none where one is larger. */
    static int laid(double width, double height, double face, double other, double gap) {
        return PieceLayout.best(face, other, width, height, height, width, gap, gap)
                .count();
    }

    /** The most of a rectangle that another covers, laid the same way round. */
    static double covered(double width, double height, double most, double other) {
        return Math.min(Math.max(width, height), Math.max(most, other))
                * Math.min(Math.min(width, height), Math.min(most, other));
    }
}
