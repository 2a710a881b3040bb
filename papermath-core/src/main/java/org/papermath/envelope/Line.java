package org.papermath.envelope;

import java.util.Objects;
import org.papermath.shape.Outline;

/** A straight line on a blank or a layout. */
public sealed interface Line permits DrawnLine {
    /**
     * Makes a line.
     *
     * @param from one end
     * @param to the other end
     * @param kind what is done along it
     * @return the line
     */
    static Line of(Outline.Point from, Outline.Point to, Kind kind) {
        return new DrawnLine(
                Objects.requireNonNull(from, "from"),
                Objects.requireNonNull(to, "to"),
                Objects.requireNonNull(kind, "kind"));
    }

    /** {@return one end} */
    Outline.Point from();

    /** {@return the other end} */
    Outline.Point to();

    /** {@return what is done along it} */
    Kind kind();

    /** What is done along a line. */
    enum Kind {
        /** Folded when the piece is made. */
        FOLD,
        /** Scored only, and folded in use, as the flap of an envelope. */
        SCORE,
        /** Cut. */
        CUT
    }
}
