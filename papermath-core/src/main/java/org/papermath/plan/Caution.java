package org.papermath.plan;

/**
 * A caution that goes with a stage of the work: what can hurt and what to do, in one line. Local codes and licensed
 * practice come first.
 */
public enum Caution {
    /** The roll of the beater. */
    BEATER_ROLL("Beater: guard roll, belts and feed point; no hand, hair or sleeve near it while it turns.",
            "29 CFR 1910.212 (guards)"),
    /** The noise of the beater. */
    NOISE("Noise: wear ear protection at the beater.", "29 CFR 1910.95 (90 dBA over 8 h)"),
    /** Water on the floor and electricity. */
    WET_ELECTRICITY("Wet room: outlets high and residual-current protected, no cord near splashes, rubber soles.",
            "29 CFR 1910.334; NFPA 70, 210.8"),
    /** Lifting. */
    LIFTING("Lifting: over 23 kg (51 lb) takes two people, a trolley or smaller posts and pails.",
            "NIOSH 94-110, revised lifting equation"),
    /** The press. */
    PRESS("Press: never above this load, load slowly, out of the line of force, no longer handle.",
            "common practice; ASME B30.1 for jacks"),
    /** Cooking with alkali. */
    ALKALI("Alkali: into cold water, never water into it; goggles, gloves, air; steel or enamel, never aluminium.",
            "common practice; 29 CFR 1910.151(c) for eye wash, recalled"),
    /** Dry pigment and filler. */
    DRY_POWDER("Dry pigment and filler: wear a respirator, wet them first, keep food vessels out of it.",
            "29 CFR 1910.134, recalled"),
    /** Additives. */
    SAFETY_SHEETS("Additives: read each safety data sheet before dosing; spilt polymer is slippery.",
            "29 CFR 1910.1200, recalled"),
    /** The size bath. */
    SIZE_BATH("Size bath: about 40 °C; keep it clean and use it the same day.", "common practice"),
    /** Mould in pulp, paper and room. */
    MOULD("Mould: use pulp within 1 to 2 weeks, kept cool; hold the room below 65 % RH while sheets dry.",
            "published guidance for collections"),
    /** What goes down the drain. */
    DRAIN("Drain: strain everything; no fibre into a sink; nothing below pH 5 or above the local limit.",
            "40 CFR 403.5(b) (pH, solids, heat)");

    private final String text;
    private final String basis;

    Caution(String text, String basis) {
        this.text = text;
        this.basis = basis;
    }

    /**
     * Returns the caution.
     *
     * @return one line
     */
    public String text() {
        return text;
    }

    /**
     * Returns the rule or practice behind it. Rules quoted are of the United States; another country has its own.
     *
     * @return the basis
     */
    public String basis() {
        return basis;
    }
}
