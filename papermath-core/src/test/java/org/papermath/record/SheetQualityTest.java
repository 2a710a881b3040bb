package org.papermath.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.seconds;

import java.util.Arrays;
import java.util.List;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

class SheetQualityTest {
    private static SheetQuality<Mass> series(double... weights) {
        return SheetQuality.of(
                Kinds.MASS, Arrays.stream(weights).mapToObj(Amounts::grams).toList());
    }

    /** Ten sheets in the order of making, lighter and lighter. */
    @Test
    void seriesThatDrifts() {
        SheetQuality<Mass> series = series(10.9, 10.8, 10.8, 10.6, 10.7, 10.5, 10.4, 10.5, 10.3, 10.2);
        assertThat(series.mean().in("g")).isCloseTo(10.57, within(1e-9));
        assertThat(series.deviation().in("g")).isCloseTo(0.23, within(0.005));
        assertThat(series.slope("g")).isCloseTo(-0.073, within(0.0005));
        assertThat(series.residual().in("g")).isCloseTo(0.07, within(0.005));
        assertThat(series.t()).isCloseTo(-10, within(0.5));
        assertThat(series.chance()).isBetween(1e-7, 1e-4);
        assertThat(series.cause()).isEqualTo(SheetQuality.Cause.DRIFT);
        assertThat(series.notices()).isEmpty();
        assertThat(series)
                .hasToString("the vat, not the hand: 0.6938 % lighter from sheet to sheet, more than chance (t = 9.75);"
                        + " mean 10.57 g, sd 0.2312 g");
    }

    @Test
    void seriesThatOnlyScatters() {
        SheetQuality<Mass> series = series(10.9, 10.2, 10.8, 10.4, 10.6);
        assertThat(series.cause()).isEqualTo(SheetQuality.Cause.HAND);
        assertThat(series).hasToString("the hand, no drift: mean 10.58 g, sd 0.2864 g");
    }

    @Test
    void sheetsAllAlikeNeitherDriftNorScatter() {
        SheetQuality<Mass> series = series(10, 10, 10, 10);
        assertThat(series.t()).isZero();
        assertThat(series.chance()).isEqualTo(1);
        assertThat(series.cause()).isEqualTo(SheetQuality.Cause.HAND);
        assertThat(series.notices()).isEmpty();
        assertThat(series).hasToString("all alike: mean 10 g, sd 0 g");
        // A grammage of zero is none, but a deviation of zero is one.
        SheetQuality<Grammage> grammages =
                SheetQuality.of(Kinds.GRAMMAGE, List.of(Grammage.gsm(90), Grammage.gsm(90), Grammage.gsm(90)));
        assertThat(grammages.deviation().si()).isZero();
        assertThat(grammages.residual().si()).isZero();
        assertThat(grammages.summary().deviation()).hasToString("0 g/m²");
    }

    @Test
    void lineWithoutScatterIsDriftForCertain() {
        SheetQuality<Mass> series = series(10, 10.5, 11, 11.5, 12);
        assertThat(series.slope("g")).isCloseTo(0.5, within(1e-12));
        // The scatter of rounding to tenths: 0.5 sqrt(10)/(0.1/sqrt(12)).
        assertThat(series.t()).isCloseTo(0.5 * Math.sqrt(10) / (0.1 / Math.sqrt(12)), within(1e-9));
        assertThat(series.cause()).isEqualTo(SheetQuality.Cause.DRIFT);
        SheetQuality<Mass> fine = series(10.00001, 10.50001, 11.00001, 11.50001, 12.00001);
        assertThat(fine.t()).isFinite().isGreaterThan(1e5);
        // Steps of the scale are no drift.
        assertThat(series(10, 10.1, 10.2).cause()).isEqualTo(SheetQuality.Cause.HAND);
    }

    @Test
    void wordsFitWhatWasMeasured() {
        SheetQuality<Length> thickness = SheetQuality.of(
                "thickness", Kinds.LENGTH, List.of(mm(0.20), mm(0.19), mm(0.181), mm(0.171), mm(0.16), mm(0.151)));
        assertThat(thickness)
                .hasToString("the vat, not the hand: 5.617 % thinner from sheet to sheet, more than chance (t = 77.14);"
                        + " mean 0.1755 mm, sd 0.01845 mm");
        SheetQuality<Time> time =
                SheetQuality.of(Kinds.TIME, List.of(seconds(4), seconds(6), seconds(8.1), seconds(10), seconds(11.9)));
        assertThat(time.toString()).contains("slower from sheet to sheet").contains("mean 8 s");
        SheetQuality.Comparison thinner = SheetQuality.compare(
                new SheetQuality.Summary<>(mm(0.2), mm(0.01), 10), new SheetQuality.Summary<>(mm(0.18), mm(0.01), 10));
        assertThat(thinner.what()).isEqualTo("length");
        assertThat(thinner).hasToString("10 % smaller, more than chance (t = 4.472)");
        assertThatThrownBy(() -> SheetQuality.of("width", Kinds.LENGTH, List.of(mm(210), mm(0), mm(210))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("width of a sheet: 0 mm given; it must be above zero");
        assertThatThrownBy(() -> SheetQuality.of(Kinds.TEMPERATURE, List.of(celsius(20), celsius(21), celsius(22))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("point on a scale");
    }

    /** Bounds of Grubbs' test: 1.1543 for three and 1.48125 for four values (two-sided, 5 %, by SciPy's t). */
    @Test
    void slipAmongThreeOrFour() {
        assertThat(slips(10.001, 10.101, 13.5)).isEqualTo("[series.outlier]");
        assertThat(slips(10.001, 10.101, 12.5)).isEqualTo("[series.outlier-three]");
        assertThat(series(10.101, 13.5, 10.001).notices().get(0).text())
                .isEqualTo(
                        "Sheet 2 at 13.5 g lies off the mean of the others by more than chance; look at it before you"
                                + " believe these figures.");
        // Between them the bound: off the nearer one by 32.57 times what the two lie apart.
        assertThat(slips(10.001, 10.101, 10.101 + 32.6 * 0.1)).isEqualTo("[series.outlier]");
        assertThat(slips(10.001, 10.101, 10.101 + 32.5 * 0.1)).isEqualTo("[series.outlier-three]");
        // G = 1.4837 and 1.4804.
        assertThat(slips(10.001, 10.101, 10.201, 11.2)).isEqualTo("[series.outlier]");
        assertThat(grubbs(10.001, 10.101, 10.201, 11.2)).isGreaterThan(1.48125);
        assertThat(slips(10.001, 10.101, 10.201, 11.1)).isEqualTo("[]");
        assertThat(grubbs(10.001, 10.101, 10.201, 11.1)).isLessThan(1.48125);
    }

    /** Two readings alike on a coarse scale make no outlier of a third next to them. */
    @Test
    void tiesAreNoMoreThanTheScaleShows() {
        assertThat(slips(10.5, 10.5, 10.6)).isEqualTo("[series.outlier-three]");
        assertThat(slips(10.5, 10.5, 15.6)).isEqualTo("[series.outlier]");
        assertThat(slips(10.5, 10.5, 10.5, 10.6)).isEqualTo("[]");
        assertThat(slips(10.5, 10.5, 10.5, 10.6, 10.5)).isEqualTo("[]");
        assertThat(slips(10.5, 10.5, 10.5, 12.6, 10.5)).isEqualTo("[series.outlier]");
    }

    private static String slips(double... weights) {
        return series(weights).notices().stream().map(Notice::code).toList().toString();
    }

    private static double grubbs(double... values) {
        double mean = Arrays.stream(values).average().orElseThrow();
        double squares =
                Arrays.stream(values).map(one -> (one - mean) * (one - mean)).sum();
        return Arrays.stream(values).map(one -> Math.abs(one - mean)).max().orElseThrow()
                / Math.sqrt(squares / (values.length - 1));
    }

    @Test
    void sheetsToMeasure() {
        SheetQuality<Mass> series = series(10.9, 10.2, 10.8, 10.4, 10.6);
        assertThat(series.toWeigh(Kinds.SHARE.of(1, "%"), Kinds.SHARE.of(95, "%")))
                .hasToString("measure 31 sheets: their mean lies within 1 % of that of the run in 95.15 % of such runs,"
                        + " at a scatter of 2.707 %");
        assertThat(series(10, 10, 10)
                        .toWeigh(Kinds.SHARE.of(1, "%"), Kinds.SHARE.of(95, "%"))
                        .sheets())
                .isEqualTo(2);
    }

    @Test
    void oneSheetOffTheLineIsNoticed() {
        SheetQuality<Mass> series = series(10.1, 10.0, 10.1, 12.5, 10.0, 10.1, 9.9, 10.0);
        assertThat(series.notices()).singleElement().satisfies(notice -> {
            assertThat(notice.code()).isEqualTo("series.outlier");
            assertThat(notice.text())
                    .isEqualTo("Sheet 4 at 12.5 g lies off the line of the others by more than chance;"
                            + " look at it before you believe these figures.");
            assertThat(notice.arguments()).containsEntry("sheet", 4);
        });
        assertThat(series(10.1, 10.0, 10.1, 10.2, 10.0, 10.1, 9.9, 10.0).notices())
                .isEmpty();
    }

    @Test
    void shareInsideATolerance() {
        SheetQuality<Mass> series = series(9.2, 9.6, 10, 10.4, 10.8);
        assertThat(series.inside(grams(10), Kinds.SHARE.of(4, "%")).in("%")).isEqualTo(60);
        assertThat(series.inside(grams(10), Kinds.SHARE.of(8, "%")).in("%")).isEqualTo(100);
        assertThat(series.inside(grams(10), Kinds.SHARE.of(3.9, "%")).in("%")).isEqualTo(20);
    }

    /** The first batch 158 g/m², the new one 152 g/m²; ten sheets of either, scattering by 4 g/m². */
    @Test
    void newBatchBesideAnOldOne() {
        SheetQuality.Summary<Grammage> old = new SheetQuality.Summary<>(Grammage.gsm(158), Grammage.gsm(4), 10);
        SheetQuality.Summary<Grammage> fresh = new SheetQuality.Summary<>(Grammage.gsm(152), Grammage.gsm(4), 10);
        SheetQuality.Comparison both = SheetQuality.compare(old, fresh);
        assertThat(both.standardError().si() * 158).isCloseTo(1.79, within(0.005));
        assertThat(both.t()).isCloseTo(-3.4, within(0.05));
        assertThat(both.chance()).isCloseTo(0.0035, within(0.0003));
        assertThat(both.isReal()).isTrue();
        assertThat(both.factor().si()).isCloseTo(1.039, within(0.0006));
        assertThat(both).hasToString("3.797 % lighter, more than chance (t = 3.354); charge × 1.039");
        SheetQuality.Comparison near =
                SheetQuality.compare(old, new SheetQuality.Summary<>(Grammage.gsm(159), Grammage.gsm(4), 10));
        assertThat(near.isReal()).isFalse();
        assertThat(near).hasToString("0.6329 % heavier, no more than chance (t = 0.559); leave the charge");
    }

    @Test
    void summaryKeepsWhatAComparisonNeeds() {
        SheetQuality<Mass> series = series(10.9, 10.2, 10.8, 10.4, 10.6);
        assertThat(series.summary()).isEqualTo(new SheetQuality.Summary<>(series.mean(), series.deviation(), 5));
        assertThat(SheetQuality.compare(series.summary(), series.summary()).chance())
                .isEqualTo(1);
    }

    @Test
    void refusals() {
        assertThatThrownBy(() -> series(1, 2))
                .isInstanceOf(Refused.class)
                .hasMessage("series: 2 sheets given; at least 3 are needed to show a drift.");
        assertThatThrownBy(() -> new SheetQuality.Summary<>(grams(10), grams(1), 1))
                .isInstanceOf(Refused.class)
                .hasMessage("sheets: 1 given; at least 2 are needed to show how they scatter.");
        List<Amount<Mass>> zero = List.of(grams(1), grams(0), grams(1));
        assertThatThrownBy(() -> SheetQuality.of(Kinds.MASS, zero))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("mass of a sheet");
        assertThatThrownBy(() -> series(1, 2, 3).slope("mm")).isInstanceOf(Refused.class);
    }
}
