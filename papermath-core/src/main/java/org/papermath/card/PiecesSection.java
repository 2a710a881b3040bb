package org.papermath.card;

import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Length;
import org.papermath.mould.Mould;
import org.papermath.order.Piece;
import org.papermath.plan.EnvelopePlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.ShapedDeckle;
import org.papermath.plan.WorkStep;
import org.papermath.quantity.Amount;

/** What is made, in the order of the vat: the letters of the pieces, their numbers, moulds and deckles. */
final class PiecesSection extends CardSection {
    PiecesSection(CardWriter card) {
        super(card);
    }

    @Override
    boolean write(int number) {
        form.section(
                0,
                Label.PIECES.words(),
                pieces.areSeveral() && any(piece -> piece.vatStage().isDone()) ? "in the order of the vat" : "");
        List<List<String>> rows = pieces.all().stream()
                .map(piece -> List.of(
                        pieces.named(piece),
                        Integer.toString(piece.counts().ordered()),
                        Integer.toString(piece.counts().wanted()),
                        Written.set(piece.counts().sheets()
                                - piece.counts().trials()
                                + (piece.counts().trials() > 0
                                        ? " + " + Figures.count(piece.counts().trials(), "trial")
                                        : "")),
                        up(piece),
                        finished(piece)))
                .toList();
        form.table(
                Mark.MORE,
                List.of(
                        "",
                        Label.ORDERED.words(),
                        Label.AIM.words(),
                        Label.SHEETS.words(),
                        Label.UP.words(),
                        Label.FINISHED.words()),
                rows);
        each(Mark.SET, Label.MOULD, this::mould);
        each(Mark.MORE, "", piece -> deckle(piece, true).map(this::openings).orElse(""));
        each(
                Mark.MORE,
                "",
                piece -> deckle(piece, false)
                        .map(deckle -> "openings " + openings(deckle))
                        .orElse(""));
        for (PiecePlan piece : pieces.all()) {
            // The one that was not taken is worth a line where it would save fibre for some more time.
            piece.forming()
                    .otherMould()
                    .filter(other -> other.contains("less fibre"))
                    .ifPresent(other -> row(Mark.MORE, Label.OTHER_MOULD, pieces.before(piece, " ") + other));
        }
        cautions(WorkStep.COUNT);
        for (PiecePlan piece : pieces.all()) {
            SheetLayout.of(piece)
                    .ifPresent(layout -> form.picture(new Picture(
                            layout.svg(), pieces.named(piece) + " on the mould, 1 : " + layout.scale(), false)));
        }
        return false;
    }

    private static String up(PiecePlan piece) {
        int across = piece.forming().across();
        int along = piece.forming().along();
        return piece.forming().perSheet()
                + (across > 1 && along > 1 ? ", " + across + " by " + along : "")
                + (piece.forming().turned() ? ", turned" : "");
    }

    private static String finished(PiecePlan piece) {
        if (piece.envelopeStage().isDone()) {
            EnvelopePlan envelope = piece.envelope();
            return Figures.size(envelope.outsideWidth(), envelope.outsideHeight());
        }
        return Figures.size(piece.finished().foldedWidth(), piece.finished().foldedHeight());
    }

    private String mould(PiecePlan piece) {
        Optional<Mould> mould = piece.forming().mould();
        Amount<Length> width = piece.forming().opening().width();
        Amount<Length> height = piece.forming().opening().height();
        return Written.set(mould.map(Mould::name).orElse("to be made"))
                + (piece.forming().deckleToMake() && mould.isPresent() ? ", own deckle" : "")
                + ", deckle opening " + Written.set(Figures.size(width, height)) + figures.inches(width, height)
                + mould.map(Mould::count)
                        .filter(count -> count > 1)
                        .map(count -> ", " + count + " moulds in turn")
                        .orElse("");
    }

    private String openings(ShapedDeckle deckle) {
        String size = Figures.size(deckle.outline().width(), deckle.outline().height());
        return deckle.across() * deckle.along() == 1
                ? "cut to its drawing, " + size
                : deckle.across() + " by " + deckle.along() + " of " + size;
    }

    /** The openings of a deckle that is shaped, or that is split. */
    private static Optional<ShapedDeckle> deckle(PiecePlan piece, boolean shaped) {
        return piece.forming()
                .shapedDeckle()
                .filter(deckle -> shaped == (piece.piece().edge() == Piece.Edge.SHAPED));
    }
}
