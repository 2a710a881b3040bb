package org.papermath.plan;

/** The card. */
public final class MakingCard {
    private final String text;

    private MakingCard(String text) {
        this.text = text;
    }

    static MakingCard of(MakingPlan plan) {
        return new MakingCard(plan.toString());
    }

    @Override
    public String toString() {
        return text;
    }
}
