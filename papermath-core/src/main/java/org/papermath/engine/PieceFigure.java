package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Kind;

/** A forecast of a piece. */
public final class PieceFigure extends Figure {
    private final StageFigures stage;
    private final int inStage;

    PieceFigure(
            StageFigures stage,
            String words,
            @Nullable Kind<?> kind,
            String unit,
            Scale scale,
            boolean mayBeUnknown,
            double bend) {
        super(words, kind, unit, scale, 1, mayBeUnknown, bend);
        this.stage = stage;
        inStage = stage.ofPiece.size();
    }

    @Override
    int place() {
        return stage.firstOfPiece + inStage;
    }
}
