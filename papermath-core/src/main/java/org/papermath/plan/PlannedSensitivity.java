package org.papermath.plan;

import javax.measure.quantity.Time;
import org.papermath.evidence.Assumption;
import org.papermath.quantity.Amount;

/** What was found to widen a forecast. */
record PlannedSensitivity(
        Assumption assumption,
        String widens,
        double share,
        double weight,
        String measurement,
        Amount<Time> minutes,
        double takesAway)
        implements Sensitivity {
    @Override
    public String toString() {
        return assumption.key() + ": " + Math.round(100 * share) + " % of the band of the " + widens + "; "
                + measurement;
    }
}
