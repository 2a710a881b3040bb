package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.numeric.Polygons;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.quantity.Grammage;
import org.papermath.shape.Outline;

/** The drawing of a deckle to be made, read back from its SVG in millimetres. */
class DeckleDrawingTest {
    private static MakingPlan plan() {
        return MakingPlan.withoutBands(
                Order.of("any")
                        .recipe(Recipe.of("rag", Furnish.of(Fibres.COTTON_RAG))
                                .beating(hours(3))
                                .build())
                        .piece(Piece.of("card", 40, "rag")
                                .size(mm(105), mm(148))
                                .grammage(Grammage.gsm(240))
                                .edge(Piece.Edge.DECKLE)
                                .build())
                        .piece(Piece.of("round", 40, "rag")
                                .formedTo(Outline.round(mm(80)))
                                .grammage(Grammage.gsm(200))
                                .build())
                        .piece(Piece.of("envelope", 40, "rag")
                                .envelopeFor("card", EnvelopeStyle.SIDE_SEAM)
                                .edge(Piece.Edge.SHAPED)
                                .grammage(Grammage.gsm(100))
                                .build())
                        .build(),
                Studio.of("any").mould(Mould.of("mould", mm(210), mm(300))).build());
    }

    private static final Pattern ELEMENT = Pattern.compile("<(\\w+) ([^>]*?)/?>");
    private static final Pattern ATTRIBUTE = Pattern.compile("(\\w+)=\"([^\"]*)\"");

    /** The attributes of all elements of a tag and class. */
    private static List<Map<String, String>> all(String svg, String tag, String style) {
        List<Map<String, String>> found = new ArrayList<>();
        Matcher element = ELEMENT.matcher(svg);
        while (element.find()) {
            Map<String, String> attributes = new HashMap<>();
            Matcher attribute = ATTRIBUTE.matcher(element.group(2));
            while (attribute.find()) {
                attributes.put(attribute.group(1), attribute.group(2));
            }
            if (element.group(1).equals(tag) && style.equals(attributes.get("class"))) {
                found.add(attributes);
            }
        }
        return found;
    }

    private static double[][] points(Map<String, String> polygon) {
        String[] pairs = polygon.get("points").split(" ");
        double[][] at = new double[2][pairs.length];
        for (int i = 0; i < pairs.length; i++) {
            String[] pair = pairs[i].split(",");
            at[0][i] = Double.parseDouble(pair[0]);
            at[1][i] = Double.parseDouble(pair[1]);
        }
        return at;
    }

    private static double area(Map<String, String> polygon) {
        double[][] at = points(polygon);
        return Polygons.area(at[0], at[1]);
    }

    @Test
    void openingsOfARoundAreDrawnWithShrinkageTakenIn() {
        PiecePlan piece = plan().piece("round");
        ShapedDeckle deckle = piece.forming().shapedDeckle().orElseThrow();
        String drawing = deckle.drawing().svg();
        List<Map<String, String>> openings = all(drawing, "polygon", "cut");
        assertThat(openings).hasSize(deckle.across() * deckle.along()).hasSize(2 * 2);
        double whole = 0;
        double[] over = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        for (Map<String, String> opening : openings) {
            assertThat(area(opening) * 1e-6).isCloseTo(deckle.outline().area().si(), within(1e-9));
            whole += area(opening) * 1e-6;
            double[] box = Polygons.bounds(points(opening)[0], points(opening)[1]);
            assertThat(box[2] - box[0]).isCloseTo(deckle.outline().width().in("mm"), within(1e-5));
            over[0] = Math.min(over[0], box[0]);
            over[1] = Math.max(over[1], box[2]);
        }
        assertThat(whole).isCloseTo(deckle.area().si(), within(1e-8));
        assertThat(over[1] - over[0])
                .isCloseTo(piece.forming().opening().width().in("mm"), within(1e-5));
        List<Map<String, String>> dry = all(drawing, "polygon", "guide");
        assertThat(dry).hasSize(1);
        assertThat(area(dry.get(0)) * 1e-6)
                .isCloseTo(Outline.round(mm(80)).area().si(), within(1e-9));
        double[] box = Polygons.bounds(points(dry.get(0))[0], points(dry.get(0))[1]);
        assertThat(box[2] - box[0]).isCloseTo(80, within(1e-5));
        assertThat(drawing).containsPattern("<svg [^>]*width=\"[0-9.]+mm\"");
        String width =
                Double.toString(Math.rint(piece.forming().opening().width().in("mm") * 10) / 10);
        assertThat(drawing).contains(width + " mm");
    }

    @Test
    void theBlankOfAnEnvelopeIsDrawnWithItsFoldsInsideIt() {
        ShapedDeckle deckle = plan().piece("envelope").forming().shapedDeckle().orElseThrow();
        String drawing = deckle.drawing().svg();
        Map<String, String> wet = all(drawing, "polygon", "cut").get(0);
        Map<String, String> dry = all(drawing, "polygon", "guide").get(0);
        assertThat(area(wet) * 1e-6).isCloseTo(deckle.outline().area().si(), within(1e-9));
        assertThat(area(dry) * 1e-6).isCloseTo(deckle.finished().area().si(), within(1e-9));
        double[] wetBox = Polygons.bounds(points(wet)[0], points(wet)[1]);
        double[] dryBox = Polygons.bounds(points(dry)[0], points(dry)[1]);
        assertThat(dryBox[0] - wetBox[0])
                .isCloseTo(wetBox[2] - dryBox[2], within(1e-5))
                .isPositive();
        assertThat(dryBox[1] - wetBox[1])
                .isCloseTo(wetBox[3] - dryBox[3], within(1e-5))
                .isPositive();
        List<Map<String, String>> folds = all(drawing, "line", "fold");
        assertThat(folds).hasSize(3);
        assertThat(all(drawing, "line", "score")).hasSize(1);
        for (Map<String, String> fold : folds) {
            for (String end : new String[] {"1", "2"}) {
                assertThat(Polygons.contains(
                                Polygons.offset(points(dry)[0], points(dry)[1], 1e-4)
                                        .x(),
                                Polygons.offset(points(dry)[0], points(dry)[1], 1e-4)
                                        .y(),
                                Double.parseDouble(fold.get("x" + end)),
                                Double.parseDouble(fold.get("y" + end))))
                        .isTrue();
            }
        }
    }
}
