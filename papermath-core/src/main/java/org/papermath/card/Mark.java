package org.papermath.card;

/** What a line of a card is for; no line is two of them. The mark tells it, not weight or colour. */
enum Mark {
    /** Do it, set it: no band. */
    SET("[ ]", "set", "Do: "),
    /** What will come out, with its band; nothing to set. */
    EXPECT(" ~", "expect", "Expect: "),
    /** What to read, what it should read, and what to do if it does not. */
    CHECK(" ?", "check", "Check: "),
    /** What can hurt, or spoil the work. */
    CAUTION(" !", "caution", "Take care: "),
    /** A remark. */
    NOTE(" -", "note", "Note: "),
    /** Goes on with the line above, or stands for itself. */
    MORE("", "more", "");

    private final String sign;
    private final String style;
    private final String words;

    Mark(String sign, String style, String words) {
        this.sign = sign;
        this.style = style;
        this.words = words;
    }

    /** {@return the sign before the line} */
    String sign() {
        return sign;
    }

    /** {@return the sign without the blank that puts it in line} */
    String bareSign() {
        return sign.strip();
    }

    /** {@return what the sign says, for who does not see it} */
    String words() {
        return words;
    }

    /** {@return the name of its style on a page} */
    String style() {
        return style;
    }
}
