package org.papermath.pulp;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Time;
import org.papermath.equation.BeaterArithmetic;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.evidence.WithNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * Beating times carried from one load, or one machine, to another, within the limits in which that may be done.
 *
 * <p>Hours are a matter of the machine. Between loads of one beater they go with the fibre in it, near the rated load;
 * between machines they go with the bar edge each spends on a kilogram, or with the net energy, and are then borrowed
 * hours until a drainage test here says otherwise. With neither known there is no answer.
 */
public final class BeatingTime {
    private BeatingTime() {}

    /**
     * Carries a time to another load of the same beater, within the shipped range of loads.
     *
     * @param time the time that gave the wanted beating
     * @param load the oven-dry fibre it was given to
     * @param other the oven-dry fibre of the other load
     * @param beater the beater
     * @return the time for the other load
     * @throws Refused as {@link #forLoad(Assumptions, Quantity, Quantity, Quantity, Beater)}
     */
    public static Amount<Time> forLoad(Quantity<Time> time, Quantity<Mass> load, Quantity<Mass> other, Beater beater) {
        return forLoad(Assumptions.standard(), time, load, other, beater);
    }

    /**
     * Carries a time to another load of the same beater: t₂ = t₁ m₂/m₁.
     *
     * @param assumptions where {@code beater.load-range-low} and {@code beater.load-range-high} of this beater are
     *     looked up
     * @param time the time that gave the wanted beating
     * @param load the oven-dry fibre it was given to
     * @param other the oven-dry fibre of the other load
     * @param beater the beater
     * @return the time for the other load
     * @throws Refused if one of the loads is outside that range of the rated load, half to 1.2 as shipped, where the
     *     stock turns over differently
     * @source compare Clapperton and Henderson, Modern Paper-Making, p. 98, on thicker charges
     */
    public static Amount<Time> forLoad(
            Assumptions assumptions, Quantity<Time> time, Quantity<Mass> load, Quantity<Mass> other, Beater beater) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(beater, "beater");
        double hours = Kinds.TIME.siAboveZero(time, "beating time");
        double first = inRange(assumptions, load, "load", beater);
        double second = inRange(assumptions, other, "other load", beater);
        return Kinds.TIME.ofSi(hours * (second / first), "h");
    }

    /**
     * Carries a time to another machine at the same feel of the bars: t₂ = t₁ (m₂/m₁)(L₁/L₂), with L the bar edge
     * crossed in a second.
     *
     * @param time the time that gave the wanted beating
     * @param load the oven-dry fibre it was given to
     * @param machine the bars of the machine it was given on
     * @param other the oven-dry fibre of the other load
     * @param otherMachine the bars of the other machine
     * @return the time on the other machine, as a borrowed figure
     * @throws Refused if a value is out of range
     * @source equal bar edge per kilogram, from the specific edge load theory of refining
     */
    public static WithNotices<Amount<Time>> onMachine(
            Quantity<Time> time,
            Quantity<Mass> load,
            BeaterGeometry machine,
            Quantity<Mass> other,
            BeaterGeometry otherMachine) {
        Objects.requireNonNull(machine, "machine");
        Objects.requireNonNull(otherMachine, "otherMachine");
        double seconds = BeaterArithmetic.timeAtSameEdgePerMass(
                Kinds.TIME.siAboveZero(time, "beating time"),
                Kinds.MASS.siAboveZero(load, "load"),
                machine.edgeSi(),
                Kinds.MASS.siAboveZero(other, "other load"),
                otherMachine.edgeSi());
        return borrowed(Kinds.TIME.ofSi(seconds, "h"));
    }

    /**
     * Carries a time to another machine at the same net energy on the fibre: t₂ = t₁ (m₂/m₁)(P₁/P₂).
     *
     * @param time the time that gave the wanted beating
     * @param load the oven-dry fibre it was given to
     * @param netPower the net power of the machine it was given on, above zero
     * @param other the oven-dry fibre of the other load
     * @param otherNetPower the net power of the other machine, above zero
     * @return the time on the other machine, as a borrowed figure
     * @throws Refused if a value is out of range
     */
    public static WithNotices<Amount<Time>> atEqualEnergy(
            Quantity<Time> time,
            Quantity<Mass> load,
            Quantity<Power> netPower,
            Quantity<Mass> other,
            Quantity<Power> otherNetPower) {
        double seconds = BeaterArithmetic.timeAtSameSpecificEnergy(
                Kinds.TIME.siAboveZero(time, "beating time"),
                Kinds.MASS.siAboveZero(load, "load"),
                Kinds.POWER.siAboveZero(netPower, "net power"),
                Kinds.MASS.siAboveZero(other, "other load"),
                Kinds.POWER.siAboveZero(otherNetPower, "other net power"));
        return borrowed(Kinds.TIME.ofSi(seconds, "h"));
    }

    /**
     * Refuses to carry hours to another machine of which nothing is known but its name.
     *
     * @param from the machine of the record
     * @param to the machine in question
     * @return the refusal, to be thrown
     */
    public static Refused noFactor(Beater from, Beater to) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        return Refused.of(
                "beating.other-machine-without-factor",
                "beating time: the hours were kept on " + from.name() + "; what " + to.name()
                        + " does in an hour is not known."
                        + " Count the bars of both, or read the drainability of one load on " + to.name() + ".",
                "from",
                from.name(),
                "to",
                to.name());
    }

    /**
     * Turns the hours of a mill beater, as old books print them for rag, into hours of a studio beater.
     *
     * @param millHours the hours printed
     * @param assumptions where the factor is looked up
     * @param scope the fibre and the beater
     * @return the hours here, with the band of the factor in the notice
     * @throws Refused if the time is out of range
     * @source derived here from Sindall, The Manufacture of Paper, 1908, ch. IX, against studio practice
     */
    public static WithNotices<Amount<Time>> ofMillHours(
            Quantity<Time> millHours, Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        double seconds = Kinds.TIME.si(millHours, "mill hours");
        var factor = assumptions.get("beating.mill-hour", scope);
        Amount<Time> value = Kinds.TIME.ofSi(seconds * factor.likelySi(), "h");
        Amount<Time> low = Kinds.TIME.ofSi(seconds * factor.lowSi(), "h");
        Amount<Time> high = Kinds.TIME.ofSi(seconds * factor.highSi(), "h");
        return WithNotices.of(
                value,
                Notice.warning(
                        "beating.mill-hours",
                        "Hours of a mill beater were turned into hours of a studio beater by a factor nobody has measured: "
                                + low + " to "
                                + high + ". Read the drainability of one load here.",
                        "low",
                        low.toString(),
                        "high",
                        high.toString()));
    }

    private static WithNotices<Amount<Time>> borrowed(Amount<Time> time) {
        return WithNotices.of(
                time,
                Notice.warning(
                        "beating.borrowed-time",
                        "The time was borrowed from another machine; at the same bar edge or energy another consistency or"
                                + " sharpness of the"
                                + " bars still beats differently. Read the drainability on the way.",
                        "time",
                        time.toString()));
    }

    private static double inRange(Assumptions assumptions, Quantity<Mass> load, String what, Beater beater) {
        double mass = Kinds.MASS.siAboveZero(load, what);
        Scope scope = Scope.at(beater.name());
        double least = assumptions.si("beater.load-range-low", scope)
                * beater.ratedLoad().si();
        double most = assumptions.si("beater.load-range-high", scope)
                * beater.ratedLoad().si();
        if (mass < least * (1 - 1e-9) || mass > most * (1 + 1e-9)) {
            Amount<Mass> given = Kinds.MASS.ofSi(mass, "g");
            Amount<Mass> low = Kinds.MASS.ofSi(least, "g");
            Amount<Mass> high = Kinds.MASS.ofSi(most, "g");
            throw Refused.of(
                    "beating.load-range",
                    what + ": " + given + " given; times are carried only between loads of " + low + " to " + high
                            + " in "
                            + beater.name() + ", where the stock turns over alike. Keep a record of that load by"
                            + " itself.",
                    "quantity",
                    what,
                    "given",
                    given.toString(),
                    "least",
                    low.toString(),
                    "most",
                    high.toString(),
                    "beater",
                    beater.name());
        }
        return mass;
    }
}
