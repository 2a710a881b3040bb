package org.papermath.plan;

import org.papermath.plan.Job.PieceJob;

/** What share of the sheets, and then of the pieces cut from them, comes through every step of the work. */
final class Yields {
    private final Job job;

    Yields(Job job) {
        this.job = job;
    }

    double ofSheets(PieceJob piece, double[] v) {
        double yield = 1 - v[piece.rejectForming];
        if (job.hasPress) {
            yield *= 1 - v[piece.rejectPressing];
        }
        if (piece.dryerKind != Job.NO_DRYER) {
            yield *= 1 - v[piece.rejectDrying];
        }
        if (!Double.isNaN(job.batches[piece.batch].sizeBath)) {
            yield *= 1 - v[piece.rejectSizing];
        }
        return yield;
    }

    double ofPieces(PieceJob piece, double[] v) {
        double yield = piece.deckleEdge ? 1 : 1 - v[piece.rejectCutting];
        return piece.rejectFolding == Job.NONE ? yield : yield * (1 - v[piece.rejectFolding]);
    }
}
