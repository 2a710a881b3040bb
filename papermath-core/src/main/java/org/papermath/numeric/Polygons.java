package org.papermath.numeric;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Comparator;

/**
 * Plane geometry of simple polygons given by the coordinates of their corners in order, either way round.
 *
 * <p>Signs that decide (left or right of a line) are exact; lengths and areas carry ordinary rounding.
 */
public final class Polygons {
    /** Relative rounding bound of a 2 by 2 determinant of differences. */
    private static final double SIGN_BOUND = 4.0e-16 * 2;

    private Polygons() {}

    /**
     * A polygon moved outward or inward.
     *
     * @param x abscissas of the corners
     * @param y ordinates of the corners
     * @param collapsed whether nothing simple is left: an edge vanished that cannot be dropped, or edges cross; then
     *     the corners are those of the polygon it started from
     */
    public record Offset(double[] x, double[] y, boolean collapsed) {}

    /** Twice the signed area about the first corner, positive when the corners run anticlockwise. */
    private static double twiceSignedArea(double[] x, double[] y) {
        double sum = 0;
        for (int i = 1; i + 1 < x.length; i++) {
            sum += (x[i] - x[0]) * (y[i + 1] - y[0]) - (x[i + 1] - x[0]) * (y[i] - y[0]);
        }
        return sum;
    }

    /** The signed area, positive when the corners run anticlockwise. */
    public static double signedArea(double[] x, double[] y) {
        return twiceSignedArea(x, y) / 2;
    }

    /** The area. */
    public static double area(double[] x, double[] y) {
        return Math.abs(signedArea(x, y));
    }

    /** The length of the boundary. */
    public static double perimeter(double[] x, double[] y) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            int j = (i + 1) % x.length;
            sum += Math.hypot(x[j] - x[i], y[j] - y[i]);
        }
        return sum;
    }

    /** The centroid of the area as abscissa and ordinate. */
    public static double[] centroid(double[] x, double[] y) {
        double sumX = 0;
        double sumY = 0;
        double twice = 0;
        for (int i = 1; i + 1 < x.length; i++) {
            double ax = x[i] - x[0];
            double ay = y[i] - y[0];
            double bx = x[i + 1] - x[0];
            double by = y[i + 1] - y[0];
            double cross = ax * by - bx * ay;
            twice += cross;
            sumX += cross * (ax + bx);
            sumY += cross * (ay + by);
        }
        return new double[] {x[0] + sumX / (3 * twice), y[0] + sumY / (3 * twice)};
    }

    /** The bounding box as least abscissa, least ordinate, greatest abscissa, greatest ordinate. */
    public static double[] bounds(double[] x, double[] y) {
        double[] box = {x[0], y[0], x[0], y[0]};
        for (int i = 1; i < x.length; i++) {
            box[0] = Math.min(box[0], x[i]);
            box[1] = Math.min(box[1], y[i]);
            box[2] = Math.max(box[2], x[i]);
            box[3] = Math.max(box[3], y[i]);
        }
        return box;
    }

    /** On which side of the line from a to b the point c lies: 1 left, -1 right, 0 on it; exact. */
    public static int side(double ax, double ay, double bx, double by, double cx, double cy) {
        double left = (bx - ax) * (cy - ay);
        double right = (by - ay) * (cx - ax);
        double determinant = left - right;
        if (Math.abs(determinant) > SIGN_BOUND * (Math.abs(left) + Math.abs(right))) {
            return determinant > 0 ? 1 : -1;
        }
        BigDecimal dax = new BigDecimal(ax);
        BigDecimal day = new BigDecimal(ay);
        BigDecimal exactLeft = new BigDecimal(bx).subtract(dax).multiply(new BigDecimal(cy).subtract(day));
        BigDecimal exactRight = new BigDecimal(by).subtract(day).multiply(new BigDecimal(cx).subtract(dax));
        return exactLeft.compareTo(exactRight);
    }

    /** Whether a point lies in the polygon; the boundary belongs to it. */
    public static boolean contains(double[] x, double[] y, double px, double py) {
        boolean inside = false;
        for (int i = 0, j = x.length - 1; i < x.length; j = i++) {
            if (onSegment(x[j], y[j], x[i], y[i], px, py)) {
                return true;
            }
            if ((y[i] > py) != (y[j] > py)) {
                int side = side(x[j], y[j], x[i], y[i], px, py);
                if (y[i] > y[j] ? side > 0 : side < 0) {
                    inside = !inside;
                }
            }
        }
        return inside;
    }

    private static boolean onSegment(double ax, double ay, double bx, double by, double px, double py) {
        return px >= Math.min(ax, bx)
                && px <= Math.max(ax, bx)
                && py >= Math.min(ay, by)
                && py <= Math.max(ay, by)
                && side(ax, ay, bx, by, px, py) == 0;
    }

    /** Whether two closed segments have a point in common. */
    public static boolean segmentsMeet(
            double ax, double ay, double bx, double by, double cx, double cy, double dx, double dy) {
        int c = side(ax, ay, bx, by, cx, cy);
        int d = side(ax, ay, bx, by, dx, dy);
        int a = side(cx, cy, dx, dy, ax, ay);
        int b = side(cx, cy, dx, dy, bx, by);
        if (c * d < 0 && a * b < 0) {
            return true;
        }
        return (c == 0 && onSegment(ax, ay, bx, by, cx, cy))
                || (d == 0 && onSegment(ax, ay, bx, by, dx, dy))
                || (a == 0 && onSegment(cx, cy, dx, dy, ax, ay))
                || (b == 0 && onSegment(cx, cy, dx, dy, bx, by));
    }

    /**
     * Whether the polygon is simple: three corners or more, an area, no edge of no length, no edges that touch or
     * cross.
     */
    public static boolean isSimple(double[] x, double[] y) {
        int n = x.length;
        if (n < 3 || n != y.length || twiceSignedArea(x, y) == 0) {
            return false;
        }
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            if (x[i] == x[j] && y[i] == y[j]) {
                return false;
            }
            int k = (j + 1) % n;
            // The next edge may not run back along this one.
            if (side(x[i], y[i], x[j], y[j], x[k], y[k]) == 0
                    && (onSegment(x[i], y[i], x[j], y[j], x[k], y[k])
                            || onSegment(x[j], y[j], x[k], y[k], x[i], y[i]))) {
                return false;
            }
            for (int l = i + 2; l < n; l++) {
                int m = (l + 1) % n;
                if (m != i && segmentsMeet(x[i], y[i], x[j], y[j], x[l], y[l], x[m], y[m])) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Whether no corner of the polygon turns inward. */
    public static boolean isConvex(double[] x, double[] y) {
        int turn = twiceSignedArea(x, y) > 0 ? 1 : -1;
        int n = x.length;
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            int k = (i + 2) % n;
            if (side(x[i], y[i], x[j], y[j], x[k], y[k]) * turn < 0) {
                return false;
            }
        }
        return true;
    }

    /**
     * A simple polygon with every edge moved outward by a distance (inward below zero), edges meeting in mitres.
     *
     * <p>An edge of a convex polygon that vanishes on the way inward is dropped; in any other polygon it makes the
     * result collapsed.
     */
    public static Offset offset(double[] x, double[] y, double distance) {
        if (distance == 0) {
            return new Offset(x.clone(), y.clone(), false);
        }
        if (distance < 0 && isConvex(x, y)) {
            return insetConvex(x, y, -distance);
        }
        int n = x.length;
        double turn = Math.signum(twiceSignedArea(x, y));
        double[] nx = new double[n];
        double[] ny = new double[n];
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            double length = Math.hypot(x[j] - x[i], y[j] - y[i]);
            nx[i] = turn * (y[j] - y[i]) / length;
            ny[i] = -turn * (x[j] - x[i]) / length;
        }
        double[] ox = new double[n];
        double[] oy = new double[n];
        for (int i = 0; i < n; i++) {
            int before = (i + n - 1) % n;
            double fold = 1 + nx[before] * nx[i] + ny[before] * ny[i];
            ox[i] = x[i] + distance * (nx[before] + nx[i]) / fold;
            oy[i] = y[i] + distance * (ny[before] + ny[i]) / fold;
        }
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            double forward = (ox[j] - ox[i]) * (x[j] - x[i]) + (oy[j] - oy[i]) * (y[j] - y[i]);
            if (!(forward > 0)) {
                return new Offset(x.clone(), y.clone(), true);
            }
        }
        boolean sound = isSimple(ox, oy) && Math.signum(twiceSignedArea(ox, oy)) == turn;
        return sound ? new Offset(ox, oy, false) : new Offset(x.clone(), y.clone(), true);
    }

    /** A convex polygon cut by each of its edges moved inward. */
    private static Offset insetConvex(double[] x, double[] y, double distance) {
        int n = x.length;
        double turn = Math.signum(twiceSignedArea(x, y));
        double[] cx = x.clone();
        double[] cy = y.clone();
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            double length = Math.hypot(x[j] - x[i], y[j] - y[i]);
            double nx = -turn * (y[j] - y[i]) / length;
            double ny = turn * (x[j] - x[i]) / length;
            double[][] cut = cut(cx, cy, nx, ny, nx * x[i] + ny * y[i] + distance);
            cx = cut[0];
            cy = cut[1];
            if (cx.length < 3) {
                return new Offset(x.clone(), y.clone(), true);
            }
        }
        boolean sound = isSimple(cx, cy);
        return sound ? new Offset(cx, cy, false) : new Offset(x.clone(), y.clone(), true);
    }

    /** The part of a convex polygon where nx·x + ny·y is at least a level. */
    private static double[][] cut(double[] x, double[] y, double nx, double ny, double level) {
        int n = x.length;
        double[] ox = new double[2 * n];
        double[] oy = new double[2 * n];
        int count = 0;
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            double here = nx * x[i] + ny * y[i] - level;
            double next = nx * x[j] + ny * y[j] - level;
            if (here >= 0) {
                ox[count] = x[i];
                oy[count++] = y[i];
            }
            if ((here > 0 && next < 0) || (here < 0 && next > 0)) {
                double part = here / (here - next);
                ox[count] = x[i] + part * (x[j] - x[i]);
                oy[count++] = y[i] + part * (y[j] - y[i]);
            }
        }
        return distinct(ox, oy, count);
    }

    private static double[][] distinct(double[] x, double[] y, int count) {
        double[] ox = new double[count];
        double[] oy = new double[count];
        int kept = 0;
        double size = 0;
        for (int i = 0; i < count; i++) {
            size = Math.max(size, Math.max(Math.abs(x[i] - x[0]), Math.abs(y[i] - y[0])));
        }
        double near = 1e-12 * size;
        for (int i = 0; i < count; i++) {
            if (kept > 0 && Math.hypot(x[i] - ox[kept - 1], y[i] - oy[kept - 1]) <= near) {
                continue;
            }
            ox[kept] = x[i];
            oy[kept++] = y[i];
        }
        while (kept > 1 && Math.hypot(ox[0] - ox[kept - 1], oy[0] - oy[kept - 1]) <= near) {
            kept--;
        }
        return new double[][] {java.util.Arrays.copyOf(ox, kept), java.util.Arrays.copyOf(oy, kept)};
    }

    /** How far a point is from the outline of a polygon, within it or without. */
    public static double distance(double[] x, double[] y, double px, double py) {
        double least = Double.POSITIVE_INFINITY;
        int last = x.length - 1;
        for (int i = 0; i < x.length; i++) {
            double dx = x[i] - x[last];
            double dy = y[i] - y[last];
            double square = dx * dx + dy * dy;
            double along = square > 0 ? ((px - x[last]) * dx + (py - y[last]) * dy) / square : 0;
            double at = Math.max(0, Math.min(1, along));
            least = Math.min(least, Math.hypot(px - x[last] - at * dx, py - y[last] - at * dy));
            last = i;
        }
        return least;
    }

    /** A polygon with each coordinate multiplied by a factor of its own direction, about the origin. */
    public static double[][] scaled(double[] x, double[] y, double factorX, double factorY) {
        double[] ox = new double[x.length];
        double[] oy = new double[y.length];
        for (int i = 0; i < x.length; i++) {
            ox[i] = x[i] * factorX;
            oy[i] = y[i] * factorY;
        }
        return new double[][] {ox, oy};
    }

    /**
     * The angle in radians by which a four-sided sheet is out of square, from its sides and its two diagonals: law of
     * cosines.
     */
    public static double slipAngle(double width, double height, double diagonal1, double diagonal2) {
        double sine = (diagonal1 * diagonal1 - diagonal2 * diagonal2) / (4 * width * height);
        return Math.asin(Math.max(-1, Math.min(1, sine)));
    }

    /** The places of the points on the smallest convex outline around all, counter-clockwise, without those on its sides. */
    public static int[] hull(double[] x, double[] y) {
        Integer[] order = new Integer[x.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, Comparator.<Integer>comparingDouble(i -> x[i]).thenComparingDouble(i -> y[i]));
        int[] found = new int[2 * x.length + 1];
        int count = 0;
        for (int turn = 0; turn < 2; turn++) {
            int from = count;
            for (int i = 0; i < order.length; i++) {
                int next = order[turn == 0 ? i : order.length - 1 - i];
                while (count - from >= 2) {
                    int one = found[count - 2];
                    int other = found[count - 1];
                    if (side(x[one], y[one], x[other], y[other], x[next], y[next]) > 0) {
                        break;
                    }
                    count--;
                }
                found[count++] = next;
            }
            count--;
        }
        return Arrays.copyOf(found, Math.max(1, count));
    }
}
