package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.testing.CheckValues.relative;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.papermath.equation.Freeness.Tester;

class FreenessPropertyTest {
    private static final double MU = 1.002e-3;
    private static final double RHO = 998.2;

    @Property(seed = "2026")
    void chartComesBackInsideAndBeyondItsEnds(
            @ForAll @Scale(9) @DoubleRange(min = 10, max = 880) double csf,
            @ForAll @Scale(9) @DoubleRange(min = -3, max = 3) double offset) {
        double sr = Freeness.schopperRieglerOfCanadian(csf, offset);
        assertThat(Freeness.canadianOfSchopperRiegler(sr, offset)).isCloseTo(csf, within(1e-9));
        assertThat(Freeness.schopperRieglerOfCanadian(csf + 1, offset)).isLessThan(sr);
    }

    /** The side volume counted step by step, from the flow through the mat over what the bottom orifice takes. */
    @Property(tries = 200, seed = "2026")
    void sideVolumeIsWhatOverflows(
            @ForAll @Scale(9) @DoubleRange(min = 7, max = 10.5) double logAlpha,
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 4) double fibre,
            @ForAll @Scale(12) @DoubleRange(min = 5e-6, max = 1e-5) double bottomFlow) {
        Tester tester = new Tester(0.009, 1e-3, fibre, bottomFlow, 0, 1e7);
        double alpha = Math.pow(10, logAlpha);
        double depth = 1e-3 / 0.009;
        int steps = 20_000;
        double step = depth / steps;
        double side = 0;
        for (int i = 0; i < steps; i++) {
            double v = (i + 0.5) * step;
            double flow = 0.009 * RHO * 9.80665 * (depth - v) / (MU * (alpha * fibre * v + 1e7));
            side += Math.max(0, 1 - bottomFlow / flow) * 0.009 * step;
        }
        double found = Freeness.sideVolume(alpha, tester, MU, RHO);
        assertThat(found).isCloseTo(side, within(1e-9));
        assertThat(Freeness.alphaOfSideVolume(found, tester, MU, RHO)).isCloseTo(alpha, relative(alpha, 1e-9));
    }
}
