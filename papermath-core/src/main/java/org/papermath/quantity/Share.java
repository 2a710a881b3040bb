package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * A part of a whole: a fibre in the furnish, a reject rate, a retention.
 */
public interface Share extends Quantity<Share> {
    /**
     * Makes an amount in the unit "per cent".
     *
     * @param value a finite number; range 0 to 100
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Share> percent(double value) {
        return Kinds.SHARE.of(value, "%");
    }

    /**
     * Makes an amount in the unit "fraction".
     *
     * @param value a finite number; range 0 to 1
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Share> fraction(double value) {
        return Kinds.SHARE.of(value, "1");
    }
}
