package org.papermath.envelope;

import java.util.Locale;
import java.util.Objects;
import org.papermath.quantity.Kinds;
import org.papermath.shape.Outline;

/**
 * A straight line on a blank or a layout.
 *
 * @param from one end
 * @param to the other end
 * @param kind what is done along it
 */
public record Line(Outline.Point from, Outline.Point to, Kind kind) {
    /**
     * Checks that nothing is missing.
     *
     * @param from one end
     * @param to the other end
     * @param kind what is done along it
     */
    public Line {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        Objects.requireNonNull(kind, "kind");
    }

    /** What is done along a line. */
    public enum Kind {
        /** Folded when the piece is made. */
        FOLD,
        /** Scored only, and folded in use, as the flap of an envelope. */
        SCORE,
        /** Cut. */
        CUT
    }

    /** Returns for example {@code fold from (17 mm, 0 mm) to (17 mm, 134 mm)}. */
    @Override
    public String toString() {
        return kind.name().toLowerCase(Locale.ROOT) + " from " + from + " to " + to;
    }

    /** Makes a line of coordinates in metres, none below zero. */
    static Line ofMetres(double x1, double y1, double x2, double y2, Kind kind) {
        return new Line(point(x1, y1), point(x2, y2), kind);
    }

    private static Outline.Point point(double x, double y) {
        return new Outline.Point(Kinds.LENGTH.ofSi(x, "mm"), Kinds.LENGTH.ofSi(y, "mm"));
    }
}
