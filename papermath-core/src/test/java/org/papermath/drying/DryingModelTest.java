package org.papermath.drying;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.cubicMetres;
import static org.papermath.quantity.Amounts.fahrenheit;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.squareMetres;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.air.Air;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.SorptionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Irradiance;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.MassFlow;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Solids;
import org.papermath.quantity.VolumeFlow;
import org.papermath.sheet.FormedSheet;
import org.papermath.sheet.PressedSheet;

class DryingModelTest {
    private static final DryingModel MODEL = DryingModel.standard();
    private static final Dryer.FanStack STACK =
            Dryer.fanStack("stack by the window", VolumeFlow.cubicMetresPerHour(3000), 40);

    private static Air air(double celsius, double percent) {
        return Air.of(celsius(celsius), RelativeHumidity.percent(percent));
    }

    private static Amount<MoistureRatio> ratio(double value) {
        return MoistureRatio.gramsPerGram(value);
    }

    /** Forty sheets of 22 × 30 in at 200 g/m² oven-dry, from 2.0 to 0.09 g/g in air that would leave 0.07. */
    private static DryingModel.Batch forty() {
        double area = 40 * inches(22).si() * inches(30).si();
        return DryingModel.Batch.of(
                Kinds.MASS.ofSi(area * 0.2), Kinds.AREA.ofSi(area), ratio(2), ratio(0.09), ratio(0.07));
    }

    @Test
    void fortySheetsInAFanStack() {
        assertThat(forty().ovenDry().in("kg")).isCloseTo(3.40644, within(1e-5));
        DryingModel.Result result = MODEL.dry(STACK, forty(), air(20, 50));
        // 1 - exp(-0.0013 m/s * 2 * 17.0322 m2 / (600 m3/h)) of 1.8332 kg/h.
        assertThat(result.rate().in("kg/h")).isCloseTo(0.4278, within(1e-4));
        assertThat(result.hours().in("h")).isCloseTo(24.98, within(0.02));
        assertThat(result.water().in("kg")).isCloseTo(3.40644 * 1.91, withinPercentage(0.001));
        assertThat(result.notices())
                .extracting(Notice::code)
                .containsExactly("drying.uncalibrated", "drying.fan-label");
        assertThat(result.notices().get(1).text())
                .isEqualTo("Of the 3000 m³/h on the label of the fan 600 m³/h are taken to"
                        + " come through the stack; a fan loses most of its flow against flutes.");
        assertThat(result).hasToString("dry in 24.98 h, 6.506 kg of water");
    }

    @Test
    void timesHaveAWideBandUntilTheStackIsWeighed() {
        var time = MODEL.time(STACK, forty(), air(20, 50));
        assertThat(time.likely().in("h")).isCloseTo(24.98, within(0.02));
        assertThat(time.high().si() / time.low().si()).isBetween(3.0, 10.0);
        assertThat(time.drivers().get(0).assumption().id()).isEqualTo("drying.stack-conductance");
        for (Dryer dryer :
                List.of(Dryer.loft("loft", 5, 100), Dryer.boards("boards", 10), Dryer.blotters("blotters", 10))) {
            var other = MODEL.time(dryer, forty(), air(20, 50));
            assertThat(other.likely().si())
                    .isBetween(other.low().si(), other.high().si());
        }
        assertThatThrownBy(() -> MODEL.time(STACK, forty(), air(20, 100))).isInstanceOf(Refused.class);
    }

    @Test
    void inSaturatedAirItNeverDries() {
        for (Dryer dryer : List.of(STACK, Dryer.loft("loft", 5, 100), Dryer.boards("boards", 10))) {
            DryingModel.Result result = MODEL.dry(dryer, forty(), air(20, 100));
            assertThat(result.neverDries()).isTrue();
            assertThat(result.time()).isEmpty();
            assertThat(result.rate().si()).isZero();
            assertThat(result.water().si()).isZero();
            assertThat(result).hasToString("never dries");
            assertThatThrownBy(result::hours)
                    .isInstanceOfSatisfying(
                            Refused.class, r -> assertThat(r.code()).isEqualTo("drying.never-saturated"))
                    .hasMessage("It never dries: the air is at 100 % relative humidity and takes up no water. Warm or"
                            + " exchange"
                            + " it.");
        }
    }

    @Test
    void belowTheEquilibriumOfTheRoomItNeverComes() {
        DryingModel.Batch batch =
                DryingModel.Batch.of(kilograms(1), squareMetres(10), ratio(2), ratio(0.06), ratio(0.07));
        DryingRoom wide = DryingRoom.of(cubicMetres(1e5), air(20, 50));
        assertThat(MODEL.stackIn(wide, VolumeFlow.cubicMetresPerHour(600), batch, SorptionModel.standard())
                        .notices())
                .extracting(Notice::code)
                .containsExactly("drying.never-equilibrium");
        for (Dryer dryer : List.of(STACK, Dryer.loft("loft", 1, 100))) {
            assertThatThrownBy(() -> MODEL.dry(dryer, batch, air(20, 50)).hours())
                    .isInstanceOfSatisfying(
                            Refused.class, r -> assertThat(r.code()).isEqualTo("drying.never-equilibrium"))
                    .hasMessage("It never dries to 0.06 g/g: in this air the paper itself stays at 0.07 g/g. Dry the"
                            + " air, or"
                            + " call it dry at more.");
        }
        assertThatThrownBy(() -> MODEL.blotterChanges(
                        DryingModel.Batch.of(kilograms(1), squareMetres(10), ratio(2), ratio(0), ratio(0))))
                .hasMessage("blotters: they leave a share of the water at each change and never come to 0 g/g.");
    }

    @Test
    void aSmallClosedRoomFillsAndAVentilatedOneDoesNot() {
        SorptionModel sorption = SorptionModel.standard();
        Air start = air(20, 50);
        PressedSheet sheet = FormedSheet.ofGrammage(Grammage.gsm(200), inches(22), inches(30))
                .couched()
                .pressed(Solids.fraction(1 / 3.0));
        DryingModel.Batch batch = DryingModel.Batch.of(sheet, 40, sorption, start);
        Amount<VolumeFlow> flow = VolumeFlow.cubicMetresPerHour(600);
        DryingModel.Result closed = MODEL.stackIn(DryingRoom.of(cubicMetres(50), start), flow, batch, sorption);
        assertThat(closed.neverDries()).isTrue();
        assertThat(closed.notices()).extracting(Notice::code).containsExactly("drying.never-room-full");
        assertThatThrownBy(closed::hours)
                .hasMessageMatching("It never dries: the room takes up no more water\\. It comes to"
                        + " (9[0-9.]+|100) % relative humidity with the sheets still at [0-9.]+ g/g\\. Ventilate, or dry less"
                        + " at a time\\.");
        // What the room took up is what the sheets lost.
        double taken = DryingRoom.of(cubicMetres(50), start)
                .waterTo(RelativeHumidity.percent(100))
                .si();
        assertThat(closed.water().si()).isCloseTo(taken, withinPercentage(2));
        DryingModel.Result open = MODEL.stackIn(
                DryingRoom.of(cubicMetres(50), start).ventilated(VolumeFlow.cubicMetresPerHour(1e5), start),
                flow,
                batch,
                sorption);
        assertThat(open.neverDries()).isFalse();
        // With so much ventilation the room stays as it is, and the stack dries as in open air.
        assertThat(open.hours().si())
                .isCloseTo(MODEL.stack(flow, batch, start).hours().si(), withinPercentage(2));
        DryingModel.Result some = MODEL.stackIn(
                DryingRoom.of(cubicMetres(50), start).ventilated(VolumeFlow.cubicMetresPerHour(300), start),
                flow,
                batch,
                sorption);
        assertThat(some.hours().si()).isGreaterThan(open.hours().si());
    }

    @ParameterizedTest
    @CsvSource({
        "20, 50, false, 66.652",
        "20, 50, true, 124.31",
        "20, 70, false, 39.125",
        "25, 30, false, 114.024",
        "15, 70, false, 32.471",
        "30, 40, false, 112.71"
    })
    void fluxOfAWetFace(double celsius, double percent, boolean draught, double expected) {
        assertThat(MODEL.flux(air(celsius, percent), draught).in("g/(m2.h)")).isCloseTo(expected, within(0.006));
    }

    @Test
    void hungSinglyAndInSpurs() {
        DryingModel.Batch batch =
                DryingModel.Batch.of(kilograms(1), squareMetres(10), ratio(2), ratio(0.09), ratio(0.06));
        double tail = Assumptions.standard().si("drying.loft-tail", Scope.GENERAL);
        assertThat(MODEL.loft(batch, air(20, 50), 1, false).hours().in("h"))
                .isCloseTo(1.74398 * tail, withinPercentage(0.01));
        assertThat(MODEL.loft(batch, air(20, 50), 5, false).hours().in("h"))
                .isCloseTo(8.71989 * tail, withinPercentage(0.01));
        assertThat(MODEL.loft(batch, air(20, 50), 5, true).hours().si())
                .isLessThan(MODEL.loft(batch, air(20, 50), 5, false).hours().si());
        double shade = MODEL.boards(batch, air(20, 50), Irradiance.wattsPerSquareMetre(0))
                .hours()
                .si();
        assertThat(shade)
                .isCloseTo(0.1 * 1.91 * tail / MODEL.flux(air(20, 50), false).si(), withinPercentage(1e-9));
        // One open face takes twice as long as two, but sheets in a loft screen each other from the heat of the room.
        double screened = MODEL.loft(batch, air(20, 50), 1, false).hours().si();
        assertThat(screened).isBetween(1.1 * shade / 2, 1.4 * shade / 2);
        assertThat(MODEL.boards(batch, air(20, 50), Irradiance.wattsPerSquareMetre(700))
                        .hours()
                        .si())
                .isLessThan(0.7 * shade);
    }

    @Test
    void blottersChangedByHand() {
        DryingModel.Batch batch =
                DryingModel.Batch.of(kilograms(1), squareMetres(10), ratio(2), ratio(0.1), ratio(0.06));
        // log(0.04/1.94) / log(1 - 0.53 * 0.94)
        assertThat(MODEL.blotterChanges(batch)).isEqualTo(6);
        assertThat(MODEL.blotters(batch).hours().in("h")).isCloseTo(48, withinPercentage(1e-9));
        assertThat(MODEL.dry(Dryer.blotters("blotters", 10), batch, air(20, 50)).notices())
                .extracting(Notice::code)
                .containsExactly("drying.blotter-changes");
        assertThat(MODEL.blottersFor(kilograms(1.9), grams(60))).isEqualTo(32);
    }

    @Test
    void twoWeighings() {
        assertThat(DryingModel.isDry(grams(1000), grams(996), hours(1)).dry()).isTrue();
        assertThat(DryingModel.isDry(grams(1000), grams(994), hours(1)).dry()).isFalse();
        assertThat(DryingModel.isDry(grams(1000), grams(990), hours(4)).dry()).isTrue();
        assertThat(DryingModel.isDry(grams(1167), grams(1050), hours(3), grams(715)))
                .hasToString("not dry, 39 g/h, at least 18.33 h more");
        assertThat(DryingModel.isDry(grams(1000), grams(1000), hours(1), grams(50))
                        .leastTime())
                .isEmpty();
        assertThatThrownBy(() -> DryingModel.isDry(grams(1000), grams(1010), hours(1)))
                .isInstanceOf(Refused.class);
    }

    @Test
    void loadsFollowOneAnother() {
        assertThat(DryingModel.schedule(STACK, 90, hours(20)))
                .extracting(end -> end.in("h"))
                .containsExactly(20.0, 40.0, 60.0);
        assertThat(DryingModel.schedule(STACK, 40, hours(20))).hasSize(1);
    }

    /** Three posts of a day and one of the next, in a stack of forty sheets that takes twenty hours. */
    @Test
    void postsWaitForTheStack() {
        List<DryingModel.Load> loads = DryingModel.schedule(
                STACK,
                List.of(
                        new DryingModel.Ready(25, hours(1)),
                        new DryingModel.Ready(25, hours(3)),
                        new DryingModel.Ready(25, hours(5)),
                        new DryingModel.Ready(10, hours(70))),
                hours(20));
        assertThat(loads)
                .extracting(DryingModel.Load::toString)
                .containsExactly(
                        "25 sheets from 1 h to 21 h",
                        "40 sheets from 21 h to 41 h, 10 wait",
                        "10 sheets from 41 h to 61 h",
                        "10 sheets from 70 h to 90 h");
        assertThat(loads.stream().mapToInt(DryingModel.Load::sheets).sum()).isEqualTo(85);
        assertThat(DryingModel.schedule(STACK, List.of(), hours(20))).isEmpty();
        assertThatThrownBy(() -> new DryingModel.Ready(0, hours(1)))
                .hasMessage("sheets of the post: 0 given; must be 1 or more.");
    }

    @Test
    void waterOfAKilogramOfPaper() {
        List<WaterBudget.Step> steps = WaterBudget.steps(
                Assumptions.standard(),
                Consistency.percent(0.5),
                Solids.percent(15),
                Solids.fraction(1 / 3.0),
                ratio(0.07));
        assertThat(steps)
                .extracting(step -> Math.round(1000 * step.water().likely().in("L/kg")) / 1000.0)
                .containsExactly(150.0, 200.0, 5.667, 3.667, 1.93, 60.0, 250.0);
        assertThat(steps)
                .extracting(WaterBudget.Step::comesBack)
                .containsExactly(false, true, false, false, false, false, false);
        assertThat(steps.get(6).water().low().in("L/kg")).isCloseTo(40, within(1e-9));
        assertThat(WaterBudget.steps(
                                Assumptions.standard(),
                                Consistency.percent(1),
                                Solids.percent(10),
                                Solids.percent(35),
                                ratio(0.07))
                        .get(2)
                        .water()
                        .likely()
                        .in("L/kg"))
                .isCloseTo(9, within(1e-9));
        assertThatThrownBy(() -> WaterBudget.steps(
                        Assumptions.standard(),
                        Consistency.percent(1),
                        Solids.percent(20),
                        Solids.percent(15),
                        ratio(0.07)))
                .isInstanceOf(Refused.class);
    }

    @Test
    void weighingTheStackCalibratesIt() {
        Assumptions own = DryingModel.calibrate(
                Assumptions.standard(),
                STACK,
                Reading.of(kilograms(2.4), grams(5)),
                hours(4),
                forty().faceArea(),
                air(20, 50));
        Scope scope = Scope.at(STACK.name());
        assertThat(own.get("drying.stack-conductance", scope).basis()).isEqualTo(Basis.MEASURED_HERE);
        DryingModel.Result result = DryingModel.from(own, scope).dry(STACK, forty(), air(20, 50));
        assertThat(result.rate().in("kg/h")).isCloseTo(0.6, withinPercentage(1e-9));
        assertThat(result.notices()).isEmpty();
        assertThatThrownBy(() -> DryingModel.calibrate(
                        Assumptions.standard(),
                        STACK,
                        Reading.of(kilograms(20), grams(5)),
                        hours(4),
                        forty().faceArea(),
                        air(20, 50)))
                .isInstanceOfSatisfying(Refused.class, r -> assertThat(r.code()).isEqualTo("drying.calibration"))
                .hasMessageContaining("the air delivered takes up at most 1.833 kg/h");
    }

    @Test
    void weighingAStackWithoutAFanCalibratesItToo() {
        Dryer.FanStack still = Dryer.stack("under the bench", 40);
        Scope scope = Scope.at(still.name());
        Assumptions own = DryingModel.calibrate(
                Assumptions.standard(),
                still,
                Reading.of(grams(500), grams(5)),
                hours(4),
                forty().faceArea(),
                air(20, 50));
        assertThat(DryingModel.from(own, scope)
                        .dry(still, forty(), air(20, 50))
                        .rate()
                        .in("kg/h"))
                .isCloseTo(0.125, withinPercentage(1e-9));
        assertThat(own.si("drying.stack-conductance", scope)).isBetween(0.0005, 0.003);
        assertThatThrownBy(() -> DryingModel.calibrate(
                        Assumptions.standard(),
                        still,
                        Reading.of(grams(500), grams(5)),
                        hours(4),
                        forty().faceArea(),
                        air(20, 100)))
                .isInstanceOfSatisfying(Refused.class, r -> assertThat(r.code()).isEqualTo("drying.calibration"))
                .hasMessageContaining("takes up at most 0 kg/h");
    }

    @Test
    void blottersOfTheRoomAreNotCalibratedByWhatTheRoomHolds() {
        Dryer.Blotters blotters = Dryer.blotters("blotter pile", 12);
        for (double after : new double[] {0.08, 0.1, 2.5}) {
            assertThatThrownBy(() -> DryingModel.calibrate(
                            Assumptions.standard(), blotters, ratio(2), ratio(after), ratio(0.1), 3))
                    .isInstanceOfSatisfying(
                            Refused.class, r -> assertThat(r.code()).isEqualTo("drying.calibration-blotters"));
        }
    }

    @Test
    void timingTheLoftAndWeighingBetweenBlottersCalibrateThem() {
        Dryer loft = Dryer.loft("attic", 5, 100);
        DryingModel.Batch batch =
                DryingModel.Batch.of(kilograms(1), squareMetres(10), ratio(2), ratio(0.09), ratio(0.06));
        Assumptions own = DryingModel.calibrate(
                Assumptions.standard(), loft, batch, Reading.of(hours(17.43978), hours(0.5)), air(20, 50));
        assertThat(own.si("drying.loft-tail", Scope.at("attic"))).isCloseTo(2, withinPercentage(0.01));
        assertThat(DryingModel.from(own, Scope.at("attic"))
                        .dry(loft, batch, air(20, 50))
                        .hours()
                        .in("h"))
                .isCloseTo(17.43978, withinPercentage(1e-9));
        assertThatThrownBy(() -> DryingModel.calibrate(
                        Assumptions.standard(), loft, batch, Reading.of(hours(3), hours(0.5)), air(20, 50)))
                .hasMessage("drying: dry in 3 h; even with wet faces to the end it takes 8.72 h in this air. Was"
                        + " there a draught, sun or drier air?");
        assertThatThrownBy(() -> DryingModel.calibrate(
                        Assumptions.standard(), (Dryer) STACK, batch, Reading.of(hours(3), hours(0.5)), air(20, 50)))
                .isInstanceOf(Refused.class);
        Dryer.Blotters blotters = Dryer.blotters("blotter pile", 12);
        Assumptions soaked = DryingModel.calibrate(
                Assumptions.standard(), blotters, ratio(2), ratio(0.1 + 1.9 * Math.pow(0.64, 3)), ratio(0.1), 3);
        assertThat(soaked.si("drying.blotter-kept", Scope.at("blotter pile"))).isCloseTo(0.6, withinPercentage(1e-9));
    }

    @Property(tries = 250, seed = "2026")
    void damperAirNeverDriesFaster(
            @ForAll @DoubleRange(min = 10, max = 35) double celsius,
            @ForAll @DoubleRange(min = 20, max = 75) double percent,
            @ForAll @DoubleRange(min = 0.7, max = 4) double start) {
        DryingModel.Batch batch =
                DryingModel.Batch.of(kilograms(2), squareMetres(16), ratio(start), ratio(0.15), ratio(0.1));
        for (Dryer dryer : List.of(STACK, Dryer.loft("loft", 4, 100), Dryer.boards("boards", 20))) {
            double here = MODEL.dry(dryer, batch, air(celsius, percent)).hours().si();
            assertThat(here).isPositive();
            assertThat(MODEL.dry(dryer, batch, air(celsius, percent + 10))
                            .hours()
                            .si())
                    .isGreaterThan(here);
        }
    }

    @Test
    void roomsAndTheirWater() {
        DryingRoom room = DryingRoom.of(cubicMetres(50), air(20, 50));
        assertThat(room.dryAir().in("kg")).isCloseTo(59.513, within(0.005));
        assertThat(room.waterTo(RelativeHumidity.percent(60)).in("kg")).isCloseTo(0.08765, within(1e-5));
        assertThat(room.waterTo(RelativeHumidity.percent(70)).in("kg")).isCloseTo(0.17571, within(1e-5));
        assertThat(DryingRoom.of(cubicMetres(50), air(20, 60))
                        .ventilationFor(MassFlow.kilogramsPerHour(0.55), air(10, 80))
                        .in("m3/h"))
                .isCloseTo(175.09, within(0.01));
        assertThat(room.atSurface(celsius(12.6)).in("%")).isCloseTo(80.15, within(0.01));
        assertThat(DryingRoom.of(cubicMetres(50), Air.of(fahrenheit(70), RelativeHumidity.percent(50)))
                        .atSurface(fahrenheit(60))
                        .in("%"))
                .isCloseTo(70.86, within(0.01));
        assertThatThrownBy(() -> room.ventilationFor(MassFlow.kilogramsPerHour(0.55), air(30, 80)))
                .isInstanceOfSatisfying(Refused.class, r -> assertThat(r.code()).isEqualTo("room.outside-damper"));
        // A closed room comes to the limit when just that water is given off.
        Air after = room.after(MassFlow.kilogramsPerHour(0.0876466), hours(1));
        assertThat(after.humidity().in("%")).isCloseTo(60, within(0.01));
        assertThat(room.after(MassFlow.kilogramsPerHour(5), hours(10))
                        .humidity()
                        .in("%"))
                .isCloseTo(100, within(1e-9));
        // A ventilated room comes to rest where ventilation carries off what is given.
        Air held = DryingRoom.of(cubicMetres(50), air(20, 60))
                .ventilated(VolumeFlow.cubicMetresPerHour(175.0856), air(10, 80))
                .after(MassFlow.kilogramsPerHour(0.55), hours(100));
        assertThat(held.humidity().in("%")).isCloseTo(60, within(0.01));
    }

    @ParameterizedTest
    @CsvSource({
        "55, ''",
        "60, room.mould-note",
        "65, room.mould-caution",
        "74, room.mould-caution",
        "75, room.mould-stop"
    })
    void mouldLevels(double percent, String code) {
        List<Notice> notices = DryingRoom.of(cubicMetres(50), air(20, percent)).mouldNotices();
        assertThat(notices)
                .extracting(Notice::code)
                .containsExactlyElementsOf(code.isEmpty() ? List.of() : List.of(code));
    }

    @Test
    void mouldAndColdSurfacesInWords() {
        assertThat(DryingRoom.of(cubicMetres(50), air(20, 68))
                        .mouldNotices()
                        .get(0)
                        .text())
                .isEqualTo("The room is at 68 % relative humidity: from 65 % on mould grows on paper (Canadian"
                        + " Conservation Institute). Keep it below.");
        DryingRoom room = DryingRoom.of(cubicMetres(50), air(20, 50));
        assertThat(room.surfaceNotices(celsius(12.5))).extracting(Notice::code).containsExactly("room.cold-surface");
        assertThat(room.surfaceNotices(celsius(8))).extracting(Notice::code).containsExactly("room.condensation");
        assertThat(room.surfaceNotices(celsius(15))).isEmpty();
    }

    @Test
    void waterBudget() {
        WaterBudget budget = WaterBudget.of(litres(620), kilograms(3.1));
        assertThat(budget).hasToString("200 L/kg of fresh water");
        assertThat(budget.drained(litres(300), Consistency.percent(0.02)).notices())
                .extracting(Notice::code)
                .containsExactly("water.strain");
        // A project sheet that claimed 1000 L a day for two tonnes of board.
        assertThat(WaterBudget.of(litres(1000), kilograms(2000)).notices())
                .extracting(Notice::code)
                .containsExactly("water.impossible");
        assertThat(budget.notices()).isEmpty();
        assertThatThrownBy(() -> budget.drained(litres(300), Consistency.percent(2)))
                .hasMessage("white water: 6000 g of solids let go from 3.1 kg of paper; check the consistency and its"
                        + " unit.");
    }

    @Test
    void aBatchOfLikeSheets() {
        PressedSheet sheet =
                FormedSheet.of(grams(10.5), mm(300), mm(400)).couched().pressed(Solids.percent(36));
        DryingModel.Batch batch = DryingModel.Batch.of(sheet, 40, SorptionModel.standard(), air(20, 50));
        assertThat(batch.ovenDry().in("g")).isCloseTo(420, withinPercentage(1e-9));
        assertThat(batch.end().si() - batch.equilibrium().si()).isCloseTo(0.02, within(1e-12));
        assertThatThrownBy(() -> DryingModel.Batch.of(sheet, 0, SorptionModel.standard(), air(20, 50)))
                .hasMessage("sheets to dry: 0 given; must be 1 or more.");
    }
}
