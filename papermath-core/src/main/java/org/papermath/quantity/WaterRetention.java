package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Water retention value: water held by a pad of fibre after the centrifuge, over its dry mass (ISO 23714: 3000 g,
 * 30 min).
 */
public interface WaterRetention extends Quantity<WaterRetention> {
    /**
     * Makes an amount in the unit "gram per gram".
     *
     * @param value a finite number; range 0 to 20
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<WaterRetention> gramsPerGram(double value) {
        return Kinds.WATER_RETENTION.of(value, "g/g");
    }
}
