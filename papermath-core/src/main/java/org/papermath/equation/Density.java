package org.papermath.equation;

/** Apparent density and caliper of the dry sheet. */
public final class Density {
    private Density() {}

    /**
     * Density (kg/m3) after pressing: {@code rho_ref (min(p, p_sat)/p0)^k}; pressing harder than p_sat adds nothing.
     *
     * @param reference density of the furnish pressed at p0, kg/m3
     * @param pressure last press pressure, Pa
     * @param referencePressure p0, Pa
     * @param saturationPressure p_sat, Pa
     * @param exponent k
     */
    public static double ofPressure(
            double reference, double pressure, double referencePressure, double saturationPressure, double exponent) {
        return reference * Math.pow(Math.min(pressure, saturationPressure) / referencePressure, exponent);
    }

    /** Density (kg/m3) from Canadian Standard freeness (mL) along a straight line fitted within one mill. */
    public static double ofFreeness(double freeness, double intercept, double slope) {
        return intercept + slope * freeness;
    }

    /** Density (kg/m3) from conditioned grammage (kg/m2) and caliper (m). */
    public static double of(double grammage, double caliper) {
        return grammage / caliper;
    }

    /** Caliper (m) from conditioned grammage (kg/m2) and density (kg/m3). */
    public static double caliper(double grammage, double density) {
        return grammage / density;
    }
}
