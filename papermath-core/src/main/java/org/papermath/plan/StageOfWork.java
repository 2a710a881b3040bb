package org.papermath.plan;

/** The stages of the work at which a making is held against its plan, in their order. */
public enum StageOfWork {
    /** The fibre at the scale. */
    FIBRE("the fibre weighed"),
    /** The additives at the scale. */
    ADDITIVES("the additives weighed"),
    /** What beating made of the stuff. */
    BEATING("the beating"),
    /** How thick the vat stood. */
    VAT("the vat"),
    /** What the hand lifted of it. */
    LIFT("the lift of the hand"),
    /** How wet the sheets were couched. */
    COUCHING("the couching"),
    /** How dry they came from the press. */
    PRESSING("the press"),
    /** How long they took in the dryer. */
    DRYING("the dryer"),
    /** How much they shrank. */
    SHRINKING("the shrinkage"),
    /** How dense they came out. */
    DENSITY("the density of the sheet"),
    /** How many sheets were formed, and what became of them. */
    COUNTS("the count of sheets and rejects"),
    /** What the hands took. */
    HOURS("the time hands took");

    private final String words;

    StageOfWork(String words) {
        this.words = words;
    }

    /**
     * Returns the stage in words.
     *
     * @return for example {@code the press}
     */
    public String words() {
        return words;
    }
}
