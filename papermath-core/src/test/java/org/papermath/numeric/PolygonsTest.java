package org.papermath.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PolygonsTest {
    private static final double[] L_X = {0, 4, 4, 1, 1, 0};
    private static final double[] L_Y = {0, 0, 1, 1, 3, 3};

    @Test
    void areaAndCentroidOfAnAngle() {
        assertThat(Polygons.signedArea(L_X, L_Y)).isEqualTo(6);
        assertThat(Polygons.signedArea(reversed(L_X), reversed(L_Y))).isEqualTo(-6);
        assertThat(Polygons.area(reversed(L_X), reversed(L_Y))).isEqualTo(6);
        // Two rectangles: 4 by 1 about (2, 0.5) and 1 by 2 about (0.5, 2).
        double[] c = Polygons.centroid(L_X, L_Y);
        assertThat(c[0]).isCloseTo((4 * 2 + 2 * 0.5) / 6, within(1e-15));
        assertThat(c[1]).isCloseTo((4 * 0.5 + 2 * 2) / 6, within(1e-15));
        assertThat(Polygons.perimeter(L_X, L_Y)).isEqualTo(14);
        assertThat(Polygons.bounds(L_X, L_Y)).containsExactly(0, 0, 4, 3);
    }

    @Test
    void areaKeepsItsDigitsFarFromTheOrigin() {
        double far = 1e6;
        double[] x = {far, far + 0.25, far + 0.25, far};
        double[] y = {far, far, far + 0.5, far + 0.5};
        assertThat(Polygons.area(x, y)).isEqualTo(0.125);
    }

    @Test
    void theBoundaryBelongsToThePolygon() {
        assertThat(Polygons.contains(L_X, L_Y, 0.5, 2)).isTrue();
        assertThat(Polygons.contains(L_X, L_Y, 2, 2)).isFalse();
        assertThat(Polygons.contains(L_X, L_Y, 1, 2)).isTrue();
        assertThat(Polygons.contains(L_X, L_Y, 4, 0)).isTrue();
        assertThat(Polygons.contains(L_X, L_Y, 4.0000001, 0)).isFalse();
        assertThat(Polygons.contains(L_X, L_Y, -1, 1)).isFalse();
        assertThat(Polygons.contains(L_X, L_Y, 5, 1)).isFalse();
    }

    @Test
    void simpleOrNot() {
        assertThat(Polygons.isSimple(L_X, L_Y)).isTrue();
        assertThat(Polygons.isSimple(new double[] {0, 1, 1, 0}, new double[] {0, 1, 0, 1}))
                .as("bow tie")
                .isFalse();
        assertThat(Polygons.isSimple(new double[] {0, 1}, new double[] {0, 1}))
                .as("two corners")
                .isFalse();
        assertThat(Polygons.isSimple(new double[] {0, 1, 2}, new double[] {0, 1, 2}))
                .as("no area")
                .isFalse();
        assertThat(Polygons.isSimple(new double[] {0, 1, 1, 0}, new double[] {0, 0, 0, 1}))
                .as("corner twice")
                .isFalse();
        assertThat(Polygons.isSimple(new double[] {0, 4, 2, 2, 0}, new double[] {0, 0, 0, 2, 2}))
                .as("runs back")
                .isFalse();
        assertThat(Polygons.isSimple(new double[] {0, 2, 2, 1, 0}, new double[] {0, 0, 2, 0, 2}))
                .as("touches")
                .isFalse();
        assertThat(Polygons.isSimple(new double[] {0, 1, 2, 2, 0}, new double[] {0, 0, 0, 1, 1}))
                .as("corner on a side")
                .isTrue();
    }

    @Test
    void sideIsExactWhereRoundingWouldDecide() {
        double a = 0.1;
        double b = 0.3;
        assertThat(Polygons.side(0, 0, a, a, b, b)).isZero();
        assertThat(Polygons.side(0, 0, 1e-3, 1e-3, 1, Math.nextUp(1.0))).isEqualTo(1);
        assertThat(Polygons.side(0, 0, 1e-3, 1e-3, 1, Math.nextDown(1.0))).isEqualTo(-1);
        assertThat(Polygons.side(12, 12, 24, 24, 0.5, Math.nextUp(0.5))).isEqualTo(1);
    }

    @Test
    void offsetOfARectangle() {
        double[] x = {0, 10, 10, 0};
        double[] y = {0, 0, 6, 6};
        Polygons.Offset larger = Polygons.offset(x, y, 1.5);
        assertThat(larger.collapsed()).isFalse();
        assertThat(Polygons.area(larger.x(), larger.y())).isCloseTo(13 * 9, within(1e-12));
        Polygons.Offset smaller = Polygons.offset(x, y, -1.5);
        assertThat(Polygons.area(smaller.x(), smaller.y())).isCloseTo(7 * 3, within(1e-12));
        assertThat(Polygons.offset(x, y, -3).collapsed()).isTrue();
        assertThat(Polygons.offset(x, y, -4).collapsed()).isTrue();
        assertThat(Polygons.area(Polygons.offset(x, y, 0).x(), y)).isEqualTo(60);
        Polygons.Offset clockwise = Polygons.offset(reversed(x), reversed(y), 1.5);
        assertThat(Polygons.signedArea(clockwise.x(), clockwise.y())).isCloseTo(-13 * 9, within(1e-12));
    }

    @Test
    void offsetOfAnAngle() {
        Polygons.Offset larger = Polygons.offset(L_X, L_Y, 0.25);
        assertThat(Polygons.area(larger.x(), larger.y())).isCloseTo(4.5 * 3.5 - 3 * 2, within(1e-12));
        Polygons.Offset smaller = Polygons.offset(L_X, L_Y, -0.25);
        assertThat(Polygons.area(smaller.x(), smaller.y())).isCloseTo(3.5 * 0.5 + 0.5 * 2, within(1e-12));
        assertThat(Polygons.offset(L_X, L_Y, -0.5).collapsed()).isTrue();
    }

    @Test
    void aNotchThatClosesCollapses() {
        double[] x = {0, 10, 10, 5.5, 5.5, 4.5, 4.5, 0};
        double[] y = {0, 0, 5, 5, 2, 2, 5, 5};
        assertThat(Polygons.offset(x, y, 0.4).collapsed()).isFalse();
        assertThat(Polygons.offset(x, y, 0.6).collapsed()).isTrue();
        assertThat(Polygons.offset(x, y, -1.2).collapsed()).isTrue();
    }

    @Test
    void aShortEdgeOfAConvexPieceIsDroppedOnTheWayInward() {
        // A square with one corner cut off by 1.
        double[] x = {0, 10, 10, 9, 0};
        double[] y = {0, 0, 9, 10, 10};
        Polygons.Offset smaller = Polygons.offset(x, y, -3);
        assertThat(smaller.collapsed()).isFalse();
        assertThat(smaller.x()).hasSize(4);
        assertThat(Polygons.area(smaller.x(), smaller.y())).isCloseTo(16, within(1e-12));
    }

    @Test
    void slipAngleOfAParallelogram() {
        double w = 0.559;
        double h = 0.762;
        double angle = Math.asin(0.003 / h);
        double d1 = Math.hypot(w + h * Math.sin(angle), h * Math.cos(angle));
        double d2 = Math.hypot(w - h * Math.sin(angle), h * Math.cos(angle));
        assertThat(Polygons.slipAngle(w, h, d1, d2)).isCloseTo(angle, within(1e-12));
        assertThat(Polygons.slipAngle(w, h, d2, d1)).isCloseTo(-angle, within(1e-12));
    }

    private static double[] reversed(double[] a) {
        double[] r = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            r[i] = a[a.length - 1 - i];
        }
        return r;
    }

    @Test
    void theHullLeavesOutWhatLiesInsideOrOnASide() {
        assertThat(Polygons.hull(L_X, L_Y)).containsExactly(0, 1, 2, 4, 5);
        assertThat(Polygons.hull(new double[] {0, 1, 2, 2, 0}, new double[] {0, 0, 0, 2, 2}))
                .containsExactly(0, 2, 3, 4);
        assertThat(Polygons.hull(new double[] {3}, new double[] {4})).containsExactly(0);
        assertThat(Polygons.hull(new double[] {0, 2, 1}, new double[] {0, 2, 1}))
                .containsExactly(0, 1);
    }
}
