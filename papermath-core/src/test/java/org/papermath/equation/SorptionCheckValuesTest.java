package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.SorptionModel;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.MoistureRatio;
import org.papermath.testing.CheckValues;

class SorptionCheckValuesTest {
    /** Monolayer, C, K. */
    private static final Map<String, double[]> SETS = Map.of(
            "cotton", new double[] {0.0426, 10.14, 0.7468},
            "roving", new double[] {0.0488, 10.14, 0.7468},
            "bond", new double[] {0.0467, 11.96, 0.7345},
            "abaca", new double[] {0.0749, 7.88, 0.6306},
            "linen", new double[] {0.0467, 23.40, 0.6346},
            "linen_rows", new double[] {0.0595, 23.40, 0.6346},
            "kraft", new double[] {0.0560, 14.30, 0.7122},
            "wool", new double[] {0.1056, 9.43, 0.6462});

    static List<CheckValues.Row> isotherms() {
        return CheckValues.read("sorption");
    }

    static List<CheckValues.Row> regain() {
        return CheckValues.read("regain_handbook");
    }

    private static double gab(String set, double activity) {
        double[] s = SETS.get(set);
        return Sorption.gab(activity, s[0], s[1], s[2]);
    }

    @ParameterizedTest
    @MethodSource("isotherms")
    void isotherm(CheckValues.Row row) {
        String model = row.text("model");
        double activity = row.number("aw");
        double celsius = row.number("t_C");
        double ratio;
        if (model.startsWith("gab-")) {
            ratio = gab(model.substring(4), activity);
        } else if (model.equals("tryding")) {
            ratio = Sorption.tryding(activity, celsius + 273.15);
        } else {
            assertThat(model).isEqualTo("hh-wood");
            ratio = Sorption.hailwoodHorrobin(activity, celsius);
        }
        assertThat(100 * ratio).isCloseTo(row.number("moisture_percent_dry_basis"), within(0.0001));
    }

    @ParameterizedTest
    @MethodSource("regain")
    void regainTable(CheckValues.Row row) {
        for (int rh = 10; rh <= 90; rh += 10) {
            assertThat(100 * gab(row.text("gab_set"), rh / 100.0))
                    .as("%s at %s %%", row, rh)
                    .isCloseTo(row.number("rh" + rh + "_percent"), within(0.8));
        }
    }

    @Test
    void longBeatenKraft() {
        assertThat(100 * 1.06 * gab("kraft", 0.5)).isCloseTo(8.1840, within(0.0001));
    }

    /** Relative to the moisture held, the slope used for cotton at 50 % is that of the published isotherm. */
    @Test
    void temperatureSlope() {
        double cold = Sorption.tryding(0.5, 293.15);
        double warm = Sorption.tryding(0.5, 308.15);
        double slope = (warm - cold) / 15;
        assertThat(slope / cold * gab("cotton", 0.5)).isBetween(-0.0005, -0.0003);
        assertThat(Sorption.atTemperature(cold, slope, 35, 20)).isCloseTo(warm, within(1e-12));
        assertThat(Sorption.atTemperature(0.06, -0.0004, 30, 20)).isCloseTo(0.056, within(1e-12));
        assertThat(Sorption.desorption(0.06, 0.010, 0.5)).isCloseTo(0.070, within(1e-12));
    }

    /** 6.5 % wet basis, a common figure for air-dry paper, is met at these humidities. */
    @Test
    void humidityOfAirDryPaper() {
        assertThat(airDryAt("rag-paper")).isCloseTo(0.55, within(0.005));
        assertThat(airDryAt("cotton")).isCloseTo(0.61, within(0.006));
        assertThat(airDryAt("linen")).isCloseTo(0.59, within(0.006));
    }

    private static double airDryAt(String material) {
        return SorptionModel.from(Assumptions.standard(), Scope.of(material))
                .humidityFor(
                        MoistureRatio.gramsPerGram(Moisture.ratioOfWetBasis(0.065)),
                        Amounts.celsius(SorptionLaw.STATED_CELSIUS))
                .si();
    }
}
