package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Water over total mass (wet basis): the moisture of paper and of bought fibre. Water over dry mass is a {@link
 * MoistureRatio}.
 */
public interface Moisture extends Quantity<Moisture> {
    /**
     * Makes an amount in the unit "per cent".
     *
     * @param value a finite number; range 0 to 100
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Moisture> percent(double value) {
        return Kinds.MOISTURE.of(value, "%");
    }

    /**
     * Makes an amount in the unit "fraction".
     *
     * @param value a finite number; range 0 to 1
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<Moisture> fraction(double value) {
        return Kinds.MOISTURE.of(value, "1");
    }

    /**
     * Returns the moisture of what has some solids: all that is not dry is water, w = 1 − s.
     *
     * @param solids oven-dry mass over total mass
     * @return water over total mass
     * @throws Refused if the solids are out of range or of another kind
     */
    static Amount<Moisture> ofSolids(Quantity<Solids> solids) {
        return Kinds.MOISTURE.ofSi(1 - Kinds.SOLIDS.si(solids, "solids"), "%");
    }

    /**
     * Returns the moisture of what holds some water for each gram dry: w = u/(1 + u).
     *
     * @param ratio water over oven-dry mass
     * @return water over total mass
     * @throws Refused if the ratio is out of range or of another kind
     */
    static Amount<Moisture> ofRatio(Quantity<MoistureRatio> ratio) {
        return Kinds.MOISTURE.ofSi(
                org.papermath.equation.Moisture.wetBasisOfRatio(Kinds.MOISTURE_RATIO.si(ratio, "moisture ratio")), "%");
    }
}
