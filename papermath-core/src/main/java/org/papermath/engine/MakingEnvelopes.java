package org.papermath.engine;

import org.papermath.envelope.EnvelopeStyle;
import org.papermath.equation.EnvelopeBlanks;
import org.papermath.evidence.Scope;
import org.papermath.order.Piece;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** An envelope laid out round what goes in: its blank, its pocket, and the play in it. */
public final class MakingEnvelopes {
    static final StageFigures FIGURES = new StageFigures();

    /**
     * Below zero where what goes in is too large, so it is read by itself. It bends where what goes in is trimmed: a sheet too
     * large is cut to size, one too small is not made larger.
     */
    public static final PieceFigure CLEAR_WIDTH =
            FIGURES.pieceIfKnown("play along", null, "mm", Scale.DIFFERENCE, StageFigures.ALWAYS);
    /** The same the other way. */
    public static final PieceFigure CLEAR_HEIGHT =
            FIGURES.pieceIfKnown("play across", null, "mm", Scale.DIFFERENCE, StageFigures.ALWAYS);

    /** Inside, where the blank is formed to its outline and the envelope shrinks with its sheet. */
    public static final PieceFigure DRIED_WIDTH =
            FIGURES.pieceIfKnown("width inside, dried", Kinds.LENGTH, "mm", Scale.FACTOR);
    /** The same the other way. */
    public static final PieceFigure DRIED_HEIGHT =
            FIGURES.pieceIfKnown("height inside, dried", Kinds.LENGTH, "mm", Scale.FACTOR);

    /** Layers of paper an envelope adds to what is in it: front, back and a seam. */
    static final int LAYERS = 3;

    private final EnvelopeStyle style;
    private final int inserts;
    private final double clearance;
    private final double sideFlap;
    private final double flapShare;
    private final double seam;
    private final double orderedWidth;
    private final double orderedHeight;

    /**
     * The envelope.
     *
     * @param blankWidth width of the blank, m
     * @param blankHeight height of the blank, m
     * @param areaShare area of the blank over that of the rectangle it is cut from
     * @param insideWidth width of the pocket inside, m
     * @param insideHeight height of the pocket inside, m
     * @param outsideWidth width of the closed envelope, m
     * @param outsideHeight height of the closed envelope, m
     * @param seam overlap of the glued seams, m
     */
    public record Setting(
            double blankWidth,
            double blankHeight,
            double areaShare,
            double insideWidth,
            double insideHeight,
            double outsideWidth,
            double outsideHeight,
            double seam) {}

    MakingEnvelopes(Known known, Piece piece, EnvelopeStyle style, Scope scope) {
        this.style = style;
        inserts = piece.inserts();
        clearance = piece.clearance().map(Amount::si).orElseGet(() -> known.fixed("envelope.clearance", scope));
        sideFlap = known.fixed("envelope.side-flap", scope);
        flapShare = known.fixed("envelope.square-flap", scope);
        seam = known.fixed("envelope.seam", scope);
        orderedWidth = piece.width().map(Amount::si).orElse(Double.NaN);
        orderedHeight = piece.height().map(Amount::si).orElse(Double.NaN);
    }

    int inserts() {
        return inserts;
    }

    /**
     * Lays the envelope out.
     *
     * @param held size of what goes in, folded
     * @param layers layers of paper of one of them
     * @param heldCaliper thickness of its paper
     * @param paper thickness of the paper of the envelope
     */
    Setting decide(CuttingAndFolding.Setting held, int layers, double heldCaliper, double paper) {
        double filling = heldCaliper * layers * inserts;
        double longSide = Math.max(held.foldedWidth(), held.foldedHeight());
        double shortSide = Math.min(held.foldedWidth(), held.foldedHeight());
        double flap = flapShare * EnvelopeBlanks.panel(EnvelopeBlanks.inside(shortSide, filling, clearance), paper);
        EnvelopeBlanks.Blank blank = switch (style) {
            case SIDE_SEAM ->
                EnvelopeBlanks.sideSeam(longSide, shortSide, filling, clearance, paper, sideFlap, 0, 0, flap, 1);
            case DIAMOND -> EnvelopeBlanks.diamond(longSide, shortSide, filling, clearance, paper, seam);
            case WALLET -> EnvelopeBlanks.wallet(longSide, shortSide, filling, clearance, paper, sideFlap, 0, flap);
            case OPEN_END ->
                EnvelopeBlanks.openEnd(longSide, shortSide, filling, clearance, paper, seam, sideFlap, flap);
        };
        boolean ordered = !Double.isNaN(orderedWidth);
        return new Setting(
                ordered ? orderedWidth : blank.width(),
                ordered ? orderedHeight : blank.height(),
                ordered ? 1 : blank.area() / (blank.width() * blank.height()),
                blank.insideWidth(),
                blank.insideHeight(),
                blank.outsideWidth(),
                blank.outsideHeight(),
                ordered
                        ? EnvelopeBlanks.diamondSeam(
                                Math.min(orderedWidth, orderedHeight),
                                EnvelopeBlanks.panel(blank.insideWidth(), paper),
                                EnvelopeBlanks.panel(blank.insideHeight(), paper))
                        : blank.seam());
    }

    /**
     * A blank as it is cut.
     *
     * @param corners its corners, across and along, m
     * @param folds its folds from a point to another, m, with the score of the flap last
     */
    public record Blank(double[][] corners, double[][] folds) {}

    /** The outline of the blank, and its folds with the score of the flap last. */
    FormedShape shape(Setting set) {
        Blank blank = blank(set);
        return FormedShape.of(blank.corners[0], blank.corners[1], blank.folds);
    }

    /** The blank with its flap at the top. */
    Blank blank(Setting set) {
        double paper = (set.outsideWidth - set.insideWidth) / 2;
        double width = EnvelopeBlanks.panel(set.insideWidth, paper);
        double height = EnvelopeBlanks.panel(set.insideHeight, paper);
        double[][] corners = switch (style) {
            case SIDE_SEAM, WALLET ->
                EnvelopeBlanks.sideSeamCorners(width, height, set.seam, 0, 0, set.blankHeight - 2 * height, false);
            case OPEN_END ->
                EnvelopeBlanks.openEndCorners(width, height, set.seam, sideFlap, set.blankHeight - height - sideFlap);
            case DIAMOND ->
                new double[][] {{0, set.blankWidth, set.blankWidth, 0}, {0, 0, set.blankHeight, set.blankHeight}};
        };
        double[][] folds = switch (style) {
            case SIDE_SEAM, WALLET -> EnvelopeBlanks.sideSeamFolds(width, height, set.seam, 0);
            case OPEN_END -> EnvelopeBlanks.openEndFolds(width, height, set.seam, sideFlap);
            case DIAMOND -> EnvelopeBlanks.diamondFolds(width, height, Math.min(set.blankWidth, set.blankHeight));
        };
        return new Blank(corners, folds);
    }

    /**
     * Width and height of the pocket inside: as laid out, or as the folds come to lie on a blank that was formed to its
     * outline and has shrunk.
     *
     * @param formed whether the blank is formed to its outline
     * @param width width of the blank as it came out
     * @param height height of the blank as it came out
     */
    double[] inside(Setting set, boolean formed, double width, double height) {
        if (!formed) {
            return new double[] {set.insideWidth, set.insideHeight};
        }
        double paper = (set.outsideWidth - set.insideWidth) / 2;
        double wide = width / set.blankWidth;
        double high = height / set.blankHeight;
        // The pocket of a diamond lies along the diagonals of its square.
        double diagonal = Math.sqrt((wide * wide + high * high) / 2);
        boolean diamond = style == EnvelopeStyle.DIAMOND;
        return new double[] {
            EnvelopeBlanks.insideOfPanel(
                    EnvelopeBlanks.panel(set.insideWidth, paper), diamond ? diagonal : wide, paper),
            EnvelopeBlanks.insideOfPanel(
                    EnvelopeBlanks.panel(set.insideHeight, paper), diamond ? diagonal : high, paper)
        };
    }

    /** Thickness of what goes in. */
    double filling(double heldCaliper, int layers) {
        return heldCaliper * layers * inserts;
    }

    /** How what goes in lies in the pocket. */
    static void forecast(int piece, double[] inside, boolean formed, double[] held, double filling, Figures out) {
        double[] play = play(inside, held, filling);
        out.set(DRIED_WIDTH, piece, formed ? inside[0] : Double.NaN);
        out.set(DRIED_HEIGHT, piece, formed ? inside[1] : Double.NaN);
        out.set(CLEAR_WIDTH, piece, play[0]);
        out.set(CLEAR_HEIGHT, piece, play[1]);
    }

    /** The same of a piece that is no envelope. */
    static void forecastNone(int piece, Figures out) {
        out.set(CLEAR_WIDTH, piece, Double.NaN);
        out.set(CLEAR_HEIGHT, piece, Double.NaN);
        out.set(DRIED_WIDTH, piece, Double.NaN);
        out.set(DRIED_HEIGHT, piece, Double.NaN);
    }

    /**
     * The play along the width and the height of the pocket. What goes in lies with its long side along the long side
     * of the pocket, wherever its mouth is.
     */
    static double[] play(double[] inside, double[] held, double filling) {
        double longSide = Math.max(held[0], held[1]);
        double shortSide = Math.min(held[0], held[1]);
        boolean upright = inside[1] > inside[0];
        return new double[] {
            inside[0] - (upright ? shortSide : longSide) - filling,
            inside[1] - (upright ? longSide : shortSide) - filling
        };
    }
}
