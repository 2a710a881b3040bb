package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;

class DensityCheckValuesTest {
    private static final Pattern RAG = Pattern.compile("rag 450 to 600, tau 5 studio h, ([0-9.]+) h");
    private static final Pattern BEATING = Pattern.compile("beating ([0-9.]+) h.*");

    private static final DensityLaw.Pressing PRESSING = new DensityLaw.Pressing(0.10, 0.4e6, 5e4, 1e6);

    static List<CheckValues.Row> densities() {
        return CheckValues.read("density");
    }

    static List<CheckValues.Row> ragTrial() {
        return CheckValues.read("rag_trial_1908");
    }

    @ParameterizedTest
    @MethodSource("densities")
    void density(CheckValues.Row row) {
        double reference = row.number("rho_ref_kg_per_m3");
        double expected = row.number("rho_kg_per_m3");
        String name = row.text("case");
        Matcher rag = RAG.matcher(name);
        Matcher beating = BEATING.matcher(name);
        double pressure = PRESSING.reference();
        double hours = 0;
        double beaten = 1000;
        double timeConstant = 3;
        if (name.equals("pressure")) {
            pressure = row.number("pressure_Pa");
        } else if (rag.matches()) {
            hours = Double.parseDouble(rag.group(1));
            beaten = 600;
            timeConstant = 5;
        } else {
            assertThat(beating.matches()).as(name).isTrue();
            hours = Double.parseDouble(beating.group(1));
        }
        double state = -Math.expm1(-hours / timeConstant);
        double density = new DensityLaw.Beaten(reference, beaten, state, PRESSING).uncapped(pressure);
        assertThat(density).isCloseTo(expected, withinPercentage(1e-3));
        // One such sheet, measured, puts a table that stands a fifth too low right.
        DensityLaw.Beaten low = new DensityLaw.Beaten(0.8 * reference, 0.8 * beaten, state, PRESSING);
        assertThat(low.measured(expected, pressure, 1500).unbeaten()).isCloseTo(reference, withinPercentage(1e-3));
        assertThat(1000 * Density.caliper(0.1, density)).isCloseTo(row.number("caliper_100gsm_mm"), within(1e-6));
    }

    @ParameterizedTest
    @MethodSource("ragTrial")
    void ragTrial(CheckValues.Row row) {
        double grammage = row.number("grammage_g_per_m2") / 1000;
        double measured = Density.of(grammage, row.number("thickness_mm") / 1000);
        assertThat(measured).isCloseTo(row.number("density_kg_per_m3"), withinPercentage(0.1));
        assertThat(Density.caliper(grammage, measured) * 1000).isCloseTo(row.number("thickness_mm"), within(1e-9));
        // The table's rag at the middle of each pair of hours, a mill hour worked as 0.18 of a studio's.
        double state = new BeatingLaw(14, 75, 0.16, 1).state(0.18 * middleOfPair(row.number("mill_hours")));
        assertThat(new DensityLaw.Beaten(482, 645, state, PRESSING).uncapped(PRESSING.reference()))
                .isCloseTo(measured, withinPercentage(3.0));
    }

    private static double middleOfPair(double hours) {
        return hours < 15 ? 9 : hours < 30 ? 20 : 34;
    }

    @Test
    void caliperAndDensity() {
        assertThat(1000 * Density.caliper(0.075, 550)).isCloseTo(0.13636364, within(1e-8));
        assertThat(Density.of(0.160, 232e-6)).isCloseTo(689.6552, within(1e-4));
    }

    /** The straight line of 46 thermomechanical sheets of one mill. */
    @Test
    void freeness() {
        assertThat(Density.ofFreeness(100, 410.2, -0.2910)).isCloseTo(381.1, within(1e-9));
    }
}
