package org.papermath.plan;

import javax.measure.quantity.Mass;

import org.papermath.quantity.Amount;

/** What was found to buy. */
record PlannedToBuy(String what, Amount<Mass> mass, String why) implements ToBuy {
    @Override
    public String toString() {
        return mass + " " + what + " (" + why + ")";
    }
}
