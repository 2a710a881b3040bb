package org.papermath.engine;

import org.papermath.numeric.Polygons;

/**
 * The outline a piece is formed to, without its size: in a box of one by one, its long side along. Drying scales it,
 * each way by its own shrinkage, so it is the same wet and dry.
 */
public final class FormedShape {
    private static final double[][] NO_LINES = {};

    /** Four sides and right angles: the openings of a deckle that is split. */
    static final FormedShape RECTANGLE = of(new double[] {0, 1, 1, 0}, new double[] {0, 0, 1, 1});

    private final double[] x;
    private final double[] y;
    /** Folds and scores on it, each from a point to another: two places across and along, one after the other. */
    private final double[][] folds;

    private final double share;

    private FormedShape(double[] x, double[] y, double[][] folds) {
        this.x = x;
        this.y = y;
        this.folds = folds;
        share = Polygons.area(x, y);
    }

    /** The shape of an outline in metres, whichever way it lies. */
    static FormedShape of(double[] x, double[] y) {
        return of(x, y, NO_LINES);
    }

    /** The same with lines on it. */
    static FormedShape of(double[] x, double[] y, double[][] folds) {
        double[] box = Polygons.bounds(x, y);
        double wide = box[2] - box[0];
        double high = box[3] - box[1];
        FormedShape lying =
                new FormedShape(within(x, box[0], wide), within(y, box[1], high), new double[folds.length][]);
        for (int i = 0; i < folds.length; i++) {
            double[] line = folds[i];
            lying.folds[i] = new double[] {
                (line[0] - box[0]) / wide,
                (line[1] - box[1]) / high,
                (line[2] - box[0]) / wide,
                (line[3] - box[1]) / high
            };
        }
        return wide > high ? lying.turned() : lying;
    }

    private static double[] within(double[] all, double from, double extent) {
        double[] in = new double[all.length];
        for (int i = 0; i < all.length; i++) {
            in[i] = (all[i] - from) / extent;
        }
        return in;
    }

    /** A quarter turn anticlockwise. */
    FormedShape turned() {
        double[][] turned = new double[folds.length][];
        for (int i = 0; i < folds.length; i++) {
            double[] line = folds[i];
            turned[i] = new double[] {1 - line[1], line[0], 1 - line[3], line[2]};
        }
        return new FormedShape(away(y), x, turned);
    }

    /** Turned over from left to right. */
    private FormedShape over() {
        return new FormedShape(away(x), y, folds);
    }

    private static double[] away(double[] all) {
        double[] from = new double[all.length];
        for (int i = 0; i < all.length; i++) {
            from[i] = 1 - all[i];
        }
        return from;
    }

    /** The area of the outline over that of the box round it. */
    double share() {
        return share;
    }

    /** How many corners it has. */
    public int corners() {
        return x.length;
    }

    /** The outline in a box of so wide by so high, m; turned, its long side lies across. */
    public double[][] outline(double width, double height, boolean isTurned) {
        FormedShape shape = isTurned ? turned() : this;
        return Polygons.scaled(shape.x, shape.y, width, height);
    }

    /** The folds and scores in such a box. */
    public double[][] folds(double width, double height, boolean isTurned) {
        double[][] lines = (isTurned ? turned() : this).folds;
        double[][] scaled = new double[lines.length][];
        for (int i = 0; i < lines.length; i++) {
            double[] line = lines[i];
            scaled[i] = new double[] {line[0] * width, line[1] * height, line[2] * width, line[3] * height};
        }
        return scaled;
    }

    /**
     * Whether another shape in a box of the same size does for this one: each corner of either lies no further from the
     * outline of the other than this share of the sides, in one of the four ways it can be turned by half a turn or over.
     */
    boolean isNear(FormedShape other, double tolerance) {
        if (Math.abs(other.share - share) > tolerance * share) {
            return false;
        }
        FormedShape upsideDown = other.turned().turned();
        return isOn(other, tolerance)
                || isOn(upsideDown, tolerance)
                || isOn(other.over(), tolerance)
                || isOn(upsideDown.over(), tolerance);
    }

    private boolean isOn(FormedShape other, double most) {
        return liesOn(x, y, other, most) && liesOn(other.x, other.y, this, most);
    }

    private static boolean liesOn(double[] x, double[] y, FormedShape on, double most) {
        for (int i = 0; i < x.length; i++) {
            if (!(Polygons.distance(on.x, on.y, x[i], y[i]) <= most)) {
                return false;
            }
        }
        return true;
    }
}
