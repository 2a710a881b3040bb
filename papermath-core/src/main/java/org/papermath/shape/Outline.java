package org.papermath.shape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import org.papermath.numeric.Polygons;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * The outline of a flat piece: a simple polygon, convex or not. Immutable.
 *
 * <p>An outline has a shape and no place: its corners are measured from the lower left corner of its bounding box,
 * across to the right and along upward. Corners run anticlockwise.
 */
public final class Outline {
    /** Corners of a round or an oval. */
    public static final int ROUND_CORNERS = 360;

    private final double[] x;
    private final double[] y;

    /**
     * A point of the plane.
     *
     * @param across distance from the left
     * @param along distance from below
     */
    public record Point(Amount<Length> across, Amount<Length> along) {
        /**
         * Checks that nothing is missing.
         *
         * @param across distance from the left
         * @param along distance from below
         */
        public Point {
            Objects.requireNonNull(across, "across");
            Objects.requireNonNull(along, "along");
        }

        /**
         * Makes a point.
         *
         * @param across distance from the left
         * @param along distance from below
         * @return the point
         * @throws Refused if a distance is not a length
         */
        public static Point of(Quantity<Length> across, Quantity<Length> along) {
            return new Point(
                    Kinds.LENGTH.check(across, "distance across"), Kinds.LENGTH.check(along, "distance along"));
        }

        @Override
        public String toString() {
            return "(" + across + ", " + along + ")";
        }
    }

    private Outline(double[] x, double[] y) {
        this.x = x;
        this.y = y;
    }

    /** Makes an outline of coordinates in metres, wherever they lie and whichever way they run. */
    private static Outline ofMetres(double[] x, double[] y) {
        for (int i = 0; i < x.length; i++) {
            if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
                throw Refused.of(
                        "outline.not-a-number", "outline: corner " + (i + 1) + " is not a number.", "corner", i + 1);
            }
        }
        if (x.length < 3) {
            throw Refused.of(
                    "outline.corners",
                    "outline: " + x.length + " corners given; at least 3 are needed.",
                    "given",
                    x.length,
                    "least",
                    3);
        }
        if (!Polygons.isSimple(x, y)) {
            throw Refused.of(
                    "outline.not-simple",
                    "outline: its edges touch or cross each other, or it has no area. Give the corners in order,"
                            + " each once.",
                    "corners",
                    x.length);
        }
        double[] box = Polygons.bounds(x, y);
        int n = x.length;
        boolean anticlockwise = Polygons.signedArea(x, y) > 0;
        double[] ox = new double[n];
        double[] oy = new double[n];
        for (int i = 0; i < n; i++) {
            int from = anticlockwise ? i : n - 1 - i;
            ox[i] = x[from] - box[0];
            oy[i] = y[from] - box[1];
        }
        return new Outline(ox, oy);
    }

    /**
     * Makes a rectangle.
     *
     * @param width the side across, above zero
     * @param height the side along, above zero
     * @return the outline
     * @throws Refused if a side is not above zero
     */
    public static Outline rectangle(Quantity<Length> width, Quantity<Length> height) {
        double w = Kinds.LENGTH.siAboveZero(width, "width");
        double h = Kinds.LENGTH.siAboveZero(height, "height");
        return new Outline(new double[] {0, w, w, 0}, new double[] {0, 0, h, h});
    }

    /**
     * Makes a round: a polygon of {@value #ROUND_CORNERS} corners on the circle, whose area is less than that of the
     * circle by 5 parts in 100 000.
     *
     * @param diameter the diameter, above zero
     * @return the outline
     * @throws Refused if the diameter is not above zero
     */
    public static Outline round(Quantity<Length> diameter) {
        return oval(diameter, diameter);
    }

    /**
     * Makes an oval: a polygon of {@value #ROUND_CORNERS} corners on the ellipse.
     *
     * @param width the greatest extent across, above zero
     * @param height the greatest extent along, above zero
     * @return the outline
     * @throws Refused if a side is not above zero
     */
    public static Outline oval(Quantity<Length> width, Quantity<Length> height) {
        double w = Kinds.LENGTH.siAboveZero(width, "width");
        double h = Kinds.LENGTH.siAboveZero(height, "height");
        double[] ox = new double[ROUND_CORNERS];
        double[] oy = new double[ROUND_CORNERS];
        for (int i = 0; i < ROUND_CORNERS; i++) {
            double angle = 2 * Math.PI * i / ROUND_CORNERS;
            ox[i] = w / 2 * Math.cos(angle);
            oy[i] = h / 2 * Math.sin(angle);
        }
        return ofMetres(ox, oy);
    }

    /**
     * Makes an outline of its corners.
     *
     * @param corners three or more corners in order, either way round, each once
     * @return the outline
     * @throws Refused if there are fewer than three, or edges touch or cross, or there is no area
     */
    public static Outline of(Point... corners) {
        Objects.requireNonNull(corners, "corners");
        return of(Arrays.asList(corners));
    }

    /**
     * Makes an outline of its corners.
     *
     * @param corners three or more corners in order, either way round, each once
     * @return the outline
     * @throws Refused as {@link #of(Point...)}
     */
    public static Outline of(List<Point> corners) {
        Objects.requireNonNull(corners, "corners");
        return ofMetres(
                corners.stream().mapToDouble(p -> p.across().si()).toArray(),
                corners.stream().mapToDouble(p -> p.along().si()).toArray());
    }

    /**
     * Returns the corners, anticlockwise. An outline made of them is equal to this one.
     *
     * @return an unmodifiable list
     */
    public List<Point> corners() {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            points.add(new Point(place(x[i]), place(y[i])));
        }
        return List.copyOf(points);
    }

    /** In millimetres, unless they would not give the same number back: the same corners make the same outline. */
    private static Amount<Length> place(double metres) {
        Amount<Length> millimetres = Kinds.LENGTH.ofSi(metres, "mm");
        return millimetres.si() == metres ? millimetres : Kinds.LENGTH.ofSi(metres);
    }

    /**
     * Returns the area.
     *
     * @return the area
     */
    public Amount<Area> area() {
        return Kinds.AREA.ofSi(Polygons.area(x, y), "cm2");
    }

    /**
     * Returns the length of the boundary.
     *
     * @return the length
     */
    public Amount<Length> perimeter() {
        return Kinds.LENGTH.ofSi(Polygons.perimeter(x, y), "mm");
    }

    /**
     * Returns the width of the bounding box.
     *
     * @return the greatest extent across
     */
    public Amount<Length> width() {
        return Kinds.LENGTH.ofSi(Polygons.bounds(x, y)[2], "mm");
    }

    /**
     * Returns the height of the bounding box.
     *
     * @return the greatest extent along
     */
    public Amount<Length> height() {
        return Kinds.LENGTH.ofSi(Polygons.bounds(x, y)[3], "mm");
    }

    /**
     * Returns the bounding box.
     *
     * @return the least rectangle with sides across and along that holds the outline
     */
    public Outline boundingBox() {
        return rectangle(width(), height());
    }

    /**
     * Returns the centroid of the area.
     *
     * @return the point on which a cut piece balances
     */
    public Point centroid() {
        double[] c = Polygons.centroid(x, y);
        // The centroid of a thin piece may come out a rounding below its edge.
        return new Point(Kinds.LENGTH.ofSi(Math.max(0, c[0]), "mm"), Kinds.LENGTH.ofSi(Math.max(0, c[1]), "mm"));
    }

    /**
     * Returns whether no corner turns inward.
     *
     * @return whether it is convex
     */
    public boolean isConvex() {
        return Polygons.isConvex(x, y);
    }

    /**
     * Returns whether a point lies in the outline; its edge belongs to it.
     *
     * @param across distance from the left of the bounding box
     * @param along distance from the bottom of the bounding box
     * @return whether the point lies inside or on the edge
     * @throws Refused if a distance is not a length
     */
    public boolean contains(Quantity<Length> across, Quantity<Length> along) {
        return Polygons.contains(
                x, y, Kinds.LENGTH.si(across, "distance across"), Kinds.LENGTH.si(along, "distance along"));
    }

    /**
     * Returns the outline with every edge moved outward, the edges meeting in mitred corners.
     *
     * @param distance how far, zero or more
     * @return the larger outline
     * @throws Refused if a notch closes on the way, or the distance is not a length
     */
    public Outline enlarged(Quantity<Length> distance) {
        return offset(Kinds.LENGTH.si(distance, "offset outward"), "outward");
    }

    /**
     * Returns the outline with every edge moved inward.
     *
     * @param distance how far, zero or more
     * @return the smaller outline
     * @throws Refused if nothing simple is left, or the distance is not a length
     */
    public Outline reduced(Quantity<Length> distance) {
        return offset(-Kinds.LENGTH.si(distance, "offset inward"), "inward");
    }

    private Outline offset(double distance, String direction) {
        Polygons.Offset moved = Polygons.offset(x, y, distance);
        if (moved.collapsed()) {
            throw Refused.of(
                    "outline.offset-collapsed",
                    "outline: moving its edges " + Units.fourDigits(1000 * Math.abs(distance)) + " mm " + direction
                            + " leaves no simple outline. Take a smaller distance or simplify the corners.",
                    "distance",
                    Math.abs(distance),
                    "direction",
                    direction);
        }
        return ofMetres(moved.x(), moved.y());
    }

    /**
     * Returns the outline after a shrinkage.
     *
     * @param shrinkage what is lost across and along
     * @return the smaller outline
     */
    public Outline shrunkBy(Shrinkage shrinkage) {
        double[][] scaled = Polygons.scaled(x, y, 1 - shrinkage.acrossFraction(), 1 - shrinkage.alongFraction());
        return ofMetres(scaled[0], scaled[1]);
    }

    /**
     * Returns the outline that shrinks to this one: what has to be formed.
     *
     * @param shrinkage what will be lost across and along
     * @return the larger outline
     */
    public Outline beforeShrinkage(Shrinkage shrinkage) {
        double[][] scaled =
                Polygons.scaled(x, y, 1 / (1 - shrinkage.acrossFraction()), 1 / (1 - shrinkage.alongFraction()));
        return ofMetres(scaled[0], scaled[1]);
    }

    /**
     * Returns the outline turned by a quarter turn anticlockwise.
     *
     * @return the turned outline
     */
    public Outline turned() {
        double[] ox = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            ox[i] = -y[i];
        }
        return ofMetres(ox, x);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Outline that && Arrays.equals(x, that.x) && Arrays.equals(y, that.y);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(x) + Arrays.hashCode(y);
    }

    @Override
    public String toString() {
        return "outline of " + x.length + " corners, " + width() + " × " + height();
    }
}
