package org.papermath.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javax.measure.quantity.Length;
import org.papermath.envelope.Line;
import org.papermath.evidence.Estimate;
import org.papermath.order.Piece;
import org.papermath.plan.EnvelopePlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.WorkStep;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.schedule.Phase;

/** Sizing in the bath, cutting, folding and gluing. */
final class FinishSection extends CardSection {
    private static final String FROM_LEFT = " from the left";
    private static final String FROM_BELOW = " from below";

    FinishSection(CardWriter card) {
        super(card);
    }

    @Override
    boolean write(int number) {
        form.section(number, Label.FINISH.words(), day("sort and finish"));
        if (any(piece -> piece.sizingStage().isDone())) {
            each(
                    Mark.SET,
                    Label.BATH,
                    piece -> piece.sizingStage()
                            .map(sizing -> figures.set(sizing.bath(), "qt_us") + ", with "
                                    + figures.set(sizing.drySize(), "oz") + " dry size in it")
                            .orElse(""));
            form.line(Mark.SET, "draw through it every dry sheet; let it drip or press it lightly, and hang it again");
            each(
                    Mark.EXPECT,
                    Label.DRY_AGAIN,
                    piece -> piece.sizingStage()
                            .map(sizing -> sizing.dryAgain().map(figures::spell).orElse("not known"))
                            .orElse(""));
        }
        each(Mark.SET, "", piece -> {
            String cure = waits("cure", piece);
            return cure.isEmpty() ? "" : "the size cures " + cure + " in the air before ink or paste";
        });
        each(Mark.SET, "", this::flat);
        each(Mark.SET, "fold", this::folded);
        for (PiecePlan piece : pieces.all()) {
            piece.envelopeStage().optional().ifPresent(envelope -> envelope(piece, envelope));
        }
        each(
                Mark.EXPECT,
                Label.DRIED,
                piece -> dried(piece, EnvelopePlan::insideWidthDried) + dried(piece, EnvelopePlan::insideHeightDried));
        each(Mark.SET, "", piece -> {
            String lies = waits("condition", piece);
            return lies.isEmpty() ? "" : lies + " under boards and a weight, between blotters";
        });
        cautions(WorkStep.SIZE, WorkStep.SORT, WorkStep.TRIM, WorkStep.FOLD);
        for (PiecePlan piece : pieces.all()) {
            piece.forming()
                    .shapedDeckle()
                    .ifPresent(deckle -> form.picture(new Picture(
                            deckle.drawing().svg(), "Deckle for " + pieces.named(piece) + ", in millimetres", true)));
            if (piece.forming().shapedDeckle().isEmpty()) {
                piece.envelopeStage()
                        .optional()
                        .ifPresent(envelope -> form.picture(new Picture(
                                envelope.drawing().svg(),
                                "Blank of " + pieces.named(piece) + ", in millimetres",
                                true)));
            }
        }
        return true;
    }

    /** How long the size of each piece cures, and how long it lies under weight: the waiting of its task. */
    private String waits(String task, PiecePlan piece) {
        if (calendar().isEmpty()) {
            return "";
        }
        return plan.schedule().timetable().tasks().stream()
                .filter(one -> one.task().name().equals(task + " " + piece.name()))
                .flatMap(one -> one.task().phases().stream())
                .filter(phase -> phase.kind() == Phase.Kind.WAITING)
                .flatMap(phase -> phase.likely().stream())
                .findFirst()
                .map(time -> Written.set(
                        time.toDays() > 1
                                ? time.toDays() + " days"
                                : Figures.clock(Kinds.TIME.of((double) time.toMinutes(), "min"))))
                .orElse("");
    }

    private String flat(PiecePlan piece) {
        if (piece.envelopeStage().isDone()) {
            return "";
        }
        Amount<Length> width =
                piece.piece().width().orElse(piece.finished().width().likely());
        Amount<Length> height =
                piece.piece().height().orElse(piece.finished().height().likely());
        boolean isCut = piece.piece().edge() == Piece.Edge.CUT;
        return (isCut ? "cut " : "not cut, rim kept: ")
                + Written.set(Figures.size(width, height))
                + figures.inches(width, height);
    }

    private String folded(PiecePlan piece) {
        return piece.piece().folds() == 0
                ? ""
                : (piece.piece().folds() == 1 ? "once" : piece.piece().folds() + " times") + " to "
                        + Written.set(Figures.size(
                                piece.finished().foldedWidth(), piece.finished().foldedHeight()));
    }

    /** The blank, where it is folded and glued, and how the piece goes in. */
    private void envelope(PiecePlan piece, EnvelopePlan envelope) {
        String letter = pieces.before(piece, "  ");
        boolean isShaped = piece.piece().edge() == Piece.Edge.SHAPED;
        form.line(
                Mark.SET,
                letter + Label.BLANK.words() + ", " + envelope.style().words() + ", "
                        + (isShaped ? "formed to its outline: " : "cut ")
                        + Written.set(Figures.size(envelope.blankWidth(), envelope.blankHeight()))
                        + figures.inches(envelope.blankWidth(), envelope.blankHeight()));
        String folds = folds(envelope);
        if (!folds.isEmpty()) {
            form.line(Mark.SET, letter + folds);
        }
        form.line(
                Mark.SET,
                letter + "score, fold the sides in, glue "
                        + Written.set(Figures.half(envelope.seam().in("mm")) + " mm")
                        + " of seam, the back up onto it, the flap last");
        form.line(
                Mark.EXPECT,
                letter + Label.INSIDE.words() + " " + Figures.size(envelope.insideWidth(), envelope.insideHeight()));
        String what = piece.piece().envelopeFor().orElse("");
        form.line(
                Mark.CHECK,
                letter + "try " + (what.isEmpty() ? "the piece" : what) + " in the first five before gluing the rest:"
                        + " it should go in without a push. If not: score 1 mm further out");
    }

    /** Where the folds lie on the blank, from its lower left corner, and where the flap is scored. */
    private static String folds(EnvelopePlan envelope) {
        List<String> fromLeft = new ArrayList<>();
        List<String> fromBelow = new ArrayList<>();
        String flap = "";
        for (Line fold : envelope.folds()) {
            boolean isUpright = isSame(fold.from().across(), fold.to().across());
            if (!isUpright && !isSame(fold.from().along(), fold.to().along())) {
                return "folds run aslant: take them from the drawing of the blank";
            }
            String at =
                    Figures.half((isUpright ? fold.from().across() : fold.from().along()).in("mm"));
            if (fold.kind() == Line.Kind.SCORE) {
                flap = "flap scored at " + Written.set(at + " mm") + (isUpright ? FROM_LEFT : FROM_BELOW);
            } else if (!(isUpright ? fromLeft : fromBelow).contains(at)) {
                (isUpright ? fromLeft : fromBelow).add(at);
            }
        }
        List<String> said = new ArrayList<>();
        if (!fromLeft.isEmpty()) {
            said.add("folds at " + Written.set(String.join(" and ", fromLeft) + " mm") + FROM_LEFT);
        }
        if (!fromBelow.isEmpty()) {
            said.add((said.isEmpty() ? "folds at " : "at ")
                    + Written.set(String.join(" and ", fromBelow) + " mm")
                    + FROM_BELOW);
        }
        if (!flap.isEmpty()) {
            said.add(flap);
        }
        return String.join(", ", said);
    }

    /** To a tenth of a millimetre, which no bone folder holds. */
    private static boolean isSame(Amount<Length> one, Amount<Length> other) {
        return Math.abs(one.si() - other.si()) < 1e-4;
    }

    /** A side inside an envelope that shrinks with its sheet, where there is one. */
    private String dried(PiecePlan piece, Function<EnvelopePlan, Optional<Estimate<Length>>> side) {
        return piece.envelopeStage()
                .optional()
                .flatMap(side)
                .map(inside -> " " + figures.band(inside))
                .orElse("");
    }
}
