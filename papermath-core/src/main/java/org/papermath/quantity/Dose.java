package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * The mass of an additive, as active matter, over the oven-dry mass of the fibre. A "per cent solution" is not a
 * dose.
 */
public interface Dose extends Quantity<Dose> {
    /**
     * Makes an amount in the unit "per cent on oven-dry fibre".
     *
     * @param value a finite number; range 0 to 50
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Dose> percent(double value) {
        return Kinds.DOSE.of(value, "%");
    }

    /**
     * Makes an amount in the unit "gram per kilogram of oven-dry fibre".
     *
     * @param value a finite number; range 0 to 500
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Dose> gramsPerKilogram(double value) {
        return Kinds.DOSE.of(value, "g/kg");
    }
}
