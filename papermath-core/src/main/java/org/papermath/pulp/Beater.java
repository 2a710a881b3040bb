package org.papermath.pulp;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/**
 * A Hollander beater: its name, the volume of its trough and its rated load. Immutable.
 *
 * <p>What a beater does to a fibre in an hour is not here: it is an assumption with the scope of fibre and beater.
 */
public final class Beater {
    private final String name;
    private final Amount<Volume> volume;
    private final Amount<Mass> load;

    private Beater(String name, Amount<Volume> volume, Amount<Mass> load) {
        this.name = name;
        this.volume = volume;
        this.load = load;
    }

    /**
     * Makes a beater.
     *
     * @param name its name, not empty; calibrated values are kept under it
     * @param trough the volume of stock it turns, 0.1 L to 20 m³
     * @param ratedLoad the oven-dry fibre it takes at most, 0.1 g to 2 t
     * @return the beater
     * @throws Refused if a value is out of range
     */
    public static Beater of(String name, Quantity<Volume> trough, Quantity<Mass> ratedLoad) {
        Objects.requireNonNull(name, "name");
        String called = Name.checkKey(name, "beater");
        if (called.isEmpty()) {
            throw Refused.of("equipment.unnamed", "beater: the name is empty; calibrated values are stored under it.");
        }
        return new Beater(
                called,
                Limits.TROUGH.check(trough, "trough volume"),
                Limits.RATED_LOAD.check(ratedLoad, "rated load of the beater"));
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
     * Returns the volume of stock it turns.
     *
     * @return the volume, in the unit it was given in
     */
    public Amount<Volume> trough() {
        return volume;
    }

    /**
     * Returns the oven-dry fibre it takes at most.
     *
     * @return the mass, in the unit it was given in
     */
    public Amount<Mass> ratedLoad() {
        return load;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Beater that
                && name.equals(that.name)
                && volume.si() == that.volume.si()
                && load.si() == that.load.si();
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, volume.si(), load.si());
    }

    @Override
    public String toString() {
        return name + " (beater, " + trough() + ", up to " + ratedLoad() + " oven-dry)";
    }
}
