package org.papermath.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;
import org.junit.jupiter.api.Test;

class LeastSquaresTest {
    private static final double[] TIMES = {0.2, 0.7, 1.1, 2, 3, 4.5, 6};

    private static double curve(double[] at, double time) {
        return at[0] + at[1] * Math.exp(-at[2] * time);
    }

    private static double[] read(double error, long seed) {
        Random chance = new Random(seed);
        double[] read = new double[TIMES.length];
        for (int i = 0; i < read.length; i++) {
            read[i] = curve(new double[] {3, 12, 0.8}, TIMES[i]) + error * chance.nextGaussian();
        }
        return read;
    }

    private static LeastSquares.Residuals distances(double[] read, double error) {
        return at -> {
            double[] off = new double[read.length];
            for (int i = 0; i < off.length; i++) {
                off[i] = (curve(at, TIMES[i]) - read[i]) / error;
            }
            return off;
        };
    }

    @Test
    void exactReadingsAreMet() {
        LeastSquares fit =
                LeastSquares.of(new double[] {1, 5, 0.3}, new double[] {1, 1, 1}, distances(read(0, 1), 1e-7));
        assertThat(fit.parameters()).containsExactly(new double[] {3, 12, 0.8}, within(1e-10));
        assertThat(fit.squares()).isLessThan(1e-12);
    }

    /** Values and covariance by an independent library. */
    @Test
    void readingsWithErrorsAreMetAsByAnotherLibrary() {
        for (long seed = 0; seed < 20; seed++) {
            double error = 0.2;
            double[] read = read(error, seed);
            LeastSquares fit =
                    LeastSquares.of(new double[] {1, 5, 0.3}, new double[] {1, 4, 0.5}, distances(read, error));
            LeastSquaresOptimizer.Optimum other = new LevenbergMarquardtOptimizer()
                    .optimize(new LeastSquaresBuilder()
                            .start(new double[] {1, 5, 0.3})
                            .target(read)
                            .weight(new Array2DRowRealMatrix(diagonal(1 / (error * error))))
                            .model(at -> {
                                double[] value = new double[TIMES.length];
                                double[][] slope = new double[TIMES.length][];
                                for (int i = 0; i < value.length; i++) {
                                    double part = Math.exp(-at.getEntry(2) * TIMES[i]);
                                    value[i] = curve(at.toArray(), TIMES[i]);
                                    slope[i] = new double[] {1, part, -at.getEntry(1) * TIMES[i] * part};
                                }
                                return new Pair<>(new ArrayRealVector(value), new Array2DRowRealMatrix(slope));
                            })
                            .maxEvaluations(1000)
                            .maxIterations(1000)
                            .build());
            RealMatrix covariance = other.getCovariances(1e-14);
            for (int i = 0; i < 3; i++) {
                assertThat(fit.parameters()[i]).isCloseTo(other.getPoint().getEntry(i), within(1e-6));
                for (int j = 0; j < 3; j++) {
                    double there = covariance.getEntry(i, j);
                    assertThat(fit.covariance(i, j)).isCloseTo(there, within(1e-5 * Math.abs(there) + 1e-10));
                }
            }
        }
    }

    private static double[][] diagonal(double value) {
        double[][] matrix = new double[TIMES.length][TIMES.length];
        for (int i = 0; i < TIMES.length; i++) {
            matrix[i][i] = value;
        }
        return matrix;
    }

    @Test
    void whatHasNoScaleStays() {
        LeastSquares fit = LeastSquares.of(new double[] {3, 5, 0.8}, new double[] {0, 1, 0}, distances(read(0, 1), 1));
        assertThat(fit.parameters()[0]).isEqualTo(3);
        assertThat(fit.parameters()[2]).isEqualTo(0.8);
        assertThat(fit.parameters()[1]).isCloseTo(12, within(1e-10));
        assertThat(fit.covariance(0, 1)).isZero();
        assertThat(fit.covariance(1, 1)).isPositive();
    }

    @Test
    void stepsIntoNowhereAreShortened() {
        LeastSquares fit =
                LeastSquares.of(new double[] {0.01}, new double[] {10}, at -> new double[] {Math.log(at[0]) - 1, 0.5});
        assertThat(fit.parameters()[0]).isCloseTo(Math.E, within(1e-9));
        assertThat(fit.squares()).isCloseTo(0.25, within(1e-12));
    }

    @Test
    void nothingToFindIsFound() {
        LeastSquares fit = LeastSquares.of(new double[] {3, 5, 0.8}, new double[3], distances(read(0.2, 1), 0.2));
        assertThat(fit.isConverged()).isTrue();
        assertThat(fit.parameters()).containsExactly(3, 5, 0.8);
        assertThat(fit.leverages()).containsOnly(0);
    }

    @Test
    void whatNothingTellsIsNotFound() {
        LeastSquares.Residuals same = at -> new double[] {at[0] + at[1] - 1, 2 * (at[0] + at[1]) - 2, at[0] + at[1]};
        assertThat(LeastSquares.of(new double[] {0, 0}, new double[] {1, 1}, same)
                        .isConverged())
                .isFalse();
        assertThat(LeastSquares.of(new double[] {0, 0}, new double[] {1, 0}, same)
                        .isConverged())
                .isTrue();
        LeastSquares.Residuals falling = at -> new double[] {Math.exp(-at[0])};
        assertThat(LeastSquares.of(new double[] {0}, new double[] {1}, falling).isConverged())
                .isFalse();
        LeastSquares.Residuals nowhere = at -> new double[] {Double.NaN};
        assertThat(LeastSquares.of(new double[] {0}, new double[] {1}, nowhere).isConverged())
                .isFalse();
    }

    /** Of a straight line all is known: h = 1/n + (x - mean)²/sum, and the rest follows. */
    @Test
    void sayOfEachReading() {
        double[] x = {1, 2, 3, 4, 10};
        double[] y = {2.1, 3.9, 6.2, 7.8, 20.5};
        LeastSquares fit = LeastSquares.of(new double[] {0, 0}, new double[] {1, 1}, at -> {
            double[] off = new double[x.length];
            for (int i = 0; i < off.length; i++) {
                off[i] = at[0] + at[1] * x[i] - y[i];
            }
            return off;
        });
        double mean = 4;
        double sum = 50;
        double all = 0;
        for (int i = 0; i < x.length; i++) {
            double h = 1.0 / x.length + (x[i] - mean) * (x[i] - mean) / sum;
            assertThat(fit.leverages()[i]).isCloseTo(h, within(1e-10));
            assertThat(fit.standardised()[i]).isCloseTo(fit.residuals()[i] / Math.sqrt(1 - h), within(1e-9));
            all += fit.leverages()[i];
        }
        assertThat(all).isCloseTo(2, within(1e-10));
        assertThat(fit.correlation(0, 1)).isCloseTo(-mean / Math.sqrt(sum / x.length + mean * mean), within(1e-9));
        assertThat(fit.correlation(1, 1)).isCloseTo(1, within(1e-12));
    }

    /** A reading that alone tells a parameter is met, and cannot be seen to be off. */
    @Test
    void readingWithAllOfTheSayTellsNothing() {
        LeastSquares fit = LeastSquares.of(
                new double[] {0, 0}, new double[] {1, 1}, at -> new double[] {at[0] - 1, at[0] - 2, at[0] + at[1] - 7});
        assertThat(fit.leverages()).containsExactly(new double[] {0.5, 0.5, 1}, within(1e-9));
        assertThat(fit.standardised()[2]).isZero();
    }

    /** Each evaluation works every reading out once, so this is what the cost grows by. */
    @Test
    void costGrowsNoFasterThanTheReadings() {
        int[] counts = new int[3];
        int[] sizes = {20, 200, 2000};
        for (int s = 0; s < sizes.length; s++) {
            double[] times = new double[sizes[s]];
            double[] values = new double[sizes[s]];
            Random chance = new Random(3);
            for (int i = 0; i < times.length; i++) {
                times[i] = 6.0 * i / times.length;
                values[i] = curve(new double[] {3, 12, 0.8}, times[i]) + 0.1 * chance.nextGaussian();
            }
            int[] called = {0};
            LeastSquares fit = LeastSquares.of(new double[] {1, 5, 0.3}, new double[] {1, 4, 0.5}, at -> {
                double[] off = new double[times.length];
                for (int i = 0; i < off.length; i++) {
                    called[0]++;
                    off[i] = curve(at, times[i]) - values[i];
                }
                return off;
            });
            assertThat(fit.isConverged()).isTrue();
            assertThat(called[0]).isEqualTo(fit.evaluations() * times.length);
            counts[s] = fit.evaluations();
        }
        assertThat(counts[1]).isLessThanOrEqualTo(counts[0] * 3 / 2);
        assertThat(counts[2]).isLessThanOrEqualTo(counts[0] * 3 / 2);
    }
}
