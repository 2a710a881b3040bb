package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import com.hummeling.if97.IF97;
import com.hummeling.if97.OutOfRangeException;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class PsychrometricsPropertyTest {
    private static final IF97 STEAM = new IF97(IF97.UnitSystem.SI);

    @Property(seed = "2026")
    void saturationPressureRises(@ForAll @Scale(6) @DoubleRange(min = -100, max = 199) double celsius) {
        assertThat(Psychrometrics.saturationPressure(celsius + 0.01))
                .isGreaterThan(Psychrometrics.saturationPressure(celsius));
    }

    @Property(seed = "2026")
    void agreesWithTheSteamTables(@ForAll @Scale(6) @DoubleRange(min = 0, max = 200) double celsius)
            throws OutOfRangeException {
        assertThat(Psychrometrics.saturationPressure(celsius))
                .isCloseTo(STEAM.saturationPressureT(celsius + 273.15), withinPercentage(0.1));
    }

    @Property(seed = "2026")
    void wetBulbLiesBetweenDewPointAndDryBulb(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 60) double celsius,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1) double humidity,
            @ForAll @Scale(6) @DoubleRange(min = -400, max = 4000) double altitude) {
        double pressure = Psychrometrics.pressureAtAltitude(altitude);
        double vapour = Psychrometrics.vapourPressure(celsius, humidity);
        double ratio = Psychrometrics.humidityRatio(vapour, pressure);
        double wetBulb = Psychrometrics.wetBulb(celsius, ratio, pressure);
        double dewPoint = Psychrometrics.dewPoint(vapour);
        assertThat(wetBulb).isLessThanOrEqualTo(celsius).isGreaterThanOrEqualTo(dewPoint - 1e-9);
        assertThat(dewPoint).isLessThanOrEqualTo(celsius + 1e-9);
        if (wetBulb == 0) {
            // Between the branch over ice and the branch over water, which meet with a step.
            assertThat(ratio)
                    .isBetween(
                            Psychrometrics.humidityRatioOfWetBulb(celsius, -Double.MIN_NORMAL, pressure),
                            Psychrometrics.humidityRatioOfWetBulb(celsius, 0, pressure) + 1e-12);
        } else {
            assertThat(Psychrometrics.humidityRatioOfWetBulb(celsius, wetBulb, pressure))
                    .isCloseTo(ratio, within(1e-12));
        }
        // The pressures over ice and over water differ by some parts in a hundred million where they meet.
        assertThat(Psychrometrics.saturationPressure(dewPoint))
                .isCloseTo(vapour, withinPercentage(Math.abs(dewPoint) < 1e-5 ? 1e-5 : 1e-8));
        assertThat(Psychrometrics.vapourPressureOfRatio(ratio, pressure)).isCloseTo(vapour, withinPercentage(1e-9));
        assertThat(Psychrometrics.relativeHumidity(celsius, ratio, pressure)).isCloseTo(humidity, within(1e-9));
    }

    @Property(seed = "2026")
    void pressureFallsWithAltitude(@ForAll @Scale(6) @DoubleRange(min = -500, max = 9000) double altitude) {
        assertThat(Psychrometrics.pressureAtAltitude(altitude + 1))
                .isLessThan(Psychrometrics.pressureAtAltitude(altitude));
    }

    @Example
    void saturatedAirIsAtItsWetBulb() {
        double saturated = Psychrometrics.saturatedHumidityRatio(20, 101325);
        assertThat(Psychrometrics.wetBulb(20, saturated, 101325)).isEqualTo(20);
        assertThat(Psychrometrics.wetBulb(20, 2 * saturated, 101325)).isEqualTo(20);
    }

    @Example
    void whatHasNoAnswerIsSaid() {
        assertThatThrownBy(() -> Psychrometrics.dewPoint(0)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> Psychrometrics.dewPoint(1e9)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> Psychrometrics.dewPoint(Double.NaN)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> Psychrometrics.wetBulb(20, Double.NaN, 101325))
                .isInstanceOf(ArithmeticException.class);
    }

    @net.jqwik.api.Example
    void justUnderSaturationAtTheFreezingPointTheWetBulbIsThere() {
        double pressure = Psychrometrics.STANDARD_PRESSURE;
        double saturated = Psychrometrics.saturatedHumidityRatio(0, pressure);
        assertThat(Psychrometrics.wetBulb(0, saturated * (1 - 1e-6), pressure)).isZero();
        assertThat(Psychrometrics.wetBulb(0, saturated * 0.9, pressure))
                .isNegative()
                .isGreaterThan(-2);
    }
}
