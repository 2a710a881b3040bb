package org.papermath.pulp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.pulp.RetentionModel.Circumstance;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

class AdditivesTest {
    private static final Additive CLAY = Additive.of("clay", Additive.Purpose.FILLER);
    private static final Additive OCHRE = Additive.of("ochre", Additive.Purpose.PIGMENT);
    private static final Additive CHALK = Additive.of("chalk", Additive.Purpose.CARBONATE);

    @Test
    void aDoseIsWhatItSays() {
        Additive size = Additive.of("size", Additive.Purpose.INTERNAL_SIZE).active(Share.percent(12));
        AdditiveDose dose = AdditiveDose.of(size, Dose.percent(0.15));
        assertThat(dose.product(grams(454)).in("g")).isCloseTo(5.675, within(1e-9));
        assertThat(dose.activeMatter(grams(454)).in("g")).isCloseTo(0.681, within(1e-9));
        assertThat(AdditiveDose.ofProduct(size, grams(29.5735), Kinds.MASS.of(1, "lb"))
                        .dose()
                        .in("%"))
                .isCloseTo(0.7824, within(1e-4));
        Additive aid = Additive.of("aid", Additive.Purpose.RETENTION_AID);
        AdditiveSolution stock = AdditiveSolution.of(aid, grams(3.5), Kinds.VOLUME.of(1, "pt_us"));
        assertThat(AdditiveDose.of(aid, Dose.percent(0.1))
                        .solution(Kinds.MASS.of(1, "lb"), stock)
                        .in("mL"))
                .isCloseTo(61.32, within(0.01));
        assertThatThrownBy(() -> dose.solution(grams(100), stock))
                .isInstanceOf(Refused.class)
                .hasMessage("solution: one of aid given for a dose of size.");
        AdditiveDose tint = AdditiveDose.of(OCHRE, Dose.percent(2));
        assertThat(AdditiveDose.inOrder(List.of(dose, AdditiveDose.of(aid, Dose.percent(0.1)), tint)))
                .extracting(one -> one.additive().name())
                .containsExactly("ochre", "aid", "size");
    }

    @Test
    void solutionsAreStretchedAndPoured() {
        AdditiveSolution stock = AdditiveSolution.of(
                Additive.of("formation aid", Additive.Purpose.FORMATION_AID), grams(3), litres(2.5));
        assertThat(stock.toBring(Kinds.SOLUTION_STRENGTH.of(0.02, "g/L"), litres(60))
                        .in("L"))
                .isCloseTo(1, within(1e-12));
        assertThat(stock.dilutedWith(litres(2.5)).strength().in("g/L")).isCloseTo(0.6, within(1e-12));
        assertThatThrownBy(() -> stock.toBring(Kinds.SOLUTION_STRENGTH.of(2, "g/L"), litres(60)))
                .isInstanceOf(Refused.class)
                .hasMessage("target strength: 2 g/L given, but the solution itself has only 1.2 g/L. Make a stronger"
                        + " solution.");
        assertThat(SpoonMeasure.of("chalk", Kinds.DENSITY.of(0.8, "g/mL"))
                        .volume(grams(8))
                        .in("mL"))
                .isCloseTo(10, within(1e-9));
    }

    @Test
    void theSheetKeepsAPart() {
        Assumptions own = Assumptions.standard()
                .given("vat.retention", Scope.GENERAL, 0.97)
                .given("additive.retention", Scope.of("ochre"), 0.90);
        RetentionModel model = RetentionModel.from(own, Scope.GENERAL);
        assertThat(model.load(AdditiveDose.of(OCHRE, Dose.percent(5)), Circumstance.PLAIN)
                        .value()
                        .in("%"))
                .isCloseTo(4.6392, within(1e-4));
        RetentionModel clay =
                RetentionModel.from(Assumptions.standard().given("vat.retention", Scope.GENERAL, 0.95), Scope.GENERAL);
        assertThat(clay.load(AdditiveDose.of(CLAY, Dose.percent(20)), Circumstance.PLAIN)
                        .value()
                        .in("%"))
                .isCloseTo(10.5263, within(1e-4));
        RetentionModel whole =
                RetentionModel.from(Assumptions.standard().given("vat.retention", Scope.GENERAL, 1), Scope.GENERAL);
        AdditiveDose reserve = whole.doseForShare(CHALK, Share.percent(2), Circumstance.PLAIN);
        assertThat(reserve.dose().in("g/kg")).isCloseTo(34.0136, within(1e-4));
        assertThat(whole.shareOfSheet(reserve, Circumstance.PLAIN).in("%")).isCloseTo(2, within(1e-9));
        assertThat(whole.doseForLoad(CHALK, Dose.percent(6), Circumstance.PLAIN)
                        .dose()
                        .in("%"))
                .isCloseTo(10, within(1e-9));
        assertThat(whole.additive(CLAY, Circumstance.WHITE_WATER_REUSED).in("%"))
                .isCloseTo(75, within(1e-9));
        assertThat(whole.additive(OCHRE, Circumstance.WITH_AID).in("%")).isCloseTo(95, within(1e-9));
        assertThat(whole.leftInWhiteWater(grams(20), OCHRE, Circumstance.PLAIN).in("g"))
                .isCloseTo(11, within(1e-9));
        assertThat(whole.load(AdditiveDose.of(OCHRE, Dose.percent(40)), Circumstance.WITH_AID)
                        .notices()
                        .get(0)
                        .text())
                .isEqualTo("The sheet carries 38 % of its fibre in additive; above 30 % it is weak and dusts. Give"
                        + " less, or try one"
                        + " sheet first.");
    }

    @Test
    void ashAndJarsTellTheRetention() {
        assertThat(RetentionModel.shareFromAsh(Share.percent(10), Share.percent(0.1), Share.percent(86))
                        .si())
                .isCloseTo(0.11525, within(1e-5));
        assertThatThrownBy(
                        () -> RetentionModel.shareFromAsh(Share.percent(0.05), Share.percent(0.1), Share.percent(86)))
                .isInstanceOf(Refused.class)
                .hasMessage("ash of the sheet: 0.05 % given; it must lie between the"
                        + " fibre's own 0.1 % and"
                        + " the filler's 86 %. Weigh the crucible again.");
        RetentionModel model =
                RetentionModel.from(Assumptions.standard().given("vat.retention", Scope.GENERAL, 0.95), Scope.GENERAL);
        AdditiveDose dose = AdditiveDose.of(CLAY, Dose.percent(20));
        assertThat(model.retentionOfShare(dose, model.shareOfSheet(dose, Circumstance.PLAIN))
                        .in("%"))
                .isCloseTo(50, within(1e-9));
        assertThatThrownBy(() -> model.retentionOfShare(dose, Share.percent(30)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("of what was given of clay. Check the dose and the ash.");
        Assumptions own = RetentionModel.calibrate(
                Assumptions.standard(), CLAY, Circumstance.WITH_AID, Reading.of(Share.percent(80), Share.percent(3)));
        assertThat(RetentionModel.from(own, Scope.GENERAL)
                        .additive(CLAY, Circumstance.WITH_AID)
                        .in("%"))
                .isCloseTo(80, within(1e-9));
        assertThat(RetentionModel.from(own, Scope.GENERAL)
                        .additive(CLAY, Circumstance.PLAIN)
                        .in("%"))
                .isCloseTo(50, within(1e-9));
    }

    @Test
    void whiteWaterTellsTheFirstPass() {
        assertThat(RetentionModel.firstPass(Consistency.percent(0.02), Consistency.percent(0.5))
                        .in("%"))
                .isCloseTo(96, within(1e-9));
        assertThatThrownBy(() -> RetentionModel.firstPass(Consistency.percent(0.6), Consistency.percent(0.5)))
                .isInstanceOf(Refused.class)
                .hasMessage("consistency of the white water: 0.6 % given, thicker than the"
                        + " vat at 0.5 %."
                        + " See whether the two samples were changed over.");
        Scope here = Scope.of("abaca").on("letter mould");
        Assumptions own =
                RetentionModel.calibrate(Assumptions.standard(), here, Reading.of(Share.percent(96), Share.percent(1)));
        assertThat(RetentionModel.from(own, here).fibre().in("%")).isCloseTo(96, within(1e-9));
        assertThat(RetentionModel.standard().fibre().in("%")).isCloseTo(98.5, within(1e-9));
    }

    @Test
    void aGrammageComesApart() {
        RetentionModel.MakeUp made =
                RetentionModel.makeUp(Grammage.gsm(180), Moisture.percent(7), List.of(Share.percent(4)));
        assertThat(made.fibre().in("g/m2")).isCloseTo(180 * 0.93 * 0.96, within(1e-9));
        assertThat(made)
                .hasToString("180 g/m² as weighed: 160.7 g/m² of fibre and 6.696 g/m² of what is not fibre, oven-dry");
        assertThat(made.additive().orElseThrow().in("g/m2")).isCloseTo(180 * 0.93 * 0.04, within(1e-9));
        assertThat(RetentionModel.makeUp(Grammage.gsm(180), Moisture.percent(7), List.of())
                        .additive())
                .isEmpty();
        assertThatThrownBy(() -> RetentionModel.makeUp(
                        Grammage.gsm(180), Moisture.percent(7), List.of(Share.percent(60), Share.percent(40))))
                .isInstanceOf(Refused.class)
                .hasMessage("shares of additives: 100 % together given; no fibre is left. Check the shares.");
    }

    @Test
    void crowdedFibresClump() {
        Crowding abaca = Crowding.from(
                Assumptions.standard().given("fibre.coarseness", Scope.of("abaca"), 0.18), Scope.of("abaca"));
        assertThat(abaca.number(Consistency.percent(0.5)).si()).isCloseTo(347.22, within(0.01));
        assertThat(abaca.notices(Consistency.percent(0.5)).get(0).text())
                .isEqualTo("The crowding number is 347.2; above about 60"
                        + " fibres form clumps. Thin the vat to 0.0864 %, cut the fibre in the beater,"
                        + " or use a formation aid.");
        assertThat(abaca.notices(abaca.clumpingFrom().multiply(0.999))).isEmpty();
        assertThat(abaca.withLength(Kinds.LENGTH.of(1, "mm")).isFree(Consistency.percent(0.5)))
                .isTrue();
        assertThat(Crowding.standard(Scope.of("abaca")).isFree(Consistency.percent(0.5)))
                .isFalse();
    }

    @Property(tries = 200, seed = "2026")
    void theSameTintOnAnyAmountOfFibre(
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 20) double fibre,
            // A hair below the most a dose can be, which rounding on the way back would overstep.
            @ForAll @Scale(6) @DoubleRange(min = 0.0001, max = 0.499999) double dose,
            @ForAll @Scale(6) @DoubleRange(min = 0.05, max = 1) double active) {
        Additive colour = Additive.of("colour", Additive.Purpose.PIGMENT).active(Share.fraction(active));
        AdditiveDose given = AdditiveDose.of(colour, Kinds.DOSE.of(dose, "1"));
        AdditiveDose back =
                AdditiveDose.ofProduct(colour, given.product(Kinds.MASS.ofSi(fibre)), Kinds.MASS.ofSi(fibre));
        assertThat(back.dose().si()).isCloseTo(dose, relative(dose, 1e-12));
        assertThat(given.product(Kinds.MASS.ofSi(2 * fibre)).si())
                .isCloseTo(2 * given.product(Kinds.MASS.ofSi(fibre)).si(), relative(fibre, 1e-12));
    }

    @Test
    void eachAdditionWaitsForTheOneBefore() {
        AdditiveDose colour = AdditiveDose.of(Additive.of("ochre", Additive.Purpose.PIGMENT), Kinds.DOSE.of(5, "%"));
        AdditiveDose aid = AdditiveDose.of(Additive.of("aid", Additive.Purpose.RETENTION_AID), Kinds.DOSE.of(0.1, "%"));
        AdditiveDose size =
                AdditiveDose.of(Additive.of("size", Additive.Purpose.INTERNAL_SIZE), Kinds.DOSE.of(0.5, "%"));
        org.papermath.evidence.Assumptions table = org.papermath.evidence.Assumptions.standard();
        assertThat(AdditiveDose.timetable(java.util.List.of(size, aid, colour), table))
                .extracting(addition -> addition.dose().additive().name() + " " + addition.at())
                .containsExactly("ochre 0 min", "aid 5 min", "size 10 min");
        assertThat(AdditiveDose.timetable(java.util.List.of(), table)).isEmpty();
        org.papermath.evidence.Assumptions own =
                table.given("additive.wait", org.papermath.evidence.Scope.of(Additive.Purpose.PIGMENT.subject()), 20);
        assertThat(AdditiveDose.timetable(java.util.List.of(size, aid, colour), own))
                .extracting(addition -> addition.at().in("min"))
                .containsExactly(0.0, 20.0, 25.0);
    }
}
