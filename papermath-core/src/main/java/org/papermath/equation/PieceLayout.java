package org.papermath.equation;

import org.papermath.numeric.Rounding;

/** How many rectangular pieces lie on a rectangular face, by layout and not by area. */
public final class PieceLayout {
    /** Pieces that rounding may add, so that 3 pieces of 100 in 300.00000000001 or 299.99999999999 are 3. */
    private static final double GUARD = 1e-9;

    private PieceLayout() {}

    /**
     * Pieces in rows and columns.
     *
     * @param count pieces in all
     * @param across pieces along the width of the face
     * @param along pieces along the height of the face
     * @param turned whether the width of a piece lies along the height of the face
     */
    public record Layout(int count, int across, int along, boolean turned) {}

    /** Pieces of one length that lie in a row, with a gap between neighbours. */
    public static int inRow(double face, double piece, double gap) {
        if (!(piece > 0) || !(face > 0)) {
            return 0;
        }
        return (int) Math.floor((face + gap) / (piece + gap) + GUARD);
    }

    /** The layout without turning. */
    public static Layout upright(double faceW, double faceH, double pieceW, double pieceH, double gapX, double gapY) {
        int across = inRow(faceW, pieceW, gapX);
        int along = inRow(faceH, pieceH, gapY);
        int count = (int) Math.min(Integer.MAX_VALUE, (long) across * along);
        return new Layout(count, count == 0 ? 0 : across, count == 0 ? 0 : along, false);
    }

    /**
     * The better of the two turns where a turned piece measures otherwise, as before a shrinkage that differs by
     * direction; the pieces upright when both give the same.
     */
    public static Layout best(
            double faceW,
            double faceH,
            double pieceW,
            double pieceH,
            double turnedW,
            double turnedH,
            double gapX,
            double gapY) {
        Layout upright = upright(faceW, faceH, pieceW, pieceH, gapX, gapY);
        Layout turned = upright(faceW, faceH, turnedW, turnedH, gapX, gapY);
        return turned.count() > upright.count()
                ? new Layout(turned.count(), turned.across(), turned.along(), true)
                : upright;
    }

    /**
     * Sheets that are formed for so many pieces, on sheets of so many each.
     *
     * @param perSheet pieces of a sheet
     * @param pieces pieces to form, with those that will be rejected
     * @param trials sheets formed beside them, to set the vat by
     */
    public static double sheets(int perSheet, double pieces, int trials) {
        return Rounding.ceil(pieces / perSheet) + trials;
    }

    /** How many like pieces lie side by side on a face, in rows, all the same way round; none where one is larger. */
    public static int sideBySide(double faceW, double faceH, double pieceW, double pieceH, double gap) {
        return best(faceW, faceH, pieceW, pieceH, pieceH, pieceW, gap, gap).count();
    }

    /** How quick a sheet is to form: 0 as a card is, 1 as a small sheet, 2 as a large one. */
    public static int pace(double area, double card, double large) {
        return area > large ? 2 : area > card ? 1 : 0;
    }

    /**
     * The mould to take: the one that costs hands the least time; of those within a window of that, the one that takes
     * the least wet area, which is fibre; of equals, the first.
     *
     * @param hands time of hands for all sheets on each mould
     * @param areas wet area of all of them on each mould
     * @param window how much more time still counts as the same, as a fraction
     */
    public static int best(double[] hands, double[] areas, double window) {
        double least = Double.POSITIVE_INFINITY;
        for (double time : hands) {
            least = Math.min(least, time);
        }
        int best = -1;
        for (int m = 0; m < hands.length; m++) {
            if (hands[m] <= least * (1 + window + Rounding.GUARD)
                    && (best < 0 || areas[m] < areas[best] * (1 - Rounding.GUARD))) {
                best = m;
            }
        }
        return best;
    }

    /** The length a row of pieces takes, with the gaps between them. */
    public static double extent(int pieces, double piece, double gap) {
        return pieces == 0 ? 0 : pieces * piece + (pieces - 1) * gap;
    }
}
