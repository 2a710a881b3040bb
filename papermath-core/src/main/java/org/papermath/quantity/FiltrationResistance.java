package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Specific filtration resistance of a fibre mat.
 */
public interface FiltrationResistance extends Quantity<FiltrationResistance> {
    /**
     * Makes an amount in the unit "metre per kilogram".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<FiltrationResistance> metresPerKilogram(double value) {
        return Kinds.FILTRATION_RESISTANCE.of(value, "m/kg");
    }
}
