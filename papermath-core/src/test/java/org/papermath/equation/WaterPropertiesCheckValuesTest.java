package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;

class WaterPropertiesCheckValuesTest {
    static List<CheckValues.Row> densities() {
        return CheckValues.read("water_density");
    }

    static List<CheckValues.Row> viscosities() {
        return CheckValues.read("water_viscosity");
    }

    static List<CheckValues.Row> mixtures() {
        return CheckValues.read("mixture_density").stream()
                .filter(row -> !row.text("case").startsWith("porosity"))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("densities")
    void density(CheckValues.Row row) {
        double celsius = row.number("t_C");
        double tanaka = WaterProperties.density(celsius);
        double kell = WaterProperties.densityKell(celsius);
        assertThat(tanaka)
                .isCloseTo(row.number("tanaka_kg_per_m3"), within(0.001))
                .isCloseTo(row.number("if97_kg_per_m3"), within(0.01));
        assertThat(kell).isCloseTo(row.number("kell_kg_per_m3"), within(0.001)).isCloseTo(tanaka, within(0.01));
        double misprint = row.number("misprint_kg_per_m3");
        assertThat(Math.abs(tanaka - misprint)).isGreaterThan(0.05);
        assertThat(Math.abs(kell - misprint)).isGreaterThan(0.05);
    }

    @ParameterizedTest
    @MethodSource("viscosities")
    void viscosity(CheckValues.Row row) {
        double celsius = row.number("t_C");
        double dynamic = WaterProperties.viscosity(celsius);
        assertThat(1000 * dynamic).isCloseTo(row.number("dynamic_mPas_formula"), within(1e-5));
        double kinematic = 1e6 * dynamic / WaterProperties.density(celsius);
        // The formula is good to half a per cent from 10 to 30 °C and to 1.2 % a little beyond.
        assertThat(kinematic)
                .isCloseTo(
                        row.number("kinematic_mm2_per_s_if97"),
                        withinPercentage(celsius >= 10 && celsius <= 30 ? 0.5 : 1.2));
    }

    @ParameterizedTest
    @CsvSource({"10, 1.307", "20, 1.002", "30, 0.797"})
    void viscosityTable(double celsius, double published) {
        assertThat(1000 * WaterProperties.viscosity(celsius)).isCloseTo(published, withinPercentage(0.6));
    }

    @ParameterizedTest
    @MethodSource("mixtures")
    void mixture(CheckValues.Row row) {
        double water = WaterProperties.density(20);
        Map<String, Double> values = Map.of(
                "stock_0.5pct_fibre1500_20C_kg_per_m3", WaterProperties.stockDensity(0.005, 1500, water),
                "stock_3pct_kg_per_m3", WaterProperties.stockDensity(0.03, 1500, water),
                // Volumes of two parts add up, whatever the parts are.
                "cellulose90_calcite10_g_per_cm3", WaterProperties.stockDensity(0.9, 1500, 2710) / 1000);
        assertThat(values).containsKey(row.text("case"));
        assertThat(values.get(row.text("case"))).isCloseTo(row.number("value"), withinPercentage(1e-3));
    }

    @Test
    void densestNearFourDegrees() {
        assertThat(WaterProperties.density(3.983035)).isEqualTo(999.974950);
        for (double celsius : new double[] {0, 2, 3.5, 4.5, 6, 10, 40}) {
            assertThat(WaterProperties.density(celsius)).isLessThan(999.974950);
        }
    }

    /** Where the formulas meet there is no step, and to 100 °C the density falls. */
    @Test
    void oneDensityFromIceToBoiling() {
        assertThat(WaterProperties.density(40)).isEqualTo(WaterProperties.densityTanaka(40));
        assertThat(WaterProperties.density(40 + 1e-9)).isCloseTo(WaterProperties.density(40), within(1e-8));
        for (double celsius = 40; celsius <= 100; celsius += 5) {
            assertThat(WaterProperties.density(celsius)).isCloseTo(WaterProperties.densityKell(celsius), within(4e-3));
        }
    }
}
