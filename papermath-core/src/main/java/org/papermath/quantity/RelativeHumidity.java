package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * The vapour pressure in air over that of saturated air at the same temperature.
 */
public interface RelativeHumidity extends Quantity<RelativeHumidity> {
    /**
     * Makes an amount in the unit "per cent".
     *
     * @param value a finite number; range 0 to 100
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<RelativeHumidity> percent(double value) {
        return Kinds.RELATIVE_HUMIDITY.of(value, "%");
    }

    /**
     * Makes an amount in the unit "fraction".
     *
     * @param value a finite number; range 0 to 1
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<RelativeHumidity> fraction(double value) {
        return Kinds.RELATIVE_HUMIDITY.of(value, "1");
    }
}
