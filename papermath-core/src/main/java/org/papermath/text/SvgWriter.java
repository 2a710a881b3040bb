package org.papermath.text;

import java.math.BigDecimal;

/** Writes the text of one SVG picture, in millimetres; every drawing is written by it. For one thread. */
public final class SvgWriter {
    private final StringBuilder out = new StringBuilder(4096);
    private final int places;
    private final double parts;

    /**
     * Begins a picture.
     *
     * @param places numbers are rounded to so many decimals of a millimetre
     */
    public SvgWriter(int places) {
        this.places = places;
        this.parts = Math.pow(10, places);
    }

    /**
     * Writes the head.
     *
     * @param role what the picture is to a reader for the blind, such as {@code img}; empty text if that is not said
     * @param style rules of style
     * @param more definitions; empty text if there are none
     */
    public SvgWriter head(String role, double width, double height, String title, String style, String more) {
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
    public void text(String style, double x, double y, String text) {
        text(style, x, y, text, "");
    }

    /** Writes a text that is read upward. */
    public void upward(double x, double y, String text) {
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
    public void line(String style, double x1, double y1, double x2, double y2) {
        out.append("<line");
        attribute("class", style);
        number(" x1=\"", x1);
        number("\" y1=\"", y1);
        number("\" x2=\"", x2);
        number("\" y2=\"", y2);
        out.append("\"/>\n");
    }

    /** Writes a rectangle; with a title, unless that is empty. */
    public void rect(String style, double x, double y, double width, double height, String title) {
        out.append("<rect");
        attribute("class", style);
        number(" x=\"", x);
        number("\" y=\"", y);
        number("\" width=\"", width);
        number("\" height=\"", height);
        out.append(title.isEmpty() ? "\"/>\n" : "\"><title>" + Xml.escape(title) + "</title></rect>\n");
    }

    /** Writes a polygon with its corners as they are in the picture. */
    public void polygon(String style, double[] x, double[] y) {
        out.append("<polygon");
        attribute("class", style);
        for (int i = 0; i < x.length; i++) {
            number(i == 0 ? " points=\"" : " ", x[i]);
            number(",", y[i]);
        }
        out.append("\"/>\n");
    }

    /** Writes a rectangle of one colour; with a title. */
    public void patch(double x, double y, double width, double height, String colour, String title) {
        out.append("<rect");
        attribute("fill", colour);
        number(" x=\"", x);
        number("\" y=\"", y);
        number("\" width=\"", width);
        number("\" height=\"", height);
        out.append("\"><title>").append(Xml.escape(title)).append("</title></rect>\n");
    }

    /** Writes a dot of one colour; with a title, unless that is empty. */
    public void dot(double x, double y, double radius, String colour, String title) {
        out.append("<circle");
        attribute("fill", colour);
        number(" cx=\"", x);
        number("\" cy=\"", y);
        number("\" r=\"", radius);
        out.append(title.isEmpty() ? "\"/>\n" : "\"><title>" + Xml.escape(title) + "</title></circle>\n");
    }

    /** Writes what the picture shows in words, for a reader for the blind; stands behind the head. */
    public void described(String words) {
        out.append("<desc>").append(Xml.escape(words)).append("</desc>\n");
    }

    /** Ends the picture and returns its text. */
    public String end() {
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
        BigDecimal rounded = BigDecimal.valueOf((long) Math.rint(millimetres * parts), places);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
