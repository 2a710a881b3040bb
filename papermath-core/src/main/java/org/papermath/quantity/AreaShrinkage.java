package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * The part of an area lost in drying. It is never a length: a quarter by area is 13.4 % by each side.
 */
public interface AreaShrinkage extends Quantity<AreaShrinkage> {
    /**
     * Makes an amount in the unit "per cent".
     *
     * @param value a finite number; range -40 to 84; below zero is growth
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<AreaShrinkage> percent(double value) {
        return Kinds.AREA_SHRINKAGE.of(value, "%");
    }

    /**
     * Makes an amount in the unit "fraction".
     *
     * @param value a finite number; range -0.4 to 0.84
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<AreaShrinkage> fraction(double value) {
        return Kinds.AREA_SHRINKAGE.of(value, "1");
    }
}
