package org.papermath.fibre;

import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;

/**
 * The oven-dry mass behind a mass with water in it, and what it weighs at another moisture: of paper, pulp or bought
 * fibre alike. Immutable.
 *
 * <pre>{@code
 * OvenDry.of(grams(12.4), Moisture.percent(8.9)).at(Moisture.percent(6.9)); // 12.13 g
 * OvenDry.of(pounds(5), Moisture.percent(10)).mass(); // 4.5 lb
 * OvenDry.of(grams(420)).waterOut(Moisture.percent(64), Moisture.percent(7)); // 715.1 g
 * }</pre>
 *
 * <p>Moisture is on the wet basis. Where solids or water over dry mass are known, {@link Moisture#ofSolids} and
 * {@link Moisture#ofRatio} turn them into it.
 */
public final class OvenDry {
    private final Amount<Mass> mass;

    private OvenDry(Amount<Mass> mass) {
        this.mass = mass;
    }

    /**
     * Makes it of a mass that is oven-dry.
     *
     * @param ovenDry the mass without any water, above zero
     * @return the oven-dry mass
     * @throws Refused if the mass is out of range or of another kind
     */
    public static OvenDry of(Quantity<Mass> ovenDry) {
        return new OvenDry(Kinds.MASS.checkAboveZero(ovenDry, "oven-dry mass"));
    }

    /**
     * Finds what is oven-dry of a mass weighed with its water: m (1 − w).
     *
     * @param weighed the mass as weighed, above zero
     * @param moisture water over that mass, below 100 %
     * @return the oven-dry mass
     * @throws Refused if a value is out of range or of another kind, or nothing is dry
     */
    public static OvenDry of(Quantity<Mass> weighed, Quantity<Moisture> moisture) {
        Amount<Mass> whole = Kinds.MASS.checkAboveZero(weighed, "mass as weighed");
        double wet = below(moisture);
        return new OvenDry(in(whole, org.papermath.equation.Moisture.ovenDryOfWetBasis(whole.si(), wet)));
    }

    /**
     * Returns the oven-dry mass.
     *
     * @return the mass, in the unit of the one given
     */
    public Amount<Mass> mass() {
        return mass;
    }

    /**
     * Returns what it weighs with water in it: m/(1 − w).
     *
     * @param moisture water over the whole, below 100 %
     * @return the mass, in the unit of the one given
     * @throws Refused if the moisture is out of range or of another kind, or nothing is dry
     */
    public Amount<Mass> at(Quantity<Moisture> moisture) {
        return in(mass, org.papermath.equation.Moisture.massAtWetBasis(mass.si(), below(moisture)));
    }

    /**
     * Returns the water in it: m w/(1 − w).
     *
     * @param moisture water over the whole, below 100 %
     * @return the water, in the unit of the mass given
     * @throws Refused if the moisture is out of range or of another kind, or nothing is dry
     */
    public Amount<Mass> water(Quantity<Moisture> moisture) {
        return in(mass, mass.si() * MoistureRatio.ofMoisture(moisture).si());
    }

    /**
     * Returns the water to take out between two moistures: m (w/(1 − w) − v/(1 − v)).
     *
     * @param from water over the whole at first, below 100 %
     * @param to water over the whole at last, at most that at first
     * @return the water, in the unit of the mass given
     * @throws Refused if a moisture is out of range or of another kind, or it is moister at last than at first
     */
    public Amount<Mass> waterOut(Quantity<Moisture> from, Quantity<Moisture> to) {
        double first = below(from);
        double last = Kinds.MOISTURE.si(to, "moisture at last");
        if (last > first) {
            throw Refused.of(
                    "moisture.wetter",
                    "moisture at last: " + to + " given, more than the " + from
                            + " at first; no water comes out. Give the wetter state first.",
                    "given",
                    to.toString(),
                    "limit",
                    from.toString());
        }
        return in(
                mass,
                mass.si()
                        * (org.papermath.equation.Moisture.ratioOfWetBasis(first)
                                - org.papermath.equation.Moisture.ratioOfWetBasis(last)));
    }

    private static double below(Quantity<Moisture> moisture) {
        // Refuses what leaves nothing dry.
        MoistureRatio.ofMoisture(moisture);
        return Kinds.MOISTURE.si(moisture, "moisture");
    }

    private static Amount<Mass> in(Amount<Mass> like, double si) {
        return Kinds.MASS.ofSi(si).to(like.getUnit());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof OvenDry that && mass.equals(that.mass);
    }

    @Override
    public int hashCode() {
        return mass.hashCode();
    }

    @Override
    public String toString() {
        return mass + " oven-dry";
    }
}
