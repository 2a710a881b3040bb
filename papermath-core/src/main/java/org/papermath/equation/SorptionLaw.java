package org.papermath.equation;

/**
 * Moisture ratio of one fibre in air at the temperature the isotherms are stated at.
 *
 * @param monolayer of the isotherm
 * @param energy constant of the isotherm
 * @param bulk constant of the isotherm
 */
public record SorptionLaw(double monolayer, double energy, double bulk) {
    /** The temperature the isotherms are stated at, °C. */
    public static final double STATED_CELSIUS = 23;

    /** The relative humidity at which the change with temperature is stated. */
    public static final double MIDDLE = 0.5;

    /** The moisture ratio at a relative humidity. */
    public double ratio(double humidity) {
        return Sorption.gab(humidity, monolayer, energy, bulk);
    }

    /** Moisture ratio at a temperature (°C), from that at the stated one and that at middle humidity. */
    public static double at(double celsius, double ratio, double middle, double slope) {
        return Sorption.atTemperatureInProportion(ratio, middle, slope, celsius, STATED_CELSIUS);
    }
}
