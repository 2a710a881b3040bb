package org.papermath.air;

import java.util.Objects;

import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;

import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.RelativeHumidity;

/** The state of air: temperature, relative humidity, pressure. Immutable. */
public final class Air {
    /** Standard pressure of the atmosphere at sea level, in pascals. */
    private static final double STANDARD_PRESSURE = 101325;

    private static final Air REFERENCE = new Air(273.15 + 23, 0.50, STANDARD_PRESSURE);

    private final double kelvin;
    private final double humidity;
    private final double pascals;

    private Air(double kelvin, double humidity, double pascals) {
        this.kelvin = kelvin;
        this.humidity = humidity;
        this.pascals = pascals;
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
        return new Air(Kinds.TEMPERATURE.siWithin(temperature, "air temperature", 273.15, 333.15),
                Kinds.RELATIVE_HUMIDITY.siWithin(humidity, "relative humidity", 0.01, 1), STANDARD_PRESSURE);
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
        return new Air(kelvin, humidity, Kinds.AIR_PRESSURE.siWithin(pressure, "pressure of the atmosphere", 50e3, 110e3));
    }

    /**
     * Returns the temperature.
     *
     * @return the temperature
     */
    public Amount<Temperature> temperature() {
        return Kinds.TEMPERATURE.ofSi(kelvin, "Cel");
    }

    /**
     * Returns the relative humidity.
     *
     * @return the relative humidity
     */
    public Amount<RelativeHumidity> humidity() {
        return Kinds.RELATIVE_HUMIDITY.ofSi(humidity, "%");
    }

    /**
     * Returns the pressure of the atmosphere.
     *
     * @return the pressure
     */
    public Amount<Pressure> pressure() {
        return Kinds.AIR_PRESSURE.ofSi(pascals, "kPa");
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Air that && kelvin == that.kelvin && humidity == that.humidity && pascals == that.pascals;
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
