package org.papermath.quantity;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;

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

    /**
     * Returns the question which basis a bare per cent of moisture is on, with what each reading means.
     *
     * <pre>{@code
     * throw Moisture.whichBasis(percent(65));
     * }</pre>
     *
     * @param label the number given, above zero and below 100 %; more than that can only be on the dry weight
     * @return the question, to be thrown
     * @throws Refused if the number is out of range
     */
    static Unclear whichBasis(Quantity<Dimensionless> label) {
        double share = Kinds.NUMBER.siWithin(label, "moisture", 1e-6, 0.999999);
        String given = Kinds.NUMBER.ofSi(share, "%").toString();
        return new Unclear(
                "moisture.which-basis",
                "moisture: a bare " + given + " given. State its basis.",
                List.of(
                        new Unclear.Candidate(
                                "water over the wet weight",
                                Solids.ofMoisture(Kinds.MOISTURE.ofSi(share)) + " solids, "
                                        + MoistureRatio.ofMoisture(Kinds.MOISTURE.ofSi(share)) + " of the dry weight"),
                        new Unclear.Candidate(
                                "water over the oven-dry weight",
                                Solids.ofRatio(Kinds.MOISTURE_RATIO.ofSi(share)) + " solids, "
                                        + Moisture.ofRatio(Kinds.MOISTURE_RATIO.ofSi(share)) + " of the wet weight")),
                "given",
                given);
    }
}
