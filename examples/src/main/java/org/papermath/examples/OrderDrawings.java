package org.papermath.examples;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.papermath.drawing.SvgDrawing;
import org.papermath.evidence.Scope;
import org.papermath.json.DocumentFiles;
import org.papermath.mould.Mould;
import org.papermath.mould.Opening;
import org.papermath.order.Piece;
import org.papermath.plan.FinishedPiece;
import org.papermath.plan.FormingPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.ShapedDeckle;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.Units;
import org.papermath.shape.CutLayout;
import org.papermath.shape.Outline;

/**
 * What is cut for an order, drawn at true scale: for every piece how it lies on the dry sheet, the deckle to make where one
 * has to be made, and the blank of an envelope with its folds. Print the drawings at 100 %.
 */
final class OrderDrawings {
    /**
     * A drawing and the file it is saved in.
     *
     * @param file the name of the file
     * @param shows what it shows, in a few words
     * @param drawing the drawing
     */
    record Drawn(String file, String shows, SvgDrawing drawing) {
        @Override
        public String toString() {
            return file + ": " + shows;
        }
    }

    private OrderDrawings() {}

    /** Draws every piece of a plan, in the order of the pieces. */
    static List<Drawn> of(MakingPlan plan) {
        List<Drawn> all = new ArrayList<>();
        for (PiecePlan piece : plan.pieces()) {
            String file = fileName(piece.name(), all);
            FormingPlan forming = piece.forming();
            Optional<ShapedDeckle> shaped = forming.shapedDeckle();
            if (shaped.isPresent()) {
                all.add(new Drawn(
                        file + "-deckle.svg",
                        "the deckle, " + shaped.get(),
                        shaped.get().drawing()));
                continue;
            }
            if (forming.deckleToMake()) {
                all.add(deckle(piece, file));
            }
            if (piece.piece().edge() == Piece.Edge.CUT) {
                cutting(plan, piece, file).ifPresent(all::add);
            } else if (!forming.deckleToMake()) {
                all.add(rim(piece, file));
            }
            piece.envelopeStage()
                    .optional()
                    .ifPresent(envelope -> all.add(new Drawn(
                            file + "-blank.svg",
                            "the blank, " + size(envelope.blankWidth(), envelope.blankHeight()) + ", with its folds",
                            envelope.drawing())));
        }
        return List.copyOf(all);
    }

    private static Drawn deckle(PiecePlan piece, String file) {
        Opening opening = piece.forming().opening();
        String size = size(opening.width(), opening.height());
        return new Drawn(
                file + "-deckle.svg",
                "the deckle to make, one opening of " + size,
                SvgDrawing.of("deckle for " + piece.name() + ": opening " + size, opening.outline())
                        .withRemark("full: cut out of the deckle; shrinkage is taken in"));
    }

    /** A piece with the rim of a deckle the studio has: what dries of its opening. */
    private static Drawn rim(PiecePlan piece, String file) {
        Opening opening = piece.forming().opening();
        Amount<Length> across =
                dried(opening.width(), piece.finished().shrinkageAcross().likely());
        Amount<Length> along =
                dried(opening.height(), piece.finished().shrinkageAlong().likely());
        String shows = "with its rim, dry " + size(across, along) + ", from "
                + piece.forming().mould().map(Mould::name).orElseThrow() + ", opening "
                + size(opening.width(), opening.height());
        return new Drawn(
                file + "-sheet.svg",
                shows,
                SvgDrawing.titled(piece.name() + ": " + shows)
                        .withSheet(opening.outline())
                        .withGuide(
                                Outline.rectangle(across, along),
                                half(opening.width(), across),
                                half(opening.height(), along))
                        .withRemark("outside: the opening; inside: the sheet as it dries, likely; nothing is cut"));
    }

    private static Amount<Length> half(Amount<Length> outside, Amount<Length> inside) {
        return Kinds.LENGTH.ofSi(Math.max(0, outside.si() - inside.si()) / 2, "mm");
    }

    /** How a piece lies on the sheet when that is dry. */
    private static Optional<Drawn> cutting(MakingPlan plan, PiecePlan piece, String file) {
        FormingPlan forming = piece.forming();
        FinishedPiece finished = piece.finished();
        Amount<Length> across =
                dried(forming.opening().width(), finished.shrinkageAcross().likely());
        Amount<Length> along =
                dried(forming.opening().height(), finished.shrinkageAlong().likely());
        Amount<Length> one = finished.width().likely();
        Amount<Length> other = finished.height().likely();
        Amount<Length> trim = piece.piece()
                .trim()
                .orElseGet(() -> plan.studio()
                        .assumptions()
                        .amount("order.trim", Scope.of(piece.name(), piece.batch()), Kinds.LENGTH));
        boolean wideFirst = one.si() > other.si();
        // Its long side lies along the mould, or turned, across it.
        CutLayout layout = CutLayout.of(
                across,
                along,
                one,
                other,
                trim.add(trim),
                trim,
                EnumSet.noneOf(CutLayout.Edge.class),
                wideFirst != forming.turned());
        if (layout.count() < forming.perSheet()) {
            return Optional.empty();
        }
        String on = forming.mould().map(Mould::name).orElse("a deckle to make");
        String shows = forming.perSheet() + " up on a dry sheet of " + size(across, along) + ", from " + on;
        return Optional.of(new Drawn(
                file + "-sheet.svg",
                shows,
                SvgDrawing.of(piece.name() + ": " + shows + ", opening " + forming.opening(), layout)
                        .withRemark("grey: the sheet as it dries, likely; full: cut")));
    }

    private static Amount<Length> dried(Amount<Length> wet, Quantity<LinearShrinkage> shrinkage) {
        return Kinds.LENGTH.ofSi(wet.si() * (1 - Kinds.LINEAR_SHRINKAGE.si(shrinkage, "shrinkage")), "mm");
    }

    private static String size(Amount<Length> across, Amount<Length> along) {
        return tenths(across) + " × " + tenths(along) + " mm";
    }

    private static String tenths(Amount<Length> length) {
        return Units.number(Math.rint(length.in("mm") * 10) / 10);
    }

    /** The name of a piece as the beginning of names of files, unlike that of any other. */
    private static String fileName(String piece, List<Drawn> taken) {
        String plain = piece.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-");
        plain = plain.replaceAll("^-|-$", "");
        String name = plain.isEmpty() ? "piece" : plain;
        for (int next = 2; ; next++) {
            String begins = name + "-";
            if (taken.stream().noneMatch(one -> one.file().startsWith(begins))) {
                return name;
            }
            name = plain + next;
        }
    }

    /** Saves all of them in a folder. */
    static void save(List<Drawn> all, Path folder) throws IOException {
        for (Drawn one : all) {
            DocumentFiles.save(folder.resolve(one.file()), one.drawing().svg());
        }
    }
}
