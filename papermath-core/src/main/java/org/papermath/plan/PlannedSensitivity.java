package org.papermath.plan;

import org.papermath.evidence.Assumption;

/** What was found to widen a forecast. */
record PlannedSensitivity(Assumption assumption, String widens, double share, double weight, String measurement)
        implements Sensitivity {
    @Override
    public String toString() {
        return assumption.key() + ": " + Math.round(100 * share) + " % of the band of the " + widens + "; "
                + measurement;
    }
}
