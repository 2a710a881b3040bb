package org.papermath.pulp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.testing.CheckValues.relative;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.CanadianFreeness;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.FiltrationResistance;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.WaterRetention;

class DrainabilityModelTest {
    private static final DrainabilityModel MODEL = DrainabilityModel.standard();

    private static Amount<SchopperRiegler> sr(double value) {
        return Kinds.SCHOPPER_RIEGLER.of(value, "SR");
    }

    private static Amount<CanadianFreeness> csf(double value) {
        return CanadianFreeness.millilitres(value);
    }

    private static Amount<FiltrationResistance> alpha(double value) {
        return Kinds.FILTRATION_RESISTANCE.of(value, "m/kg");
    }

    @Test
    void readsTheChartBothWaysWithItsBand() {
        assertThat(MODEL.schopperRieglerOf(csf(500)).value().likely().si()).isCloseTo(27, within(1e-9));
        assertThat(MODEL.schopperRieglerOf(csf(275)).value().likely().si()).isCloseTo(44, within(1e-9));
        assertThat(MODEL.canadianOf(sr(38)).value().likely().si()).isCloseTo(343.75, within(1e-9));
        assertThat(MODEL.schopperRieglerOf(csf(500)).value()).hasToString("27 °SR, mean 24–30");
        assertThat(MODEL.canadianOf(sr(38)).value().low().si()).isLessThan(343.75 - 25);
        assertThat(MODEL.canadianOf(sr(38)).notices().get(0).text())
                .isEqualTo("343.8 mL CSF was converted from 38 °SR by a chart, not measured. Keep the measured value.");
    }

    @Test
    void tellsTheResistance() {
        assertThat(MODEL.resistance(sr(30)).likely().si()).isCloseTo(0.9268e9, relative(0.9268e9, 0.05));
        assertThat(MODEL.resistance(sr(60)).likely().si()).isCloseTo(4.3111e9, relative(4.3111e9, 0.05));
        assertThat(MODEL.resistance(sr(60)).high().si()
                        / MODEL.resistance(sr(60)).likely().si())
                .isCloseTo(1.7, within(0.01));
        // the tester's own physics, at 0.30 % and 20 °C
        double[][] table = {{750, 0.1878}, {600, 0.5533}, {400, 1.5507}, {200, 4.5131}, {50, 17.609}};
        for (double[] row : table) {
            assertThat(MODEL.resistanceOfCanadian(csf(row[0])).likely().si())
                    .isCloseTo(row[1] * 1e9, relative(row[1] * 1e9, 2e-3));
        }
        assertThat(MODEL.schopperRieglerOfResistance(MODEL.resistance(sr(44)).likely())
                        .si())
                .isCloseTo(44, within(1e-9));
    }

    @Test
    void sendsForTheStopwatchBeyondTheTesters() {
        assertThatThrownBy(() -> MODEL.resistance(sr(92)))
                .isInstanceOf(Refused.class)
                .hasMessage("drainage of pulp at 92 °SR: the"
                        + " tester does not show how slowly such pulp drains; its scale is good for nothing above 90 °SR. Time"
                        + " one sheet on"
                        + " your own mould and give that time.")
                .satisfies(thrown -> assertThat(((Refused) thrown).code()).isEqualTo("drainability.stopwatch"));
        assertThatThrownBy(() -> MODEL.resistanceOfCanadian(csf(40)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("good for nothing below 50 mL CSF");
        assertThatThrownBy(() -> MODEL.resistance(sr(8)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("it must be from 12 °SR to 90 °SR");
        assertThatThrownBy(() -> MODEL.schopperRieglerOf(csf(800))).isInstanceOf(Refused.class);
    }

    @Test
    void oneTimedSheetBeatsTheTable() {
        Scope here = Scope.of("abaca").on("letter mould");
        Assumptions own =
                DrainabilityModel.calibrate(Assumptions.standard(), here, sr(50), Reading.of(alpha(4e9), alpha(2e8)));
        DrainabilityModel model = DrainabilityModel.from(own, here);
        assertThat(model.resistance(sr(50)).likely().si()).isCloseTo(4e9, relative(4e9, 1e-9));
        assertThat(model.resistance(sr(50)).high().si()).isCloseTo(4.8e9, relative(4.8e9, 1e-6));
        assertThat(model.resistance(sr(50)).isUncalibrated()).isFalse();
        assertThat(MODEL.resistance(sr(50)).isUncalibrated()).isTrue();
    }

    @Test
    void cautionsAgainstAFreenessReadOtherwise() {
        assertThat(DrainabilityModel.cautions(Consistency.percent(0.3), celsius(20)))
                .isEmpty();
        assertThat(DrainabilityModel.cautions(Consistency.percent(0.35), celsius(24)))
                .extracting(notice -> notice.text())
                .containsExactly(
                        "The freeness was read at 0.35 % instead of 0.30 %; thinner stock reads higher. No"
                                + " correction is"
                                + " made: dilute and read again.",
                        "The freeness was read at 24 °C instead of 20 °C; warmer water reads higher. No correction is"
                                + " made: bring the"
                                + " sample to 20 °C and read again.");
    }

    @Property(tries = 200, seed = "2026")
    void slowerPulpResistsMore(
            @ForAll @Scale(6) @DoubleRange(min = 12, max = 89) double number,
            @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 1) double more,
            @ForAll @Scale(6) @DoubleRange(min = 50, max = 740) double freeness) {
        assertThat(MODEL.resistance(sr(number + more)).likely().si())
                .isGreaterThan(MODEL.resistance(sr(number)).likely().si());
        assertThat(MODEL.resistanceOfCanadian(csf(freeness + 5)).likely().si())
                .isLessThan(MODEL.resistanceOfCanadian(csf(freeness)).likely().si());
        double there = MODEL.schopperRieglerOf(csf(freeness)).value().likely().si();
        assertThat(MODEL.canadianOf(sr(there)).value().likely().si()).isCloseTo(freeness, within(1e-6));
    }

    @Test
    void waterRetentionRisesWithBeating() {
        WaterRetentionModel abaca = WaterRetentionModel.standard(Scope.of("abaca"));
        assertThat(abaca.at(sr(14)).value().si()).isCloseTo(1.1, within(1e-9));
        assertThat(abaca.at(sr(8)).value().si()).isCloseTo(1.1, within(1e-9));
        assertThat(abaca.at(sr(32)).value().si()).isCloseTo(1.5, within(1e-9));
        assertThat(abaca.at(sr(50)).value().si()).isCloseTo(1.9, within(1e-9));
        assertThat(abaca.at(sr(72.5)).value().si()).isCloseTo(2.6, within(1e-9));
        assertThat(abaca.at(sr(95)).notices()).isEmpty();
        assertThat(abaca.at(sr(98)).value().si()).isCloseTo(3.3 + 3 * 1.4 / 45, within(1e-9));
        assertThat(abaca.at(sr(98)).notices().get(0).text())
                .isEqualTo("The water retention value at 98 °SR is carried on in a"
                        + " straight line beyond 95 °SR, the most beaten state known of this fibre.");
        WaterRetentionModel rag = WaterRetentionModel.standard(Scope.of("cotton-rag"));
        assertThat(rag.at(sr(45)).value().si()).isCloseTo(1.5, within(1e-9));
        assertThat(rag.at(sr(60)).value().si()).isCloseTo(1.7, within(1e-9));
    }

    @Test
    void aGentlerSpinIsNotTheSame() {
        Amount<WaterRetention> value = Kinds.WATER_RETENTION.of(1.8, "g/g");
        assertThat(WaterRetentionModel.measured(value, WaterRetentionModel.Spin.ISO_23714)
                        .notices())
                .isEmpty();
        assertThat(WaterRetentionModel.measured(value, WaterRetentionModel.Spin.AT_900_G)
                        .notices()
                        .get(0)
                        .text())
                .isEqualTo("The water retention value of 1.8 g/g was spun at 900 g, which leaves more water than the"
                        + " 3000 g of ISO"
                        + " 23714. Pressing calculated from it comes out too wet.");
        Reading<WaterRetention> reading = Reading.of(value, Kinds.WATER_RETENTION.of(0.05, "g/g"));
        assertThatThrownBy(() -> WaterRetentionModel.calibrate(
                        Assumptions.standard(), Scope.of("abaca"), sr(40), reading, WaterRetentionModel.Spin.AT_900_G))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Have it spun again");
        Assumptions own = WaterRetentionModel.calibrate(
                Assumptions.standard(), Scope.of("abaca"), sr(40), reading, WaterRetentionModel.Spin.ISO_23714);
        assertThat(WaterRetentionModel.from(own, Scope.of("abaca"))
                        .at(sr(40))
                        .value()
                        .si())
                .isCloseTo(1.8, within(1e-9));
        assertThatThrownBy(() -> WaterRetentionModel.calibrate(
                        Assumptions.standard(), Scope.of("abaca"), sr(12), reading, WaterRetentionModel.Spin.ISO_23714))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not above the unbeaten 14 °SR");
    }

    @Test
    void onePulpOnBothTestersSetsTheChart() {
        Scope here = Scope.at("school tester");
        Assumptions own = DrainabilityModel.calibrateChart(
                Assumptions.standard(), here, Reading.of(sr(29), sr(0.5)), Reading.of(csf(500), csf(10)));
        DrainabilityModel model = DrainabilityModel.from(own, here);
        assertThat(model.schopperRieglerOf(csf(500)).value().likely().si()).isCloseTo(29, within(1e-9));
        // 10 mL at 500 mL are 0.6 degrees of the chart; with half a degree of the other tester 1.645 hypot(0.5, 0.6)
        assertThat(model.schopperRieglerOf(csf(500)).value().high().si())
                .isCloseTo(29 + 1.6448536269514722 * Math.hypot(0.5, 0.6), within(1e-9));
        assertThat(DrainabilityModel.from(own, Scope.GENERAL)
                        .schopperRieglerOf(csf(500))
                        .value()
                        .likely()
                        .si())
                .isCloseTo(27, within(1e-9));
    }
}
