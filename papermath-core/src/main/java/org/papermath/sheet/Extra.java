package org.papermath.sheet;

import java.util.Objects;
import javax.measure.Quantity;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Units;

/**
 * What is made over what is wanted: a share of it, a number, or the larger of both. Immutable.
 *
 * <p>It is counted on what is <em>wanted</em>. What fails of what is <em>formed</em> is a {@link Yield}.
 *
 * <pre>{@code
 * Extra.largerOf(Share.percent(10), 50).on(130); // 180
 * Extra.share(Share.percent(12)).and(3).on(80); // 93
 * }</pre>
 */
public final class Extra {
    /** Nothing extra. */
    public static final Extra NONE = new Extra(0, 0, 0);

    private final double share;
    /** The least number, whatever the share comes to. */
    private final int least;

    private final int besides;

    private Extra(double share, int least, int besides) {
        this.share = share;
        this.least = least;
        this.besides = besides;
    }

    /**
     * Makes a share of what is wanted, rounded up.
     *
     * @param ofWanted the share, within {@link Limits#SPARE}
     * @return the extra
     * @throws Refused if the share is out of range or of another kind
     */
    public static Extra share(Quantity<Share> ofWanted) {
        return largerOf(ofWanted, 0);
    }

    /**
     * Makes a number of pieces, whatever is wanted.
     *
     * @param pieces the pieces, within {@link Limits#KEPT}
     * @return the extra
     * @throws Refused if the number is out of range
     */
    public static Extra pieces(int pieces) {
        return new Extra(0, Limits.KEPT.check(pieces, "extra pieces"), 0);
    }

    /**
     * Makes the larger of a share of what is wanted and a number, as printers ask for overs: 10 % or 50, whichever is more.
     *
     * @param ofWanted the share, within {@link Limits#SPARE}
     * @param pieces the pieces, within {@link Limits#KEPT}
     * @return the extra
     * @throws Refused if a value is out of range or the share of another kind
     */
    public static Extra largerOf(Quantity<Share> ofWanted, int pieces) {
        return new Extra(Limits.SPARE.check(ofWanted, "extra").si(), Limits.KEPT.check(pieces, "extra pieces"), 0);
    }

    /**
     * Returns this with pieces besides, such as those that are kept.
     *
     * @param pieces the pieces, within {@link Limits#KEPT}
     * @return the extra
     * @throws Refused if the number is out of range
     */
    public Extra and(int pieces) {
        return new Extra(share, least, Limits.KEPT.check(besides + pieces, "extra pieces"));
    }

    /**
     * Returns what is wanted with the extra.
     *
     * @param wanted the pieces wanted, within {@link Limits#PULLED}
     * @return wanted and extra together; a share of a piece counts as one
     * @throws Refused if the number is out of range
     */
    public int on(int wanted) {
        Limits.PULLED.check(wanted, "pieces wanted");
        // A small guard, so that rounding does not ask for one piece more than the arithmetic.
        int byShare = (int) Math.ceil(wanted * (1 + share) - 1e-9);
        return Math.max(byShare, wanted + least) + besides;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Extra that && share == that.share && least == that.least && besides == that.besides;
    }

    @Override
    public int hashCode() {
        return Objects.hash(share, least, besides);
    }

    @Override
    public String toString() {
        String part = Kinds.SHARE.ofSi(share, "%") + " extra";
        String text = share > 0 && least > 0
                ? part + " or " + least + ", whichever is more"
                : share > 0 ? part : Units.fourDigits(least) + " extra";
        return besides > 0 ? text + ", and " + besides + " besides" : text;
    }
}
