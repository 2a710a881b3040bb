package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Thickness over grammage, the inverse of the apparent density.
 */
public interface Bulk extends Quantity<Bulk> {
    /**
     * Makes an amount in the unit "cubic centimetre per gram".
     *
     * @param value a finite number; range above 0
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Bulk> cubicCentimetresPerGram(double value) {
        return Kinds.BULK.of(value, "cm3/g");
    }
}
