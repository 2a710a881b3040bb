package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Specific edge load: net power over the length of bar edge crossed in a second.
 */
public interface EdgeLoad extends Quantity<EdgeLoad> {
    /**
     * Makes an amount in the unit "joule per metre".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<EdgeLoad> joulesPerMetre(double value) {
        return Kinds.EDGE_LOAD.of(value, "J/m");
    }
}
