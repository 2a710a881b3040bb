package org.papermath.sheet;

import java.util.Objects;
import javax.measure.Quantity;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * What comes out good of what is started, through one step or several. Immutable.
 *
 * <p>It is counted on what is <em>formed</em>, so that 18 % reject leave 82 of a hundred formed; what is made over what is
 * <em>wanted</em> is an {@link Extra}. The two are no more to be mixed than a discount and a surcharge: 18 % extra on 90 are
 * 107, but for 90 good with 18 % reject 110 are formed.
 *
 * <pre>{@code
 * Yield all = Yield.of(Share.percent(92), Share.percent(95), Share.percent(97), Share.percent(94));
 * SheetCounts.toForm(75, all); // 95
 * }</pre>
 */
public final class Yield {
    private static final double GREATEST_REJECT = 0.99;

    private final double good;

    private Yield(double good) {
        this.good = good;
    }

    /**
     * Makes the yield of steps after each other: the product of their good shares.
     *
     * @param good the share that is good of what the first step begins with, above zero
     * @param next the same of each step after it, in any order
     * @return the yield
     * @throws Refused if a share is out of range or of another kind
     */
    @SafeVarargs
    public static Yield of(Quantity<Share> good, Quantity<Share>... next) {
        Objects.requireNonNull(next, "next");
        double product = Kinds.SHARE.siAboveZero(good, "share of good sheets");
        for (Quantity<Share> step : next) {
            product *= Kinds.SHARE.siAboveZero(step, "share of good sheets");
        }
        return new Yield(product);
    }

    /**
     * Makes the yield of a step by what it rejects.
     *
     * @param reject the share of what is formed that is not good, at most 99 %
     * @return the yield
     * @throws Refused if the share is out of range or of another kind
     */
    public static Yield ofReject(Quantity<Share> reject) {
        return new Yield(1 - Kinds.SHARE.siWithin(reject, "reject of what is formed", 0, GREATEST_REJECT));
    }

    /**
     * Returns the yield of this and another step after it.
     *
     * @param next the step after it
     * @return the product
     */
    public Yield then(Yield next) {
        Objects.requireNonNull(next, "next");
        return new Yield(good * next.good);
    }

    /**
     * Returns the share that is good at last.
     *
     * @return above zero
     */
    public Amount<Share> good() {
        return Kinds.SHARE.ofSi(good, "%");
    }

    double share() {
        return good;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Yield that && good == that.good;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(good);
    }

    @Override
    public String toString() {
        return good() + " of what is formed are good";
    }
}
