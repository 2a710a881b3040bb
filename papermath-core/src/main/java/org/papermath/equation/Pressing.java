package org.papermath.equation;

/** Water left in a sheet after pressing. */
public final class Pressing {
    /** The oven-dry grammage (kg/m2) at which a press's reference time constant is stated. */
    public static final double TIME_REFERENCE_GRAMMAGE = 0.1;

    /** The water retention value (g/g) at which a press's reference time constant is stated. */
    public static final double TIME_REFERENCE_RETENTION = 1.5;

    private Pressing() {}

    /** Solids (oven-dry over wet mass) of a moisture ratio. */
    public static double solidsOfRatio(double ratio) {
        return 1 / (1 + ratio);
    }

    /** Moisture ratio of solids (oven-dry over wet mass). */
    public static double ratioOfSolids(double solids) {
        return (1 - solids) / solids;
    }

    /**
     * Moisture ratio after long pressing, without a floor: {@code a WRV (p/p0)^-b}.
     *
     * @param retention water retention value, g/g
     * @param pressure on the sheet, Pa
     * @param factor a
     * @param referencePressure p0, Pa
     * @param exponent b
     * @return positive infinity at no pressure
     */
    public static double powerLawRatio(
            double retention, double pressure, double factor, double referencePressure, double exponent) {
        return factor * retention * Math.pow(pressure / referencePressure, -exponent);
    }

    /** Moisture ratio after long pressing: {@link #powerLawRatio}, not below the water held in the fibre wall. */
    public static double equilibriumRatio(
            double retention, double pressure, double factor, double referencePressure, double exponent, double floor) {
        return Math.max(floor, powerLawRatio(retention, pressure, factor, referencePressure, exponent));
    }

    /**
     * Time constant (s) of a sheet: {@code tau_0 (W/0.1)^2 (WRV/1.5)^2}; the square of the grammage is that of the
     * decreasing-permeability model (Kerekes and McDonald 1991).
     */
    public static double timeConstant(double referenceTime, double grammage, double retention) {
        return referenceTime * timeScale(grammage, retention);
    }

    /**
     * Moisture ratio after a time at load: {@code M_eq + (M_in - M_eq) exp(-t/tau)}; a sheet at or below equilibrium
     * gives nothing up.
     */
    public static double ratioAfter(double ratioIn, double equilibrium, double timeConstant, double time) {
        if (ratioIn <= equilibrium || time <= 0) {
            return ratioIn;
        }
        return equilibrium + (ratioIn - equilibrium) * Math.exp(-time / timeConstant);
    }

    /** Moisture ratio of a sheet (oven-dry grammage, kg/m2) that takes water up over its area (kg/m2): {@code M + R/W}. */
    public static double rewetted(double ratio, double rewet, double grammage) {
        return ratio + rewet / grammage;
    }

    /**
     * Time at load (s) to come down to a moisture ratio; zero when already there, positive infinity when the
     * equilibrium lies at or above it.
     */
    public static double timeToRatio(double ratioIn, double equilibrium, double timeConstant, double wanted) {
        if (ratioIn <= wanted) {
            return 0;
        }
        if (wanted <= equilibrium) {
            return Double.POSITIVE_INFINITY;
        }
        return timeConstant * Math.log((ratioIn - equilibrium) / (wanted - equilibrium));
    }

    /** The factor a behind one pressed sheet weighed wet and dry after a hold of at least five time constants. */
    public static double factorOfWeighing(
            double ratio, double retention, double pressure, double referencePressure, double exponent) {
        return ratio / powerLawRatio(retention, pressure, 1, referencePressure, exponent);
    }

    /** The equilibrium ratio behind a weighing after a hold of known time and time constant. */
    public static double equilibriumOfWeighing(double ratioIn, double ratio, double timeConstant, double time) {
        double left = Math.exp(-time / timeConstant);
        return (ratio - ratioIn * left) / (1 - left);
    }

    private static double timeScale(double grammage, double retention) {
        double w = grammage / TIME_REFERENCE_GRAMMAGE;
        double r = retention / TIME_REFERENCE_RETENTION;
        return w * w * r * r;
    }
}
