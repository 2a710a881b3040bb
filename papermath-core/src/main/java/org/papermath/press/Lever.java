package org.papermath.press;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import org.papermath.equation.PressForce;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Torque;

/**
 * The lever of a screw press and the people at it: {@code T = n F L}.
 *
 * @param length from the axis of the screw to the hands
 * @param people how many press, 1 to 20
 * @param handForce the force of each
 */
public record Lever(Amount<Length> length, int people, Amount<Force> handForce) {
    /**
     * Checks the lever.
     *
     * @param length from the axis of the screw to the hands, above zero
     * @param people how many press, 1 to 20
     * @param handForce the force of each, above zero
     * @throws Refused if a value is out of range
     */
    public Lever {
        Kinds.LENGTH.siAboveZero(length, "length of the lever");
        Kinds.FORCE.siAboveZero(handForce, "force of a hand");
        Limits.AT_THE_LEVER.check(people, "people at the lever");
    }

    /**
     * Makes a lever with the usual force of a person, by the shipped assumptions.
     *
     * @param length from the axis of the screw to the hands, above zero
     * @param people how many press, 1 to 20
     * @return the lever
     * @throws Refused if a value is out of range
     */
    public static Lever of(Quantity<Length> length, int people) {
        return of(Assumptions.standard(), length, people);
    }

    /**
     * Makes a lever with the usual force of a person.
     *
     * @param assumptions where {@code press.hand-force} is looked up
     * @param length from the axis of the screw to the hands, above zero
     * @param people how many press, 1 to 20
     * @return the lever
     * @throws Refused if a value is out of range
     */
    public static Lever of(Assumptions assumptions, Quantity<Length> length, int people) {
        Objects.requireNonNull(assumptions, "assumptions");
        return of(length, people, assumptions.amount("press.hand-force", Scope.GENERAL, Kinds.FORCE));
    }

    /**
     * Makes a lever.
     *
     * @param length from the axis of the screw to the hands, above zero
     * @param people how many press, 1 to 20
     * @param handForce the force of each, above zero
     * @return the lever
     * @throws Refused if a value is out of range
     */
    public static Lever of(Quantity<Length> length, int people, Quantity<Force> handForce) {
        return new Lever(
                Kinds.LENGTH.check(length, "length of the lever"),
                people,
                Kinds.FORCE.check(handForce, "force of a hand"));
    }

    /**
     * Returns the torque on the screw.
     *
     * @return the torque
     */
    public Amount<Torque> torque() {
        return Kinds.TORQUE.ofSi(PressForce.leverTorque(people, handForce.si(), length.si()), "N.m");
    }

    /**
     * Returns what each has to pull for a torque.
     *
     * @param torque the torque on the screw
     * @return the force of each hand on the lever
     * @throws Refused if the torque is out of range
     */
    public Amount<Force> pullFor(Quantity<Torque> torque) {
        return Kinds.FORCE.ofSi(
                PressForce.leverPull(Kinds.TORQUE.si(torque, "torque on the screw"), people, length.si()), "N");
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Lever that
                && length.si() == that.length.si()
                && people == that.people
                && handForce.si() == that.handForce.si();
    }

    @Override
    public int hashCode() {
        return Objects.hash(length.si(), people, handForce.si());
    }

    @Override
    public String toString() {
        return "lever of " + length + ", " + people + " × " + handForce;
    }
}
