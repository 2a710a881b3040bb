package org.papermath.plan;

import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.PieceWork;
import org.papermath.engine.Pressing;
import org.papermath.evidence.Estimate;
import org.papermath.order.Piece;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Solids;

/** A piece as it was worked out. */
record PlannedPiece(
        Piece piece,
        String batch,
        PieceCounts counts,
        FormingPlan forming,
        Stage<VatPlan> vatStage,
        Stage<PourPlan> pourStage,
        Stage<Estimate<Time>> drainTimeStage,
        Estimate<Length> matThickness,
        Estimate<Mass> couchedMass,
        Stage<PostsPlan> postsStage,
        Stage<PressingPlan> pressStage,
        Estimate<Solids> solids,
        Stage<DryingPlan> dryingStage,
        Stage<SizingPlan> sizingStage,
        FinishedPiece finished,
        Stage<EnvelopePlan> envelopeStage,
        Stage<MailPlan> mailStage,
        Estimate<Time> workingHours)
        implements PiecePlan {
    static PiecePlan of(PlainNumbers in, int p) {
        Estimates numbers = in.estimates();
        Piece ordered = in.order().pieces().get(p);
        return new PlannedPiece(
                ordered,
                ordered.recipe(),
                PieceCounts.of(in, p),
                FormingPlan.of(in, p),
                VatPlan.of(in, p),
                PourPlan.of(in, p),
                in.known(
                        FormingSheets.DRAIN,
                        p,
                        "drain-time.by-stopwatch",
                        "the stuff is too slow, or its drainability not known: time one sheet with a stopwatch",
                        () -> numbers.of(Kinds.TIME, FormingSheets.DRAIN, p)),
                numbers.of(Kinds.LENGTH, FormingSheets.MAT, p),
                numbers.of(Kinds.MASS, FormingSheets.COUCHED, p),
                PostsPlan.of(in, p),
                PressingPlan.of(in, p),
                numbers.of(Kinds.SOLIDS, Pressing.SOLIDS, p),
                DryingPlan.of(in, p),
                SizingPlan.of(in, p),
                FinishedPiece.of(in, p, ordered),
                EnvelopePlan.of(in, p, ordered),
                MailPlan.of(in, p, ordered),
                numbers.of(Kinds.TIME, PieceWork.HOURS, p));
    }

    @Override
    public String toString() {
        return name() + ": " + counts;
    }
}
