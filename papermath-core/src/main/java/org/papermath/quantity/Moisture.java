package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Water over total mass (wet basis): the moisture of paper and of bought fibre. Water over dry mass is a {@link
 * MoistureRatio}.
 */
public interface Moisture extends Quantity<Moisture> {
    /**
     * Makes an amount in the unit "per cent".
     *
     * @param value a finite number; range 0 to 100
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Moisture> percent(double value) {
        return Kinds.MOISTURE.of(value, "%");
    }

    /**
     * Makes an amount in the unit "fraction".
     *
     * @param value a finite number; range 0 to 1
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Moisture> fraction(double value) {
        return Kinds.MOISTURE.of(value, "1");
    }
}
