package org.papermath.plan;

import org.papermath.evidence.Assumption;

/**
 * What one assumption does to the forecasts of a plan, and what a studio can measure to know it better.
 *
 * @param assumption the assumption
 * @param widens the forecast it widens most, for example {@code grammage of programme}
 * @param share its share in the squared width of that band, 0 to 1
 * @param weight its weight over all the main forecasts, 0 to 1; the list is sorted by it
 * @param measurement the cheapest measurement that settles it
 */
public record Sensitivity(Assumption assumption, String widens, double share, double weight, String measurement) {
    @Override
    public String toString() {
        return assumption.key() + ": " + Math.round(100 * share) + " % of the band of the " + widens + "; "
                + measurement;
    }
}
