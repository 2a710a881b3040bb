package org.papermath.equation;

/** Moisture ratio of fibre and paper in equilibrium with air; water activity is relative humidity as a fraction. */
public final class Sorption {
    /** Specific gas constant of water vapour as rounded in the isotherm of Tryding et al. 2022, kJ/(kg K). */
    private static final double TRYDING_GAS_CONSTANT = 0.4615;

    private Sorption() {}

    /**
     * Moisture ratio by the Guggenheim-Anderson-de Boer isotherm:
     * {@code M0 C K a/((1 - K a)(1 - K a + C K a))}, with M0 the monolayer.
     */
    public static double gab(double activity, double monolayer, double c, double k) {
        double ka = k * activity;
        return monolayer * c * ka / ((1 - ka) * (1 - ka + c * ka));
    }

    /**
     * Moisture ratio of a sheet that came to the air from the wet side: above that from the dry side by an offset stated
     * at middle humidity, which goes to nothing in dry and in saturated air.
     */
    public static double desorption(double adsorption, double offset, double activity) {
        return adsorption + offset * 4 * activity * (1 - activity);
    }

    /** Moisture ratio at another temperature by a straight slope (per K), stated at 50 % relative humidity. */
    public static double atTemperature(double ratio, double slope, double temperature, double stated) {
        return ratio + slope * (temperature - stated);
    }

    /**
     * Moisture ratio at another temperature by a slope (per K) stated at 50 % relative humidity, where the ratio is
     * {@code middle}; elsewhere the slope goes with the ratio, so that dry stays dry.
     */
    public static double atTemperatureInProportion(
            double ratio, double middle, double slope, double temperature, double stated) {
        return atTemperature(ratio, slope * ratio / middle, temperature, stated);
    }

    /**
     * Moisture ratio of pulp on first desorption at an absolute temperature (K), an upper curve: the isotherm above
     * with the coefficients of Tryding et al. 2022.
     */
    public static double tryding(double activity, double kelvin) {
        double rt = TRYDING_GAS_CONSTANT * kelvin;
        return gab(activity, 0.0578, 0.4273 * Math.exp(468.9266 / rt), 0.1011 * Math.exp(297.7358 / rt));
    }

    /**
     * Moisture ratio of wood at a temperature (degrees Celsius): Hailwood-Horrobin equation with Simpson's
     * coefficients.
     */
    public static double hailwoodHorrobin(double activity, double celsius) {
        double t = celsius;
        double w = 349 + 1.29 * t + 0.0135 * t * t;
        double k = 0.805 + 7.36e-4 * t - 2.73e-6 * t * t;
        double k1 = 6.27 - 9.38e-3 * t - 3.03e-4 * t * t;
        double k2 = 1.91 + 0.0407 * t - 2.93e-4 * t * t;
        double kh = k * activity;
        double dissolved = kh / (1 - kh);
        double hydrated = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
        return 18 / w * (dissolved + hydrated);
    }
}
