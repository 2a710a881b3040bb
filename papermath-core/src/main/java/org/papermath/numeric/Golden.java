package org.papermath.numeric;

import java.util.function.DoubleUnaryOperator;

/** The least of a function that falls and then rises: the bracket shrinks by the golden section, the same each time. */
public final class Golden {
    private static final double SECTION = (Math.sqrt(5) - 1) / 2;

    private Golden() {}

    /**
     * Finds it.
     *
     * @param function falls and then rises between the ends, or does only one of the two
     * @param low one end
     * @param high the other
     * @param within how near, above zero
     */
    public static double least(DoubleUnaryOperator function, double low, double high, double within) {
        double from = low;
        double to = high;
        double left = to - SECTION * (to - from);
        double right = from + SECTION * (to - from);
        double atLeft = function.applyAsDouble(left);
        double atRight = function.applyAsDouble(right);
        while (to - from > within) {
            if (atLeft <= atRight) {
                to = right;
                right = left;
                atRight = atLeft;
                left = to - SECTION * (to - from);
                atLeft = function.applyAsDouble(left);
            } else {
                from = left;
                left = right;
                atLeft = atRight;
                right = from + SECTION * (to - from);
                atRight = function.applyAsDouble(right);
            }
        }
        double middle = (from + to) / 2;
        double atMiddle = function.applyAsDouble(middle);
        if (function.applyAsDouble(low) <= atMiddle) {
            return low;
        }
        return function.applyAsDouble(high) < atMiddle ? high : middle;
    }
}
