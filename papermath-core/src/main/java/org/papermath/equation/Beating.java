package org.papermath.equation;

/**
 * Rise of the Schopper–Riegler value with beating: SR = SR_m − (SR_m − SR_0) exp(−(k t)^p).
 *
 * <p>The dose t may be a time, an edge length per mass or a specific energy; the rate k is one over the same unit.
 */
public final class Beating {
    private Beating() {}

    /** Schopper–Riegler value after a dose. */
    public static double schopperRiegler(double dose, double start, double limit, double rate, double exponent) {
        return start - (limit - start) * Math.expm1(-Math.pow(rate * dose, exponent));
    }

    /** The mean by mass of what the fibres of a blend have. */
    public static double mean(double[] shares, double[] values) {
        double mean = 0;
        for (int i = 0; i < shares.length; i++) {
            mean += shares[i] * values[i];
        }
        return mean;
    }

    /** Dose that brings the stock from its start to a value; not finite when the value is at or past the limit. */
    public static double doseFor(double value, double start, double limit, double rate, double exponent) {
        return Math.pow(progress(value, start, limit), 1 / exponent) / rate;
    }

    /** Rate from one measured value after a dose. */
    public static double rateFrom(double value, double dose, double start, double limit, double exponent) {
        return Math.pow(progress(value, start, limit), 1 / exponent) / dose;
    }

    /** Exponent from two measured values after two different doses. */
    public static double exponentFrom(
            double value1, double dose1, double value2, double dose2, double start, double limit) {
        return Math.log(progress(value2, start, limit) / progress(value1, start, limit)) / Math.log(dose2 / dose1);
    }

    /** The group (k t)^p at a value. */
    private static double progress(double value, double start, double limit) {
        return -Math.log1p(-(value - start) / (limit - start));
    }

    /**
     * Water retention value by drainability: level below the unbeaten point, straight to the well-beaten point, and
     * straight on to the long-beaten one where there is one; the last line goes on.
     *
     * @param number Schopper-Riegler number
     * @param unbeatenNumber that of unbeaten fibre
     * @param unbeaten water retention value there
     * @param wellNumber that of well-beaten fibre
     * @param well water retention value there
     * @param longNumber that of long-beaten fibre; not a number where none is known
     * @param longBeaten water retention value there
     */
    public static double waterRetention(
            double number,
            double unbeatenNumber,
            double unbeaten,
            double wellNumber,
            double well,
            double longNumber,
            double longBeaten) {
        if (number <= unbeatenNumber) {
            return unbeaten;
        }
        double value;
        if (number > wellNumber && longNumber > wellNumber) {
            value = well + (longBeaten - well) * (number - wellNumber) / (longNumber - wellNumber);
        } else if (wellNumber > unbeatenNumber) {
            value = unbeaten + (well - unbeaten) * (number - unbeatenNumber) / (wellNumber - unbeatenNumber);
        } else {
            value = well;
        }
        return Math.max(0, value);
    }
}
