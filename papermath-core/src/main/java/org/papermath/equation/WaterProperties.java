package org.papermath.equation;

/** Density and viscosity of water, density of stock; temperatures in degrees Celsius. */
public final class WaterProperties {
    private static final double ZERO_CELSIUS = 273.15;

    /** As far as the density of Tanaka reaches, °C. */
    private static final double WARMEST = 40;

    private WaterProperties() {}

    /**
     * Density (kg/m3) of air-free water at one atmosphere, 0 to 100 °C: to 40 °C that of Tanaka, above it that of Kell
     * drawn to meet it there, a factor of 1 within 4e-6.
     */
    public static double density(double celsius) {
        return celsius <= WARMEST
                ? densityTanaka(celsius)
                : densityKell(celsius) * (densityTanaka(WARMEST) / densityKell(WARMEST));
    }

    /** Density (kg/m3) of air-free water at one atmosphere, 0 to 40 °C (Tanaka et al. 2001). */
    public static double densityTanaka(double celsius) {
        double t = celsius;
        double a = t - 3.983035;
        return 999.974950 * (1 - a * a * (t + 301.797) / (522528.9 * (t + 69.34881)));
    }

    /**
     * Density (kg/m3) of water at one atmosphere, 0 to 150 °C (Kell 1975). The coefficient of the denominator is
     * 16.879850e-3; one widely read reprint has two of its digits changed round.
     */
    public static double densityKell(double celsius) {
        double t = celsius;
        double numerator = 999.83952
                + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 + t * -280.54253e-12))));
        return numerator / (1 + 16.879850e-3 * t);
    }

    /** Viscosity (Pa s) of water, Vogel form: {@code 2.414e-5 * 10^(247.8/(T - 140))}. */
    public static double viscosity(double celsius) {
        return 2.414e-5 * Math.pow(10, 247.8 / (celsius + ZERO_CELSIUS - 140));
    }

    /**
     * Viscosity (Pa s) of water with a polymer in it while it runs through a mat: {@code mu (1 + k c)}.
     *
     * @param clear viscosity of clear water, Pa s
     * @param thickening k, m3/kg
     * @param concentration c of the dissolved polymer, kg/m3
     */
    public static double thickened(double clear, double thickening, double concentration) {
        return clear * (1 + thickening * concentration);
    }

    /** Density (kg/m3) of stock from consistency by mass and the densities of fibre wall and water; volumes add. */
    public static double stockDensity(double consistency, double wallDensity, double waterDensity) {
        return 1 / (consistency / wallDensity + (1 - consistency) / waterDensity);
    }
}
