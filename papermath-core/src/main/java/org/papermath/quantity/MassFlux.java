package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * A flow by mass and area, such as the water one face gives off.
 */
public interface MassFlux extends Quantity<MassFlux> {
    /**
     * Makes an amount in the unit "gram per square metre and hour".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<MassFlux> gramsPerSquareMetreHour(double value) {
        return Kinds.MASS_FLUX.of(value, "g/(m2.h)");
    }
}
