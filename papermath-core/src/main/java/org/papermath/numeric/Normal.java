package org.papermath.numeric;

/** The normal distribution. */
public final class Normal {
    /** Standard deviations from the mean to the 5 % and to the 95 % point. */
    public static final double FIVE_PERCENT_POINT = 1.6448536269514722;

    private Normal() {}

    /** From a part over a whole to its 5 % and its 95 % point, where both were read with an error. */
    public static double halfBandOfRatio(double part, double partError, double whole, double wholeError) {
        return FIVE_PERCENT_POINT * Math.hypot(partError, wholeError * part / whole) / whole;
    }
}
