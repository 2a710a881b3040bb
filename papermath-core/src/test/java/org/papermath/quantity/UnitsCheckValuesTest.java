package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.format.ReamBasis;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class UnitsCheckValuesTest {
    static List<Row> definitions() {
        return CheckValues.read("unit_definitions");
    }

    static List<Row> factors() {
        return CheckValues.read("basis_weight_factors");
    }

    static List<Row> pairs() {
        return CheckValues.read("basis_weight_pairs");
    }

    static List<Row> changes() {
        return CheckValues.read("ream_weight_change");
    }

    private static ReamBasis basis(Row row) {
        return ReamBasis.of(Amounts.inches(row.number("width_in")), Amounts.inches(row.number("length_in")), (int)
                row.number("sheets"));
    }

    @ParameterizedTest
    @MethodSource("definitions")
    void factorsFollowTheirPublishedDefinition(Row row) {
        double expected = row.number("si");
        assertThat(Units.toSi(1, row.text("code")))
                .isCloseTo(expected, relative(expected, row.text("exact").equals("yes") ? 1e-15 : 5e-7));
    }

    @Test
    void fixedPointsOfTheTemperatureScales() {
        assertThat(Units.toSi(32, "degF")).isCloseTo(273.15, within(1e-12));
        assertThat(Units.toSi(212, "degF")).isCloseTo(373.15, within(1e-12));
        assertThat(Units.toSi(-459.67, "degF")).isCloseTo(0, within(1e-12));
        assertThat(Units.toSi(0, "Cel")).isEqualTo(273.15);
    }

    @ParameterizedTest
    @MethodSource("factors")
    void poundsOfAReam(Row row) {
        double factor = row.number("factor_g_per_m2_per_lb");
        double found = basis(row).pounds(1).in(Units.GSM);
        assertThat(found).isCloseTo(factor, relative(factor, 1e-9));
        double inverse = row.number("factor_lb_per_g_per_m2");
        assertThat(basis(row).poundsOf(Grammage.gsm(1))).isCloseTo(inverse, relative(inverse, 1e-9));
        if (row.has("printed_g_per_m2_per_lb")) {
            assertThat(found).isCloseTo(row.number("printed_g_per_m2_per_lb"), within(5.01e-4));
        }
    }

    @Test
    void namedBasesAreThoseOfTheTable() {
        named("bond", ReamBasis.BOND);
        named("cover", ReamBasis.COVER);
        named("bristol", ReamBasis.BRISTOL);
        named("index", ReamBasis.INDEX);
        named("tag", ReamBasis.TAG);
        named("book", ReamBasis.TEXT);
        named("imperial", ReamBasis.IMPERIAL);
    }

    private static void named(String grade, ReamBasis basis) {
        double factor = CheckValues.row("basis_weight_factors", "grade", grade).number("factor_g_per_m2_per_lb");
        assertThat(basis.pounds(1).in(Units.GSM)).isCloseTo(factor, relative(factor, 1e-9));
    }

    @ParameterizedTest
    @MethodSource("pairs")
    void pairsOfAChart(Row row) {
        double exact = row.number("exact_g_per_m2");
        double found = basis(row).pounds(row.number("lb")).in(Units.GSM);
        assertThat(found).isCloseTo(exact, relative(exact, 1e-6));
        if (row.has("chart_g_per_m2")) {
            assertThat(found).isCloseTo(row.number("chart_g_per_m2"), relative(found, 0.02));
        }
    }

    @ParameterizedTest
    @MethodSource("changes")
    void weightOfAReamOfAnotherCount(Row row) {
        String[] counts = row.text("change").split("->");
        ReamBasis from = ReamBasis.IMPERIAL.withCount(Integer.parseInt(counts[0]));
        ReamBasis to = ReamBasis.IMPERIAL.withCount(Integer.parseInt(counts[1]));
        double ratio = row.number("ratio");
        assertThat(to.poundsOf(from.pounds(1))).isCloseTo(ratio, relative(ratio, 1e-11));
        if (row.has("printed")) {
            assertThat(ratio).isCloseTo(row.number("printed"), within(0.003));
        }
    }
}
