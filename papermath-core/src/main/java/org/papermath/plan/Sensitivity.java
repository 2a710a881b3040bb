package org.papermath.plan;

import javax.measure.quantity.Time;
import org.papermath.evidence.Assumption;
import org.papermath.quantity.Amount;

/** What one assumption does to the forecasts of a plan, and what a studio can measure to know it better. */
public sealed interface Sensitivity permits PlannedSensitivity {
    /** {@return the assumption} */
    Assumption assumption();

    /** {@return the forecast it widens most, for example {@code grammage of programme}} */
    String widens();

    /** {@return the share in the squared width of that band of what is not known of it, 0 to 1} */
    double share();

    /** {@return its weight over all the main forecasts, 0 to 1; the list is sorted by it} */
    double weight();

    /** {@return the cheapest measurement that settles it} */
    String measurement();

    /** {@return how long hands are on that measurement, about; common practice} */
    Amount<Time> minutes();

    /**
     * {@return by what part the band of {@link #widens} would narrow if the assumption were known for sure, 0 to 1; less by
     * as much as the measurement leaves open}
     */
    double takesAway();
}
