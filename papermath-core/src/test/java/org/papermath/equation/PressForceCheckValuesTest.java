package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;

class PressForceCheckValuesTest {
    private static final double SHORT_TON = 2000 * 0.45359237 * 9.80665;
    private static final double METRIC_TON = 9806.65;
    private static final double INCH = 0.0254;
    private static final double POUND_FORCE = 0.45359237 * 9.80665;
    private static final double PSI = POUND_FORCE / (INCH * INCH);

    static List<CheckValues.Row> presses() {
        return CheckValues.read("press_force");
    }

    static List<CheckValues.Row> screws() {
        return CheckValues.read("screw");
    }

    @ParameterizedTest
    @MethodSource("presses")
    void pressure(CheckValues.Row row) {
        double area = row.number("area_m2");
        double force = row.number("force_N");
        double pressure = row.number("pressure_Pa");
        assertThat(force(row.text("case"))).isCloseTo(force, withinPercentage(1e-3));
        assertThat(PressForce.pressure(force, area)).isCloseTo(pressure, withinPercentage(1e-3));
        assertThat(PressForce.force(pressure, area)).isCloseTo(force, withinPercentage(1e-3));
        if (row.has("published")) {
            double psi = Double.parseDouble(row.text("published").replace(" psi", ""));
            assertThat(PressForce.pressure(force, area) / PSI).isCloseTo(psi, within(0.5));
        }
    }

    /** The force a case names: so many tons of a kind, or a ram and its gauge pressure. */
    private static double force(String name) {
        String[] words = name.toLowerCase(Locale.ROOT).split(" ");
        if (words[0].equals("ram")) {
            return PressForce.ramForce(Double.parseDouble(words[3]) * 1e6, Double.parseDouble(words[1]) / 1000, 0);
        }
        return Double.parseDouble(words[0]) * (words[1].equals("short") ? SHORT_TON : METRIC_TON);
    }

    @ParameterizedTest
    @MethodSource("screws")
    void screw(CheckValues.Row row) {
        double force = row.number("force_N");
        double lead = row.number("lead_m");
        double mean = row.number("mean_dia_m");
        double f = row.number("f");
        double collarFriction = row.number("f_collar");
        double collar = row.number("collar_dia_m");
        double up = PressForce.screwRaisingTorque(force, lead, mean, f, 0, collarFriction, collar);
        double down = PressForce.screwLoweringTorque(force, lead, mean, f, 0, collarFriction, collar);
        assertThat(up).isCloseTo(row.number("torque_up_Nm"), withinPercentage(1e-3));
        assertThat(down).isCloseTo(row.number("torque_down_Nm"), withinPercentage(1e-3));
        double efficiency = PressForce.screwEfficiency(force, lead, up);
        assertThat(efficiency).isCloseTo(row.number("efficiency"), within(1e-5));
        double threadAlone = PressForce.screwLoweringTorque(force, lead, mean, f, 0, 0, 0);
        assertThat(PressForce.isSelfLocking(lead, mean, f, 0)).isEqualTo(threadAlone > 0);
        assertThat(efficiency).isLessThan(0.5);
        assertThat(PressForce.screwForce(up, lead, mean, f, 0, collarFriction, collar))
                .isCloseTo(force, withinPercentage(1e-10));
        String published = row.text("published");
        if (published.endsWith("lbf in up")) {
            double printed = Double.parseDouble(published.split(" ")[0]);
            assertThat(up / (POUND_FORCE * INCH)).isCloseTo(printed, withinPercentage(0.1));
        } else if (!published.isEmpty()) {
            String[] printed = published.split(" / ");
            assertThat(up).isCloseTo(Double.parseDouble(printed[0]), withinPercentage(0.1));
            assertThat(down).isCloseTo(Double.parseDouble(printed[1]), withinPercentage(0.1));
        }
    }

    @Test
    void leverOfAnOldVatMill() {
        double pied = 0.32484;
        double shorter = PressForce.leverTorque(4, 250, 10 * pied);
        double longer = PressForce.leverTorque(4, 250, 12 * pied);
        assertThat(shorter).isCloseTo(3248.4, within(0.05));
        assertThat(longer).isCloseTo(3898.1, within(0.05));
        double low = PressForce.screwForce(shorter, 0.06, 0.20, 0.2, 0, 0.2, 0.08);
        double high = PressForce.screwForce(longer, 0.06, 0.20, 0.2, 0, 0.2, 0.08);
        assertThat(low).isCloseTo(85.20e3, within(5.0));
        assertThat(high).isCloseTo(102.25e3, within(10.0));
        double area = PressForce.loadedArea(0.433 * 0.338, 0.5);
        assertThat(PressForce.pressure(low, area)).isCloseTo(0.5822e6, within(100.0));
        assertThat(PressForce.pressure(high, area)).isCloseTo(0.6986e6, within(100.0));
    }

    @Test
    void bucketOnALetterSheet() {
        double area = 8.5 * 11 * INCH * INCH;
        assertThat(PressForce.pressure(PressForce.weightForce(18.927), area)).isCloseTo(3077.0, within(0.1));
    }
}
