package org.papermath.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.papermath.envelope.Envelope;
import org.papermath.envelope.EnvelopeAllowances;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.numeric.Polygons;
import org.papermath.shape.CutLayout;
import org.papermath.shape.Outline;

class SvgDrawingTest {
    private static final EnvelopeAllowances ALLOWANCES =
            EnvelopeAllowances.of(mm(6.35), mm(17), mm(12), percent(45), percent(60));

    private static double[][] polygon(String svg, int which) {
        Matcher matcher = Pattern.compile("<polygon class=\"[a-z]+\" points=\"([^\"]+)\"/>")
                .matcher(svg);
        for (int i = 0; i <= which; i++) {
            assertThat(matcher.find()).isTrue();
        }
        String[] points = matcher.group(1).split(" ");
        double[][] xy = new double[2][points.length];
        for (int i = 0; i < points.length; i++) {
            String[] pair = points[i].split(",");
            xy[0][i] = Double.parseDouble(pair[0]);
            xy[1][i] = Double.parseDouble(pair[1]);
        }
        return xy;
    }

    private static List<double[]> lines(String svg, String style) {
        Matcher matcher = Pattern.compile("<line class=\"" + style
                        + "\" x1=\"([^\"]+)\" y1=\"([^\"]+)\" x2=\"([^\"]+)\" y2=\"([^\"]+)\"/>")
                .matcher(svg);
        List<double[]> found = new ArrayList<>();
        while (matcher.find()) {
            found.add(new double[] {
                Double.parseDouble(matcher.group(1)),
                Double.parseDouble(matcher.group(2)),
                Double.parseDouble(matcher.group(3)),
                Double.parseDouble(matcher.group(4))
            });
        }
        return found;
    }

    /** One unit is one millimetre: the view box is as large as the page says in millimetres. */
    private static void assertTrueScale(String svg) {
        Matcher matcher = Pattern.compile(
                        "width=\"([0-9.]+)mm\" height=\"([0-9.]+)mm\"" + " viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\"")
                .matcher(svg);
        assertThat(matcher.find()).isTrue();
        assertThat(matcher.group(1)).isEqualTo(matcher.group(3));
        assertThat(matcher.group(2)).isEqualTo(matcher.group(4));
        List<double[]> bar = lines(svg, "bar");
        assertThat(bar.get(0)[2] - bar.get(0)[0]).isEqualTo(100);
        double width = Double.parseDouble(matcher.group(1));
        double height = Double.parseDouble(matcher.group(2));
        for (String style : List.of("bar", "size", "fold", "score", "cut", "deckle")) {
            assertThat(lines(svg, style)).allSatisfy(line -> {
                assertThat(line[0]).isBetween(0.0, width);
                assertThat(line[2]).isBetween(0.0, width);
                assertThat(line[1]).isBetween(0.0, height);
                assertThat(line[3]).isBetween(0.0, height);
            });
        }
    }

    @Test
    void anOutlineIsDrawnAsLargeAsItIs() {
        String svg = SvgDrawing.of("tide card", Outline.rectangle(mm(120.5), mm(170)))
                .svg();
        assertTrueScale(svg);
        double[][] xy = polygon(svg, 0);
        assertThat(Polygons.area(xy[0], xy[1])).isCloseTo(120.5 * 170, within(1e-6));
        assertThat(svg)
                .contains("<title>tide card</title>")
                .contains("120.5 mm")
                .contains("170 mm")
                .startsWith("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");
    }

    @ParameterizedTest
    @EnumSource(EnvelopeStyle.class)
    void theDrawnBlankIsTheBlank(EnvelopeStyle style) {
        Envelope envelope =
                Envelope.forCard(style, mm(178), mm(127), mm(0.55), ALLOWANCES).ofPaper(mm(0.18));
        String svg = SvgDrawing.of("blank", envelope).svg();
        assertTrueScale(svg);
        double[][] xy = polygon(svg, 0);
        assertThat(Polygons.area(xy[0], xy[1]))
                .isCloseTo(envelope.blank().area().in("mm2"), within(0.01));
        double[] box = Polygons.bounds(xy[0], xy[1]);
        assertThat(box[2] - box[0]).isCloseTo(envelope.blank().width().in("mm"), within(2e-6));
        assertThat(lines(svg, "fold")).hasSize(3);
        assertThat(lines(svg, "score")).hasSize(1);
        double[] score = lines(svg, "score").get(0);
        assertThat(Math.abs(score[2] - score[0]))
                .isCloseTo(envelope.insideWidth().in("mm") + 0.18, within(2e-6));
        // Folds lie in the blank.
        for (double[] fold : lines(svg, "fold")) {
            assertThat(Polygons.contains(xy[0], xy[1], (fold[0] + fold[2]) / 2, (fold[1] + fold[3]) / 2))
                    .isTrue();
        }
        assertThat(svg).contains("stroke-dasharray").contains("inside " + envelope.insideWidth());
    }

    /** The figures beside the drawing add up to its width and height, whatever the style. */
    @ParameterizedTest
    @EnumSource(EnvelopeStyle.class)
    void thePartsOfABlankAddUp(EnvelopeStyle style) {
        Envelope envelope =
                Envelope.forCard(style, mm(178), mm(127), mm(0.55), ALLOWANCES).ofPaper(mm(0.18));
        String svg = SvgDrawing.of("blank", envelope).svg();
        Matcher matcher = Pattern.compile("<text [^>]*>([0-9.]+)</text>").matcher(svg);
        List<Double> parts = new ArrayList<>();
        while (matcher.find()) {
            parts.add(Double.parseDouble(matcher.group(1)));
        }
        assertThat(parts).hasSize(6);
        assertThat(parts.get(0) + parts.get(1) + parts.get(2))
                .isCloseTo(envelope.blank().width().in("mm"), within(0.2));
        assertThat(parts.get(3) + parts.get(4) + parts.get(5))
                .isCloseTo(envelope.blank().height().in("mm"), within(0.2));
        assertThat(parts.get(1)).isCloseTo(envelope.insideWidth().in("mm") + 0.18, within(0.051));
        assertThat(parts.get(4)).isCloseTo(envelope.insideHeight().in("mm") + 0.18, within(0.051));
        assertThat(svg).contains(">front<", ">flap<", "dashed: fold");
    }

    @Test
    void cutsAndStripsAreMeasured() {
        CutLayout layout = CutLayout.best(
                mm(280),
                mm(380),
                mm(85),
                mm(120),
                mm(3),
                mm(5),
                EnumSet.of(CutLayout.Edge.LEFT, CutLayout.Edge.BOTTOM));
        String svg = SvgDrawing.of("cards", layout).svg();
        assertThat(svg.split(">85<", -1)).hasSize(4);
        assertThat(svg.split(">120<", -1)).hasSize(4);
        assertThat(svg).contains(">3<", ">19<", ">14<", "deckle edge that is kept");
        String none = SvgDrawing.of(
                        "none",
                        CutLayout.best(
                                mm(28), mm(38), mm(85), mm(120), mm(3), mm(5), EnumSet.noneOf(CutLayout.Edge.class)))
                .svg();
        assertThat(none).contains("28 mm").doesNotContain("kept");
    }

    @Test
    void placesAreSortedAndTakenOnce() {
        String svg = SvgDrawing.titled("x")
                .withSheet(Outline.rectangle(mm(60), mm(40)))
                .withPartsAcross(List.of(mm(60), mm(0), mm(25.04), mm(25.04)))
                .withPartsAlong(List.of(mm(40), mm(0)))
                .withRemark("cut along the grain")
                .svg();
        assertThat(svg).contains(">25<", ">35<", ">40<", ">cut along the grain<");
        assertTrueScale(svg);
    }

    @Test
    void aLongTitleIsBrokenBetweenWords() {
        String svg = SvgDrawing.of(
                        "gift tag with a notch, and a title that says what the piece is for and when",
                        Outline.rectangle(mm(40), mm(70)))
                .svg();
        assertTrueScale(svg);
        Matcher matcher = Pattern.compile("<text [^>]*>([^<]*)</text>").matcher(svg);
        while (matcher.find()) {
            assertThat(matcher.group(1).length()).isLessThan(55);
        }
        assertThat(svg).contains("<title>gift tag with a notch, and a title that says what the piece is for and when<");
        assertThat(SvgDrawing.titled("harbour card")).hasToString("drawing \"harbour card\"");
    }

    @Test
    void theFlapIsAbove() {
        Envelope envelope = Envelope.forCard(EnvelopeStyle.SIDE_SEAM, mm(178), mm(127), mm(0), ALLOWANCES)
                .withFlap(Envelope.Flap.POINTED);
        double[][] xy = polygon(SvgDrawing.of("x", envelope).svg(), 0);
        // The tip of the flap is the one highest corner, and high is small in the picture.
        double top = Polygons.bounds(xy[0], xy[1])[1];
        int tips = 0;
        for (double y : xy[1]) {
            tips += y == top ? 1 : 0;
        }
        assertThat(tips).isEqualTo(1);
    }

    @Test
    void aCuttingLayout() {
        CutLayout layout =
                CutLayout.best(mm(300), mm(420), mm(95), mm(135), mm(0), mm(0), EnumSet.allOf(CutLayout.Edge.class));
        String svg = SvgDrawing.of("cards", layout).svg();
        assertTrueScale(svg);
        double[][] parent = polygon(svg, 0);
        for (int i = 1; i <= 9; i++) {
            double[][] piece = polygon(svg, i);
            assertThat(Polygons.area(piece[0], piece[1])).isCloseTo(95 * 135, within(1e-3));
            for (int k = 0; k < 4; k++) {
                double[] box = Polygons.bounds(parent[0], parent[1]);
                assertThat(piece[0][k]).isBetween(box[0], box[2]);
                assertThat(piece[1][k]).isBetween(box[1], box[3]);
            }
        }
        assertThat(lines(svg, "deckle")).hasSize(4 * 2 + 4);
    }

    @Test
    void textIsMadeSafe() throws Exception {
        String svg = SvgDrawing.of(
                        "<b>\"salt & pepper\"</b>\u0000 \u00e9 \ud83d\udcdc", Outline.rectangle(mm(10), mm(10)))
                .withText(mm(1), mm(1), "1 < 2 & 3")
                .svg();
        assertThat(svg)
                .contains("&lt;b&gt;&quot;salt &amp; pepper&quot;&lt;/b&gt;")
                .contains("1 &lt; 2 &amp; 3")
                .doesNotContain("\u0000")
                .contains("\u00e9 \ud83d\udcdc");
    }

    @Test
    void theDefaultLocaleDoesNotMatter() {
        Locale before = Locale.getDefault();
        String expected =
                SvgDrawing.of("x", Outline.rectangle(mm(1234.5), mm(0.25))).svg();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            assertThat(SvgDrawing.of("x", Outline.rectangle(mm(1234.5), mm(0.25)))
                            .svg())
                    .isEqualTo(expected);
            Locale.setDefault(Locale.GERMANY);
            assertThat(SvgDrawing.of("x", Outline.rectangle(mm(1234.5), mm(0.25)))
                            .svg())
                    .isEqualTo(expected);
        } finally {
            Locale.setDefault(before);
        }
        assertThat(expected).contains("1234.5").doesNotContain("1.234,5");
    }
}
