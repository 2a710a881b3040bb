package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Mass over volume: the apparent density of a sheet (grammage over thickness), the density of water or of stock,
 * the bulk density of a powder.
 */
public interface ApparentDensity extends Quantity<ApparentDensity> {
    /**
     * Makes an amount in the unit "kilogram per cubic metre".
     *
     * @param value a finite number; range above 0
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<ApparentDensity> kilogramsPerCubicMetre(double value) {
        return Kinds.DENSITY.of(value, "kg/m3");
    }

    /**
     * Makes an amount in the unit "gram per cubic centimetre".
     *
     * @param value a finite number; range above 0
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<ApparentDensity> gramsPerCubicCentimetre(double value) {
        return Kinds.DENSITY.of(value, "g/cm3");
    }
}
