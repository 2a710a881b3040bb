package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * Water over oven-dry mass (dry basis), as regain and press solids are stated. Water over total mass is a {@link
 * Moisture}.
 */
public interface MoistureRatio extends Quantity<MoistureRatio> {
    /**
     * Makes an amount in the unit "gram per gram".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<MoistureRatio> gramsPerGram(double value) {
        return Kinds.MOISTURE_RATIO.of(value, "g/g");
    }

    /**
     * Makes an amount in the unit "per cent".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<MoistureRatio> percent(double value) {
        return Kinds.MOISTURE_RATIO.of(value, "%");
    }

    /**
     * Returns the water for each gram dry of what has some moisture: u = w/(1 − w). 64 % moisture is 1.778 g/g.
     *
     * @param moisture water over total mass, below 100 %
     * @return water over oven-dry mass
     * @throws Refused if the moisture is out of range, of another kind, or leaves nothing dry
     */
    static Amount<MoistureRatio> ofMoisture(Quantity<Moisture> moisture) {
        double wet = Kinds.MOISTURE.si(moisture, "moisture");
        if (wet == 1) {
            throw Refused.of(
                    "moisture.nothing-dry",
                    "moisture: 100 % given; nothing would be dry in it. Give the water over the total mass, below 100 %.");
        }
        return Kinds.MOISTURE_RATIO.ofSi(org.papermath.equation.Moisture.ratioOfWetBasis(wet), "g/g");
    }

    /**
     * Returns the water for each gram dry of what has some solids: u = 1/s − 1.
     *
     * @param solids oven-dry mass over total mass
     * @return water over oven-dry mass
     * @throws Refused if the solids are out of range or of another kind
     */
    static Amount<MoistureRatio> ofSolids(Quantity<Solids> solids) {
        return Kinds.MOISTURE_RATIO.ofSi(
                org.papermath.equation.Moisture.ratioOfSolids(Kinds.SOLIDS.si(solids, "solids")), "g/g");
    }
}
