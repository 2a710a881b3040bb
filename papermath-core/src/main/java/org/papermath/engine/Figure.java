package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Kind;

/** A forecast of a batch or of a piece. */
public sealed interface Figure permits BatchFigure, PieceFigure {
    /** What it is called. */
    String words();

    /** What it is read as; null where it is not read as an amount of its own. */
    @Nullable
    Kind<?> kind();

    /** The code of the unit it is stated in. */
    String unit();

    /** The scale on which the shifts of its band add up. */
    Scale scale();

    /** The end of the scale, where that is a share of something. */
    double most();

    /** Whether a plan goes on where it cannot be calculated. */
    boolean mayBeUnknown();
}
