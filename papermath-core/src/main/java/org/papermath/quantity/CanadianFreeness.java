package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Drainability by the Canadian Standard freeness tester (ISO 5267-2). It has a dimension of its own: it is not a
 * volume, and not 1000 less ten times the Schopper-Riegler number.
 */
public interface CanadianFreeness extends Quantity<CanadianFreeness> {
    /**
     * Makes an amount in the unit "millilitre at the side orifice".
     *
     * @param value a finite number; range 0 to 1000
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<CanadianFreeness> millilitres(double value) {
        return Kinds.CANADIAN_FREENESS.of(value, "mL_CSF");
    }
}
