package org.papermath.card;

import java.util.Optional;
import org.papermath.mould.Mould;
import org.papermath.plan.FormingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.text.SvgWriter;

/** How the pieces lie on the mould, to a round scale: the deckle, each piece, its fold, and the trim in grey. */
final class SheetLayout {
    /** The longest side of a picture, mm. */
    private static final double MOST = 56;

    private static final int[] SCALES = {1, 2, 5, 10, 20, 50};
    private static final double MARGIN = 1;

    private final String svg;
    private final int scale;

    private SheetLayout(String svg, int scale) {
        this.svg = svg;
        this.scale = scale;
    }

    /** {@return the layout of a piece; none where its deckle is shaped or split, which has a drawing of its own} */
    static Optional<SheetLayout> of(PiecePlan piece) {
        FormingPlan forming = piece.forming();
        if (forming.shapedDeckle().isPresent()) {
            return Optional.empty();
        }
        double wide = forming.opening().width().in("mm");
        double high = forming.opening().height().in("mm");
        int scale = SCALES[SCALES.length - 1];
        for (int one : SCALES) {
            if (Math.max(wide, high) / one <= MOST) {
                scale = one;
                break;
            }
        }
        // The dry sheet laid back on the mould: each side by what it shrinks.
        double across = shrunk(piece, false);
        double along = shrunk(piece, true);
        double width = piece.finished().width().likely().in("mm");
        double height = piece.finished().height().likely().in("mm");
        double longSide = Math.max(width, height);
        double shortSide = Math.min(width, height);
        double pieceAcross = (forming.turned() ? longSide : shortSide) / across;
        double pieceAlong = (forming.turned() ? shortSide : longSide) / along;
        double gap = piece.piece().gap().map(one -> one.in("mm")).orElse(0.0);
        double allAcross = forming.across() * pieceAcross + (forming.across() - 1) * gap;
        double allAlong = forming.along() * pieceAlong + (forming.along() - 1) * gap;
        double left = MARGIN + Math.max(0, wide - allAcross) / 2 / scale;
        double top = MARGIN + Math.max(0, high - allAlong) / 2 / scale;
        SvgWriter out = new SvgWriter(2)
                .head(
                        "img",
                        wide / scale + 2 * MARGIN,
                        high / scale + 2 * MARGIN,
                        piece.name() + " on the mould",
                        "rect{fill:#fff;stroke:#000;stroke-width:0.3}rect.deckle{fill:#ddd;stroke-width:0.6}"
                                + "line.fold{stroke:#000;stroke-width:0.32;stroke-dasharray:2 1}",
                        "");
        out.described(forming.perSheet() + " pieces in an opening of " + forming.opening() + " on "
                + forming.mould().map(Mould::name).orElse("a mould to be made")
                + (piece.piece().folds() > 0 ? "; broken lines are folds" : ""));
        out.rect("deckle", MARGIN, MARGIN, wide / scale, high / scale, "");
        for (int column = 0; column < forming.across(); column++) {
            for (int row = 0; row < forming.along(); row++) {
                double x = left + column * (pieceAcross + gap) / scale;
                double y = top + row * (pieceAlong + gap) / scale;
                double w = pieceAcross / scale;
                double h = pieceAlong / scale;
                out.rect("", x, y, w, h, "");
                if (piece.piece().folds() > 0 && w >= h) {
                    out.line("fold", x + w / 2, y, x + w / 2, y + h);
                } else if (piece.piece().folds() > 0) {
                    out.line("fold", x, y + h / 2, x + w, y + h / 2);
                }
            }
        }
        return Optional.of(new SheetLayout(out.end(), scale));
    }

    private static double shrunk(PiecePlan piece, boolean along) {
        return 1
                - (along ? piece.finished().shrinkageAlong() : piece.finished().shrinkageAcross())
                        .likely()
                        .si();
    }

    String svg() {
        return svg;
    }

    int scale() {
        return scale;
    }
}
