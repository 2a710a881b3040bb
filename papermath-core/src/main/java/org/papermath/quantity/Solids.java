package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Oven-dry mass over total mass of a wet sheet or pulp.
 */
public interface Solids extends Quantity<Solids> {
    /**
     * Makes an amount in the unit "per cent".
     *
     * @param value a finite number; range above 0, at most 100
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Solids> percent(double value) {
        return Kinds.SOLIDS.of(value, "%");
    }

    /**
     * Makes an amount in the unit "fraction".
     *
     * @param value a finite number; range above 0, at most 1
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Solids> fraction(double value) {
        return Kinds.SOLIDS.of(value, "1");
    }
}
