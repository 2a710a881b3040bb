package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * The pressure a gauge shows, in a ram or a vacuum line. It becomes pressure on the sheet through the ram and the
 * sheet area.
 */
public interface GaugePressure extends Quantity<GaugePressure> {
    /**
     * Makes an amount in the unit "megapascal".
     *
     * @param value a finite number; range 0 to 1000
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<GaugePressure> megapascals(double value) {
        return Kinds.GAUGE_PRESSURE.of(value, "MPa");
    }

    /**
     * Makes an amount in the unit "bar".
     *
     * @param value a finite number; range 0 to 10 000
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<GaugePressure> bar(double value) {
        return Kinds.GAUGE_PRESSURE.of(value, "bar");
    }

    /**
     * Makes an amount in the unit "pound-force per square inch".
     *
     * @param value a finite number; range 0 to 145 000
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<GaugePressure> psi(double value) {
        return Kinds.GAUGE_PRESSURE.of(value, "psi");
    }

    /**
     * Makes an amount in the unit "inch of mercury (conventional, 3386.389 Pa)".
     *
     * @param value a finite number; range 0 to 300 000
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<GaugePressure> inchesOfMercury(double value) {
        return Kinds.GAUGE_PRESSURE.of(value, "inHg");
    }
}
