package org.papermath.sheet;

import java.util.Objects;
import java.util.function.IntPredicate;
import javax.measure.Quantity;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.HypergeometricDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.papermath.evidence.Estimate;
import org.papermath.numeric.Roots;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Units;

/**
 * How many sheets: to form, so that enough good ones come out; to look at, so that few bad ones can have been missed; to
 * weigh or measure, so that their mean is known.
 *
 * <p>A confidence of 95 % says that of a hundred such runs ninety-five come out as said.
 */
public final class SheetCounts {
    /** A count on the edge is enough, whatever the last bit of its chance says. */
    private static final double EDGE = 1e-12;

    private SheetCounts() {}

    /** A number of sheets with what it brings. */
    public sealed interface Count permits FoundCount {
        /** {@return the least number of sheets that will do} */
        int sheets();

        /** {@return how often that number does, the share asked for or somewhat more} */
        Amount<Share> confidence();

        /** {@return the count and what it brings, in a sentence} */
        String sentence();
    }

    private record FoundCount(int sheets, Amount<Share> confidence, String sentence) implements Count {
        @Override
        public String toString() {
            return sentence;
        }
    }

    /**
     * Returns the sheets to form so that some are good on average: more often than not somewhat too few. How many make
     * sure of it tells {@link #toMake(int, Quantity, Quantity)}.
     *
     * <pre>{@code
     * SheetCounts.toForm(90, Yield.ofReject(Share.percent(18))); // 110
     * SheetCounts.toForm(60, Yield.of(Share.percent(30))); // 200
     * }</pre>
     *
     * @param good the good sheets wanted, 1 or more
     * @param yields what is good of what is formed, through all steps
     * @return {@code good/yield}, rounded up once
     * @throws Refused if the count is out of range, or if it takes more sheets than a plan may have
     */
    public static int toForm(int good, Yield yields) {
        checkCount(good, "good sheets");
        Objects.requireNonNull(yields, "yields");
        // A small guard, so that rounding does not ask for one sheet more than the arithmetic.
        double sheets = Math.ceil(good / yields.share() - 1e-9);
        if (sheets > Limits.PULLED.most()) {
            throw tooMany("good sheets", good);
        }
        return (int) sheets;
    }

    /**
     * Returns the sheets to form for an order: what is ordered with its extra, over the yield, and the trials.
     *
     * <pre>{@code
     * SheetCounts.toForm(80, Extra.pieces(10), Yield.ofReject(Share.percent(18)), 5); // 115
     * }</pre>
     *
     * @param ordered the sheets ordered, 1 or more
     * @param extra what is made over them; counted on what is ordered
     * @param yields what is good of what is formed, through all steps; counted on what is formed
     * @param trials the trial sheets besides, within {@link Limits#TRIALS}
     * @return the sheets
     * @throws Refused if a count is out of range, or if it takes more sheets than a plan may have
     */
    public static int toForm(int ordered, Extra extra, Yield yields, int trials) {
        checkCount(ordered, "sheets ordered");
        Objects.requireNonNull(extra, "extra");
        int sheets = toForm(extra.on(ordered), yields) + Limits.TRIALS.check(trials, "trial sheets");
        if (sheets > Limits.PULLED.most()) {
            throw tooMany("sheets ordered", ordered);
        }
        return sheets;
    }

    /**
     * Returns the sheets to make so that enough are good, where the share of good ones is known:
     * {@code P(good of n >= N) = sum over k >= N of C(n, k) p^k (1 - p)^(n - k)}.
     *
     * @param good the good sheets wanted, 1 or more
     * @param goodShare the share of good ones, above zero; each sheet turns out good or bad by itself
     * @param confidence how often that many should come out, from 50 % to 99.99 %
     * @return the least number of sheets that will do
     * @throws Refused if a value is out of range, or if it takes more sheets than a plan may have
     * @source binomial distribution, exact, as in any book on statistics
     */
    public static Count toMake(int good, Quantity<Share> goodShare, Quantity<Share> confidence) {
        checkCount(good, "good sheets");
        double share = Kinds.SHARE.siAboveZero(goodShare, "share of good sheets");
        double wanted = confidence(confidence);
        int sheets = least(good, n -> enough(n, good, share) >= wanted - EDGE, "good sheets", good);
        return made(good, sheets, enough(sheets, good, share), Kinds.SHARE.ofSi(share, "%") + " are good");
    }

    /**
     * Returns the sheets to make so that enough are good, where the share of good ones is itself known within a band
     * only. The share is taken to be spread by a beta distribution with the likely value as its mean and the band as
     * its 5 % and 95 % points, which is what {@code record.Calibration} makes of counts; of it the width of the band is
     * met, not each end.
     *
     * @param good the good sheets wanted, 1 or more
     * @param goodShare the share of good ones with its band, the likely value between 0 and 100 %
     * @param confidence how often that many should come out, from 50 % to 99.99 %
     * @return the least number of sheets that will do; more than for a known share
     * @throws Refused if a value is out of range, if the band is as wide as if nothing were known, or if it takes more
     *     sheets than a plan may have
     * @source beta-binomial distribution, as in any book on statistics
     */
    public static Count toMake(int good, Estimate<Share> goodShare, Quantity<Share> confidence) {
        double likely = likely(goodShare);
        if (isKnown(goodShare)) {
            return toMake(good, goodShare.likely(), confidence);
        }
        double counted = counted(goodShare);
        return spread(
                good,
                likely * counted,
                (1 - likely) * counted,
                confidence,
                goodShare.likely() + " (" + goodShare.low() + " to " + goodShare.high() + ") are good");
    }

    /**
     * Returns how likely enough of some sheets are good, the share of good ones being known within a band only: by a beta
     * distribution as in {@link #toMake(int, Estimate, Quantity)}.
     *
     * @param good the good sheets wanted, 1 or more
     * @param sheets the sheets made, 1 or more
     * @param goodShare the share of good ones with its band, the likely value above 0
     * @return the chance of so many good ones or more
     * @throws Refused if a value is out of range, or if the band is as wide as if nothing were known
     */
    public static Amount<Share> chance(int good, int sheets, Estimate<Share> goodShare) {
        checkCount(good, "good sheets");
        checkCount(sheets, "sheets made");
        double likely = likely(goodShare);
        double chance;
        if (isKnown(goodShare)) {
            chance = enough(sheets, good, likely);
        } else {
            double counted = counted(goodShare);
            chance = enough(sheets, good, likely * counted, (1 - likely) * counted);
        }
        return Kinds.SHARE.ofSi(Math.min(1, chance), "%");
    }

    private static double likely(Estimate<Share> goodShare) {
        Objects.requireNonNull(goodShare, "goodShare");
        return Kinds.SHARE.siAboveZero(goodShare.likely(), "share of good sheets");
    }

    private static boolean isKnown(Estimate<Share> goodShare) {
        return goodShare.likely().si() >= 1
                || goodShare.high().si() - goodShare.low().si() <= 1e-6;
    }

    /** As many sheets counted as leave such a band. */
    private static double counted(Estimate<Share> goodShare) {
        double likely = goodShare.likely().si();
        double width = goodShare.high().si() - goodShare.low().si();
        // Half a sheet good, or half a sheet bad: what is taken before anything was counted.
        double nothing = Math.log(0.5 / Math.min(likely, 1 - likely));
        double most = Math.log(1e15);
        if (width(likely, Math.exp(nothing)) <= width) {
            throw Refused.of(
                    "sheets.band-wide",
                    "share of good sheets: a band from " + goodShare.low() + " to " + goodShare.high()
                            + " says no more than that nothing was counted. Count the good and the bad sheets of a run.",
                    "low",
                    goodShare.low().toString(),
                    "high",
                    goodShare.high().toString());
        }
        return Math.exp(Roots.between(nothing, most, at -> width(likely, Math.exp(at)) - width));
    }

    /**
     * Returns the sheets to make so that enough are good, from a count of good and bad ones made before.
     *
     * @param good the good sheets wanted, 1 or more
     * @param goodBefore the good sheets of earlier runs, 0 or more
     * @param badBefore the bad sheets of earlier runs, 0 or more
     * @param confidence how often that many should come out, from 50 % to 99.99 %
     * @return the least number of sheets that will do
     * @throws Refused if a value is out of range, or if it takes more sheets than a plan may have
     * @source beta-binomial distribution with the prior of Jeffreys, recalled, not looked up
     */
    public static Count toMake(int good, int goodBefore, int badBefore, Quantity<Share> confidence) {
        Limits.PULLED.check(goodBefore, "good sheets before");
        Limits.PULLED.check(badBefore, "bad sheets before");
        return spread(
                good,
                goodBefore + 0.5,
                badBefore + 0.5,
                confidence,
                goodBefore + " of " + (goodBefore + badBefore) + " were good");
    }

    private static Count spread(int good, double a, double b, Quantity<Share> confidence, String known) {
        checkCount(good, "good sheets");
        double wanted = confidence(confidence);
        int sheets = least(good, n -> enough(n, good, a, b) >= wanted - EDGE, "good sheets", good);
        return made(good, sheets, enough(sheets, good, a, b), known);
    }

    private static Count made(int good, int sheets, double reached, String known) {
        return new FoundCount(
                sheets,
                Kinds.SHARE.ofSi(Math.min(1, reached), "%"),
                "make " + sheets + (sheets == 1 ? " sheet" : " sheets") + ": " + good + " or more are good in "
                        + Units.fourDigits(100 * Math.min(1, reached)) + " % of such runs, where " + known);
    }

    /**
     * Returns the sheets to look at, all of them found good, so that at most a share of a long run is bad:
     * {@code (1 - p)^n <= 1 - confidence}.
     *
     * @param badShare the greatest share of bad ones that is borne, from 0.0001 % to 99.99 %
     * @param confidence how sure that is to be, from 50 % to 99.99 %
     * @return the sheets to look at, drawn from all over the run
     * @throws Refused if a value is out of range, or if it takes more sheets than a plan may have
     * @source binomial distribution with none found, as in any book on statistics
     */
    public static Count toInspect(Quantity<Share> badShare, Quantity<Share> confidence) {
        double bad = badShare(badShare);
        double wanted = confidence(confidence);
        double sheets = Math.ceil(Math.log1p(-wanted) / Math.log1p(-bad) - 1e-9);
        if (sheets > Limits.PULLED.most()) {
            throw tooMany("sheets to look at", 1);
        }
        int count = Math.max(1, (int) sheets);
        return inspected(count, -Math.expm1(count * Math.log1p(-bad)), bad, "the run");
    }

    /**
     * Returns the sheets to look at of a lot, all of them found good, so that at most a share of the lot is bad.
     *
     * @param lot the sheets in the lot, 1 or more
     * @param badShare the greatest share of bad ones that is borne, from 0.0001 % to 99.99 %
     * @param confidence how sure that is to be, from 50 % to 99.99 %
     * @return the sheets to look at, drawn from all over the lot; never more than there are
     * @throws Refused if a value is out of range
     * @source hypergeometric distribution with none found, as in any book on statistics
     */
    public static Count toInspect(int lot, Quantity<Share> badShare, Quantity<Share> confidence) {
        checkCount(lot, "sheets of the lot");
        double bad = badShare(badShare);
        double wanted = confidence(confidence);
        // The least number of bad sheets that is more than is borne.
        int over = (int) Math.floor(bad * lot + 1e-9) + 1;
        int sheets = least(1, n -> n >= lot || found(lot, over, n) >= wanted - EDGE, "sheets to look at", 1);
        return inspected(sheets, found(lot, over, sheets), bad, "the lot of " + lot);
    }

    private static double found(int lot, int over, int sheets) {
        return sheets > lot - over
                ? 1
                : HypergeometricDistribution.of(lot, over, sheets).survivalProbability(0);
    }

    private static Count inspected(int sheets, double reached, double bad, String of) {
        return new FoundCount(
                sheets,
                Kinds.SHARE.ofSi(Math.min(1, reached), "%"),
                "look at " + sheets + (sheets == 1 ? " sheet" : " sheets") + ": if none is bad, at most "
                        + Kinds.SHARE.ofSi(bad, "%") + " of " + of + " is bad, "
                        + Units.fourDigits(100 * Math.min(1, reached)) + " % sure");
    }

    /**
     * Returns the sheets to weigh or measure so that their mean is known:
     * {@code t s/sqrt(n) <= d}, t of Student with n − 1 degrees of freedom.
     *
     * @param scatter the standard deviation of single sheets, over their mean
     * @param within how far the mean may be off either way, over the mean, above zero
     * @param confidence how often it lies so near, from 50 % to 99.99 %
     * @return the least number of sheets that will do, 2 or more; drawn from all over the run
     * @throws Refused if a value is out of range, or if it takes more sheets than a plan may have
     * @source Student's t, as in any book on statistics; the scatter is taken to turn out as stated
     */
    public static Count toWeigh(Quantity<Share> scatter, Quantity<Share> within, Quantity<Share> confidence) {
        double deviation = Kinds.SHARE.si(scatter, "scatter of the sheets");
        double off = Kinds.SHARE.siAboveZero(within, "distance of the mean");
        double wanted = confidence(confidence);
        int sheets = least(2, n -> near(n, deviation, off) >= wanted - EDGE, "sheets to measure", 2);
        double reached = near(sheets, deviation, off);
        return new FoundCount(
                sheets,
                Kinds.SHARE.ofSi(reached, "%"),
                "measure " + sheets + " sheets: their mean lies within " + Kinds.SHARE.ofSi(off, "%")
                        + " of that of the run in " + Units.fourDigits(100 * reached)
                        + " % of such runs, at a scatter of " + Kinds.SHARE.ofSi(deviation, "%"));
    }

    private static double near(int sheets, double deviation, double off) {
        return deviation == 0
                ? 1
                : 1 - 2 * TDistribution.of(sheets - 1.0).survivalProbability(off * Math.sqrt(sheets) / deviation);
    }

    private static double confidence(Quantity<Share> confidence) {
        return Kinds.SHARE.siWithin(confidence, "confidence", 0.5, 0.9999);
    }

    private static double badShare(Quantity<Share> badShare) {
        return Kinds.SHARE.siWithin(badShare, "share of bad sheets", 1e-6, 0.9999);
    }

    private static void checkCount(int count, String what) {
        if (count < 1) {
            throw Refused.of(
                    "count.below-one", what + ": " + count + " given; must be 1 or more.", "given", count, "least", 1);
        }
        Limits.PULLED.check(count, what);
    }

    /** The least number that will do, where every greater one does too. */
    private static int least(int from, IntPredicate does, String what, int wanted) {
        int most = Limits.PULLED.most();
        int below = from - 1;
        int above = from;
        while (!does.test(above)) {
            if (above >= most) {
                throw tooMany(what, wanted);
            }
            below = above;
            above = (int) Math.min(most, 2L * above);
        }
        while (above - below > 1) {
            int middle = (above + below) >>> 1;
            if (does.test(middle)) {
                above = middle;
            } else {
                below = middle;
            }
        }
        return above;
    }

    private static Refused tooMany(String what, int wanted) {
        return Refused.of(
                "sheets.too-many",
                what + ": it takes more than " + Limits.PULLED.most() + " sheets to have " + wanted
                        + " of them; look to the share first, or ask for less confidence.",
                "wanted",
                wanted,
                "most",
                Limits.PULLED.most());
    }

    /** The chance of so many good ones or more. */
    private static double enough(int sheets, int good, double share) {
        return good > sheets ? 0 : BinomialDistribution.of(sheets, share).survivalProbability(good - 1);
    }

    /**
     * The chance of so many good ones or more, the share of good ones being spread: the weights of all counts from the
     * ratios of neighbours, from the likeliest count to both sides, so that nothing overflows.
     */
    private static double enough(int sheets, int good, double a, double b) {
        if (good > sheets) {
            return 0;
        }
        int middle = (int) Math.min(sheets, Math.max(0, Math.round(sheets * a / (a + b))));
        double all = 1;
        double enough = middle >= good ? 1 : 0;
        double weight = 1;
        for (int k = middle; k < sheets; k++) {
            weight *= (sheets - k) * (k + a) / ((k + 1) * (sheets - k - 1 + b));
            all += weight;
            enough += k + 1 >= good ? weight : 0;
        }
        weight = 1;
        for (int k = middle; k > 0; k--) {
            weight *= k * (sheets - k + b) / ((sheets - k + 1) * (k - 1 + a));
            all += weight;
            enough += k - 1 >= good ? weight : 0;
        }
        return enough / all;
    }

    private static double width(double likely, double counted) {
        BetaDistribution beta = BetaDistribution.of(likely * counted, (1 - likely) * counted);
        return beta.inverseCumulativeProbability(0.95) - beta.inverseCumulativeProbability(0.05);
    }
}
