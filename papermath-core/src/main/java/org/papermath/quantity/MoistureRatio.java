package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Water over oven-dry mass (dry basis), as regain and press solids are stated. Water over total mass is a {@link
 * Moisture}.
 */
public interface MoistureRatio extends Quantity<MoistureRatio> {
    /**
     * Makes an amount in the unit "gram per gram".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<MoistureRatio> gramsPerGram(double value) {
        return Kinds.MOISTURE_RATIO.of(value, "g/g");
    }

    /**
     * Makes an amount in the unit "per cent".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<MoistureRatio> percent(double value) {
        return Kinds.MOISTURE_RATIO.of(value, "%");
    }
}
