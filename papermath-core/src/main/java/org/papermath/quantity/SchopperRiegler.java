package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Drainability by the Schopper-Riegler tester (ISO 5267-1). It has a dimension of its own: it does not convert to
 * a number, a volume or Canadian freeness by arithmetic.
 */
public interface SchopperRiegler extends Quantity<SchopperRiegler> {
    /**
     * Makes an amount in the unit "Schopper-Riegler number".
     *
     * @param value a finite number; range 0 to 100
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<SchopperRiegler> degrees(double value) {
        return Kinds.SCHOPPER_RIEGLER.of(value, "SR");
    }
}
