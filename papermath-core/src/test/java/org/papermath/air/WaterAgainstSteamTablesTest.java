package org.papermath.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import com.hummeling.if97.IF97;
import com.hummeling.if97.OutOfRangeException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.equation.Psychrometrics;
import org.papermath.equation.WaterProperties;
import org.papermath.quantity.Amounts;

/** Water against an independent steam-table library (IAPWS-IF97 and the IAPWS viscosity of 2008). */
class WaterAgainstSteamTablesTest {
    private static final double ATMOSPHERE = 101325;
    private static final IF97 STEAM = new IF97(IF97.UnitSystem.SI);

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1, 2, 3, 4, 5, 7.5, 10, 12.5, 15, 17.5, 20, 22.5, 25, 27.5, 30, 32.5, 35, 37.5, 40})
    void density(double celsius) throws OutOfRangeException {
        double steam = STEAM.densityPT(ATMOSPHERE, celsius + 273.15);
        assertThat(Water.at(Amounts.celsius(celsius)).density().in("kg/m3")).isCloseTo(steam, within(0.01));
        assertThat(WaterProperties.densityKell(celsius)).isCloseTo(steam, within(0.01));
    }

    /** Exchanging two digits of Kell's denominator, as a reprint does, is a hundred times further off than the two are apart. */
    @Test
    void theMisprintedDensityIsNotOurs() throws OutOfRangeException {
        double steam = STEAM.densityPT(ATMOSPHERE, 293.15);
        double misprinted = WaterProperties.densityKell(20) * (1 + 16.879850e-3 * 20) / (1 + 16.897850e-3 * 20);
        assertThat(misprinted).isCloseTo(997.936, within(0.001));
        assertThat(steam - misprinted).isGreaterThan(0.25);
        assertThat(Water.at(Amounts.celsius(20)).density().in("kg/m3")).isCloseTo(steam, within(0.003));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 5, 10, 15, 20, 25, 30, 35, 40})
    void viscosity(double celsius) throws OutOfRangeException {
        double steam = STEAM.dynamicViscosityPT(ATMOSPHERE, celsius + 273.15);
        // Good to half a per cent from 10 °C on, to 2 % near the freezing point.
        double percent = celsius >= 10 ? 0.5 : 2.1;
        assertThat(Water.at(Amounts.celsius(celsius)).viscosity().si()).isCloseTo(steam, withinPercentage(percent));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60})
    void saturation(double celsius) throws OutOfRangeException {
        double steam = STEAM.saturationPressureT(celsius + 273.15);
        assertThat(Psychrometrics.saturationPressure(celsius)).isCloseTo(steam, withinPercentage(0.03));
    }
}
