package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * The mass of water vapour over the mass of dry air.
 */
public interface HumidityRatio extends Quantity<HumidityRatio> {
    /**
     * Makes an amount in the unit "gram per kilogram of dry air".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<HumidityRatio> gramsPerKilogram(double value) {
        return Kinds.HUMIDITY_RATIO.of(value, "g/kg");
    }
}
