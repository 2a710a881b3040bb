package org.papermath.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.air.Air;
import org.papermath.equation.AlkalineReserve;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;
import org.papermath.shape.Caliper;
import org.papermath.testing.Beaten;
import org.papermath.testing.CheckValues;

/** Density and caliper, movement with humidity, surface size, permanence. */
class FinishTest {
    private static final DensityModel RAG = DensityModel.standard(Furnish.of(Fibres.COTTON_RAG));
    private static final DensityModel KOZO = DensityModel.standard(Furnish.of(Fibres.KOZO));

    private static Amount<SheetPressure> megapascals(double value) {
        return Kinds.SHEET_PRESSURE.of(value, "MPa");
    }

    @ParameterizedTest
    @CsvSource({"0, 482", "3, 533.4", "1000, 645"})
    void beatenRagGrowsDenser(double time, double expected) {
        assertThat(RAG.density(megapascals(0.4), Beaten.hours(Fibres.COTTON_RAG, time))
                        .si())
                .isCloseTo(expected, within(0.05));
    }

    static List<CheckValues.Row> trial() {
        return CheckValues.read("rag_trial_1908");
    }

    /** The rag trial of 1906 lies inside the band at every one of its beating times. */
    @ParameterizedTest
    @MethodSource("trial")
    void theRagTrialIsInsideTheBand(CheckValues.Row row) {
        DensityModel.Result result = RAG.of(
                Grammage.gsm(row.number("grammage_g_per_m2")),
                megapascals(0.4),
                Beaten.hours(Fibres.COTTON_RAG, row.number("mill_hours") * 0.18));
        assertThat(row.number("density_kg_per_m3"))
                .isBetween(result.density().low().si(), result.density().high().si());
        assertThat(row.number("thickness_mm"))
                .isBetween(
                        result.caliper().low().in("mm"), result.caliper().high().in("mm"));
    }

    @Test
    void harderPressingDensifiesUpToALimit() {
        double reference = RAG.density(megapascals(0.4), Beaten.hours(Fibres.COTTON_RAG, 0))
                .si();
        assertThat(RAG.density(megapascals(0.2), Beaten.hours(Fibres.COTTON_RAG, 0))
                                .si()
                        / reference)
                .isCloseTo(466.516 / 500, within(1e-6));
        assertThat(RAG.density(megapascals(0.8), Beaten.hours(Fibres.COTTON_RAG, 0))
                                .si()
                        / reference)
                .isCloseTo(535.887 / 500, within(1e-6));
        assertThat(RAG.density(megapascals(1.6), Beaten.hours(Fibres.COTTON_RAG, 0))
                                .si()
                        / reference)
                .isCloseTo(547.979 / 500, within(1e-6));
        assertThat(RAG.of(Grammage.gsm(120), megapascals(1.6), Beaten.hours(Fibres.COTTON_RAG, 2))
                        .notices())
                .extracting(Notice::code)
                .containsExactly("density.pressure-high");
    }

    @ParameterizedTest
    @CsvSource({"2.0, 0.0200", "1.6, 0.0197"})
    void thinKozo(double gsm, double caliper) {
        DensityModel.Result result = KOZO.of(Grammage.gsm(gsm), megapascals(0.1), Beaten.hours(Fibres.KOZO, 0));
        assertThat(result.caliper().likely().in("mm")).isCloseTo(caliper, within(5e-5));
        assertThat(result.notices())
                .extracting(Notice::code)
                .containsExactly("sheet.thin", "density.doubtful", "density.lightly-pressed");
    }

    /** Where two rules met there was a step of a third: 39 µm at 7.9 g/m², 34 µm at 10.1. */
    @Test
    void aHeavierSheetIsNeverThinner() {
        double last = 0;
        for (double gsm = 0.5; gsm < 40; gsm += 0.1) {
            double caliper = KOZO.of(Grammage.gsm(gsm), megapascals(0.1), Beaten.hours(Fibres.KOZO, 0))
                    .caliper()
                    .likely()
                    .si();
            assertThat(caliper).as("at %s g/m²", gsm).isGreaterThan(last).isLessThan(last == 0 ? 1 : last * 1.06);
            last = caliper;
        }
    }

    @Test
    void finishAndFreeDrying() {
        DensityModel.Result plain = RAG.of(Grammage.gsm(120), megapascals(0.4), Beaten.hours(Fibres.COTTON_RAG, 4));
        DensityModel.Result glazed = RAG.of(
                Grammage.gsm(120),
                megapascals(0.4),
                Beaten.hours(Fibres.COTTON_RAG, 4),
                Restraint.HUNG,
                DensityModel.Finish.GLAZED);
        assertThat(glazed.caliper().likely().si() / plain.caliper().likely().si())
                .isCloseTo(0.77, within(1e-12));
        assertThat(glazed.grammage().likely().si() / plain.grammage().likely().si())
                .isCloseTo(0.933, within(1e-12));
        assertThat(plain.grammage().likely().in("g/m2")).isCloseTo(120, within(1e-9));
        assertThat(glazed.density().likely().si() / plain.density().likely().si())
                .isCloseTo(1.21169, within(5e-6));
        assertThat(glazed.notices().get(1).text())
                .isEqualTo("Glazing also stretches the sheet: it comes to 112 g/m² and is larger by as much.");
        DensityModel.Result strong = RAG.of(
                Grammage.gsm(120),
                megapascals(0.4),
                Beaten.hours(Fibres.COTTON_RAG, 4),
                Restraint.STACK,
                DensityModel.Finish.STRONG_GLAZE);
        assertThat(strong.grammage().likely().in("g/m2")).isCloseTo(120, within(1e-9));
        assertThat(strong.notices().get(0).text()).contains("no published figure says how much");
        assertThat(glazed.notices())
                .extracting(Notice::code)
                .containsExactly("density.free-dried", "density.finish-stretch");
        assertThat(DensityModel.CALIPER_PRESSURE.in("kPa")).isEqualTo(100);
        assertThat(plain.caliper().likely().si() * plain.density().likely().si())
                .isCloseTo(0.120, within(1e-12));
    }

    @Test
    void aBlendTakesTheBulkOfItsFibres() {
        Furnish blend = Furnish.of(Share.percent(50), Fibres.COTTON_RAG, Share.percent(50), Fibres.ABACA);
        DensityModel abaca = DensityModel.standard(Furnish.of(Fibres.ABACA));
        double bulk = 0.5
                        / RAG.density(megapascals(0.4), Beaten.hours(Fibres.COTTON_RAG, 3))
                                .si()
                + 0.5
                        / abaca.density(megapascals(0.4), Beaten.hours(Fibres.ABACA, 3))
                                .si();
        DensityModel.Result result =
                DensityModel.standard(blend).of(Grammage.gsm(120), megapascals(0.4), Beaten.hours(blend, 3));
        assertThat(result.density().likely().si()).isCloseTo(1 / bulk, withinPercentage(0.01));
        assertThat(result.notices()).extracting(Notice::code).containsExactly("density.blend");
    }

    @Test
    void everyFibreWithADensityAnswersOverTheDeclaredRange() {
        for (Fibre fibre : Fibres.all()) {
            if (Assumptions.standard()
                            .find("sheet.density-unbeaten", fibre.scope())
                            .isEmpty()
                    && Assumptions.standard()
                            .find("sheet.density-lightly-pressed", fibre.scope())
                            .isEmpty()) {
                continue;
            }
            for (double pressure : new double[] {0.05, 0.1, 0.4, 1, 1.5, 4}) {
                for (double time : new double[] {0, 0.5, 2, 6, 12}) {
                    for (double gsm : new double[] {2, 9.99, 10, 60, 300}) {
                        DensityModel.Result result = DensityModel.standard(Furnish.of(fibre))
                                .of(Grammage.gsm(gsm), megapascals(pressure), Beaten.hours(fibre, time));
                        assertThat(result.density().likely().si())
                                .as(fibre.id())
                                .isBetween(30.0, 1500.0);
                        assertThat(result.caliper().low().si()).isPositive();
                    }
                }
            }
        }
    }

    @Test
    void oneSheetCalibratesDensity() {
        Scope scope = Scope.of("cotton-rag").on("old press");
        Assumptions own = DensityModel.calibrate(
                Assumptions.standard(),
                scope,
                Reading.of(Grammage.gsm(150), Grammage.gsm(1)),
                Reading.of(micrometres(250), micrometres(2)),
                megapascals(0.6),
                Beaten.hours(Fibres.COTTON_RAG, 3));
        DensityModel model = DensityModel.from(own, scope);
        assertThat(model.density(megapascals(0.6), Beaten.hours(Fibres.COTTON_RAG, 3))
                        .si())
                .isCloseTo(600, withinPercentage(0.001));
        assertThat(own.get("sheet.density-unbeaten", scope).basis()).isEqualTo(Basis.MEASURED_HERE);
        assertThat(own.get("sheet.density-unbeaten", Scope.of("cotton-rag")).likely())
                .isEqualTo(482);
        assertThatThrownBy(() -> DensityModel.calibrate(
                        Assumptions.standard(),
                        scope,
                        Reading.of(Grammage.gsm(150), Grammage.gsm(1)),
                        Reading.of(micrometres(12), micrometres(2)),
                        megapascals(0.6),
                        Beaten.hours(Fibres.COTTON_RAG, 3)))
                .isInstanceOfSatisfying(Refused.class, r -> assertThat(r.code()).isEqualTo("density.calibration"));
    }

    @Test
    void aCaliperSaysHowItWasMeasured() {
        assertThat(RAG.of(Grammage.gsm(120), megapascals(0.4), Beaten.hours(Fibres.COTTON_RAG, 4))
                        .stated()
                        .pressure()
                        .in("kPa"))
                .isEqualTo(100);
        assertThatThrownBy(() -> DensityModel.calibrate(
                        Assumptions.standard(),
                        Scope.of("cotton-rag"),
                        Reading.of(Grammage.gsm(150), Grammage.gsm(1)),
                        Caliper.of(micrometres(250), Caliper.FIFTY_KILOPASCALS),
                        micrometres(2),
                        megapascals(0.6),
                        Beaten.hours(Fibres.COTTON_RAG, 3)))
                .isInstanceOfSatisfying(Refused.class, r -> assertThat(r.code()).isEqualTo("density.caliper-pressure"));
        Assumptions own = DensityModel.calibrate(
                Assumptions.standard(),
                Scope.of("cotton-rag"),
                Reading.of(Grammage.gsm(150), Grammage.gsm(1)),
                Caliper.of(micrometres(250), Caliper.HUNDRED_KILOPASCALS),
                micrometres(2),
                megapascals(0.6),
                Beaten.hours(Fibres.COTTON_RAG, 3));
        assertThat(DensityModel.from(own, Scope.of("cotton-rag"))
                        .density(megapascals(0.6), Beaten.hours(Fibres.COTTON_RAG, 3))
                        .si())
                .isCloseTo(600, withinPercentage(0.001));
    }

    @Test
    void movementWithHumidity() {
        HygroexpansionModel model = HygroexpansionModel.standard();
        // Cotton from 50 to 65 %: a 760 mm sheet dried under restraint grows 0.631 mm.
        SorptionModel cotton = SorptionModel.from(Assumptions.standard(), Scope.of("cotton"));
        Air half = Air.of(celsius(23), RelativeHumidity.percent(50));
        Air damper = Air.of(celsius(23), RelativeHumidity.percent(65));
        HygroexpansionModel.Movement moved = model.between(mm(760), LinearShrinkage.percent(0), cotton, half, damper);
        assertThat(moved.grows()).isTrue();
        assertThat(moved.change().in("mm")).isCloseTo(0.631, within(5e-4));
        assertThat(moved.strain().low().si()).isLessThan(moved.strain().likely().si());
        HygroexpansionModel.Movement back =
                model.between(moved.length(), LinearShrinkage.percent(0), cotton, damper, half);
        assertThat(back.grows()).isFalse();
        assertThat(back.length().in("mm")).isCloseTo(760, within(0.001));
        assertThat(model.between(
                                mm(760),
                                LinearShrinkage.percent(10),
                                MoistureRatio.percent(6),
                                MoistureRatio.percent(9))
                        .change()
                        .in("mm"))
                .isCloseTo(3.876, within(5e-4));
        assertThat(moved.notices()).isEmpty();
    }

    @Test
    void theFirstDampExcursionIsNoticed() {
        HygroexpansionModel.Movement moved = HygroexpansionModel.standard()
                .between(
                        mm(300),
                        LinearShrinkage.percent(0),
                        SorptionModel.standard(),
                        Air.reference(),
                        Air.of(celsius(23), RelativeHumidity.percent(90)));
        assertThat(moved.notices()).extracting(Notice::code).containsExactly("hygroexpansion.first-damp");
        assertThat(moved.notices().get(0).text()).startsWith("A sheet dried under restraint that meets more than 80 %");
        assertThat(HygroexpansionModel.standard()
                        .between(
                                mm(300),
                                LinearShrinkage.percent(0),
                                SorptionModel.standard(),
                                Air.reference(),
                                Air.of(celsius(23), RelativeHumidity.percent(15)))
                        .notices())
                .extracting(Notice::code)
                .containsExactly("hygroexpansion.range");
    }

    @Test
    void surfaceSize() {
        SurfaceSize gelatine = SurfaceSize.gelatine();
        assertThat(gelatine.strength().in("%")).isCloseTo(2.6, within(1e-9));
        assertThat(gelatine.onPaper().in("%")).isCloseTo(6, within(1e-9));
        assertThat(gelatine.notices())
                .extracting(Notice::code)
                .containsExactly("size.unusual", "size.bath-weak", "size.curing");
        assertThat(gelatine.notices().get(1).text())
                .startsWith(
                        "The sheet would have to take up 230.8 % of its mass of"
                                + " this bath; about 160 % is the most. For 6 % on paper the bath needs 3.75 % of dry size or more.");
        SurfaceSize usual = SurfaceSize.weighed(Share.percent(4), grams(21), grams(39.5));
        assertThat(usual.notices()).extracting(Notice::code).containsExactly("size.curing");
        assertThat(usual)
                .hasToString("within 2.6–5.8 % of old writing papers: 3.524 % on paper; bath of 4 %, pick-up 88.1 %");
        assertThat(gelatine.toString()).startsWith("above the 2.6–5.8 % of old writing papers: 6 % on paper");
        assertThat(SurfaceSize.of(Share.percent(2), percent(100)).toString())
                .startsWith("below the 2.6–5.8 % of old writing papers: 2 % on paper");
        assertThat(usual.bath(90, grams(21), kilograms(4)))
                .hasToString("5.665 kg of bath with 226.6 g of size, of which 4 kg" + " stays in the tub");
        assertThat(SheetCounts.toForm(95, Yield.ofReject(Share.percent(5)))).isEqualTo(100);
        assertThatThrownBy(() -> SurfaceSize.weighed(Share.percent(4), grams(21), grams(20)))
                .hasMessage("size: 21 g before and 20 g after the bath given; the sheet must come out heavier.");
        assertThatThrownBy(() -> SurfaceSize.of(Share.percent(4), percent(0))).isInstanceOf(Refused.class);
    }

    static List<CheckValues.Row> permanence() {
        return CheckValues.read("permanence");
    }

    @ParameterizedTest
    @MethodSource("permanence")
    void publishedPermanence(CheckValues.Row row) {
        Map<String, Double> values = Map.of(
                "CaCO3_20g_per_kg_mol_H_per_kg",
                2 * 0.020 / AlkalineReserve.CALCIUM_CARBONATE,
                "MgCO3_for_0.4_mol_g_per_kg",
                1000
                        * (0.4 / 2 * AlkalineReserve.CALCIUM_CARBONATE)
                        / Permanence.asCalciumCarbonate(grams(1)).in("g"),
                "CaCO3_for_2pct_in_sheet_g_per_kg_fibre",
                Permanence.carbonateToCharge(Share.percent(100)).in("g/kg"),
                "same_at_60pct_retention_g_charged",
                Permanence.carbonateToCharge(Share.percent(60)).in("g/kg"),
                "tear_min_50_g_per_m2_mN",
                1000 * Permanence.tearRequired(Grammage.gsm(50)).si(),
                "tear_min_70_g_per_m2_mN",
                1000 * Permanence.tearRequired(Grammage.gsm(70)).si(),
                "tear_min_120_g_per_m2_mN",
                1000 * Permanence.tearRequired(Grammage.gsm(120)).si(),
                "MIT_2.18_folds",
                Math.pow(10, 2.18));
        assertThat(values).containsKey(row.text("quantity"));
        assertThat(values.get(row.text("quantity"))).isCloseTo(row.number("value"), withinPercentage(0.1));
    }

    @Test
    void magnesiumCarbonateCountsForMoreThanItsMass() {
        assertThat(Permanence.asCalciumCarbonate(grams(16.8628)).in("g")).isCloseTo(20.017, within(0.001));
    }

    /** Gelatine strengthens by what is taken up, and never weakens. */
    @Test
    void strengthGrowsWithTheGelatineOnPaper() {
        SurfaceSize little = SurfaceSize.of(Share.percent(2), Kinds.NUMBER.ofSi(1, "1"));
        SurfaceSize much = SurfaceSize.of(Share.percent(6), Kinds.NUMBER.ofSi(1, "1"));
        assertThat(little.strengthRatio().likely().si()).isCloseTo(1.466 - 14 * 0.022, within(1e-9));
        assertThat(much.strengthRatio().likely().si()).isCloseTo(1.466 + 14 * 0.018, within(1e-9));
        assertThat(much.strengthRatio().high().si() - much.strengthRatio().low().si())
                .isBetween(0.2, 0.25);
        SurfaceSize none = SurfaceSize.of(Share.percent(0.1), Kinds.NUMBER.ofSi(0.01, "1"));
        assertThat(none.strengthRatio().likely().si()).isEqualTo(1);
        Assumptions own = Assumptions.standard().given("size.strength-ratio", Scope.GENERAL, 1.3);
        assertThat(much.strengthRatio(own).likely().si()).isCloseTo(1.3 + 14 * 0.018, within(1e-9));
    }

    /** The line of the table through the gelatine of the rag trial of 1906, against least squares on its own figures. */
    @Test
    void gelatineFallsWithBeating() {
        List<CheckValues.Row> trial = CheckValues.read("rag_trial_1908");
        double[] x = trial.stream().mapToDouble(row -> row.number("mill_hours")).toArray();
        double[] y = trial.stream()
                .mapToDouble(row -> row.number("gelatine_percent"))
                .toArray();
        double mx = Arrays.stream(x).average().orElseThrow();
        double my = Arrays.stream(y).average().orElseThrow();
        double xy = 0;
        double xx = 0;
        for (int i = 0; i < x.length; i++) {
            xy += (x[i] - mx) * (y[i] - my);
            xx += (x[i] - mx) * (x[i] - mx);
        }
        double millHour = Assumptions.standard().si("beating.mill-hour", Scope.of("cotton-rag"));
        for (double mill : new double[] {8, 20, 34}) {
            double line = my + xy / xx * (mill - mx);
            SurfaceSize.Beaten beaten = SurfaceSize.gelatine(hours(mill * millHour));
            assertThat(beaten.onPaper().likely().in("%")).isCloseTo(line, within(0.01));
            assertThat(beaten.sizing().onPaper().in("%")).isCloseTo(line, within(0.01));
            assertThat(beaten.notices()).extracting(Notice::code).containsExactly("size.uncalibrated");
        }
        for (int i = 0; i < x.length; i++) {
            SurfaceSize.Beaten beaten = SurfaceSize.gelatine(hours(x[i] * millHour));
            assertThat(beaten.onPaper().likely().in("%")).isCloseTo(y[i], within(0.35));
        }
        assertThat(my + xy / xx * (8 - mx)).isCloseTo(6.2115, withinPercentage(0.01));
        assertThat(SurfaceSize.gelatine(hours(0.5)).notices())
                .extracting(Notice::code)
                .containsExactly("size.beyond-trial", "size.uncalibrated");
        assertThat(SurfaceSize.gelatine(hours(0)).onPaper().likely().in("%")).isCloseTo(7, within(1e-9));
        assertThat(SurfaceSize.gelatine(hours(12)).onPaper().likely().in("%")).isCloseTo(2, within(1e-9));
        assertThat(SurfaceSize.carriedOver(hours(2.2), hours(9)))
                .extracting(Notice::code)
                .containsExactly("size.other-beating");
        assertThat(SurfaceSize.carriedOver(hours(2.2), hours(2.4))).isEmpty();
        assertThat(SurfaceSize.alumFor(grams(26)).in("g")).isCloseTo(3.38, within(1e-9));
        assertThat(SurfaceSize.curing(Assumptions.standard()).likely().in("d")).isCloseTo(10, within(1e-9));
    }

    @Test
    void permanenceSaysWhatWasComputedAndWhatWasNot() {
        assertThat(Permanence.carbonateToCharge(Share.percent(100)).in("g/kg")).isCloseTo(20.40816, within(1e-5));
        assertThat(Permanence.carbonateToCharge(Share.percent(60)).in("g/kg")).isCloseTo(34.01361, within(1e-5));
        assertThat(Permanence.tearRequired(Grammage.gsm(50)).in("N")).isCloseTo(0.230, within(1e-9));
        assertThat(Permanence.tearRequired(Grammage.gsm(70)).in("N")).isCloseTo(0.350, within(1e-9));
        assertThat(Permanence.tearRequired(Grammage.gsm(120)).in("N")).isCloseTo(0.350, within(1e-9));
        DrySheet sheet = FormedSheet.of(grams(10), mm(300), mm(400))
                .withAdditives(grams(0.2040816327))
                .couched()
                .pressed(org.papermath.quantity.Solids.percent(35))
                .dried(org.papermath.shape.Shrinkage.NONE, SorptionModel.standard(), Air.reference());
        List<Permanence.Requirement> lines = Permanence.checklist(sheet, grams(0.2040816327), "cotton");
        assertThat(lines.get(0).status()).isEqualTo(Permanence.Status.COMPUTED_MET);
        assertThat(lines.get(0))
                .hasToString("alkaline reserve: 20 g of calcium carbonate in a kilogram of oven-dry sheet or"
                        + " more; computed 20 g/kg from the carbonate stated to be retained");
        assertThat(lines)
                .extracting(Permanence.Requirement::status)
                .containsExactly(
                        Permanence.Status.COMPUTED_MET,
                        Permanence.Status.LABORATORY,
                        Permanence.Status.DECLARED,
                        Permanence.Status.LABORATORY,
                        Permanence.Status.LABORATORY,
                        Permanence.Status.DECLARED);
        assertThat(Permanence.checklist(Permanence.Standard.ISO_9706, sheet, grams(0.2040816327), ""))
                .extracting(Permanence.Requirement::name)
                .containsExactly(
                        "alkaline reserve", "pH of a cold extract", "lignin", "tear strength, both directions");
        assertThat(Permanence.checklist(Permanence.Standard.ANSI_NISO_Z39_48, sheet, grams(0.2040816327), ""))
                .extracting(Permanence.Requirement::required)
                .containsExactly(
                        "20 g of calcium carbonate in a kilogram of oven-dry sheet or more", "7.5 to 10",
                        "1 % or less (kappa number 7)", "5.25 mN·m²/g or more");
        assertThat(Permanence.Standard.ISO_11108.title()).isEqualTo("ISO 11108");
        assertThat(Permanence.checklist(sheet, grams(0.1), "").get(0).status())
                .isEqualTo(Permanence.Status.COMPUTED_NOT_MET);
        assertThatThrownBy(() -> Permanence.checklist(sheet, grams(3), "cotton"))
                .hasMessageStartingWith(
                        "calcium carbonate: 3 g given, but the sheet holds 0.2041 g of additives altogether.");
    }
}
