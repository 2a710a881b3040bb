package org.papermath.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.papermath.evidence.Notice;
import org.papermath.numeric.Moments;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Units;
import org.papermath.sheet.SheetCounts;

/**
 * How even sheets are, from what was weighed or measured of them in the order of making: is it the vat that drifts, or
 * the hand that scatters? Immutable.
 *
 * <p>Mean and standard deviation, and the straight line through the series by least squares:
 * {@code b = sum((i - i_m)(y - y_m))/sum((i - i_m)²)}, {@code t = b/(s_r/sqrt(sum((i - i_m)²)))} with n − 2 degrees of
 * freedom, s_r the deviation about the line. A slope that chance would give less than once in twenty times is a drift,
 * that of a vat not charged often enough; what is left about the line is the hand.
 *
 * <p>A deviation is never taken for less than the rounding of the readings makes it: where a scale shows tenths, three
 * sheets of 10.0, 10.1 and 10.2 g are no proof of a drift.
 *
 * <p>{@link PostQuality} tells the place in the post from the run of the vat, {@link HandComparison} one hand from
 * another, {@link SheetControl} whether the sheets are as agreed.
 *
 * @param <Q> what was measured: grammage, mass, length, time or another kind, but not temperature
 * @source least squares and Student's t, as in any book on statistics
 */
public final class SheetQuality<Q extends Quantity<Q>> {
    private final MeasuredSheets<Q> sheets;
    private final double slope;
    private final double residual;
    private final double t;
    private final double chance;

    /** What makes the sheets uneven. */
    public enum Cause {
        /** They grow heavier or lighter, thicker or thinner along the run: the vat. */
        DRIFT,
        /** They scatter about one mean: the hand. */
        HAND
    }

    /**
     * The mean of sheets and how they scatter, all that is left of an old batch.
     *
     * @param <Q> what was measured
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

        @Override
        public String toString() {
            return "mean " + mean + ", sd " + deviation + ", " + count + " sheets";
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

        /**
         * Returns what to charge in place of what was charged, to come to the old mean.
         *
         * @return the old mean over the new one; a factor of the charge where mass or grammage was measured
         */
        Amount<Dimensionless> factor();

        /** {@return what was measured, the name of its kind} */
        String what();

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
            Amount<Dimensionless> factor,
            String what)
            implements Comparison {
        @Override
        public boolean isReal() {
            return chance < MeasuredSheets.CHANCE;
        }

        /** Returns for example {@code 3.797 % lighter, more than chance (t = 3.354); charge × 1.039}. */
        @Override
        public String toString() {
            double share = difference.si();
            MeasuredWords words = MeasuredWords.of(what);
            String charge = isReal() ? "; charge × " + Units.fourDigits(factor.si()) : "; leave the charge";
            return Units.fourDigits(100 * Math.abs(share)) + " % " + words.word(share)
                    + (isReal() ? ", more than chance (t = " : ", no more than chance (t = ")
                    + Units.fourDigits(Math.abs(t)) + ")" + (words.isOfFibre() ? charge : "");
        }
    }

    private SheetQuality(MeasuredSheets<Q> sheets) {
        this.sheets = sheets;
        Moments moments = sheets.moments();
        int n = sheets.count();
        double middle = (n - 1) / 2.0;
        double xx = xx(n);
        double xy = 0;
        for (int i = 0; i < n; i++) {
            xy += (i - middle) * moments.off(i);
        }
        this.slope = xy / xx;
        double about = 0;
        for (int i = 0; i < n; i++) {
            about += offLine(i) * offLine(i);
        }
        this.residual = Math.sqrt(about / (n - 2));
        this.t = sheets.isEven() ? 0 : slope * Math.sqrt(xx) / Math.max(residual, sheets.leastDeviation());
        this.chance = MeasuredSheets.chance(t, n - 2);
    }

    private static double xx(int n) {
        return n * ((double) n * n - 1) / 12;
    }

    private double offLine(int i) {
        return sheets.moments().off(i) - slope * (i - (sheets.count() - 1) / 2.0);
    }

    /**
     * Reads a series.
     *
     * @param <Q> what was measured
     * @param kind the kind of it, for example {@code Kinds.MASS} or {@code Kinds.GRAMMAGE}
     * @param measured what was measured in the order of making, 3 or more, each above zero
     * @return the series; its amounts have the unit of the first
     * @throws Refused if there are fewer than three, one is not above zero, or the kind is temperature
     */
    public static <Q extends Quantity<Q>> SheetQuality<Q> of(Kind<Q> kind, List<? extends Quantity<Q>> measured) {
        Objects.requireNonNull(kind, "kind");
        return of(kind.name(), kind, measured);
    }

    /**
     * Reads a series of something that has a name of its own, which words are chosen by.
     *
     * @param <Q> what was measured
     * @param what what it is called: {@code thickness}, {@code width}, {@code drain time} …
     * @param kind the kind of it
     * @param measured what was measured in the order of making, 3 or more, each above zero
     * @return the series; its amounts have the unit of the first
     * @throws Refused if there are fewer than three, one is not above zero, or the kind is temperature
     */
    public static <Q extends Quantity<Q>> SheetQuality<Q> of(
            String what, Kind<Q> kind, List<? extends Quantity<Q>> measured) {
        Objects.requireNonNull(what, "what");
        Objects.requireNonNull(measured, "measured");
        int n = measured.size();
        if (n < 3) {
            throw Refused.of(
                    "series.short",
                    "series: " + n + " sheets given; at least 3 are needed to show a drift.",
                    "given",
                    n,
                    "least",
                    3);
        }
        return new SheetQuality<>(MeasuredSheets.of(what, kind, measured));
    }

    /** {@return how many sheets there are} */
    public int count() {
        return sheets.count();
    }

    /**
     * Returns the mean.
     *
     * @return the mean
     */
    public Amount<Q> mean() {
        return sheets.amount(sheets.mean());
    }

    /**
     * Returns the standard deviation of single sheets.
     *
     * @return the deviation
     */
    public Amount<Q> deviation() {
        return sheets.amount(sheets.moments().deviation());
    }

    MeasuredSheets<Q> sheets() {
        return sheets;
    }

    double meanSi() {
        return sheets.mean();
    }

    double deviationSi() {
        return sheets.moments().deviation();
    }

    /**
     * Returns what a sheet differs from the one before on the line.
     *
     * @param code the unit of the answer, one of the kind
     * @return the slope by sheet, below zero when they become lighter, thinner or smaller
     * @throws Refused if the code is not one of the kind
     */
    public double slope(String code) {
        return slope / Units.toSi(1, checked(code));
    }

    private String checked(String code) {
        sheets.kind().unit(code);
        return code;
    }

    /**
     * Returns the standard deviation about the line: the hand.
     *
     * @return the deviation
     */
    public Amount<Q> residual() {
        return sheets.amount(residual);
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
        return chance < MeasuredSheets.CHANCE ? Cause.DRIFT : Cause.HAND;
    }

    /**
     * Returns the sheets inside a tolerance, by count.
     *
     * @param wanted the value agreed
     * @param tolerance the deviation agreed, over that value
     * @return those inside over all
     * @throws Refused if a value is out of range
     */
    public Amount<Share> inside(Quantity<Q> wanted, Quantity<Share> tolerance) {
        double target = sheets.kind().siAboveZero(wanted, "target " + sheets.what());
        // A sheet on the edge is inside, whatever the last bit of its number says.
        double limit = Kinds.SHARE.si(tolerance, "tolerance") * target * (1 + 1e-9);
        int inside = 0;
        for (int i = 0; i < count(); i++) {
            inside += Math.abs(sheets.value(i) - target) <= limit ? 1 : 0;
        }
        return Kinds.SHARE.ofSi((double) inside / count(), "%");
    }

    /**
     * Holds the series against what was agreed.
     *
     * @param least the least accepted
     * @param most the greatest accepted, above the least
     * @return the judgement
     * @throws Refused if a limit is out of range, or they are not in order
     */
    public SheetControl<Q> within(Quantity<Q> least, Quantity<Q> most) {
        return SheetControl.of(this, least, most);
    }

    /**
     * Returns the sheets to measure so that the mean of a run is known, where it scatters as these sheets do.
     *
     * @param within how far the mean may be off either way, over the mean, above zero
     * @param confidence how often it lies so near, from 50 % to 99.99 %
     * @return how many sheets in all, those of this series with them
     * @throws Refused as {@link SheetCounts#toWeigh}
     */
    public SheetCounts.Count toWeigh(Quantity<Share> within, Quantity<Share> confidence) {
        return SheetCounts.toWeigh(
                Kinds.SHARE.ofSi(
                        sheets.isEven() ? 0 : Math.max(deviationSi(), sheets.leastDeviation()) / sheets.mean(), "%"),
                within,
                confidence);
    }

    /**
     * Returns what the figures should not be read without: a sheet that lies off the line of the others by more than
     * chance would bring to any of so many sheets once in twenty times. Of three and of four sheets, which leave a line
     * next to nothing to be judged by, one that lies off the mean of the others. Of three only a gross slip can show:
     * one must lie off the nearer of the other two by 33 times what these lie apart. Of four, two slips hide each other.
     * No sheet is left out of the figures.
     *
     * @return an unmodifiable list
     * @source residual over its error from the other sheets, by Student's t with n − 3 degrees of freedom, chance
     *     divided by n; about the mean with n − 2 degrees, the test of Grubbs, which at three sheets is that of Dixon
     *     with its bound of 0.970 (two-sided, 5 %); recalled, the bounds of both worked out again in the tests
     */
    public List<Notice> notices() {
        List<Notice> notices = new ArrayList<>();
        int n = count();
        boolean line = n > 4;
        double middle = (n - 1) / 2.0;
        for (int i = 0; !sheets.isEven() && i < n; i++) {
            double off = line ? offLine(i) : sheets.moments().off(i);
            double free = 1 - 1.0 / n - (line ? (i - middle) * (i - middle) / xx(n) : 0);
            double squares =
                    line ? residual * residual * (n - 2) : sheets.moments().squares();
            if (sheets.isApart(off, free, squares, line ? n - 2 : n - 1)) {
                notices.add(Notice.warning(
                        "series.outlier",
                        "Sheet " + (i + 1) + " at " + sheets.amount(sheets.value(i)) + " lies off the "
                                + (line ? "line" : "mean")
                                + " of the others by more than chance; look at it before you believe these figures.",
                        "sheet",
                        i + 1,
                        "value",
                        sheets.amount(sheets.value(i)).toString()));
            }
        }
        if (n == 3 && notices.isEmpty()) {
            notices.add(Notice.note(
                    "series.outlier-three",
                    "Of three sheets only a gross slip shows: one 33 times as far off as the other two lie apart. Measure"
                            + " a few more."));
        }
        return List.copyOf(notices);
    }

    /**
     * Returns what to keep of the series for a comparison years later.
     *
     * @return mean, deviation and count
     */
    public Summary<Q> summary() {
        return new Summary<>(mean(), deviation(), count());
    }

    /**
     * Compares a new batch with an old one: {@code t = (new - old)/sqrt(s1²/n1 + s2²/n2)}, and the charge to correct
     * by {@code old/new}.
     *
     * @param <Q> what was measured
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
        double error = Math.max(Math.sqrt(ofOld + ofNew), MeasuredSheets.ROUNDING * base);
        double difference = fresh.mean().si() - base;
        double sum = ofOld + ofNew;
        double free = sum > 0
                ? MeasuredSheets.freedom(ofOld, old.count(), ofNew, fresh.count())
                : old.count() + fresh.count() - 2;
        double t = difference / error;
        return new FoundComparison(
                Kinds.NUMBER.ofSi(difference / base, "%"),
                Kinds.NUMBER.ofSi(error / base, "%"),
                t,
                MeasuredSheets.chance(t, free),
                Kinds.NUMBER.ofSi(base / fresh.mean().si()),
                old.mean().kind().name());
    }

    /**
     * Returns for example {@code the vat, not the hand: 0.6938 % lighter from sheet to sheet, more than chance
     * (t = 9.75); mean 10.57 g, sd 0.2312 g}.
     */
    @Override
    public String toString() {
        String figures = "mean " + mean() + ", sd " + deviation();
        if (sheets.isEven()) {
            return "all alike: " + figures;
        }
        return cause() == Cause.DRIFT
                ? "the vat, not the hand: " + Units.fourDigits(100 * Math.abs(slope) / sheets.mean()) + " % "
                        + sheets.words().word(slope) + " from sheet to sheet, more than chance (t = "
                        + Units.fourDigits(Math.abs(t)) + "); " + figures
                : "the hand, no drift: " + figures;
    }
}
