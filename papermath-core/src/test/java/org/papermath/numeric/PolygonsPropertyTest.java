package org.papermath.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.assertj.core.data.Offset;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/** Against an independent geometry library. */
class PolygonsPropertyTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private record Shape(double[] x, double[] y) {
        Polygon jts() {
            Coordinate[] ring = new Coordinate[x.length + 1];
            for (int i = 0; i <= x.length; i++) {
                ring[i] = new Coordinate(x[i % x.length], y[i % x.length]);
            }
            return FACTORY.createPolygon(ring);
        }
    }

    /** A star-shaped polygon about a point: simple, and rarely convex. */
    private static Shape star(long seed, int corners, double least) {
        Random random = new Random(seed);
        double[] x = new double[corners];
        double[] y = new double[corners];
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * (i + 0.8 * random.nextDouble()) / corners;
            double radius = least + (1 - least) * random.nextDouble();
            x[i] = 3 + radius * Math.cos(angle);
            y[i] = 2 + radius * Math.sin(angle);
        }
        return new Shape(x, y);
    }

    /** Points on an ellipse: convex. */
    private static Shape convex(long seed, int corners) {
        Shape round = star(seed, corners, 1);
        double[] y = round.y().clone();
        for (int i = 0; i < y.length; i++) {
            y[i] *= 0.6;
        }
        return new Shape(round.x(), y);
    }

    private static Geometry buffer(Polygon polygon, double distance) {
        BufferParameters mitred =
                new BufferParameters(8, BufferParameters.CAP_SQUARE, BufferParameters.JOIN_MITRE, 1e4);
        mitred.setSimplifyFactor(0);
        return BufferOp.bufferOp(polygon, distance, mitred);
    }

    @Property(tries = 500, seed = "2026")
    void areaCentroidAndValidityAgree(@ForAll long seed, @ForAll @IntRange(min = 3, max = 24) int corners) {
        Shape shape = star(seed, corners, 0.2);
        Polygon jts = shape.jts();
        assertThat(Polygons.isSimple(shape.x(), shape.y())).isEqualTo(jts.isValid());
        if (!jts.isValid()) {
            return;
        }
        double area = jts.getArea();
        assertThat(Polygons.area(shape.x(), shape.y())).isCloseTo(area, relative(area, 1e-12));
        assertThat(Polygons.perimeter(shape.x(), shape.y()))
                .isCloseTo(jts.getLength(), relative(jts.getLength(), 1e-13));
        double[] centroid = Polygons.centroid(shape.x(), shape.y());
        assertThat(centroid[0]).isCloseTo(jts.getCentroid().getX(), Offset.offset(1e-10));
        assertThat(centroid[1]).isCloseTo(jts.getCentroid().getY(), Offset.offset(1e-10));
        double[] box = Polygons.bounds(shape.x(), shape.y());
        assertThat(box)
                .containsExactly(
                        jts.getEnvelopeInternal().getMinX(),
                        jts.getEnvelopeInternal().getMinY(),
                        jts.getEnvelopeInternal().getMaxX(),
                        jts.getEnvelopeInternal().getMaxY());
    }

    @Property(tries = 300, seed = "2026")
    void shuffledCornersAreJudgedAlike(@ForAll long seed, @ForAll @IntRange(min = 4, max = 9) int corners) {
        Random random = new Random(seed);
        double[] x = new double[corners];
        double[] y = new double[corners];
        for (int i = 0; i < corners; i++) {
            x[i] = random.nextInt(5);
            y[i] = random.nextInt(5);
        }
        // Small whole numbers make corners that coincide and edges that touch.
        boolean corner = false;
        for (int i = 0; i < corners; i++) {
            corner |= x[i] == x[(i + 1) % corners] && y[i] == y[(i + 1) % corners];
        }
        if (corner) {
            assertThat(Polygons.isSimple(x, y)).isFalse();
        } else {
            assertThat(Polygons.isSimple(x, y)).isEqualTo(new Shape(x, y).jts().isValid());
        }
    }

    @Property(tries = 500, seed = "2026")
    void containmentAgrees(@ForAll long seed, @ForAll @IntRange(min = 3, max = 24) int corners) {
        Shape shape = star(seed, corners, 0.3);
        Polygon jts = shape.jts();
        if (!jts.isValid()) {
            return;
        }
        Random random = new Random(~seed);
        for (int i = 0; i < 40; i++) {
            double px = 2 + 2 * random.nextDouble();
            double py = 1 + 2 * random.nextDouble();
            assertThat(Polygons.contains(shape.x(), shape.y(), px, py))
                    .isEqualTo(jts.covers(FACTORY.createPoint(new Coordinate(px, py))));
        }
        for (int i = 0; i < corners; i++) {
            assertThat(Polygons.contains(shape.x(), shape.y(), shape.x()[i], shape.y()[i]))
                    .isTrue();
        }
    }

    @Property(tries = 500, seed = "2026")
    void offsetOfConvexPolygonsAgrees(
            @ForAll long seed,
            @ForAll @IntRange(min = 3, max = 16) int corners,
            @ForAll @Scale(6) @DoubleRange(min = -0.5, max = 0.5) double distance) {
        Shape shape = convex(seed, corners);
        Polygon jts = shape.jts();
        if (!jts.isValid() || jts.getArea() < 1e-3) {
            return;
        }
        Polygons.Offset offset = Polygons.offset(shape.x(), shape.y(), distance);
        Geometry expected = buffer(jts, distance);
        if (offset.collapsed()) {
            assertThat(expected.getArea()).isLessThan(1e-9);
        } else {
            double area = Polygons.area(offset.x(), offset.y());
            if (distance > 0) {
                assertThat(area).isCloseTo(mitredArea(shape, distance), relative(area, 1e-11));
            }
            assertThat(area)
                    .isCloseTo(expected.getArea(), Offset.offset(1e-9 + 1e-9 * area + blunted(shape, distance)));
            assertThat(new Shape(offset.x(), offset.y())
                            .jts()
                            .symDifference(expected)
                            .getArea())
                    .isLessThan(1e-6 + blunted(shape, distance));
        }
    }

    @Property(tries = 500, seed = "2026")
    void offsetOfOtherPolygonsAgreesWhereItDoesNotCollapse(
            @ForAll long seed,
            @ForAll @IntRange(min = 4, max = 10) int corners,
            @ForAll @Scale(6) @DoubleRange(min = -0.1, max = 0.1) double distance) {
        Shape shape = star(seed, corners, 0.6);
        Polygon jts = shape.jts();
        if (!jts.isValid()) {
            return;
        }
        Polygons.Offset offset = Polygons.offset(shape.x(), shape.y(), distance);
        if (!offset.collapsed()) {
            double area = Polygons.area(offset.x(), offset.y());
            assertThat(area).isCloseTo(mitredArea(shape, distance), relative(area, 1e-11));
            // The library also blunts the mitres inside notches, each by part of the square of the distance.
            assertThat(area)
                    .isCloseTo(
                            buffer(jts, distance).getArea(),
                            Offset.offset(1e-8 + 4 * distance * distance + blunted(shape, distance)));
        }
    }

    /**
     * What the library leaves out when it moves edges outward: where two edges turn by less than 0.05 it makes one
     * corner of the two ends, which sets each edge off by up to d · 0.05² / 2 at that end.
     */
    private static double blunted(Shape shape, double distance) {
        return Math.max(0, distance) * 0.05 * 0.05 / 2 * Polygons.perimeter(shape.x(), shape.y());
    }

    /** Steiner's formula with mitres: A + P·d + d² · Σ tan(turn / 2). */
    private static double mitredArea(Shape shape, double distance) {
        double[] x = shape.x();
        double[] y = shape.y();
        int n = x.length;
        double sum = 0;
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            int k = (i + 2) % n;
            double before = Math.atan2(y[j] - y[i], x[j] - x[i]);
            double after = Math.atan2(y[k] - y[j], x[k] - x[j]);
            sum += Math.tan(Math.IEEEremainder(after - before, 2 * Math.PI) / 2);
        }
        return Polygons.area(x, y) + Polygons.perimeter(x, y) * distance + sum * distance * distance;
    }

    @Property(tries = 200, seed = "2026")
    void outwardAndBackIsTheSame(
            @ForAll long seed,
            @ForAll @IntRange(min = 3, max = 12) int corners,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 0.3) double distance) {
        Shape shape = convex(seed, corners);
        if (!Polygons.isSimple(shape.x(), shape.y()) || Polygons.area(shape.x(), shape.y()) < 1e-2) {
            return;
        }
        Polygons.Offset out = Polygons.offset(shape.x(), shape.y(), distance);
        Polygons.Offset back = Polygons.offset(out.x(), out.y(), -distance);
        double area = Polygons.area(shape.x(), shape.y());
        assertThat(Polygons.area(back.x(), back.y())).isCloseTo(area, relative(area, 1e-9));
    }
}
