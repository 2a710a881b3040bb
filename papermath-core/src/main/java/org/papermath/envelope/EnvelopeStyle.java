package org.papermath.envelope;

/** How an envelope is cut, folded and glued. */
public enum EnvelopeStyle {
    /** Side flaps under a back panel folded up from below: side seams. */
    SIDE_SEAM("side seam"),
    /** A square turned by 45 degrees, its four corners folded over the middle: diagonal seams. */
    DIAMOND("diamond"),
    /** Side seams, the mouth on the long side, a straight flap over the whole of it. */
    WALLET("wallet"),
    /** The mouth on the short side, a seam down the middle of the back. */
    OPEN_END("open end");

    private final String words;

    EnvelopeStyle(String words) {
        this.words = words;
    }

    /**
     * Returns the name in words.
     *
     * @return the words
     */
    public String words() {
        return words;
    }
}
