package org.papermath.card;

import java.util.List;
import java.util.Objects;
import org.papermath.plan.MakingPlan;

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
    private final List<String> lines;

    private MakingCard(List<String> lines) {
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
        return new MakingCard(new CardWriter(plan).lines());
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
