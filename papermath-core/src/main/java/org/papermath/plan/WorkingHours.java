package org.papermath.plan;

import org.papermath.plan.Job.BatchJob;
import org.papermath.plan.Job.PieceJob;
import org.papermath.plan.Settings.PieceSettings;

/** The hours of hand work, s. */
final class WorkingHours {
    private final Job job;
    private final Slots.General general;

    WorkingHours(Job job) {
        this.job = job;
        this.general = job.general;
    }

    double ofPiece(PieceJob piece, PieceSettings ps, double wet, double[] v) {
        BatchJob batch = job.batches[piece.batch];
        double form = v[wet > v[general.largeSheet] ? piece.sheetTimeLarge : piece.sheetTimeSmall] * ps.sheets;
        double press = job.hasPress ? ps.posts * (ps.pressTime) + ps.sheets * v[general.partTime] : 0;
        double dry = ps.dryerLoads * v[general.dryLoad];
        double size = Double.isNaN(batch.sizeBath) ? 0 : ps.sheets * v[general.sizeTime];
        double sort = ps.sheets * v[general.sortTime];
        double trim = piece.deckleEdge ? 0 : (double) ps.sheets * ps.up * v[general.trimTime];
        double fold = piece.envelopeFor != Job.NONE ? piece.wanted * v[general.foldTime] : 0;
        return form + press + dry + size + sort + trim + fold;
    }

    double ofBatch(int index, Settings settings, double[] v) {
        BatchJob batch = job.batches[index];
        int loads = settings.batches[index].loads;
        double beat = job.hasBeater ? loads * (batch.beating + v[general.beatingLoad]) : 0;
        double add = batch.dose.length == 0 ? 0 : loads * v[general.additiveLoad];
        boolean dipped = false;
        for (int p : batch.pieces) {
            dipped |= settings.pieces[p].dipped;
        }
        return beat + add + (dipped ? v[general.vatCharge] : 0);
    }
}
