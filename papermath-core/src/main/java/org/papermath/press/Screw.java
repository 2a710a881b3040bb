package org.papermath.press;

import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import org.papermath.equation.PressForce;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Torque;

/**
 * The screw of a press with friction in its thread and under its collar. Immutable.
 *
 * <p>Pressing takes {@code T = F dm/2 (l + pi f dm sec a)/(pi dm - f l sec a) + F fc dc/2}: axial force F, lead l, mean
 * diameter dm, friction f in the thread and fc under a collar of mean diameter dc, half thread angle a.
 *
 * @source power-screw equations of engineering textbooks
 */
public final class Screw {
    private static final Amount<Length> NO_COLLAR = Kinds.LENGTH.ofSi(0, "mm");

    private final Amount<Length> advance;
    private final Amount<Length> across;
    private final Amount<Length> collar;
    private final double lead;
    private final double diameter;
    private final double friction;
    private final double leastFriction;
    private final double mostFriction;
    private final double angle;
    private final double collarDiameter;
    private final List<Estimate.Driver> drivers;

    private Screw(
            Amount<Length> lead,
            Amount<Length> diameter,
            double friction,
            double leastFriction,
            double mostFriction,
            double angle,
            Amount<Length> collar,
            List<Estimate.Driver> drivers) {
        this.advance = lead;
        this.across = diameter;
        this.collar = collar;
        this.lead = lead.si();
        this.diameter = diameter.si();
        this.friction = friction;
        this.leastFriction = leastFriction;
        this.mostFriction = mostFriction;
        this.angle = angle;
        this.collarDiameter = collar.si();
        this.drivers = drivers;
    }

    private static Amount<Length> aboveZero(Quantity<Length> given, String what) {
        Kinds.LENGTH.siAboveZero(given, what);
        return Kinds.LENGTH.check(given, what);
    }

    /**
     * Makes a screw with a square thread, of known friction, without a collar.
     *
     * @param lead the advance in one turn, above zero
     * @param meanDiameter the mean diameter of the thread, above zero
     * @param friction the coefficient of friction, in the thread and under a collar
     * @return the screw
     * @throws Refused if a value is out of range
     */
    public static Screw of(Quantity<Length> lead, Quantity<Length> meanDiameter, Quantity<Share> friction) {
        double f = Kinds.SHARE.si(friction, "friction of the screw");
        return new Screw(
                aboveZero(lead, "lead of the screw"),
                aboveZero(meanDiameter, "mean diameter of the screw"),
                f,
                f,
                f,
                0,
                NO_COLLAR,
                List.of());
    }

    /**
     * Makes a steel screw with a square thread; its friction is a shipped assumption with a band.
     *
     * @param lead the advance in one turn, above zero
     * @param meanDiameter the mean diameter of the thread, above zero
     * @return the screw
     * @throws Refused if a value is out of range
     */
    public static Screw steel(Quantity<Length> lead, Quantity<Length> meanDiameter) {
        return steel(Assumptions.standard(), lead, meanDiameter);
    }

    /**
     * Makes a steel screw with a square thread, its friction from one's own table.
     *
     * @param assumptions where {@code press.screw-friction} of steel is looked up
     * @param lead the advance in one turn, above zero
     * @param meanDiameter the mean diameter of the thread, above zero
     * @return the screw
     * @throws Refused if a value is out of range
     */
    public static Screw steel(Assumptions assumptions, Quantity<Length> lead, Quantity<Length> meanDiameter) {
        Objects.requireNonNull(assumptions, "assumptions");
        return assumed(assumptions, lead, meanDiameter, "steel");
    }

    /**
     * Makes a wooden screw with a square thread; its friction is a shipped assumption with a band.
     *
     * @param lead the advance in one turn, above zero
     * @param meanDiameter the mean diameter of the thread, above zero
     * @return the screw
     * @throws Refused if a value is out of range
     */
    public static Screw wooden(Quantity<Length> lead, Quantity<Length> meanDiameter) {
        return wooden(Assumptions.standard(), lead, meanDiameter);
    }

    /**
     * Makes a wooden screw with a square thread, its friction from one's own table.
     *
     * @param assumptions where {@code press.screw-friction} of wood is looked up
     * @param lead the advance in one turn, above zero
     * @param meanDiameter the mean diameter of the thread, above zero
     * @return the screw
     * @throws Refused if a value is out of range
     */
    public static Screw wooden(Assumptions assumptions, Quantity<Length> lead, Quantity<Length> meanDiameter) {
        Objects.requireNonNull(assumptions, "assumptions");
        return assumed(assumptions, lead, meanDiameter, "wood");
    }

    private static Screw assumed(
            Assumptions assumptions, Quantity<Length> lead, Quantity<Length> meanDiameter, String material) {
        Assumption friction = assumptions.get("press.screw-friction", Scope.of(material));
        return new Screw(
                aboveZero(lead, "lead of the screw"),
                aboveZero(meanDiameter, "mean diameter of the screw"),
                friction.likelySi(),
                friction.lowSi(),
                friction.highSi(),
                0,
                NO_COLLAR,
                List.of(new Estimate.Driver(friction, 1)));
    }

    /**
     * Returns the screw with a collar, which rubs with the same friction as the thread.
     *
     * @param meanDiameter the mean diameter of the collar
     * @return the screw
     * @throws Refused if the value is out of range
     */
    public Screw collar(Quantity<Length> meanDiameter) {
        return new Screw(
                advance,
                across,
                friction,
                leastFriction,
                mostFriction,
                angle,
                Kinds.LENGTH.check(meanDiameter, "mean diameter of the collar"),
                drivers);
    }

    /**
     * Returns the screw with a thread that is not square.
     *
     * @param halfAngle half the angle between the flanks, at least 0 and below 45°
     * @return the screw
     * @throws Refused if the angle is out of range
     */
    public Screw thread(Quantity<Angle> halfAngle) {
        double radians =
                halfAngle.to(tech.units.indriya.unit.Units.RADIAN).getValue().doubleValue();
        if (!(radians >= 0 && radians < Math.PI / 4)) {
            throw Refused.of(
                    "screw.thread-angle",
                    "half thread angle: " + halfAngle
                            + " given; it must be from 0 to less than 45°. Give half the angle"
                            + " between the flanks.",
                    "given",
                    halfAngle.toString());
        }
        return new Screw(advance, across, friction, leastFriction, mostFriction, radians, collar, drivers);
    }

    /**
     * Returns the torque that presses with a force.
     *
     * @param force the axial force
     * @return the torque
     * @throws Refused if the force is out of range, or if the thread jams: friction lets no torque advance it
     */
    public Amount<Torque> torqueFor(Quantity<Force> force) {
        double torque = PressForce.screwRaisingTorque(
                Kinds.FORCE.si(force, "force of the screw"), lead, diameter, friction, angle, friction, collarDiameter);
        if (Double.isInfinite(torque)) {
            throw Refused.of(
                    "screw.jams",
                    "screw: with a friction of " + friction
                            + " its thread jams; no torque presses with it. Check lead and"
                            + " mean diameter.",
                    "friction",
                    friction);
        }
        return Kinds.TORQUE.ofSi(torque, "N.m");
    }

    /**
     * Returns the torque that lets the loaded screw go again.
     *
     * @param force the axial force
     * @return the torque; zero when the screw runs back by itself
     * @throws Refused if the force is out of range
     */
    public Amount<Torque> looseningTorque(Quantity<Force> force) {
        return Kinds.TORQUE.ofSi(
                Math.max(
                        0,
                        PressForce.screwLoweringTorque(
                                Kinds.FORCE.si(force, "force of the screw"),
                                lead,
                                diameter,
                                friction,
                                angle,
                                friction,
                                collarDiameter)),
                "N.m");
    }

    /**
     * Returns the force a torque presses with; its band is that of the friction.
     *
     * @param torque the torque on the screw
     * @return the force
     * @throws Refused if the torque is out of range
     */
    public Estimate<Force> forceOf(Quantity<Torque> torque) {
        double t = Kinds.TORQUE.si(torque, "torque on the screw");
        return Estimate.of(force(t, friction), force(t, mostFriction), force(t, leastFriction), drivers);
    }

    private Amount<Force> force(double torque, double f) {
        return Kinds.FORCE.ofSi(PressForce.screwForce(torque, lead, diameter, f, angle, f, collarDiameter), "kN");
    }

    /**
     * Returns the share of the work on the lever that presses: {@code F l/(2 pi T)}.
     *
     * @return the efficiency
     */
    public Amount<Share> efficiency() {
        double torque = PressForce.screwRaisingTorque(1, lead, diameter, friction, angle, friction, collarDiameter);
        return Kinds.SHARE.ofSi(PressForce.screwEfficiency(1, lead, torque), "%");
    }

    /**
     * Returns whether friction in the thread alone holds the load when the lever is let go.
     *
     * @return whether the screw is self-locking
     */
    public boolean isSelfLocking() {
        return PressForce.isSelfLocking(lead, diameter, friction, angle);
    }

    /**
     * Returns the lead.
     *
     * @return the advance in one turn
     */
    public Amount<Length> lead() {
        return advance;
    }

    /**
     * Returns the mean diameter of the thread.
     *
     * @return the diameter
     */
    public Amount<Length> meanDiameter() {
        return across;
    }

    /**
     * Returns the likely friction.
     *
     * @return the coefficient of friction
     */
    public Amount<Share> friction() {
        return Kinds.SHARE.ofSi(friction, "%");
    }

    /**
     * Returns the mean diameter of the collar.
     *
     * @return the diameter; zero without a collar
     */
    public Amount<Length> collarDiameter() {
        return collar;
    }

    /**
     * Tells whether the thread is square.
     *
     * @return whether its flanks stand at right angles to the axis
     */
    public boolean isSquare() {
        return angle == 0;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Screw that
                && lead == that.lead
                && diameter == that.diameter
                && friction == that.friction
                && angle == that.angle
                && collarDiameter == that.collarDiameter;
    }

    @Override
    public int hashCode() {
        return Objects.hash(lead, diameter, friction, angle, collarDiameter);
    }

    @Override
    public String toString() {
        return "screw, lead " + advance + ", mean diameter " + across + ", friction " + friction;
    }
}
