package org.papermath.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.kilograms;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.papermath.equation.WetColour;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.RetentionModel;
import org.papermath.pulp.RetentionModel.Circumstance;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.LightScattering;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

class PigmentedPulpTest {
    private static final Additive OCHRE = Additive.of("ochre", Additive.Purpose.PIGMENT);
    private static final Additive BLUE = Additive.of("blue", Additive.Purpose.PIGMENT);
    private static final PulpColour WHITE = PulpColour.of(Reflectance.of(Wavebands.THREE, 0.80, 0.78, 0.72));

    private static Pigment ochre() {
        return SwatchLadder.of(OCHRE, WHITE)
                .swatch(Dose.percent(1), Reflectance.of(Wavebands.THREE, 0.68, 0.56, 0.33))
                .swatch(Dose.percent(4), Reflectance.of(Wavebands.THREE, 0.56, 0.38, 0.14))
                .pigment(Assumptions.standard());
    }

    private static Pigment blue() {
        return SwatchLadder.of(BLUE, WHITE)
                .swatch(Dose.percent(0.5), Reflectance.of(Wavebands.THREE, 0.40, 0.50, 0.62))
                .swatch(Dose.percent(2), Reflectance.of(Wavebands.THREE, 0.20, 0.30, 0.47))
                .pigment(Assumptions.standard());
    }

    private static PigmentedPulp palette() {
        return PigmentedPulp.of(WHITE, Assumptions.standard(), Circumstance.WITH_AID)
                .with(ochre())
                .with(blue());
    }

    /** Pulp 0.85 and 1 % retained for 0.30: half of it 0.4139 and twice 0.1983, worked out in closed form apart from this code. */
    @Test
    void oneConstantIsTheClosedForm() {
        Assumptions none = Assumptions.standard()
                .given("colour.pigment-scattering", Scope.GENERAL, 0)
                .measured("colour.pigment-scattering", Scope.GENERAL, 0, 0, 1e-9);
        double[] pulp = {0.85, 0.85, 0.85};
        PulpColour grey = PulpColour.of(Reflectance.of(Wavebands.THREE, pulp));
        Pigment black = SwatchLadder.of(OCHRE, grey)
                .swatch(Dose.percent(0.5), Reflectance.of(Wavebands.THREE, 0.4139084, 0.4139084, 0.4139084))
                .swatch(Dose.percent(1), Reflectance.of(Wavebands.THREE, 0.3, 0.3, 0.3))
                .pigment(none);
        PigmentedPulp mixed =
                PigmentedPulp.of(grey, none, Circumstance.WITH_AID).with(black);
        assertThat(mixed.predict(AdditiveDose.of(OCHRE, Dose.percent(2)))
                        .reflectance()
                        .value(1))
                .isCloseTo(0.1983396, within(2e-4));
        assertThat(mixed.predict().reflectance().value(1)).isCloseTo(0.85, within(1e-12));
        assertThat(black.residual()).isLessThan(1e-3);
    }

    /** On the pulp of its ladder a pigment does what its swatches told; another one goes off as a mixture with it would. */
    @Test
    void anotherPulpThanThatOfTheLadderWidensTheBand() {
        AdditiveDose dose = AdditiveDose.of(OCHRE, Dose.percent(2));
        assertThat(causes(WHITE, dose)).noneMatch(cause -> cause.contains("another pulp"));
        PulpColour rag = PulpColour.of(Reflectance.of(Wavebands.THREE, 0.74, 0.68, 0.55));
        assertThat(causes(rag, dose)).anyMatch(cause -> cause.contains("another pulp"));
        // Five or six ΔE00 apart: about what the departure of mixtures is itself.
        double apart = rag.reflectance().lab().difference(WHITE.reflectance().lab());
        double mean = 2.9 + 1.5 + 0.1 * apart;
        double expected = Math.sqrt(Math.PI / 2) * mean * apart / Math.hypot(mean, apart);
        assertThat(on(rag).predict(dose).causes().stream()
                        .filter(cause -> cause.toString().contains("another pulp"))
                        .mapToDouble(PredictedColour.Cause::difference)
                        .findFirst()
                        .orElseThrow())
                .isCloseTo(expected, within(0.15 * expected));
        assertThat(causes(rag)).noneMatch(cause -> cause.contains("another pulp"));
    }

    private static PigmentedPulp on(PulpColour pulp) {
        return PigmentedPulp.of(pulp, Assumptions.standard(), Circumstance.WITH_AID)
                .with(ochre());
    }

    private static List<String> causes(PulpColour pulp, AdditiveDose... doses) {
        return on(pulp).predict(doses).causes().stream().map(Object::toString).toList();
    }

    @Test
    void aLadderWithoutErrorGivesThePigmentBack() {
        MadeUpStudio studio = new MadeUpStudio(new Random(1), 1e-6, 0);
        PulpColour pulp = PulpColour.of(studio.made(new double[6], 1));
        SwatchLadder ladder = SwatchLadder.of(MadeUpStudio.additive(1), pulp);
        for (double dose : new double[] {0.005, 0.02, 0.06, 0.12}) {
            double[] doses = {0, dose, 0, 0, 0, 0};
            ladder = ladder.swatch(Dose.percent(100 * dose), studio.made(doses, 1));
        }
        Pigment red = ladder.pigment(Assumptions.standard());
        assertThat(red.residual()).isLessThan(0.05);
        PigmentedPulp mixed = PigmentedPulp.of(pulp, Assumptions.standard(), Circumstance.WITH_AID)
                .with(red);
        Reflectance told = mixed.predict(AdditiveDose.of(MadeUpStudio.additive(1), Dose.percent(3.3)))
                .reflectance();
        assertThat(told.lab()
                        .difference(studio.made(new double[] {0, 0.033, 0, 0, 0, 0}, 1)
                                .lab()))
                .isLessThan(0.05);
        assertThat(red.rungs())
                .hasSize(4)
                .allSatisfy(rung -> assertThat(rung.difference()).isLessThan(0.1));
    }

    /** The dose of a match, weighed for 2 kg, stays in the sheet or in the white water to the last digit. */
    @Test
    void pigmentIsNeitherMadeNorLost() {
        ColourMatch match = palette()
                .match(palette()
                        .predict(AdditiveDose.of(OCHRE, Dose.percent(1.2)), AdditiveDose.of(BLUE, Dose.percent(0.3)))
                        .lab());
        assertThat(match.isReached()).isTrue();
        RetentionModel retention = RetentionModel.standard();
        for (AdditiveDose dose : match.best().doses()) {
            double given = dose.activeMatter(kilograms(2)).si();
            double left = retention
                    .leftInWhiteWater(dose.activeMatter(kilograms(2)), dose.additive(), Circumstance.WITH_AID)
                    .si();
            double load = retention.load(dose, Circumstance.WITH_AID).value().si();
            assertThat(load * 2 * retention.fibre().si() + left).isCloseTo(given, within(1e-12));
        }
    }

    /** Added to a batch and thinned with white stuff: grams in it before and after, over the fibre of both. */
    @Test
    void aCorrectionAddsUp() {
        List<AdditiveDose> given =
                List.of(AdditiveDose.of(OCHRE, Dose.percent(2)), AdditiveDose.of(BLUE, Dose.percent(0.6)));
        Reflectance trial = palette().predict(given).reflectance();
        ColourMatch match = palette().afterTrial(given, trial).match(Lab.of(68, -5, 14));
        ColourMatch.Proposal best = match.best();
        double fibre = 1 + best.whiteStuff().si();
        for (AdditiveDose dose : best.doses()) {
            double before = given.stream()
                    .filter(one -> one.additive().equals(dose.additive()))
                    .mapToDouble(one -> one.dose().si())
                    .sum();
            double added = best.additions().stream()
                    .filter(one -> one.additive().equals(dose.additive()))
                    .mapToDouble(one -> one.dose().si())
                    .sum();
            assertThat(added).isNotNegative();
            assertThat(dose.dose().si() * fibre).isCloseTo(before + added, within(1e-12));
        }
        assertThat(best.whiteStuff().si()).isPositive();
    }

    /** A trial as it was told changes nothing: nothing is to be added for the colour that is there. */
    @Test
    void aTrialAsToldChangesNothing() {
        List<AdditiveDose> given = List.of(AdditiveDose.of(OCHRE, Dose.percent(2)));
        PredictedColour told = palette().predict(given);
        PigmentedPulp after = palette().afterTrial(given, told.reflectance());
        assertThat(after.predict(given).lab().difference(told.lab())).isLessThan(1e-6);
        assertThat(after.predict(given).nineInTen()).isLessThan(told.nineInTen() + 0.5);
        assertThat(after.match(told.lab()).best().additions()).isEmpty();
    }

    @Test
    void aTintOnSheetsThatKeepLess() {
        List<AdditiveDose> before = List.of(AdditiveDose.of(OCHRE, Dose.percent(1)));
        PigmentedPulp plain = PigmentedPulp.of(WHITE, Assumptions.standard(), Circumstance.PLAIN)
                .with(ochre());
        AdditiveDose now = plain.rescaled(before, Circumstance.WITH_AID).get(0);
        assertThat(now.dose().si()).isCloseTo(0.01 * 0.95 / 0.45, within(1e-12));
        assertThat(plain.predict(now)
                        .lab()
                        .difference(PigmentedPulp.of(WHITE, Assumptions.standard(), Circumstance.WITH_AID)
                                .with(ochre())
                                .predict(before)
                                .lab()))
                .isLessThan(1e-9);
        assertThat(plain.predict(now).nineInTen())
                .isGreaterThan(PigmentedPulp.of(WHITE, Assumptions.standard(), Circumstance.WITH_AID)
                                .with(ochre())
                                .predict(before)
                                .nineInTen()
                        * 1.3);
    }

    /** The same pigment on a pulp that scatters twice as much tints half as strongly. */
    @Test
    void anotherFurnish() {
        PulpColour strong = WHITE.scattering(LightScattering.squareMetresPerKilogram(40));
        PulpColour weak = WHITE.scattering(LightScattering.squareMetresPerKilogram(20));
        Pigment onWeak = SwatchLadder.of(OCHRE, weak)
                .swatch(Dose.percent(1), Reflectance.of(Wavebands.THREE, 0.68, 0.56, 0.33))
                .swatch(Dose.percent(4), Reflectance.of(Wavebands.THREE, 0.56, 0.38, 0.14))
                .pigment(Assumptions.standard());
        Lab twice = PigmentedPulp.of(strong, Assumptions.standard(), Circumstance.WITH_AID)
                .with(onWeak)
                .predict(AdditiveDose.of(OCHRE, Dose.percent(2)))
                .lab();
        Lab once = PigmentedPulp.of(weak, Assumptions.standard(), Circumstance.WITH_AID)
                .with(onWeak)
                .predict(AdditiveDose.of(OCHRE, Dose.percent(1)))
                .lab();
        assertThat(twice.difference(once)).isLessThan(1e-9);
    }

    @Test
    void aThinSheetShowsWhatLiesUnderIt() {
        PulpColour abaca = WHITE.scattering(LightScattering.squareMetresPerKilogram(15));
        PredictedColour plain = PigmentedPulp.of(abaca, Assumptions.standard(), Circumstance.WITH_AID)
                .predict();
        assertThat(plain.opacity(Grammage.gsm(40)).orElseThrow().si()).isBetween(0.40, 0.55);
        Reflectance dark = Reflectance.of(Wavebands.THREE, 0.05, 0.05, 0.05);
        Reflectance over = plain.over(Grammage.gsm(40), dark).orElseThrow();
        assertThat(over.lab().l()).isLessThan(plain.lab().l() - 10);
        PulpColour again = PulpColour.of(WHITE.reflectance())
                .measuredOverBlack(
                        ThinSheet.over(
                                WHITE.reflectance(), 15, 0.04, Reflectance.of(Wavebands.THREE, 1e-12, 1e-12, 1e-12)),
                        Grammage.gsm(40));
        assertThat(again.scattering().orElseThrow().si()).isCloseTo(15, within(1e-6));
        assertThat(PigmentedPulp.of(WHITE, Assumptions.standard(), Circumstance.WITH_AID)
                        .predict()
                        .opacity(Grammage.gsm(40)))
                .isEmpty();
        assertThatThrownBy(() -> WHITE.measuredOverBlack(WHITE.reflectance(), Grammage.gsm(40)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("must send back less");
    }

    @Test
    void fewestPigmentsFirst() {
        PredictedColour one = palette().predict(AdditiveDose.of(OCHRE, Dose.percent(2)));
        ColourMatch match = palette().match(one.lab());
        assertThat(match.proposals()).hasSize(1);
        assertThat(match.best().doses()).singleElement().satisfies(dose -> {
            assertThat(dose.additive()).isEqualTo(OCHRE);
            assertThat(dose.dose().si()).isCloseTo(0.02, within(2e-5));
        });
        assertThat(match.best().beforeTrial().get(0).dose().si())
                .isCloseTo(0.75 * match.best().doses().get(0).dose().si(), within(1e-12));
    }

    @Test
    void whatIsToBeKeptInMind() {
        assertThat(palette().predict(AdditiveDose.of(OCHRE, Dose.percent(6))).notices())
                .extracting(notice -> notice.code())
                .containsExactly("colour.beyond-ladder", "colour.metamerism-unseen");
        assertThat(palette().match(Lab.of(62, -4, 12)).best().differenceUnderLamp())
                .isEmpty();
        MadeUpStudio studio = new MadeUpStudio(new Random(2), 0.2, 0);
        PigmentedPulp spectral = studio.palette(Wavebands.SIXTEEN, Circumstance.WITH_AID);
        ColourMatch grey = spectral.match(Reflectance.of(Wavebands.SIXTEEN, flat(0.3)));
        assertThat(grey.best().differenceUnderLamp().orElseThrow()).isLessThan(3);
    }

    private static double[] flat(double value) {
        double[] flat = new double[16];
        Arrays.fill(flat, value);
        return flat;
    }

    @Test
    void whatCannotBeIsRefusedInWords() {
        SwatchLadder ladder = SwatchLadder.of(OCHRE, WHITE)
                .swatch(Dose.percent(1), Reflectance.of(Wavebands.THREE, 0.68, 0.56, 0.33));
        assertThatThrownBy(() -> ladder.pigment(Assumptions.standard()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("two are needed");
        assertThatThrownBy(() -> ladder.swatch(Dose.percent(1), WHITE.reflectance()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("twice");
        assertThatThrownBy(() -> ladder.swatch(Dose.percent(0), WHITE.reflectance()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("the pulp itself");
        assertThatThrownBy(() -> SwatchLadder.of(OCHRE, WHITE)
                        .swatch(Dose.percent(1), WHITE.reflectance())
                        .swatch(Dose.percent(2), Reflectance.of(Wavebands.THREE, 0.80, 0.78, 0.715))
                        .pigment(Assumptions.standard()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("make stronger ones");
        assertThatThrownBy(() -> PigmentedPulp.of(WHITE, Assumptions.standard(), Circumstance.WITH_AID)
                        .match(Lab.of(50, 0, 0)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no pigment");
        assertThatThrownBy(() -> palette().with(ochre()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("twice");
        assertThatThrownBy(() -> palette()
                        .predict(AdditiveDose.of(Additive.of("rust", Additive.Purpose.PIGMENT), Dose.percent(1))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Known: ochre, blue");
        assertThatThrownBy(() -> palette().match(new Lab(50, 0, 0, Illuminant.A)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("one light first");
        assertThatThrownBy(() -> palette().afterTrial(List.of(), WHITE.reflectance()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no pigment was given");
        assertThatThrownBy(() -> palette()
                        .learned(Map.of(List.of(AdditiveDose.of(OCHRE, Dose.percent(1))), WHITE.reflectance())))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not of two pigments");
    }

    /** A wet sheet dries lighter, and the dry colour goes back to the wet one. */
    @ParameterizedTest
    @EnumSource
    void wetAndDry(WetToDry.Law law) {
        Reflectance dry = Reflectance.of(Wavebands.THREE, 0.5, 0.3, 0.12);
        WetToDry standard = WetToDry.from(Assumptions.standard());
        Reflectance wet = law == WetToDry.Law.SCATTERING
                ? dry.each(value -> WetColour.wetByScattering(value, 0.45))
                : dry.each(WetColour::wetInFilm);
        WetToDry found = standard.calibrated(wet, dry);
        assertThat(found.law()).isEqualTo(law);
        assertThat(found.isCalibrated()).isTrue();
        assertThat(found.dry(wet).lab().difference(dry.lab())).isLessThan(1e-6);
        assertThat(found.wet(dry).lab().difference(wet.lab())).isLessThan(1e-6);
        assertThat(found.dry(wet).nineInTen()).isLessThan(standard.dry(wet).nineInTen());
        assertThat(standard.dry(wet).lab().l()).isGreaterThan(wet.lab().l());
        assertThat(standard.dry(wet).lab().difference(dry.lab()))
                .isLessThan(standard.dry(wet).nineInTen());
    }

    /** Both laws lie within the band, on dark colours too. */
    @ParameterizedTest
    @CsvSource({"0.05", "0.1", "0.2", "0.5", "0.8"})
    void theBandHoldsBothLaws(double value) {
        Reflectance dry = Reflectance.of(Wavebands.THREE, value, value, value);
        PredictedColour wet = WetToDry.from(Assumptions.standard()).wet(dry);
        Reflectance film = dry.each(WetColour::wetInFilm);
        assertThat(film.lab().difference(wet.lab())).isLessThan(1.3 * wet.nineInTen());
    }

    @Test
    void twoSheetsSideBySide() {
        ColourComparison same =
                ColourComparison.of(Lab.of(60, 10, 20), Lab.of(60.3, 10.1, 20.1), Assumptions.standard());
        assertThat(same.seen()).isEqualTo(ColourComparison.Seen.NOT_SEEN);
        ColourComparison near = ColourComparison.of(Lab.of(60, 10, 20), Lab.of(58.2, 10, 20.4), Assumptions.standard());
        assertThat(near).hasToString("ΔE00 1.6: the other is darker; it can be seen side by side");
        ColourComparison far = ColourComparison.of(Lab.of(60, 10, 20), Lab.of(64, 2, 24), Assumptions.standard());
        assertThat(far.seen()).isEqualTo(ColourComparison.Seen.SEEN_AT_ONCE);
        assertThat(far.way()).isEqualTo("lighter, stronger, towards yellow");
        assertThat(ColourComparison.of(Lab.of(60, 10, 20), Lab.of(60, 14, 17), Assumptions.standard())
                        .way())
                .isEqualTo("stronger, towards red");
        assertThat(ColourComparison.of(
                                Reflectance.of(Wavebands.THREE, 0.5, 0.4, 0.3),
                                Reflectance.of(Wavebands.THREE, 0.5, 0.4, 0.3),
                                Assumptions.standard())
                        .differenceUnderLamp())
                .isEmpty();
    }

    @Test
    void whatOneBatchLeavesInTheNext() {
        Reflectance dark = Reflectance.of(Wavebands.THREE, 0.08, 0.06, 0.2);
        Reflectance light = WHITE.reflectance();
        double after = ColourTrace.left(dark, light, Assumptions.standard());
        assertThat(after).isGreaterThan(ColourTrace.left(light, dark, Assumptions.standard()) * 5);
        assertThat(ColourTrace.left(light, light, Assumptions.standard())).isLessThan(1e-9);
        Reflectance half = ColourTrace.blend(
                Reflectance.of(Wavebands.THREE, 0.85, 0.85, 0.85),
                Reflectance.of(Wavebands.THREE, 0.30, 0.30, 0.30),
                Share.percent(50));
        assertThat(half.value(0)).isCloseTo(0.413908, within(1e-6));
    }

    @Test
    void gramsForTheScale() {
        AdditiveDose dose = AdditiveDose.of(OCHRE.active(Share.percent(40)), Dose.percent(2));
        assertThat(dose.product(kilograms(1.5)).si()).isCloseTo(grams(75).si(), within(1e-12));
    }
}
