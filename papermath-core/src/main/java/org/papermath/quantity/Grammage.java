package org.papermath.quantity;

import java.util.Objects;
import javax.measure.Quantity;

/** Mass over area of a sheet (ISO 536), also called substance or basis weight. */
public interface Grammage extends Quantity<Grammage> {
    /**
     * Makes an amount in grams per square metre.
     *
     * @param value a finite number; above 0, at most 20 000
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Grammage> gsm(double value) {
        return Kinds.GRAMMAGE.of(value, "g/m2");
    }

    /**
     * Makes an amount from the weight of a ream in pounds.
     *
     * @param value the weight of the ream in pounds, above 0
     * @param basis the sheet size and count of the ream
     * @return the amount, in pounds of that ream
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Grammage> pounds(double value, ReamBasis basis) {
        Objects.requireNonNull(basis, "basis");
        return basis.grammageOfPounds(value);
    }
}
