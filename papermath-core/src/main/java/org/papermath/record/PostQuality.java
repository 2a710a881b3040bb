package org.papermath.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * How even sheets are, given post by post and from the bottom of each to its top: does the vat drift along the run, does
 * the place in the post tell, or does the hand scatter? Immutable.
 *
 * <p>{@code value = mean + run (i - i_m) + place (j - j_m) + scatter}, i counted through the run and j within the post,
 * by least squares; each trend is tested with the other in place by Student's t with n − 3 degrees of freedom. Within a
 * post both counts rise together: it is the step back from one post to the next that tells them apart, so few posts tell
 * little.
 *
 * <p>A trend of the place comes back in every post: the sheets below lie longer under wet felts and more weight, those on
 * top are couched on the highest pile (common practice). A vat that is charged only between posts runs down in each and
 * looks the same; numbers cannot tell the two apart, a charge in the middle of a post does.
 *
 * @param <Q> what was measured
 * @source least squares with two variables and Student's t, as in any book on statistics
 */
public final class PostQuality<Q extends Quantity<Q>> {
    private final MeasuredSheets<Q> sheets;
    private final int[] posts;
    private final int[] places;
    private final double[] off;
    private final double[] free;
    private final double squares;
    private final FoundTrend run;
    private final FoundTrend place;

    /** A trend from sheet to sheet. */
    public sealed interface Trend permits FoundTrend {
        /** {@return what a sheet differs from the one before, over the mean of all; below zero when they become less} */
        double share();

        /** {@return the trend over its standard error} */
        double t();

        /** {@return how often chance alone would bring such a trend, up or down} */
        double chance();

        /**
         * Returns whether the trend is more than chance would bring once in twenty times.
         *
         * @return whether there is one
         */
        boolean isReal();
    }

    private record FoundTrend(double share, double t, double chance) implements Trend {
        @Override
        public boolean isReal() {
            return chance < MeasuredSheets.CHANCE;
        }

        @Override
        public String toString() {
            return Units.fourDigits(100 * share) + " % a sheet (t = " + Units.fourDigits(t) + ")";
        }
    }

    private PostQuality(MeasuredSheets<Q> sheets, int[] posts, int[] places) {
        this.sheets = sheets;
        this.posts = posts;
        this.places = places;
        int n = sheets.count();
        double[] along = new double[n];
        double[] within = new double[n];
        double middle = 0;
        for (int one : places) {
            middle += (double) one / n;
        }
        for (int i = 0; i < n; i++) {
            along[i] = i - (n - 1) / 2.0;
            within[i] = places[i] - middle;
        }
        double[] alongAlone = without(along, within);
        double[] withinAlone = without(within, along);
        if (times(withinAlone, withinAlone) < 1e-9 * times(within, within) + 1e-9) {
            throw Refused.of(
                    "series.posts",
                    "posts: the places in them do not tell from the run; at least two posts are needed, one of them of two"
                            + " sheets or more.");
        }
        double[] values = new double[n];
        for (int i = 0; i < n; i++) {
            values[i] = sheets.moments().off(i);
        }
        double byRun = times(alongAlone, values) / times(alongAlone, alongAlone);
        double byPlace = times(withinAlone, values) / times(withinAlone, withinAlone);
        this.off = new double[n];
        this.free = new double[n];
        double about = 0;
        for (int i = 0; i < n; i++) {
            off[i] = values[i] - byRun * along[i] - byPlace * within[i];
            free[i] = 1
                    - 1.0 / n
                    - along[i] * along[i] / times(along, along)
                    - withinAlone[i] * withinAlone[i] / times(withinAlone, withinAlone);
            about += off[i] * off[i];
        }
        this.squares = about;
        double scatter = Math.max(Math.sqrt(about / (n - 3)), sheets.leastDeviation());
        this.run = trend(byRun, Math.sqrt(times(alongAlone, alongAlone)) / scatter);
        this.place = trend(byPlace, Math.sqrt(times(withinAlone, withinAlone)) / scatter);
    }

    private FoundTrend trend(double slope, double perError) {
        double t = sheets.isEven() ? 0 : slope * perError;
        return new FoundTrend(slope / sheets.mean(), t, MeasuredSheets.chance(t, sheets.count() - 3.0));
    }

    /** What is left of a column when what the other tells of it is taken away; neither has a mean. */
    private static double[] without(double[] column, double[] other) {
        double square = times(other, other);
        double part = square > 0 ? times(column, other) / square : 0;
        double[] left = new double[column.length];
        for (int i = 0; i < left.length; i++) {
            left[i] = column[i] - part * other[i];
        }
        return left;
    }

    private static double times(double[] one, double[] other) {
        double sum = 0;
        for (int i = 0; i < one.length; i++) {
            sum += one[i] * other[i];
        }
        return sum;
    }

    /**
     * Reads the posts of a run.
     *
     * @param <Q> what was measured
     * @param kind the kind of it
     * @param posts the posts in the order of making, two or more; in each what was measured of its sheets from the bottom
     *     to the top, every one of them
     * @return the posts
     * @throws Refused if there are fewer than four sheets or two posts, no post has two sheets, a value is not above
     *     zero, or the kind is temperature
     */
    public static <Q extends Quantity<Q>> PostQuality<Q> of(
            Kind<Q> kind, List<? extends List<? extends Quantity<Q>>> posts) {
        Objects.requireNonNull(kind, "kind");
        return of(kind.name(), kind, posts);
    }

    /**
     * Reads the posts of a run, of something that has a name of its own.
     *
     * @param <Q> what was measured
     * @param what what it is called: {@code thickness}, {@code width} …
     * @param kind the kind of it
     * @param posts the posts in the order of making, as {@link #of(Kind, List)}
     * @return the posts
     * @throws Refused as {@link #of(Kind, List)}
     */
    public static <Q extends Quantity<Q>> PostQuality<Q> of(
            String what, Kind<Q> kind, List<? extends List<? extends Quantity<Q>>> posts) {
        Objects.requireNonNull(what, "what");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(posts, "posts");
        List<Quantity<Q>> all = new ArrayList<>();
        posts.forEach(all::addAll);
        int n = all.size();
        if (n < 4) {
            throw Refused.of(
                    "series.posts-short",
                    "posts: " + n + " sheets given in all; at least 4 are needed to tell the place in the post from the"
                            + " run.",
                    "given",
                    n,
                    "least",
                    4);
        }
        int[] post = new int[n];
        int[] place = new int[n];
        int at = 0;
        for (int p = 0; p < posts.size(); p++) {
            for (int j = 0; j < posts.get(p).size(); j++) {
                post[at] = p + 1;
                place[at++] = j + 1;
            }
        }
        return new PostQuality<>(MeasuredSheets.of(what, kind, all), post, place);
    }

    /** {@return the mean of all sheets} */
    public Amount<Q> mean() {
        return sheets.amount(sheets.mean());
    }

    /** {@return the standard deviation about both trends: the hand} */
    public Amount<Q> residual() {
        return sheets.amount(residualSi());
    }

    private double residualSi() {
        return Math.sqrt(squares / (sheets.count() - 3));
    }

    /** {@return the trend along the run, that within the post taken away: the vat} */
    public Trend run() {
        return run;
    }

    /** {@return the trend from the bottom of a post to its top, that of the run taken away} */
    public Trend place() {
        return place;
    }

    /**
     * Returns what the figures should not be read without: a sheet that lies off both trends by more than chance would
     * bring to any of so many sheets once in twenty times, of five sheets or more; no sheet is left out of the figures.
     * And that a trend within the post may be that of a vat charged between posts.
     *
     * @return an unmodifiable list
     * @source residual over its error from the other sheets, by Student's t with n − 4 degrees of freedom, chance
     *     divided by n; recalled, not looked up
     */
    public List<Notice> notices() {
        List<Notice> notices = new ArrayList<>();
        int n = sheets.count();
        for (int i = 0; n > 4 && !sheets.isEven() && i < n; i++) {
            if (sheets.isApart(off[i], free[i], squares, n - 3)) {
                notices.add(Notice.warning(
                        "series.outlier",
                        "Sheet " + places[i] + " of post " + posts[i] + " at " + sheets.amount(sheets.value(i))
                                + " lies off the trends of the others by more than chance; look at it before you believe"
                                + " these figures.",
                        "sheet",
                        places[i],
                        "post",
                        posts[i],
                        "value",
                        sheets.amount(sheets.value(i)).toString()));
            }
        }
        if (place.isReal()) {
            notices.add(Notice.note(
                    "series.post-trend",
                    "A trend that comes back in every post is of couching and pressing, or of a vat that was charged only"
                            + " between posts; if it was, charge in the middle of a post and see."));
        }
        return List.copyOf(notices);
    }

    /** Returns what makes the sheets uneven, then the figures. */
    @Override
    public String toString() {
        String figures = "mean " + mean() + ", sd about it all " + residual() + "; " + sheets.count() + " sheets in "
                + posts[posts.length - 1] + " posts";
        if (sheets.isEven()) {
            return "all alike: " + figures;
        }
        String vat = said(run, "along the run");
        String post = said(place, "from the bottom of a post to its top");
        if (run.isReal() && place.isReal()) {
            return "the vat and the post: " + vat + ", " + post + "; " + figures;
        }
        if (run.isReal()) {
            return "the vat, not the post: " + vat + ", " + post + "; " + figures;
        }
        return place.isReal()
                ? "the post, not the run of the vat: " + post + ", " + vat + "; " + figures
                : "the hand, no trend: " + vat + ", " + post + "; " + figures;
    }

    private String said(FoundTrend trend, String where) {
        return (trend.isReal()
                        ? Units.fourDigits(100 * Math.abs(trend.share())) + " % "
                                + sheets.words().word(trend.share()) + " from sheet to sheet "
                        : "no more than chance ")
                + where + " (t = " + Units.fourDigits(trend.t()) + ")";
    }
}
