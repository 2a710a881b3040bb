package org.papermath.cost;

import javax.measure.quantity.Time;
import org.papermath.evidence.Estimate;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;

/**
 * The hours of a plan by kind, s: of hands, and of a machine that runs with somebody near. Waiting has none. All that is read
 * of the hours of a plan is read here.
 * */
final class PlannedHours {
    /** Hours with how far their band reaches below and above, s. */
    record Span(double likely, double below, double above) {}

    private PlannedHours() {}

    /** Hands on the whole order. */
    static Span hands(MakingPlan plan) {
        return span(plan.workingHours());
    }

    /** Hands on a batch: pots, filling and emptying the beater, scale, charging of the vat. */
    static Span hands(BatchPlan batch) {
        return span(batch.workingHours());
    }

    /** Hands on a piece, from forming to folding. */
    static Span hands(PiecePlan piece) {
        return span(piece.workingHours());
    }

    /** The roll of the beater turning; for stuff that is shared, the part of the batch. */
    static double machine(BatchPlan batch) {
        return batch.rollTime().si();
    }

    /** Hands on the steps of one's own. */
    static double own(MakingPlan plan) {
        return plan.ownStepHours().si();
    }

    private static Span span(Estimate<Time> all) {
        double likely = all.likely().si();
        return new Span(likely, likely - all.low().si(), all.high().si() - likely);
    }
}
