package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * The power of the sun on an area, such as on a drying board; about 1000 W/m² at most on a clear day.
 */
public interface Irradiance extends Quantity<Irradiance> {
    /**
     * Makes an amount in the unit "watt per square metre".
     *
     * @param value a finite number; range 0 to 2000
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Irradiance> wattsPerSquareMetre(double value) {
        return Kinds.IRRADIANCE.of(value, "W/m2");
    }
}
