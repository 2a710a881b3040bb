package org.papermath.plan;

import org.jspecify.annotations.Nullable;
import org.papermath.equation.Moisture;
import org.papermath.equation.Shrinkage;
import org.papermath.equation.WetWeb;
import org.papermath.plan.Job.PieceJob;
import org.papermath.plan.Settings.PieceSettings;

/** What comes out of the sheets of a piece: size, grammage, thickness, mass, count and times. */
final class PieceForecast {
    /** Layers of paper an envelope adds to what is in it: front, back and a seam. */
    private static final int ENVELOPE_LAYERS = 3;

    private final Job job;
    private final Slots.General general;
    private final SheetWay way;
    private final Yields yields;
    private final WorkingHours hours;

    PieceForecast(Job job, SheetWay way, Yields yields, WorkingHours hours) {
        this.job = job;
        this.general = job.general;
        this.way = way;
        this.yields = yields;
        this.hours = hours;
    }

    void forecast(PieceJob piece, PieceSettings ps, Stuff s, double[] sheets, double[][] carried, double[] v,
            double[] out, @Nullable Ledger ledger) {
        int at = Out.piece(job, piece.index);
        int n = sheets.length;
        double fibre = 0;
        double solids = 0;
        double lightest = Double.POSITIVE_INFINITY;
        double heaviest = 0;
        for (int i = 0; i < n; i++) {
            double one = sheets[i];
            for (double[] additive : carried) {
                one += additive[i];
            }
            fibre += sheets[i];
            solids += one;
            lightest = Math.min(lightest, one);
            heaviest = Math.max(heaviest, one);
        }
        fibre /= n;
        solids /= n;
        double load = solids / fibre - 1;
        double particles = s.load > 0 ? load * s.particleLoad / s.load : 0;
        double wet = ps.openingWidth * ps.openingHeight;
        double formed = solids / wet;
        double couchedRatio = Moisture.ratioOfSolids(v[general.couched]);
        double pressed = way.pressedRatio(piece, s, formed, ps.pressure, ps.pressTime, v);
        double equilibrium = s.roomRatio;
        double end = equilibrium + v[general.endMargin];
        double[] shrink = new double[2];
        way.shrinkage(piece, s, pressed, end, v, shrink);
        double dryArea = wet * (1 - shrink[0]) * (1 - shrink[1]);

        double moist = piece.measuredMoisture != Job.NONE ? 1 + Moisture.ratioOfWetBasis(v[piece.measuredMoisture])
                : 1 + s.referenceRatio * (1 + load - particles) / (1 + load);
        double grammage = solids * (1 + s.sizeGain) * moist / dryArea;
        double density = way.sheetDensity(piece, s, ps.pressure, v);
        double caliper = Double.isNaN(density) ? Double.NaN : way.caliper(grammage, density, v);

        double area = size(piece, ps, shrink, out, at);
        out[at + Out.GRAMMAGE] = grammage;
        out[at + Out.CALIPER] = caliper;
        out[at + Out.DENSITY] = density;
        out[at + Out.MASS] = grammage * (area * ps.blankAreaShare);
        out[at + Out.PILE] = caliper * (piece.envelopeFor == Job.NONE ? 1 << piece.folds : ENVELOPE_LAYERS)
                * piece.wanted;
        int run = n - piece.trials;
        out[at + Out.GOOD] = run * (double) ps.up * yields.ofSheets(piece, v) * yields.ofPieces(piece, v);
        double couched = v[general.couched];
        out[at + Out.MAT] = WetWeb.thickness(formed, couchedRatio, v[general.wall], job.waterDensity);
        out[at + Out.COUCHED] = solids / couched;
        out[at + Out.DRAIN] = way.drainTime(piece, ps, s, fibre / wet, v);
        out[at + Out.SOLIDS] = Moisture.solidsOfRatio(pressed);
        out[at + Out.PRESSED_RATIO] = pressed;
        out[at + Out.FINAL_RATIO] = end;
        double perLoad = Math.min(n, piece.dryerKind == Job.NO_DRYER ? n : piece.capacity);
        // Most of the water leaves before the sheet shrinks, so the first drying is that of the size it was formed in.
        out[at + Out.DRYING] = way.dryingTime(piece, ps, perLoad * solids, formed, pressed, end, equilibrium,
                v);
        out[at + Out.DRYING_AGAIN] = s.sizeGain == 0 ? 0
                : way.dryingTime(piece, ps, perLoad * solids, solids / dryArea,
                equilibrium + v[general.sizeTaken] - s.sizeGain, end,
                        equilibrium, v);
        out[at + Out.EVAPORATED] = way.evaporated(piece, n * solids, pressed, end, moist);
        out[at + Out.LOAD] = load;
        out[at + Out.SIZE] = s.sizeGain;
        out[at + Out.SHRINK_ALONG] = shrink[0];
        out[at + Out.SHRINK_ACROSS] = shrink[1];
        out[at + Out.LIGHTEST] = lightest / solids;
        out[at + Out.HEAVIEST] = heaviest / solids;
        out[at + Out.SHEET_FIBRE] = fibre;
        out[at + Out.POST_MASS] = ps.felted
                ? (ps.sheetsInPost + 1) * job.feltWidth * job.feltLength * (job.feltDry + v[general.feltWater]) + ps.sheetsInPost
                * solids / couched
                : Double.NaN;
        out[at + Out.POST_HEIGHT] = WetWeb.postHeight(ps.sheetsInPost, v[general.postHeight]);
        out[at + Out.HOURS] = hours.ofPiece(piece, ps, wet, v);
        if (ledger != null) {
            ledger.piece(job, piece, ps, sheets, carried, area * ps.up / dryArea, couchedRatio, pressed,
                    end, v, yields);
        }
    }

    /** Fills in width and height, by which of them was ordered the longer, and returns the area they enclose. */
    private static double size(PieceJob piece, PieceSettings ps, double[] shrink, double[] out, int at) {
        double width = ps.width;
        double height = ps.height;
        double longSide = Math.max(width, height);
        double shortSide = Math.min(width, height);
        double dryAlong = Shrinkage.dryLength(ps.openingHeight, shrink[0]);
        double dryAcross = Shrinkage.dryLength(ps.openingWidth, shrink[1]);
        double finishedLong;
        double finishedShort;
        if (piece.deckleEdge) {
            finishedLong = dryAlong;
            finishedShort = dryAcross;
        } else {
            // Cut to size: as ordered, unless the sheet has shrunk below it.
            double roomAlong = (dryAlong - (ps.rowAlong - 1) * piece.gap * (1 - shrink[0])) / ps.rowAlong;
            double roomAcross = (dryAcross - (ps.rowAcross - 1) * piece.gap * (1 - shrink[1])) / ps.rowAcross;
            finishedLong = Math.min(longSide, ps.turned ? roomAcross : roomAlong);
            finishedShort = Math.min(shortSide, ps.turned ? roomAlong : roomAcross);
        }
        out[at + Out.WIDTH] = width >= height ? finishedLong : finishedShort;
        out[at + Out.HEIGHT] = width >= height ? finishedShort : finishedLong;
        return finishedLong * finishedShort;
    }

    /** What needs two pieces: the card in its envelope, and both in the mail. */
    void together(PieceJob piece, Settings settings, double[] out) {
        int at = Out.piece(job, piece.index);
        if (piece.envelopeFor == Job.NONE) {
            out[at + Out.CLEAR_WIDTH] = Double.NaN;
            out[at + Out.CLEAR_HEIGHT] = Double.NaN;
            out[at + Out.MAIL_MASS] = out[at + Out.MASS];
            out[at + Out.MAIL_THICKNESS] = out[at + Out.CALIPER] * (1 << piece.folds);
            return;
        }
        PieceSettings ps = settings.pieces[piece.index];
        PieceJob held = job.pieces[piece.envelopeFor];
        int in = Out.piece(job, held.index);
        double w = out[in + Out.WIDTH];
        double h = out[in + Out.HEIGHT];
        for (int i = 0; i < held.folds; i++) {
            if (w >= h) {
                w /= 2;
            } else {
                h /= 2;
            }
        }
        double filling = out[in + Out.CALIPER] * (1 << held.folds) * piece.inserts;
        // What goes in lies with its long side along the long side of the pocket, wherever its mouth is.
        boolean upright = ps.envelopeInsideHeight > ps.envelopeInsideWidth;
        out[at + Out.CLEAR_WIDTH] = ps.envelopeInsideWidth - (upright ? Math.min(w, h) : Math.max(w, h)) - filling;
        out[at + Out.CLEAR_HEIGHT] = ps.envelopeInsideHeight - (upright ? Math.max(w, h) : Math.min(w, h)) - filling;
        out[at + Out.MAIL_MASS] = out[at + Out.MASS] + piece.inserts * out[in + Out.MASS];
        out[at + Out.MAIL_THICKNESS] = filling + ENVELOPE_LAYERS * out[at + Out.CALIPER];
    }
}
