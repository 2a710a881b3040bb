package org.papermath.pulp;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.papermath.equation.BeaterArithmetic;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.evidence.WithNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.EdgeLoad;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.MassicEnergy;
import org.papermath.quantity.Rate;
import org.papermath.quantity.Refused;

/**
 * The bars of a beater and how fast they pass each other: roll bars, bedplate bars, their length, the speed and
 * diameter of the roll. Immutable.
 *
 * @see BeatingTime
 */
public final class BeaterGeometry {
    private final int rollBars;
    private final int bedBars;
    private final double barLength;
    private final double speed;
    private final double diameter;

    private BeaterGeometry(int rollBars, int bedBars, double barLength, double speed, double diameter) {
        this.rollBars = rollBars;
        this.bedBars = bedBars;
        this.barLength = barLength;
        this.speed = speed;
        this.diameter = diameter;
    }

    /**
     * Makes the geometry of a roll and its bedplate.
     *
     * @param rollBars bars on the roll, 1 to 1000
     * @param bedBars bars of the bedplate, 1 to 1000
     * @param barLength the length of a bar that works against another, above zero
     * @param speed revolutions of the roll in a unit of time, above zero
     * @param diameterOverBars the diameter of the roll over the bars, above zero
     * @return the geometry
     * @throws Refused if a value is out of range
     */
    public static BeaterGeometry of(
            int rollBars,
            int bedBars,
            Quantity<Length> barLength,
            Quantity<Rate> speed,
            Quantity<Length> diameterOverBars) {
        return new BeaterGeometry(
                bars(rollBars, "roll"),
                bars(bedBars, "bedplate"),
                Kinds.LENGTH.siAboveZero(barLength, "length of the bars"),
                Kinds.RATE.siAboveZero(speed, "speed of the roll"),
                Kinds.LENGTH.siAboveZero(diameterOverBars, "diameter of the roll over the bars"));
    }

    private static int bars(int bars, String where) {
        if (bars < 1 || bars > 1000) {
            throw Refused.of(
                    "beater.bars",
                    "bars of the " + where + ": " + bars
                            + " given; it must be from 1 to 1000. Count the bars, not the grooves.",
                    "part",
                    where,
                    "given",
                    bars,
                    "least",
                    1,
                    "most",
                    1000);
        }
        return bars;
    }

    /**
     * Returns the length of bar edge crossed in a second.
     *
     * @return roll bars × bedplate bars × bar length × revolutions
     * @throws Refused if it is beyond what any beater has
     * @source the specific edge load theory of refining
     */
    public Amount<Speed> edgeLengthPerSecond() {
        return Kinds.SPEED.ofSi(edgeSi(), "m/s");
    }

    /**
     * Returns how fast the bars move.
     *
     * @return the speed of the bar tips, π × diameter × revolutions
     * @throws Refused if it is beyond what any beater has
     */
    public Amount<Speed> tipSpeed() {
        return Kinds.SPEED.ofSi(BeaterArithmetic.tipSpeed(diameter, speed), "m/s");
    }

    /**
     * Returns how often a bar passes a bar, which old makers called cuts.
     *
     * @return roll bars × bedplate bars × revolutions
     * @throws Refused if it is beyond what any beater has
     */
    public Amount<Rate> cuts() {
        return Kinds.RATE.ofSi(BeaterArithmetic.crossingsPerSecond(rollBars, bedBars, speed), "1/min");
    }

    /**
     * Returns the power that reaches the stock.
     *
     * @param loaded the power with the roll down
     * @param idle the power with the roll up and the stock going round
     * @return loaded less idle
     * @throws Refused if the idle power is the greater
     */
    public static Amount<Power> netPower(Quantity<Power> loaded, Quantity<Power> idle) {
        double with = Kinds.POWER.si(loaded, "power with the roll down");
        double without = Kinds.POWER.si(idle, "idle power");
        if (without > with) {
            Amount<Power> withAmount = Kinds.POWER.ofSi(with, "W");
            Amount<Power> withoutAmount = Kinds.POWER.ofSi(without, "W");
            throw Refused.of(
                    "beater.idle-above-loaded",
                    "idle power: " + withoutAmount + " given, more than the " + withAmount
                            + " with the roll down. See whether the"
                            + " two were changed over.",
                    "idle",
                    withoutAmount.toString(),
                    "loaded",
                    withAmount.toString());
        }
        return Kinds.POWER.ofSi(BeaterArithmetic.netPower(with, without), "W");
    }

    /**
     * Returns the net energy put on a mass of fibre.
     *
     * @param netPower the power that reaches the stock
     * @param time the beating time
     * @param ovenDry the oven-dry fibre, above zero
     * @return net power × time over fibre
     * @throws Refused if a value is out of range
     */
    public static Amount<MassicEnergy> specificEnergy(
            Quantity<Power> netPower, Quantity<Time> time, Quantity<Mass> ovenDry) {
        return Kinds.MASSIC_ENERGY.ofSi(
                BeaterArithmetic.specificEnergy(
                        Kinds.POWER.si(netPower, "net power"),
                        Kinds.TIME.si(time, "beating time"),
                        Kinds.MASS.siAboveZero(ovenDry, "oven-dry fibre")),
                "kW.h/t");
    }

    /**
     * Returns the energy on each metre of bar edge crossed, which separates cutting from fibrillating, by the shipped
     * limit.
     *
     * @param netPower the power that reaches the stock
     * @return the edge load; with a note when it lies where bars mostly cut
     * @throws Refused if the power is out of range
     */
    public WithNotices<Amount<EdgeLoad>> edgeLoad(Quantity<Power> netPower) {
        return edgeLoad(Assumptions.standard(), netPower);
    }

    /**
     * Returns the energy on each metre of bar edge crossed, which separates cutting from fibrillating.
     *
     * @param assumptions where {@code beating.edge-load-cutting} is looked up
     * @param netPower the power that reaches the stock
     * @return the edge load; with a note when it lies where bars mostly cut
     * @throws Refused if the power is out of range
     * @source specific edge load theory of refining; compare Powder Technology 129, 2003, 122–129
     */
    public WithNotices<Amount<EdgeLoad>> edgeLoad(Assumptions assumptions, Quantity<Power> netPower) {
        double load = BeaterArithmetic.edgeLoad(Kinds.POWER.si(netPower, "net power"), edgeSi());
        Amount<EdgeLoad> value = Kinds.EDGE_LOAD.ofSi(load, "J/m");
        double cutting = assumptions.si("beating.edge-load-cutting", Scope.GENERAL);
        if (load > cutting) {
            return WithNotices.of(
                    value,
                    Notice.note(
                            "beater.edge-load-cuts",
                            "At " + value + " the bars mostly cut; above about " + Kinds.EDGE_LOAD.ofSi(cutting, "J/m")
                                    + " fibres are shortened more than brushed out.",
                            "given",
                            value.toString(),
                            "limit",
                            Kinds.EDGE_LOAD.ofSi(cutting, "J/m").toString()));
        }
        return WithNotices.of(value);
    }

    double edgeSi() {
        return BeaterArithmetic.edgeLengthPerSecond(rollBars, bedBars, barLength, speed);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof BeaterGeometry that
                && rollBars == that.rollBars
                && bedBars == that.bedBars
                && barLength == that.barLength
                && speed == that.speed
                && diameter == that.diameter;
    }

    @Override
    public int hashCode() {
        return Objects.hash(rollBars, bedBars, barLength, speed, diameter);
    }

    @Override
    public String toString() {
        return rollBars + " roll bars over " + bedBars + ", " + Kinds.LENGTH.ofSi(barLength, "mm") + " long, "
                + Kinds.RATE.ofSi(speed, "1/min");
    }
}
