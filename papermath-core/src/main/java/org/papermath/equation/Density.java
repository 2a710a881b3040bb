package org.papermath.equation;

/** Apparent density, bulk and caliper of the dry sheet. */
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

    /** The reference density behind one measured sheet; inverse of {@link #ofPressure}. */
    public static double reference(
            double density, double pressure, double referencePressure, double saturationPressure, double exponent) {
        return density / ofPressure(1, pressure, referencePressure, saturationPressure, exponent);
    }

    /**
     * Density (kg/m3) after a beating time: the bulk goes exponentially from unbeaten to fully beaten,
     * {@code 1/rho = 1/rho_i + (1/rho_0 - 1/rho_i) exp(-t/tau)}; time and time constant in the same unit.
     */
    public static double ofBeating(double unbeaten, double beaten, double time, double timeConstant) {
        return 1 / (1 / beaten + (1 / unbeaten - 1 / beaten) * Math.exp(-time / timeConstant));
    }

    /** The beating time constant behind the density after one beating time; inverse of {@link #ofBeating}. */
    public static double beatingTimeConstant(double unbeaten, double beaten, double time, double density) {
        return -time / Math.log((1 / density - 1 / beaten) / (1 / unbeaten - 1 / beaten));
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

    /** Conditioned grammage (kg/m2) for a caliper (m) at a density (kg/m3). */
    public static double grammage(double caliper, double density) {
        return caliper * density;
    }

    /** Bulk (m3/kg) of a density (kg/m3). */
    public static double bulk(double density) {
        return 1 / density;
    }

    /**
     * Caliper (m) of a sheet so thin that single fibres set it: {@code t0 + W/rho}. For below about 10 g/m2; there it
     * lies a step above {@link #caliper}.
     */
    public static double thinSheetCaliper(double grammage, double offset, double density) {
        return offset + grammage / density;
    }

    /** Factor on density when a finish multiplies the thickness and, by stretching, the grammage. */
    public static double finishFactor(double thicknessFactor, double grammageFactor) {
        return grammageFactor / thicknessFactor;
    }

    /** Void share of a sheet from its density and that of the fibre wall (kg/m3). */
    public static double porosity(double density, double wallDensity) {
        return 1 - density / wallDensity;
    }
}
