package org.papermath.plan;

import org.papermath.equation.Drying;
import org.papermath.numeric.Rounding;
import org.papermath.plan.Job.PieceJob;
import org.papermath.plan.Settings.PieceSettings;

/** Settings that follow from the number of sheets: posts, dryer loads, blotter changes, the size bath. */
final class HandlingSettings {
    /** The step in which a size bath is made, m³. */
    private static final double BATH_STEP = 1e-4;

    private final Job job;
    private final Slots.General general;
    private final SheetWay way;

    HandlingSettings(Job job, SheetWay way) {
        this.job = job;
        this.general = job.general;
        this.way = way;
    }

    /** Posts, dryer loads, blotter changes and the size bath, once the sheets are known. */
    void finish(PieceJob piece, PieceSettings set, Stuff s, double[] v) {
        if (set.felted) {
            int post = Math.min(job.felts - 1, (int) v[general.postSheets]);
            if (!Double.isNaN(job.daylight)) {
                post = Math.min(post, Math.max(1, (int) Math.floor(job.daylight / v[general.postHeight]
                        + Rounding.GUARD)));
            }
            set.sheetsInPost = Math.max(1, Math.min(post, set.sheets));
            set.posts = (int) Rounding.ceil((double) set.sheets / set.sheetsInPost);
        }
        if (piece.dryerKind != Job.NO_DRYER) {
            set.dryerLoads = (int) Rounding.ceil((double) set.sheets / piece.capacity);
        }
        if (piece.dryerKind == Job.BLOTTERS) {
            double ratio = way.pressedRatio(piece, s, set.solids / (set.openingWidth * set.openingHeight), set.pressure,
                    set.pressTime, v);
            double changes = Drying.blotterChanges(ratio, s.roomRatio + v[general.endMargin],
                    1 - v[piece.blotterKept]);
            set.blotterChanges = Double.isInfinite(changes) ? Integer.MAX_VALUE : (int) Rounding.ceil(changes);
        }
        if (s.sizeGain > 0) {
            set.sizeTaken = set.sheets * set.solids * v[general.sizeTaken];
            set.sizeBath = Rounding.ceilTo(set.sizeTaken / job.waterDensity + v[general.sizeHeel], BATH_STEP);
            set.drySize = Rounding.ceilTo(set.sizeBath * job.batches[piece.batch].sizeBath, job.scale);
        }
    }
}
