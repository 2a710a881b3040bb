package org.papermath.pulp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.metres;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.watts;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import javax.measure.quantity.Time;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.evidence.WithNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;

class BeaterTest {
    private static final Beater SMALL = Beater.of("small beater", litres(28), grams(700));
    private static final BeaterGeometry LABORATORY =
            BeaterGeometry.of(32, 7, metres(0.152), Kinds.RATE.of(500, "1/min"), metres(0.192));
    private static final BeaterGeometry STUDIO =
            BeaterGeometry.of(24, 8, inches(8), Kinds.RATE.of(300, "1/min"), metres(0.3));

    @Test
    void sharesAJobIntoEqualLoads() {
        List<BeaterLoad> loads = BeaterLoad.equal(kilograms(1.5), SMALL);
        assertThat(loads).hasSize(3).allSatisfy(load -> {
            assertThat(load.ovenDry().in("g")).isCloseTo(500, within(1e-9));
            assertThat(load.pulp().volume().in("L")).isCloseTo(28, within(1e-9));
            assertThat(load.notices()).isEmpty();
        });
        assertThat(BeaterLoad.count(kilograms(2.1), SMALL)).isEqualTo(3);
        assertThat(AdditiveDose.of(Additive.of("ochre", Additive.Purpose.PIGMENT), Kinds.DOSE.of(4, "%"))
                        .perLoad(loads))
                .hasSize(3)
                .allSatisfy(mass -> assertThat(mass.in("g")).isCloseTo(20, within(1e-9)));
    }

    @Test
    void warnsOfThickAndOverfullLoads() {
        assertThat(BeaterLoad.filling(SMALL, grams(950)).notices())
                .extracting(notice -> notice.text())
                .containsExactly(
                        "The load stands at 3.361 % by mass; above 3 % a beater with gravity return may stop turning over."
                                + " Give less fibre or"
                                + " more water.",
                        "The load holds 950 g of oven-dry fibre; small beater is rated for 700 g.");
        assertThat(BeaterLoad.filling(SMALL, grams(1600)).notices().get(0).code())
                .isEqualTo("beater.consistency-limit");
        Assumptions own = Assumptions.standard().given("beater.consistency-warning", Scope.at("small beater"), 0.04);
        assertThat(BeaterLoad.filling(SMALL, grams(950)).notices(own)).hasSize(1);
        assertThatThrownBy(() -> BeaterLoad.of(SMALL, Pulp.ofOvenDry(grams(600)).inWaterOf(litres(30))))
                .isInstanceOf(Refused.class)
                .hasMessage("beater load: 30.4 L of stock given, but small beater turns 28 L. Beat it in more loads,"
                        + " or thicken it.");
    }

    @Test
    void knowsItsBars() {
        assertThat(LABORATORY.edgeLengthPerSecond().si()).isCloseTo(283.73, within(0.01));
        assertThat(LABORATORY.tipSpeed().si()).isCloseTo(5.0265, within(1e-4));
        assertThat(BeaterGeometry.of(60, 20, metres(1), Kinds.RATE.of(150, "1/min"), metres(1))
                        .cuts()
                        .in("1/min"))
                .isCloseTo(180000, within(1e-6));
        assertThat(LABORATORY.edgeLoad(watts(100)).value().in("J/m")).isCloseTo(0.3524, within(1e-4));
        assertThat(LABORATORY.edgeLoad(watts(100)).notices()).isEmpty();
        assertThat(LABORATORY.edgeLoad(watts(1000)).notices().get(0).text())
                .isEqualTo("At 3.524 J/m the bars mostly cut; above about 3 J/m fibres are shortened more than brushed"
                        + " out.");
        assertThat(BeaterGeometry.specificEnergy(watts(100), minutes(40), grams(360))
                        .in("kW.h/t"))
                .isCloseTo(185.19, within(0.01));
        assertThat(BeaterGeometry.netPower(watts(372.85), watts(186.425)).in("W"))
                .isCloseTo(186.425, within(1e-9));
        assertThatThrownBy(() -> BeaterGeometry.netPower(watts(100), watts(300)))
                .isInstanceOf(Refused.class)
                .hasMessage("idle power: 300 W given, more than the 100 W with the roll down. See whether the two were"
                        + " changed over.");
        assertThatThrownBy(() -> BeaterGeometry.of(0, 7, metres(0.1), Kinds.RATE.of(500, "1/min"), metres(0.2)))
                .isInstanceOf(Refused.class)
                .hasMessage("bars of the roll: 0 given; it must be from 1 to 1000. Count the bars, not the grooves.");
    }

    @Test
    void carriesTimesWithinTheirLimits() {
        assertThat(BeatingTime.forLoad(hours(2), grams(500), grams(600), SMALL).in("h"))
                .isCloseTo(2.4, within(1e-12));
        assertThatThrownBy(() -> BeatingTime.forLoad(hours(2), grams(500), grams(200), SMALL))
                .isInstanceOf(Refused.class)
                .hasMessage("other load: 200 g given; times are carried only between loads of 350 g to 840 g in small"
                        + " beater, where"
                        + " the stock turns over alike. Keep a record of that load by itself.");
        WithNotices<Amount<Time>> there =
                BeatingTime.onMachine(minutes(30), grams(360), LABORATORY, grams(680), STUDIO);
        assertThat(there.value().in("min")).isCloseTo(82.42, within(0.01));
        assertThat(there.notices().get(0).code()).isEqualTo("beating.borrowed-time");
        assertThat(BeatingTime.atEqualEnergy(hours(1), grams(400), watts(100), grams(800), watts(400))
                        .value()
                        .in("h"))
                .isCloseTo(0.5, within(1e-12));
        assertThat(BeatingTime.noFactor(SMALL, Beater.of("big beater", litres(90), kilograms(2))))
                .hasMessage(
                        "beating time: the hours were kept on small beater; what big beater does in an hour is not known."
                                + " Count the bars of"
                                + " both, or read the drainability of one load on big beater.");
        WithNotices<Amount<Time>> mill =
                BeatingTime.ofMillHours(hours(10), Assumptions.standard(), Scope.of("cotton-rag"));
        assertThat(mill.value().in("h")).isCloseTo(1.8, within(1e-9));
        assertThat(mill.notices().get(0).text()).contains("1.2 h to 10 h");
    }

    @Test
    void soaks() {
        assertThat(BeaterLoad.soakWater(grams(500), Kinds.LIQUOR_RATIO.of(15, "L/kg"))
                        .in("L"))
                .isCloseTo(7.5, within(1e-12));
        assertThatThrownBy(() -> BeaterLoad.hours(0, hours(1), hours(1), hours(1)))
                .isInstanceOf(Refused.class)
                .hasMessage("beater loads: 0 given; must be 1 or more.");
    }

    @Property(tries = 200, seed = "2026")
    void equalLoadsAddUpAndFit(
            @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 200) double total,
            @ForAll @Scale(6) @DoubleRange(min = 0.2, max = 5) double rated) {
        Beater beater = Beater.of("any", litres(100), kilograms(rated));
        List<BeaterLoad> loads = BeaterLoad.equal(kilograms(total), beater);
        double sum = loads.stream().mapToDouble(load -> load.ovenDry().si()).sum();
        assertThat(sum).isCloseTo(total, relative(total, 1e-12));
        assertThat(loads.get(0).ovenDry().si()).isLessThanOrEqualTo(rated * (1 + 1e-8));
        assertThat((loads.size() - 1) * rated).isLessThan(total);
    }

    @Test
    void writesDownHowTheRollWasLetDown() {
        RollLowering written = RollLowering.of(
                RollLowering.Step.of(Kinds.TIME.of(0, "min"), 0),
                RollLowering.Step.of(Kinds.TIME.of(20, "min"), 0.5),
                RollLowering.Step.of(Kinds.TIME.of(50, "min"), 2));
        assertThat(written.turnsAt(Kinds.TIME.of(19, "min"))).isZero();
        assertThat(written.turnsAt(Kinds.TIME.of(20, "min"))).isEqualTo(0.5);
        assertThat(written.turnsAt(Kinds.TIME.of(5, "h"))).isEqualTo(2);
        assertThat(written.moves()).isEqualTo(2);
        assertThat(written).hasToString("roll: 0 min 0; 20 min 0.5; 50 min 2.");
        RollLowering even = RollLowering.every(Kinds.TIME.of(15, "min"), 1, Kinds.TIME.of(3, "h"));
        assertThat(even.turnsAt(Kinds.TIME.of(3, "h"))).isEqualTo(12);
        assertThat(even.turnsAt(Kinds.TIME.of(29, "min"))).isEqualTo(1);
        assertThatThrownBy(() -> RollLowering.of()).isInstanceOf(Refused.class).hasMessageContaining("none given");
        assertThatThrownBy(() ->
                        RollLowering.of(written.steps().get(1), written.steps().get(0)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("in order of time");
        assertThatThrownBy(() -> RollLowering.Step.of(Kinds.TIME.of(1, "min"), Double.NaN))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> RollLowering.of(written.steps().get(1)).turnsAt(Kinds.TIME.of(1, "min")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("before the first setting");
        assertThatThrownBy(() -> RollLowering.every(Kinds.TIME.of(1, "s"), 1, Kinds.TIME.of(3, "h")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Check the unit");
    }

    @Test
    void aPointIsTakenAsItWasRead() {
        BeatingRecord<SchopperRiegler> record = BeatingRecord.of(
                "abaca",
                Kinds.SCHOPPER_RIEGLER,
                List.of(
                        BeatingRecord.Point.read(minutes(30), SchopperRiegler.degrees(20)),
                        BeatingRecord.Point.read(minutes(60), SchopperRiegler.degrees(40))));
        assertThat(record.timeTo(SchopperRiegler.degrees(30)).in("min")).isCloseTo(45, within(1e-9));
        assertThat(record.points().get(0).drainability().error().si()).isZero();
    }
}
