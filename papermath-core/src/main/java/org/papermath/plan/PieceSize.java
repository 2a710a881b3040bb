package org.papermath.plan;

import java.util.Objects;

import org.papermath.equation.EnvelopeBlanks;
import org.papermath.plan.Job.PieceJob;
import org.papermath.plan.Settings.PieceSettings;

/**
 * How large a piece is, flat and folded, and what the paper for it has to weigh. An envelope is laid out round what
 * goes in.
 */
final class PieceSize {
    private final Job job;
    private final Slots.General general;
    private final SheetWay way;

    PieceSize(Job job, SheetWay way) {
        this.job = job;
        this.general = job.general;
        this.way = way;
    }

    void envelope(PieceJob piece, Settings settings, Stuff[] stuffs, double paper, double[] v) {
        PieceJob held = job.pieces[piece.envelopeFor];
        PieceSettings inside = settings.pieces[piece.envelopeFor];
        Stuff heldStuff = stuffs[held.batch];
        double heldDensity = way.sheetDensity(held, heldStuff, inside.pressure, v);
        double heldCaliper = target(held, heldStuff, heldDensity, v) / way.known(heldDensity, v);
        PieceSettings set = settings.pieces[piece.index];
        double filling = heldCaliper * (1 << held.folds) * piece.inserts;
        double long0 = Math.max(inside.foldedWidth, inside.foldedHeight);
        double short0 = Math.min(inside.foldedWidth, inside.foldedHeight);
        EnvelopeBlanks.Blank blank = switch (Objects.requireNonNull(piece.style)) {
            case SIDE_SEAM -> EnvelopeBlanks.sideSeam(long0, short0, filling, piece.clearance, paper, piece.sideFlap, 0, 0,
                    piece.flapShare * (short0 + filling + piece.clearance), 1);
            case DIAMOND -> EnvelopeBlanks.diamond(long0, short0, filling, piece.clearance, paper, piece.seam);
            case WALLET -> EnvelopeBlanks.wallet(long0, short0, filling, piece.clearance, paper, piece.sideFlap, 0,
                    piece.flapShare * (short0 + filling + piece.clearance));
            case OPEN_END -> EnvelopeBlanks.openEnd(long0, short0, filling, piece.clearance, paper, piece.seam, piece.seam,
                    piece.flapShare * (short0 + filling + piece.clearance));
        };
        set.filling = filling;
        set.envelopeInsideWidth = blank.insideWidth();
        set.envelopeInsideHeight = blank.insideHeight();
        set.envelopeOutsideWidth = blank.outsideWidth();
        set.envelopeOutsideHeight = blank.outsideHeight();
        set.envelopeSeam = blank.seam();
        set.width = blank.width();
        set.height = blank.height();
        set.blankAreaShare = blank.area() / (blank.width() * blank.height());
        if (!Double.isNaN(piece.width)) {
            set.envelopeSeam = EnvelopeBlanks.diamondSeam(Math.min(piece.width, piece.height),
                    EnvelopeBlanks.panel(blank.insideWidth(), paper),
                    EnvelopeBlanks.panel(blank.insideHeight(), paper));
            set.width = piece.width;
            set.height = piece.height;
            set.blankAreaShare = 1;
        }
    }

    double target(PieceJob piece, Stuff s, double density, double[] v) {
        if (!Double.isNaN(piece.grammage)) {
            return piece.grammage;
        }
        if (!Double.isNaN(piece.caliper)) {
            return piece.caliper * density;
        }
        // A sample is weighed in the air of the studio: back to oven-dry, then to the air of the order.
        double solids = piece.sampleMass / (1 + s.roomRatio) / piece.sampleArea;
        return solids * way.conditioned(piece, s, v);
    }

    static void fold(PieceJob piece, PieceSettings set) {
        double w = set.width;
        double h = set.height;
        for (int i = 0; i < piece.folds; i++) {
            if (w >= h) {
                w /= 2;
            } else {
                h /= 2;
            }
        }
        set.foldedWidth = w;
        set.foldedHeight = h;
    }
}
