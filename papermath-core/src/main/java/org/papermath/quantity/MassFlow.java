package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * A flow by mass, such as the water a stack gives off.
 */
public interface MassFlow extends Quantity<MassFlow> {
    /**
     * Makes an amount in the unit "kilogram per hour".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<MassFlow> kilogramsPerHour(double value) {
        return Kinds.MASS_FLOW.of(value, "kg/h");
    }
}
