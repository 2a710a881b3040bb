package org.papermath.air;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.papermath.equation.Psychrometrics;
import org.papermath.quantity.Amount;
import org.papermath.quantity.HumidityRatio;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;

/** The state of air: temperature, relative humidity, pressure. Immutable. */
public final class Air {
    /** Standard pressure of the atmosphere at sea level, in pascals. */
    private static final double STANDARD_PRESSURE = 101325;

    private static final double ZERO_CELSIUS = 273.15;
    private static final double LEAST_HUMIDITY = 0.01;
    private static final double HIGHEST_PLACE = 5000;

    private static final Air REFERENCE = ofSi(273.15 + 23, 0.50, STANDARD_PRESSURE);

    private final Amount<Temperature> temperature;
    private final Amount<RelativeHumidity> moist;
    private final Amount<Pressure> pressure;
    private final double kelvin;
    private final double humidity;
    private final double pascals;

    private Air(Amount<Temperature> temperature, Amount<RelativeHumidity> moist, Amount<Pressure> pressure) {
        this.temperature = temperature;
        this.moist = moist;
        this.pressure = pressure;
        this.kelvin = temperature.si();
        this.humidity = moist.si();
        this.pascals = pressure.si();
    }

    private static Air ofSi(double kelvin, double humidity, double pascals) {
        return new Air(
                Kinds.TEMPERATURE.ofSi(kelvin, "Cel"),
                Kinds.RELATIVE_HUMIDITY.ofSi(humidity, "%"),
                Kinds.AIR_PRESSURE.ofSi(pascals, "kPa"));
    }

    /**
     * Makes air at standard pressure.
     *
     * @param temperature the temperature, 0 to 60 °C
     * @param humidity the relative humidity, 1 to 100 %
     * @return the state
     * @throws org.papermath.quantity.Refused if a value is out of range
     */
    public static Air of(Quantity<Temperature> temperature, Quantity<RelativeHumidity> humidity) {
        return new Air(
                Limits.AIR_TEMPERATURE.check(temperature, "air temperature"),
                Limits.AIR_HUMIDITY.check(humidity, "relative humidity"),
                REFERENCE.pressure);
    }

    /**
     * Returns the reference atmosphere for paper: 23 °C, 50 % relative humidity.
     *
     * @return the state
     * @source ISO 187 / TAPPI T 402
     */
    public static Air reference() {
        return REFERENCE;
    }

    /**
     * Returns the same air at another pressure.
     *
     * @param pressure the pressure of the atmosphere, 50 to 110 kPa
     * @return the state
     * @throws org.papermath.quantity.Refused if the pressure is out of range
     */
    public Air at(Quantity<Pressure> pressure) {
        return new Air(temperature, moist, Limits.AIR_PRESSURE.check(pressure, "pressure of the atmosphere"));
    }

    /**
     * Returns the same air at the usual pressure of a place above the sea.
     *
     * @param altitude the height above the sea, 0 to 5000 m
     * @return the state
     * @throws Refused if the altitude is out of range
     * @source the standard atmosphere: p = 101 325 (1 − 2.25577·10⁻⁵ z)^5.2559
     */
    public Air atAltitude(Quantity<Length> altitude) {
        double metres = Kinds.LENGTH.siWithin(altitude, "altitude", 0, HIGHEST_PLACE);
        return new Air(temperature, moist, Kinds.AIR_PRESSURE.ofSi(Psychrometrics.pressureAtAltitude(metres), "kPa"));
    }

    /**
     * Makes air at standard pressure from the two thermometers of a sling or fan psychrometer.
     *
     * @param temperature the dry thermometer, 0 to 60 °C
     * @param wetBulb the thermometer in the wet sock, 0 °C to the temperature of the dry one
     * @return the state
     * @throws Refused if a value is out of range, the wet thermometer is the warmer one, or the two are so far apart
     *     that the air would hold less than 1 % of the water it could
     * @source ASHRAE Handbook, Fundamentals, chapter on psychrometrics
     */
    public static Air ofWetBulb(Quantity<Temperature> temperature, Quantity<Temperature> wetBulb) {
        return ofWetBulbAt(temperature, wetBulb, STANDARD_PRESSURE);
    }

    /**
     * Makes air from the two thermometers of a sling or fan psychrometer, at another pressure.
     *
     * @param temperature the dry thermometer, 0 to 60 °C
     * @param wetBulb the thermometer in the wet sock, 0 °C to the temperature of the dry one
     * @param pressure the pressure of the atmosphere, 50 to 110 kPa
     * @return the state
     * @throws Refused as {@link #ofWetBulb(Quantity, Quantity)}, or if the pressure is out of range
     */
    public static Air ofWetBulb(
            Quantity<Temperature> temperature, Quantity<Temperature> wetBulb, Quantity<Pressure> pressure) {
        return ofWetBulbAt(
                temperature, wetBulb, Kinds.AIR_PRESSURE.siWithin(pressure, "pressure of the atmosphere", 50e3, 110e3));
    }

    private static Air ofWetBulbAt(Quantity<Temperature> temperature, Quantity<Temperature> wetBulb, double pascals) {
        double dry = Kinds.TEMPERATURE.siWithin(temperature, "air temperature", 273.15, 333.15);
        double wet = Kinds.TEMPERATURE.siWithin(wetBulb, "wet-bulb temperature", 273.15, 333.15);
        Amount<Temperature> dryAmount = Kinds.TEMPERATURE.ofSi(dry, "Cel");
        Amount<Temperature> wetAmount = Kinds.TEMPERATURE.ofSi(wet, "Cel");
        if (wet > dry) {
            throw Refused.of(
                    "air.wet-bulb-above-dry",
                    "wet-bulb temperature: " + wetAmount + " given, but the dry thermometer stands at " + dryAmount
                            + "; a wet thermometer never stands above it. See whether the two readings were changed"
                            + " over.",
                    "wetBulb",
                    wetAmount.toString(),
                    "temperature",
                    dryAmount.toString());
        }
        double celsius = dry - ZERO_CELSIUS;
        double ratio = Psychrometrics.humidityRatioOfWetBulb(celsius, wet - ZERO_CELSIUS, pascals);
        double humidity = ratio > 0 ? Psychrometrics.relativeHumidity(celsius, ratio, pascals) : 0;
        if (humidity < LEAST_HUMIDITY) {
            throw Refused.of(
                    "air.wet-bulb-too-low",
                    "wet-bulb temperature: " + wetAmount + " given beside " + dryAmount
                            + " dry; air that dry, below 1 % relative"
                            + " humidity, is not met with. See that the sock is wet and the air moves past it.",
                    "wetBulb",
                    wetAmount.toString(),
                    "temperature",
                    dryAmount.toString());
        }
        return ofSi(dry, Math.min(humidity, 1), pascals);
    }

    /**
     * Returns the pressure of the water vapour in the air.
     *
     * @return the vapour pressure
     * @source Hyland and Wexler 1983 for saturation, times the relative humidity
     */
    public Amount<Pressure> vapourPressure() {
        return Kinds.AIR_PRESSURE.ofSi(vapourPascals(), "Pa");
    }

    /**
     * Returns the water in the air over the dry air in it.
     *
     * @return the humidity ratio
     * @source W = 0.621945 p_w / (p − p_w)
     */
    public Amount<HumidityRatio> humidityRatio() {
        return Kinds.HUMIDITY_RATIO.ofSi(ratio(), "g/kg");
    }

    /**
     * Returns the temperature to which the air can cool before water falls out of it. Below 0 °C it is the frost point:
     * what falls out there is ice.
     *
     * @return the dew point, at most the temperature of the air
     */
    public Amount<Temperature> dewPoint() {
        double celsius = humidity == 1 ? celsius() : Psychrometrics.dewPoint(vapourPascals());
        return Kinds.TEMPERATURE.ofSi(celsius + ZERO_CELSIUS, "Cel");
    }

    /**
     * Returns what a thermometer in a wet sock shows in this air when it moves. Below 0 °C the sock is frozen.
     *
     * @return the wet-bulb temperature, at most the temperature of the air
     */
    public Amount<Temperature> wetBulb() {
        double celsius = humidity == 1 ? celsius() : Psychrometrics.wetBulb(celsius(), ratio(), pascals);
        return Kinds.TEMPERATURE.ofSi(celsius + ZERO_CELSIUS, "Cel");
    }

    /**
     * Returns the volume of this air that holds a mass of dry air, which is what ventilation is based on.
     *
     * @param dryAir the dry air in it
     * @return the volume of air and vapour together
     * @throws Refused if the mass is out of range
     * @source v = 287.042 T (1 + 1.607858 W) / p
     */
    public Amount<Volume> volumeOf(Quantity<Mass> dryAir) {
        double kilograms = Kinds.MASS.si(dryAir, "mass of dry air");
        return Kinds.VOLUME.ofSi(kilograms * Psychrometrics.volume(celsius(), ratio(), pascals), "m3");
    }

    /**
     * Returns whether the air holds all the water it can.
     *
     * @return whether the relative humidity is 100 %
     */
    public boolean isSaturated() {
        return humidity == 1;
    }

    /**
     * Returns the relative humidity of this air where it touches something warmer or colder: a heated board, a cold
     * wall. Where the surface is below the dew point water condenses on it and the air that touches it is saturated.
     *
     * @param surface the temperature of the surface, 0 to 100 °C
     * @return the relative humidity at the surface; 100 % where water condenses
     * @throws Refused if the temperature is out of range
     */
    public Amount<RelativeHumidity> relativeHumidityAtSurface(Quantity<Temperature> surface) {
        double celsius =
                Kinds.TEMPERATURE.siWithin(surface, "temperature of the surface", 273.15, 373.15) - ZERO_CELSIUS;
        double there = vapourPascals() / Psychrometrics.saturationPressure(celsius);
        return Kinds.RELATIVE_HUMIDITY.ofSi(Math.min(there, 1), "%");
    }

    /**
     * Returns whether water condenses on a surface in this air.
     *
     * @param surface the temperature of the surface, 0 to 100 °C
     * @return whether the surface is below the dew point
     * @throws Refused if the temperature is out of range
     */
    public boolean condensesOn(Quantity<Temperature> surface) {
        double celsius =
                Kinds.TEMPERATURE.siWithin(surface, "temperature of the surface", 273.15, 373.15) - ZERO_CELSIUS;
        return vapourPascals() > Psychrometrics.saturationPressure(celsius);
    }

    private double celsius() {
        return kelvin - ZERO_CELSIUS;
    }

    private double vapourPascals() {
        return Psychrometrics.vapourPressure(celsius(), humidity);
    }

    private double ratio() {
        return Psychrometrics.humidityRatio(vapourPascals(), pascals);
    }

    /**
     * Returns the temperature.
     *
     * @return the temperature, in the unit it was given in
     */
    public Amount<Temperature> temperature() {
        return temperature;
    }

    /**
     * Returns the relative humidity.
     *
     * @return the relative humidity, in the unit it was given in
     */
    public Amount<RelativeHumidity> humidity() {
        return moist;
    }

    /**
     * Returns the pressure of the atmosphere.
     *
     * @return the pressure, in the unit it was given in
     */
    public Amount<Pressure> pressure() {
        return pressure;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Air that
                && kelvin == that.kelvin
                && humidity == that.humidity
                && pascals == that.pascals;
    }

    @Override
    public int hashCode() {
        return Objects.hash(kelvin, humidity, pascals);
    }

    @Override
    public String toString() {
        return temperature() + ", " + humidity() + " RH";
    }
}
