package org.papermath.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;

import java.util.Arrays;
import java.util.List;
import javax.measure.quantity.Mass;
import org.junit.jupiter.api.Test;
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
        assertThat(series).hasToString("mean 10.57 g, sd 0.2312 g, drifting by -0.6938 % a sheet");
    }

    @Test
    void seriesThatOnlyScatters() {
        SheetQuality<Mass> series = series(10.9, 10.2, 10.8, 10.4, 10.6);
        assertThat(series.cause()).isEqualTo(SheetQuality.Cause.HAND);
        assertThat(series).hasToString("mean 10.58 g, sd 0.2864 g, no drift");
    }

    @Test
    void sheetsAllAlikeNeitherDriftNorScatter() {
        SheetQuality<Mass> series = series(10, 10, 10, 10);
        assertThat(series.t()).isZero();
        assertThat(series.chance()).isEqualTo(1);
        assertThat(series.cause()).isEqualTo(SheetQuality.Cause.HAND);
        assertThat(series.notices()).isEmpty();
    }

    @Test
    void lineWithoutScatterIsDriftForCertain() {
        SheetQuality<Mass> series = series(10, 10.5, 11, 11.5, 12);
        assertThat(series.slope("g")).isCloseTo(0.5, within(1e-12));
        assertThat(series.t()).isFinite().isGreaterThan(1e6);
        assertThat(series.cause()).isEqualTo(SheetQuality.Cause.DRIFT);
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
                .hasMessageContaining("weight of a sheet");
        assertThatThrownBy(() -> series(1, 2, 3).slope("mm")).isInstanceOf(Refused.class);
    }
}
