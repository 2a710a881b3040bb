package org.papermath.plan;

import java.util.List;

/**
 * A step of the work in its order, with the cautions that belong beside it. A step that can hurt nobody and spoil nothing
 * has none.
 */
public enum WorkStep {
    /** Counting what is ordered, where pieces go out in envelopes. */
    COUNT("count what is ordered", Caution.HOUSEHOLDS),
    /** Weighing out. */
    WEIGH("weigh"),
    /** Soaking the fibre in pails. */
    SOAK("soak the fibre", Caution.SOAKING_PAILS),
    /** Cooking fibre that is bought raw. */
    COOK("cook raw fibre", Caution.ALKALI),
    /** Beating. */
    BEAT("beat", Caution.BEATER_ROLL, Caution.NOISE),
    /** Adding colour, filler, size and aids. */
    DOSE("dose additives", Caution.SAFETY_SHEETS),
    /** Wetting out dry pigment and filler. */
    WET_POWDER("wet out dry powders", Caution.DRY_POWDER),
    /** Drying trial sheets and swatches by themselves and fast. */
    DRY_TRIALS("dry trials and swatches", Caution.WARM_PLATE),
    /** Dipping or pouring sheets and couching them. */
    FORM("form sheets", Caution.WET_ELECTRICITY, Caution.LIFTING_MOULD),
    /** Laying posts of felts and carrying them. */
    LAY_POSTS("lay posts", Caution.LIFTING),
    /** Pressing in the press. */
    PRESS("press", Caution.PRESS),
    /** Drying between boards, under weight. */
    DRY_UNDER_WEIGHT("dry under weight", Caution.STACK),
    /** Drying in moved or warmed air. */
    DRY_IN_AIR("dry in moved or warmed air", Caution.FAN_HEATER),
    /** Drying on boards or plates, which may be warmed. */
    DRY_ON_BOARDS("dry on boards", Caution.WARM_PLATE),
    /** Sizing in a bath. */
    SIZE("size in a bath", Caution.SIZE_BATH),
    /** Looking sheets over. */
    SORT("sort"),
    /** Cutting to size. */
    TRIM("cut to size", Caution.BLADE),
    /** Folding and gluing. */
    FOLD("fold and glue"),
    /** Emptying and straining the vat, washing felts, keeping stock. */
    CLEAR_UP("strain and clear up", Caution.DRAIN, Caution.MOULD),
    /** Leaving the sheets under weight in the air of the room. */
    CONDITION("condition under weight"),
    /** Counting and packing. */
    PACK("count and pack");

    private final String words;

    @SuppressWarnings("ImmutableEnumChecker") // an unmodifiable list
    private final List<Caution> cautions;

    WorkStep(String words, Caution... cautions) {
        this.words = words;
        this.cautions = List.of(cautions);
    }

    /**
     * Returns the step in words.
     *
     * @return a few words
     */
    public String words() {
        return words;
    }

    /**
     * Returns the cautions that belong beside the step.
     *
     * @return an unmodifiable list, empty if the step needs none
     */
    public List<Caution> cautions() {
        return cautions;
    }
}
