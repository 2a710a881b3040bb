package org.papermath.equation;

/**
 * The blank an envelope is folded from.
 *
 * <p>A filling of thickness T that lies flat in a pocket takes T more than its own width and height, because the paper
 * runs round its edges. Fold lines run in the middle of the paper: between two folds a panel measures the inside plus
 * one thickness of the paper, the outside is the inside plus two.
 */
public final class EnvelopeBlanks {
    private EnvelopeBlanks() {}

    /**
     * A blank and what it folds to.
     *
     * @param width width of the blank; for a diamond the side of the square
     * @param height height of the blank; for a diamond the side of the square
     * @param area area of the blank
     * @param insideWidth width of the pocket inside
     * @param insideHeight height of the pocket inside
     * @param outsideWidth width of the closed envelope
     * @param outsideHeight height of the closed envelope
     * @param seam overlap of the glued seams
     * @param flapOverlap how far the flap reaches over the back below the throat; for a diamond across the diagonal
     *     seam
     * @param layersAtSeam layers of paper at a seam
     */
    public record Blank(
            double width,
            double height,
            double area,
            double insideWidth,
            double insideHeight,
            double outsideWidth,
            double outsideHeight,
            double seam,
            double flapOverlap,
            int layersAtSeam) {}

    /** The inside length a filling needs: its own length, its thickness and the clearance. */
    public static double inside(double card, double fillingThickness, double clearance) {
        return card + fillingThickness + clearance;
    }

    /** The distance between two folds round a pocket. */
    public static double panel(double inside, double paperThickness) {
        return inside + paperThickness;
    }

    /** The outside length of a closed pocket. */
    public static double outside(double inside, double paperThickness) {
        return inside + 2 * paperThickness;
    }

    /** The area of a flap: a rectangle, a triangle, or a trapezium between, by the width of its free edge. */
    public static double flapArea(double base, double freeEdge, double depth) {
        return (base + freeEdge) / 2 * depth;
    }

    /**
     * Side seams: front panel, back panel below it less the throat, flap above, a side flap at each side of the front.
     *
     * <p>The width is W + 2s, the height 2H − t + f; a side flap narrows by the taper at each end.
     */
    public static Blank sideSeam(
            double cardWidth,
            double cardHeight,
            double filling,
            double clearance,
            double paper,
            double sideFlap,
            double taper,
            double throat,
            double flap,
            double flapFreeEdgeShare) {
        double insideWidth = inside(cardWidth, filling, clearance);
        double insideHeight = inside(cardHeight, filling, clearance);
        double width = panel(insideWidth, paper);
        double height = panel(insideHeight, paper);
        double area = width * (2 * height - throat)
                + flapArea(width, flapFreeEdgeShare * width, flap)
                + 2 * sideFlap * (height - taper);
        return new Blank(
                width + 2 * sideFlap,
                2 * height - throat + flap,
                area,
                insideWidth,
                insideHeight,
                outside(insideWidth, paper),
                outside(insideHeight, paper),
                sideFlap,
                flap - throat,
                3);
    }

    /**
     * Diagonal seams from a square turned by 45 degrees: four corners folded over a pocket in its middle.
     *
     * <p>Neighbouring flaps overlap, across the seam, by the side of the square less the least side.
     */
    public static Blank diamond(
            double cardWidth, double cardHeight, double filling, double clearance, double paper, double seam) {
        double insideWidth = inside(cardWidth, filling, clearance);
        double insideHeight = inside(cardHeight, filling, clearance);
        double width = panel(insideWidth, paper);
        double height = panel(insideHeight, paper);
        double side = leastSquare(width, height) + seam;
        return new Blank(
                side,
                side,
                side * side,
                insideWidth,
                insideHeight,
                outside(insideWidth, paper),
                outside(insideHeight, paper),
                seam,
                seam,
                3);
    }

    /**
     * The corners of a blank with side seams, from the left of the mouth of the back on, anticlockwise: places across,
     * then places along.
     *
     * @param width between the folds of the front across
     * @param height between its folds along
     * @param side width of a side flap
     * @param taper by how much a side flap narrows at each end
     * @param throat how far the back stays below the mouth
     * @param flap depth of the flap
     * @param pointed whether the flap is a triangle
     */
    public static double[][] sideSeamCorners(
            double width, double height, double side, double taper, double throat, double flap, boolean pointed) {
        double right = side + width;
        double back = height - throat;
        double top = back + height;
        return pointed
                ? new double[][] {
                    {side, right, right, right + side, right + side, right, side + width / 2, side, 0, 0, side},
                    {0, 0, back, back + taper, top - taper, top, top + flap, top, top - taper, back + taper, back}
                }
                : new double[][] {
                    {side, right, right, right + side, right + side, right, right, side, side, 0, 0, side},
                    {
                        0,
                        0,
                        back,
                        back + taper,
                        top - taper,
                        top,
                        top + flap,
                        top + flap,
                        top,
                        top - taper,
                        back + taper,
                        back
                    }
                };
    }

    /** The folds of such a blank and the score of its flap, last; each from a point to another. */
    public static double[][] sideSeamFolds(double width, double height, double side, double throat) {
        double right = side + width;
        double back = height - throat;
        double top = back + height;
        return new double[][] {
            {side, back, side, top}, {right, back, right, top}, {side, back, right, back}, {side, top, right, top}
        };
    }

    /** The corners of a blank with an open end, from the left of its bottom flap on, anticlockwise. */
    public static double[][] openEndCorners(double width, double height, double seam, double bottom, double flap) {
        double a = (width + seam) / 2;
        double right = a + width;
        double top = bottom + height;
        return new double[][] {
            {a, right, right, right + a, right + a, right, right, a, a, 0, 0, a},
            {0, 0, bottom, bottom, top, top, top + flap, top + flap, top, top, bottom, bottom}
        };
    }

    /** The folds of such a blank and the score of its flap, last. */
    public static double[][] openEndFolds(double width, double height, double seam, double bottom) {
        double a = (width + seam) / 2;
        double right = a + width;
        double top = bottom + height;
        return new double[][] {
            {a, bottom, a, top}, {right, bottom, right, top}, {a, bottom, right, bottom}, {a, top, right, top}
        };
    }

    /** The folds of a diamond on its square as it lies in a mould, a side across; the score of its flap last. */
    public static double[][] diamondFolds(double width, double height, double square) {
        double middle = square / 2;
        double diagonal = Math.sqrt(2);
        double[][] corner = new double[4][];
        for (int i = 0; i < corner.length; i++) {
            double right = (i == 1 || i == 2 ? width : -width) / 2;
            double up = (i > 1 ? height : -height) / 2;
            corner[i] = new double[] {middle + (right - up) / diagonal, middle + (right + up) / diagonal};
        }
        return new double[][] {
            {corner[0][0], corner[0][1], corner[3][0], corner[3][1]},
            {corner[1][0], corner[1][1], corner[2][0], corner[2][1]},
            {corner[0][0], corner[0][1], corner[1][0], corner[1][1]},
            {corner[3][0], corner[3][1], corner[2][0], corner[2][1]}
        };
    }

    /**
     * What a pocket measures inside when its blank came out larger or smaller than it was laid out: the panel between
     * its folds changes with the blank, the thickness of the paper does not.
     *
     * @param panel the panel as laid out
     * @param share the blank as it came out over the blank as laid out
     */
    public static double insideOfPanel(double panel, double share, double paperThickness) {
        return panel * share - paperThickness;
    }

    /** The side of the least square whose corners close over a rectangle: (w + h)/√2. */
    public static double leastSquare(double width, double height) {
        return (width + height) / Math.sqrt(2);
    }

    /** The overlap of neighbouring flaps, across the diagonal seam, of a square turned over a rectangle. */
    public static double diamondSeam(double square, double width, double height) {
        return square - leastSquare(width, height);
    }

    /** Wallet: as side seams, with a straight flap over the whole of the long side and no throat cut into the back. */
    public static Blank wallet(
            double cardWidth,
            double cardHeight,
            double filling,
            double clearance,
            double paper,
            double sideFlap,
            double taper,
            double flap) {
        return sideSeam(
                Math.max(cardWidth, cardHeight),
                Math.min(cardWidth, cardHeight),
                filling,
                clearance,
                paper,
                sideFlap,
                taper,
                0,
                flap,
                1);
    }

    /**
     * Open end: the mouth on the short side; two back panels that overlap by the seam in the middle of the back, a
     * bottom flap folded up and a straight flap over the mouth.
     *
     * <p>The width is 2W plus the seam, the height H plus bottom flap plus flap.
     */
    public static Blank openEnd(
            double cardWidth,
            double cardHeight,
            double filling,
            double clearance,
            double paper,
            double seam,
            double bottomFlap,
            double flap) {
        double insideWidth = inside(Math.min(cardWidth, cardHeight), filling, clearance);
        double insideHeight = inside(Math.max(cardWidth, cardHeight), filling, clearance);
        double width = panel(insideWidth, paper);
        double height = panel(insideHeight, paper);
        double area = width * (2 * height + bottomFlap + flap) + seam * height;
        return new Blank(
                2 * width + seam,
                height + bottomFlap + flap,
                area,
                insideWidth,
                insideHeight,
                outside(insideWidth, paper),
                outside(insideHeight, paper),
                seam,
                flap,
                3);
    }
}
