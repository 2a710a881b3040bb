package org.papermath.numeric;

/** Points of what is sorted. */
public final class Percentiles {
    private Percentiles() {}

    /**
     * The value that a share of the numbers lie below, between two of them by a straight line.
     *
     * @param sorted one number or more, from low to high
     * @param share from 0 to 1
     */
    public static double at(double[] sorted, double share) {
        double place = share * (sorted.length - 1);
        int below = (int) Math.floor(place);
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }
}
