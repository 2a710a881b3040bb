package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.equation.VatBalance.Contents;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.sheet.FormedSheet;
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
        Contents left = run(START, sheets);
        assertNear(sheets[sheets.length - 1], row.number("sheet_od_g") / 1000, 1e-5);
        assertNear(left.consistency(), row.number("c_after"), 1e-5);
        assertNear(left.stock(), row.number("vat_kg"), 1e-5);
    }

    @Test
    void sheetsWithinFivePerCent() {
        // 4.127 falls lie between 1 + 5 % and 1 − 5 %: so five sheets, and the first stands 4.97 % above their mean.
        VatLaw law = new VatLaw(80, 0.97, 2);
        assertThat(law.sheetsInBand(0.05, 1000)).isEqualTo(5);
        assertThat(law.firstOverMean(5)).isCloseTo(1.04969, relative(1, 1e-5));
    }

    @Test
    void freshStockForWhatWasTaken() {
        assertReplaced(0.03, 0.3233, 0.2586667, 1e-6);
        assertReplaced(0.05, 0.1940, 0.1293, 3e-4);
    }

    /** One sheet of 9.7 g at 15 % solids, and the fresh stock that brings its fibre back: the vat is fuller by the rest. */
    private static void assertReplaced(double fresh, double stock, double gain, double part) {
        double needed = VatBalance.stockToReplace(0.0097, fresh);
        assertNear(needed, stock, 2e-4);
        Contents left = run(START, new double[1]);
        Contents after = VatBalance.after(left, new VatBalance.Step(1, 0, needed, fresh, 0));
        assertNear(after.fibre(), START.fibre(), 1e-12);
        assertNear(after.stock() - START.stock(), gain, part);
    }

    @Test
    void finesInASteadyVat() {
        double ratio = VatBalance.steadyFinesRatio(0.10, 0.5, 0.995);
        assertNear(VatBalance.shareOfRatio(ratio), 0.18107, 1e-4);
        assertNear(VatBalance.finesConstant(80, 0.5, 2), 80, 1e-12);
    }

    @Test
    void fibreOfASheet() {
        FormedSheet sheet = FormedSheet.ofGrammage(Grammage.gsm(100), Amounts.inches(12), Amounts.inches(18));
        assertNear(sheet.fibre().in("g"), 13.9355, 1e-5);
    }

    /** Pulls sheets of fibre alone, 2 kg lifted, 97 % kept, couched at 15 % solids. */
    private static Contents run(Contents start, double[] sheets) {
        double[] none = {};
        return VatBalance.pull(start, 2, 0.97, 0.15, 0, sheets.length, sheets, null, none, none, new double[0][]);
    }

    private static void assertNear(double found, double expected, double part) {
        assertThat(found).isCloseTo(expected, relative(expected, part));
    }
}
