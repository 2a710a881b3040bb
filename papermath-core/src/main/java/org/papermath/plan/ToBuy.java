package org.papermath.plan;

import javax.measure.quantity.Mass;
import org.papermath.quantity.Amount;

/** Something to buy before the work can begin. */
public sealed interface ToBuy permits PlannedToBuy {
    /** {@return the fibre or the additive} */
    String what();

    /** {@return how much, as it is sold} */
    Amount<Mass> mass();

    /** {@return what it is for} */
    String why();
}
