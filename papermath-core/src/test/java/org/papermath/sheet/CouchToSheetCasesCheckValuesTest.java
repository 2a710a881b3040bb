package org.papermath.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.cubicMetres;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.metres;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.squareMetres;

import java.util.List;
import javax.measure.quantity.Area;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.air.Air;
import org.papermath.air.Water;
import org.papermath.drying.DryingModel;
import org.papermath.drying.DryingRoom;
import org.papermath.equation.AlkalineReserve;
import org.papermath.equation.Density;
import org.papermath.equation.Drying;
import org.papermath.equation.Pressing;
import org.papermath.equation.Sorption;
import org.papermath.equation.WaterProperties;
import org.papermath.equation.WetWeb;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.format.ReamBasis;
import org.papermath.press.Felts;
import org.papermath.press.Post;
import org.papermath.press.Press;
import org.papermath.press.PressingModel;
import org.papermath.press.RamGauge;
import org.papermath.press.Screw;
import org.papermath.press.Vacuum;
import org.papermath.quantity.Amount;
import org.papermath.quantity.AreaShrinkage;
import org.papermath.quantity.GaugePressure;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.MassFlow;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Solids;
import org.papermath.quantity.VolumeFlow;
import org.papermath.quantity.WaterRetention;
import org.papermath.shape.Shrinkage;
import org.papermath.testing.Beaten;
import org.papermath.testing.CheckValues;

/** Every single figure published or worked out for press, water, air, drying and the dry sheet, by the public types. */
class CouchToSheetCasesCheckValuesTest {
    private static final Assumptions TABLE = Assumptions.standard();
    private static final Scope RAG = Scope.of("cotton-rag");
    private static final ShrinkageModel RAG_SHRINKS = ShrinkageModel.standard(Furnish.of(Fibres.COTTON_RAG));
    private static final DensityModel RAG_DENSITY = DensityModel.standard(Furnish.of(Fibres.COTTON_RAG));

    /** The cases are of a sheet while the load is on. */
    private static final Assumptions NO_REWET = Assumptions.standard().given("press.rewet", Scope.GENERAL, 1e-12);

    static List<CheckValues.Row> cases() {
        return CheckValues.read("cases_couch_to_sheet");
    }

    @ParameterizedTest
    @MethodSource("cases")
    void answers(CheckValues.Row row) {
        double answer = switch (row.text("group")) {
            case "water", "perm" -> water(row.text("case"));
            case "press", "screw" -> press(row.text("case"));
            case "solids" -> solids(row.text("case"));
            case "density", "caliper" -> density(row.text("case"));
            case "shrink" -> shrink(row.text("case"));
            case "sorption" -> sorption(row.text("case"));
            case "pws", "air" -> air(row.text("case"));
            default -> drying(row.text("case"));
        };
        double expected = row.number("expected");
        double tolerance = row.number("tolerance");
        assertThat(answer)
                .isCloseTo(
                        expected, within(row.text("kind").equals("abs") ? tolerance : Math.abs(expected) * tolerance));
    }

    private static double none(String id) {
        throw new AssertionError("nothing answers " + id);
    }

    private static double water(String id) {
        return switch (id) {
            case "C45" -> WaterProperties.density(20);
            case "C46" -> WaterProperties.density(4);
            case "C47" -> WaterProperties.densityKell(20);
            case "C48" -> Water.at(celsius(20)).viscosity().in("mPa.s");
            case "C49" -> WaterProperties.stockDensity(0.005, 1500, WaterProperties.density(20));
            case "C50" -> WaterProperties.stockDensity(0.9, 1500, 2710) / 1000;
            case "C51" -> 2 * 0.02 / AlkalineReserve.CALCIUM_CARBONATE;
            case "C52" -> Permanence.carbonateToCharge(Share.percent(60)).in("g/kg");
            case "C53" -> 1000 * Permanence.tearRequired(Grammage.gsm(50)).si();
            case "C54" -> Math.pow(10, 2.18);
            default -> none(id);
        };
    }

    private static Amount<SheetPressure> pressure(Amount<Force> force, Amount<Length> width, Amount<Length> length) {
        Amount<Area> area = squareMetres(width.si() * length.si());
        return Press.of("strong press", kilonewtons(1e4), width, length)
                .setting(force, area)
                .pressure();
    }

    private static Screw screw() {
        return Screw.of(mm(8), mm(30), Share.fraction(0.08)).collar(mm(40));
    }

    private static double press(String id) {
        return switch (id) {
            case "C85" ->
                pressure(Kinds.FORCE.of(6, "tonf_us"), inches(12), inches(15)).in("psi");
            case "C86" -> pressure(Kinds.FORCE.of(30, "tf"), mm(500), mm(650)).in("Pa");
            case "C87" ->
                pressure(Kinds.FORCE.of(20, "tonf_us"), inches(22), inches(30)).in("Pa");
            case "C88" ->
                pressure(RamGauge.of(mm(60)).force(GaugePressure.megapascals(10)), mm(300), mm(400))
                        .in("Pa");
            case "C89" ->
                Vacuum.of(GaugePressure.inchesOfMercury(25)).pressure().in("Pa");
            case "C90" -> 1000 * WetWeb.thickness(0.1, Pressing.ratioOfSolids(0.15), 1500, 1000);
            case "C91" ->
                Screw.of(inches(0.5), inches(2), Share.fraction(0.2))
                        .torqueFor(Kinds.FORCE.of(10_000, "lbf"))
                        .in("lbf.in");
            case "C92" -> screw().torqueFor(kilonewtons(6.4)).si();
            case "C93" -> screw().looseningTorque(kilonewtons(6.4)).si();
            case "C197" ->
                Post.of(Felts.of(mm(300), mm(400), Grammage.gsm(500), 101), 100, couched())
                        .layers(mm(2.2), mm(0.3))
                        .height()
                        .in("m");
            default -> none(id);
        };
    }

    private static CouchedSheet couched() {
        return FormedSheet.ofGrammage(Grammage.gsm(80), mm(250), mm(350)).couched(Solids.percent(15));
    }

    private static double ratio(double retention, double megapascals) {
        return PressingModel.standard()
                .equilibrium(WaterRetention.gramsPerGram(retention), Kinds.SHEET_PRESSURE.of(megapascals, "MPa"))
                .si();
    }

    private static double solids(String id) {
        return switch (id) {
            case "C94" ->
                FormedSheet.of(grams(10), mm(300), mm(400))
                        .couched(Solids.percent(33.3333))
                        .ratio()
                        .si();
            case "C95" ->
                PressingModel.from(NO_REWET, Scope.GENERAL)
                        .press(
                                FormedSheet.ofGrammage(Grammage.gsm(80), mm(300), mm(400))
                                        .couched(),
                                WaterRetention.gramsPerGram(1.5),
                                Kinds.SHEET_PRESSURE.of(0.345, "MPa"),
                                minutes(60))
                        .solids()
                        .si();
            case "C96" -> ratio(2.5, 0.1);
            case "C97" -> ratio(0.7, 1.5);
            case "C99" -> {
                PressedSheet wet =
                        FormedSheet.of(grams(10), mm(300), mm(400)).couched().pressed(Solids.percent(33));
                PressedSheet drier = wet.pressedAgain(Solids.percent(34));
                yield 100
                        * drier.released().si()
                        / (wet.water().si() - 0.07 * wet.ovenDry().si());
            }
            case "C198" -> ratio(1.5, 3);
            default -> none(id);
        };
    }

    /** A sheet of one square metre in the reference atmosphere. */
    private static DrySheet square(double gsm) {
        return DrySheet.weighed(grams(gsm), metres(1), metres(1)).in(Air.reference());
    }

    private static double density(String id) {
        return switch (id) {
            case "C100" -> square(75).caliper(Kinds.DENSITY.ofSi(550)).in("mm");
            case "C101" -> Density.ofPressure(500, 0.2e6, 0.4e6, 1e6, 0.1);
            case "C102" -> Density.ofPressure(500, 1.6e6, 0.4e6, 1e6, 0.1);
            case "C104" -> ReamBasis.of(inches(19), inches(24), 500).pounds(60).in("g/m2");
            case "C183" -> square(93.75).density(micrometres(183)).in("kg/m3");
            case "C184" -> square(110.15).density(micrometres(189)).in("kg/m3");
            case "C185" ->
                RAG_DENSITY
                        .density(
                                Kinds.SHEET_PRESSURE.of(0.4, "MPa"),
                                Beaten.hours(Fibres.COTTON_RAG, 20 * TABLE.si("beating.mill-hour", RAG)))
                        .in("kg/m3");
            case "C186" -> finished(DensityModel.Finish.GLAZED) / finished(DensityModel.Finish.NONE);
            case "C187" ->
                DensityModel.standard(Furnish.of(Fibres.KOZO))
                        .of(Grammage.gsm(2), Kinds.SHEET_PRESSURE.of(0.1, "MPa"), Beaten.hours(Fibres.KOZO, 0))
                        .caliper()
                        .likely()
                        .in("mm");
            default -> none(id);
        };
    }

    private static double finished(DensityModel.Finish finish) {
        return RAG_DENSITY
                .of(
                        Grammage.gsm(120),
                        Kinds.SHEET_PRESSURE.of(0.4, "MPa"),
                        Beaten.hours(Fibres.COTTON_RAG, 3),
                        Restraint.STACK,
                        finish)
                .density()
                .likely()
                .si();
    }

    private static Amount<MoistureRatio> dry(double ratio) {
        return MoistureRatio.gramsPerGram(ratio);
    }

    private static ShrinkageModel.Calibrated ragFit() {
        double hour = TABLE.si("beating.mill-hour", RAG);
        return ShrinkageModel.calibrate(
                TABLE,
                RAG,
                CheckValues.read("shrinkage_rag_1908").stream()
                        .map(row -> ShrinkageModel.Strip.of(
                                Beaten.hours(Fibres.COTTON_RAG, row.number("mill_hours") * hour),
                                Shrinkage.ofArea(AreaShrinkage.fraction(1 - row.number("area_mm2") / 26384))
                                        .along()))
                        .toList());
    }

    /** One flax strip beaten for 9.75 h. */
    private static ShrinkageModel.Calibrated flaxFit() {
        return ShrinkageModel.calibrate(
                TABLE,
                Scope.of("flax-raw"),
                List.of(ShrinkageModel.Strip.of(Beaten.hours(Fibres.FLAX_RAW, 9.75), LinearShrinkage.fraction(0.229))));
    }

    private static double moves(double drying) {
        return -HygroexpansionModel.standard()
                .between(mm(760), LinearShrinkage.percent(drying), dry(0.06), dry(0.09))
                .strain()
                .likely()
                .in("%");
    }

    private static double shrink(String id) {
        double hour = TABLE.si("beating.mill-hour", RAG);
        return switch (id) {
            case "C105" ->
                1
                        / Shrinkage.measured(inches(12), inches(18), inches(9.5), inches(13.5))
                                .areaFactor();
            case "C106" -> flaxFit().limit().in("%");
            case "C107" ->
                ShrinkageModel.deckleFor(inches(11), LinearShrinkage.fraction(0.08))
                        .in("in");
            case "C108" ->
                1000
                        * org.papermath.equation.Shrinkage.formedGrammage(
                                0.120, org.papermath.equation.Moisture.ratioOfWetBasis(0.065), 0.08, 0.08);
            case "C109" -> Shrinkage.ofArea(AreaShrinkage.percent(25)).along().in("%");
            case "C110" ->
                RAG_SHRINKS
                        .along(
                                Shrinkage.across(LinearShrinkage.percent(10)).along(LinearShrinkage.percent(10)),
                                DryingPath.from(dry(2))
                                        .then(Restraint.STACK, dry(0.25))
                                        .then(Restraint.HUNG, dry(0.065)))
                        .along()
                        .likely()
                        .si();
            case "C111" ->
                RAG_SHRINKS
                        .along(
                                Shrinkage.across(LinearShrinkage.percent(4)).along(LinearShrinkage.percent(4)),
                                DryingPath.from(dry(2)).then(Restraint.SPUR, dry(0.065)))
                        .along()
                        .likely()
                        .si();
            case "C112" -> moves(10);
            case "C199" -> moves(0);
            case "C176" ->
                Shrinkage.ofArea(AreaShrinkage.fraction(1 - 25160.0 / 26384))
                        .along()
                        .in("%");
            case "C177" ->
                Shrinkage.ofArea(AreaShrinkage.fraction(1 - 22492.9 / 26384))
                        .along()
                        .in("%");
            case "C178" -> ragFit().limit().in("%");
            case "C179" -> ragFit().rms().in("%");
            case "C181" ->
                RAG_SHRINKS
                        .free(Beaten.hours(Fibres.COTTON_RAG, 8 * hour))
                        .along()
                        .likely()
                        .in("%");
            case "C182" ->
                93.75
                        * Shrinkage.ofArea(AreaShrinkage.fraction(1 - (25160.0 + 24794.8) / 2 / 26384))
                                .areaFactor();
            default -> none(id);
        };
    }

    private static SorptionModel material(String name) {
        return SorptionModel.from(TABLE, Scope.of(name));
    }

    private static double moisture(String name, double percent) {
        return material(name)
                .ratio(Air.of(celsius(23), RelativeHumidity.percent(percent)))
                .in("%");
    }

    private static double sorption(String id) {
        return switch (id) {
            case "C113" -> moisture("cotton", 50);
            case "C114" -> moisture("cotton", 65);
            case "C115" -> moisture("abaca-rope", 50);
            case "C116" -> moisture("abaca-rope", 65);
            case "C117" -> moisture("kraft", 50);
            case "C118" -> moisture("kraft", 65);
            case "C119" -> 100 * Sorption.tryding(0.5, 298.15);
            case "C120" -> 100 * Sorption.hailwoodHorrobin(0.65, 20);
            case "C121" -> 100 * Sorption.hailwoodHorrobin(0.80, 60);
            case "C200" -> moisture("linen", 50);
            case "C201" -> moisture("linen", 65);
            case "C202" -> moisture("rag-paper", 50);
            case "C203" -> moisture("rag-paper", 65);
            case "C204" -> moisture("cotton-roving", 65);
            case "C205" -> material("kraft").longBeaten().ratio(Air.reference()).in("%");
            case "C206" -> {
                Amount<Moisture> wet =
                        SorptionModel.standard().moisture(Air.of(celsius(23), RelativeHumidity.percent(60)));
                assertThat(wet.in("%")).isCloseTo(6.5, within(0.6));
                yield wet.in("%");
            }
            default -> none(id);
        };
    }

    private static Air state(double celsius, double percent) {
        return Air.of(celsius(celsius), RelativeHumidity.percent(percent));
    }

    private static double air(String id) {
        return switch (id) {
            case "C122" -> state(5, 100).vapourPressure().in("Pa");
            case "C123" -> state(25, 100).vapourPressure().in("Pa");
            case "C124" -> state(50, 100).vapourPressure().in("Pa");
            case "C125" -> state(26.85, 100).vapourPressure().in("Pa");
            case "C127" -> state(20, 50).humidityRatio().si();
            case "C128" -> state(20, 50).wetBulb().in("Cel");
            case "C129" -> state(23, 50).humidityRatio().si();
            case "C130" -> state(23, 50).wetBulb().in("Cel");
            case "C131" -> state(27, 65).humidityRatio().si();
            case "C132" -> state(27, 65).wetBulb().in("Cel");
            case "C133" -> // The enthalpy of moist air as the handbook states it.
                1.006 * 40
                        + (2501 + 1.86 * 40)
                                * Air.ofWetBulb(celsius(40), celsius(20))
                                        .humidityRatio()
                                        .si();
            case "C134" -> state(20, 50).dewPoint().in("Cel");
            default -> none(id);
        };
    }

    private static double drying(String id) {
        double area = 40 * inches(22).si() * inches(30).si();
        DryingModel.Batch forty =
                DryingModel.Batch.of(kilograms(0.2 * area), squareMetres(area), dry(2), dry(0.09), dry(0.07));
        double flow = 600 / 3600.0;
        // What the cases take of the drying power of the air, and their film.
        Assumptions known = TABLE.given(
                        "drying.stack-conductance", Scope.GENERAL, Drying.stackConductance(0.3, 2 * area, flow))
                .given("drying.film-still", Scope.GENERAL, 5);
        DryingModel model = DryingModel.from(known, Scope.GENERAL);
        DryingRoom room = DryingRoom.of(cubicMetres(50), state(20, 50));
        return switch (id) {
            case "C135" ->
                model.stack(VolumeFlow.cubicMetresPerHour(600), forty, state(20, 50))
                        .rate()
                        .in("kg/h");
            case "C136" ->
                model.stack(VolumeFlow.cubicMetresPerHour(600), forty, state(20, 50))
                        .hours()
                        .in("h");
            case "C137" -> model.flux(state(20, 50), false).in("g/(m2.h)");
            case "C138" -> Drying.blotterChanges(2, 0.1, 0.5);
            case "C139" -> room.waterTo(RelativeHumidity.percent(60)).in("kg");
            case "C140" ->
                DryingRoom.of(cubicMetres(50), state(20, 60))
                        .ventilationFor(MassFlow.kilogramsPerHour(0.55), state(10, 80))
                        .in("m3/h");
            case "C141" -> room.atSurface(celsius(12.6)).in("%");
            case "C188" ->
                SurfaceSize.gelatine(hours(8 * TABLE.si("beating.mill-hour", RAG)))
                        .onPaper()
                        .likely()
                        .in("%");
            case "C189" -> SurfaceSize.alumFor(grams(26)).in("g");
            default -> none(id);
        };
    }
}
