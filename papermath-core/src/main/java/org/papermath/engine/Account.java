package org.papermath.engine;

/** The accounts a substance comes from and goes to. There is none called "lost". */
public enum Account {
    WEIGHED("weighed"),
    STUFF_ON_HAND("stuff on hand"),
    WITH_STOCK("in the stock"),
    TO_VAT("to the vat"),
    COOKED_OUT("sorted and cooked out"),
    HANDLING("handling"),
    WHITE_WATER("white water"),
    IN_VAT("kept in the vat"),
    STOCK_LEFT("stock put by"),
    TRIALS("trial sheets"),
    REJECTED_FORMING("rejected in forming"),
    REJECTED_PRESSING("rejected in pressing"),
    REJECTED_DRYING("rejected in drying"),
    REJECTED_SIZING("rejected in sizing"),
    TRIM("trim"),
    REJECTED_CUTTING("rejected in cutting"),
    REJECTED_FOLDING("rejected in folding"),
    GOOD("good"),
    SPARE("spare"),
    WET_REJECTS("wet rejects"),
    PRESSED_OUT("pressed out"),
    EVAPORATED("evaporated"),
    IN_PAPER("in the dry paper");

    private final String words;

    Account(String words) {
        this.words = words;
    }

    /** The name of the account in words. */
    public String words() {
        return words;
    }
}
