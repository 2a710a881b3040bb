package org.papermath.plan;

import org.papermath.evidence.Assumption;

/** What one assumption does to the forecasts of a plan, and what a studio can measure to know it better. */
public sealed interface Sensitivity permits PlannedSensitivity {
    /** {@return the assumption} */
    Assumption assumption();

    /** {@return the forecast it widens most, for example {@code grammage of programme}} */
    String widens();

    /** {@return its share in the squared width of that band, 0 to 1} */
    double share();

    /** {@return its weight over all the main forecasts, 0 to 1; the list is sorted by it} */
    double weight();

    /** {@return the cheapest measurement that settles it} */
    String measurement();
}
