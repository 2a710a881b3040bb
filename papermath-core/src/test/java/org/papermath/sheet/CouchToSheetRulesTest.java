package org.papermath.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.mm;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.papermath.air.Air;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.evidence.WithNotices;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.press.PressingModel;
import org.papermath.pulp.BeatingState;
import org.papermath.pulp.BeatingTime;
import org.papermath.pulp.WaterRetentionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.CanadianFreeness;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Unclear;
import org.papermath.quantity.WaterRetention;
import org.papermath.shape.CutLayout;
import org.papermath.shape.Shrinkage;
import org.papermath.testing.Beaten;

/** What must be refused, warned of or hold exactly on the way from the couch to the finished sheet. */
class CouchToSheetRulesTest {
    private static final DensityModel RAG = DensityModel.standard(Furnish.of(Fibres.COTTON_RAG));

    private static Amount<SheetPressure> megapascals(double value) {
        return Kinds.SHEET_PRESSURE.of(value, "MPa");
    }

    @Test
    void pressingHarderThanOneMegapascalMakesNoSheetDenser() {
        assertThat(RAG.density(megapascals(1), Beaten.hours(Fibres.COTTON_RAG, 3))
                        .si())
                .isCloseTo(
                        RAG.density(megapascals(4), Beaten.hours(Fibres.COTTON_RAG, 3))
                                .si(),
                        withinPercentage(1e-10));
    }

    @Test
    void threeQuartersOfItsSizeIsAsked() {
        assertThatThrownBy(() -> Shrinkage.said("three quarters of its size").left(Share.percent(75)))
                .isInstanceOf(Unclear.class)
                .hasMessageContaining("13.4")
                .hasMessageContaining("43.75");
    }

    @Test
    void heldEverywhereTheSheetKeepsTheSizeOfTheMould() {
        Assumptions held = Assumptions.standard()
                .with(Assumptions.standard()
                        .get("restraint.share", Scope.of("stack"))
                        .given(Scope.of("stack"), 1));
        ShrinkageModel.Result result = ShrinkageModel.from(held, Furnish.of(Fibres.FLAX_RAW))
                .along(
                        Beaten.hours(Fibres.FLAX_RAW, 9),
                        DryingPath.from(MoistureRatio.gramsPerGram(2)).then(Restraint.STACK, MoistureRatio.percent(7)));
        assertThat(result.along().likely().si()).isZero();
        assertThat(result.across().likely().si()).isZero();
        assertThat(ShrinkageModel.deckleFor(mm(210), result.along().likely()).in("mm"))
                .isCloseTo(210, withinPercentage(1e-10));
    }

    @Test
    void moistureRisesWithHumidity() {
        double last = 0;
        for (double percent = 1; percent <= 99; percent++) {
            double here = SorptionModel.standard()
                    .ratio(Air.of(celsius(23), RelativeHumidity.percent(percent)))
                    .si();
            assertThat(here).isGreaterThan(last);
            last = here;
        }
    }

    @Test
    void hoursOfAMillBeaterAreFlaggedAndRagBeyondTheTrialIsWarnedOf() {
        WithNotices<Amount<javax.measure.quantity.Time>> studio =
                BeatingTime.ofMillHours(hours(37), Assumptions.standard(), Fibres.COTTON_RAG.scope());
        assertThat(studio.notices()).extracting(Notice::code).containsExactly("beating.mill-hours");
        assertThat(ShrinkageModel.standard(Furnish.of(Fibres.COTTON_RAG))
                        .free(BeatingState.after(
                                Assumptions.standard(), Furnish.of(Fibres.COTTON_RAG), "", studio.value()))
                        .notices())
                .extracting(Notice::code)
                .contains("shrinkage.beyond-trial");
    }

    @Test
    void whatShrankCannotBePulledOut() {
        WithNotices<?> much = ShrinkageModel.stretchToUndo(LinearShrinkage.percent(25));
        assertThat(much.notices()).extracting(Notice::code).containsExactly("shrinkage.stretch");
        assertThat(ShrinkageModel.stretchToUndo(LinearShrinkage.percent(10))
                        .value()
                        .si())
                .isCloseTo(0.11111, within(1e-5));
        assertThat(ShrinkageModel.stretchToUndo(LinearShrinkage.percent(25))
                        .value()
                        .si())
                .isCloseTo(0.33333, within(1e-5));
        assertThat(ShrinkageModel.stretchToUndo(LinearShrinkage.percent(3)).notices())
                .isEmpty();
    }

    @Test
    void pressuresOfOldMillsAreWarnedOfAndMoreIsRefused() {
        CouchedSheet sheet =
                FormedSheet.ofGrammage(Grammage.gsm(100), mm(300), mm(400)).couched();
        for (double p : new double[] {1.6, 4}) {
            assertThat(PressingModel.standard()
                            .press(sheet, WaterRetention.gramsPerGram(1.5), megapascals(p), hours(1))
                            .notices())
                    .extracting(Notice::code)
                    .contains("press.pressure-high");
        }
        assertThatThrownBy(() -> PressingModel.standard()
                        .press(sheet, WaterRetention.gramsPerGram(1.5), megapascals(4.01), hours(1)))
                .isInstanceOf(Refused.class);
        assertThat(WaterRetentionModel.measured(WaterRetention.gramsPerGram(1.5), WaterRetentionModel.Spin.AT_900_G)
                        .notices())
                .extracting(Notice::code)
                .containsExactly("water-retention.spin");
    }

    @Test
    void lightSheetsAreWarnedOf() {
        assertThat(RAG.of(Grammage.gsm(9), megapascals(0.4), Beaten.hours(Fibres.COTTON_RAG, 3))
                        .notices())
                .extracting(Notice::code)
                .contains("sheet.thin");
        assertThat(RAG.of(Grammage.gsm(6), megapascals(0.4), Beaten.hours(Fibres.COTTON_RAG, 3))
                        .notices())
                .extracting(Notice::code)
                .contains("sheet.thin");
        assertThat(RAG.of(Grammage.gsm(15), megapascals(0.4), Beaten.hours(Fibres.COTTON_RAG, 3))
                        .notices())
                .extracting(Notice::code)
                .contains("sheet.thin");
        assertThat(RAG.of(Grammage.gsm(25), megapascals(0.4), Beaten.hours(Fibres.COTTON_RAG, 3))
                        .notices())
                .isEmpty();
    }

    @Test
    void densityFromOneFreenessHasAWideBand() {
        var told = DensityModel.ofFreeness(CanadianFreeness.millilitres(237.061));
        // The mean of the published pulps lies on the line.
        assertThat(told.value().likely().si()).isCloseTo(341.224, within(0.01));
        assertThat(told.value().high().si() - told.value().likely().si()).isCloseTo(29, within(1e-9));
        assertThat(told.value().likely().si() - told.value().low().si()).isCloseTo(29, within(1e-9));
        assertThat(told.notices()).extracting(Notice::code).containsExactly("density.from-freeness");
    }

    @Test
    void oneStripInTwoAirsCalibratesTheMovement() {
        Scope scope = Furnish.of(Fibres.COTTON_RAG).scope();
        SorptionModel sorption = SorptionModel.standard();
        Air dry = Air.of(celsius(20), RelativeHumidity.percent(40));
        Air damp = Air.of(celsius(20), RelativeHumidity.percent(70));
        Assumptions own = HygroexpansionModel.calibrate(
                Assumptions.standard(),
                scope,
                Reading.of(mm(400), mm(0.1)),
                Reading.of(mm(401.2), mm(0.1)),
                LinearShrinkage.percent(2),
                sorption,
                dry,
                damp);
        assertThat(own.get("hygroexpansion.base", scope).basis()).isEqualTo(Basis.MEASURED_HERE);
        assertThat(HygroexpansionModel.from(own, scope)
                        .between(mm(400), LinearShrinkage.percent(2), sorption, dry, damp)
                        .change()
                        .in("mm"))
                .isCloseTo(1.2, within(1e-9));
        assertThatThrownBy(() -> HygroexpansionModel.calibrate(
                        Assumptions.standard(),
                        scope,
                        Reading.of(mm(400), mm(0.1)),
                        Reading.of(mm(399.2), mm(0.1)),
                        LinearShrinkage.percent(2),
                        sorption,
                        dry,
                        damp))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.code()).isEqualTo("hygroexpansion.calibration-strip"));
        assertThatThrownBy(() -> HygroexpansionModel.calibrate(
                        Assumptions.standard(),
                        scope,
                        Reading.of(mm(400), mm(0.1)),
                        Reading.of(mm(400), mm(0.1)),
                        LinearShrinkage.percent(2),
                        sorption,
                        dry,
                        dry))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.code()).isEqualTo("hygroexpansion.calibration-air"));
    }

    /** Sheets of 8 by 11 in on a rack shelf of 30 by 60 in: fifteen by layout, twenty by area alone. */
    @Test
    void aRackIsCountedByLayout() {
        CutLayout one = CutLayout.of(inches(30), inches(60), inches(8), inches(11), mm(0), mm(0), Set.of(), false);
        CutLayout other = CutLayout.of(inches(30), inches(60), inches(8), inches(11), mm(0), mm(0), Set.of(), true);
        assertThat(new int[] {one.count(), other.count()}).containsExactlyInAnyOrder(15, 14);
        assertThat((int) (30 * 60 / (8 * 11.0))).isEqualTo(20);
    }
}
