package org.papermath.pulp;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.quantity.Amount;
import org.papermath.quantity.ApparentDensity;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * Powder measured by the spoon: what a level spoon of it weighs. A mass from spoons needs the bulk density of this
 * powder; powders differ by a factor of four, so none is guessed.
 *
 * @param powder the name of the powder
 * @param bulkDensity its mass over the volume it fills as spooned
 */
public record SpoonMeasure(String powder, Amount<ApparentDensity> bulkDensity) {
    /**
     * Makes the measure from a known bulk density.
     *
     * @param powder the name of the powder
     * @param bulkDensity its mass over the volume it fills as spooned
     * @throws Refused if the density is out of range
     */
    public SpoonMeasure {
        Objects.requireNonNull(powder, "powder");
        bulkDensity = Kinds.DENSITY.check(bulkDensity, "bulk density of " + powder);
    }

    /**
     * Makes the measure from a known bulk density.
     *
     * @param powder the name of the powder
     * @param bulkDensity its mass over the volume it fills as spooned
     * @return the measure
     * @throws Refused if the density is out of range
     */
    public static SpoonMeasure of(String powder, Quantity<ApparentDensity> bulkDensity) {
        Objects.requireNonNull(powder, "powder");
        return new SpoonMeasure(
                powder,
                Kinds.DENSITY.check(bulkDensity, "bulk density of " + powder).to("g/mL"));
    }

    /**
     * Makes the measure by weighing a number of level spoons once.
     *
     * @param powder the name of the powder
     * @param spoon the volume of the spoon, for example {@code Kinds.VOLUME.of(1, "tsp_us")}
     * @param spoons how many level spoons were weighed, 1 or more
     * @param mass what they weighed together, above zero
     * @return the measure
     * @throws Refused if a value is out of range
     */
    public static SpoonMeasure weighed(String powder, Quantity<Volume> spoon, int spoons, Quantity<Mass> mass) {
        Objects.requireNonNull(powder, "powder");
        if (spoons < 1) {
            throw Refused.of(
                    "additive.no-spoons",
                    "spoons of " + powder + ": " + spoons + " given; must be 1 or more.",
                    "powder",
                    powder,
                    "given",
                    spoons);
        }
        double density = Kinds.MASS.siAboveZero(mass, "mass of the spoonfuls")
                / (spoons * Kinds.VOLUME.siAboveZero(spoon, "volume of the spoon"));
        return new SpoonMeasure(powder, Kinds.DENSITY.ofSi(density, "g/mL"));
    }

    /**
     * Makes the refusal of a mass for powder of which only a volume is known.
     *
     * @param powder the name of the powder
     * @param volume the volume that was spooned
     * @return the refusal, to be thrown
     */
    public static Refused bulkDensityWanted(String powder, Quantity<Volume> volume) {
        Objects.requireNonNull(powder, "powder");
        String given = Kinds.VOLUME.check(volume, "volume of " + powder).toString();
        return Refused.of(
                "additive.bulk-density-wanted",
                powder + ": " + given + " by the spoon given, which is no mass. Weigh ten level spoons once, or give"
                        + " its bulk"
                        + " density.",
                "powder",
                powder,
                "given",
                given);
    }

    /**
     * Returns the mass of a volume as spooned.
     *
     * @param volume the volume
     * @return the mass
     * @throws Refused if the volume is out of range
     */
    public Amount<Mass> mass(Quantity<Volume> volume) {
        return Kinds.MASS.ofSi(Kinds.VOLUME.si(volume, "volume of " + powder) * bulkDensity.si(), "g");
    }

    /**
     * Returns the volume to spoon for a mass.
     *
     * @param mass the mass
     * @return the volume
     * @throws Refused if the mass is out of range
     */
    public Amount<Volume> volume(Quantity<Mass> mass) {
        return Kinds.VOLUME.ofSi(Kinds.MASS.si(mass, "mass of " + powder) / bulkDensity.si(), "mL");
    }

    @Override
    public String toString() {
        return powder + ", " + bulkDensity + " by the spoon";
    }
}
