package org.papermath.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.apache.commons.statistics.distribution.TDistribution;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Units;

/**
 * How even sheets are, from their weights in the order of making: is it the vat that drifts, or the hand that scatters?
 * Immutable.
 *
 * <p>Mean and standard deviation, and the straight line through the series by least squares:
 * {@code b = sum((i - i_m)(y - y_m))/sum((i - i_m)²)}, {@code t = b/(s_r/sqrt(sum((i - i_m)²)))} with n − 2 degrees of
 * freedom, s_r the deviation about the line. A slope that chance would give less than once in twenty times is a drift,
 * that of a vat not charged often enough; what is left about the line is the hand.
 *
 * @param <Q> what was weighed: mass or grammage
 * @source least squares and Student's t, as in any book on statistics
 */
public final class SheetQuality<Q extends Quantity<Q>> {
    private static final double CHANCE = 0.05;
    /** Below this share of the mean a scatter is that of rounding. */
    private static final double ROUNDING = 1e-12;

    private final Kind<Q> kind;
    private final String unit;
    private final double[] values;
    private final double mean;
    private final double deviation;
    private final double slope;
    private final double residual;
    private final double t;
    private final double chance;

    /** What makes the sheets uneven. */
    public enum Cause {
        /** They grow heavier or lighter along the run: the vat. */
        DRIFT,
        /** They scatter about one mean: the hand. */
        HAND
    }

    /**
     * The mean of sheets and how they scatter, all that is left of an old batch.
     *
     * @param <Q> what was weighed
     * @param mean the mean
     * @param deviation the standard deviation of single sheets
     * @param count how many they were, 2 or more
     */
    public record Summary<Q extends Quantity<Q>>(Amount<Q> mean, Amount<Q> deviation, int count) {
        /**
         * Checks the figures.
         *
         * @param mean the mean, above zero
         * @param deviation the standard deviation of single sheets
         * @param count how many they were, 2 or more
         * @throws Refused if the mean is not above zero, or there are fewer than two
         */
        public Summary {
            mean.kind().siAboveZero(mean, "mean of the sheets");
            mean.compareTo(deviation);
            if (count < 2) {
                throw Refused.of(
                        "series.summary-short",
                        "sheets: " + count + " given; at least 2 are needed to show how they scatter.",
                        "given",
                        count,
                        "least",
                        2);
            }
        }
    }

    /** A new batch beside an old one. */
    public sealed interface Comparison permits FoundComparison {
        /** {@return new mean less old mean, over the old mean} */
        Amount<Dimensionless> difference();

        /** {@return the standard error of that} */
        Amount<Dimensionless> standardError();

        /** {@return the difference over its standard error} */
        double t();

        /** {@return how often chance alone would bring as much, either way} */
        double chance();

        /** {@return what to charge in place of what was charged, to come to the old mean} */
        Amount<Dimensionless> factor();

        /**
         * Returns whether the difference is more than chance would bring once in twenty times.
         *
         * @return whether the batches differ
         */
        boolean isReal();
    }

    private record FoundComparison(
            Amount<Dimensionless> difference,
            Amount<Dimensionless> standardError,
            double t,
            double chance,
            Amount<Dimensionless> factor)
            implements Comparison {
        @Override
        public boolean isReal() {
            return chance < CHANCE;
        }

        /** Returns for example {@code 3.797 % lighter, more than chance (t = 3.354); charge × 1.039}. */
        @Override
        public String toString() {
            double share = difference.si();
            return Units.fourDigits(100 * Math.abs(share)) + " % " + (share < 0 ? "lighter" : "heavier")
                    + (isReal()
                            ? ", more than chance (t = " + Units.fourDigits(Math.abs(t)) + "); charge × "
                                    + Units.fourDigits(factor.si())
                            : ", no more than chance (t = " + Units.fourDigits(Math.abs(t)) + "); leave the charge");
        }
    }

    private SheetQuality(Kind<Q> kind, String unit, double[] values) {
        this.kind = kind;
        this.unit = unit;
        this.values = values;
        int n = values.length;
        double middle = (n - 1) / 2.0;
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        this.mean = sum / n;
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int i = 0; i < n; i++) {
            xx += (i - middle) * (i - middle);
            xy += (i - middle) * (values[i] - mean);
            yy += (values[i] - mean) * (values[i] - mean);
        }
        this.slope = xy / xx;
        double about = 0;
        for (int i = 0; i < n; i++) {
            double off = values[i] - mean - slope * (i - middle);
            about += off * off;
        }
        this.deviation = Math.sqrt(yy / (n - 1));
        this.residual = Math.sqrt(about / (n - 2));
        double error = residual / Math.sqrt(xx);
        if (deviation <= ROUNDING * mean) {
            this.t = 0;
        } else {
            // On a line without any scatter a slope is certain; a finite t says so well enough.
            this.t = slope / Math.max(error, ROUNDING * mean / Math.sqrt(xx));
        }
        this.chance = 2 * TDistribution.of(n - 2).survivalProbability(Math.abs(t));
    }

    /**
     * Reads a series.
     *
     * @param <Q> what was weighed
     * @param kind the kind of it, {@code Kinds.MASS} or {@code Kinds.GRAMMAGE}
     * @param weights the weights in the order of making, 3 or more, each above zero
     * @return the series
     * @throws Refused if there are fewer than three, or one is not above zero
     */
    public static <Q extends Quantity<Q>> SheetQuality<Q> of(Kind<Q> kind, List<? extends Quantity<Q>> weights) {
        Objects.requireNonNull(weights, "weights");
        int n = weights.size();
        if (n < 3) {
            throw Refused.of(
                    "series.short",
                    "series: " + n + " sheets given; at least 3 are needed to show a drift.",
                    "given",
                    n,
                    "least",
                    3);
        }
        return new SheetQuality<>(
                kind,
                kind.codes().get(0),
                weights.stream()
                        .mapToDouble(weight -> kind.siAboveZero(weight, "weight of a sheet"))
                        .toArray());
    }

    /**
     * Returns the mean.
     *
     * @return the mean
     */
    public Amount<Q> mean() {
        return kind.ofSi(mean, unit);
    }

    /**
     * Returns the standard deviation of single sheets.
     *
     * @return the deviation
     */
    public Amount<Q> deviation() {
        return kind.ofSi(deviation, unit);
    }

    double meanSi() {
        return mean;
    }

    double deviationSi() {
        return deviation;
    }

    /**
     * Returns what a sheet differs from the one before on the line.
     *
     * @param code the unit of the answer, one of the kind
     * @return the slope by sheet, below zero when they become lighter
     * @throws Refused if the code is not one of the kind
     */
    public double slope(String code) {
        return slope / Units.toSi(1, checked(code));
    }

    private String checked(String code) {
        kind.unit(code);
        return code;
    }

    /**
     * Returns the standard deviation about the line: the hand.
     *
     * @return the deviation
     */
    public Amount<Q> residual() {
        return kind.ofSi(residual, unit);
    }

    /**
     * Returns the slope over its standard error.
     *
     * @return Student's t, with two degrees of freedom fewer than there are sheets
     */
    public double t() {
        return t;
    }

    /**
     * Returns how often chance alone would bring such a slope, up or down.
     *
     * @return the probability, 0 to 1
     */
    public double chance() {
        return chance;
    }

    /**
     * Returns whether the slope is more than chance would bring once in twenty times.
     *
     * @return {@link Cause#DRIFT} if it is
     */
    public Cause cause() {
        return chance < CHANCE ? Cause.DRIFT : Cause.HAND;
    }

    /**
     * Returns the sheets inside a tolerance, by count.
     *
     * @param wanted the weight agreed
     * @param tolerance the deviation agreed, over that weight
     * @return those inside over all
     * @throws Refused if a value is out of range
     */
    public Amount<Share> inside(Quantity<Q> wanted, Quantity<Share> tolerance) {
        double target = kind.siAboveZero(wanted, "target weight");
        // A sheet on the edge is inside, whatever the last bit of its weight says.
        double limit = Kinds.SHARE.si(tolerance, "tolerance") * target * (1 + 1e-9);
        int count = 0;
        for (double value : values) {
            count += Math.abs(value - target) <= limit ? 1 : 0;
        }
        return Kinds.SHARE.ofSi((double) count / values.length, "%");
    }

    /**
     * Returns what the figures should not be read without: a sheet that lies off the line of the others by more than
     * chance would bring to any of so many sheets once in twenty times.
     *
     * @return an unmodifiable list
     * @source residual over its error from the other sheets, by Student's t with n − 3 degrees of freedom, chance
     *     divided by n; recalled, not looked up
     */
    public List<Notice> notices() {
        List<Notice> notices = new ArrayList<>();
        int n = values.length;
        double middle = (n - 1) / 2.0;
        double xx = n * ((double) n * n - 1) / 12;
        for (int i = 0; n > 4 && residual > ROUNDING * mean && i < n; i++) {
            double off = values[i] - mean - slope * (i - middle);
            double free = 1 - 1.0 / n - (i - middle) * (i - middle) / xx;
            double own = off * off / (residual * residual * free);
            // own cannot pass n − 2; at it the others lie on a line of their own.
            double left = Math.max(1e-12, n - 2 - own);
            double apart = Math.sqrt(own * (n - 3) / left);
            if (2 * n * TDistribution.of(n - 3).survivalProbability(apart) < CHANCE) {
                notices.add(Notice.note(
                        "series.outlier",
                        "Sheet " + (i + 1) + " at " + kind.ofSi(values[i], unit)
                                + " lies off the line of the others by more than chance; look at it before you believe"
                                + " these figures.",
                        "sheet",
                        i + 1,
                        "weight",
                        kind.ofSi(values[i], unit).toString()));
            }
        }
        return List.copyOf(notices);
    }

    /**
     * Returns what to keep of the series for a comparison years later.
     *
     * @return mean, deviation and count
     */
    public Summary<Q> summary() {
        return new Summary<>(mean(), deviation(), values.length);
    }

    /**
     * Compares a new batch with an old one: {@code t = (new - old)/sqrt(s1²/n1 + s2²/n2)}, and the charge to correct
     * by {@code old/new}.
     *
     * @param <Q> what was weighed
     * @param old the batch to be matched
     * @param fresh the new batch
     * @return the comparison
     * @throws Refused if the kinds differ
     * @source Welch's test for unequal scatter, as in any book on statistics
     */
    public static <Q extends Quantity<Q>> Comparison compare(Summary<Q> old, Summary<Q> fresh) {
        Objects.requireNonNull(old, "old");
        Objects.requireNonNull(fresh, "fresh");
        old.mean().compareTo(fresh.mean());
        double ofOld = old.deviation().si() * old.deviation().si() / old.count();
        double ofNew = fresh.deviation().si() * fresh.deviation().si() / fresh.count();
        double base = old.mean().si();
        double error = Math.max(Math.sqrt(ofOld + ofNew), ROUNDING * base);
        double difference = fresh.mean().si() - base;
        double sum = ofOld + ofNew;
        double free = sum > 0
                ? sum * sum / (ofOld * ofOld / (old.count() - 1) + ofNew * ofNew / (fresh.count() - 1))
                : old.count() + fresh.count() - 2;
        double t = difference / error;
        return new FoundComparison(
                Kinds.NUMBER.ofSi(difference / base, "%"),
                Kinds.NUMBER.ofSi(error / base, "%"),
                t,
                2 * TDistribution.of(free).survivalProbability(Math.abs(t)),
                Kinds.NUMBER.ofSi(base / fresh.mean().si()));
    }

    /** Returns for example {@code mean 10.57 g, sd 0.2312 g, drifting by -0.6938 % a sheet}. */
    @Override
    public String toString() {
        return "mean " + mean() + ", sd " + deviation()
                + (cause() == Cause.DRIFT
                        ? ", drifting by " + Units.fourDigits(100 * slope / mean) + " % a sheet"
                        : ", no drift");
    }
}
