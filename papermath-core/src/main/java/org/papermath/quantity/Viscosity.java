package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Dynamic viscosity.
 */
public interface Viscosity extends Quantity<Viscosity> {
    /**
     * Makes an amount in the unit "millipascal second".
     *
     * @param value a finite number; range above 0
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Viscosity> millipascalSeconds(double value) {
        return Kinds.VISCOSITY.of(value, "mPa.s");
    }
}
