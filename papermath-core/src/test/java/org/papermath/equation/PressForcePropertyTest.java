package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class PressForcePropertyTest {
    @Property(seed = "2026")
    void screwTorqueToForceAndBack(
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 5000) double torque,
            @ForAll @Scale(6) @DoubleRange(min = 0.002, max = 0.06) double lead,
            @ForAll @Scale(6) @DoubleRange(min = 0.015, max = 0.25) double mean,
            @ForAll @Scale(6) @DoubleRange(min = 0.02, max = 0.4) double friction,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.5) double angle,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.4) double collarFriction,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.3) double collar) {
        double force = PressForce.screwForce(torque, lead, mean, friction, angle, collarFriction, collar);
        double back = PressForce.screwRaisingTorque(force, lead, mean, friction, angle, collarFriction, collar);
        assertThat(force).isPositive();
        assertThat(back).isCloseTo(torque, withinPercentage(1e-7));
        assertThat(PressForce.screwEfficiency(force, lead, back)).isBetween(0.0, 1.0);
        assertThat(PressForce.screwLoweringTorque(force, lead, mean, friction, angle, collarFriction, collar))
                .isLessThan(back);
    }
}
