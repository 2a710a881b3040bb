package org.papermath.evidence;

import java.util.Objects;
import org.papermath.quantity.Refused;

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
     * @throws Refused if there is none
     */
    public Source {
        Objects.requireNonNull(text, "text");
        if (text.isBlank()) {
            throw Refused.of(
                    "source.blank",
                    "source: no text given. Name the published work, or state how the value came about.");
        }
    }

    @Override
    public String toString() {
        return text;
    }
}
