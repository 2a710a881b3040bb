package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * The part of a length lost in drying. It is never an area: a quarter by each side is 44 % by area.
 */
public interface LinearShrinkage extends Quantity<LinearShrinkage> {
    /**
     * Makes an amount in the unit "per cent".
     *
     * @param value a finite number; range -20 to 60; below zero is growth
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<LinearShrinkage> percent(double value) {
        return Kinds.LINEAR_SHRINKAGE.of(value, "%");
    }

    /**
     * Makes an amount in the unit "fraction".
     *
     * @param value a finite number; range -0.2 to 0.6
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<LinearShrinkage> fraction(double value) {
        return Kinds.LINEAR_SHRINKAGE.of(value, "1");
    }
}
