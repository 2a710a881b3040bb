package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.equation.VatBalance.Contents;
import org.papermath.equation.VatBalance.Recharge;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class VatBalanceCheckValuesTest {
    private static final Contents START = new Contents(0.4, 80);

    static List<Row> sheets() {
        return CheckValues.read("vat_balance");
    }

    @ParameterizedTest
    @MethodSource("sheets")
    void driftSheetBySheet(Row row) {
        double[] sheets = new double[(int) row.number("sheet")];
        Contents left = VatBalance.run(START, 2, 0.97, 0.15, Recharge.NONE, sheets);
        assertNear(sheets[sheets.length - 1], row.number("sheet_od_g") / 1000, 1e-5);
        assertNear(left.consistency(), row.number("c_after"), 1e-5);
        assertNear(left.stock(), row.number("vat_kg"), 1e-5);
    }

    @Test
    void closedForms() {
        assertNear(VatBalance.consistencyAfter(20, 0.005, 0.97, 2, 80), 0.003060, 2e-4);
        // 4.127 falls lie between 1 + 5 % and 1 − 5 %: so five sheets, and the first stands 4.97 % above their mean.
        VatLaw law = new VatLaw(80, 0.97, 2);
        assertThat(law.sheetsInBand(0.05, 1000)).isEqualTo(5);
        assertThat(law.firstOverMean(5)).isCloseTo(1.04969, relative(1, 1e-5));
    }

    @Test
    void freshStockForWhatWasTaken() {
        assertNear(VatBalance.stockToReplace(0.0097, 0.03), 0.3233, 2e-4);
        assertNear(VatBalance.gainOnReplacing(0.0097, 0.03, 0.15), 0.2586667, 1e-6);
        assertNear(VatBalance.stockToReplace(0.0097, 0.05), 0.1940, 2e-4);
        assertNear(VatBalance.gainOnReplacing(0.0097, 0.05, 0.15), 0.1293, 3e-4);
    }

    @Test
    void finesInASteadyVat() {
        double ratio = VatBalance.steadyFinesRatio(0.10, 0.5, 0.995);
        assertNear(VatBalance.shareOfRatio(ratio), 0.18107, 1e-4);
        assertNear(VatBalance.finesConstant(80, 0.5, 2), 80, 1e-12);
    }

    @Test
    void fibreForFiftySheets() {
        double area = 12 * 0.0254 * 18 * 0.0254;
        assertNear(VatBalance.fibreForRun(50, 0.1, area, 0, 0.4), 1.09677, 1e-5);
        assertNear(VatBalance.fibreForRun(1, 0.1, area, 0, 0), 13.9355e-3, 1e-5);
    }

    private static void assertNear(double found, double expected, double part) {
        assertThat(found).isCloseTo(expected, relative(expected, part));
    }
}
