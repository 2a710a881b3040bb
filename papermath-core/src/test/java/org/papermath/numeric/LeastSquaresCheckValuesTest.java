package org.papermath.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.testing.CheckValues;

class LeastSquaresCheckValuesTest {
    private static final List<CheckValues.Row> MISRA = CheckValues.read("nist_misra1a");
    private static final double[] X =
            MISRA.stream().mapToDouble(row -> row.number("x")).toArray();
    private static final double[] Y =
            MISRA.stream().mapToDouble(row -> row.number("y")).toArray();

    private static void saturating(double[] b, double[] into) {
        for (int i = 0; i < into.length; i++) {
            into[i] = b[0] * -Math.expm1(-b[1] * X[i]) - Y[i];
        }
    }

    @ParameterizedTest
    @CsvSource({"500, 0.0001", "250, 0.0005"})
    void certifiedValues(double first, double second) {
        LeastSquares.Fit fit = LeastSquares.fit(LeastSquaresCheckValuesTest::saturating, X.length, first, second);
        assertThat(fit.converged()).isTrue();
        assertThat(fit.parameters()[0]).isCloseTo(2.3894212918e+02, withinPercentage(1e-6));
        assertThat(fit.parameters()[1]).isCloseTo(5.5015643181e-04, withinPercentage(1e-6));
        assertThat(fit.standardErrors()[0]).isCloseTo(2.7070075241e+00, withinPercentage(1e-3));
        assertThat(fit.standardErrors()[1]).isCloseTo(7.2668688436e-06, withinPercentage(1e-3));
        assertThat(fit.sumOfSquares()).isCloseTo(1.2455138894e-01, withinPercentage(1e-7));
    }

    @Test
    void agreesWithAnIndependentLibrary() {
        LeastSquaresOptimizer.Optimum there = new LevenbergMarquardtOptimizer()
                .optimize(new LeastSquaresBuilder()
                        .start(new double[] {250, 0.0005})
                        .target(Y)
                        .model(point -> {
                            double[] values = new double[X.length];
                            double[][] slopes = new double[X.length][2];
                            for (int i = 0; i < X.length; i++) {
                                double e = Math.exp(-point.getEntry(1) * X[i]);
                                values[i] = point.getEntry(0) * (1 - e);
                                slopes[i][0] = 1 - e;
                                slopes[i][1] = point.getEntry(0) * X[i] * e;
                            }
                            return new Pair<>(new ArrayRealVector(values), new Array2DRowRealMatrix(slopes));
                        })
                        .maxEvaluations(1000)
                        .maxIterations(1000)
                        .build());
        LeastSquares.Fit here = LeastSquares.fit(LeastSquaresCheckValuesTest::saturating, X.length, 250, 0.0005);
        assertThat(here.parameters()[0]).isCloseTo(there.getPoint().getEntry(0), withinPercentage(1e-6));
        assertThat(here.parameters()[1]).isCloseTo(there.getPoint().getEntry(1), withinPercentage(1e-6));
        assertThat(Math.sqrt(here.sumOfSquares()))
                .isCloseTo(there.getResiduals().getNorm(), withinPercentage(1e-7));
    }

    @Test
    void aStraightLineIsExact() {
        double[] x = {1, 2, 3, 4};
        double[] y = {3.1, 4.9, 7.2, 8.8};
        LeastSquares.Fit fit = LeastSquares.fit(
                (b, into) -> {
                    for (int i = 0; i < into.length; i++) {
                        into[i] = b[0] + b[1] * x[i] - y[i];
                    }
                },
                x.length,
                0,
                0);
        // Closed form: slope Sxy/Sxx = 9.7/5, mean 2.5 and 6.
        assertThat(fit.parameters()[1]).isCloseTo(1.94, within(1e-9));
        assertThat(fit.parameters()[0]).isCloseTo(6 - 2.5 * 1.94, within(1e-9));
    }

    @Test
    void endsOnReadingsThatTellNothingAndRefusesABadStart() {
        LeastSquares.Fit flat = LeastSquares.fit((b, into) -> into[0] = 1, 1, 3, 4);
        assertThat(flat.parameters()).containsExactly(3, 4);
        assertThat(flat.standardErrors()).containsOnly(Double.NaN);
        assertThatThrownBy(() -> LeastSquares.fit((b, into) -> into[0] = Math.log(-1), 1, 1))
                .isInstanceOf(ArithmeticException.class)
                .hasMessageContaining("no finite residuals");
    }
}
