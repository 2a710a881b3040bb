package org.papermath.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.pulp.BeatingState;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.WaterRetention;
import org.papermath.shape.Shrinkage;
import org.papermath.testing.Beaten;
import org.papermath.testing.CheckValues;

class ShrinkageModelTest {
    private static final double STUDIO_HOUR = Assumptions.standard().si("beating.mill-hour", Scope.of("cotton-rag"));
    private static final ShrinkageModel RAG = ShrinkageModel.standard(Furnish.of(Fibres.COTTON_RAG));
    private static final ShrinkageModel FLAX = ShrinkageModel.standard(Furnish.of(Fibres.FLAX_RAW));

    private static List<ShrinkageModel.Strip> trial() {
        return CheckValues.read("shrinkage_rag_1908").stream()
                .map(row -> ShrinkageModel.Strip.of(
                        Beaten.hours(Fibres.COTTON_RAG, row.number("mill_hours") * STUDIO_HOUR),
                        LinearShrinkage.percent(row.number("linear_percent"))))
                .toList();
    }

    private static org.papermath.quantity.Amount<MoistureRatio> ratio(double value) {
        return MoistureRatio.gramsPerGram(value);
    }

    /** Sindall's trial of 1906 in hours of a mill beater: least squares of the greatest shrinkage from 4 to 31 h. */
    @Test
    void theRagTrialCalibrates() {
        ShrinkageModel.Calibrated found = ShrinkageModel.calibrate(
                Assumptions.standard(), Furnish.of(Fibres.COTTON_RAG).scope(), trial());
        assertThat(found.used()).isEqualTo(14);
        assertThat(found.limit().in("%")).isCloseTo(12.14, within(0.01));
        assertThat(found.rms().in("%")).isLessThanOrEqualTo(0.35);
        assertThat(found.notices()).hasSize(3).extracting(Notice::code).containsOnly("shrinkage.strip-left-out");
        assertThat(found.notices().get(0).text())
                .startsWith("The strip 8.857 %, beaten 61.")
                .endsWith("is beyond 60 % of the way and outside the model; it was left out.");
        ShrinkageModel own = ShrinkageModel.from(
                found.assumptions(), Furnish.of(Fibres.COTTON_RAG).scope());
        double squares = 0;
        for (ShrinkageModel.Strip strip : trial().subList(0, 14)) {
            ShrinkageModel.Result there = own.free(strip.beating());
            double miss = there.along().likely().in("%") - strip.shrinkage().in("%");
            squares += miss * miss;
            assertThat(there.notices()).extracting(Notice::code).doesNotContain("shrinkage.beyond-trial");
        }
        assertThat(Math.sqrt(squares / 14)).isLessThanOrEqualTo(0.35);
        for (ShrinkageModel.Strip strip : trial().subList(14, 17)) {
            assertThat(own.free(strip.beating()).notices())
                    .extracting(Notice::code)
                    .contains("shrinkage.beyond-trial");
            assertThat(strip.shrinkage().in("%"))
                    .isGreaterThan(own.free(strip.beating()).along().likely().in("%") + 1);
        }
        assertThat(found.assumptions()
                        .get("shrinkage.limit", Scope.of("cotton-rag"))
                        .basis())
                .isEqualTo(Basis.MEASURED_HERE);
    }

    static List<CheckValues.Row> pairs() {
        return CheckValues.read("rag_trial_1908");
    }

    /** The same trial: grammage goes with the area lost, within 3 % of their mean on the deckle. */
    @ParameterizedTest
    @MethodSource("pairs")
    void grammageGoesWithArea(CheckValues.Row row) {
        double area = row.number("area_ratio");
        Shrinkage shrinkage = Shrinkage.ofArea(org.papermath.quantity.AreaShrinkage.percent(100 * (1 - area)));
        double onDeckle = row.number("grammage_g_per_m2") * shrinkage.areaFactor();
        assertThat(onDeckle)
                .isCloseTo(row.number("grammage_on_deckle_g_per_m2"), withinPercentage(0.01))
                .isCloseTo(90.08, withinPercentage(3));
    }

    /** Raw flax beaten for 9.75 h: 12 × 18 in stayed so in the stack, and came to 9.5 × 13.5 in on loose fabric. */
    @Test
    void flaxInTheStackAndFree() {
        ShrinkageModel.Result stack = FLAX.along(
                Beaten.hours(Fibres.FLAX_RAW, 9.75), DryingPath.from(ratio(1.7)).then(Restraint.STACK, ratio(0.07)));
        for (var side : List.of(stack.along(), stack.across())) {
            assertThat(Math.abs(side.likely().in("%"))).isLessThanOrEqualTo(1.4);
            assertThat(side.low().si()).isLessThanOrEqualTo(0);
            assertThat(side.high().si()).isGreaterThanOrEqualTo(0);
        }
        Shrinkage measured = Shrinkage.measured(inches(12), inches(18), inches(9.5), inches(13.5));
        ShrinkageModel.Result free = FLAX.free(Beaten.hours(Fibres.FLAX_RAW, 9.75));
        assertThat((free.along().likely().in("%") + free.across().likely().in("%")) / 2)
                .isCloseTo(22.9, within(0.2));
        assertThat(free.along().likely().in("%")).isCloseTo(100 * measured.alongFraction(), within(4.0));
        assertThat(free.across().likely().in("%")).isCloseTo(100 * measured.acrossFraction(), within(4.0));
        assertThat(free.notices()).extracting(Notice::code).containsExactly("shrinkage.one-number");
    }

    @Test
    void directionsApartAfterOneSheetMeasuredBothWays() {
        Scope scope = Furnish.of(Fibres.FLAX_RAW).scope();
        Assumptions own = ShrinkageModel.calibrateDirections(
                Assumptions.standard(), scope, Shrinkage.measured(inches(12), inches(18), inches(9.5), inches(13.5)));
        ShrinkageModel.Result free = ShrinkageModel.from(own, scope).free(Beaten.hours(Fibres.FLAX_RAW, 9.75));
        assertThat(free.across().likely().in("%") - free.along().likely().in("%"))
                .isCloseTo(20.833 - 25, within(0.01));
        assertThat(free.notices()).isEmpty();
    }

    /** Unbeaten, half way and at the end: the two ends stand in the table, and between them goes a straight line. */
    @ParameterizedTest
    @CsvSource({
        "linter, 1, 4",
        "cotton-rag, 0, 12",
        "linen-rag, 1.5, 20",
        "abaca, 2, 25",
        "flax-raw, 3, 25.5",
        "hemp-raw, 3, 25",
        "softwood-kraft, 2, 12",
        "kozo, 1, 2"
    })
    void freeByState(String subject, double unbeaten, double limit) {
        ShrinkageModel model = ShrinkageModel.from(Assumptions.standard(), Scope.of(subject));
        assertThat(model.free(BeatingState.unbeaten()).along().likely().in("%")).isCloseTo(unbeaten, within(1e-9));
        assertThat(model.free(BeatingState.at(Share.percent(50)))
                        .along()
                        .likely()
                        .in("%"))
                .isCloseTo((unbeaten + limit) / 2, within(1e-9));
        assertThat(model.free(BeatingState.at(Share.percent(100)))
                        .across()
                        .likely()
                        .in("%"))
                .isCloseTo(limit, within(1e-9));
    }

    @Test
    void byWaterRetention() {
        assertThat(RAG.freeByRetention(WaterRetention.gramsPerGram(1.5))
                        .along()
                        .likely()
                        .si())
                .isCloseTo(0.05525, within(1e-9));
        assertThat(RAG.freeByRetention(WaterRetention.gramsPerGram(3))
                        .along()
                        .likely()
                        .si())
                .isCloseTo(0.15275, within(1e-9));
        Scope scope = Scope.of("cotton-rag");
        Assumptions own = ShrinkageModel.calibrateByRetention(
                Assumptions.standard(),
                scope,
                WaterRetention.gramsPerGram(1.0),
                LinearShrinkage.fraction(0.02),
                WaterRetention.gramsPerGram(2.2),
                LinearShrinkage.fraction(0.10));
        assertThat(own.si("shrinkage.per-water-retention", scope)).isCloseTo(0.06667, within(1e-5));
        assertThat(own.si("shrinkage.water-retention-intercept", scope)).isCloseTo(0.7, within(1e-9));
        assertThat(RAG.freeByRetention(WaterRetention.gramsPerGram(4.5)).notices())
                .extracting(Notice::code)
                .contains("shrinkage.retention-range");
        assertThatThrownBy(() -> ShrinkageModel.calibrateByRetention(
                        Assumptions.standard(),
                        scope,
                        WaterRetention.gramsPerGram(2.2),
                        LinearShrinkage.fraction(0.02),
                        WaterRetention.gramsPerGram(1.0),
                        LinearShrinkage.fraction(0.10)))
                .isInstanceOf(Refused.class);
    }

    @Test
    void alongAPathAndLetGoTooWet() {
        Shrinkage free = Shrinkage.across(LinearShrinkage.percent(10)).along(LinearShrinkage.percent(10));
        ShrinkageModel.Result result = RAG.along(
                free,
                DryingPath.from(ratio(2)).then(Restraint.STACK, ratio(0.25)).then(Restraint.HUNG, ratio(0.065)));
        assertThat(result.along().likely().si()).isCloseTo(0.02519, within(5e-6));
        assertThat(result.notices())
                .extracting(Notice::code)
                .containsExactly("shrinkage.released-wet", "shrinkage.cockle");
        assertThat(result.notices().get(0).text())
                .isEqualTo("The sheet is taken out of the stack at 0.25 g/g water on dry;"
                        + " above 0.2 g/g it goes on shrinking and cockles.");
        Shrinkage small = Shrinkage.across(LinearShrinkage.percent(4)).along(LinearShrinkage.percent(4));
        assertThat(RAG.along(small, DryingPath.from(ratio(2)).then(Restraint.SPUR, ratio(0.065)))
                        .along()
                        .likely()
                        .si())
                .isCloseTo(0.02205, within(5e-6));
        assertThat(RAG.along(
                                free,
                                DryingPath.from(ratio(2))
                                        .then(Restraint.STACK, ratio(0.15))
                                        .then(Restraint.HUNG, ratio(0.065)))
                        .notices())
                .extracting(Notice::code)
                .doesNotContain("shrinkage.released-wet");
        assertThatThrownBy(() -> DryingPath.from(ratio(0.5)).then(Restraint.HUNG, ratio(0.6)))
                .hasMessage("drying path: from 0.5 g/g to 0.6 g/g given; a drying step cannot make the sheet wetter.");
    }

    @Test
    void aBlendTakesItsFibresByMassAndSaysSo() {
        Furnish blend = Furnish.of(Share.percent(70), Fibres.COTTON_RAG, Share.percent(30), Fibres.ABACA);
        BeatingState beaten = Beaten.hours(blend, 4);
        ShrinkageModel.Result result = ShrinkageModel.standard(blend).free(beaten);
        double rag = 100 * 0.12 * beaten.of(Fibres.COTTON_RAG).si();
        double abaca = 100 * (0.02 + 0.23 * beaten.of(Fibres.ABACA).si());
        assertThat(result.along().likely().in("%")).isCloseTo(0.7 * rag + 0.3 * abaca, within(1e-9));
        assertThat(result.notices())
                .extracting(Notice::code)
                .containsExactly("shrinkage.blend", "shrinkage.one-number");
        assertThat(result.along().drivers())
                .extracting(driver -> driver.assumption().key())
                .contains("shrinkage.limit[abaca]", "shrinkage.limit[cotton-rag]");
        Assumptions own = ShrinkageModel.calibrate(
                        Assumptions.standard()
                                .with(Assumptions.standard()
                                        .get("shrinkage.initial", Scope.of("cotton-rag"))
                                        .given(blend.scope(), 0))
                                .with(Assumptions.standard()
                                        .get("shrinkage.limit", Scope.of("cotton-rag"))
                                        .given(blend.scope(), 0.2)),
                        blend.scope(),
                        List.of(
                                ShrinkageModel.Strip.measured(Beaten.hours(blend, 2), mm(200), mm(190)),
                                ShrinkageModel.Strip.measured(beaten, mm(200), mm(182))))
                .assumptions();
        assertThat(ShrinkageModel.from(own, blend).free(beaten).notices())
                .extracting(Notice::code)
                .doesNotContain("shrinkage.blend");
    }

    @Test
    void aWireHoldsAlongItselfOnly() {
        Shrinkage free = Shrinkage.across(LinearShrinkage.percent(20)).along(LinearShrinkage.percent(20));
        ShrinkageModel.Result result =
                FLAX.along(free, DryingPath.from(ratio(2)).then(Restraint.WIRE, ratio(0)));
        assertThat(result.along().likely().si()).isZero();
        assertThat(result.across().likely().si()).isCloseTo(0.2, within(1e-12));
        assertThat(Restraint.of("spur").share(Assumptions.standard()).in("%")).isCloseTo(40, within(1e-9));
        assertThat(Restraint.WIRE.share(Assumptions.standard()).in("%")).isCloseTo(100, within(1e-9));
        assertThatThrownBy(() -> Restraint.of("string"))
                .hasMessageStartingWith("restraint: \"string\" is not known. Known are: stack");
    }

    @Test
    void deckleForAFinishedSize() {
        assertThat(ShrinkageModel.deckleFor(inches(11), LinearShrinkage.fraction(0.08))
                        .in("in"))
                .isCloseTo(11.9565, within(5e-5));
        assertThat(ShrinkageModel.deckleFor(inches(15), LinearShrinkage.fraction(0.08))
                        .in("in"))
                .isCloseTo(16.3043, within(5e-5));
        assertThat(RAG.wholeFree(LinearShrinkage.percent(9.19), ratio(0.0648)).in("%"))
                .isCloseTo(10, within(0.01));
    }

    @Test
    void stripsThatCannotTell() {
        Scope scope = Scope.of("cotton-rag");
        assertThatThrownBy(() -> ShrinkageModel.calibrate(Assumptions.standard(), scope, trial().subList(15, 17)))
                .isInstanceOfSatisfying(Refused.class, r -> assertThat(r.code()).isEqualTo("shrinkage.strips"));
        assertThatThrownBy(() -> ShrinkageModel.calibrate(
                        Assumptions.standard(),
                        scope,
                        List.of(ShrinkageModel.Strip.measured(BeatingState.at(Share.percent(25)), mm(200), mm(170)))))
                .hasMessage("calibration: carried on to the end of beating the strips would shrink 60 %, more than the"
                        + " 50 % any sheet does. Check the marks and the beating.");
        assertThatThrownBy(() -> ShrinkageModel.calibrate(
                        Assumptions.standard(),
                        scope,
                        List.of(
                                ShrinkageModel.Strip.measured(BeatingState.at(Share.percent(25)), mm(200), mm(200)),
                                ShrinkageModel.Strip.measured(BeatingState.at(Share.percent(50)), mm(200), mm(201)))))
                .isInstanceOfSatisfying(Refused.class, r -> assertThat(r.code()).isEqualTo("shrinkage.strip-none"));
        assertThatThrownBy(() -> ShrinkageModel.from(Assumptions.standard(), Scope.of("wool"))
                        .free(BeatingState.unbeaten()))
                .isInstanceOfSatisfying(Refused.class, r -> assertThat(r.code()).isEqualTo("assumption.missing"));
    }

    @Test
    void stripsPutTheLineThroughThem() {
        Scope scope = Scope.of("abaca").on("small beater");
        // Made with a greatest shrinkage of 30 %, to a tenth of a millimetre.
        List<ShrinkageModel.Strip> strips = Stream.of(2.0, 6.0)
                .map(hours -> Beaten.hours(Fibres.ABACA, hours))
                .map(state -> ShrinkageModel.Strip.measured(
                        state,
                        mm(200),
                        mm(Math.round(2000
                                        * (0.98 - 0.28 * state.of(Fibres.ABACA).si()))
                                / 10.0)))
                .toList();
        var found = ShrinkageModel.calibrate(Assumptions.standard(), scope, strips);
        assertThat(found.limit().in("%")).isCloseTo(30, withinPercentage(0.3));
        assertThat(found.assumptions().get("shrinkage.limit", scope).key())
                .isEqualTo("shrinkage.limit[abaca@small beater]");
        assertThat(found.assumptions().get("shrinkage.limit", Scope.of("abaca")).likely())
                .isEqualTo(0.25);
    }

    @Property(tries = 250, seed = "2026")
    void heldMoreShrinksLessAndNeverMoreThanFree(
            @ForAll @DoubleRange(min = 0, max = 8) double time,
            @ForAll @DoubleRange(min = 0.3, max = 3) double start,
            @ForAll @DoubleRange(min = 0.03, max = 0.25) double end) {
        double last = Double.POSITIVE_INFINITY;
        double whole =
                FLAX.free(Beaten.hours(Fibres.FLAX_RAW, time)).across().likely().si();
        for (Restraint restraint : List.of(
                Restraint.HUNG, Restraint.FELT, Restraint.SPUR, Restraint.BLOTTERS, Restraint.STACK, Restraint.BOARD)) {
            double here = FLAX.along(
                            Beaten.hours(Fibres.FLAX_RAW, time),
                            DryingPath.from(ratio(start)).then(restraint, ratio(end)))
                    .across()
                    .likely()
                    .si();
            assertThat(here).isBetween(0.0, whole).isLessThanOrEqualTo(last);
            last = here;
        }
    }
}
