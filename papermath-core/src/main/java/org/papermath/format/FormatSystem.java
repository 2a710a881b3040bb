package org.papermath.format;

/** The standard or custom a format belongs to. */
public enum FormatSystem {
    /** ISO 216, A series: trimmed sheets. */
    ISO_A("ISO A"),
    /** ISO 216, B series: trimmed sheets. */
    ISO_B("ISO B"),
    /** ISO 269, C series and the other envelopes of that standard; outside sizes. */
    ISO_ENVELOPE("ISO envelope"),
    /** ISO 217, RA: untrimmed sheets for A sizes. */
    ISO_RA("ISO RA"),
    /** ISO 217, SRA: untrimmed sheets for A sizes with bleed. */
    ISO_SRA("ISO SRA"),
    /** North American announcement and baronial envelopes, and the cards made for them. */
    NA_ANNOUNCEMENT("North American announcement"),
    /** North American commercial envelopes, by number. */
    NA_COMMERCIAL("North American commercial"),
    /** North American sheets such as letter. */
    NA_SHEET("North American sheet"),
    /** JIS P 0138, B series: trimmed sheets. */
    JIS_B("JIS B"),
    /** Japanese hand-made sheets and cards. */
    JAPANESE("Japanese"),
    /** Old sheet names, whose size depends on use, country and date. */
    TRADITIONAL("traditional");

    private final String words;

    FormatSystem(String words) {
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
