package org.papermath.card;

import java.util.List;
import java.util.Objects;
import org.papermath.plan.MakingPlan;

/**
 * A plan to pin to the wall: a page to set up by, then the work in its order, in pages of 69 lines of 80 characters. Each
 * line has a mark: {@code [ ]} a setting, rounded to its tool; {@code ~} a forecast, with its band; {@code ?} a check, with
 * what it should read and what to do if it does not; {@code !} a caution, in the section of its step. Pieces have letters in
 * the order of the vat. Immutable, and the same in every locale.
 *
 * <pre>{@code
 * MakingCard card = MakingCard.of(MakingPlan.of(order, studio));
 * card.lines().get(0).startsWith("MAKING CARD  midwinter concert"); // true
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
     * Returns the card as a page to print, A4 or Letter: the same words and figures, with pictures of the pieces on the
     * mould, the days, the run of the vat sheet by sheet and where the fibre goes, and the openings of shaped and split deckles
     * at true scale.
     *
     * @return one HTML text that needs nothing else
     */
    public String page() {
        PageForm page = new PageForm();
        new CardWriter(plan, page).write();
        return page.page();
    }

    /**
     * Returns the labels a card can carry, for the list of words.
     *
     * @return an unmodifiable list
     */
    public static List<String> labels() {
        return Label.all();
    }

    /** Returns the whole card, lines ended by line feeds. */
    @Override
    public String toString() {
        return String.join("\n", lines) + "\n";
    }
}
