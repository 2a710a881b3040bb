package org.papermath.pulp;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.equation.Additives;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.SolutionStrength;

/**
 * A stock solution, or a bath: so much product in so much water. Immutable.
 *
 * @param additive what is in it
 * @param strength active matter over volume
 * @param volume how much of it there is
 */
public record AdditiveSolution(Additive additive, Amount<SolutionStrength> strength, Amount<Volume> volume) {
    /**
     * Makes a solution of known strength.
     *
     * @param additive what is in it
     * @param strength active matter over volume
     * @param volume how much of it there is, above zero
     * @throws Refused if a value is out of range
     */
    public AdditiveSolution {
        Objects.requireNonNull(additive, "additive");
        strength = Kinds.SOLUTION_STRENGTH.check(strength, "strength of the solution");
        volume = Kinds.VOLUME.checkAboveZero(volume, "volume of the solution");
    }

    /**
     * Makes a solution of a weighed product. At these strengths the volume of the water is taken for that of the
     * solution.
     *
     * @param additive what is dissolved
     * @param product the product weighed out
     * @param volume the volume it is made up to, above zero
     * @return the solution
     * @throws Refused if a value is out of range
     */
    public static AdditiveSolution of(Additive additive, Quantity<Mass> product, Quantity<Volume> volume) {
        Objects.requireNonNull(additive, "additive");
        double litres = Kinds.VOLUME.siAboveZero(volume, "volume of the solution");
        double active = additive.activeFraction().map(Amount::si).orElse(1.0)
                * Kinds.MASS.si(product, "product of " + additive.name());
        return new AdditiveSolution(
                additive,
                Kinds.SOLUTION_STRENGTH.ofSi(Additives.solutionStrength(active, litres), "g/L"),
                Kinds.VOLUME.ofSi(litres, "L"));
    }

    /**
     * Returns the solution with water added.
     *
     * @param water the volume of water
     * @return the weaker solution
     * @throws Refused if the volume is out of range
     */
    public AdditiveSolution dilutedWith(Quantity<Volume> water) {
        double more = volume.si() + Kinds.VOLUME.si(water, "water");
        return new AdditiveSolution(
                additive,
                Kinds.SOLUTION_STRENGTH.ofSi(strength.si() * volume.si() / more, "g/L"),
                Kinds.VOLUME.ofSi(more, "L"));
    }

    /**
     * Returns the active matter over solution and all by mass, by the shipped density of water.
     *
     * @return the share by mass
     */
    public Amount<Share> shareByMass() {
        return shareByMass(Assumptions.standard());
    }

    /**
     * Returns the active matter over solution and all by mass, taking the volume for that of the water in it.
     *
     * @param assumptions where {@code water.density-in-beater} is looked up
     * @return the share by mass
     */
    public Amount<Share> shareByMass(Assumptions assumptions) {
        double water = assumptions.si("water.density-in-beater", Scope.GENERAL);
        return Kinds.SHARE.ofSi(strength.si() / (strength.si() + water), "%");
    }

    /**
     * Returns the volume of this solution that brings a vat to a strength.
     *
     * @param wanted the target strength in the vat, less than that of this solution
     * @param vat the volume in the vat
     * @return the volume to pour in, the vat's own volume taken as unchanged
     * @throws Refused if the wanted strength is not below that of this solution, or the solution does not suffice
     */
    public Amount<Volume> toBring(Quantity<SolutionStrength> wanted, Quantity<Volume> vat) {
        Amount<SolutionStrength> aim =
                Kinds.SOLUTION_STRENGTH.check(wanted, "target strength").to("g/L");
        if (!(aim.si() < strength.si())) {
            throw Refused.of(
                    "additive.solution-too-weak",
                    "target strength: " + aim + " given, but the solution itself has only " + strength
                            + ". Make a stronger solution.",
                    "given",
                    aim.toString(),
                    "solution",
                    strength.toString());
        }
        return Kinds.VOLUME.ofSi(aim.si() * Kinds.VOLUME.si(vat, "volume in the vat") / strength.si(), "L");
    }

    /**
     * Returns the bath paper has to pick up for a share of size on it, as gelatine in surface sizing.
     *
     * @param onPaper active matter wanted over the mass of dry paper
     * @param bath active matter over bath, by mass, above zero
     * @return the mass of bath over the mass of dry paper
     * @throws Refused if a share is out of range
     */
    public static Amount<Dimensionless> pickUp(Quantity<Share> onPaper, Quantity<Share> bath) {
        return Kinds.NUMBER.ofSi(
                Kinds.SHARE.si(onPaper, "size on the paper") / Kinds.SHARE.siAboveZero(bath, "strength of the bath"),
                "1");
    }

    @Override
    public String toString() {
        return volume + " of " + additive.name() + " at " + strength;
    }
}
