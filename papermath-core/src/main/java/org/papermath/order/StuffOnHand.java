package org.papermath.order;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;

/**
 * Stuff that stands beaten, coloured and dosed as a recipe has it: kept from a vat, put by from a batch, or slushed up from
 * broke and trim of the same paper.
 *
 * @param recipe the name of the recipe
 * @param ovenDry its oven-dry fibre, within {@link Limits#ON_HAND}
 * @param consistency how thick it stands
 * @param made the day it was beaten, by which it ages; empty where nobody knows
 */
public record StuffOnHand(
        String recipe, Amount<Mass> ovenDry, Amount<Consistency> consistency, Optional<LocalDate> made) {
    /**
     * Checks the parts.
     *
     * @param recipe the name of the recipe
     * @param ovenDry its oven-dry fibre
     * @param consistency how thick it stands, above zero
     * @param made the day it was beaten
     * @throws Refused if the name cannot be one, or a value is out of range
     */
    public StuffOnHand {
        Objects.requireNonNull(recipe, "recipe");
        Objects.requireNonNull(ovenDry, "ovenDry");
        Objects.requireNonNull(consistency, "consistency");
        Objects.requireNonNull(made, "made");
        recipe = CheckedName.require("recipe", recipe);
        Limits.ON_HAND.check(ovenDry, "stuff on hand of ", recipe);
        Kinds.CONSISTENCY.siAboveZero(consistency, "consistency of the stuff on hand");
        made.ifPresent(day -> Limits.day(day, "day the stuff was beaten"));
    }

    /**
     * Makes stuff of a recipe.
     *
     * @param recipe the name of the recipe
     * @param pulp the stuff
     * @return the stuff on hand, of no known age
     * @throws Refused as the constructor
     */
    public static StuffOnHand of(String recipe, Pulp pulp) {
        Objects.requireNonNull(pulp, "pulp");
        return new StuffOnHand(recipe, pulp.ovenDry(), pulp.consistency(), Optional.empty());
    }

    /**
     * Makes stuff of a recipe from dry broke and trim, slushed up.
     *
     * @param recipe the name of the recipe
     * @param ovenDry what they weigh oven-dry
     * @param consistency how thick they are slushed
     * @return the stuff on hand, of no known age
     * @throws Refused as the constructor
     */
    public static StuffOnHand ofBroke(String recipe, Quantity<Mass> ovenDry, Quantity<Consistency> consistency) {
        Objects.requireNonNull(recipe, "recipe");
        return new StuffOnHand(
                recipe,
                Kinds.MASS.check(ovenDry, "broke"),
                Kinds.CONSISTENCY.check(consistency, "consistency of the broke"),
                Optional.empty());
    }

    /**
     * Returns the same stuff, beaten on a day.
     *
     * @param day the day
     * @return the stuff
     * @throws Refused if the day is out of range
     */
    public StuffOnHand made(LocalDate day) {
        Objects.requireNonNull(day, "day");
        return new StuffOnHand(recipe, ovenDry, consistency, Optional.of(day));
    }

    /**
     * Returns how much there is, wet.
     *
     * @return the pulp
     */
    public Pulp pulp() {
        return Pulp.ofOvenDry(ovenDry).at(consistency);
    }

    @Override
    public String toString() {
        return pulp() + " of " + recipe + made.map(day -> ", beaten " + day).orElse("");
    }
}
