package org.papermath.fibre;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.BoughtFibre.Form;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.MoistureRatio;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class BoughtFibreCheckValuesTest {
    private static final Assumptions TABLE = Assumptions.standard();
    private static final Map<String, String> SUBJECT = Map.of("flax", "flax-raw", "sunn hemp", "sunn-hemp");

    static List<Row> moistures() {
        return CheckValues.read("fibre_moisture");
    }

    static List<Row> yields() {
        return CheckValues.read("fibre_yield");
    }

    @ParameterizedTest
    @MethodSource("moistures")
    void ovenDryOfWhatWasBought(Row row) {
        BoughtFibre plain = BoughtFibre.of(Fibres.ABACA, Form.SHEET);
        double water = row.number("moisture_or_regain");
        BoughtFibre moist = row.text("basis").equals("dry")
                ? plain.withMoistureRatio(MoistureRatio.gramsPerGram(water))
                : plain.withMoisture(Moisture.fraction(water));
        double mass = row.number("mass_kg");
        double expected = row.number("od_kg");
        assertThat(moist.ovenDry(kilograms(mass), TABLE).in("kg")).isCloseTo(expected, relative(expected, 1e-5));
        assertThat(moist.asBought(kilograms(expected), TABLE).in("kg")).isCloseTo(mass, relative(mass, 1e-5));
    }

    @ParameterizedTest
    @MethodSource("moistures")
    void regainOfTheTableGivesTheSame(Row row) {
        String fibre = row.text("case").replace("1 lb ", "");
        boolean regain = row.text("basis").equals("dry");
        Assumption water = regain
                ? TABLE.get("fibre.regain", Scope.of(fibre))
                : TABLE.get("fibre.moisture-as-bought", Scope.GENERAL);
        assertThat(row.number("moisture_or_regain")).isBetween(water.low(), water.high());
        if (regain) {
            assertThat(water.likely()).isEqualTo(row.number("moisture_or_regain"));
        }
    }

    @ParameterizedTest
    @MethodSource("yields")
    void stuffOfRawFibre(Row row) {
        String subject = row.text("fibre");
        Fibre fibre = Fibre.of(SUBJECT.getOrDefault(subject, subject), subject, Fibre.SourceClass.BAST);
        BoughtFibre raw = BoughtFibre.of(fibre, Form.RAW).withMoisture(Moisture.percent(0));
        double expected = 5 * row.number("default_yield");
        assertThat(raw.ovenDry(kilograms(5), TABLE).in("kg")).isCloseTo(expected, relative(expected, 1e-12));
        Assumption yield = FibreProperty.YIELD.of(fibre, TABLE);
        assertThat(yield.low()).isLessThan(yield.likely());
        assertThat(1 - row.number("loss_60_min_percent") / 100)
                .as("what the long boil leaves")
                .isBetween(yield.likely(), 1 - row.number("loss_5_min_percent") / 100);
    }
}
