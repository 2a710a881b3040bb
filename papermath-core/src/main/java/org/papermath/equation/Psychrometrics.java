package org.papermath.equation;

import org.papermath.numeric.Roots;

/**
 * State of moist air: temperatures in degrees Celsius, pressures in Pa, per mass of dry air where stated.
 *
 * <p>Equations of the ASHRAE handbook's chapter on psychrometrics, without enhancement factor, which leaves the
 * humidity ratio of saturated air about 0.5 % below the handbook's table. Saturation is over liquid water from 0 °C on
 * and over ice below, as in the handbook.
 */
public final class Psychrometrics {
    /** Pressure of the standard atmosphere at sea level, Pa (exact by definition). */
    public static final double STANDARD_PRESSURE = 101325;

    /** Molar mass of water over that of dry air. */
    private static final double MOLAR_RATIO = 0.621945;
    /** Its inverse as rounded in the equation of the volume. */
    private static final double INVERSE_MOLAR_RATIO = 1.607858;
    /** Specific gas constant of dry air, J/(kg K). */
    private static final double DRY_AIR_GAS_CONSTANT = 287.042;

    private static final double ZERO_CELSIUS = 273.15;
    /** Ends of the search for a temperature. */
    private static final double COLDEST = -100;

    private static final double HOTTEST = 200;

    private Psychrometrics() {}

    /** Saturation pressure (Pa) over liquid water from 0 to 200 °C, over ice from -100 to 0 °C (Hyland and Wexler 1983). */
    public static double saturationPressure(double celsius) {
        double t = celsius + ZERO_CELSIUS;
        if (celsius < 0) {
            return Math.exp(-5.6745359e3 / t
                    + 6.3925247
                    + t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 + t * -9.484024e-13)))
                    + 4.1635019 * Math.log(t));
        }
        return Math.exp(-5.8002206e3 / t
                + 1.3914993
                + t * (-4.8640239e-2 + t * (4.1764768e-5 + t * -1.4452093e-8))
                + 6.5459673 * Math.log(t));
    }

    /** Pressure (Pa) of the standard atmosphere at an altitude (m) up to 11 km. */
    public static double pressureAtAltitude(double altitude) {
        return STANDARD_PRESSURE * Math.pow(1 - 2.25577e-5 * altitude, 5.2559);
    }

    /** Vapour pressure (Pa) from temperature and relative humidity (fraction). */
    public static double vapourPressure(double celsius, double relativeHumidity) {
        return relativeHumidity * saturationPressure(celsius);
    }

    /** Vapour pressure (Pa) of a humidity ratio (kg/kg dry air); inverse of {@link #humidityRatio}. */
    public static double vapourPressureOfRatio(double humidityRatio, double pressure) {
        return pressure * humidityRatio / (MOLAR_RATIO + humidityRatio);
    }

    /** Humidity ratio (kg water per kg dry air) from vapour and air pressure. */
    public static double humidityRatio(double vapourPressure, double pressure) {
        return MOLAR_RATIO * vapourPressure / (pressure - vapourPressure);
    }

    /** Humidity ratio of saturated air at a temperature. */
    public static double saturatedHumidityRatio(double celsius, double pressure) {
        return humidityRatio(saturationPressure(celsius), pressure);
    }

    /** Relative humidity (fraction) of a humidity ratio at a temperature. */
    public static double relativeHumidity(double celsius, double humidityRatio, double pressure) {
        return vapourPressureOfRatio(humidityRatio, pressure) / saturationPressure(celsius);
    }

    /** Volume (m3) of moist air per kg of dry air. */
    public static double volume(double celsius, double humidityRatio, double pressure) {
        return DRY_AIR_GAS_CONSTANT * (celsius + ZERO_CELSIUS) * (1 + INVERSE_MOLAR_RATIO * humidityRatio) / pressure;
    }

    /** Humidity ratio from dry-bulb and wet-bulb temperature; below 0 °C the water in the sock is frozen. */
    public static double humidityRatioOfWetBulb(double celsius, double wetBulb, double pressure) {
        double saturated = saturatedHumidityRatio(wetBulb, pressure);
        if (wetBulb < 0) {
            return ((2830 - 0.24 * wetBulb) * saturated - 1.006 * (celsius - wetBulb))
                    / (2830 + 1.86 * celsius - 2.1 * wetBulb);
        }
        return ((2501 - 2.326 * wetBulb) * saturated - 1.006 * (celsius - wetBulb))
                / (2501 + 1.86 * celsius - 4.186 * wetBulb);
    }

    /**
     * Wet-bulb temperature from dry-bulb temperature, humidity ratio and air pressure; the dry-bulb temperature itself
     * when the air is saturated or beyond. Near 0 °C air can have two, one over water and one over ice; it is the one
     * over water then. Air between the two branches, which meet at 0 °C with a step, has a wet bulb of 0 °C.
     */
    public static double wetBulb(double celsius, double humidityRatio, double pressure) {
        if (humidityRatio >= saturatedHumidityRatio(celsius, pressure)) {
            return celsius;
        }
        boolean frozen = celsius < 0 || humidityRatio < humidityRatioOfWetBulb(celsius, 0, pressure);
        double justBelow = Math.min(celsius, -Double.MIN_NORMAL);
        if (frozen && humidityRatio > humidityRatioOfWetBulb(celsius, justBelow, pressure)) {
            return Math.min(celsius, 0);
        }
        // Each branch is searched by itself.
        return Roots.between(
                frozen ? COLDEST : 0,
                frozen ? justBelow : celsius,
                wet -> humidityRatioOfWetBulb(celsius, wet, pressure) - humidityRatio);
    }

    /**
     * Dew-point temperature of a vapour pressure (Pa), between -100 and 200 °C; below 0 °C that of frost.
     *
     * @throws ArithmeticException for a vapour pressure outside them
     */
    public static double dewPoint(double vapourPressure) {
        double log = Math.log(vapourPressure);
        return Roots.between(COLDEST, HOTTEST, t -> Math.log(saturationPressure(t)) - log);
    }
}
