package org.papermath.evidence;

import java.util.Locale;

/** How the value of an assumption is known. */
public enum Basis {
    /** By definition: an exact conversion, a convention that fixes the number. */
    DEFINITION,
    /** By a published standard. */
    STANDARD,
    /** By published measurements, tables or papers, or worked out from them. */
    PUBLISHED,
    /**
     * Tied to one published observation, trial or statement: the one number it gives is right there, the rest (the shape
     * of the law, the band, that it holds for this use) is assumed.
     */
    ANCHORED,
    /** Common practice of the trade, without a source. */
    COMMON_PRACTICE,
    /** Recalled from memory, not looked up. */
    RECALLED,
    /** Measured in the studio. */
    MEASURED_HERE,
    /** Given by the person who asks. */
    GIVEN;

    /**
     * Returns the word used in tables and documents, for example {@code common practice}.
     *
     * @return the word
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /**
     * Returns whether a result that rests on this basis alone is to be called uncalibrated.
     *
     * @return true for anchored, common practice and recalled values
     */
    public boolean isUncalibrated() {
        return this == ANCHORED || this == COMMON_PRACTICE || this == RECALLED;
    }
}
