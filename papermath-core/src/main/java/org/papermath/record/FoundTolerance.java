package org.papermath.record;

import javax.measure.Quantity;
import org.papermath.quantity.Amount;

/** Limits as they were calculated. */
record FoundTolerance<Q extends Quantity<Q>>(Amount<Q> least, Amount<Q> most) implements OrderTolerance<Q> {
    @Override
    public boolean accepts(Amount<Q> amount) {
        return amount.compareTo(least) >= 0 && amount.compareTo(most) <= 0;
    }

    @Override
    public String toString() {
        return least + " to " + most;
    }
}
