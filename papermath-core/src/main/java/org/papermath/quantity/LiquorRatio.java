package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Volume of liquor over the mass of dry fibre in it.
 */
public interface LiquorRatio extends Quantity<LiquorRatio> {
    /**
     * Makes an amount in the unit "litre per kilogram".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<LiquorRatio> litresPerKilogram(double value) {
        return Kinds.LIQUOR_RATIO.of(value, "L/kg");
    }
}
