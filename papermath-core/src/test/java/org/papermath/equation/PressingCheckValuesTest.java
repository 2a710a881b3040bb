package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;

class PressingCheckValuesTest {
    static List<CheckValues.Row> solids() {
        return CheckValues.read("press_solids");
    }

    private static double equilibrium(double retention, double pressure) {
        return Pressing.equilibriumRatio(retention, pressure, 1.10, 0.4e6, 0.20, 0.82);
    }

    @ParameterizedTest
    @MethodSource("solids")
    void equilibrium(CheckValues.Row row) {
        double retention = row.number("wrv");
        double pressure = row.number("pressure_Pa");
        double ratio = equilibrium(retention, pressure);
        assertThat(ratio).isCloseTo(row.number("M_default"), withinPercentage(1e-3));
        assertThat(Pressing.solidsOfRatio(ratio)).isCloseTo(row.number("S_default"), withinPercentage(1e-3));
        assertThat(Pressing.powerLawRatio(retention, pressure, 0.90, 1e6, 0.22))
                .isCloseTo(row.number("M_alternative_B"), withinPercentage(1e-3));
    }

    @ParameterizedTest
    @CsvSource({"0.1e6, 1.2, 1.7418, 0.3647", "1.5e6, 0.7, 0.8200, 0.5495", "3.0e6, 1.5, 1.1027, 0.4756"})
    void moreOfTheDefault(double pressure, double retention, double ratio, double solids) {
        assertThat(equilibrium(retention, pressure)).isCloseTo(ratio, within(5e-5));
        assertThat(Pressing.solidsOfRatio(equilibrium(retention, pressure))).isCloseTo(solids, within(5e-5));
    }

    @Test
    void approachInTime() {
        double tau = Pressing.timeConstant(30, 0.2, 1.5);
        assertThat(tau).isCloseTo(120, within(1e-9));
        double in = Pressing.ratioOfSolids(0.15);
        double end = equilibrium(1.5, 0.4e6);
        assertThat(Pressing.ratioAfter(in, end, tau, 60)).isCloseTo(4.0862, within(5e-5));
        assertThat(Pressing.ratioAfter(in, end, tau, 300)).isCloseTo(1.9797, within(5e-5));
    }

    /** One more point of solids saves 4 to 6 % of the drying. */
    @Test
    void onePointOfSolids() {
        double from = Pressing.ratioOfSolids(0.33);
        double to = Pressing.ratioOfSolids(0.34);
        double saved = 100 * WetWeb.waterOut(1, from, to) / WetWeb.waterOut(1, from, 0.07);
        assertThat(saved).isCloseTo(4.547, within(1e-3)).isBetween(4.0, 6.0);
    }

    @Test
    void thirdOfSolids() {
        assertThat(Pressing.ratioOfSolids(1 / 3.0)).isCloseTo(2, within(1e-12));
    }
}
