package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * The mass of active matter dissolved or stirred into a volume made up: a stock solution, a bath, a jar of white water.
 */
public interface SolutionStrength extends Quantity<SolutionStrength> {
    /**
     * Makes an amount in the unit "gram per litre".
     *
     * @param value a finite number; range 0 to 2500
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<SolutionStrength> gramsPerLitre(double value) {
        return Kinds.SOLUTION_STRENGTH.of(value, "g/L");
    }
}
