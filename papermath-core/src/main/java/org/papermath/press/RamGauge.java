package org.papermath.press;

import javax.measure.Quantity;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import org.papermath.equation.PressForce;
import org.papermath.quantity.Amount;
import org.papermath.quantity.GaugePressure;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * A hydraulic ram with a gauge. What the gauge shows is the pressure of the oil, never that on the sheet:
 * {@code F = p pi d²/4 - F0}, where F0 lifts the platen and stretches the springs. A good gauge is within 3 %.
 * Immutable.
 */
public final class RamGauge {
    private final double diameter;
    private final double takenUp;

    private RamGauge(double diameter, double takenUp) {
        this.diameter = diameter;
        this.takenUp = takenUp;
    }

    /**
     * Makes a ram.
     *
     * @param diameter the diameter of the ram, above zero
     * @return the ram, without springs
     * @throws Refused if the diameter is not above zero
     */
    public static RamGauge of(Quantity<Length> diameter) {
        return new RamGauge(Kinds.LENGTH.siAboveZero(diameter, "diameter of the ram"), 0);
    }

    /**
     * Returns the ram with a force that platen and springs take up.
     *
     * @param force the force that does not reach the post
     * @return the ram
     * @throws Refused if the force is out of range
     */
    public RamGauge takingUp(Quantity<Force> force) {
        return new RamGauge(diameter, Kinds.FORCE.si(force, "force taken up by platen and springs"));
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

    @Override
    public String toString() {
        return "ram of " + Kinds.LENGTH.ofSi(diameter, "mm")
                + (takenUp == 0 ? "" : ", less " + Kinds.FORCE.ofSi(takenUp, "N"));
    }
}
