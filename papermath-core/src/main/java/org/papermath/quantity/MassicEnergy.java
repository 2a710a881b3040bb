package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Energy over mass, such as the net specific energy of beating.
 */
public interface MassicEnergy extends Quantity<MassicEnergy> {
    /**
     * Makes an amount in the unit "kilowatt hour per tonne".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<MassicEnergy> kilowattHoursPerTonne(double value) {
        return Kinds.MASSIC_ENERGY.of(value, "kW.h/t");
    }
}
