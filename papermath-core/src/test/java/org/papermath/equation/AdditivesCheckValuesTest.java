package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.testing.CheckValues.relative;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class AdditivesCheckValuesTest {
    private static final double POUND = 0.45359237;
    private static final double OUNCE = POUND / 16;
    private static final double US_QUART = 0.946352946e-3;

    static List<Row> doses() {
        return CheckValues.read("retention_dose");
    }

    @ParameterizedTest
    @MethodSource("doses")
    void dosesAndRetention(Row row) {
        Map<String, Double> found = new LinkedHashMap<>();
        found.put("AKD 0.15 % on 454 g; 12 % emulsion", 1e3 * Additives.productMass(0.0015, 0.454, 0.12));
        found.put("29.5735 g of 12 % emulsion per lb", 100 * Additives.doseOfProduct(0.0295735, 0.12, POUND));
        found.put(
                "0.1 % aid on 1 lb from 3.5 g/473.176 mL",
                1e6 * Additives.solutionVolume(0.001, POUND, Additives.solutionStrength(3.5e-3, 473.176e-6)));
        found.put("dose 5 % Rp .90 R1 .97", 100 * Additives.load(0.05, 0.90, 0.97));
        found.put("clay 20 % .5/.95", 100 * Additives.load(0.20, 0.5, 0.95));
        found.put("first pass .50 and .02", VatBalance.firstPassRetention(0.02, 0.50));
        found.put("first pass .8 and .1", VatBalance.firstPassRetention(0.1, 0.8));
        found.put("fines ratio phi .1 Rf .5", VatBalance.steadyFinesRatio(0.1, 0.5, 0.995));
        found.put("sheets to 95 % Rf .35", VatBalance.sheetsToFraction(0.95, 0.35));
        found.put("sheets to 95 % Rf .5", VatBalance.sheetsToFraction(0.95, 0.5));
        found.put("crowding .5 % 5 mm .18", VatBalance.crowdingNumber(0.005, 5e-3, 0.18e-6));
        found.put("crowding .5 % 2 mm .19", VatBalance.crowdingNumber(0.005, 2e-3, 0.19e-6));
        found.put("crowding linter second cut .5 % 1.5 mm .19", VatBalance.crowdingNumber(0.005, 1.5e-3, 0.19e-6));
        found.put("crowding hemp pulped .5 % 5.8 mm .27", VatBalance.crowdingNumber(0.005, 5.8e-3, 0.27e-6));
        found.put("crowding hemp raw .5 % 20 mm .27", VatBalance.crowdingNumber(0.005, 20e-3, 0.27e-6));
        found.put("alum .13 on 26 g gelatine", 1e3 * Additives.productMass(0.13, 0.026, 1));
        found.put("clay share, sheet ash .10 own ash .001 residue .86", Additives.shareOfAsh(0.10, 0.001, 0.86));
        found.put("gelatine 1.75 oz per 2 qt", Additives.solutionStrength(1.75 * OUNCE, 2 * US_QUART) / 10);
        double expected = row.number("value");
        assertThat(found).containsKey(row.text("case"));
        assertThat(found.get(row.text("case"))).isCloseTo(expected, relative(expected, 1e-4));
    }

    @Test
    void loadShareDoseAndAshComeBack() {
        double dose = Additives.doseForShare(0.02, 0.60, 1);
        assertThat(dose).isCloseTo(0.0340136, relative(0.0340136, 1e-5));
        double load = Additives.load(dose, 0.60, 1);
        assertThat(load).isCloseTo(0.0204082, relative(0.0204082, 1e-5));
        assertThat(Additives.shareOfLoad(load)).isCloseTo(0.02, relative(0.02, 1e-12));
        assertThat(Additives.retentionOfLoad(load, dose, 1)).isCloseTo(0.60, relative(0.60, 1e-12));
        // What is not filler is fibre, and each leaves its own ash.
        double ash = 0.12 * 0.86 + 0.88 * 0.0025;
        assertThat(Additives.shareOfAsh(ash, 0.0025, 0.86)).isCloseTo(0.12, relative(0.12, 1e-12));
    }

    @Test
    void gelatineFallsWithBeatingInsideItsBounds() {
        // Line through the pick-up found on rag papers beaten 8 to 35 h in a mill, Sindall 1908, ch. IX.
        assertThat(pickUpPercent(8)).isCloseTo(6.21, within(0.005));
        assertThat(pickUpPercent(20)).isCloseTo(4.35, within(0.0061));
        assertThat(pickUpPercent(34)).isCloseTo(2.19, within(0.005));
        assertThat(pickUpPercent(1)).isEqualTo(7);
        assertThat(pickUpPercent(60)).isEqualTo(2);
    }

    private static double pickUpPercent(double hours) {
        return Additives.gelatinePickUp(hours, 7.45, 0.1547, 2, 7);
    }
}
