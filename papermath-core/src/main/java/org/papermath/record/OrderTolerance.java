package org.papermath.record;

import java.util.Objects;
import javax.measure.Quantity;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * What a customer accepts around what was ordered, as trade customs state it: a share of the order either way.
 *
 * @param <Q> the quantity type
 */
public sealed interface OrderTolerance<Q extends Quantity<Q>> permits FoundTolerance {
    /** {@return the least accepted} */
    Amount<Q> least();

    /** {@return the greatest accepted} */
    Amount<Q> most();

    /**
     * Makes the limits around an order.
     *
     * @param <Q> the quantity type
     * @param ordered what was ordered
     * @param tolerance the share either way, below 100 %
     * @return the limits
     * @throws Refused if the tolerance is out of range
     */
    static <Q extends Quantity<Q>> OrderTolerance<Q> around(Amount<Q> ordered, Quantity<Share> tolerance) {
        double share = Kinds.SHARE.siWithin(tolerance, "tolerance of the order", 0, 0.99);
        Kind<Q> kind = ordered.kind();
        return new FoundTolerance<>(
                kind.ofSi(ordered.si() * (1 - share)).to(ordered.getUnit()),
                kind.ofSi(ordered.si() * (1 + share)).to(ordered.getUnit()));
    }

    /**
     * Returns whether an amount is accepted.
     *
     * @param amount what was made
     * @return whether it lies within the limits
     */
    boolean accepts(Amount<Q> amount);

    /**
     * Holds a series of sheets against the order: where the mean of the run lies, and what share of its sheets is inside.
     *
     * @param series what was measured of the sheets
     * @return the judgement, its verdict first: inside, outside, or how many more to measure
     * @throws Refused if the series is of another kind
     */
    default SheetControl<Q> judge(SheetQuality<Q> series) {
        return Objects.requireNonNull(series, "series").within(least(), most());
    }
}
