package org.papermath.json.tree;

import org.papermath.json.FaultCodes;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/** Texts on their way into a document: what could not be read again is refused. */
public final class ReadableText {
    private ReadableText() {}

    /** Returns a name or a short text without the blanks around it. */
    public static String name(String text) {
        String bare = text.strip();
        if (bare.isEmpty()) {
            throw unreadable(FaultCodes.BLANK, text, "it is empty. Write something");
        }
        return readable(bare, Name.MOST, false);
    }

    /** Returns a text of several lines. */
    public static String note(String text) {
        return readable(text, JsonTree.MOST_TEXT, true);
    }

    private static String readable(String text, int most, boolean lines) {
        if (text.length() > most) {
            throw unreadable(
                    FaultCodes.LONG_TEXT,
                    text,
                    "it has " + text.length() + " characters; at most " + most + " are read. Shorten it");
        }
        int hidden = Name.hiddenIn(text, lines);
        if (hidden >= 0) {
            throw Refused.of(
                    FaultCodes.CHARACTER,
                    "a document with \"" + JsonValue.shown(text) + "\" could not be read again: "
                            + Name.hidden(text, hidden),
                    "given",
                    text);
        }
        return text;
    }

    /** Makes the refusal of a text that could not be read again. */
    public static Refused unreadable(String code, String text, String why) {
        return Refused.of(
                code,
                "a document with \"" + JsonValue.shown(text) + "\" could not be read again: " + why + ".",
                "given",
                text);
    }
}
