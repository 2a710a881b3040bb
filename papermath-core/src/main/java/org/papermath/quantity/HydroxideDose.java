package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * The hydroxide an alkali can give, over the oven-dry fibre it cooks: what lets one alkali be weighed against another.
 */
public interface HydroxideDose extends Quantity<HydroxideDose> {
    /**
     * Makes an amount in the unit "mole of hydroxide per kilogram of oven-dry fibre".
     *
     * @param value a finite number; range 0 to 20
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<HydroxideDose> molesPerKilogram(double value) {
        return Kinds.HYDROXIDE_DOSE.of(value, "mol/kg");
    }
}
