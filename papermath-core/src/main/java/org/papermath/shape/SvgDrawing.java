package org.papermath.shape;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import javax.measure.Quantity;
import javax.measure.quantity.Length;

import org.papermath.quantity.Kinds;
import org.papermath.quantity.Units;

/**
 * A drawing at true scale as SVG text: print it at 100 % and cut along it. Immutable.
 *
 * <p>One unit of the picture is one millimetre on paper. Places are told from the lower left corner of what is drawn,
 * across and along, as everywhere; the page is as large as needed. A bar of 100 mm stands below, to lay a ruler on the
 * print.
 */
public final class SvgDrawing {
    private static final double MARGIN = 14;
    private static final double FOOT = 16;
    private static final double BAR = 100;

    /**
     * Half an inch, 48 pixels: a browser stretches a picture of a broken number of pixels to a whole one, and its bar.
     */
    private static final double PIXELS_48 = 12.7;

    private final String title;
    private final List<Shape> shapes;

    /** Something drawn; coordinates in millimetres from the lower left, along upward. */
    private record Shape(Form form, String style, double[] x, double[] y, String text) {
    }

    private enum Form {
        POLYGON, LINE, TEXT, ACROSS, ALONG
    }

    private SvgDrawing(String title, List<Shape> shapes) {
        this.title = title;
        this.shapes = shapes;
    }

    /**
     * Begins an empty drawing.
     *
     * @param title what it shows; may be any text
     * @return the drawing
     */
    public static SvgDrawing titled(String title) {
        return new SvgDrawing(title, List.of());
    }

    /**
     * Draws an outline with its width and height.
     *
     * @param title what it shows
     * @param outline the outline
     * @return the drawing
     */
    public static SvgDrawing of(String title, Outline outline) {
        return titled(title).withOutline(outline, 0, 0, "cut").withSize(outline);
    }

    /**
     * Draws the blank of an envelope with its folds, scores and cuts.
     *
     * @param title what it shows
     * @param envelope the envelope
     * @return the drawing
     */
    public static SvgDrawing of(String title, Envelope envelope) {
        Outline blank = envelope.blank();
        SvgDrawing drawing = titled(title).withOutline(blank, 0, 0, "cut").withSize(blank);
        for (Line line : envelope.lines()) {
            drawing = drawing.withLine(line);
        }
        return drawing.withText(Kinds.LENGTH.ofSi(blank.width().si() / 2, "mm"),
                Kinds.LENGTH.ofSi(blank.height().si() / 2, "mm"),
                "inside " + envelope.insideWidth() + " × " + envelope.insideHeight());
    }

    /**
     * Draws a cutting layout: the parent sheet, the pieces, and the kept deckle edges.
     *
     * @param title what it shows
     * @param layout the layout
     * @return the drawing
     */
    public static SvgDrawing of(String title, CutLayout layout) {
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
                drawing = drawing.with(new Shape(Form.LINE, "deckle", switch (edge) {
                    case LEFT -> new double[] {x, x};
                    case RIGHT -> new double[] {x + w, x + w};
                    case BOTTOM, TOP -> new double[] {x, x + w};
                }, switch (edge) {
                    case LEFT, RIGHT -> new double[] {y, y + h};
                    case BOTTOM -> new double[] {y, y};
                    case TOP -> new double[] {y + h, y + h};
                }, ""));
            }
            drawing = drawing.with(new Shape(Form.TEXT, "", new double[] {x + w / 2}, new double[] {y + h / 2},
                    String.valueOf(number)));
        }
        return drawing;
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
     * Adds the sheet or face everything else lies on, with its width and height.
     *
     * @param sheet its outline, from the lower left corner of the drawing
     * @return the drawing
     */
    public SvgDrawing withSheet(Outline sheet) {
        return withOutline(sheet, 0, 0, "sheet").withSize(sheet);
    }

    private SvgDrawing withOutline(Outline outline, double left, double below, String style) {
        double[] x = outline.xMetres();
        double[] y = outline.yMetres();
        for (int i = 0; i < x.length; i++) {
            x[i] = left + 1000 * x[i];
            y[i] = below + 1000 * y[i];
        }
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
        return with(new Shape(Form.LINE, line.kind().name().toLowerCase(Locale.ROOT),
                new double[] {1000 * line.from().across().si(), 1000 * line.to().across().si()},
                new double[] {1000 * line.from().along().si(), 1000 * line.to().along().si()}, ""));
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
        return with(new Shape(Form.TEXT, "", new double[] {mm(across, "place across")},
                new double[] {mm(along, "place along")}, text));
    }

    private static double mm(Quantity<Length> length, String what) {
        return 1000 * Kinds.LENGTH.si(length, what);
    }

    private SvgDrawing with(Shape shape) {
        List<Shape> more = new ArrayList<>(shapes);
        more.add(shape);
        return new SvgDrawing(title, List.copyOf(more));
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
        double height = wholePixels(top + 2 * MARGIN + FOOT);
        // The picture counts downward: along becomes base less along.
        double base = MARGIN + top;
        StringBuilder out = new StringBuilder(1024);
        out.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").append(number(width)).append("mm\" height=\"")
                .append(number(height)).append("mm\" viewBox=\"0 0 ").append(number(width)).append(' ')
                .append(number(height))
                .append("\">\n");
        out.append("<title>").append(escape(title)).append("</title>\n");
        out.append("<style>text{font-family:sans-serif;font-size:4px;text-anchor:middle;fill:#222}"
                + "polygon,line{fill:none;stroke:#222;stroke-width:0.25}polygon.sheet{stroke:#888}"
                + "line.fold{stroke-dasharray:4 2}line.score{stroke-dasharray:1 1.5}"
                + "line.deckle{stroke:#06c;stroke-width:0.8}"
                + "line.size{stroke:#888;stroke-width:0.15}</style>\n");
        text(out, width / 2, 6, title, "");
        for (Shape shape : shapes) {
            draw(out, shape, base);
        }
        double barLine = base + MARGIN + 6;
        line(out, "bar", MARGIN, barLine, MARGIN + BAR, barLine);
        line(out, "bar", MARGIN, barLine - 2, MARGIN, barLine + 2);
        line(out, "bar", MARGIN + BAR, barLine - 2, MARGIN + BAR, barLine + 2);
        text(out, MARGIN + BAR / 2, barLine + 6, "100 mm when printed at 100 %", "");
        return out.append("</svg>\n").toString();
    }

    private static void draw(StringBuilder out, Shape shape, double base) {
        double[] x = shape.x();
        double[] y = shape.y();
        switch (shape.form()) {
            case POLYGON -> {
                out.append("<polygon class=\"").append(shape.style()).append("\" points=\"");
                for (int i = 0; i < x.length; i++) {
                    out.append(i == 0 ? "" : " ").append(number(MARGIN + x[i])).append(',').append(number(base - y[i]));
                }
                out.append("\"/>\n");
            }
            case LINE -> line(out, shape.style(), MARGIN + x[0], base - y[0], MARGIN + x[1], base - y[1]);
            case TEXT -> text(out, MARGIN + x[0], base - y[0] + 1.4, shape.text(), "");
            case ACROSS -> {
                line(out, "size", MARGIN + x[0], base + 4, MARGIN + x[1], base + 4);
                text(out, MARGIN + (x[0] + x[1]) / 2, base + 9, shape.text(), "");
            }
            case ALONG -> {
                line(out, "size", MARGIN - 4, base - y[0], MARGIN - 4, base - y[1]);
                double middle = base - (y[0] + y[1]) / 2;
                text(out, MARGIN - 6, middle, shape.text(),
                        " transform=\"rotate(-90 " + number(MARGIN - 6) + ' ' + number(middle) + ")\"");
            }
        }
    }

    private static void line(StringBuilder out, String style, double x1, double y1, double x2, double y2) {
        out.append("<line class=\"").append(style).append("\" x1=\"").append(number(x1)).append("\" y1=\"")
                .append(number(y1))
                .append("\" x2=\"").append(number(x2)).append("\" y2=\"").append(number(y2)).append("\"/>\n");
    }

    private static void text(StringBuilder out, double x, double y, String text, String more) {
        out.append("<text x=\"").append(number(x)).append("\" y=\"").append(number(y)).append('"').append(more)
                .append('>')
                .append(escape(text)).append("</text>\n");
    }

    /** A size for people, to a tenth of a millimetre. */
    private static String tenths(double millimetres) {
        return Units.number(Math.rint(millimetres * 10) / 10) + " mm";
    }

    /** The next larger size that is a whole number of pixels and of tenths of a millimetre: a multiple of 12.7 mm. */
    private static double wholePixels(double size) {
        return Math.ceil(size / PIXELS_48) * PIXELS_48;
    }

    /** A millimetre value to a nanometre, with a decimal point. */
    private static String number(double millimetres) {
        return Units.number(Math.rint(millimetres * 1e6) / 1e6 + 0.0);
    }

    /** Text that is safe in XML; characters XML does not know become spaces. */
    private static String escape(String text) {
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                default -> {
                    boolean known = c == '\t' || c == '\n' || c == '\r' || c >= 0x20 && c <= 0xD7FF
                            || c >= 0xE000 && c <= 0xFFFD || c >= 0x10000;
                    out.appendCodePoint(known ? c : ' ');
                }
            }
        });
        return out.toString();
    }

    /** Returns the document, as {@link #svg()}. */
    @Override
    public String toString() {
        return svg();
    }
}
