package org.papermath.drawing;

import org.papermath.quantity.Units;
import org.papermath.text.Xml;

/** Writes the text of one SVG picture, in millimetres; every drawing of the package is written by it. For one thread. */
final class SvgWriter {
    private final StringBuilder out = new StringBuilder(4096);
    /** Parts of a millimetre that numbers are written to. */
    private final double parts;

    /**
     * Begins a picture.
     *
     * @param parts numbers are rounded to so many parts of a millimetre
     */
    SvgWriter(double parts) {
        this.parts = parts;
    }

    /**
     * Writes the head.
     *
     * @param role what the picture is to a reader for the blind, such as {@code img}; empty text if that is not said
     * @param style rules of style
     * @param more definitions; empty text if there are none
     */
    SvgWriter head(String role, double width, double height, String title, String style, String more) {
        out.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\"");
        attribute("role", role);
        number(" width=\"", width);
        number("mm\" height=\"", height);
        number("mm\" viewBox=\"0 0 ", width);
        number(" ", height);
        out.append("\">\n<title>").append(Xml.escape(title)).append("</title>\n<style>");
        out.append(style).append("</style>\n").append(more);
        return this;
    }

    /** Writes a text; the style may be empty. */
    void text(String style, double x, double y, String text) {
        text(style, x, y, text, "");
    }

    /** Writes a text that is read upward. */
    void upward(double x, double y, String text) {
        text("", x, y, text, " transform=\"rotate(-90 " + number(x) + ' ' + number(y) + ")\"");
    }

    private void text(String style, double x, double y, String text, String turned) {
        number("<text x=\"", x);
        number("\" y=\"", y);
        out.append('"').append(turned);
        attribute("class", style);
        out.append('>').append(Xml.escape(text)).append("</text>\n");
    }

    /** Writes a line; the style may be empty. */
    void line(String style, double x1, double y1, double x2, double y2) {
        out.append("<line");
        attribute("class", style);
        number(" x1=\"", x1);
        number("\" y1=\"", y1);
        number("\" x2=\"", x2);
        number("\" y2=\"", y2);
        out.append("\"/>\n");
    }

    /** Writes a rectangle; with a title, unless that is empty. */
    void rect(String style, double x, double y, double width, double height, String title) {
        out.append("<rect");
        attribute("class", style);
        number(" x=\"", x);
        number("\" y=\"", y);
        number("\" width=\"", width);
        number("\" height=\"", height);
        out.append(title.isEmpty() ? "\"/>\n" : "\"><title>" + Xml.escape(title) + "</title></rect>\n");
    }

    /** Writes a polygon with its corners as they are in the picture. */
    void polygon(String style, double[] x, double[] y) {
        out.append("<polygon");
        attribute("class", style);
        for (int i = 0; i < x.length; i++) {
            number(i == 0 ? " points=\"" : " ", x[i]);
            number(",", y[i]);
        }
        out.append("\"/>\n");
    }

    /** Ends the picture and returns its text. */
    String end() {
        return out.append("</svg>\n").toString();
    }

    private void attribute(String name, String value) {
        if (!value.isEmpty()) {
            out.append(' ').append(name).append("=\"").append(value).append('"');
        }
    }

    private void number(String before, double millimetres) {
        out.append(before).append(number(millimetres));
    }

    /** With a decimal point, and no negative zero. */
    private String number(double millimetres) {
        return Units.number(Math.rint(millimetres * parts) / parts + 0.0);
    }
}
