package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Oven-dry mass over total mass of a wet sheet or pulp.
 */
public interface Solids extends Quantity<Solids> {
    /**
     * Makes an amount in the unit "per cent".
     *
     * @param value a finite number; range above 0, at most 100
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Solids> percent(double value) {
        return Kinds.SOLIDS.of(value, "%");
    }

    /**
     * Makes an amount in the unit "fraction".
     *
     * @param value a finite number; range above 0, at most 1
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Solids> fraction(double value) {
        return Kinds.SOLIDS.of(value, "1");
    }

    /**
     * Returns the solids of what has some moisture: all that is not water is dry, s = 1 − w.
     *
     * @param moisture water over total mass, below 100 %
     * @return oven-dry mass over total mass
     * @throws Refused if the moisture is out of range, of another kind, or leaves nothing dry
     */
    static Amount<Solids> ofMoisture(Quantity<Moisture> moisture) {
        return Kinds.SOLIDS.ofSi(1 - Kinds.MOISTURE.si(moisture, "moisture"), "%");
    }

    /**
     * Returns the solids of what holds some water for each gram dry: s = 1/(1 + u).
     *
     * @param ratio water over oven-dry mass
     * @return oven-dry mass over total mass
     * @throws Refused if the ratio is out of range or of another kind
     */
    static Amount<Solids> ofRatio(Quantity<MoistureRatio> ratio) {
        return Kinds.SOLIDS.ofSi(
                org.papermath.equation.Moisture.solidsOfRatio(Kinds.MOISTURE_RATIO.si(ratio, "moisture ratio")), "%");
    }
}
