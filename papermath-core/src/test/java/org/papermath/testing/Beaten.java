package org.papermath.testing;

import org.papermath.evidence.Assumptions;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.pulp.BeatingState;
import org.papermath.quantity.Amounts;

/** States of beating by the shipped table. */
public final class Beaten {
    private Beaten() {}

    /** A fibre after hours in a studio beater at its rated load. */
    public static BeatingState hours(Fibre fibre, double hours) {
        return hours(Furnish.of(fibre), hours);
    }

    /** A furnish after hours in a studio beater at its rated load. */
    public static BeatingState hours(Furnish furnish, double hours) {
        return BeatingState.after(Assumptions.standard(), furnish, "", Amounts.hours(hours));
    }
}
