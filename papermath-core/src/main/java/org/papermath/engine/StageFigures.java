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

    /** A figure that is smooth wherever it lies. */
    static final double NEVER = 2;

    /** One that bends as soon as any assumption moves it one way only. */
    static final double ALWAYS = 0;

    BatchFigure batch(String words, @Nullable Kind<?> kind, String unit, Scale scale) {
        return batch(words, kind, unit, scale, 1, NEVER);
    }

    /** A share of something that is not one. */
    BatchFigure batch(String words, @Nullable Kind<?> kind, String unit, Scale scale, double most) {
        return batch(words, kind, unit, scale, most, NEVER);
    }

    /** The same of one that bends; see {@link Figure#bend}. */
    BatchFigure batch(String words, @Nullable Kind<?> kind, String unit, Scale scale, double most, double bend) {
        BatchFigure figure = new BatchFigure(this, words, kind, unit, scale, most, bend);
        ofBatch.add(figure);
        return figure;
    }

    PieceFigure piece(String words, @Nullable Kind<?> kind, String unit, Scale scale) {
        return piece(words, kind, unit, scale, false, NEVER);
    }

    /** A figure that bends; see {@link Figure#bend}. */
    PieceFigure piece(String words, @Nullable Kind<?> kind, String unit, Scale scale, double bend) {
        return piece(words, kind, unit, scale, false, bend);
    }

    /** A figure without which a plan goes on, where it cannot be told. */
    PieceFigure pieceIfKnown(String words, @Nullable Kind<?> kind, String unit, Scale scale) {
        return piece(words, kind, unit, scale, true, NEVER);
    }

    /** The same of one that bends; see {@link Figure#bend}. */
    PieceFigure pieceIfKnown(String words, @Nullable Kind<?> kind, String unit, Scale scale, double bend) {
        return piece(words, kind, unit, scale, true, bend);
    }

    private PieceFigure piece(
            String words, @Nullable Kind<?> kind, String unit, Scale scale, boolean mayBeUnknown, double bend) {
        PieceFigure figure = new PieceFigure(this, words, kind, unit, scale, mayBeUnknown, bend);
        ofPiece.add(figure);
        return figure;
    }
}
