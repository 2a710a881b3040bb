package org.papermath.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Two normal variables that go together. */
class JointNormalTest {
    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

    /** A quarter and the arc of the correlation over a full turn: the closed form at limits of zero. */
    @ParameterizedTest
    @CsvSource({"-1", "-0.9", "-0.5", "0", "0.3", "0.7071067811865476", "0.99", "1"})
    void atTheMiddleItIsAnArc(double correlation) {
        assertThat(JointNormal.both(0, 0, correlation))
                .isCloseTo(0.25 + Math.asin(correlation) / (2 * Math.PI), within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"1.3, 0.4", "-0.7, 2", "0.5, 0.5", "-1, -1.5"})
    void wholeTogetherTheLessRulesAndApartBothDo(double one, double other) {
        assertThat(JointNormal.both(one, other, 0))
                .isCloseTo(STANDARD.cumulativeProbability(one) * STANDARD.cumulativeProbability(other), within(1e-15));
        assertThat(JointNormal.both(one, other, 1 - 1e-9))
                .isCloseTo(STANDARD.cumulativeProbability(Math.min(one, other)), within(1e-4));
        assertThat(JointNormal.both(one, other, 0.4)).isEqualTo(JointNormal.both(other, one, 0.4));
        assertThat(JointNormal.both(one, Double.POSITIVE_INFINITY, 0.4))
                .isCloseTo(STANDARD.cumulativeProbability(one), within(1e-15));
    }

    @ParameterizedTest
    @CsvSource({"1, 0.5, 0.6", "-0.3, 1.2, -0.8", "2, 2, 0.95"})
    void isWhatDrawsGive(double one, double other, double correlation) {
        SplittableRandom random = new SplittableRandom(7);
        int draws = 400_000;
        int both = 0;
        for (int i = 0; i < draws; i++) {
            double x = random.nextGaussian();
            double y = correlation * x + Math.sqrt(1 - correlation * correlation) * random.nextGaussian();
            both += x < one && y < other ? 1 : 0;
        }
        assertThat(JointNormal.both(one, other, correlation)).isCloseTo((double) both / draws, within(0.003));
    }

    @Test
    void farBelowNothingIsLeft() {
        assertThat(JointNormal.both(-40, 3, 0.5)).isZero();
        assertThat(JointNormal.both(-9, -9, 0.5)).isBetween(0.0, 1e-15);
    }
}
