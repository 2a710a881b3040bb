package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;

class DryingCheckValuesTest {
    private static final double HOUR = 3600;
    private static final double PRESSURE = Psychrometrics.STANDARD_PRESSURE;
    private static final Pattern LOFT = Pattern.compile("loft flux (\\d+) C (\\d+) % hc (\\d+)");
    private static final double HC_STILL = 5;
    private static final double HR = 5.5;
    private static final double LEWIS = 0.87;
    private static final double CRITICAL = 0.6;

    static List<CheckValues.Row> cases() {
        return CheckValues.read("drying");
    }

    /** A stack blown with 600 m3/h of air at 20 °C and 50 %. */
    private static Map<String, Double> stack() {
        StackDrying.Inlet in = StackDrying.Inlet.of(20, 0.5, PRESSURE);
        double flow = 600 / HOUR;
        double most = in.most(flow) * HOUR;
        Map<String, Double> values = new HashMap<>();
        values.put("stack m_da", Drying.dryAirFlow(flow, in.volume()) * HOUR);
        values.put("stack dW", in.saturated() - in.ratio());
        values.put(
                "stack E eps .3",
                Drying.stackEvaporation(0.3, Drying.dryAirFlow(flow, in.volume()), in.saturated(), in.ratio()) * HOUR);
        values.put("stack E eps 1", most);
        // A weighed evaporation over the greatest: so a calibration reads the efficiency.
        values.put("eps", 0.55 / most);
        return values;
    }

    private static double computed(String name) {
        Matcher loft = LOFT.matcher(name);
        if (loft.matches()) {
            double celsius = Double.parseDouble(loft.group(1));
            double humidity = Double.parseDouble(loft.group(2)) / 100;
            double convection = Double.parseDouble(loft.group(3));
            return Drying.surfaceFlux(celsius, humidity, convection, HR, LEWIS, 0) * 1000 * HOUR;
        }
        if (name.equals("40 sheets total")) {
            double ovenDry = 40 * 22 * 30 * 0.0254 * 0.0254 * 0.200;
            return new StackDrying(1.3e-3, 0.35, CRITICAL).time(ovenDry, 0.55 / HOUR, 2.0, 0.09, 0.07) / HOUR;
        }
        if (name.equals("blotters changes")) {
            return Drying.blotterChanges(2.0, 0.10, 0.5);
        }
        assertThat(stack()).containsKey(name);
        return stack().get(name);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void drying(CheckValues.Row row) {
        assertThat(computed(row.text("case"))).isCloseTo(row.number("value"), withinPercentage(0.02));
    }

    @Test
    void stackInFull() {
        Map<String, Double> stack = stack();
        assertThat(stack.get("stack E eps 1")).isCloseTo(1.8332, within(2e-4));
        assertThat(stack.get("eps")).isCloseTo(0.3, within(1e-4));
        assertThat(6.57 * Drying.heatOfEvaporation(13.78) / 3.6e6).isCloseTo(4.505, within(1e-3));
    }

    @Test
    void bothPeriodsOfFortySheets() {
        double ovenDry = 3.40644;
        double toCritical = Drying.twoPeriodTime(ovenDry, 0.55 / HOUR, 2.0, 0.6, 0.07, 0.6) / HOUR;
        double falling = Drying.twoPeriodTime(ovenDry, 0.55 / HOUR, 0.6, 0.6, 0.07, 0.09) / HOUR;
        assertThat(toCritical).isCloseTo(8.671, within(1e-3));
        assertThat(falling).isCloseTo(10.757, within(1e-3));
    }

    @Test
    void surfaceInStillAir() {
        assertThat(Drying.surfaceTemperature(20, 0.5, HC_STILL, HR, LEWIS, 0)).isCloseTo(15.29, within(0.005));
    }

    @ParameterizedTest
    @CsvSource({"1, 1.3230", "5, 6.6152"})
    void singlyAndInSpurs(double sheets, double hours) {
        double flux = Drying.surfaceFlux(20, 0.5, HC_STILL, HR, LEWIS, 0);
        assertThat(Drying.hungTime(0.1, 2.0, 0.09, sheets, 2, flux, 1) / HOUR).isCloseTo(hours, within(5e-4));
    }

    @Test
    void blotters() {
        BlotterDrying halved = new BlotterDrying(0.5, HOUR, 1);
        assertThat(halved.changes(2.0, 0.10, 0)).isEqualTo(5);
        // Five times halved, 2.0 comes to 0.0625.
        assertThat(halved.changes(2.0, 0.0625, 0)).isEqualTo(5);
        assertThat(BlotterDrying.keptOf(2.0, 0.0625, 0, 1, 5)).isCloseTo(0.5, within(1e-12));
        // In air that holds a tenth, blotters take nine tenths as much, and what is above that tenth comes down.
        assertThat(halved.keptAt(0.1)).isCloseTo(0.55, within(1e-12));
        assertThat(BlotterDrying.keptOf(2.1, 0.1 + 2 * Math.pow(0.55, 3), 0.1, 1, 3))
                .isCloseTo(0.5, within(1e-12));
        assertThat(halved.changes(2.1, 0.1 + 2 * Math.pow(0.55, 3) - 1e-9, 0.1)).isEqualTo(4);
        assertThat(halved.changes(2.1, 0.1, 0.1)).isInfinite();
        assertThat(Drying.blotters(1.9 * 0.02, 0.05, 1.0)).isEqualTo(1);
        assertThat(Drying.blotters(0.11, 0.05, 1.0)).isEqualTo(3);
    }
}
