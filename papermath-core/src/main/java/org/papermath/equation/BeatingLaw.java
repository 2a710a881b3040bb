package org.papermath.equation;

/**
 * How far beating has brought a fibre: the one state that drainability, water held, density and shrinkage all follow
 * from. It runs from 0, not beaten, to 1, beaten as far as it goes: {@code y = 1 - exp(-(k x)^p)}.
 *
 * <p>The dose x is the time in a beater, times what a smaller load is worked the more.
 *
 * @param unbeaten Schopper-Riegler number before beating
 * @param limit the number beating tends to
 * @param rate k, one over the unit of the dose
 * @param exponent p
 */
public record BeatingLaw(double unbeaten, double limit, double rate, double exponent) {
    /** The state after a dose. */
    public double state(double dose) {
        return -Math.expm1(-Math.pow(rate * dose, exponent));
    }

    /** The dose that brings the fibre to a state; infinite for the end of beating. */
    public double dose(double state) {
        return Math.pow(-Math.log1p(-state), 1 / exponent) / rate;
    }

    /** The drainability in a state. */
    public double drainability(double state) {
        return unbeaten + (limit - unbeaten) * state;
    }

    /** The state behind a drainability; one outside what beating gives is that of the nearer end. */
    public double stateOf(double drainability) {
        return Math.max(0, Math.min(1, (drainability - unbeaten) / (limit - unbeaten)));
    }

    /**
     * What a load gains over that the rate belongs to: fibre that passes the roll more often is worked the more. A load
     * below the least share is not known to gain more than one of that share, and none does beyond the usual one.
     */
    public static double gain(double load, double usual, double leastShare) {
        return 1 / Math.max(leastShare, Math.min(1, load / usual));
    }
}
