package org.papermath.card;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.VatPlan;

/**
 * The pieces of a plan in the order of the vat, with the letters that stand for them everywhere on a card but in the list of
 * pieces. A piece that is alone has no letter.
 */
final class Lettered {
    private static final int LETTERS = 26;
    /** A name of more letters is cut where it heads a column; the list of pieces has all of it. */
    private static final int LONG = 14;

    private final List<PiecePlan> pieces;

    Lettered(MakingPlan plan) {
        List<String> batches = plan.batches().stream().map(BatchPlan::name).toList();
        pieces = plan.pieces().stream()
                .sorted(Comparator.<PiecePlan>comparingInt(piece -> batches.indexOf(piece.batch()))
                        .thenComparingInt(
                                piece -> piece.vatStage().map(VatPlan::turn).orElse(Integer.MAX_VALUE)))
                .toList();
    }

    List<PiecePlan> all() {
        return pieces;
    }

    boolean areSeveral() {
        return pieces.size() > 1;
    }

    /** {@return the letter of a piece; its name where it is alone} */
    String letter(PiecePlan piece) {
        return areSeveral() ? letter(pieces.indexOf(piece)) : piece.name();
    }

    /** {@return the letter before the name, or the name alone} */
    String named(PiecePlan piece) {
        return before(piece, " ") + piece.name();
    }

    /** {@return the letter and the name, cut at a word where it is too long for the head of a column} */
    String head(PiecePlan piece) {
        String name = piece.name();
        if (name.length() <= LONG || !areSeveral()) {
            return named(piece);
        }
        int blank = name.lastIndexOf(' ', LONG - 1);
        return letter(piece) + " "
                + (blank > 0 ? name.substring(0, blank) : name.substring(0, name.offsetByCodePoints(0, LONG - 1)))
                + ".";
    }

    /** A to Z, then AA, as columns are lettered. */
    private static String letter(int index) {
        String last = String.valueOf((char) ('A' + index % LETTERS));
        return index < LETTERS ? last : letter(index / LETTERS - 1) + last;
    }

    /** {@return the letters of some pieces, {@code A, B}; empty where it is all of them} */
    String letters(List<PiecePlan> some) {
        return some.size() == pieces.size()
                ? ""
                : String.join(", ", some.stream().map(this::letter).toList());
    }

    /** {@return the letter before what is said of one piece, and what stands between; empty where it is alone} */
    String before(PiecePlan piece, String between) {
        return areSeveral() ? letter(piece) + between : "";
    }

    /** {@return what is said of pieces, with those it is said of; each thing once, what is empty not at all} */
    Map<String, List<PiecePlan>> alike(Function<PiecePlan, String> said) {
        Map<String, List<PiecePlan>> groups = new LinkedHashMap<>();
        for (PiecePlan piece : pieces) {
            String text = said.apply(piece);
            if (!text.isEmpty()) {
                groups.computeIfAbsent(text, key -> new ArrayList<>()).add(piece);
            }
        }
        return groups;
    }
}
