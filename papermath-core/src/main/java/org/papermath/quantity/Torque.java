package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * The turning moment on a press screw.
 */
public interface Torque extends Quantity<Torque> {
    /**
     * Makes an amount in the unit "newton metre".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Torque> newtonMetres(double value) {
        return Kinds.TORQUE.of(value, "N.m");
    }
}
