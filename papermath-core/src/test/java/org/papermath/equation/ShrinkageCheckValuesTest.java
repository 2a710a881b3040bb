package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.Map;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.AreaShrinkage;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.testing.CheckValues;

class ShrinkageCheckValuesTest {
    private static final double DECKLE_AREA = 26384;
    /** The trial accelerates after this many mill hours, which no saturating form follows. */
    private static final double LAST_FITTED_HOUR = 31;

    static List<CheckValues.Row> cases() {
        return CheckValues.read("shrinkage");
    }

    static List<CheckValues.Row> ragSeries() {
        return CheckValues.read("shrinkage_rag_1908");
    }

    static List<CheckValues.Row> ragTrial() {
        return CheckValues.read("rag_trial_1908");
    }

    static List<CheckValues.Row> movements() {
        return CheckValues.read("hygroexpansion");
    }

    private static double computed(String name) {
        double flaxShort = Shrinkage.ofLengths(12, 9.5);
        double flaxLong = Shrinkage.ofLengths(18, 13.5);
        org.papermath.shape.Shrinkage flax = org.papermath.shape.Shrinkage.measured(
                Amounts.inches(12), Amounts.inches(18), Amounts.inches(9.5), Amounts.inches(13.5));
        Map<String, Double> values = Map.ofEntries(
                Map.entry("flax 12x18 to 9.5x13.5 short side", flaxShort),
                Map.entry("flax long side", flaxLong),
                Map.entry("flax area lost", flax.area().si()),
                Map.entry("flax grammage factor", 1 / Shrinkage.formedGrammage(1, 0, flaxShort, flaxLong)),
                Map.entry("flax restraint-dried", Shrinkage.step(0.229, 0.8, 2, 0, 1)),
                Map.entry("mould for 11 in s .08", Shrinkage.wetLength(11, 0.08)),
                Map.entry("mould for 15 in s .08", Shrinkage.wetLength(15, 0.08)),
                Map.entry(
                        "od on mould for 120 g/m2 6.5 % s .08",
                        Shrinkage.formedGrammage(120, Moisture.ratioOfWetBasis(0.065), 0.08, 0.08)),
                Map.entry("stretch to undo .25", Shrinkage.undoingStretch(0.25)),
                Map.entry("linear from area quarter", sideOfArea(0.25)),
                Map.entry("WRV 1.5", Shrinkage.freeByRetention(1.5, 0.065, 0.65, 0, 0.35)),
                Map.entry("WRV 3.0", Shrinkage.freeByRetention(3.0, 0.065, 0.65, 0, 0.35)),
                Map.entry(
                        "restraint then loose",
                        Shrinkage.alongPath(0.10, 0.80, 2.0, new double[] {0.25, 0.065}, new double[] {0.97, 0})),
                Map.entry("spur", Shrinkage.step(0.04, 0.80, 2.0, 0.065, 0.4)));
        assertThat(values).containsKey(name);
        return values.get(name);
    }

    /** What each side lost where only the area is known. */
    private static double sideOfArea(double area) {
        return org.papermath.shape.Shrinkage.ofArea(AreaShrinkage.fraction(area))
                .along()
                .si();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void size(CheckValues.Row row) {
        double expected = row.number("value");
        assertThat(computed(row.text("case"))).isCloseTo(expected, within(1e-5 * Math.max(Math.abs(expected), 0.1)));
    }

    @ParameterizedTest
    @MethodSource("ragSeries")
    void ragSeries(CheckValues.Row row) {
        double area = 1 - row.number("area_mm2") / DECKLE_AREA;
        assertThat(100 * area).isCloseTo(row.number("area_loss_percent"), within(0.2));
        double linear = sideOfArea(area);
        assertThat(100 * linear).isCloseTo(row.number("linear_percent"), withinPercentage(0.01));
        double hours = row.number("mill_hours");
        double fit = 100 * free(0.12, 34.33, hours);
        assertThat(fit).isCloseTo(row.number("fit_percent"), within(0.01));
        if (hours > LAST_FITTED_HOUR) {
            assertThat(100 * linear - fit).isGreaterThan(1.0);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.12, 34.33, 0.2, 0.3015", "0.185, 60.15, 0.3, 0.2512", "0.09, 22.40, 0.2, 0.4412"})
    void ragCalibration(double beaten, double tau, double tolerance, double rms) {
        double found = new BrentOptimizer(1e-10, 1e-10)
                .optimize(
                        new MaxEval(500),
                        GoalType.MINIMIZE,
                        new SearchInterval(5, 200),
                        new UnivariateObjectiveFunction(x -> sumOfSquares(beaten, x)))
                .getPoint();
        assertThat(found).isCloseTo(tau, within(tolerance));
        assertThat(Math.sqrt(sumOfSquares(beaten, found) / 14)).isCloseTo(rms, within(0.01));
    }

    /** Rag in a beater that works with a rate of 1/tau. */
    private static double free(double limit, double tau, double hours) {
        return new ShrinkageLaw.Ends(0, limit).free(new BeatingLaw(14, 75, 1 / tau, 1).state(hours));
    }

    /** Squared deviations, in points, of the fitted rows. */
    private static double sumOfSquares(double beaten, double tau) {
        List<CheckValues.Row> rows = ragSeries().stream()
                .filter(row -> row.number("mill_hours") <= LAST_FITTED_HOUR)
                .toList();
        assertThat(rows).hasSize(14);
        return rows.stream()
                .mapToDouble(row -> {
                    double linear = sideOfArea(1 - row.number("area_mm2") / DECKLE_AREA);
                    double fit = free(beaten, tau, row.number("mill_hours"));
                    return Math.pow(100 * (linear - fit), 2);
                })
                .sum();
    }

    /** Brought back to the deckle by the area rule, sheets of one trial weigh the same. */
    @ParameterizedTest
    @MethodSource("ragTrial")
    void ragGrammageOnTheDeckle(CheckValues.Row row) {
        double linear = sideOfArea(1 - row.number("area_ratio"));
        double deckle = Shrinkage.formedGrammage(row.number("grammage_g_per_m2"), 0, linear, linear);
        assertThat(deckle)
                .isCloseTo(row.number("grammage_on_deckle_g_per_m2"), withinPercentage(0.01))
                .isCloseTo(90.06, withinPercentage(3.0));
        // One grammage was printed for a pair of hours, so its area ratio is the mean of the two areas.
        double hours = row.number("mill_hours");
        double first = hours - (hours == 10 || hours == 21 || hours == 35 ? 2 : 0);
        double mean = ragSeries().stream()
                .filter(r -> r.number("mill_hours") == first || r.number("mill_hours") == first + 2)
                .mapToDouble(r -> r.number("area_mm2") / DECKLE_AREA)
                .average()
                .orElseThrow();
        assertThat(mean).isCloseTo(row.number("area_ratio"), within(1e-5));
    }

    @ParameterizedTest
    @MethodSource("movements")
    void hygroexpansion(CheckValues.Row row) {
        double beta = Shrinkage.hygroexpansionCoefficient(row.number("drying_shrinkage_percent") / 100, 0.05, 1.2);
        assertThat(100 * Shrinkage.hygroexpansion(beta, row.number("dM_points") / 100))
                .isCloseTo(row.number("strain_percent"), withinPercentage(1e-3));
    }

    @Test
    void twoRetentionPoints() {
        double slope = Shrinkage.retentionSlope(1.0, 0.02, 2.2, 0.10);
        assertThat(slope).isCloseTo(0.06667, within(5e-6));
        assertThat(Shrinkage.retentionIntercept(1.0, 0.02, slope)).isCloseTo(0.7, within(1e-12));
        assertThat(Shrinkage.retentionIntercept(2.2, 0.10, slope)).isCloseTo(0.7, within(1e-12));
    }

    @Test
    void stretchAndQuarters() {
        assertThat(Shrinkage.undoingStretch(0.10)).isCloseTo(0.11111, within(5e-6));
        assertThat(org.papermath.shape.Shrinkage.across(LinearShrinkage.percent(25))
                        .along(LinearShrinkage.percent(25))
                        .area()
                        .si())
                .isCloseTo(0.4375, within(1e-12));
    }

    /** A cotton sheet dried under restraint, 760 mm, from 50 to 65 % relative humidity. */
    @Test
    void cottonSheetInDamperAir() {
        double change = Sorption.gab(0.65, 0.0426, 10.14, 0.7468) - Sorption.gab(0.50, 0.0426, 10.14, 0.7468);
        assertThat(100 * change).isCloseTo(1.6618, within(1e-4));
        double beta = Shrinkage.hygroexpansionCoefficient(0, 0.05, 1.2);
        assertThat(760 * Shrinkage.hygroexpansion(beta, change)).isCloseTo(0.631, within(1e-3));
        double shrunk = Shrinkage.hygroexpansionCoefficient(0.10, 0.05, 1.2);
        assertThat(760 * Shrinkage.hygroexpansion(shrunk, 0.03)).isCloseTo(3.876, within(1e-9));
    }
}
