package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class DryingPropertyTest {
    private static final double ENDLESS = Double.POSITIVE_INFINITY;

    @Property(seed = "2026")
    void aWetSurfaceLiesBetweenDewPointAndAirAndLosesLessInDamperAir(
            @ForAll @Scale(6) @DoubleRange(min = 5, max = 40) double celsius,
            @ForAll @Scale(6) @DoubleRange(min = 0.05, max = 0.99) double humidity,
            @ForAll @Scale(6) @DoubleRange(min = 3, max = 20) double convection) {
        double surface = Drying.surfaceTemperature(celsius, humidity, convection, 5.5, 0.87, 0);
        double dewPoint = Psychrometrics.dewPoint(Psychrometrics.vapourPressure(celsius, humidity));
        assertThat(surface).isBetween(dewPoint, celsius);
        double flux = Drying.surfaceFlux(celsius, humidity, convection, 5.5, 0.87, 0);
        assertThat(flux).isPositive();
        // The heat the surface takes up is all spent on evaporation.
        assertThat(flux * Drying.heatOfEvaporation(surface))
                .isCloseTo((convection + 5.5) * (celsius - surface), within(1e-6));
        assertThat(Drying.surfaceFlux(celsius, humidity + 0.01, convection, 5.5, 0.87, 0))
                .isLessThan(flux);
        assertThat(Drying.surfaceFlux(celsius, humidity, convection, 5.5, 0.87, Drying.boardSun(0.3, 600)))
                .isGreaterThan(flux);
    }

    @Property(seed = "2026")
    void twoPeriodTimeAddsUpWhereverItIsCut(
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 3) double cut,
            @ForAll @Scale(6) @DoubleRange(min = 0.3, max = 1) double critical,
            @ForAll @Scale(6) @DoubleRange(min = 0.03, max = 0.09) double equilibrium) {
        double whole = Drying.twoPeriodTime(2, 1e-4, 3, critical, equilibrium, 0.1);
        double first = Drying.twoPeriodTime(2, 1e-4, 3, critical, equilibrium, cut);
        double rest = Drying.twoPeriodTime(2, 1e-4, cut, critical, equilibrium, 0.1);
        assertThat(first + rest).isCloseTo(whole, withinPercentage(1e-9));
    }

    /** Air of 20 °C and 50 %. */
    private static final StackDrying.Inlet ROOM = StackDrying.Inlet.of(20, 0.5, 101325);

    @Property(seed = "2026")
    void aStackGivesOffMoreWithMoreSheetsAndMoreAirAndNeverMoreThanItsSheetsOrItsAir(
            @ForAll @Scale(6) @DoubleRange(min = 0.0003, max = 0.005) double conductance,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 0.6) double still,
            @ForAll @Scale(6) @DoubleRange(min = 0.05, max = 60) double faces,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 0.5) double flow) {
        StackDrying stack = new StackDrying(conductance, still, 0.6);
        double given = stack.evaporation(faces, flow, ROOM);
        double alone = stack.evaporation(faces, 0, ROOM);
        assertThat(given).isGreaterThanOrEqualTo(alone).isLessThanOrEqualTo(ROOM.most(conductance * faces));
        assertThat(given).isLessThanOrEqualTo(Math.max(alone, ROOM.most(flow)));
        assertThat(stack.evaporation(1.1 * faces, flow, ROOM)).isGreaterThan(given);
        assertThat(stack.evaporation(faces, 1.1 * flow, ROOM)).isGreaterThanOrEqualTo(given);
        // A weighed evaporation gives the conductance back, unless it is so near to all the air can take that the last
        // digits of it decide.
        if (conductance * faces / flow < 12) {
            assertThat(StackDrying.conductanceOf(given, still, faces, flow, ROOM))
                    .isCloseTo(conductance, withinPercentage(1e-6));
        }
        assertThat(StackDrying.conductanceOf(alone, still, faces, 0, ROOM))
                .isCloseTo(conductance, withinPercentage(1e-9));
    }

    /** What the delay adds up is the slowed drying followed in small steps, with its falling rate. */
    @Property(tries = 100, seed = "2026")
    void theDelayIsTheSumOfWhatTheRoomHoldsBackAtEachMoment(
            @ForAll @Scale(6) @DoubleRange(min = 0.3, max = 3) double start,
            @ForAll @Scale(6) @DoubleRange(min = 1e-5, max = 1e-3) double rate,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 0.2) double flow) {
        double mass = 2;
        double open = Drying.twoPeriodTime(mass, rate, start, 0.6, 0.06, 0.1);
        double slowed = open + Room.delay(mass * (start - 0.1), flow, 0.0147, 0.0073);
        int steps = 20_000;
        double step = (start - 0.1) / steps;
        double seconds = 0;
        for (int i = 0; i < steps; i++) {
            double here = start - (i + 0.5) * step;
            double free = rate * Math.min(1, (here - 0.06) / (0.6 - 0.06));
            seconds += mass * step / Room.evaporation(free, flow, 0.0147, 0.0073);
        }
        assertThat(slowed).isCloseTo(seconds, withinPercentage(0.01));
        assertThat(Room.delay(mass, Double.POSITIVE_INFINITY, 0.0147, 0.0073)).isZero();
    }

    @Property(seed = "2026")
    void damperAirNeverAsksForFewerChangesOfBlotters(
            @ForAll @Scale(6) @DoubleRange(min = 0.6, max = 4) double start,
            @ForAll @Scale(6) @DoubleRange(min = 0.2, max = 0.8) double kept,
            @ForAll @Scale(6) @DoubleRange(min = 0.02, max = 0.2) double equilibrium) {
        BlotterDrying law = new BlotterDrying(kept, 1, 1);
        double damper = equilibrium + 0.02;
        assertThat(law.changes(start, damper + 0.02, damper))
                .isGreaterThanOrEqualTo(law.changes(start, equilibrium + 0.02, equilibrium));
    }

    @Property(seed = "2026")
    void aWeightHoldsInProportionUpToALeastPressure(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double share,
            @ForAll @Scale(6) @DoubleRange(min = 1, max = 5000) double pressure) {
        double held = StackDrying.held(share, pressure, 400);
        assertThat(held).isBetween(0.0, share);
        assertThat(held).isCloseTo(pressure >= 400 ? share : share * pressure / 400, within(1e-12));
        assertThat(StackDrying.pressure(20, 0.4258)).isCloseTo(460.6, within(0.1));
    }

    @Property(seed = "2026")
    void blotterChangesAndBack(
            @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 4) double start,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 0.9) double share,
            @ForAll @Scale(6) @DoubleRange(min = 1, max = 12) double changes) {
        // Each change takes the same share of what is there.
        double after = start * Math.pow(1 - share, changes);
        assertThat(Drying.blotterChanges(start, after, share)).isCloseTo(changes, withinPercentage(1e-8));
        assertThat(Drying.blotterShare(start, after, changes)).isCloseTo(share, within(1e-9));
    }

    @Example
    void neverDriesIsEndless() {
        assertThat(Drying.twoPeriodTime(1, 0, 2, 0.6, 0.07, 0.09)).isEqualTo(ENDLESS);
        assertThat(Drying.twoPeriodTime(1, 1e-4, 2, 0.6, 0.09, 0.09)).isEqualTo(ENDLESS);
        assertThat(Drying.twoPeriodTime(1, 1e-4, 2, 0.6, 0.20, 0.09)).isEqualTo(ENDLESS);
        assertThat(Drying.hungTime(0.1, 2, 0.1, 1, 2, 0, 1.5)).isEqualTo(ENDLESS);
        assertThat(Drying.blotterChanges(2, 0.1, 0)).isEqualTo(ENDLESS);
        assertThat(Drying.blotterChanges(2, 0, 0.5)).isEqualTo(ENDLESS);
    }

    @Example
    void saturatedAirTakesNothing() {
        double saturated = Psychrometrics.saturatedHumidityRatio(20, 101325);
        double wetBulb = Psychrometrics.wetBulb(20, saturated, 101325);
        double air = Drying.dryAirFlow(0.2, 0.85);
        double rate =
                Drying.stackEvaporation(0.3, air, Psychrometrics.saturatedHumidityRatio(wetBulb, 101325), saturated);
        assertThat(rate).isZero();
        assertThat(Drying.twoPeriodTime(1, rate, 2, 0.6, 0.07, 0.09)).isEqualTo(ENDLESS);
        assertThat(Drying.surfaceFlux(20, 1, 5, 5.5, 0.87, 0)).isCloseTo(0, within(1e-12));
    }

    @Example
    void alreadyDryTakesNoTime() {
        assertThat(Drying.twoPeriodTime(1, 0, 0.08, 0.6, 0.07, 0.09)).isZero();
        assertThat(Drying.hungTime(0.1, 0.1, 0.1, 1, 2, 0, 1.5)).isZero();
        assertThat(Drying.blotterChanges(0.1, 0.1, 0.5)).isZero();
        assertThat(Drying.blotterChanges(2, 0.1, 1)).isEqualTo(1);
    }

    @Example
    void oneTimedLoftGivesTheTail() {
        double bare = Drying.hungTime(0.1, 2, 0.09, 1, 2, 2e-5, 1);
        double timed = Drying.hungTime(0.1, 2, 0.09, 1, 2, 2e-5, 1.7);
        assertThat(Drying.tailOfTime(timed, bare)).isCloseTo(1.7, within(1e-12));
    }

    @Example
    void anAirThatIsNoNumberIsSaid() {
        assertThatThrownBy(() -> Drying.surfaceTemperature(Double.NaN, 0.5, 5, 5.5, 0.87, 0))
                .isInstanceOf(ArithmeticException.class);
    }
}
