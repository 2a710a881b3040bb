package org.papermath.engine;

import org.papermath.equation.Shrinkage;
import org.papermath.order.Piece;
import org.papermath.quantity.Kinds;

/** From dry sheets to pieces: their size flat and folded, and the hands that sort, trim and fold. */
public final class CuttingAndFolding {
    static final StageFigures FIGURES = new StageFigures();

    public static final PieceFigure WIDTH = FIGURES.piece("width", Kinds.LENGTH, "mm", Scale.FACTOR);
    public static final PieceFigure HEIGHT = FIGURES.piece("height", Kinds.LENGTH, "mm", Scale.FACTOR);
    public static final PieceFigure MASS = FIGURES.piece("mass", Kinds.MASS, "g", Scale.FACTOR);
    public static final PieceFigure PILE = FIGURES.pieceIfKnown("height of the pile", Kinds.LENGTH, "mm", Scale.FACTOR);

    private final boolean deckleEdge;
    private final boolean isShaped;
    private final double gap;
    private final int folds;
    private final boolean envelope;
    private final int wanted;
    private final Slot sortTime;
    private final Slot trimTime;
    private final Slot foldTime;

    /**
     * The size of a piece.
     *
     * @param width width flat, m
     * @param height height flat, m
     * @param foldedWidth width folded, m
     * @param foldedHeight height folded, m
     */
    public record Setting(double width, double height, double foldedWidth, double foldedHeight) {}

    CuttingAndFolding(Known known, Piece piece, FormingSheets forming) {
        deckleEdge = forming.deckleEdge();
        isShaped = forming.isShaped();
        gap = forming.gap();
        wanted = forming.wanted();
        folds = piece.folds();
        envelope = piece.envelopeFor().isPresent();
        sortTime = known.slot("labour.sort");
        trimTime = known.slot("labour.trim");
        foldTime = known.slot("labour.fold");
    }

    int folds() {
        return folds;
    }

    /** Layers of paper of a folded piece. */
    int layers() {
        return 1 << folds;
    }

    Setting decide(double width, double height) {
        double[] folded = folded(width, height);
        return new Setting(width, height, folded[0], folded[1]);
    }

    /** Each fold halves the longer side. */
    double[] folded(double width, double height) {
        double w = width;
        double h = height;
        for (int i = 0; i < folds; i++) {
            if (w >= h) {
                w /= 2;
            } else {
                h /= 2;
            }
        }
        return new double[] {w, h};
    }

    /** The pieces, and how high they pile up. */
    void forecast(Passage on) {
        double[] size = finished(on.settings.size(on.piece), on.sheet(), on.shrink);
        MakingEnvelopes.Setting enveloped = on.settings.envelope(on.piece);
        FormedShape shape = on.sheet().shape();
        double box = Math.max(size[0], size[1]) * Math.min(size[0], size[1]);
        on.area = shape == null ? box : box * shape.share();
        on.set(WIDTH, size[0]);
        on.set(HEIGHT, size[1]);
        on.set(
                MASS,
                on.of(FinishedSheet.GRAMMAGE)
                        * (on.area * (enveloped == null || isShaped ? 1 : enveloped.areaShare())));
        on.set(PILE, on.of(FinishedSheet.CALIPER) * (envelope ? MakingEnvelopes.LAYERS : layers()) * wanted);
    }

    /** Share of a dry sheet that its pieces take up: all of it, where each has an opening of its own. */
    double usedShare(Passage on, int perSheet) {
        return on.sheet().shape() != null ? 1 : on.area * perSheet / on.dryArea;
    }

    /** Width and height of the finished piece. */
    double[] finished(Setting set, FormingSheets.Setting sheet, double[] shrink) {
        if (sheet.shape() != null) {
            return lying(
                    isWidthAlong(set, sheet),
                    Shrinkage.dryLength(sheet.pieceAlong(), shrink[0]),
                    Shrinkage.dryLength(sheet.pieceAcross(), shrink[1]));
        }
        double dryAlong = Shrinkage.dryLength(sheet.openingHeight(), shrink[0]);
        double dryAcross = Shrinkage.dryLength(sheet.openingWidth(), shrink[1]);
        if (!isCut(sheet)) {
            return lying(set.width >= set.height, dryAlong, dryAcross);
        }
        double[] room = lying(
                isWidthAlong(set, sheet),
                (dryAlong - (sheet.rowAlong() - 1) * gap * (1 - shrink[0])) / sheet.rowAlong(),
                (dryAcross - (sheet.rowAcross() - 1) * gap * (1 - shrink[1])) / sheet.rowAcross());
        // As ordered, unless the sheet has shrunk below it.
        return new double[] {Math.min(set.width, room[0]), Math.min(set.height, room[1])};
    }

    private static double[] lying(boolean widthAlong, double along, double across) {
        return widthAlong ? new double[] {along, across} : new double[] {across, along};
    }

    /** Whether the pieces are cut to a size, which they have unless their sheet has shrunk below it. */
    boolean isCut(FormingSheets.Setting sheet) {
        return !deckleEdge && sheet.shape() == null;
    }

    /** Whether the width of a piece lies along the sheet: the longer side does, unless it is turned. */
    static boolean isWidthAlong(Setting set, FormingSheets.Setting sheet) {
        return (set.width >= set.height) != sheet.turned();
    }

    /** Hands that sort, trim and fold, s. */
    double sorting(int sheets, Values v) {
        return sheets * v.of(sortTime);
    }

    double trimming(FormingSheets.Setting sheet, Values v) {
        return deckleEdge ? 0 : (double) sheet.sheets() * sheet.perSheet() * v.of(trimTime);
    }

    double folding(int wanted, Values v) {
        return envelope ? wanted * v.of(foldTime) : 0;
    }
}
