package org.papermath.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.papermath.evidence.Assumptions;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;
import org.papermath.shape.Outline;

/** Blanks are folded here by geometry: cut along the folds, the parts turned over, laid on the front. */
class EnvelopeTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final EnvelopeAllowances ALLOWANCES =
            EnvelopeAllowances.of(mm(6.35), mm(17), mm(12), percent(45), percent(60));

    /**
     * The parts of a blank and what they cover when folded, in millimetres about the lower left corner of the front.
     */
    record Folded(
            double width, double height, Geometry front, Geometry left, Geometry right, Geometry back, Geometry flap) {}

    static Polygon polygon(Outline outline) {
        List<Outline.Point> corners = outline.corners();
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i <= corners.size(); i++) {
            Outline.Point p = corners.get(i % corners.size());
            ring[i] = new Coordinate(p.across().in("mm"), p.along().in("mm"));
        }
        return FACTORY.createPolygon(ring);
    }

    static Geometry box(double x1, double y1, double x2, double y2) {
        return FACTORY.toGeometry(new org.locationtech.jts.geom.Envelope(x1, x2, y1, y2));
    }

    /** Without the lines along which two parts only touch. */
    static Geometry area(Geometry geometry) {
        return geometry.buffer(0);
    }

    static Folded fold(Envelope envelope) {
        Polygon blank = polygon(envelope.blank());
        double x1 = Double.POSITIVE_INFINITY;
        double y1 = Double.POSITIVE_INFINITY;
        double x2 = 0;
        double y2 = 0;
        for (Line line : envelope.scoreLines()) {
            for (Outline.Point p : List.of(line.from(), line.to())) {
                x1 = Math.min(x1, p.across().in("mm"));
                x2 = Math.max(x2, p.across().in("mm"));
                y1 = Math.min(y1, p.along().in("mm"));
                y2 = Math.max(y2, p.along().in("mm"));
            }
        }
        double far = 1e4;
        Geometry left = blank.intersection(box(-far, y1, x1, y2));
        Geometry right = blank.intersection(box(x2, y1, far, y2));
        Geometry back = blank.intersection(box(-far, -far, far, y1)).intersection(box(x1, -far, x2, far));
        Geometry flap = blank.intersection(box(x1, y2, x2, far));
        AffineTransformation home = AffineTransformation.translationInstance(-x1, -y1);
        return new Folded(
                x2 - x1,
                y2 - y1,
                home.transform(blank.intersection(box(x1, y1, x2, y2))),
                home.transform(
                        AffineTransformation.reflectionInstance(x1, 0, x1, 1).transform(left)),
                home.transform(
                        AffineTransformation.reflectionInstance(x2, 0, x2, 1).transform(right)),
                home.transform(
                        AffineTransformation.reflectionInstance(0, y1, 1, y1).transform(back)),
                home.transform(
                        AffineTransformation.reflectionInstance(0, y2, 1, y2).transform(flap)));
    }

    private static Envelope envelope(EnvelopeStyle style) {
        return Envelope.forCard(style, mm(178), mm(127), mm(0.55), ALLOWANCES).ofPaper(mm(0.18));
    }

    /**
     * Inside the pocket lies between the folds less one thickness of paper: card, thickness and clearance, to 1e-9 mm.
     */
    @ParameterizedTest
    @EnumSource(EnvelopeStyle.class)
    void thePocketIsCardAndThicknessAndClearance(EnvelopeStyle style) {
        Envelope envelope = envelope(style);
        Folded folded = fold(envelope);
        boolean upright = style == EnvelopeStyle.OPEN_END;
        double width = (upright ? 127 : 178) + 0.55 + 6.35;
        double height = (upright ? 178 : 127) + 0.55 + 6.35;
        assertThat(folded.width() - 0.18).isCloseTo(width, within(1e-9));
        assertThat(folded.height() - 0.18).isCloseTo(height, within(1e-9));
        assertThat(envelope.insideWidth().in("mm")).isCloseTo(width, within(1e-9));
        assertThat(envelope.insideHeight().in("mm")).isCloseTo(height, within(1e-9));
        assertThat(envelope.outsideWidth().in("mm")).isCloseTo(width + 0.36, within(1e-9));
        assertThat(envelope.outsideHeight().in("mm")).isCloseTo(height + 0.36, within(1e-9));
        // The front is whole.
        assertThat(folded.front().getArea()).isCloseTo(folded.width() * folded.height(), within(1e-6));
        // Nothing folded sticks out past the front.
        Geometry front = box(0, 0, folded.width(), folded.height()).buffer(1e-6);
        assertThat(front.covers(folded.left())).isTrue();
        assertThat(front.covers(folded.right())).isTrue();
        assertThat(front.covers(folded.back())).isTrue();
        assertThat(front.covers(folded.flap())).isTrue();
    }

    /** Closed, back, sides and flap leave no hole. */
    @ParameterizedTest
    @EnumSource(EnvelopeStyle.class)
    void theClosedBackIsWhole(EnvelopeStyle style) {
        Folded folded = fold(envelope(style));
        Geometry covered = area(folded.left())
                .union(area(folded.right()))
                .union(area(folded.back()))
                .union(area(folded.flap()));
        assertThat(covered.getArea())
                .isCloseTo(folded.width() * folded.height(), relative(folded.width() * folded.height(), 1e-9));
    }

    @Test
    void sideSeamsOverlapAsSpecified() {
        Envelope envelope = envelope(EnvelopeStyle.SIDE_SEAM).withThroat(mm(15)).withTaper(mm(4));
        Folded folded = fold(envelope);
        double back = folded.height() - 15;
        assertThat(folded.back().getEnvelopeInternal().getMaxY()).isCloseTo(back, within(1e-9));
        for (Geometry side : List.of(folded.left(), folded.right())) {
            Geometry seam = side.intersection(folded.back());
            assertThat(seam.getEnvelopeInternal().getWidth()).isCloseTo(17, within(1e-9));
        }
        assertThat(envelope.seamOverlap().in("mm")).isCloseTo(17, within(1e-12));
        double flap = 0.45 * folded.height();
        assertThat(folded.flap().getEnvelopeInternal().getMinY()).isCloseTo(folded.height() - flap, within(1e-9));
        Geometry closing = folded.flap().intersection(folded.back());
        assertThat(closing.getEnvelopeInternal().getHeight()).isCloseTo(flap - 15, within(1e-9));
        assertThat(envelope.flapOverlap().in("mm")).isCloseTo(flap - 15, within(1e-9));
        // W + 2s by 2H - t + f, between the folds.
        assertThat(envelope.blank().width().in("mm")).isCloseTo(folded.width() + 34, within(1e-9));
        assertThat(envelope.blank().height().in("mm")).isCloseTo(2 * folded.height() - 15 + flap, within(1e-9));
    }

    @Test
    void aPointedFlapIsATriangle() {
        Folded folded = fold(envelope(EnvelopeStyle.SIDE_SEAM).withFlap(Envelope.Flap.POINTED));
        assertThat(folded.flap().getArea()).isCloseTo(0.6 * folded.height() * folded.width() / 2, within(1e-6));
        assertThat(folded.flap().getEnvelopeInternal().getHeight()).isCloseTo(0.6 * folded.height(), within(1e-9));
    }

    @Test
    void diagonalSeamsOverlapAsSpecified() {
        Folded folded = fold(envelope(EnvelopeStyle.DIAMOND));
        for (Geometry side : List.of(folded.left(), folded.right())) {
            for (Geometry other : List.of(folded.back(), folded.flap())) {
                Geometry seam = side.intersection(other);
                assertThat(seam.isEmpty()).isFalse();
                // Width of the strip across the diagonal: turned by 45 degrees, the least side of its box.
                double least = Double.POSITIVE_INFINITY;
                for (double angle : new double[] {Math.PI / 4, -Math.PI / 4}) {
                    org.locationtech.jts.geom.Envelope turned = AffineTransformation.rotationInstance(angle)
                            .transform(seam)
                            .getEnvelopeInternal();
                    least = Math.min(least, Math.min(turned.getWidth(), turned.getHeight()));
                }
                assertThat(least).isCloseTo(12, within(1e-6));
            }
        }
    }

    @Test
    void theLeastSquareOfADiamond() {
        EnvelopeAllowances none = EnvelopeAllowances.of(mm(0), mm(17), mm(26.283), percent(45), percent(60));
        Envelope envelope = Envelope.forCard(EnvelopeStyle.DIAMOND, mm(240), mm(140), mm(0), none);
        // A card of 140 by 240 mm: least 268.70 mm; a square of 295 leaves 26.3 mm to overlap, its diagonal 37.19 mm
        // more.
        assertThat(envelope.sheet().width().in("mm")).isCloseTo(380 / Math.sqrt(2) + 26.283, within(1e-9));
        assertThat(org.papermath.equation.EnvelopeBlanks.leastSquare(0.14, 0.24))
                .isCloseTo(0.26870, within(1e-5));
        assertThat(0.295 * Math.sqrt(2) - 0.38).isCloseTo(0.037193, within(1e-6));
        assertThat(org.papermath.equation.EnvelopeBlanks.diamondSeam(0.295, 0.14, 0.24))
                .isCloseTo(0.0263, within(1e-5));
        // A card of 120 by 170 mm: 205.1 mm.
        assertThat(org.papermath.equation.EnvelopeBlanks.leastSquare(0.12, 0.17))
                .isCloseTo(0.2051, within(5e-5));
        assertThat(envelope.notices())
                .singleElement()
                .satisfies(n -> assertThat(n.code()).isEqualTo("envelope.no-clearance"));
    }

    @Test
    void aDiamondWithoutSeamJustTouches() {
        EnvelopeAllowances hair = ALLOWANCES.withSeam(mm(1e-6));
        Folded folded = fold(Envelope.forCard(EnvelopeStyle.DIAMOND, mm(178), mm(127), mm(0.55), hair));
        assertThat(folded.left().intersection(folded.back()).getArea()).isLessThan(1e-3);
        Geometry covered = area(folded.left())
                .union(area(folded.right()))
                .union(area(folded.back()))
                .union(area(folded.flap()));
        assertThat(covered.getArea()).isCloseTo(folded.width() * folded.height(), relative(covered.getArea(), 1e-6));
    }

    @Test
    void theMiddleSeamOfAnOpenEndOverlapsAsSpecified() {
        Envelope envelope = envelope(EnvelopeStyle.OPEN_END);
        Folded folded = fold(envelope);
        Geometry seam = folded.left().intersection(folded.right());
        assertThat(seam.getEnvelopeInternal().getWidth()).isCloseTo(12, within(1e-9));
        assertThat(seam.getEnvelopeInternal().getHeight()).isCloseTo(folded.height(), within(1e-9));
        assertThat(seam.getCentroid().getX()).isCloseTo(folded.width() / 2, within(1e-9));
        assertThat(folded.back().getEnvelopeInternal().getHeight())
                .as("bottom flap")
                .isCloseTo(17, within(1e-9));
        assertThat(envelope.flapOverlap().in("mm")).isCloseTo(0.45 * folded.width(), within(1e-9));
    }

    @Test
    void aWalletOpensOnItsLongSide() {
        Envelope lying = Envelope.forCard(EnvelopeStyle.WALLET, mm(127), mm(178), mm(0.55), ALLOWANCES)
                .ofPaper(mm(0.18));
        assertThat(lying.blank()).isEqualTo(envelope(EnvelopeStyle.WALLET).blank());
        assertThat(lying.insideWidth().in("mm"))
                .isGreaterThan(lying.insideHeight().in("mm"));
        Folded folded = fold(lying);
        assertThat(folded.flap().getArea()).isCloseTo(0.45 * folded.height() * folded.width(), within(1e-6));
        for (Geometry side : List.of(folded.left(), folded.right())) {
            assertThat(side.intersection(folded.back()).getEnvelopeInternal().getWidth())
                    .isCloseTo(17, within(1e-9));
        }
    }

    /** The area the equation gives is that of the outline drawn. */
    @ParameterizedTest
    @CsvSource({"SIDE_SEAM, 0, 0", "SIDE_SEAM, 12, 5", "DIAMOND, 0, 0", "WALLET, 0, 6", "OPEN_END, 0, 0"})
    void massAndAreaAgree(EnvelopeStyle style, double throat, double taper) {
        Envelope envelope = envelope(style);
        if (throat > 0) {
            envelope = envelope.withThroat(mm(throat));
        }
        if (taper > 0) {
            envelope = envelope.withTaper(mm(taper));
        }
        double area = envelope.blank().area().si();
        assertThat(polygon(envelope.blank()).getArea()).isCloseTo(1e6 * area, relative(1e6 * area, 1e-12));
        assertThat(envelope.mass(Grammage.gsm(105)).in("g")).isCloseTo(105 * area, relative(105 * area, 1e-12));
        double sheet = envelope.sheet().area().si();
        assertThat(envelope.ovenDrySolids(Grammage.gsm(105), Moisture.percent(7))
                        .in("g"))
                .isCloseTo(105 * 0.93 * sheet, relative(105 * sheet, 1e-12));
        if (style != EnvelopeStyle.DIAMOND) {
            assertThat(envelope.sheet().width().si())
                    .isCloseTo(envelope.blank().width().si(), within(1e-12));
            assertThat(envelope.sheet().height().si())
                    .isCloseTo(envelope.blank().height().si(), within(1e-12));
        } else {
            assertThat(area).isCloseTo(sheet, relative(sheet, 1e-12));
        }
    }

    @Test
    void thicknessCountsThreeLayersAtTheSeam() {
        Envelope one = Envelope.forCard(EnvelopeStyle.DIAMOND, mm(170), mm(120), mm(0.455), ALLOWANCES)
                .ofPaper(mm(0.175));
        assertThat(one.filledThickness().in("mm")).isCloseTo(0.98, within(1e-9));
        Envelope three = one.inserts(3).alsoHolding(mm(0.1));
        assertThat(three.filling().in("mm")).isCloseTo(3 * 0.455 + 0.1, within(1e-12));
        assertThat(three.insideWidth().in("mm")).isCloseTo(170 + 1.465 + 6.35, within(1e-9));
    }

    @Test
    void theNotchesOfADiamondReachFromThePocketToTheEdge() {
        Envelope envelope = envelope(EnvelopeStyle.DIAMOND);
        Polygon blank = polygon(envelope.blank());
        List<Line> cuts = envelope.lines().stream()
                .filter(line -> line.kind() == Line.Kind.CUT)
                .toList();
        assertThat(cuts).hasSize(8).allSatisfy(cut -> {
            Coordinate end =
                    new Coordinate(cut.to().across().in("mm"), cut.to().along().in("mm"));
            assertThat(blank.getExteriorRing().distance(FACTORY.createPoint(end)))
                    .isLessThan(1e-9);
        });
        assertThat(envelope.foldLines()).hasSize(3);
        assertThat(envelope.foldLines().get(0)).asString().startsWith("fold from (");
        assertThat(envelope.scoreLines()).hasSize(4);
    }

    @Test
    void theTipsOfALongDiamondReachPastThePocket() {
        Envelope envelope = Envelope.forCard(EnvelopeStyle.DIAMOND, mm(210), mm(99), mm(0), ALLOWANCES);
        Folded folded = fold(envelope);
        double past = folded.back().getEnvelopeInternal().getMaxY() - folded.height();
        assertThat(past).isPositive();
        assertThat(envelope.notices()).singleElement().satisfies(notice -> {
            assertThat(notice.code()).isEqualTo("envelope.long-tips");
            assertThat((double) notice.arguments().get("past") * 1000).isCloseTo(past, within(1e-9));
        });
        assertThat(envelope(EnvelopeStyle.DIAMOND).notices()).isEmpty();
        assertThat(envelope(EnvelopeStyle.WALLET).notices()).isEmpty();
    }

    @Test
    void whatCannotBeMadeIsRefused() {
        assertThatThrownBy(() -> envelope(EnvelopeStyle.WALLET).withFlapDepth(mm(200)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("past the bottom");
        assertThatThrownBy(() -> envelope(EnvelopeStyle.SIDE_SEAM).withThroat(mm(70)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("throat");
        assertThatThrownBy(() -> envelope(EnvelopeStyle.SIDE_SEAM).withTaper(mm(70)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> envelope(EnvelopeStyle.DIAMOND).withFlapDepth(mm(40)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> envelope(EnvelopeStyle.WALLET).withFlap(Envelope.Flap.POINTED))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> envelope(EnvelopeStyle.OPEN_END).withThroat(mm(4)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> envelope(EnvelopeStyle.OPEN_END).withTaper(mm(4)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> envelope(EnvelopeStyle.DIAMOND).inserts(0)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Envelope.forCard(EnvelopeStyle.WALLET, mm(0), mm(10), mm(0), ALLOWANCES))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("card width");
        assertThatThrownBy(() -> Envelope.forCard(EnvelopeStyle.WALLET, mm(20), mm(10), mm(0), ALLOWANCES))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("flaps");
        assertThatThrownBy(() -> EnvelopeAllowances.of(mm(6), mm(17), mm(12), percent(0), percent(60)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> EnvelopeAllowances.of(mm(6), mm(17), mm(12), percent(45), percent(120)))
                .isInstanceOf(Refused.class);
    }

    @Test
    void allowancesComeFromTheTableOfAssumptions() {
        EnvelopeAllowances standard = EnvelopeAllowances.from(Assumptions.standard());
        assertThat(standard).hasToString(ALLOWANCES.toString());
        assertThat(Envelope.forCard(EnvelopeStyle.DIAMOND, mm(170), mm(120), mm(0), Assumptions.standard())
                        .insideWidth()
                        .in("mm"))
                .isCloseTo(176.35, within(1e-9));
        assertThat(ALLOWANCES.clearance()).isEqualTo(mm(6.35));
        assertThat(ALLOWANCES.withClearance(mm(3)).clearance()).isEqualTo(mm(3));
        assertThat(ALLOWANCES.squareFlap().si()).isCloseTo(0.45, within(1e-15));
        assertThat(ALLOWANCES.pointedFlap().si()).isCloseTo(0.60, within(1e-15));
        assertThat(ALLOWANCES)
                .isEqualTo(EnvelopeAllowances.of(mm(6.35), mm(17), mm(12), percent(45), percent(60)))
                .isNotEqualTo(ALLOWANCES.withSeam(mm(10)));
    }
}
