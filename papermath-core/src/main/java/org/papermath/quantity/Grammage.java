package org.papermath.quantity;

import javax.measure.Quantity;

/** Mass over area of a sheet (ISO 536), also called substance or basis weight. */
public interface Grammage extends Quantity<Grammage> {
    /**
     * Makes an amount in grams per square metre. Pounds are the weight of a ream and need to state which: {@code
     * ReamBasis.COVER.pounds(80)} of the package {@code format}.
     *
     * @param value a finite number; above 0, at most 20 000
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Grammage> gsm(double value) {
        return Kinds.GRAMMAGE.of(value, "g/m2");
    }
}
