package org.papermath.press;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.seconds;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Solids;
import org.papermath.quantity.WaterRetention;
import org.papermath.sheet.CouchedSheet;
import org.papermath.sheet.FormedSheet;

class PressingModelTest {
    private static final PressingModel MODEL = PressingModel.standard();

    /** Water a sheet takes back from the felts, kg/m². */
    private static final double REWET = 0.005;

    private static CouchedSheet sheet(double gsm) {
        return FormedSheet.ofGrammage(Grammage.gsm(gsm), mm(300), mm(400)).couched(Solids.percent(15));
    }

    private static Amount<WaterRetention> wrv(double value) {
        return WaterRetention.gramsPerGram(value);
    }

    private static Amount<SheetPressure> megapascals(double value) {
        return Kinds.SHEET_PRESSURE.of(value, "MPa");
    }

    @ParameterizedTest
    @CsvSource({
        "0.4, 1.5, 2.1000, 0.3226",
        "0.345, 1.5, 2.1631, 0.3162",
        "0.1, 2.5, 4.6183, 0.1780",
        "1.0, 1.0, 1.1656, 0.4618",
        "0.1, 1.2, 2.2168, 0.3109",
        "1.5, 0.7, 0.8200, 0.5495",
        "3.0, 1.5, 1.4035, 0.4161"
    })
    void equilibrium(double pressure, double retention, double ratio, double solids) {
        assertThat(MODEL.equilibrium(wrv(retention), megapascals(pressure)).si())
                .isCloseTo(ratio, within(6e-5));
        assertThat(MODEL.press(sheet(50), wrv(retention), megapascals(pressure), minutes(60))
                        .solids()
                        .si())
                .isCloseTo(1 / (1 / solids + REWET / 0.05), within(6e-5));
    }

    @Test
    void timeAtLoad() {
        PressingModel.Result minute = MODEL.press(sheet(200), wrv(1.5), megapascals(0.4), seconds(60));
        assertThat(minute.timeConstant().in("s")).isCloseTo(120, withinPercentage(1e-9));
        assertThat(minute.sheet().ratio().si()).isCloseTo(4.2633 + REWET / 0.2, within(6e-5));
        assertThat(minute.notices()).extracting(Notice::code).contains("press.short-hold", "press.uncalibrated");
        assertThat(MODEL.press(sheet(200), wrv(1.5), megapascals(0.4), seconds(300))
                        .sheet()
                        .ratio()
                        .si())
                .isCloseTo(2.3928 + REWET / 0.2, within(6e-5));
        assertThat(MODEL.timeTo(sheet(200), wrv(1.5), megapascals(0.4), Solids.fraction(1 / (1 + 2.3928 + REWET / 0.2)))
                        .in("s"))
                .isCloseTo(300, withinPercentage(0.01));
        assertThatThrownBy(() -> MODEL.timeTo(sheet(200), wrv(1.5), megapascals(0.4), Solids.percent(45)))
                .hasMessage("pressing: 45 % solids asked for; 0.4 MPa on this stock never comes above 32 %. Press"
                        + " harder within"
                        + " what the press allows, or dry from there.");
    }

    /** An exchange press goes on from where the first press stopped; a gentler one takes nothing more out. */
    @Test
    void exchangePressing() {
        assertThatThrownBy(() -> MODEL.pressAgain(sheet(100).unpressed(), 4, wrv(1.5), megapascals(0.4), seconds(300)))
                .hasMessage("pressing a sheet again: time 4 given; must be 2 or 3. Use press for the first.");
        PressingModel.Result first = MODEL.press(sheet(200), wrv(1.5), megapascals(0.2), seconds(120));
        PressingModel.Result second = MODEL.pressAgain(first.sheet(), wrv(1.5), megapascals(0.4), seconds(300));
        assertThat(second.sheet().ratio().si()).isLessThan(first.sheet().ratio().si());
        assertThat(second.sheet().fibre().si()).isEqualTo(first.sheet().fibre().si());
        assertThat(second.sheet().released().si() + second.sheet().water().si())
                .isCloseTo(first.sheet().water().si(), withinPercentage(1e-10));
        // After long holds a second pressing leaves 0.88 of the water, a third 0.98 of that; beside it what is taken
        // back.
        PressingModel.Result once = MODEL.press(sheet(100), wrv(1.5), megapascals(0.4), minutes(60));
        PressingModel.Result twice = MODEL.pressAgain(once.sheet(), wrv(1.5), megapascals(0.4), minutes(60));
        PressingModel.Result thrice = MODEL.pressAgain(twice.sheet(), 3, wrv(1.5), megapascals(0.4), minutes(60));
        assertThat(once.sheet().ratio().si()).isCloseTo(2.1 + REWET / 0.1, within(1e-6));
        assertThat(twice.sheet().ratio().si()).isCloseTo(0.88 * 2.1 + REWET / 0.1, within(1e-6));
        assertThat(thrice.sheet().ratio().si()).isCloseTo(0.98 * 0.88 * 2.1 + REWET / 0.1, within(1e-6));
        PressingModel.Result gentle = MODEL.pressAgain(second.sheet(), wrv(1.5), megapascals(0.05), seconds(300));
        assertThat(gentle.sheet().ratio().si()).isCloseTo(second.sheet().ratio().si(), withinPercentage(1e-10));
        assertThat(gentle.sheet().released().si()).isCloseTo(0, within(1e-15));
    }

    @Test
    void warnsAndRefusesHighPressure() {
        assertThat(MODEL.press(sheet(100), wrv(1.5), megapascals(2), minutes(30))
                        .notices())
                .extracting(Notice::code)
                .contains("press.pressure-high");
        assertThat(MODEL.press(sheet(100), wrv(1.5), megapascals(1.5), minutes(30))
                        .notices())
                .extracting(Notice::code)
                .doesNotContain("press.pressure-high");
        assertThatThrownBy(() -> MODEL.press(sheet(100), wrv(1.5), megapascals(4.1), minutes(30)))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo("press.pressure-limit"));
        assertThat(MODEL.press(sheet(100), wrv(0.7), megapascals(1), minutes(30))
                        .notices())
                .extracting(Notice::code)
                .contains("press.dry");
        assertThat(MODEL.press(sheet(500), wrv(1.5), megapascals(0.4), minutes(300))
                        .notices())
                .extracting(Notice::code)
                .contains("press.outside-range");
    }

    @Test
    void bandHoldsTheLikelyValueAndNamesWhatWidensIt() {
        var solids = MODEL.solids(sheet(100), wrv(1.5), megapascals(0.4), minutes(15));
        assertThat(solids.likely().si())
                .isBetween(solids.low().si(), solids.high().si());
        assertThat(solids.high().si() - solids.low().si()).isBetween(0.05, 0.2);
        assertThat(solids.drivers().get(0).assumption().id()).isEqualTo("press.factor");
    }

    @Test
    void waterToTheDrain() {
        CouchedSheet couched = sheet(100);
        var pressed =
                MODEL.press(couched, wrv(1.5), megapascals(0.4), minutes(15)).sheet();
        Felts felts = Felts.of(mm(350), mm(450), Grammage.gsm(500), 12);
        PressingModel.Water water = MODEL.waterOf(Post.of(felts, 10, couched), felts, couched, pressed);
        assertThat(water.fromSheets().si())
                .isCloseTo(10 * (couched.water().si() - pressed.water().si()), within(1e-12));
        assertThat(water.fromFelts().si()).isCloseTo(11 * 0.35 * 0.45 * 0.5 * 0.4, withinPercentage(1e-9));
        assertThat(water.toDrain().si())
                .isCloseTo(water.fromSheets().si() + water.fromFelts().si(), within(1e-12));
        Felts large = Felts.of(mm(700), mm(900), Grammage.gsm(500), 12);
        assertThat(MODEL.waterOf(Post.of(large, 10, couched).wetFelt(kilograms(1.2)), large, couched, pressed)
                        .notices())
                .extracting(Notice::code)
                .containsExactly("press.felt-water");
    }

    /** The same law at the low pressure of boards and weights: rag of a water retention of 1.2 leaves them at 20 %. */
    @Test
    void betweenBlotters() {
        CouchedSheet couched = sheet(100);
        var byHand = MODEL.betweenBlotters(couched.unpressed(), wrv(1.2));
        double ratio = 1.4 * 1.2 * Math.pow(5000 / 4e5, -0.2) + REWET / 0.1;
        assertThat(byHand.ratio().si()).isCloseTo(ratio, withinPercentage(1e-9));
        assertThat(byHand.solids().in("%")).isCloseTo(19.7, within(0.05));
        var pressed =
                MODEL.press(couched, wrv(1.2), megapascals(0.4), minutes(15)).sheet();
        assertThat(MODEL.betweenBlotters(pressed, wrv(1.2)).ratio().si())
                .isEqualTo(pressed.ratio().si());
    }

    /** One curve: whatever press came before, hands between blotters never leave more water for it. */
    @Property(seed = "2026")
    void pressingOnlyHelps(
            @ForAll @Scale(4) @DoubleRange(min = 1e-4, max = 2) double pressure,
            @ForAll @DoubleRange(min = 0.7, max = 4) double retention,
            @ForAll @DoubleRange(min = 1, max = 2000) double hold,
            @ForAll @DoubleRange(min = 10, max = 400) double gsm) {
        CouchedSheet couched = sheet(gsm);
        PressingModel.Result once = MODEL.press(couched, wrv(retention), megapascals(pressure), seconds(hold));
        PressingModel.Result twice =
                MODEL.pressAgain(once.sheet(), wrv(retention), megapascals(pressure), seconds(hold));
        double withPress =
                MODEL.betweenBlotters(once.sheet(), wrv(retention)).ratio().si();
        double without = MODEL.betweenBlotters(couched.unpressed(), wrv(retention))
                .ratio()
                .si();
        assertThat(once.sheet().ratio().si())
                .isLessThanOrEqualTo(couched.ratio().si());
        assertThat(twice.sheet().ratio().si())
                .isLessThanOrEqualTo(once.sheet().ratio().si());
        assertThat(withPress).isLessThanOrEqualTo(without * (1 + 1e-12));
    }

    @Test
    void oneSheetCalibratesThePress() {
        Press press = Press.of("old copying press", kilonewtons(50), mm(300), mm(400));
        CouchedSheet sheet = CouchedSheet.weighed(grams(80), grams(12), mm(300), mm(400));
        Assumptions own = PressingModel.calibrate(
                Assumptions.standard(),
                press,
                sheet,
                Reading.of(grams(36), grams(0.1)),
                wrv(1.5),
                megapascals(0.35),
                minutes(20));
        Assumption factor = own.get("press.factor", Scope.at(press.name()));
        assertThat(factor.key()).isEqualTo("press.factor[@old copying press]");
        assertThat(factor.basis()).isEqualTo(Basis.MEASURED_HERE);
        PressingModel calibrated = PressingModel.from(own, Scope.at(press.name()));
        var again = calibrated.press(sheet, wrv(1.5), megapascals(0.35), minutes(20));
        assertThat(again.sheet().mass().in("g")).isCloseTo(36, withinPercentage(1e-9));
        assertThat(again.notices()).extracting(Notice::code).doesNotContain("press.uncalibrated");
        var band = calibrated.solids(sheet, wrv(1.5), megapascals(0.35), minutes(20));
        assertThat(band.high().si() - band.low().si())
                .isLessThan(MODEL.solids(sheet, wrv(1.5), megapascals(0.35), minutes(20))
                                .high()
                                .si()
                        - MODEL.solids(sheet, wrv(1.5), megapascals(0.35), minutes(20))
                                .low()
                                .si());
        // Another press still has the shipped value.
        assertThat(own.get("press.factor", Scope.at("another press")).likely()).isEqualTo(1.4);
    }

    @Test
    void calibrationRefusesWhatCannotBe() {
        Press press = Press.of("old copying press", kilonewtons(50), mm(300), mm(400));
        CouchedSheet sheet = CouchedSheet.weighed(grams(80), grams(12), mm(300), mm(400));
        assertThatThrownBy(() -> PressingModel.calibrate(
                        Assumptions.standard(),
                        press,
                        sheet,
                        Reading.of(grams(90), grams(0.1)),
                        wrv(1.5),
                        megapascals(0.35),
                        minutes(20)))
                .hasMessage("mass of the pressed sheet: 90 g given; it must lie between the oven-dry mass 12 g and"
                        + " the couched"
                        + " mass 80 g.");
        assertThatThrownBy(() -> PressingModel.calibrate(
                        Assumptions.standard(),
                        press,
                        sheet,
                        Reading.of(grams(14), grams(0.1)),
                        wrv(1.5),
                        megapascals(0.35),
                        minutes(20)))
                .isInstanceOfSatisfying(Refused.class, r -> assertThat(r.code()).isEqualTo("press.calibration-floor"));
        assertThatThrownBy(() -> PressingModel.calibrate(
                        Assumptions.standard(),
                        press,
                        sheet,
                        Reading.of(grams(40), grams(0.1)),
                        wrv(1.5),
                        megapascals(0.35),
                        seconds(1)))
                .isInstanceOfSatisfying(Refused.class, r -> assertThat(r.code()).isEqualTo("press.calibration-hold"));
    }

    @Property(seed = "2026")
    void harderAndLongerNeverLeavesMoreWater(
            @ForAll @DoubleRange(min = 0.03, max = 2) double pressure,
            @ForAll @DoubleRange(min = 0.7, max = 4) double retention,
            @ForAll @DoubleRange(min = 1, max = 2000) double hold,
            @ForAll @DoubleRange(min = 20, max = 400) double gsm) {
        CouchedSheet couched = sheet(gsm);
        double water = MODEL.press(couched, wrv(retention), megapascals(pressure), seconds(hold))
                .sheet()
                .water()
                .si();
        assertThat(water).isPositive().isLessThanOrEqualTo(couched.water().si());
        assertThat(MODEL.press(couched, wrv(retention), megapascals(pressure * 1.5), seconds(hold))
                        .sheet()
                        .water()
                        .si())
                .isLessThanOrEqualTo(water * (1 + 1e-12));
        assertThat(MODEL.press(couched, wrv(retention), megapascals(pressure), seconds(hold * 2))
                        .sheet()
                        .water()
                        .si())
                .isLessThanOrEqualTo(water * (1 + 1e-12));
    }
}
