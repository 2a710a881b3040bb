package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;

class WetWebCheckValuesTest {
    static List<CheckValues.Row> rows() {
        return CheckValues.read("wet_thickness");
    }

    @ParameterizedTest
    @MethodSource("rows")
    void thickness(CheckValues.Row row) {
        double ratio = Pressing.ratioOfSolids(row.number("solids"));
        assertThat(1000 * WetWeb.thickness(row.number("W_kg_per_m2"), ratio, 1500, 1000))
                .isCloseTo(row.number("thickness_mm"), withinPercentage(1e-4));
    }

    /** Laboratory handsheets lost 28 % of their thickness from the press to dry. */
    @Test
    void thinningOnDrying() {
        double wet = WetWeb.thickness(0.1, Pressing.ratioOfSolids(0.35), 1500, 1000);
        double dry = Density.caliper(0.1065, 600);
        assertThat(dry / wet - 1).isCloseTo(-0.2967, within(1e-4)).isCloseTo(-0.28, within(0.02));
    }

    @Test
    void postOfAHundred() {
        assertThat(WetWeb.postHeight(100, 0.0022, 0.0003)).isCloseTo(0.2522, within(1e-9));
        assertThat(WetWeb.layersWithin(0.2522, 0.0022, 0.0003)).isCloseTo(100, within(1e-9));
        assertThat(WetWeb.layersWithin(0.002, 0.0022, 0.0003)).isZero();
    }

    /** What a felt maker's chart of wool felts says they hold more than. */
    @Test
    void soakedFelts() {
        assertThat(WetWeb.soakedFelt(0.8, 340, 1310)).isCloseTo(1.75, within(0.02));
        assertThat(WetWeb.soakedFelt(0.8, 260, 1310)).isCloseTo(2.47, within(0.05));
        assertThat(WetWeb.soakedFelt(0.8, 180, 1310)).isCloseTo(3.83, within(0.05));
        assertThat(WetWeb.soakedFelt(0.8, 1400, 1310)).isZero();
        assertThat(WetWeb.feltThickness(0.81, 255.5)).isCloseTo(0.00317, within(1e-5));
    }

    /** Litres a kilogram of paper gives up on the way from the mould to dry. */
    @Test
    void waterOfAKilogram() {
        double couched = Pressing.ratioOfSolids(0.15);
        double pressed = Pressing.ratioOfSolids(1 / 3.0);
        assertThat(couched).isCloseTo(5.667, within(5e-4));
        assertThat(WetWeb.waterOut(1, couched, pressed)).isCloseTo(3.667, within(5e-4));
        assertThat(WetWeb.waterOut(1, pressed, 0.07)).isCloseTo(1.930, within(5e-4));
        assertThat(WetWeb.feltWater(10, 0.5, 0.7, 2.0)).isCloseTo(-6.5, within(1e-12));
    }
}
