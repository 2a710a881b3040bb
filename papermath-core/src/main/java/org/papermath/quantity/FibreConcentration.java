package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * The oven-dry mass of fibre in a volume of stock or of water (mass by volume). It is not a {@link Consistency}.
 */
public interface FibreConcentration extends Quantity<FibreConcentration> {
    /**
     * Makes an amount in the unit "gram per litre".
     *
     * @param value a finite number; range 0 to 1600
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<FibreConcentration> gramsPerLitre(double value) {
        return Kinds.FIBRE_CONCENTRATION.of(value, "g/L");
    }
}
