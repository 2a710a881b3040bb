package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * The oven-dry mass of fibre over the total mass of the stock (mass by mass, as ISO 4119 means it). Grams in a
 * litre are a {@link FibreConcentration}.
 */
public interface Consistency extends Quantity<Consistency> {
    /**
     * Makes an amount in the unit "per cent".
     *
     * @param value a finite number; range 0 to 100
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Consistency> percent(double value) {
        return Kinds.CONSISTENCY.of(value, "%");
    }

    /**
     * Makes an amount in the unit "fraction".
     *
     * @param value a finite number; range 0 to 1
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Consistency> fraction(double value) {
        return Kinds.CONSISTENCY.of(value, "1");
    }
}
