package org.papermath.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RobustFitTest {
    private static final double[] TIMES = {0.2, 0.5, 0.8, 1.2, 1.7, 2.3, 3, 4, 5, 6};
    private static final double[] TRUE = {3, 12, 0.8};
    private static final double[] START = {1, 5, 0.3};
    private static final double[] SCALES = {1, 4, 0.5};
    private static final double ERROR = 0.2;

    private static double[] read(double error, long seed) {
        Random chance = new Random(seed);
        return Arrays.stream(TIMES)
                .map(time -> TRUE[0] + TRUE[1] * Math.exp(-TRUE[2] * time) + error * chance.nextGaussian())
                .toArray();
    }

    private static LeastSquares.Residuals distances(double[] read) {
        return at -> {
            double[] off = new double[read.length];
            for (int i = 0; i < off.length; i++) {
                off[i] = (at[0] + at[1] * Math.exp(-at[2] * TIMES[i]) - read[i]) / ERROR;
            }
            return off;
        };
    }

    private static boolean[] all() {
        boolean[] all = new boolean[TIMES.length];
        Arrays.fill(all, true);
        return all;
    }

    /** One of ten readings is 20 errors off: the values stay where they are without it. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9})
    void oneReadingFarOffHasNoSay(int place) {
        for (double far : new double[] {20, -20}) {
            double[] read = read(ERROR, 5);
            read[place] += far * ERROR;
            RobustFit robust = RobustFit.of(START, SCALES, all(), 1, distances(read));
            assertThat(robust.isConverged()).isTrue();
            double[] without = LeastSquares.of(START, SCALES, at -> {
                        double[] off = distances(read).at(at);
                        off[place] = 0;
                        return off;
                    })
                    .parameters();
            double[] plain = LeastSquares.of(START, SCALES, distances(read)).parameters();
            for (int i = 0; i < TIMES.length; i++) {
                assertThat(robust.isOff(i)).as("reading %s", i).isEqualTo(i == place);
            }
            assertThat(robust.weights()[place]).isZero();
            double spoilt = 0;
            double kept = 0;
            for (int i = 0; i < TRUE.length; i++) {
                double error = Math.sqrt(robust.fit().covariance(i, i));
                spoilt = Math.max(spoilt, Math.abs(plain[i] - without[i]) / error);
                kept = Math.max(kept, Math.abs(robust.fit().parameters()[i] - without[i]) / error);
            }
            assertThat(spoilt).isGreaterThan(2);
            assertThat(kept).isLessThan(0.5);
        }
    }

    @Test
    void ordinaryScatterIsNotDoubted() {
        int off = 0;
        for (long seed = 0; seed < 200; seed++) {
            RobustFit robust = RobustFit.of(START, SCALES, all(), 1, distances(read(ERROR, seed)));
            assertThat(robust.isConverged()).isTrue();
            for (int i = 0; i < TIMES.length; i++) {
                off += robust.isOff(i) ? 1 : 0;
            }
        }
        assertThat(off).isLessThan(6);
    }

    /** The scatter is that of the readings, not of the errors somebody stated. */
    @Test
    void readingsWorseThanSaidAreAllKept() {
        RobustFit robust = RobustFit.of(START, SCALES, all(), 1, distances(read(10 * ERROR, 2)));
        assertThat(robust.scatter()).isBetween(4.0, 20.0);
        for (int i = 0; i < TIMES.length; i++) {
            assertThat(robust.isOff(i)).isFalse();
        }
    }

    @Test
    void exactReadingsStayExact() {
        RobustFit robust = RobustFit.of(START, SCALES, all(), 1, distances(read(0, 1)));
        assertThat(robust.weights()).containsOnly(1);
        assertThat(robust.fit().parameters()).containsExactly(TRUE, within(1e-10));
    }

    @Test
    void whatIsNotDoubtedKeepsItsSay() {
        double[] read = read(ERROR, 5);
        read[4] += 20 * ERROR;
        boolean[] doubted = all();
        doubted[4] = false;
        RobustFit robust = RobustFit.of(START, SCALES, doubted, 1, distances(read));
        assertThat(robust.weights()[4]).isEqualTo(1);
        RobustFit none = RobustFit.of(START, SCALES, new boolean[TIMES.length], 1, distances(read));
        assertThat(none.fit().parameters())
                .containsExactly(LeastSquares.of(START, SCALES, distances(read)).parameters(), within(1e-9));
    }
}
