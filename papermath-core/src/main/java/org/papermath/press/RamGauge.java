package org.papermath.press;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import org.papermath.equation.PressForce;
import org.papermath.quantity.Amount;
import org.papermath.quantity.GaugePressure;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;

/**
 * A hydraulic ram with a gauge. What the gauge shows is the pressure of the oil, never that on the sheet:
 * {@code F = p pi d²/4 - F0}, where F0 lifts the platen and stretches the springs. A good gauge is within 3 %.
 * Immutable.
 */
public final class RamGauge {
    private final Amount<Length> bore;
    private final Amount<Force> lost;
    private final double diameter;
    private final double takenUp;

    private RamGauge(Amount<Length> bore, Amount<Force> lost) {
        this.bore = bore;
        this.lost = lost;
        this.diameter = bore.si();
        this.takenUp = lost.si();
    }

    /**
     * Makes a ram.
     *
     * @param diameter the diameter of the ram, 15 mm to 1 m
     * @return the ram, without springs
     * @throws Refused if the diameter is out of range
     */
    public static RamGauge of(Quantity<Length> diameter) {
        return new RamGauge(Limits.RAM_DIAMETER.check(diameter, "diameter of the ram"), Kinds.FORCE.ofSi(0, "N"));
    }

    /**
     * Returns the ram with a force that platen and springs take up.
     *
     * @param force the force that does not reach the post
     * @return the ram
     * @throws Refused if the force is out of range
     */
    public RamGauge takingUp(Quantity<Force> force) {
        return new RamGauge(bore, Kinds.FORCE.check(force, "force taken up by platen and springs"));
    }

    /**
     * Returns the force on the post.
     *
     * @param gauge what the gauge shows
     * @return the force; zero while the gauge shows less than platen and springs take up
     * @throws Refused if the pressure is out of range
     */
    public Amount<Force> force(Quantity<GaugePressure> gauge) {
        double force = PressForce.ramForce(Kinds.GAUGE_PRESSURE.si(gauge, "gauge pressure"), diameter, takenUp);
        return Kinds.FORCE.ofSi(Math.max(0, force), "kN");
    }

    /**
     * Returns what the gauge shows at a force on the post.
     *
     * @param force the force
     * @return the gauge pressure
     * @throws Refused if the force is out of range
     */
    public Amount<GaugePressure> gaugeFor(Quantity<Force> force) {
        return Kinds.GAUGE_PRESSURE.ofSi(PressForce.ramGauge(Kinds.FORCE.si(force, "force"), diameter, takenUp), "MPa");
    }

    /**
     * Returns the diameter of the ram.
     *
     * @return the diameter
     */
    public Amount<Length> diameter() {
        return bore;
    }

    /**
     * Returns the force that platen and springs take up.
     *
     * @return the force; zero unless given
     */
    public Amount<Force> takenUp() {
        return lost;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RamGauge that && diameter == that.diameter && takenUp == that.takenUp;
    }

    @Override
    public int hashCode() {
        return Objects.hash(diameter, takenUp);
    }

    @Override
    public String toString() {
        return "ram of " + bore + (takenUp == 0 ? "" : ", less " + lost);
    }
}
