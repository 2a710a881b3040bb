package org.papermath.cost;

import javax.measure.quantity.Time;
import org.papermath.evidence.Estimate;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;

/**
 * The hours of a plan by kind, s: of hands, and of a machine that runs with somebody near. Waiting has none. All that is read
 * of the hours of a plan is read here.
 *
 * <p>The hours of a batch hold those its beater runs; these are set, have no band, and are taken out of them here.
 */
final class PlannedHours {
    /** Hours with how far their band reaches below and above, s. */
    record Span(double likely, double below, double above) {}

    private PlannedHours() {}

    /** Hands on the whole order. */
    static Span hands(MakingPlan plan) {
        double machine =
                plan.batches().stream().mapToDouble(PlannedHours::machine).sum();
        return span(plan.workingHours(), machine);
    }

    /** Hands on a batch: pots, filling and emptying the beater, scale, charging of the vat. */
    static Span hands(BatchPlan batch) {
        return span(batch.workingHours(), machine(batch));
    }

    /** Hands on a piece, from forming to folding. */
    static Span hands(PiecePlan piece) {
        return span(piece.workingHours(), 0);
    }

    /** The roll of the beater turning. */
    static double machine(BatchPlan batch) {
        return batch.beatingStage().map(beating -> beating.rollTime().si()).orElse(0.0);
    }

    private static Span span(Estimate<Time> all, double machine) {
        double likely = all.likely().si();
        return new Span(
                Math.max(0, likely - machine),
                likely - all.low().si(),
                all.high().si() - likely);
    }
}
