package org.papermath.card;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.papermath.drawing.DaysDrawing;
import org.papermath.plan.EmptyRecord;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;

/**
 * A plan as text to pin to the wall: the work in its order, pieces side by side, settings rounded to the tool,
 * forecasts with their bands, each caution in the section of its step. Immutable, and the same in every locale.
 *
 * <pre>{@code
 * MakingCard card = MakingCard.of(MakingPlan.of(order, studio));
 * card.toString().lines().findFirst().get(); // "MAKING CARD  midwinter concert"
 * }</pre>
 */
public final class MakingCard {
    private final MakingPlan plan;
    private final List<String> lines;

    private MakingCard(MakingPlan plan, List<String> lines) {
        this.plan = plan;
        this.lines = lines;
    }

    /**
     * Returns the card of a plan.
     *
     * @param plan the plan
     * @return its card
     */
    public static MakingCard of(MakingPlan plan) {
        Objects.requireNonNull(plan, "plan");
        TextForm text = new TextForm();
        new CardWriter(plan, text).write();
        return new MakingCard(plan, text.lines());
    }

    /**
     * Returns the lines of the card.
     *
     * @return an unmodifiable list
     */
    public List<String> lines() {
        return lines;
    }

    /**
     * Returns the card as a page to print, A4 or Letter: the same words and figures, the days as a picture, the openings of
     * shaped and split deckles, and lines to write the readings of each batch on, in the order a record takes them.
     *
     * @return one HTML text that needs nothing else
     */
    public String page() {
        PageForm page = new PageForm();
        new CardWriter(plan, page).write();
        plan.pieces().stream()
                .forEach(piece -> piece.forming()
                        .shapedDeckle()
                        .ifPresent(deckle -> page.picture(
                                deckle.drawing().svg(),
                                "Openings of the deckle for " + piece.name() + ", in millimetres")));
        if (plan.schedule().start().isPresent()) {
            page.picture(
                    DaysDrawing.of(plan.order().name(), plan.schedule().timetable())
                            .svg(),
                    "The days of the work, as bars: by hand, in a machine, waiting");
        }
        LocalDate day = plan.schedule().start().orElse(LocalDate.EPOCH);
        for (PiecePlan piece : plan.pieces()) {
            page.section("Write down: " + piece.name());
            EmptyRecord blanks = plan.emptyRecord(piece.piece().recipe(), piece.name(), day);
            for (EmptyRecord.Blank blank : blanks.blanks()) {
                page.line("", blank.what());
                for (EmptyRecord.ToFill line : blank.toFill()) {
                    page.write(
                            line.what(),
                            line.planned().map(value -> "planned " + value).orElse(""),
                            line.unit());
                }
            }
        }
        return page.page();
    }

    /**
     * Returns the labels a card can carry, for the list of words.
     *
     * @return an unmodifiable list
     */
    public static List<String> labels() {
        return CardWriter.labels();
    }

    /** Returns the whole card, lines ended by line feeds. */
    @Override
    public String toString() {
        return String.join("\n", lines) + "\n";
    }
}
