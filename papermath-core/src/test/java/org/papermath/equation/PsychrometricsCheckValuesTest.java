package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;

class PsychrometricsCheckValuesTest {
    private static final double STANDARD = Psychrometrics.STANDARD_PRESSURE;

    static List<CheckValues.Row> saturation() {
        return CheckValues.read("saturation_pressure");
    }

    static List<CheckValues.Row> states() {
        return CheckValues.read("psychrometric_states");
    }

    static List<CheckValues.Row> handbook() {
        return CheckValues.read("psychrometric_handbook");
    }

    @ParameterizedTest
    @MethodSource("saturation")
    void saturation(CheckValues.Row row) {
        double celsius = row.number("t_C");
        double hylandWexler = Psychrometrics.saturationPressure(celsius);
        assertThat(hylandWexler).isCloseTo(row.number("hyland_wexler_Pa"), withinPercentage(1e-4));
        if (row.has("handbook_Pa")) {
            assertThat(hylandWexler).isCloseTo(row.number("handbook_Pa"), withinPercentage(0.03));
        }
        for (String other : List.of("if97_Pa", "magnus_Pa", "buck1996_Pa", "tetens_Pa")) {
            assertThat(hylandWexler).as(other).isCloseTo(row.number(other), withinPercentage(0.3));
        }
    }

    /**
     * Enthalpy, kJ for a kilogram of dry air, zero for dry air and liquid water at 0 °C (ASHRAE Fundamentals, chapter
     * on psychrometrics).
     */
    private static double enthalpy(double celsius, double humidityRatio) {
        return 1.006 * celsius + humidityRatio * (2501 + 1.86 * celsius);
    }

    @ParameterizedTest
    @MethodSource("states")
    void state(CheckValues.Row row) {
        double celsius = row.number("t_C");
        double humidity = row.number("rh");
        double vapour = Psychrometrics.vapourPressure(celsius, humidity);
        double ratio = Psychrometrics.humidityRatio(vapour, STANDARD);
        double wetBulb = Psychrometrics.wetBulb(celsius, ratio, STANDARD);
        assertThat(ratio).isCloseTo(row.number("humidity_ratio"), within(1e-6));
        assertThat(enthalpy(celsius, ratio)).isCloseTo(row.number("enthalpy_kJ_per_kg"), within(0.01));
        assertThat(Psychrometrics.volume(celsius, ratio, STANDARD))
                .isCloseTo(row.number("volume_m3_per_kg"), within(1e-5));
        assertThat(wetBulb).isCloseTo(row.number("wet_bulb_C"), within(0.01));
        assertThat(Psychrometrics.dewPoint(vapour)).isCloseTo(row.number("dew_point_C"), within(0.01));
        assertThat(Psychrometrics.saturatedHumidityRatio(wetBulb, STANDARD))
                .isCloseTo(row.number("ws_at_wet_bulb"), within(1e-5));
        assertThat(Psychrometrics.relativeHumidity(celsius, ratio, STANDARD)).isCloseTo(humidity, within(1e-12));
        // Brought to saturation at its wet bulb, air gains no heat but what the water carries in.
        double saturated = Psychrometrics.saturatedHumidityRatio(wetBulb, STANDARD);
        assertThat(enthalpy(celsius, ratio) + (saturated - ratio) * 4.186 * wetBulb)
                .isCloseTo(enthalpy(wetBulb, saturated), within(1e-6));
    }

    @ParameterizedTest
    @MethodSource("handbook")
    void handbook(CheckValues.Row row) {
        double fromWetBulb = Psychrometrics.humidityRatioOfWetBulb(40, 20, STANDARD);
        Map<String, Double> values = Map.ofEntries(
                Map.entry("Ws 5 C", Psychrometrics.saturatedHumidityRatio(5, STANDARD)),
                Map.entry("Ws 25 C", Psychrometrics.saturatedHumidityRatio(25, STANDARD)),
                Map.entry("Ws 50 C", Psychrometrics.saturatedHumidityRatio(50, STANDARD)),
                Map.entry("v_dry_air 25 C", Psychrometrics.volume(25, 0, STANDARD)),
                Map.entry("p_std_Pa 500 m", Psychrometrics.pressureAtAltitude(500)),
                Map.entry("p_std_Pa 1000 m", Psychrometrics.pressureAtAltitude(1000)),
                Map.entry("W pw 3169.7 Pa; p 95461 Pa", Psychrometrics.humidityRatio(3169.7, 95461)),
                Map.entry("v 30 C; W 0.02; p 95461 Pa", Psychrometrics.volume(30, 0.02, 95461)),
                Map.entry("W 40 C; wet bulb 20 C", fromWetBulb),
                Map.entry("rh 40 C; wet bulb 20 C", Psychrometrics.relativeHumidity(40, fromWetBulb, STANDARD)),
                Map.entry("h_kJ_per_kg 40 C; wet bulb 20 C", enthalpy(40, fromWetBulb)),
                Map.entry("v 40 C; wet bulb 20 C", Psychrometrics.volume(40, fromWetBulb, STANDARD)),
                Map.entry(
                        "dew_point_C 40 C; wet bulb 20 C",
                        Psychrometrics.dewPoint(Psychrometrics.vapourPressureOfRatio(fromWetBulb, STANDARD))));
        String name = row.text("quantity") + " " + row.text("input");
        assertThat(values).containsKey(name);
        assertThat(values.get(name)).isCloseTo(row.number("expected"), withinPercentage(100 * row.number("rel_tol")));
    }

    @Test
    void hotAirOfKnownWetBulb() {
        double ratio = Psychrometrics.humidityRatioOfWetBulb(40, 20, STANDARD);
        assertThat(ratio).isCloseTo(0.006401, within(1e-6));
        assertThat(Psychrometrics.relativeHumidity(40, ratio, STANDARD)).isCloseTo(0.13979, within(1e-5));
        assertThat(Psychrometrics.dewPoint(Psychrometrics.vapourPressureOfRatio(ratio, STANDARD)))
                .isCloseTo(7.434, within(1e-3));
        assertThat(enthalpy(40, ratio)).isCloseTo(56.725, within(1e-3));
        assertThat(Psychrometrics.volume(40, ratio, STANDARD)).isCloseTo(0.89625, within(1e-5));
    }
}
