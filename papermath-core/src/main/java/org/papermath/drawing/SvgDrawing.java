package org.papermath.drawing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.papermath.envelope.Envelope;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.envelope.Line;
import org.papermath.equation.PieceLayout;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Units;
import org.papermath.shape.CutLayout;
import org.papermath.shape.Outline;
import org.papermath.text.SvgWriter;
import org.papermath.text.Wrap;

/**
 * A drawing at true scale as SVG text: print it at 100 % and cut along it. Immutable.
 *
 * <p>One unit of the picture is one millimetre on paper. Places are measured from the lower left corner of what is
 * drawn, across and along, as everywhere; the page is as large as needed. The whole width and height stand below and on
 * the left, the distances between folds, cuts or strips above and on the right, in millimetres. A bar of 100 mm stands
 * below, to lay a ruler on the print.
 */
public final class SvgDrawing {
    private static final double MARGIN = 14;
    private static final double FOOT = 16;
    private static final double BAR = 100;
    private static final double LINE_OF_TEXT = 5;
    /** The most a letter of the text takes on the average. */
    private static final double LETTER = 2.35;

    /**
     * Half an inch, 48 pixels: a browser stretches a picture of a broken number of pixels to a whole one, and its bar.
     */
    private static final double PIXELS_48 = 12.7;

    private final String title;
    private final List<Shape> shapes;
    private final String remark;

    /** Something drawn; coordinates in millimetres from the lower left, along upward. */
    private record Shape(Form form, String style, double[] x, double[] y, String text) {}

    private enum Form {
        POLYGON,
        LINE,
        TEXT,
        ACROSS,
        ALONG,
        PARTS_ACROSS,
        PARTS_ALONG
    }

    private SvgDrawing(String title, List<Shape> shapes, String remark) {
        this.title = title;
        this.shapes = shapes;
        this.remark = remark;
    }

    /**
     * Begins an empty drawing.
     *
     * @param title what it shows; may be any text
     * @return the drawing
     */
    public static SvgDrawing titled(String title) {
        Objects.requireNonNull(title, "title");
        return new SvgDrawing(title, List.of(), "");
    }

    /**
     * Draws an outline with its width and height.
     *
     * @param title what it shows
     * @param outline the outline
     * @return the drawing
     */
    public static SvgDrawing of(String title, Outline outline) {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(outline, "outline");
        return titled(title).withOutline(outline, 0, 0, "cut").withSize(outline);
    }

    /**
     * Draws the openings of a deckle in rows and columns, with their sides over all and the strips between them.
     *
     * @param title what it shows
     * @param opening one opening
     * @param across openings in a row across, within {@link Limits#DECKLE_SPLIT}
     * @param along openings in a row along, within {@link Limits#DECKLE_SPLIT}
     * @param strip how far apart they are where they come nearest in a row
     * @return the drawing
     * @throws org.papermath.quantity.Refused if a count is out of range or the strip is not a length
     */
    public static SvgDrawing openings(String title, Outline opening, int across, int along, Quantity<Length> strip) {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(opening, "opening");
        Limits.DECKLE_SPLIT.check(across, "openings across the deckle");
        Limits.DECKLE_SPLIT.check(along, "openings along the deckle");
        double between = mm(strip, "width of a deckle strip");
        double wide = 1000 * opening.width().si();
        double high = 1000 * opening.height().si();
        SvgDrawing drawing = titled(title);
        for (int row = 0; row < along; row++) {
            for (int column = 0; column < across; column++) {
                drawing = drawing.withOutline(opening, column * (wide + between), row * (high + between), "cut");
            }
        }
        double allWide = PieceLayout.extent(across, wide, between);
        double allHigh = PieceLayout.extent(along, high, between);
        drawing = drawing.with(
                        new Shape(Form.ACROSS, "", new double[] {0, allWide}, new double[] {0, 0}, tenths(allWide)))
                .with(new Shape(Form.ALONG, "", new double[] {0, 0}, new double[] {0, allHigh}, tenths(allHigh)));
        if (across > 1) {
            drawing = drawing.with(new Shape(Form.PARTS_ACROSS, "", ends(across, wide, between), new double[0], ""));
        }
        return along > 1
                ? drawing.with(new Shape(Form.PARTS_ALONG, "", new double[0], ends(along, high, between), ""))
                : drawing;
    }

    /** Where each of a row begins and ends. */
    private static double[] ends(int row, double one, double between) {
        double[] all = new double[2 * row];
        for (int i = 0; i < row; i++) {
            all[2 * i] = i * (one + between);
            all[2 * i + 1] = all[2 * i] + one;
        }
        return all;
    }

    /**
     * Draws the blank of an envelope with its folds, scores and cuts, the distances between them and the names of the
     * parts.
     *
     * @param title what it shows
     * @param envelope the envelope
     * @return the drawing
     */
    public static SvgDrawing of(String title, Envelope envelope) {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(envelope, "envelope");
        Outline blank = envelope.blank();
        SvgDrawing drawing = titled(title).withOutline(blank, 0, 0, "cut").withSize(blank);
        for (Line line : envelope.lines()) {
            drawing = drawing.withLine(line);
        }
        List<Line> scores = envelope.scoreLines();
        double[] x = marks(1000 * blank.width().si(), scores, Outline.Point::across);
        double[] y = marks(1000 * blank.height().si(), scores, Outline.Point::along);
        double middleX = (x[1] + x[2]) / 2;
        double middleY = (y[1] + y[2]) / 2;
        boolean openEnd = envelope.style() == EnvelopeStyle.OPEN_END;
        return drawing.with(new Shape(Form.PARTS_ACROSS, "", x, new double[0], ""))
                .with(new Shape(Form.PARTS_ALONG, "", new double[0], y, ""))
                .withName("front", middleX, middleY + LINE_OF_TEXT, x[2] - x[1])
                .withName(
                        "inside " + envelope.insideWidth() + " × " + envelope.insideHeight(),
                        middleX,
                        middleY,
                        Double.POSITIVE_INFINITY)
                .withName("flap", middleX, y[2] + (y[3] - y[2]) / 3, x[2] - x[1])
                .withName(openEnd ? "bottom" : "back", middleX, y[1] - (y[1] - y[0]) / 3, x[2] - x[1])
                .withName(openEnd ? "back" : "side", x[1] - (x[1] - x[0]) / 2, middleY, x[1] - x[0])
                .withName(openEnd ? "back" : "side", x[2] + (x[3] - x[2]) / 2, middleY, x[3] - x[2])
                .withRemark("dashed: fold; dotted: score, fold last to close");
    }

    /** The two ends and the two fold lines between them, in millimetres. */
    private static double[] marks(double size, List<Line> scores, Function<Outline.Point, Amount<Length>> place) {
        double[] all = scores.stream()
                .flatMap(line -> Stream.of(line.from(), line.to()))
                .mapToDouble(point -> 1000 * place.apply(point).si())
                .sorted()
                .toArray();
        return new double[] {0, all[0], all[all.length - 1], size};
    }

    /** A name where there is room for it. */
    private SvgDrawing withName(String name, double x, double y, double room) {
        return name.length() * LETTER > room
                ? this
                : with(new Shape(Form.TEXT, "", new double[] {x}, new double[] {y}, name));
    }

    /**
     * Draws a cutting layout: the parent sheet, the pieces, and the kept deckle edges.
     *
     * @param title what it shows
     * @param layout the layout
     * @return the drawing
     */
    public static SvgDrawing of(String title, CutLayout layout) {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(layout, "layout");
        Outline parent = layout.parent();
        SvgDrawing drawing = titled(title).withOutline(parent, 0, 0, "sheet").withSize(parent);
        int number = 0;
        for (CutLayout.Place place : layout.places()) {
            number++;
            Outline piece = Outline.rectangle(place.width(), place.height());
            double x = 1000 * place.across().si();
            double y = 1000 * place.along().si();
            double w = 1000 * place.width().si();
            double h = 1000 * place.height().si();
            drawing = drawing.withOutline(piece, x, y, "cut");
            for (CutLayout.Edge edge : place.deckleEdges()) {
                drawing = drawing.with(new Shape(
                        Form.LINE,
                        "deckle",
                        switch (edge) {
                            case LEFT -> new double[] {x, x};
                            case RIGHT -> new double[] {x + w, x + w};
                            case BOTTOM, TOP -> new double[] {x, x + w};
                        },
                        switch (edge) {
                            case LEFT, RIGHT -> new double[] {y, y + h};
                            case BOTTOM -> new double[] {y, y};
                            case TOP -> new double[] {y + h, y + h};
                        },
                        ""));
            }
            drawing = drawing.with(new Shape(
                    Form.TEXT, "", new double[] {x + w / 2}, new double[] {y + h / 2}, String.valueOf(number)));
        }
        if (number == 0) {
            return drawing;
        }
        List<Amount<Length>> across = new ArrayList<>(List.of(Kinds.LENGTH.ofSi(0, "mm"), parent.width()));
        List<Amount<Length>> along = new ArrayList<>(List.of(Kinds.LENGTH.ofSi(0, "mm"), parent.height()));
        boolean kept = false;
        for (CutLayout.Place place : layout.places()) {
            across.add(place.across());
            across.add(Kinds.LENGTH.ofSi(place.across().si() + place.width().si(), "mm"));
            along.add(place.along());
            along.add(Kinds.LENGTH.ofSi(place.along().si() + place.height().si(), "mm"));
            kept |= !place.deckleEdges().isEmpty();
        }
        drawing = drawing.withPartsAcross(across).withPartsAlong(along);
        return kept ? drawing.withRemark("thick and blue: deckle edge that is kept") : drawing;
    }

    /**
     * Adds the distances between places across, in a row above the drawing.
     *
     * @param places distances from the left, in any order; one that is given twice counts once
     * @return the drawing
     * @throws org.papermath.quantity.Refused if a place is not a length
     */
    public SvgDrawing withPartsAcross(List<? extends Quantity<Length>> places) {
        return with(new Shape(Form.PARTS_ACROSS, "", sorted(places, "place across"), new double[0], ""));
    }

    /**
     * Adds the distances between places along, in a column on the right of the drawing.
     *
     * @param places distances from below, in any order; one that is given twice counts once
     * @return the drawing
     * @throws org.papermath.quantity.Refused if a place is not a length
     */
    public SvgDrawing withPartsAlong(List<? extends Quantity<Length>> places) {
        return with(new Shape(Form.PARTS_ALONG, "", new double[0], sorted(places, "place along"), ""));
    }

    /** In millimetres, rising, places that are the same to a micrometre once. */
    private static double[] sorted(List<? extends Quantity<Length>> places, String what) {
        double[] all =
                places.stream().mapToDouble(place -> mm(place, what)).sorted().toArray();
        double[] kept = new double[all.length];
        int n = 0;
        for (double place : all) {
            if (n == 0 || place - kept[n - 1] > 1e-3) {
                kept[n++] = place;
            }
        }
        return Arrays.copyOf(kept, n);
    }

    /**
     * Sets the remark at the foot, such as what dashed lines mean.
     *
     * @param text any text, in place of an earlier remark
     * @return the drawing
     */
    public SvgDrawing withRemark(String text) {
        return new SvgDrawing(title, shapes, text);
    }

    /**
     * Adds an outline at a place.
     *
     * @param outline the outline
     * @param across from the left to the left of its bounding box
     * @param along from below to the bottom of its bounding box
     * @return the drawing
     * @throws org.papermath.quantity.Refused if a place is not a length
     */
    public SvgDrawing withOutline(Outline outline, Quantity<Length> across, Quantity<Length> along) {
        return withOutline(outline, mm(across, "place across"), mm(along, "place along"), "cut");
    }

    /**
     * Adds an outline that is not cut, in grey, at a place.
     *
     * @param outline the outline
     * @param across from the left to the left of its bounding box
     * @param along from below to the bottom of its bounding box
     * @return the drawing
     * @throws org.papermath.quantity.Refused if a place is not a length
     */
    public SvgDrawing withGuide(Outline outline, Quantity<Length> across, Quantity<Length> along) {
        Objects.requireNonNull(outline, "outline");
        return withOutline(outline, mm(across, "place across"), mm(along, "place along"), "guide");
    }

    /**
     * Adds the sheet or face everything else lies on, with its width and height.
     *
     * @param sheet its outline, from the lower left corner of the drawing
     * @return the drawing
     */
    public SvgDrawing withSheet(Outline sheet) {
        return withOutline(sheet, 0, 0, "sheet").withSize(sheet);
    }

    private SvgDrawing withOutline(Outline outline, double left, double below, String style) {
        double[] x = outline.corners().stream()
                .mapToDouble(corner -> left + corner.across().in("mm"))
                .toArray();
        double[] y = outline.corners().stream()
                .mapToDouble(corner -> below + corner.along().in("mm"))
                .toArray();
        return with(new Shape(Form.POLYGON, style, x, y, ""));
    }

    private SvgDrawing withSize(Outline outline) {
        double w = 1000 * outline.width().si();
        double h = 1000 * outline.height().si();
        return with(new Shape(Form.ACROSS, "", new double[] {0, w}, new double[] {0, 0}, tenths(w)))
                .with(new Shape(Form.ALONG, "", new double[] {0, 0}, new double[] {0, h}, tenths(h)));
    }

    /**
     * Adds a line: folds and scores dashed, cuts full.
     *
     * @param line the line
     * @return the drawing
     */
    public SvgDrawing withLine(Line line) {
        return with(new Shape(
                Form.LINE,
                line.kind().name().toLowerCase(Locale.ROOT),
                new double[] {
                    1000 * line.from().across().si(), 1000 * line.to().across().si()
                },
                new double[] {
                    1000 * line.from().along().si(), 1000 * line.to().along().si()
                },
                ""));
    }

    /**
     * Adds a text centred on a place.
     *
     * @param across from the left
     * @param along from below
     * @param text any text
     * @return the drawing
     * @throws org.papermath.quantity.Refused if a place is not a length
     */
    public SvgDrawing withText(Quantity<Length> across, Quantity<Length> along, String text) {
        return with(new Shape(
                Form.TEXT,
                "",
                new double[] {mm(across, "place across")},
                new double[] {mm(along, "place along")},
                text));
    }

    private static double mm(Quantity<Length> length, String what) {
        return 1000 * Kinds.LENGTH.si(length, what);
    }

    private SvgDrawing with(Shape shape) {
        List<Shape> more = new ArrayList<>(shapes);
        more.add(shape);
        return new SvgDrawing(title, List.copyOf(more), remark);
    }

    /**
     * Writes the drawing.
     *
     * @return an SVG document, the same in every locale
     */
    public String svg() {
        double right = BAR;
        double top = 0;
        for (Shape shape : shapes) {
            for (double x : shape.x()) {
                right = Math.max(right, x);
            }
            for (double y : shape.y()) {
                top = Math.max(top, y);
            }
        }
        double width = wholePixels(right + 2 * MARGIN);
        List<String> head = Wrap.lines(title, letters(width - 10));
        List<String> foot = Wrap.lines(remark, letters(width - MARGIN - 5));
        double headHeight = LINE_OF_TEXT * head.size();
        double height = wholePixels(headHeight + top + 2 * MARGIN + FOOT + LINE_OF_TEXT * foot.size());
        // The picture counts downward: along becomes base less along.
        double base = headHeight + MARGIN + top;
        SvgWriter out = new SvgWriter(6)
                .head(
                        "",
                        width,
                        height,
                        title,
                        "text{font-family:sans-serif;font-size:4px;text-anchor:middle;fill:#222}"
                                + "polygon,line{fill:none;stroke:#222;stroke-width:0.25}polygon.sheet,polygon.guide{stroke:#888}"
                                + "text.left{text-anchor:start}"
                                + "line.fold{stroke-dasharray:4 2}line.score{stroke-dasharray:1 1.5}"
                                + "line.deckle{stroke:#06c;stroke-width:0.8}"
                                + "line.size{stroke:#888;stroke-width:0.15}",
                        "");
        for (int i = 0; i < head.size(); i++) {
            out.text("", MARGIN + right / 2, 6 + LINE_OF_TEXT * i, head.get(i));
        }
        for (Shape shape : shapes) {
            draw(out, shape, base, MARGIN + right, base - top);
        }
        double barLine = base + MARGIN + 6;
        out.line("bar", MARGIN, barLine, MARGIN + BAR, barLine);
        out.line("bar", MARGIN, barLine - 2, MARGIN, barLine + 2);
        out.line("bar", MARGIN + BAR, barLine - 2, MARGIN + BAR, barLine + 2);
        out.text("", MARGIN + BAR / 2, barLine + 6, "100 mm when printed at 100 %");
        for (int i = 0; i < foot.size(); i++) {
            out.text("left", MARGIN, barLine + 6 + LINE_OF_TEXT * (i + 1), foot.get(i));
        }
        return out.end();
    }

    /** How many letters fit a width. */
    private static int letters(double width) {
        return Math.max(1, (int) (width / LETTER));
    }

    private static void draw(SvgWriter out, Shape shape, double base, double right, double top) {
        double[] x = shape.x();
        double[] y = shape.y();
        switch (shape.form()) {
            case POLYGON -> {
                double[] across = Arrays.stream(x).map(one -> MARGIN + one).toArray();
                double[] down = Arrays.stream(y).map(one -> base - one).toArray();
                out.polygon(shape.style(), across, down);
            }
            case LINE -> out.line(shape.style(), MARGIN + x[0], base - y[0], MARGIN + x[1], base - y[1]);
            case TEXT -> out.text("", MARGIN + x[0], base - y[0] + 1.4, shape.text());
            case ACROSS -> {
                out.line("size", MARGIN + x[0], base + 4, MARGIN + x[1], base + 4);
                tick(out, MARGIN + x[0], base + 4, 0, 1);
                tick(out, MARGIN + x[1], base + 4, 0, 1);
                out.text("", MARGIN + (x[0] + x[1]) / 2, base + 9, shape.text());
            }
            case ALONG -> {
                out.line("size", MARGIN - 4, base - y[0], MARGIN - 4, base - y[1]);
                tick(out, MARGIN - 4, base - y[0], 1, 0);
                tick(out, MARGIN - 4, base - y[1], 1, 0);
                double middle = base - (y[0] + y[1]) / 2;
                out.upward(MARGIN - 6, middle, shape.text());
            }
            case PARTS_ACROSS -> {
                double at = top - 3;
                out.line("size", MARGIN + x[0], at, MARGIN + x[x.length - 1], at);
                boolean raised = false;
                for (int i = 0; i < x.length; i++) {
                    tick(out, MARGIN + x[i], at, 0, 1);
                    if (i > 0) {
                        String size = part(x[i] - x[i - 1]);
                        // A part too narrow for its figure has it a line higher, unless its neighbour has.
                        raised = !raised && size.length() * LETTER > x[i] - x[i - 1];
                        out.text("", MARGIN + (x[i - 1] + x[i]) / 2, at - (raised ? 5.5 : 1.5), size);
                    }
                }
            }
            case PARTS_ALONG -> {
                double at = right + 3;
                out.line("size", at, base - y[0], at, base - y[y.length - 1]);
                boolean raised = false;
                for (int i = 0; i < y.length; i++) {
                    tick(out, at, base - y[i], 1, 0);
                    if (i > 0) {
                        String size = part(y[i] - y[i - 1]);
                        raised = !raised && size.length() * LETTER > y[i] - y[i - 1];
                        double left = at + (raised ? 8.5 : 4.5);
                        double middle = base - (y[i - 1] + y[i]) / 2;
                        out.upward(left, middle, size);
                    }
                }
            }
        }
    }

    private static void tick(SvgWriter out, double x, double y, double halfWidth, double halfHeight) {
        out.line("size", x - halfWidth, y - halfHeight, x + halfWidth, y + halfHeight);
    }

    /** The distance of a part, to a tenth of a millimetre and without the unit. */
    private static String part(double millimetres) {
        return Units.number(Math.rint(millimetres * 10) / 10);
    }

    /** A size for people, to a tenth of a millimetre. */
    private static String tenths(double millimetres) {
        return Units.number(Math.rint(millimetres * 10) / 10) + " mm";
    }

    /** The next larger size that is a whole number of pixels and of tenths of a millimetre: a multiple of 12.7 mm. */
    private static double wholePixels(double size) {
        return Math.ceil(size / PIXELS_48) * PIXELS_48;
    }

    /** Returns the title, as {@code drawing "harbour card"}; {@link #svg()} gives the document. */
    @Override
    public String toString() {
        return "drawing \"" + title + "\"";
    }
}
