package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * The pressure on the wet sheet itself: force over the area that carries it. Not what the gauge shows.
 */
public interface SheetPressure extends Quantity<SheetPressure> {
    /**
     * Makes an amount in the unit "kilopascal".
     *
     * @param value a finite number; range 0 to 100 000
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<SheetPressure> kilopascals(double value) {
        return Kinds.SHEET_PRESSURE.of(value, "kPa");
    }

    /**
     * Makes an amount in the unit "pound-force per square inch".
     *
     * @param value a finite number; range 0 to 14 500
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<SheetPressure> psi(double value) {
        return Kinds.SHEET_PRESSURE.of(value, "psi");
    }
}
