package org.papermath.record;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.function.IntPredicate;
import javax.measure.Quantity;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.numeric.Normal;
import org.papermath.numeric.Percentiles;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Units;

/**
 * A series of sheets held against what was agreed: where the mean of the run lies, and what share of its sheets is inside.
 * All bands reach from the 5 % to the 95 % point. Immutable.
 *
 * <p>The share is told in two ways. By count it asks nothing of the sheets, and few sheets tell little. By their scatter
 * it takes them for normal about one mean, {@code Phi((most - mean)/sd) - Phi((least - mean)/sd)}, and tells more.
 *
 * @param <Q> what was measured
 * @source mean by Student's t; share by count by the beta distribution of Clopper and Pearson; band of the share by
 *     scatter from the pivots of mean and deviation, {@code s sqrt((n - 1)/chi²)} and {@code mean - z sd/sqrt(n)}, its
 *     lower end from 64 points of each, its upper end the best they allow between their 5 % and 95 % points; recalled,
 *     not looked up, and held by draws in the tests: of drawn runs at most some 6 % lie beyond either end
 */
public final class SheetControl<Q extends Quantity<Q>> {
    /** More sheets than this nobody weighs to settle it. */
    private static final int MOST = 10_000;
    /** Points of either pivot. */
    private static final int POINTS = 64;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private final SheetQuality<Q> series;
    private final double least;
    private final double most;
    private final String limits;
    private final double mean;
    private final double deviation;
    private final int inside;

    /** What can be said. */
    public enum Verdict {
        /** Inside what was agreed. */
        INSIDE,
        /** Outside of it. */
        OUTSIDE,
        /** It cannot be told from so few sheets. */
        UNTOLD
    }

    private SheetControl(SheetQuality<Q> series, Amount<Q> least, Amount<Q> most) {
        this.series = series;
        this.least = least.si();
        this.most = most.si();
        this.limits = "within " + least + " to " + most;
        this.mean = series.meanSi();
        this.deviation = Math.max(series.deviationSi(), series.sheets().leastDeviation());
        int count = 0;
        // A sheet on the edge is inside, whatever the last bit of its number says.
        double edge = 1e-9 * mean;
        for (int i = 0; i < series.count(); i++) {
            double value = series.sheets().value(i);
            count += value >= least.si() - edge && value <= most.si() + edge ? 1 : 0;
        }
        this.inside = count;
    }

    static <Q extends Quantity<Q>> SheetControl<Q> of(SheetQuality<Q> series, Quantity<Q> least, Quantity<Q> most) {
        Kind<Q> kind = series.sheets().kind();
        String what = series.sheets().what();
        Amount<Q> low = kind.check(least, "least " + what + " accepted");
        Amount<Q> high = kind.checkAboveZero(most, "greatest " + what + " accepted");
        if (!(low.si() < high.si())) {
            throw Refused.of(
                    "series.limits",
                    what + " accepted: from " + low + " to " + high
                            + " given; the least has to be below the greatest. Turn them round, or give a tolerance.",
                    "least",
                    low.toString(),
                    "most",
                    high.toString());
        }
        return new SheetControl<>(series, low, high);
    }

    /** {@return the mean of the run, with its band} */
    public Estimate<Q> mean() {
        double half = half(series.count());
        return Estimate.of(amount(mean), amount(mean - half), amount(mean + half), List.of());
    }

    private double half(int count) {
        return TDistribution.of(count - 1.0).inverseSurvivalProbability(0.05) * deviation / Math.sqrt(count);
    }

    /** {@return the share of the sheets inside by count, with the band it has for the run} */
    public Estimate<Share> byCount() {
        int n = series.count();
        return share(
                (double) inside / n,
                inside == 0 ? 0 : BetaDistribution.of(inside, n - inside + 1.0).inverseCumulativeProbability(0.05),
                inside == n ? 1 : BetaDistribution.of(inside + 1.0, n - inside).inverseCumulativeProbability(0.95));
    }

    /** {@return the share of the sheets inside by mean and scatter, with the band it has for the run} */
    public Estimate<Share> byScatter() {
        return share(share(mean, deviation), lowShare(series.count()), highShare(series.count()));
    }

    /** The band never leaves the likely value out, which at its ends it may by a hair. */
    private static Estimate<Share> share(double likely, double low, double high) {
        return Estimate.of(
                Kinds.SHARE.ofSi(likely, "%"),
                Kinds.SHARE.ofSi(Math.min(likely, low), "%"),
                Kinds.SHARE.ofSi(Math.max(likely, high), "%"),
                List.of());
    }

    private double share(double middle, double scatter) {
        double low = (least - middle) / scatter;
        double high = (most - middle) / scatter;
        return Math.max(0, 1 - NORMAL.cumulativeProbability(low) - NORMAL.survivalProbability(high));
    }

    /** The 5 % point of what the share may be, as so many sheets with this mean and scatter tell it. */
    private double lowShare(int count) {
        double[] shares = new double[POINTS * POINTS];
        ChiSquaredDistribution chi = ChiSquaredDistribution.of(count - 1.0);
        for (int i = 0; i < POINTS; i++) {
            double scatter = deviation * Math.sqrt((count - 1) / chi.inverseCumulativeProbability((i + 0.5) / POINTS));
            for (int j = 0; j < POINTS; j++) {
                double z = NORMAL.inverseCumulativeProbability((j + 0.5) / POINTS);
                shares[i * POINTS + j] = share(mean - z * scatter / Math.sqrt(count), scatter);
            }
        }
        Arrays.sort(shares);
        return Percentiles.at(shares, 0.05);
    }

    /**
     * The greatest share with mean and scatter each between its own 5 % and 95 % point. The 95 % point of the shares
     * would lie too low: a mean that was met off the middle makes every share less.
     */
    private double highShare(int count) {
        ChiSquaredDistribution chi = ChiSquaredDistribution.of(count - 1.0);
        double middle = (least + most) / 2;
        double greatest = 0;
        for (int i = 0; i <= POINTS; i++) {
            double scatter =
                    deviation * Math.sqrt((count - 1) / chi.inverseCumulativeProbability(0.05 + 0.9 * i / POINTS));
            double off = Math.max(0, Math.abs(mean - middle) - Normal.FIVE_PERCENT_POINT * scatter / Math.sqrt(count));
            greatest = Math.max(greatest, share(middle + off, scatter));
        }
        return greatest;
    }

    /**
     * Returns whether the mean of the run is inside what was agreed: the whole of its band, none of it, or neither.
     *
     * @return the verdict
     */
    public Verdict verdict() {
        return verdict(series.count());
    }

    private Verdict verdict(int count) {
        double half = half(count);
        if (mean - half >= least && mean + half <= most) {
            return Verdict.INSIDE;
        }
        return mean + half < least || mean - half > most ? Verdict.OUTSIDE : Verdict.UNTOLD;
    }

    /**
     * Returns whether a share of the sheets of the run is inside what was agreed, by mean and scatter.
     *
     * @param wanted the share that has to be inside, above zero
     * @return the verdict
     * @throws Refused if the share is out of range
     */
    public Verdict verdict(Quantity<Share> wanted) {
        return verdict(wanted(wanted), series.count());
    }

    private static double wanted(Quantity<Share> wanted) {
        return Kinds.SHARE.siAboveZero(wanted, "share that has to be inside");
    }

    private Verdict verdict(double wanted, int count) {
        if (lowShare(count) >= wanted) {
            return Verdict.INSIDE;
        }
        return highShare(count) < wanted ? Verdict.OUTSIDE : Verdict.UNTOLD;
    }

    /**
     * Returns how many sheets more to measure until the verdict on the mean is told, if mean and scatter stay as they
     * are.
     *
     * @return 0 if it is told; nothing where the mean lies so near a limit that measuring will not settle it
     */
    public OptionalInt moreToMeasure() {
        return more(count -> verdict(count) != Verdict.UNTOLD);
    }

    /**
     * Returns how many sheets more to measure until the verdict on a share is told, if mean and scatter stay as they
     * are.
     *
     * @param wanted the share that has to be inside, above zero
     * @return 0 if it is told; nothing where the share lies so near the wanted one that measuring will not settle it
     * @throws Refused if the share is out of range
     */
    public OptionalInt moreToMeasure(Quantity<Share> wanted) {
        double share = wanted(wanted);
        return more(count -> verdict(share, count) != Verdict.UNTOLD);
    }

    private OptionalInt more(IntPredicate isTold) {
        int below = series.count();
        if (isTold.test(below)) {
            return OptionalInt.of(0);
        }
        int above = below;
        do {
            if (above >= MOST) {
                return OptionalInt.empty();
            }
            below = above;
            above = Math.min(Math.max(MOST, series.count()), 2 * above);
        } while (!isTold.test(above));
        while (above - below > 1) {
            int middle = (above + below) / 2;
            if (isTold.test(middle)) {
                above = middle;
            } else {
                below = middle;
            }
        }
        return OptionalInt.of(above - series.count());
    }

    /**
     * Returns what the judgement should not be read without: what the series says of its sheets, and that they drift,
     * for then the next sheets are not like these.
     *
     * @return an unmodifiable list
     */
    public List<Notice> notices() {
        List<Notice> notices = new ArrayList<>(series.notices());
        if (series.cause() == SheetQuality.Cause.DRIFT) {
            notices.add(Notice.warning(
                    "series.drifting",
                    "The sheets drift along the run, so what is said of it holds for these sheets only and not for the next."
                            + " Set the vat right first."));
        }
        return List.copyOf(notices);
    }

    private Amount<Q> amount(double si) {
        return series.sheets().amount(si);
    }

    /**
     * Returns a verdict on the mean and both shares.
     *
     * @param wanted the share that has to be inside, above zero
     * @return the sentence
     * @throws Refused if the share is out of range
     */
    public String sentence(Quantity<Share> wanted) {
        Objects.requireNonNull(wanted, "wanted");
        String share = Kinds.SHARE.check(wanted, "share that has to be inside").toString();
        Verdict verdict = verdict(wanted);
        return switch (verdict) {
                    case INSIDE -> "inside: " + share + " of the sheets or more lie ";
                    case OUTSIDE -> "outside: fewer than " + share + " of the sheets lie ";
                    case UNTOLD -> untold(moreToMeasure(wanted)) + " whether " + share + " of the sheets lie ";
                }
                + limits + "; " + figures();
    }

    private String untold(OptionalInt more) {
        return more.isPresent()
                ? "measure " + more.getAsInt() + " more: " + series.count() + " sheets do not tell"
                : "too near a limit to be measured out: " + series.count() + " sheets do not tell";
    }

    private String figures() {
        return "mean " + band(mean()) + "; " + inside + " of " + series.count() + " sheets inside (" + band(byCount())
                + "), by their scatter " + band(byScatter());
    }

    private static String band(Estimate<?> of) {
        return of.likely() + ", " + of.low() + " to " + of.high();
    }

    /** Returns the verdict on the mean, then the figures. */
    @Override
    public String toString() {
        return switch (verdict()) {
                    case INSIDE -> "inside: the mean lies ";
                    case OUTSIDE -> "outside: the mean is " + by() + " and does not lie ";
                    case UNTOLD -> untold(moreToMeasure()) + " whether the mean lies ";
                }
                + limits + "; " + figures();
    }

    private String by() {
        double over = mean > most ? mean / most - 1 : mean / least - 1;
        return Units.fourDigits(100 * Math.abs(over)) + " % too " + (over < 0 ? "low" : "high");
    }
}
