package org.papermath.plan;

/**
 * A caution that goes with a step of the work: what can hurt, or spoil the order, and what to do. Which step has which is listed by
 * {@link WorkStep}. Local codes and licensed practice come first.
 */
public enum Caution {
    /** What was counted of pieces that go out in envelopes. */
    HOUSEHOLDS("Count", "were households counted, or guests? One goes to each.", "common practice of stationers"),
    /** Pails of water and fibre. */
    SOAKING_PAILS(
            "Pails",
            "none filled over 23 kg (51 lb); lids on, no child near.",
            "NIOSH 94-110, revised lifting equation; common practice"),
    /** Cooking with alkali. */
    ALKALI(
            "Alkali",
            "into cold water, never water into it; hot liquor burns: goggles, gloves, air; steel or enamel, never"
                    + " aluminium.",
            "common practice; 29 CFR 1910.151(c) for eye wash, recalled"),
    /** The roll of the beater. */
    BEATER_ROLL(
            "Beater",
            "guard roll, belts and feed point; no hand, hair or sleeve near it while it turns.",
            "29 CFR 1910.212 (guards)"),
    /** The noise of the beater. */
    NOISE("Noise", "wear ear protection at the beater.", "29 CFR 1910.95 (90 dBA over 8 h)"),
    /** What the safety data sheets of the additives say. */
    SAFETY_SHEETS(
            "Additives",
            "read each safety data sheet before dosing; spilt polymer is slippery.",
            "29 CFR 1910.1200, recalled"),
    /** Dust of dry pigment and filler. */
    DRY_POWDER(
            "Dry pigment and filler",
            "raise no dust: respirator, wet it first, no food vessels.",
            "29 CFR 1910.134, recalled"),
    /** A warm plate, an iron or heated boards. */
    WARM_PLATE(
            "Warm plate, iron or heated boards",
            "burns; dry hands, cord away from water, off when left.",
            "common practice"),
    /** Water on the floor and electricity. */
    WET_ELECTRICITY(
            "Wet room",
            "outlets high and residual-current protected, no cord near splashes, rubber soles.",
            "29 CFR 1910.334; NFPA 70, 210.8"),
    /** Lifting the full mould. */
    LIFTING_MOULD(
            "Lifting the mould",
            "close to the body, without a twist, with rests; over 23 kg (51 lb) takes two people.",
            "NIOSH 94-110, revised lifting equation"),
    /** Lifting the post. */
    LIFTING("Lifting", "over 23 kg (51 lb): two people or a trolley.", "NIOSH 94-110, revised lifting equation"),
    /** The press. */
    PRESS(
            "Press",
            "load slowly, out of the line of force, the handle never lengthened.",
            "common practice; ASME B30.1 for jacks"),
    /** A stack under weight. */
    STACK(
            "Stack under weight",
            "level and low, weights clear of the edge; keep feet from under it.",
            "common practice"),
    /** A fan or a heater beside water. */
    FAN_HEATER(
            "Fan or heater beside water",
            "residual-current protected, off the floor, guarded; no heater near paper or left alone.",
            "29 CFR 1910.334; common practice"),
    /** The hot size bath. */
    SIZE_BATH(
            "Size bath",
            "about 40 °C, hotter while it melts: ladle it, carry no full pan; keep it clean, use it the same day.",
            "common practice"),
    /** Knife and guillotine. */
    BLADE(
            "Knife and guillotine",
            "cut along a steel rule, away from the hand; guard on, blade covered.",
            "common practice; 29 CFR 1910.212 (guards)"),
    /** What goes down the drain. */
    DRAIN(
            "Drain",
            "strain everything; no fibre, alkali or pigment into a sink; nothing below pH 5 or above the local limit.",
            "40 CFR 403.5(b) (pH, solids, heat)"),
    /** Mould that grows in pulp, on felts, paper and in the room. */
    MOULD(
            "Mould growth",
            "use stock within 1 to 2 weeks, kept cool; dry the felts; room below 65 % RH while sheets dry.",
            "published guidance for collections; common practice");

    private final String what;
    private final String advice;
    private final String basis;

    Caution(String what, String advice, String basis) {
        this.what = what;
        this.advice = advice;
        this.basis = basis;
    }

    /**
     * Returns the caution in general; that of a plan, with its figure, is in {@link MakingPlan#cautions()}.
     *
     * @return one or two short lines
     */
    public String text() {
        return what + ": " + advice;
    }

    /** Returns the caution with a figure of a plan, or in general if the figure is empty. */
    String text(String figure) {
        return figure.isEmpty() ? text() : what + ": " + figure + "; " + advice;
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
