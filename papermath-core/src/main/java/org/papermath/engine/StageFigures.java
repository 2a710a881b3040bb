package org.papermath.engine;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Kind;

/**
 * The figures one stage declares, in the order they stand in there: each by its words, the kind it is read as (null for
 * none), the unit it is told in and the scale of its band.
 */
final class StageFigures {
    final List<BatchFigure> ofBatch = new ArrayList<>();
    final List<PieceFigure> ofPiece = new ArrayList<>();

    /** Where they begin, which {@link Figures} says; figures of a stage it does not know have no place at all. */
    int firstOfBatch = Integer.MIN_VALUE;

    int firstOfPiece = Integer.MIN_VALUE;

    BatchFigure batch(String words, @Nullable Kind<?> kind, String unit, Scale scale) {
        return batch(words, kind, unit, scale, 1);
    }

    /** A share of something that is not one. */
    BatchFigure batch(String words, @Nullable Kind<?> kind, String unit, Scale scale, double most) {
        BatchFigure figure = new BatchFigure(this, words, kind, unit, scale, most);
        ofBatch.add(figure);
        return figure;
    }

    PieceFigure piece(String words, @Nullable Kind<?> kind, String unit, Scale scale) {
        return piece(words, kind, unit, scale, false);
    }

    /** A figure without which a plan goes on, where it cannot be told. */
    PieceFigure pieceIfKnown(String words, @Nullable Kind<?> kind, String unit, Scale scale) {
        return piece(words, kind, unit, scale, true);
    }

    private PieceFigure piece(String words, @Nullable Kind<?> kind, String unit, Scale scale, boolean mayBeUnknown) {
        PieceFigure figure = new PieceFigure(this, words, kind, unit, scale, mayBeUnknown);
        ofPiece.add(figure);
        return figure;
    }
}
