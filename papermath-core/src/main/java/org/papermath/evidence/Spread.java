package org.papermath.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import org.papermath.numeric.Percentiles;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * What a forecast came to in many draws of all its assumptions at once. Immutable.
 *
 * @param <Q> the quantity type
 */
public final class Spread<Q extends Quantity<Q>> {
    private final Kind<Q> kind;
    private final String unit;
    /** In coherent SI, those that could be calculated, in order. */
    private final double[] sorted;

    private final int all;

    private Spread(Kind<Q> kind, String unit, double[] sorted, int all) {
        this.kind = kind;
        this.unit = unit;
        this.sorted = sorted;
        this.all = all;
    }

    /**
     * Makes a spread of what was drawn.
     *
     * @param <Q> the quantity type
     * @param kind the kind of the forecast
     * @param unit the code of the unit it is stated in
     * @param drawn the forecast of each draw, in coherent SI; not a number where it could not be calculated
     * @return the spread
     * @throws Refused if no draw could be calculated
     */
    public static <Q extends Quantity<Q>> Spread<Q> of(Kind<Q> kind, String unit, double[] drawn) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(drawn, "drawn");
        double[] known = Arrays.stream(drawn).filter(Double::isFinite).sorted().toArray();
        if (known.length == 0) {
            throw Refused.of(
                    "spread.empty",
                    kind.name() + ": none of " + drawn.length + " draws could be calculated; see what is not known.",
                    "kind",
                    kind.name(),
                    "draws",
                    drawn.length);
        }
        return new Spread<>(kind, unit, known, drawn.length);
    }

    /** Every draw times a count above zero. */
    Spread<Q> times(int count) {
        return new Spread<>(
                kind, unit, Arrays.stream(sorted).map(x -> x * count).toArray(), all);
    }

    /**
     * Returns how many draws there were.
     *
     * @return the count
     */
    public int draws() {
        return all;
    }

    /**
     * Returns the share of the draws in which the forecast could not be calculated.
     *
     * @return the share
     */
    public Amount<Share> unknown() {
        return Kinds.SHARE.ofSi((all - sorted.length) / (double) all, "%");
    }

    /**
     * Returns the value that a share of the draws lie below, between two draws by a straight line.
     *
     * @param share from 0 to 1
     * @return the value
     * @throws Refused if the share is out of range
     */
    public Amount<Q> percentile(Quantity<Share> share) {
        return signed(Percentiles.at(sorted, Kinds.SHARE.si(share, "share of the draws")));
    }

    /**
     * Returns the share of the draws that lie between two values.
     *
     * @param low the lower value
     * @param high the higher value
     * @return the share of those that could be calculated
     */
    public Amount<Share> between(Quantity<Q> low, Quantity<Q> high) {
        double least = kind.check(low, "lower end").si();
        double most = kind.check(high, "upper end").si();
        long inside = Arrays.stream(sorted).filter(x -> x >= least && x <= most).count();
        return Kinds.SHARE.ofSi(inside / (double) sorted.length, "%");
    }

    /** One column of a histogram. */
    public sealed interface Column<Q extends Quantity<Q>> permits FoundColumn {
        /** {@return where it begins} */
        Amount<Q> low();

        /** {@return where it ends} */
        Amount<Q> high();

        /** {@return draws inside} */
        int count();
    }

    private record FoundColumn<Q extends Quantity<Q>>(Amount<Q> low, Amount<Q> high, int count) implements Column<Q> {
        @Override
        public String toString() {
            return low + " to " + high + ": " + count + " draws";
        }
    }

    /**
     * Returns a small histogram from the 1 % to the 99 % point; what lies beyond is counted in the outer columns.
     *
     * @param columns how many columns, within {@link Limits#HISTOGRAM}
     * @return the columns from low to high; a single one where all draws are alike
     * @throws Refused if the count is out of range
     */
    public List<Column<Q>> histogram(int columns) {
        Limits.HISTOGRAM.check(columns, "columns of a histogram");
        double from = Percentiles.at(sorted, 0.01);
        double to = Percentiles.at(sorted, 0.99);
        int n = to > from ? columns : 1;
        int[] counts = new int[n];
        for (double x : sorted) {
            int column = n == 1 ? 0 : (int) Math.floor((x - from) / (to - from) * n);
            counts[Math.max(0, Math.min(n - 1, column))]++;
        }
        List<Column<Q>> all = new ArrayList<>();
        for (int c = 0; c < n; c++) {
            all.add(new FoundColumn<>(
                    signed(from + (to - from) * c / n), signed(from + (to - from) * (c + 1) / n), counts[c]));
        }
        return List.copyOf(all);
    }

    private Amount<Q> signed(double si) {
        return si >= 0 ? kind.ofSi(si, unit) : kind.ofSi(-si, unit).negate();
    }

    @Override
    public String toString() {
        return all + " draws, " + signed(Percentiles.at(sorted, 0.05)) + " to " + signed(Percentiles.at(sorted, 0.95));
    }
}
