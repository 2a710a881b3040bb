package org.papermath.vat;

import java.util.Objects;

import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;

import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/** A vat: its name, the volume it is worked at and the temperature of the stock in it. Immutable. */
public final class Vat {
    private static final double ROOM = 273.15 + 20;

    private final String name;
    private final double volume;
    private final double kelvin;

    private Vat(String name, double volume, double kelvin) {
        this.name = name;
        this.volume = volume;
        this.kelvin = kelvin;
    }

    /**
     * Makes a vat worked at 20 °C.
     *
     * @param name its name, not empty; calibrated values are kept under it
     * @param workingVolume the volume at the mark it is worked at, above zero
     * @return the vat
     * @throws Refused if a value is out of range
     */
    public static Vat of(String name, Quantity<Volume> workingVolume) {
        if (name.isBlank()) {
            throw Refused.of("equipment.unnamed", "vat: a name is wanted; calibrated values are kept under it.");
        }
        return new Vat(name, Kinds.VOLUME.siAboveZero(workingVolume, "working volume of the vat"), ROOM);
    }

    /**
     * Returns the vat worked at another temperature.
     *
     * @param temperature the temperature of the stock, 5 to 60 °C
     * @return the vat
     * @throws Refused if the temperature is out of range
     */
    public Vat at(Quantity<Temperature> temperature) {
        return new Vat(name, volume, Kinds.TEMPERATURE.siWithin(temperature, "vat temperature", 278.15, 333.15));
    }

    /**
     * Returns the name.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns the volume at the mark it is worked at.
     *
     * @return the volume
     */
    public Amount<Volume> workingVolume() {
        return Kinds.VOLUME.ofSi(volume, "L");
    }

    /**
     * Returns the temperature of the stock.
     *
     * @return the temperature
     */
    public Amount<Temperature> temperature() {
        return Kinds.TEMPERATURE.ofSi(kelvin, "Cel");
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Vat that && name.equals(that.name) && volume == that.volume && kelvin == that.kelvin;
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, volume, kelvin);
    }

    @Override
    public String toString() {
        return name + " (vat, " + workingVolume() + ", " + temperature() + ")";
    }
}
