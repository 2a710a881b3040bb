package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class MoistureCheckValuesTest {
    static List<Row> moistures() {
        return CheckValues.read("fibre_moisture");
    }

    static List<Row> yields() {
        return CheckValues.read("fibre_yield");
    }

    @ParameterizedTest
    @MethodSource("moistures")
    void ovenDryOfWhatWasBought(Row row) {
        double mass = row.number("mass_kg");
        double water = row.number("moisture_or_regain");
        double expected = row.number("od_kg");
        boolean dryBasis = row.text("basis").equals("dry");
        double found = dryBasis ? Moisture.ovenDryOfRatio(mass, water) : Moisture.ovenDryOfWetBasis(mass, water);
        assertThat(found).isCloseTo(expected, relative(expected, 1e-5));
        double wetBasis = dryBasis ? Moisture.wetBasisOfRatio(water) : water;
        double back = Moisture.massAtWetBasis(expected, wetBasis);
        assertThat(back).isCloseTo(mass, relative(mass, 1e-5));
    }

    @ParameterizedTest
    @MethodSource("yields")
    void defaultYieldIsBelowWhatABoilLeavesAndNotFarBelowTheCellulose(Row row) {
        double stuff = Moisture.stuff(100, row.number("default_yield"));
        assertThat(stuff).isLessThanOrEqualTo(100 - row.number("loss_60_min_percent"));
        assertThat(stuff).isLessThanOrEqualTo(100 - row.number("loss_5_min_percent"));
        if (row.has("cellulose_percent")) {
            assertThat(stuff).isGreaterThanOrEqualTo(0.85 * row.number("cellulose_percent"));
        }
        assertThat(Moisture.rawForStuff(stuff, row.number("default_yield"))).isCloseTo(100, relative(100, 1e-12));
    }

    @Test
    void laboratorySheets() {
        double ovenDry = Moisture.ovenDryOfWetBasis(1000, 0.08);
        assertLab("1000_kg_at_8pct_OD_kg", ovenDry);
        assertLab("1000_kg_at_8pct_AD_kg", Moisture.airDry(ovenDry));
        assertLab("94pct_fibre_AD_percent", 100 * Moisture.airDry(0.94));
        assertLab("5pct_AD_consistency_OD_percent", 5 * Moisture.AIR_DRY_SOLIDS);
        assertLab("60_g_per_m2_OD_at_6pct", Moisture.massAtWetBasis(60, 0.06));
    }

    private static void assertLab(String quantity, double found) {
        double expected = CheckValues.row("lab_sheets", "quantity", quantity).number("value");
        assertThat(found).as(quantity).isCloseTo(expected, relative(expected, 1e-6));
    }
}
