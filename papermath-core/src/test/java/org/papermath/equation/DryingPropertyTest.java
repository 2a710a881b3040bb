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
