package org.papermath.envelope;

import org.papermath.shape.Outline;

/** A straight line on a blank or a layout. */
public sealed interface Line permits DrawnLine {
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
