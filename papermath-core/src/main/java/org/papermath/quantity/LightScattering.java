package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Light scattering coefficient of a sheet: what it scatters by its grammage.
 */
public interface LightScattering extends Quantity<LightScattering> {
    /**
     * Makes an amount in the unit "square metre per kilogram".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<LightScattering> squareMetresPerKilogram(double value) {
        return Kinds.LIGHT_SCATTERING.of(value, "m2/kg");
    }
}
