package org.papermath.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.mm;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.record.SheetControl.Verdict;

class SheetControlTest {
    private static SheetQuality<Mass> series(double... weights) {
        return SheetQuality.of(
                Kinds.MASS, Arrays.stream(weights).mapToObj(Amounts::grams).toList());
    }

    private static Amount<Share> percent(double value) {
        return Kinds.SHARE.of(value, "%");
    }

    private static SheetControl<Mass> around(double wanted, double tolerance, SheetQuality<Mass> series) {
        return OrderTolerance.around(grams(wanted), percent(tolerance)).judge(series);
    }

    /** Mean 10.58 g, deviation 0.2864 g, five sheets; shares and points by SciPy 1.17.1. */
    @Test
    void insideByTheMean() {
        SheetControl<Mass> control = around(10.5, 5, series(10.9, 10.2, 10.8, 10.4, 10.6));
        assertThat(control.verdict()).isEqualTo(Verdict.INSIDE);
        assertThat(control.moreToMeasure()).isEqualTo(OptionalInt.of(0));
        double half = 2.131846786326649 * 0.2863564212655271 / Math.sqrt(5);
        assertThat(control.mean().low().in("g")).isCloseTo(10.58 - half, within(1e-9));
        assertThat(control.mean().high().in("g")).isCloseTo(10.58 + half, within(1e-9));
        assertThat(control.byCount().likely().in("%")).isEqualTo(100);
        assertThat(control.byCount().low().si()).isCloseTo(Math.pow(0.05, 0.2), within(1e-9));
        assertThat(control.byScatter().likely().si()).isCloseTo(0.9225976600044039, within(1e-9));
        assertThat(control)
                .hasToString("inside: the mean lies within 9.975 g to 11.03 g; mean 10.58 g, 10.31 g to 10.85 g; 5 of 5"
                        + " sheets inside (100 %, 54.93 % to 100 %), by their scatter 92.26 %, 50.16 % to 99.53 %");
    }

    @Test
    void outsideAndUntold() {
        SheetControl<Mass> outside = around(10, 3, series(10.9, 10.5, 10.8, 10.4, 10.6));
        assertThat(outside.verdict()).isEqualTo(Verdict.OUTSIDE);
        assertThat(outside.toString())
                .startsWith(
                        "outside: the mean is 3.301 % too high and does not lie within 9.7 g to 10.3 g; mean 10.64 g");
        assertThat(around(12, 3, series(10.9, 10.5, 10.8, 10.4, 10.6)).toString())
                .startsWith("outside: the mean is 8.591 % too low and");
        SheetControl<Mass> untold = around(10.5, 2, series(10.9, 10.2, 10.8, 10.4, 10.6));
        assertThat(untold.verdict()).isEqualTo(Verdict.UNTOLD);
        int more = untold.moreToMeasure().orElseThrow();
        assertThat(untold.toString())
                .startsWith("measure " + more + " more: 5 sheets do not tell whether the mean lies within");
        // The half band of n sheets with this scatter first fits into what is left to the limit.
        double room = 10.5 * 1.02 - 10.58;
        assertThat(half(5 + more)).isLessThanOrEqualTo(room);
        assertThat(half(4 + more)).isGreaterThan(room);
        SheetControl<Mass> edge = series(10, 10.5, 10.3, 9.9, 10.3).within(grams(10.2), grams(12));
        assertThat(edge.moreToMeasure()).isEmpty();
        assertThat(edge.toString()).startsWith("too near a limit to be measured out: 5 sheets do not tell whether");
    }

    private static double half(int n) {
        return org.apache.commons.statistics.distribution.TDistribution.of(n - 1.0)
                        .inverseCumulativeProbability(0.95)
                * 0.2863564212655271
                / Math.sqrt(n);
    }

    @Test
    void shareOfTheSheets() {
        SheetQuality<Mass> series = series(10.9, 10.2, 10.8, 10.4, 10.6, 10.5, 10.7, 10.6);
        SheetControl<Mass> wide = around(10.6, 15, series);
        assertThat(wide.verdict(percent(95))).isEqualTo(Verdict.INSIDE);
        assertThat(wide.sentence(percent(95)))
                .startsWith("inside: 95 % of the sheets or more lie within 9.01 g to 12.19 g; mean 10.59 g");
        SheetControl<Mass> narrow = around(10.6, 1, series);
        assertThat(narrow.verdict(percent(95))).isEqualTo(Verdict.OUTSIDE);
        assertThat(narrow.sentence(percent(95))).startsWith("outside: fewer than 95 % of the sheets lie within");
        SheetControl<Mass> between = around(10.6, 5, series);
        assertThat(between.verdict(percent(95))).isEqualTo(Verdict.UNTOLD);
        int more = between.moreToMeasure(percent(95)).orElseThrow();
        assertThat(between.sentence(percent(95)))
                .startsWith("measure " + more + " more: 8 sheets do not tell whether 95 % of the sheets lie within");
        assertThat(more).isBetween(5, 500);
    }

    @Test
    void sheetsAllAlike() {
        SheetControl<Mass> alike = around(10, 5, series(10, 10, 10, 10));
        assertThat(alike.verdict()).isEqualTo(Verdict.INSIDE);
        // They are read to whole grams, which may hide half a gram.
        assertThat(alike.byScatter().likely().si()).isBetween(0.9, 0.95);
        assertThat(around(20, 5, series(10, 10, 10, 10)).byScatter().high().si())
                .isBetween(0.0, 1e-3);
        assertThat(around(10, 5, series(10, 10, 10, 10)).byCount().high().in("%"))
                .isEqualTo(100);
        assertThat(around(20, 5, series(10, 10, 10, 10)).byCount().low().in("%"))
                .isZero();
    }

    @Test
    void aDriftIsSaid() {
        SheetQuality<Mass> drifting = series(10.9, 10.8, 10.8, 10.6, 10.7, 10.5, 10.4, 10.5, 10.3, 10.2);
        assertThat(around(10.5, 8, drifting).notices()).extracting(Notice::code).containsExactly("series.drifting");
        assertThat(around(10.5, 8, series(10.9, 10.2, 10.8, 10.4, 10.6)).notices())
                .isEmpty();
    }

    @Test
    void widthsAreHeldTheSameWay() {
        SheetQuality<Length> widths =
                SheetQuality.of("width", Kinds.LENGTH, List.of(mm(210.5), mm(209.8), mm(210.1), mm(210.3), mm(209.9)));
        assertThat(widths.within(mm(208), mm(212)).toString())
                .startsWith("inside: the mean lies within 208 mm to 212 mm; mean 210.1 mm");
        assertThatThrownBy(() -> widths.within(mm(212), mm(208)))
                .isInstanceOf(Refused.class)
                .hasMessage(
                        "width accepted: from 212 mm to 208 mm given; the least has to be below the greatest. Turn them"
                                + " round, or give a tolerance.");
    }

    /** Of many runs of six sheets nine bands in ten hold the true mean and the true share. */
    @Test
    void bandsHold() {
        Random chance = new Random(7);
        double share = 0.9044193;
        int means = 0;
        int below = 0;
        int above = 0;
        int runs = 1000;
        for (int run = 0; run < runs; run++) {
            double[] weights = new double[6];
            for (int i = 0; i < weights.length; i++) {
                weights[i] = 10 + 0.3 * chance.nextGaussian();
            }
            SheetControl<Mass> control = series(weights).within(grams(9.5), grams(10.5));
            means += control.mean().low().in("g") <= 10 && control.mean().high().in("g") >= 10 ? 1 : 0;
            below += control.byScatter().low().si() > share ? 1 : 0;
            above += control.byScatter().high().si() < share ? 1 : 0;
        }
        // Three standard errors of a count of nine in ten. The mean in the middle is the worst case of the share.
        assertThat(means).isBetween(870, 930);
        assertThat(below).isBetween(10, 70);
        assertThat(above).isBetween(20, 75);
    }
}
