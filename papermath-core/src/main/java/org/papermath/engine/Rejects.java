package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Scope;
import org.papermath.order.Piece;
import org.papermath.quantity.Kinds;

/** What share of the sheets, and then of the pieces cut from them, fails at every step of the work. */
public final class Rejects {
    static final StageFigures FIGURES = new StageFigures();

    public static final PieceFigure GOOD = FIGURES.piece("number of good pieces", Kinds.NUMBER, "1", Scale.FACTOR);

    private final Slot forming;
    private final Slot pressing;
    private final Slot drying;
    private final Slot sizing;
    private final Slot cutting;
    private final @Nullable Slot folding;
    private final boolean dries;
    private final boolean sizes;
    private final boolean cuts;

    Rejects(Known known, Piece piece, Scope scope, boolean dries, boolean sizes) {
        folding = piece.envelopeFor().isPresent() || piece.folds() > 0 ? known.slot("reject.folding", scope) : null;
        forming = known.slot("reject.forming", scope);
        pressing = known.slot("reject.pressing", scope);
        drying = known.slot("reject.drying", scope);
        sizing = known.slot("reject.sizing", scope);
        cutting = known.slot("reject.cutting", scope);
        this.dries = dries;
        this.sizes = sizes;
        cuts = piece.edge() == Piece.Edge.CUT;
    }

    boolean dries() {
        return dries;
    }

    boolean sizes() {
        return sizes;
    }

    boolean cuts() {
        return cuts;
    }

    boolean folds() {
        return folding != null;
    }

    double forming(Values v) {
        return v.of(forming);
    }

    double pressing(Values v) {
        return v.of(pressing);
    }

    double drying(Values v) {
        return v.of(drying);
    }

    double sizing(Values v) {
        return v.of(sizing);
    }

    double cutting(Values v) {
        return v.of(cutting);
    }

    double folding(Values v) {
        return folding == null ? 0 : v.of(folding);
    }

    /** Good pieces of all the sheets but the trials. */
    void forecast(Passage on, int trials) {
        on.set(
                GOOD,
                (on.sheets() - trials)
                        * (double) on.sheet().perSheet()
                        * ofSheets(on.settings.press(on.piece) != null, on.v)
                        * ofPieces(on.v));
    }

    /** The share of the sheets formed that can be cut or counted. */
    double ofSheets(boolean pressed, Values v) {
        double yield = 1 - v.of(forming);
        if (pressed) {
            yield *= 1 - v.of(pressing);
        }
        if (dries) {
            yield *= 1 - v.of(drying);
        }
        if (sizes) {
            yield *= 1 - v.of(sizing);
        }
        return yield;
    }

    /** The share of the pieces cut that are good. */
    double ofPieces(Values v) {
        double yield = cuts ? 1 - v.of(cutting) : 1;
        return folding == null ? yield : yield * (1 - v.of(folding));
    }
}
