package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.equation.Freeness.Tester;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class FreenessCheckValuesTest {
    private static final Tester SR = new Tester(0.01, 1e-3, 2, 1e-3 / 149, 7.5e-6, 1e7);
    private static final Tester CSF = new Tester(0.0081, 1e-3, 3, 8.83e-6, 23.5e-6, 2e7);
    private static final double MU = 1.002e-3;
    private static final double RHO = 998.2;

    static List<Row> chart() {
        return CheckValues.read("freeness");
    }

    static List<Row> tester() {
        return CheckValues.read("freeness_tester");
    }

    static List<Row> alphas() {
        return CheckValues.read("freeness_alpha");
    }

    @ParameterizedTest
    @MethodSource("chart")
    void chartBothWays(Row row) {
        double csf = row.number("csf_mL");
        double sr = row.number("sr_chart_A");
        assertThat(Freeness.schopperRieglerOfCanadian(csf, 0)).isEqualTo(sr);
        assertThat(Freeness.canadianOfSchopperRiegler(sr, 0)).isEqualTo(csf);
        assertThat(Freeness.schopperRieglerOfCanadian(csf, -1.5)).isEqualTo(sr - 1.5);
        assertThat(Freeness.canadianOfSchopperRiegler(sr - 1.5, -1.5)).isEqualTo(csf);
    }

    /** The other chart stands off this one by what the table says of testers: not in the mean, and by its band at most. */
    @Test
    void theOtherChartLiesAboutTheOffsetOfTheTable() {
        Assumption offset = Assumptions.standard().get("freeness.chart-offset", Scope.GENERAL);
        double sum = 0;
        for (Row row : chart()) {
            double other = row.number("sr_chart_B")
                    - Freeness.schopperRieglerOfCanadian(row.number("csf_mL"), offset.likely());
            sum += other;
            if (row.number("csf_mL") > 50) {
                assertThat(other)
                        .as("%s mL", row)
                        .isBetween(offset.low() - offset.likely(), offset.high() - offset.likely());
            }
        }
        assertThat(sum / chart().size()).isCloseTo(0, within(1.0));
    }

    /** One smooth curve through the chart, fitted to it by a script. */
    private static double smooth(double csf) {
        return 100 * Math.exp(-0.013594 * Math.pow(csf, 0.7409));
    }

    @ParameterizedTest
    @MethodSource("chart")
    void onAndBetweenItsPointsTheChartKeepsToASmoothCurve(Row row) {
        double csf = row.number("csf_mL");
        assertThat(smooth(csf)).isCloseTo(row.number("sr_fit_A"), within(6e-4));
        for (double between = csf; between < Math.min(csf + 50, 750); between += 5) {
            double sr = Freeness.schopperRieglerOfCanadian(between, 0);
            assertThat(sr).as("SR of %s mL", between).isCloseTo(smooth(between), within(2.7));
            assertThat(Freeness.canadianOfSchopperRiegler(sr, 0)).isCloseTo(between, within(1e-9));
        }
    }

    @Test
    void betweenPointsTheChartIsStraight() {
        assertThat(Freeness.schopperRieglerOfCanadian(275, 0)).isEqualTo(44.0);
        assertThat(Freeness.canadianOfSchopperRiegler(38, 0)).isCloseTo(343.75, within(1e-9));
    }

    @ParameterizedTest
    @MethodSource("tester")
    void readingsOfTheTesters(Row row) {
        double alpha = row.number("alpha_m_per_kg");
        // A litre at the side reads 0 degrees, and each ten millilitres less one degree more.
        double sr = 100 - 1e5 * Freeness.sideVolume(alpha, SR, MU, RHO);
        double csf = 1e6 * Freeness.sideVolume(alpha, CSF, MU, RHO);
        assertThat(sr).isCloseTo(row.number("sr"), within(1e-3));
        assertThat(csf).isCloseTo(row.number("csf_mL"), within(1e-2));
    }

    @Test
    void clearWaterReadsWhatAnAcceptedTesterReads() {
        assertThat(1e6 * Freeness.sideVolume(0, CSF, MU, RHO)).isCloseTo(885, within(5.0));
    }

    @ParameterizedTest
    @MethodSource("alphas")
    void resistanceFromAReading(Row row) {
        boolean schopper = row.text("tester").equals("SR");
        double reading = row.number("reading");
        double side = schopper ? (100 - reading) * 1e-5 : reading * 1e-6;
        double expected = row.number("alpha_m_per_kg");
        Tester tester = schopper ? SR : CSF;
        double alpha = Freeness.alphaOfSideVolume(side, tester, MU, RHO);
        assertThat(alpha).isCloseTo(expected, relative(expected, 3e-4));
        assertThat(Freeness.sideVolume(alpha, tester, MU, RHO)).isCloseTo(side, relative(side, 1e-9));
        if (schopper && reading <= 80) {
            double fitted = Freeness.alphaOfSchopperRiegler(reading, 2.88e9, 4.86, 1.11);
            assertThat(fitted).isCloseTo(expected, relative(expected, 0.05));
            assertThat(Freeness.schopperRieglerOfAlpha(fitted, 2.88e9, 4.86, 1.11))
                    .isCloseTo(reading, relative(reading, 1e-12));
        }
    }

    @Test
    void readingsOutsideWhatATesterCanGive() {
        assertThat(Freeness.alphaOfSideVolume(0.9e-3, CSF, MU, RHO)).isZero();
        assertThat(Freeness.alphaOfSideVolume(-24e-6, CSF, MU, RHO)).isInfinite();
        assertThat(Freeness.sideVolume(1e14, CSF, MU, RHO)).isZero();
        Tester blocked = new Tester(0.0081, 1e-3, 3, 8.83e-6, 23.5e-6, 1e13);
        assertThat(Freeness.filtrateDepthAtBalance(1e9, blocked, MU, RHO)).isZero();
    }
}
