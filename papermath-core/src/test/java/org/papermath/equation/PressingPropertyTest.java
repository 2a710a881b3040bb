package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class PressingPropertyTest {
    private static final double FLOOR = 0.82;

    private static double pressed(double in, double retention, double pressure, double grammage, double time) {
        double end = Pressing.equilibriumRatio(retention, pressure, 1.10, 0.4e6, 0.20, FLOOR);
        return Pressing.ratioAfter(in, end, Pressing.timeConstant(30, grammage, retention), time);
    }

    @Property(seed = "2026")
    void fallsWithPressureAndTimeRisesWithRetentionAndGrammageNeverBelowFloor(
            @ForAll @Scale(6) @DoubleRange(min = 0.82, max = 12) double in,
            @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 4) double retention,
            @ForAll @Scale(6) @DoubleRange(min = 0.02e6, max = 4e6) double pressure,
            @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 0.4) double grammage,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 3600) double time,
            @ForAll @Scale(6) @DoubleRange(min = 1, max = 3) double more) {
        double ratio = pressed(in, retention, pressure, grammage, time);
        double slack = 1e-12;
        assertThat(ratio).isGreaterThanOrEqualTo(FLOOR).isLessThanOrEqualTo(in);
        assertThat(pressed(in, retention, pressure * more, grammage, time)).isLessThanOrEqualTo(ratio + slack);
        assertThat(pressed(in, retention, pressure, grammage, time * more)).isLessThanOrEqualTo(ratio + slack);
        assertThat(pressed(in, retention * more, pressure, grammage, time)).isGreaterThanOrEqualTo(ratio - slack);
        assertThat(pressed(in, retention, pressure, grammage * more, time)).isGreaterThanOrEqualTo(ratio - slack);
    }

    @Property(seed = "2026")
    void solidsAndRatioAndBack(@ForAll @Scale(6) @DoubleRange(min = 0.01, max = 1) double solids) {
        assertThat(Pressing.solidsOfRatio(Pressing.ratioOfSolids(solids))).isCloseTo(solids, within(1e-12));
    }

    @Property(seed = "2026")
    void weighingsGiveBackTheConstants(
            @ForAll @Scale(6) @DoubleRange(min = 0.8, max = 1.4) double factor,
            @ForAll @Scale(6) @DoubleRange(min = 10, max = 90) double reference,
            @ForAll @Scale(6) @DoubleRange(min = 0.8, max = 3) double retention,
            @ForAll @Scale(6) @DoubleRange(min = 0.05e6, max = 1.5e6) double pressure,
            @ForAll @Scale(6) @DoubleRange(min = 0.05, max = 0.3) double grammage,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.02) double rewet) {
        double in = 9;
        PressingLaw law = new PressingLaw(factor, 0.20, 0.4e6, 0, reference, rewet);
        double end = law.equilibrium(retention, pressure);
        double tau = law.timeConstant(grammage, retention);
        assertThat(law.factorOf(end, retention, pressure)).isCloseTo(factor, withinPercentage(1e-9));
        double first = law.ratioAfter(in, retention, pressure, grammage, tau / 2);
        double second = law.ratioAfter(in, retention, pressure, grammage, 2 * tau);
        // Two weighings in one hold tell the time constant: the distance to the end falls by e in it.
        assertThat(1.5 * tau / Math.log((first - end - rewet / grammage) / (second - end - rewet / grammage)))
                .isCloseTo(tau, withinPercentage(1e-7));
        assertThat(law.equilibriumOf(in, second, retention, grammage, 2 * tau)).isCloseTo(end, withinPercentage(1e-8));
        assertThat(law.timeTo(first, in, retention, pressure, grammage)).isCloseTo(tau / 2, withinPercentage(1e-7));
        assertThat(law.timeTo(second, in, retention, pressure, grammage)).isCloseTo(2 * tau, withinPercentage(1e-7));
    }

    @Example
    void theEndsOfTime() {
        assertThat(Pressing.ratioAfter(0.5, 1, 30, 100)).isEqualTo(0.5);
        assertThat(Pressing.ratioAfter(5, 1, 30, 0)).isEqualTo(5);
        assertThat(Pressing.timeToRatio(1, 0.9, 30, 2)).isZero();
        assertThat(Pressing.timeToRatio(5, 2, 30, 2)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(Pressing.powerLawRatio(1.5, 0, 1.1, 0.4e6, 0.2)).isEqualTo(Double.POSITIVE_INFINITY);
    }
}
