package org.papermath.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Share;
import org.papermath.record.HandComparison.Hand;

/** What has to hold whatever was measured: units, a common part and the order of hands change no verdict. */
class SheetQualityPropertyTest {
    private static List<Amount<Dimensionless>> numbers(double[] values) {
        return Arrays.stream(values).mapToObj(one -> Kinds.NUMBER.of(one, "1")).toList();
    }

    private static SheetQuality<Dimensionless> series(double[] values) {
        return SheetQuality.of(Kinds.NUMBER, numbers(values));
    }

    private static double[] drawn(int count, long seed) {
        Random chance = new Random(seed);
        return chance.doubles(count, 50, 150).toArray();
    }

    private static double[] map(double[] values, double factor, double shift) {
        return Arrays.stream(values).map(one -> factor * one + shift).toArray();
    }

    private static List<Object> outliers(SheetQuality<?> series) {
        return series.notices().stream()
                .map(one -> one.arguments().getOrDefault("sheet", 0))
                .toList();
    }

    @Property(tries = 300, seed = "2026")
    void scaleAndShift(
            @ForAll @IntRange(min = 3, max = 30) int count,
            @ForAll long seed,
            @ForAll @DoubleRange(min = 0.01, max = 100) double factor,
            @ForAll @DoubleRange(min = 0, max = 1000) double shift) {
        double[] values = drawn(count, seed);
        values[count / 2] += seed % 3 == 0 ? 5000 : 0;
        SheetQuality<Dimensionless> one = series(values);
        SheetQuality<Dimensionless> other = series(map(values, factor, shift));
        assertThat(other.mean().si())
                .isCloseTo(
                        factor * one.mean().si() + shift,
                        within(1e-9 * other.mean().si()));
        assertThat(other.deviation().si())
                .isCloseTo(
                        factor * one.deviation().si(),
                        within(1e-9 * other.mean().si()));
        assertThat(other.slope("1"))
                .isCloseTo(factor * one.slope("1"), within(1e-9 * other.mean().si()));
        assertThat(other.t()).isCloseTo(one.t(), within(1e-6 * (1 + Math.abs(one.t()))));
        assertThat(outliers(other)).isEqualTo(outliers(one));
        if (seed % 3 == 0 && count > 5) {
            assertThat(outliers(one)).contains(count / 2 + 1);
        }
    }

    @Property(tries = 200, seed = "2026")
    void turnedRoundTheTrendTurnsAndNothingElse(@ForAll @IntRange(min = 3, max = 30) int count, @ForAll long seed) {
        double[] values = drawn(count, seed);
        List<Amount<Dimensionless>> turned = new ArrayList<>(numbers(values));
        Collections.reverse(turned);
        SheetQuality<Dimensionless> one = series(values);
        SheetQuality<Dimensionless> other = SheetQuality.of(Kinds.NUMBER, turned);
        assertThat(other.t()).isCloseTo(-one.t(), within(1e-8 * (1 + Math.abs(one.t()))));
        assertThat(other.deviation().si()).isCloseTo(one.deviation().si(), within(1e-10));
        assertThat(other.cause()).isEqualTo(one.cause());
        Collections.shuffle(turned, new Random(seed));
        SheetQuality<Dimensionless> mixed = SheetQuality.of(Kinds.NUMBER, turned);
        assertThat(mixed.mean().si()).isCloseTo(one.mean().si(), within(1e-10));
        assertThat(mixed.deviation().si()).isCloseTo(one.deviation().si(), within(1e-10));
    }

    @Property(tries = 200, seed = "2026")
    void handsInAnyOrderAndScale(
            @ForAll @IntRange(min = 2, max = 5) int count,
            @ForAll long seed,
            @ForAll @DoubleRange(min = 0.01, max = 100) double factor,
            @ForAll @DoubleRange(min = 0, max = 1000) double shift) {
        Random chance = new Random(seed);
        List<Hand<Dimensionless>> hands = new ArrayList<>();
        List<Hand<Dimensionless>> scaled = new ArrayList<>();
        for (int h = 0; h < count; h++) {
            double[] values = map(drawn(2 + chance.nextInt(6), chance.nextLong()), 1, 20 * h);
            hands.add(new Hand<>("h" + h, numbers(values)));
            scaled.add(new Hand<>("h" + h, numbers(map(values, factor, shift))));
        }
        Collections.shuffle(scaled, chance);
        HandComparison<Dimensionless> one = HandComparison.of(Kinds.NUMBER, hands);
        HandComparison<Dimensionless> other = HandComparison.of(Kinds.NUMBER, scaled);
        assertThat(other.f()).isCloseTo(one.f(), within(1e-7 * (1 + one.f())));
        assertThat(other.welchChance()).isCloseTo(one.welchChance(), within(1e-6));
        assertThat(other.scatterChance().orElse(2))
                .isCloseTo(one.scatterChance().orElse(2), within(1e-6));
        assertThat(other.isReal()).isEqualTo(one.isReal());
        // The square of Student's t is F where there are two hands that scatter alike; Welch's F his t in any case.
        if (count == 2) {
            assertThat(one.welchChance()).isCloseTo(one.pairs().get(0).chance(), within(1e-9));
        }
    }

    /** Whole numbers with ties, down to no scatter at all. */
    @Property(tries = 500, seed = "2026")
    void neverWithoutANumber(@ForAll @Size(min = 4, max = 12) List<@IntRange(min = 1, max = 3) Integer> ties) {
        List<Amount<Length>> widths =
                ties.stream().map(one -> Kinds.LENGTH.of(one, "mm")).toList();
        SheetQuality<Length> series = SheetQuality.of("width", Kinds.LENGTH, widths);
        List<Double> figures = new ArrayList<>(List.of(
                series.t(),
                series.chance(),
                series.slope("mm"),
                series.deviation().si(),
                series.residual().si()));
        SheetControl<Length> control = series.within(Kinds.LENGTH.of(1, "mm"), Kinds.LENGTH.of(2, "mm"));
        figures.add(control.mean().low().si());
        figures.add(control.byCount().low().si());
        figures.add(control.byScatter().high().si());
        PostQuality<Length> posts =
                PostQuality.of("width", Kinds.LENGTH, List.of(widths.subList(0, 2), widths.subList(2, widths.size())));
        figures.addAll(List.of(
                posts.run().t(),
                posts.place().t(),
                posts.run().chance(),
                posts.place().chance()));
        HandComparison<Length> hands = HandComparison.of(
                "width",
                Kinds.LENGTH,
                List.of(new Hand<>("one", widths.subList(0, 2)), new Hand<>("two", widths.subList(2, widths.size()))));
        figures.addAll(List.of(
                hands.f(),
                hands.chance(),
                hands.welchChance(),
                hands.scatterChance().orElse(0),
                hands.pairs().get(0).low().si()));
        assertThat(figures).allSatisfy(one -> assertThat(one).isFinite());
        Amount<Share> wanted = Kinds.SHARE.of(90, "%");
        assertThat(series + " " + control + " " + control.sentence(wanted) + " " + posts + " " + hands)
                .doesNotContain("NaN")
                .doesNotContain("Infinity");
        assertThat(series.notices()).extracting(Notice::code).doesNotContainNull();
    }

    /** Series of sheets that neither drift nor slip are called so about as seldom as chance is let. */
    @Property(tries = 5, seed = "2026")
    void falseAlarmsAreAsRareAsSaid(@ForAll @IntRange(min = 3, max = 8) int count, @ForAll long seed) {
        Random chance = new Random(seed);
        int drifts = 0;
        int slips = 0;
        int runs = 2000;
        for (int run = 0; run < runs; run++) {
            double[] values = new double[count];
            for (int i = 0; i < count; i++) {
                values[i] = 100 + 5 * chance.nextGaussian();
            }
            SheetQuality<Dimensionless> series = series(values);
            drifts += series.cause() == SheetQuality.Cause.DRIFT ? 1 : 0;
            slips += series.notices().stream().anyMatch(one -> one.code().equals("series.outlier")) ? 1 : 0;
        }
        // A hundred each; five standard errors either way.
        assertThat(drifts).isBetween(50, 150);
        assertThat(slips).isBetween(45, 150);
    }
}
