package org.papermath.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.testing.CheckValues.relative;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.locationtech.jts.geom.Geometry;
import org.papermath.equation.EnvelopeBlanks;

/** Blanks of any size, folded by geometry. */
class EnvelopePropertyTest {
    @Property(tries = 400, seed = "2026")
    void foldedToTheSizeItSays(
            @ForAll EnvelopeStyle style,
            @ForAll @Scale(4) @DoubleRange(min = 60, max = 300) double w,
            @ForAll @Scale(4) @DoubleRange(min = 60, max = 300) double h,
            @ForAll @Scale(4) @DoubleRange(min = 0, max = 4) double thickness,
            @ForAll @Scale(4) @DoubleRange(min = 0, max = 12) double clearance,
            @ForAll @Scale(4) @DoubleRange(min = 0, max = 0.4) double paper,
            @ForAll @Scale(4) @DoubleRange(min = 2, max = 20) double seam) {
        EnvelopeAllowances allowances =
                EnvelopeAllowances.of(mm(clearance), mm(17), mm(seam), percent(45), percent(60));
        Envelope envelope =
                Envelope.forCard(style, mm(w), mm(h), mm(thickness), allowances).ofPaper(mm(paper));
        EnvelopeTest.Folded folded = EnvelopeTest.fold(envelope);
        double across = switch (style) {
            case SIDE_SEAM, DIAMOND -> w;
            case WALLET -> Math.max(w, h);
            case OPEN_END -> Math.min(w, h);
        };
        double along = w + h - across;
        assertThat(folded.width() - paper).isCloseTo(across + thickness + clearance, within(1e-9));
        assertThat(folded.height() - paper).isCloseTo(along + thickness + clearance, within(1e-9));
        assertThat(envelope.outsideWidth().in("mm") - envelope.insideWidth().in("mm"))
                .isCloseTo(2 * paper, within(1e-9));

        double area = envelope.blank().area().in("mm2");
        assertThat(envelope.mass(org.papermath.quantity.Grammage.gsm(100)).in("g") * 1e4)
                .isCloseTo(area, relative(area, 1e-12));
        Geometry front = EnvelopeTest.box(0, 0, folded.width(), folded.height());
        Geometry covered = EnvelopeTest.area(folded.left())
                .union(EnvelopeTest.area(folded.right()))
                .union(EnvelopeTest.area(folded.back()))
                .union(EnvelopeTest.area(folded.flap()));
        assertThat(covered.intersection(front).getArea()).isCloseTo(front.getArea(), relative(front.getArea(), 1e-9));
        boolean sticksOut = covered.difference(front.buffer(1e-6)).getArea() > 0;
        double past = envelope.notices().stream()
                .filter(notice -> notice.code().equals("envelope.long-tips"))
                .mapToDouble(notice -> 1000 * (double) notice.arguments().get("past"))
                .findFirst()
                .orElse(0);
        if (sticksOut) {
            assertThat(past).isPositive();
        }
        if (past > 1e-5) {
            assertThat(sticksOut).isTrue();
        }
    }

    @Property(tries = 300, seed = "2026")
    void noSmallerSquareCloses(
            @ForAll @Scale(4) @DoubleRange(min = 0.03, max = 0.5) double w,
            @ForAll @Scale(4) @DoubleRange(min = 0.03, max = 0.5) double h) {
        double least = EnvelopeBlanks.leastSquare(w, h);
        assertThat(EnvelopeBlanks.diamondSeam(least, w, h)).isCloseTo(0, within(1e-15));
        // The corner of the pocket lies on the edge of the turned square: |x| + |y| is half the diagonal.
        assertThat(w / 2 + h / 2).isCloseTo(least * Math.sqrt(2) / 2, within(1e-15));
        assertThat(least).isLessThanOrEqualTo(Math.hypot(w, h) + 1e-15);
    }
}
