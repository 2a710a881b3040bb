package org.papermath.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.equation.Psychrometrics;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.testing.CheckValues;

/** Humid air over a grid of 0 to 60 °C and 5 to 95 %, against an open library run once and kept as a table. */
class AirAgainstPsychrometricLibraryTest {
    static List<CheckValues.Row> states() {
        return CheckValues.read("psychrometric_grid");
    }

    @ParameterizedTest
    @MethodSource("states")
    void agrees(CheckValues.Row row) {
        double celsius = row.number("t_C");
        Air air = Air.of(Amounts.celsius(celsius), RelativeHumidity.fraction(row.number("rh")));
        assertThat(Psychrometrics.saturationPressure(celsius))
                .isCloseTo(row.number("saturation_Pa"), withinPercentage(0.03));
        assertThat(air.vapourPressure().in("Pa"))
                .isCloseTo(row.number("rh") * row.number("saturation_Pa"), withinPercentage(0.03));
        assertThat(air.humidityRatio().si()).isCloseTo(row.number("humidity_ratio"), withinPercentage(0.03));
        assertThat(air.wetBulb().in("Cel")).isCloseTo(row.number("wet_bulb_C"), within(0.02));
        assertThat(air.dewPoint().in("Cel")).isCloseTo(row.number("dew_point_C"), within(0.02));
    }

    @Test
    void theWholeGridIsThere() {
        assertThat(states()).hasSize(13 * 19);
        assertThat(states().stream().filter(row -> row.number("dew_point_C") < 0))
                .hasSizeGreaterThan(50);
        assertThat(states().stream().filter(row -> row.number("wet_bulb_C") < 0))
                .hasSizeGreaterThan(20);
    }
}
