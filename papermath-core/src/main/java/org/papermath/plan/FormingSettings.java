package org.papermath.plan;

import org.papermath.equation.Moisture;
import org.papermath.equation.PieceLayout;
import org.papermath.equation.PressForce;
import org.papermath.equation.Shrinkage;
import org.papermath.numeric.Rounding;
import org.papermath.plan.Job.PieceJob;
import org.papermath.plan.Settings.PieceSettings;

/**
 * Settings of a piece at the mould and the press: the opening, how many sheets to pull, the solids of each, the load on
 * the press.
 */
final class FormingSettings {
    /** The steps in which a press is set, N. */
    private static final double FORCE_STEP = 500;

    /** The step in which an opening is made, m. */
    private static final double OPENING_STEP = 1e-4;

    private final Job job;
    private final Slots.General general;
    private final SheetWay way;
    private final Yields yields;
    private final PieceSize size;

    FormingSettings(Job job, SheetWay way, Yields yields, PieceSize size) {
        this.job = job;
        this.general = job.general;
        this.way = way;
        this.yields = yields;
        this.size = size;
    }

    /** Size, opening, sheets to pull, oven-dry solids of a sheet, press setting. */
    void form(PieceJob piece, Settings settings, Stuff[] stuffs, double[] v) {
        PieceSettings set = settings.pieces[piece.index];
        Stuff s = stuffs[piece.batch];
        double density = way.sheetDensity(piece, s, job.hasPress ? v[general.pressPressure] : 0, v);
        double target = size.target(piece, s, density, v);
        if (piece.envelopeFor == Job.NONE) {
            set.width = piece.width;
            set.height = piece.height;
        } else {
            size.envelope(piece, settings, stuffs, target / way.known(density, v), v);
        }
        PieceSize.fold(piece, set);

        double endRatio = s.roomRatio + v[general.endMargin];
        double[] shrink = new double[2];
        // Only sheets taken out of the press below the onset of shrinkage would shrink less, so the couched ratio will
        // do here.
        way.shrinkage(piece, s, Moisture.ratioOfSolids(v[general.couched]), endRatio, v, shrink);
        double pieceYield = yields.ofSheets(piece, v) * yields.ofPieces(piece, v);
        opening(piece, set, shrink, pieceYield, v[general.sizeTolerance]);

        double areaFactor = (1 - shrink[0]) * (1 - shrink[1]);
        double wet = set.openingWidth * set.openingHeight;
        set.solids = target / way.conditioned(piece, s, v) / (1 + s.sizeGain) * wet * areaFactor;
        set.fibre = set.solids / (1 + s.load);
        set.sheets = (int) Rounding.ceil(piece.wanted / (set.up * pieceYield)) + piece.trials;

        set.felted = job.hasFelts && isFelted(set.openingWidth, set.openingHeight);
        if (job.hasPress) {
            double loaded = Fit.covered(set.openingWidth, set.openingHeight, job.platenWidth, job.platenLength);
            set.covered = isCovered(set.openingWidth, set.openingHeight);
            double allowed = v[general.pressAllowed] * job.weakest;
            double wish = PressForce.force(v[general.pressPressure], loaded);
            set.pressLimited = wish > allowed * (1 + Rounding.GUARD);
            double force = Math.min(wish, allowed);
            double stepped = Math.floor(force / FORCE_STEP + Rounding.GUARD) * FORCE_STEP;
            set.force = stepped > 0 ? stepped : force;
            set.pressure = PressForce.pressure(set.force, loaded);
            set.pressTime = v[general.pressTime];
        }
    }

    /** The opening: one's own rim for a deckle edge, the best of the moulds for cut edges, or one to be made. */
    private void opening(PieceJob piece, PieceSettings set, double[] shrink, double pieceYield, double tolerance) {
        double trim = piece.deckleEdge ? 0 : piece.trim;
        double wide = set.width + 2 * trim;
        double high = set.height + 2 * trim;
        // Along is the long side of the mould; a piece lies with its long side along, or turned.
        double longSide = Math.max(wide, high);
        double shortSide = Math.min(wide, high);
        double needAlong = Shrinkage.wetLength(longSide, shrink[0]);
        double needAcross = Shrinkage.wetLength(shortSide, shrink[1]);
        set.up = 1;
        set.rowAlong = 1;
        set.rowAcross = 1;
        set.turned = false;
        set.mould = Job.NONE;
        double best = Double.POSITIVE_INFINITY;
        int fewest = Integer.MAX_VALUE;
        for (int m = 0; m < job.mouldWidth.length; m++) {
            double along = Math.max(job.mouldWidth[m], job.mouldHeight[m]);
            double across = Math.min(job.mouldWidth[m], job.mouldHeight[m]);
            PieceLayout.Layout layout = PieceLayout.best(across, along, needAcross, needAlong,
                    Shrinkage.wetLength(longSide, shrink[1]), Shrinkage.wetLength(shortSide, shrink[0]), piece.gap,
                    piece.gap);
            if (layout.count() == 0 && !(piece.deckleEdge && isNear(along, needAlong, tolerance)
                    && isNear(across, needAcross, tolerance))) {
                continue;
            }
            // The mould that takes the least wet area for all the sheets, trials with them; of several, the first. One
            // whose sheets the felts, the platen and the vat take goes before one whose sheets they do not.
            int up = piece.deckleEdge ? 1 : layout.count();
            double area = along * across * (piece.deckleEdge ? 1
                    : Rounding.ceil(piece.wanted / (up * pieceYield)) + piece.trials);
            boolean fits = piece.deckleEdge && isNear(along, needAlong, tolerance)
                    && isNear(across, needAcross, tolerance);
            int misfits = misfits(across, along);
            boolean better = misfits < fewest || misfits == fewest && area < best * (1 - Rounding.GUARD);
            if (fits && !set.ownDeckle || better && fits == set.ownDeckle) {
                best = area;
                fewest = misfits;
                set.mould = m;
                set.ownDeckle = fits;
                if (!piece.deckleEdge || fits) {
                    set.up = up;
                    set.rowAcross = piece.deckleEdge ? 1 : layout.across();
                    set.rowAlong = piece.deckleEdge ? 1 : layout.along();
                    set.turned = !piece.deckleEdge && layout.turned();
                    set.openingHeight = along;
                    set.openingWidth = across;
                }
            }
        }
        if (piece.deckleEdge && !set.ownDeckle || set.mould == Job.NONE) {
            set.openingHeight = Rounding.roundTo(needAlong, OPENING_STEP);
            set.openingWidth = Rounding.roundTo(needAcross, OPENING_STEP);
        }
    }

    /** How many of vat, felts and platen a wet sheet is too large for. */
    private int misfits(double across, double along) {
        return (job.hasVat && !isInVat(across, along) ? 1 : 0)
                + (job.hasFelts && !isFelted(across, along) ? 1 : 0)
                + (job.hasPress && !isCovered(across, along) ? 1 : 0);
    }

    boolean isInVat(double width, double height) {
        return Double.isNaN(job.vatWidth) || Fit.within(width, height, job.vatWidth, job.vatLength);
    }

    private boolean isFelted(double width, double height) {
        return Fit.within(width, height, job.feltWidth, job.feltLength);
    }

    private boolean isCovered(double width, double height) {
        return Fit.within(width, height, job.platenWidth, job.platenLength);
    }

    private static boolean isNear(double owned, double needed, double tolerance) {
        return Math.abs(owned - needed) <= tolerance * needed;
    }
}
