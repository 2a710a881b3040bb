package org.papermath.pulp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.testing.CheckValues.relative;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import javax.measure.quantity.Time;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Bands;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.testing.CheckValues;

class BeatingModelTest {
    private static final Scope HERE = Scope.of("abaca").on("small beater");

    private static Amount<SchopperRiegler> sr(double value) {
        return Kinds.SCHOPPER_RIEGLER.of(value, "SR");
    }

    private static BeatingRecord.Point<SchopperRiegler> reading(double hours, double value, double error) {
        return BeatingRecord.Point.of(Reading.of(hours(hours), minutes(2)), Reading.of(sr(value), sr(error)));
    }

    @Test
    void agreesWithTheTable() {
        for (CheckValues.Row row : CheckValues.read("freeness_kinetics")) {
            Assumptions own = Assumptions.standard()
                    .given("beating.rate", HERE, row.number("k_per_h"))
                    .given("beating.exponent", HERE, row.number("p"))
                    .given("beating.drainability-unbeaten", HERE, row.number("sr0"));
            assertThat(BeatingModel.from(own, HERE)
                            .after(hours(row.number("t_h")))
                            .si())
                    .isCloseTo(row.number("sr"), relative(row.number("sr"), 1e-5));
        }
    }

    @Test
    void oneReadingSetsTheRate() {
        Assumptions own = BeatingModel.calibrate(Assumptions.standard(), HERE, List.of(reading(2, 40, 2)));
        Assumption rate = own.get("beating.rate", HERE);
        assertThat(rate.likely()).isCloseTo(0.193558, within(1e-6));
        assertThat(rate.scope()).isEqualTo(HERE);
        assertThat(rate.basis()).isEqualTo(Basis.MEASURED_HERE);
        assertThat(rate.low()).isBetween(0.15, 0.19);
        assertThat(own.get("beating.exponent", HERE))
                .isEqualTo(Assumptions.standard().get("beating.exponent", HERE));
        BeatingModel model = BeatingModel.from(own, HERE);
        assertThat(model.after(hours(4)).si()).isCloseTo(57.654, within(1e-3));
        assertThat(model.timeTo(sr(70)).in("h")).isCloseTo(6.0735, within(1e-4));
        assertThat(BeatingModel.from(own, Scope.of("abaca").on("other"))
                        .after(hours(2))
                        .si())
                .isGreaterThan(40);
    }

    @Test
    void aForecastIsWideUntilALoadIsRead() {
        BeatingModel table = BeatingModel.standard(Scope.of("abaca"));
        assertThat(table.forecast(hours(2)).high().si()
                        - table.forecast(hours(2)).low().si())
                .isGreaterThan(30);
        assertThat(table.forecast(hours(2)).isUncalibrated()).isTrue();
        Assumptions own = BeatingModel.calibrate(Assumptions.standard(), HERE, List.of(reading(2, 40, 1)));
        BeatingModel here = BeatingModel.from(own, HERE);
        assertThat(here.forecast(hours(2)).high().si()
                        - here.forecast(hours(2)).low().si())
                .isLessThan(6);
        assertThat(here.forecast(hours(2)).likely()).isEqualTo(here.after(hours(2)));
        assertThat(here.forecast(hours(2)).isUncalibrated()).isFalse();
    }

    @Test
    void moreReadingsSetTheExponentAndTheStart() {
        Assumptions truth = Assumptions.standard()
                .given("beating.rate", HERE, 0.22)
                .given("beating.exponent", HERE, 1.2)
                .given("beating.drainability-unbeaten", HERE, 15);
        BeatingModel model = BeatingModel.from(truth, HERE);
        List<BeatingRecord.Point<SchopperRiegler>> readings = new ArrayList<>(List.of(reading(0, 15, 0.5)));
        for (double hours : new double[] {1, 2.5, 4, 6}) {
            readings.add(reading(hours, model.after(hours(hours)).si(), 1));
        }
        Assumptions own = BeatingModel.calibrate(Assumptions.standard(), HERE, readings);
        assertThat(own.get("beating.rate", HERE).likely()).isCloseTo(0.22, within(1e-9));
        assertThat(own.get("beating.exponent", HERE).likely()).isCloseTo(1.2, within(1e-9));
        assertThat(own.get("beating.drainability-unbeaten", HERE).likely()).isEqualTo(15);
        assertThat(own.own()).hasSize(3);
        Assumptions two = BeatingModel.calibrate(truth, HERE, List.of(readings.get(1), readings.get(3)));
        assertThat(two.get("beating.exponent", HERE).likely()).isCloseTo(1.2, within(1e-9));
    }

    /** Rate and exponent of one line go together, and so does the band of a number read off it, before, within and after. */
    @ParameterizedTest
    @CsvSource({"1, 5", "4, 6", "1.5, 3"})
    void bandsHoldAlongTheLineThatWasRead(double from, double to) {
        Assumptions truth = Assumptions.standard()
                .given("beating.rate", HERE, 0.22)
                .given("beating.exponent", HERE, 1.2)
                .given("beating.drainability-unbeaten", HERE, 15);
        Assumptions known = truth.given("beating.rate-surest", Scope.GENERAL, 1e-6)
                .given("making.beating.rate", Scope.GENERAL, 1e-9)
                .given("making.beating.drainability-unbeaten", Scope.GENERAL, 1e-9);
        BeatingModel model = BeatingModel.from(truth, HERE);
        Random chance = new Random(2026);
        double[] asked = {0.7, 2, 4, 10};
        int[] held = new int[asked.length];
        int sets = 1000;
        for (int set = 0; set < sets; set++) {
            List<BeatingRecord.Point<SchopperRiegler>> readings = new ArrayList<>();
            readings.add(reading(0, 15 + 0.5 * chance.nextGaussian(), 0.5));
            for (int i = 0; i < 6; i++) {
                double hours = from + (to - from) * i / 5;
                double read = model.after(hours(hours)).si() + 0.8 * chance.nextGaussian();
                readings.add(BeatingRecord.Point.of(Reading.of(hours(hours), hours(0)), Reading.of(sr(read), sr(0.8))));
            }
            Assumptions own = BeatingModel.calibrate(known, HERE, readings);
            for (int k = 0; k < asked.length; k++) {
                Amount<Time> time = hours(asked[k]);
                Estimate<SchopperRiegler> band = Bands.of(
                        own,
                        HERE,
                        List.of("beating.rate", "beating.exponent", "beating.drainability-unbeaten"),
                        store -> BeatingModel.from(store, HERE).after(time));
                double is = model.after(time).si();
                held[k] += band.low().si() <= is && is <= band.high().si() ? 1 : 0;
            }
        }
        for (int k = 0; k < asked.length; k++) {
            assertThat((double) held[k] / sets).as("after " + asked[k] + " h").isCloseTo(0.9, within(0.035));
        }
    }

    @Test
    void aFibreWithoutADefaultGetsOneByMeasuring() {
        Scope milkweed = Scope.of("milkweed").on("small beater");
        assertThat(Assumptions.standard().get("beating.rate", milkweed).scope().isGeneral())
                .isTrue();
        Assumptions own = BeatingModel.calibrate(Assumptions.standard(), milkweed, List.of(reading(0.5, 16, 1)));
        assertThat(own.get("beating.rate", milkweed).scope()).isEqualTo(milkweed);
        assertThat(BeatingModel.from(own, milkweed).after(hours(0.5)).si()).isCloseTo(16, within(1e-9));
    }

    @Test
    void refusesWhatBeatingDoesNotDo() {
        BeatingModel model = BeatingModel.standard(Scope.of("abaca"));
        assertThatThrownBy(() -> model.timeTo(sr(96)))
                .isInstanceOf(Refused.class)
                .hasMessage("Schopper-Riegler number: 96 °SR given;"
                        + " beating goes from 14 °SR unbeaten towards 95 °SR and does not get there. Check the reading, or"
                        + " read your own"
                        + " unbeaten pulp.");
        assertThatThrownBy(() -> model.timeTo(sr(10))).isInstanceOf(Refused.class);
        assertThat(model.timeTo(sr(14)).si()).isZero();
        assertThatThrownBy(() -> BeatingModel.calibrate(
                        Assumptions.standard(), HERE, List.of(reading(1, 40, 1), reading(2, 30, 1))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("they do not rise with the time");
        assertThatThrownBy(() -> BeatingModel.calibrate(Assumptions.standard(), HERE, List.of()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("none after beating given");
        assertThatThrownBy(() -> BeatingModel.calibrate(Assumptions.standard(), HERE, List.of(reading(1, 14, 1))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("the same as before beating");
    }

    @Test
    void aRecordAnswersInsideOnly() {
        BeatingRecord<SchopperRiegler> record = BeatingRecord.of(
                "abaca in the small beater",
                Kinds.SCHOPPER_RIEGLER,
                List.of(reading(3, 50, 1), reading(1, 30, 1), reading(2, 42, 1)));
        assertThat(record.after(hours(1.5)).si()).isCloseTo(36, within(1e-9));
        assertThat(record.timeTo(sr(46)).in("h")).isCloseTo(2.5, within(1e-9));
        assertThat(record.after(hours(3)).si()).isCloseTo(50, within(1e-9));
        assertThatThrownBy(() -> record.after(hours(4)))
                .isInstanceOf(Refused.class)
                .hasMessage("beating time: 4 h asked for, but the"
                        + " record of abaca in the small beater goes from 1 h to 3 h. It is not extrapolated: beat"
                        + " further once and"
                        + " read.");
        assertThatThrownBy(() -> BeatingRecord.of("x", Kinds.SCHOPPER_RIEGLER, List.of(reading(1, 30, 1))))
                .isInstanceOf(Refused.class)
                .hasMessage("beating record of x: 1 readings given; at least two are" + " needed.");
        assertThatThrownBy(() ->
                        BeatingRecord.of("x", Kinds.SCHOPPER_RIEGLER, List.of(reading(1, 30, 1), reading(1, 31, 1))))
                .isInstanceOf(Refused.class)
                .hasMessage("beating record of x: two readings after 1 h; take their mean.");
    }

    @Property(tries = 200, seed = "2026")
    void longerBeatingIsSlowerPulpAndTimesComeBack(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 12) double hours,
            @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 5) double more) {
        BeatingModel model = BeatingModel.standard(Scope.of("abaca"));
        double now = model.after(hours(hours)).si();
        assertThat(model.after(hours(hours + more)).si()).isGreaterThan(now);
        assertThat(model.timeTo(sr(now)).in("h")).isCloseTo(hours, within(1e-6));
    }

    @Test
    void sodaCookedPulpBeatsMoreSlowly() {
        BeatingModel kraft = BeatingModel.standard(Scope.of("softwood-kraft"));
        BeatingModel soda = kraft.sodaCooked(Assumptions.standard());
        assertThat(soda).hasToString("beating from 13 °SR towards 90 °SR at 0.69 1/h");
        assertThat(soda.timeTo(sr(40)).si() / kraft.timeTo(sr(40)).si()).isCloseTo(1 / 0.69, within(1e-9));
        assertThat(soda.forecast(hours(1)).low().si())
                .isLessThan(soda.after(hours(1)).si());
    }
}
