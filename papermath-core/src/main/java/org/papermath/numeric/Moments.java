package org.papermath.numeric;

/**
 * Mean and sum of squares about it, from differences to the first value, so that a large common part of all values
 * takes no digits away.
 *
 * @source two passes with the rest of the first put right in the second; Chan, Golub and LeVeque, The American
 *     Statistician 37, 1983, recalled, not looked up
 */
public final class Moments {
    private final double first;
    private final double middle;
    private final double[] off;
    private final double squares;

    private Moments(double first, double middle, double[] off, double squares) {
        this.first = first;
        this.middle = middle;
        this.off = off;
        this.squares = squares;
    }

    /**
     * Works them out.
     *
     * @param values one or more
     */
    public static Moments of(double... values) {
        double first = values[0];
        double middle = 0;
        for (double value : values) {
            middle += (value - first) / values.length;
        }
        double rest = 0;
        for (double value : values) {
            rest += (value - first - middle) / values.length;
        }
        middle += rest;
        double[] off = new double[values.length];
        double squares = 0;
        for (int i = 0; i < off.length; i++) {
            off[i] = values[i] - first - middle;
            squares += off[i] * off[i];
        }
        return new Moments(first, middle, off, squares);
    }

    /** How many values there are. */
    public int count() {
        return off.length;
    }

    /** Their mean. */
    public double mean() {
        return first + middle;
    }

    /** How far this mean lies above another, not rounded to the digits of either. */
    public double above(Moments other) {
        return first - other.first + (middle - other.middle);
    }

    /** How far a value lies above the mean. */
    public double off(int i) {
        return off[i];
    }

    /** The sum of the squares of all of these distances. */
    public double squares() {
        return squares;
    }

    /** The standard deviation of single values; of one value none. */
    public double deviation() {
        return off.length > 1 ? Math.sqrt(squares / (off.length - 1)) : 0;
    }
}
