package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class BeatingPropertyTest {
    @Property(seed = "2026")
    void doseAndRateComeBack(
            @ForAll @Scale(9) @DoubleRange(min = 8, max = 25) double start,
            @ForAll @Scale(9) @DoubleRange(min = 85, max = 99) double limit,
            @ForAll @Scale(9) @DoubleRange(min = 0.05, max = 1) double rate,
            @ForAll @Scale(9) @DoubleRange(min = 0.8, max = 2) double exponent,
            @ForAll @Scale(9) @DoubleRange(min = 0.01, max = 4) double turn) {
        double dose = turn / rate;
        double value = Beating.schopperRiegler(dose, start, limit, rate, exponent);
        assertThat(value).isGreaterThan(start).isLessThan(limit);
        assertThat(Beating.schopperRiegler(dose * 1.01, start, limit, rate, exponent))
                .isGreaterThan(value);
        double part = 1e-6;
        assertThat(Beating.doseFor(value, start, limit, rate, exponent)).isCloseTo(dose, relative(dose, part));
        assertThat(Beating.rateFrom(value, dose, start, limit, exponent)).isCloseTo(rate, relative(rate, part));
    }
}
