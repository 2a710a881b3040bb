package org.papermath.plan;

import java.util.Map;
import javax.measure.quantity.Mass;
import org.papermath.quantity.Amount;

/** The accounts of one substance of a batch: all that comes in goes out to a named account. Immutable. */
public sealed interface Balance permits PlannedBalance {
    /** {@return what is counted, for example {@code fibre} or the name of an additive} */
    String substance();

    /** {@return what comes in, by account} */
    Map<String, Amount<Mass>> in();

    /** {@return what goes out, by account; {@code stock put by} is below zero where the stock would run short} */
    Map<String, Amount<Mass>> out();

    /** {@return the sum of all that came in} */
    Amount<Mass> totalIn();

    /** {@return the sum of all that went out; equal to {@link #totalIn} but for rounding} */
    Amount<Mass> totalOut();
}
