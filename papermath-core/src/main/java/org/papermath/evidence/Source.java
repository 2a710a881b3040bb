package org.papermath.evidence;

/**
 * Where a value was found.
 *
 * @param text the published work with its place, or how the value came about; never empty
 */
public record Source(String text) {
    /**
     * Checks the text.
     *
     * @param text the published work with its place, or how the value came about
     */
    public Source {
        if (text.isBlank()) {
            throw new IllegalArgumentException("a source without text");
        }
    }

    @Override
    public String toString() {
        return text;
    }
}
