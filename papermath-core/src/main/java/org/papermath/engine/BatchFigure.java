package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Kind;

/** A forecast of a batch. */
public final class BatchFigure extends Figure {
    private final StageFigures stage;
    private final int inStage;

    BatchFigure(
            StageFigures stage,
            String words,
            @Nullable Kind<?> kind,
            String unit,
            Scale scale,
            double most,
            double bend) {
        super(words, kind, unit, scale, most, false, bend);
        this.stage = stage;
        inStage = stage.ofBatch.size();
    }

    @Override
    int place() {
        return stage.firstOfBatch + inStage;
    }
}
