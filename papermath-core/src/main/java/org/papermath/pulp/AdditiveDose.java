package org.papermath.pulp;

import javax.measure.Quantity;

import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Kinds;

/**
 * How much of an additive a recipe takes.
 *
 * @param additive the additive
 * @param dose active matter over oven-dry fibre, 0 to 50 %
 */
public record AdditiveDose(Additive additive, Amount<Dose> dose) {
    /**
     * Makes a dose.
     *
     * @param additive the additive
     * @param dose active matter over oven-dry fibre, 0 to 50 %
     * @return the dose
     * @throws org.papermath.quantity.Refused if the dose is out of range
     */
    public static AdditiveDose of(Additive additive, Quantity<Dose> dose) {
        return new AdditiveDose(additive, Kinds.DOSE.check(dose, "dose of " + additive.name()));
    }

    @Override
    public String toString() {
        return additive + ", " + dose + " on oven-dry fibre";
    }
}
