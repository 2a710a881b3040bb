package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * A rate per time, such as the rate constant of beating.
 */
public interface Rate extends Quantity<Rate> {
    /**
     * Makes an amount in the unit "per hour".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Rate> perHour(double value) {
        return Kinds.RATE.of(value, "1/h");
    }

    /**
     * Makes an amount in the unit "per minute".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Rate> perMinute(double value) {
        return Kinds.RATE.of(value, "1/min");
    }
}
