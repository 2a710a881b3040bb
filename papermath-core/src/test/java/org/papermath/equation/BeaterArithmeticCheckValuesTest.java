package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Amounts;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class BeaterArithmeticCheckValuesTest {
    private static final double INCH = 0.0254;
    private static final double JOULES_PER_KG = 3600; // of one kWh a tonne
    private static final double HORSE_POWER = 745.69987158227;
    private static final double DAY = 86400;
    private static final double SHORT_TON = 907.18474;

    static List<Row> charges() {
        return CheckValues.read("beater_charge");
    }

    static List<Row> mechanics() {
        return CheckValues.read("beater_mechanics");
    }

    @ParameterizedTest
    @MethodSource("charges")
    void publishedCharges(Row row) {
        double fibre = row.number("fibre_kg");
        double water = row.number("water_kg");
        double expected = row.number("consistency_kg_per_kg");
        double found = BeaterArithmetic.consistency(fibre, water);
        assertThat(found).isCloseTo(expected, relative(expected, 1e-4));
        assertThat(BeaterArithmetic.waterForOvenDry(expected, fibre)).isCloseTo(water, relative(water, 1e-4));
        if (row.has("published")) {
            double nominal = Double.parseDouble(row.text("published").replace(" %", "")) / 100;
            assertThat(found).isCloseTo(nominal, relative(nominal, 0.05));
        }
    }

    @ParameterizedTest
    @MethodSource("mechanics")
    void speedAndWork(Row row) {
        double valley = BeaterArithmetic.edgeLengthPerSecond(32, 7, 0.152, 500 / 60.0);
        double drum = BeaterArithmetic.edgeLengthPerSecond(24, 8, 8 * INCH, 300 / 60.0);
        Map<String, Double> found = new LinkedHashMap<>();
        found.put("valley_edge_length_32x7x0.152_500rpm", valley);
        found.put("valley_tip_speed_0.192", BeaterArithmetic.tipSpeed(0.192, 500 / 60.0));
        found.put("valley_SEL_100W", BeaterArithmetic.edgeLoad(100, valley));
        found.put("valley_edge_per_kg_40min_0.36kg", edgePerMass(valley, 2400, 0.36));
        found.put("valley_SRE_40min", BeaterArithmetic.specificEnergy(100, 2400, 0.36) / JOULES_PER_KG);
        found.put("valley_SRE_30min", BeaterArithmetic.specificEnergy(100, 1800, 0.36) / JOULES_PER_KG);
        found.put("cuts_60x20x150", 60 * BeaterArithmetic.crossingsPerSecond(60, 20, 150 / 60.0));
        found.put("cuts_40x12x120", 60 * BeaterArithmetic.crossingsPerSecond(40, 12, 120 / 60.0));
        found.put("drum_24x8x8in_300rpm", drum);
        found.put(
                "scaled_time_30min_0.36_to_0.68kg",
                BeaterArithmetic.timeAtSameEdgePerMass(1800, 0.36, valley, 0.68, drum) / 60);
        found.put("hp_day_per_tonne", BeaterArithmetic.specificEnergy(HORSE_POWER, DAY, 1000) / JOULES_PER_KG);
        found.put("hp_day_per_short_ton", BeaterArithmetic.specificEnergy(HORSE_POWER, DAY, SHORT_TON) / JOULES_PER_KG);
        double refinerNet = BeaterArithmetic.netPower(200e3, 50e3);
        found.put("refiner_200kW_50idle_3tph", BeaterArithmetic.specificEnergy(refinerNet, 3600, 3000) / JOULES_PER_KG);
        found.put("refiner_SEL_CEL_75km_s", BeaterArithmetic.edgeLoad(refinerNet, 75e3));
        double expected = row.number("value");
        assertThat(found).containsKey(row.text("case"));
        assertThat(found.get(row.text("case"))).isCloseTo(expected, relative(expected, 1e-4));
    }

    @Test
    void laboratorySheets() {
        assertLab("24_g_in_2_L_percent", gramsInALitre(24, 2) / 10);
        assertLab("to_0.30_percent_L", 1e3 * BeaterArithmetic.stockVolume(0.024, 3));
        double sheet = BeaterArithmetic.ovenDryInVolume(3, 400e-6);
        assertLab("400_mL_at_0.30_percent_g", 1e3 * sheet);
        assertLab("1.2_g_on_200_cm2_g_per_m2", 1e3 * sheet / 200e-4);
        assertLab("sheets_from_24_g", 0.024 / sheet);
        assertLab("valley_360_g_in_23_L_percent", gramsInALitre(360, 23) / 10);
    }

    @Test
    void energyIsEdgeLoadTimesEdgePerMass() {
        double edge = BeaterArithmetic.edgeLengthPerSecond(30, 6, 0.2, 4);
        double energy = BeaterArithmetic.specificEnergy(350, 5400, 0.9);
        assertThat(BeaterArithmetic.edgeLoad(350, edge) * edgePerMass(edge, 5400, 0.9))
                .isCloseTo(energy, relative(energy, 1e-12));
        double longer = BeaterArithmetic.timeAtSameSpecificEnergy(5400, 0.9, 350, 1.2, 200);
        assertThat(BeaterArithmetic.specificEnergy(200, longer, 1.2)).isCloseTo(energy, relative(energy, 1e-12));
    }

    /** Bar edge spent on a kilogram, m/kg: the seconds it takes where one metre is crossed in a second. */
    private static double edgePerMass(double edgeLengthPerSecond, double time, double ovenDry) {
        return BeaterArithmetic.timeAtSameEdgePerMass(time, ovenDry, edgeLengthPerSecond, 1, 1);
    }

    private static double gramsInALitre(double grams, double litres) {
        return Pulp.ofOvenDry(Amounts.grams(grams))
                .inStock(Amounts.litres(litres))
                .fibrePerLitreOfStock()
                .in("g/L");
    }

    private static void assertLab(String quantity, double found) {
        double expected = CheckValues.row("lab_sheets", "quantity", quantity).number("value");
        assertThat(found).as(quantity).isCloseTo(expected, relative(expected, 1e-5));
    }
}
