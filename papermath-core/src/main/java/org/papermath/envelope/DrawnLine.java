package org.papermath.envelope;

import java.util.Locale;
import org.papermath.quantity.Kinds;
import org.papermath.shape.Outline;

/** A line as it was drawn. */
record DrawnLine(Outline.Point from, Outline.Point to, Kind kind) implements Line {
    /** Returns for example {@code fold from (17 mm, 0 mm) to (17 mm, 134 mm)}. */
    @Override
    public String toString() {
        return kind.name().toLowerCase(Locale.ROOT) + " from " + from + " to " + to;
    }

    /** Makes a line of coordinates in metres, none below zero. */
    static Line ofMetres(double x1, double y1, double x2, double y2, Kind kind) {
        return new DrawnLine(point(x1, y1), point(x2, y2), kind);
    }

    private static Outline.Point point(double x, double y) {
        return new Outline.Point(Kinds.LENGTH.ofSi(x, "mm"), Kinds.LENGTH.ofSi(y, "mm"));
    }
}
