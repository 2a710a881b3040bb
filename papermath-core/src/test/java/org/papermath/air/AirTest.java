package org.papermath.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.kilopascals;
import static org.papermath.quantity.Amounts.metres;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.testing.CheckValues;

class AirTest {
    private static final Air ROOM = Air.of(celsius(20), RelativeHumidity.percent(50));

    @Test
    void tellsTheStateOfARoom() {
        for (CheckValues.Row row : CheckValues.read("psychrometric_states")) {
            double humidity = row.number("rh");
            double temperature = row.number("t_C");
            if (humidity < 0.01 || temperature < 0 || temperature > 60) {
                continue;
            }
            Air air = Air.of(celsius(temperature), RelativeHumidity.fraction(humidity));
            assertThat(air.humidityRatio().si()).isCloseTo(row.number("humidity_ratio"), within(1e-6));
            assertThat(air.volumeOf(kilograms(2)).in("m3")).isCloseTo(2 * row.number("volume_m3_per_kg"), within(2e-5));
            assertThat(air.wetBulb().in("Cel")).isCloseTo(row.number("wet_bulb_C"), within(0.01));
            assertThat(air.dewPoint().in("Cel")).isCloseTo(row.number("dew_point_C"), within(0.01));
        }
        assertThat(ROOM.vapourPressure().in("Pa")).isCloseTo(1169.4, within(0.5));
        assertThat(ROOM.isSaturated()).isFalse();
    }

    @Test
    void knowsTheAirAtASurface() {
        assertThat(ROOM.relativeHumidityAtSurface(celsius(20)).in("%")).isCloseTo(50, within(1e-9));
        assertThat(ROOM.relativeHumidityAtSurface(celsius(40)).in("%")).isCloseTo(15.84, within(0.05));
        assertThat(ROOM.relativeHumidityAtSurface(celsius(5)).in("%")).isEqualTo(100);
        assertThat(ROOM.condensesOn(celsius(5))).isTrue();
        assertThat(ROOM.condensesOn(celsius(10))).isFalse();
    }

    @Test
    void goesUpTheMountain() {
        assertThat(ROOM.atAltitude(metres(1500)).pressure().in("kPa")).isCloseTo(84.56, within(0.02));
        assertThat(ROOM.atAltitude(metres(0))).isEqualTo(ROOM);
        assertThatThrownBy(() -> ROOM.atAltitude(metres(8000)))
                .isInstanceOf(Refused.class)
                .hasMessage("altitude: 8000 m given; it must be from 0 m to 5000 m. Check the unit and the decimal"
                        + " point.");
    }

    @Test
    void refusesAWetThermometerAboveTheDryOne() {
        assertThatThrownBy(() -> Air.ofWetBulb(celsius(18), celsius(19)))
                .isInstanceOf(Refused.class)
                .hasMessage("wet-bulb temperature: 19 °C given, but the dry thermometer stands at 18 °C; a wet"
                        + " thermometer never"
                        + " stands above it. See whether the two readings were changed over.")
                .satisfies(thrown -> assertThat(((Refused) thrown).code()).isEqualTo("air.wet-bulb-above-dry"));
        assertThatThrownBy(() -> Air.ofWetBulb(celsius(40), celsius(5)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("See that the sock is wet");
    }

    @Test
    void equalThermometersAreSaturatedAir() {
        assertThat(Air.ofWetBulb(celsius(15), celsius(15)).humidity().in("%")).isCloseTo(100, within(1e-9));
        Air full = Air.of(celsius(15), RelativeHumidity.percent(100));
        assertThat(full.isSaturated()).isTrue();
        assertThat(full.wetBulb()).isEqualTo(full.temperature());
        assertThat(full.dewPoint()).isEqualTo(full.temperature());
    }

    @Property(tries = 300, seed = "2026")
    void aPsychrometerGivesTheAirBack(
            @ForAll @Scale(6) @DoubleRange(min = 5, max = 60) double temperature,
            @ForAll @Scale(6) @DoubleRange(min = 20, max = 100) double humidity,
            @ForAll @Scale(6) @DoubleRange(min = 50, max = 110) double pressure) {
        Air air =
                Air.of(celsius(temperature), RelativeHumidity.percent(humidity)).at(kilopascals(pressure));
        if (air.wetBulb().in("Cel") >= 0) {
            Air back = Air.ofWetBulb(air.temperature(), air.wetBulb(), air.pressure());
            assertThat(back.humidity().in("%")).isCloseTo(humidity, within(1e-6));
        }
        assertThat(air.dewPoint().si()).isLessThanOrEqualTo(air.wetBulb().si() + 1e-9);
        assertThat(air.wetBulb().si()).isLessThanOrEqualTo(air.temperature().si() + 1e-9);
    }

    @Property(tries = 300, seed = "2026")
    void everyStateHasItsNumbers(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 60) double temperature,
            @ForAll @Scale(6) @DoubleRange(min = 1, max = 100) double humidity,
            @ForAll @Scale(6) @DoubleRange(min = 50, max = 110) double pressure) {
        Air air =
                Air.of(celsius(temperature), RelativeHumidity.percent(humidity)).at(kilopascals(pressure));
        assertThat(air.humidityRatio().si()).isFinite().isPositive();
        assertThat(air.volumeOf(kilograms(1)).si()).isFinite().isBetween(0.6, 3.3);
        assertThat(air.dewPoint().si()).isFinite();
        assertThat(air.wetBulb().si()).isFinite();
    }
}
