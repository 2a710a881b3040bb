package org.papermath.plan;

import javax.measure.quantity.Mass;

import org.papermath.quantity.Amount;

/**
 * Something to buy before the work can begin.
 *
 * @param what the fibre or the additive
 * @param mass how much, as it is sold
 * @param why what it is for
 */
public record ToBuy(String what, Amount<Mass> mass, String why) {
    @Override
    public String toString() {
        return mass + " " + what + " (" + why + ")";
    }
}
