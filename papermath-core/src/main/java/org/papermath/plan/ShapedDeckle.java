package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.mm;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import org.papermath.drawing.SvgDrawing;
import org.papermath.engine.CuttingAndFolding;
import org.papermath.engine.FormedShape;
import org.papermath.engine.FormingSheets;
import org.papermath.envelope.Line;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.shape.Outline;

/**
 * The deckle of a piece that is formed to its outline, or several at a dip in a deckle that is split: its openings as the
 * pulp settles in them, and what dries of one. It lies as on the mould, whose long side runs along.
 */
public final class ShapedDeckle {
    private record Values(
            String piece,
            Outline outline,
            Outline finished,
            List<Line> folds,
            int across,
            int along,
            Amount<Length> strip,
            Amount<Area> area) {}

    private final Values values;

    private ShapedDeckle(Values values) {
        this.values = values;
    }

    static Optional<ShapedDeckle> of(PlainNumbers in, int p) {
        FormingSheets.Setting sheet = in.settings().sheet(p);
        FormedShape shape = sheet.shape();
        if (shape == null) {
            return Optional.empty();
        }
        CuttingAndFolding.Setting size = in.settings().size(p);
        double width = in.estimates().likely(CuttingAndFolding.WIDTH, p);
        double height = in.estimates().likely(CuttingAndFolding.HEIGHT, p);
        double longSide = size.width() >= size.height() ? width : height;
        double shortSide = size.width() >= size.height() ? height : width;
        double dryAcross = sheet.turned() ? longSide : shortSide;
        double dryAlong = sheet.turned() ? shortSide : longSide;
        return Optional.of(new ShapedDeckle(new Values(
                in.order().pieces().get(p).name(),
                outline(shape.outline(sheet.pieceAcross(), sheet.pieceAlong(), sheet.turned())),
                outline(shape.outline(dryAcross, dryAlong, sheet.turned())),
                folds(shape.folds(dryAcross, dryAlong, sheet.turned())),
                sheet.rowAcross(),
                sheet.rowAlong(),
                mm(sheet.strip()),
                Kinds.AREA.ofSi(sheet.area(), "cm2"))));
    }

    /** Folds from a point to another, m; the score of a flap last. */
    static List<Line> folds(double[][] lines) {
        List<Line> folds = new ArrayList<>();
        for (int i = 0; i < lines.length; i++) {
            double[] at = lines[i];
            folds.add(Line.of(
                    Outline.Point.of(mm(at[0]), mm(at[1])),
                    Outline.Point.of(mm(at[2]), mm(at[3])),
                    i == lines.length - 1 ? Line.Kind.SCORE : Line.Kind.FOLD));
        }
        return List.copyOf(folds);
    }

    /** An outline by its corners across and along, m. */
    static Outline outline(double[][] corners) {
        List<Outline.Point> points = new ArrayList<>();
        for (int i = 0; i < corners[0].length; i++) {
            points.add(Outline.Point.of(mm(corners[0][i]), mm(corners[1][i])));
        }
        return Outline.of(points);
    }

    /** {@return the name of the piece} */
    public String piece() {
        return values.piece;
    }

    /** {@return one opening, as the pulp settles in it} */
    public Outline outline() {
        return values.outline;
    }

    /** {@return what dries of it, when it shrinks as likely} */
    public Outline finished() {
        return values.finished;
    }

    /** {@return the folds of an envelope on the finished outline, with the score of its flap; none on another piece} */
    public List<Line> folds() {
        return values.folds;
    }

    /** {@return openings in a row across} */
    public int across() {
        return values.across;
    }

    /** {@return openings in a row along} */
    public int along() {
        return values.along;
    }

    /** {@return the strip between two openings, where they come nearest in a row} */
    public Amount<Length> strip() {
        return values.strip;
    }

    /** {@return the area of all openings, in which pulp settles} */
    public Amount<Area> area() {
        return values.area;
    }

    /**
     * Draws the deckle at true scale: its openings, in the first of them the dry piece with the folds of an envelope,
     * and the sides over all. Shrinkage is taken in: cut along the full lines.
     *
     * @return the drawing
     */
    public SvgDrawing drawing() {
        double aside = Math.max(
                        0, values.outline.width().si() - values.finished.width().si())
                / 2;
        double up = Math.max(
                        0,
                        values.outline.height().si() - values.finished.height().si())
                / 2;
        SvgDrawing drawing = SvgDrawing.openings(
                        "deckle for " + values.piece + ": opening " + values.outline.width() + " × "
                                + values.outline.height() + " over all, dry " + values.finished.width() + " × "
                                + values.finished.height(),
                        values.outline,
                        values.across,
                        values.along,
                        values.strip)
                .withGuide(values.finished, mm(aside), mm(up));
        for (Line fold : values.folds) {
            drawing =
                    drawing.withLine(Line.of(moved(fold.from(), aside, up), moved(fold.to(), aside, up), fold.kind()));
        }
        return drawing.withRemark(
                values.folds.isEmpty()
                        ? "full: cut out of the deckle; grey: the piece when dry"
                        : "full: cut out of the deckle; grey: the blank when dry; dashed: fold; dotted: score");
    }

    private static Outline.Point moved(Outline.Point point, double aside, double up) {
        return Outline.Point.of(
                mm(point.across().si() + aside), mm(point.along().si() + up));
    }

    @Override
    public String toString() {
        int openings = values.across * values.along;
        return (openings == 1 ? "one opening" : openings + " openings") + " of " + values.outline.width() + " × "
                + values.outline.height() + " over all";
    }
}
