package org.papermath.plan;

import org.jspecify.annotations.Nullable;
import org.papermath.plan.Job.PieceJob;

/**
 * The path of every piece from weighed fibre to finished card, in plain numbers of coherent SI: settings from values of
 * the assumptions, and forecasts from settings and values. Pure functions; no text, no boxing.
 *
 * <p>A forecast that cannot be made is marked as not a number here, and comes out of the plan as a stage that is not
 * done.
 */
final class Engine {
    private final Job job;
    private final FormingSettings forming;
    private final FurnishSettings furnish;
    private final HandlingSettings handling;
    private final BatchForecast batches;
    private final PieceForecast pieces;

    Engine(Job job) {
        this.job = job;
        SheetWay way = new SheetWay(job);
        Yields yields = new Yields(job);
        WorkingHours hours = new WorkingHours(job);
        this.forming = new FormingSettings(job, way, yields, new PieceSize(job, way));
        this.furnish = new FurnishSettings(job);
        this.handling = new HandlingSettings(job, way);
        this.pieces = new PieceForecast(job, way, yields, hours);
        this.batches = new BatchForecast(job, pieces, hours);
    }

    /** Chooses the settings. Envelopes come after what goes into them, the furnish after all the sheets it is for. */
    Settings decide(double[] v) {
        Settings settings = new Settings(job.batches.length, job.pieces.length);
        Stuff[] stuffs = new Stuff[job.batches.length];
        for (int b = 0; b < stuffs.length; b++) {
            stuffs[b] = Stuff.of(job, job.batches[b], v);
        }
        for (PieceJob piece : job.pieces) {
            if (piece.envelopeFor == Job.NONE) {
                forming.form(piece, settings, stuffs, v);
            }
        }
        for (PieceJob piece : job.pieces) {
            if (piece.envelopeFor != Job.NONE) {
                forming.form(piece, settings, stuffs, v);
            }
        }
        for (int b = 0; b < stuffs.length; b++) {
            furnish.furnish(b, settings, stuffs[b], v);
        }
        for (PieceJob piece : job.pieces) {
            handling.finish(piece, settings.pieces[piece.index], stuffs[piece.batch], v);
        }
        return settings;
    }

    /** Fills in what comes out of the settings at these values, and keeps the accounts if there is a ledger. */
    void forecast(Settings settings, double[] v, double[] out, @Nullable Ledger ledger) {
        for (int b = 0; b < job.batches.length; b++) {
            batches.forecast(b, settings, Stuff.of(job, job.batches[b], v), v, out, ledger);
        }
        double hours = 0;
        for (int b = 0; b < job.batches.length; b++) {
            hours += out[Out.batch(b) + Out.BATCH_HOURS];
        }
        for (PieceJob piece : job.pieces) {
            pieces.together(piece, settings, out);
            hours += out[Out.piece(job, piece.index) + Out.HOURS];
        }
        out[Out.hours(job)] = hours;
    }
}
