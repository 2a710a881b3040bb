package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class BeatingCheckValuesTest {
    private static final double LIMIT = 95;

    static List<Row> kinetics() {
        return CheckValues.read("freeness_kinetics");
    }

    @ParameterizedTest
    @MethodSource("kinetics")
    void valueAfterATime(Row row) {
        double start = row.number("sr0");
        double rate = row.number("k_per_h");
        double exponent = row.number("p");
        double time = row.number("t_h");
        double expected = row.number("sr");
        double found = Beating.schopperRiegler(time, start, LIMIT, rate, exponent);
        assertThat(found).isCloseTo(expected, relative(expected, 1e-5));
        assertThat(Beating.doseFor(found, start, LIMIT, rate, exponent)).isCloseTo(time, relative(time, 1e-12));
        if (time > 0) {
            assertThat(Beating.rateFrom(expected, time, start, LIMIT, exponent)).isCloseTo(rate, relative(rate, 1e-5));
        }
    }

    @Test
    void twoReadingsGiveTheExponent() {
        double early = Beating.schopperRiegler(1.5, 14, LIMIT, 0.18, 1.4);
        double late = Beating.schopperRiegler(7, 14, LIMIT, 0.18, 1.4);
        assertThat(Beating.exponentFrom(early, 1.5, late, 7, 14, LIMIT)).isCloseTo(1.4, relative(1.4, 1e-12));
    }

    @Test
    void theLimitIsNotReached() {
        assertThat(Beating.doseFor(LIMIT, 14, LIMIT, 0.2, 1)).isInfinite();
        assertThat(Beating.schopperRiegler(1e6, 14, LIMIT, 0.2, 1)).isEqualTo(LIMIT);
    }
}
