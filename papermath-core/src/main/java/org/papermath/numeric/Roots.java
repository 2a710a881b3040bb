package org.papermath.numeric;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.numbers.rootfinder.BrentSolver;

/** Root of a function of one variable inside a bracket, with an end to the search. */
public final class Roots {
    private static final double RELATIVE = 1e-14;
    private static final double ABSOLUTE = 1e-14;
    private static final int MOST_EVALUATIONS = 500;

    private Roots() {}

    /**
     * The root between two bounds at which the function has opposite signs, or is zero; otherwise, or when the
     * function is not finite on the way, an {@link ArithmeticException}.
     */
    public static double between(double low, double high, DoubleUnaryOperator function) {
        int[] evaluations = {0};
        DoubleUnaryOperator guarded = x -> {
            double y = function.applyAsDouble(x);
            if (Double.isNaN(y) || ++evaluations[0] > MOST_EVALUATIONS) {
                throw new ArithmeticException("no root found between " + low + " and " + high + ": " + y + " at " + x);
            }
            return y;
        };
        double atLow = guarded.applyAsDouble(low);
        if (atLow == 0) {
            return low;
        }
        double atHigh = guarded.applyAsDouble(high);
        if (atHigh == 0) {
            return high;
        }
        if (atLow > 0 == atHigh > 0) {
            throw new ArithmeticException(
                    "no root between " + low + " and " + high + ": values " + atLow + " and " + atHigh);
        }
        return new BrentSolver(RELATIVE, ABSOLUTE, 0).findRoot(guarded, low, high);
    }
}
