package org.papermath.card;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Figures within the text of a card that a page shows otherwise than the words around them: what is set, and the customary
 * unit behind it. Text carries them between marks that no form prints.
 */
final class Written {
    private static final char SET = '\uE002';
    private static final char SMALL = '\uE003';
    private static final char END = '\uE004';

    private Written() {}

    /** {@return a figure that is set} */
    static String set(String figure) {
        return SET + figure + END;
    }

    /** {@return a figure beside another, in its brackets} */
    static String small(String figure) {
        return SMALL + figure + END;
    }

    /** {@return the text alone} */
    static String plain(String text) {
        StringBuilder out = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c != SET && c != SMALL && c != END) {
                out.append(c);
            }
        }
        return out.toString();
    }

    /** {@return text that is safe in HTML, with the figures told apart in it} */
    static String html(String escaped) {
        StringBuilder out = new StringBuilder(escaped.length() + 32);
        Deque<String> close = new ArrayDeque<>();
        for (int i = 0; i < escaped.length(); i++) {
            char c = escaped.charAt(i);
            if (c == SET || c == SMALL) {
                out.append(c == SET ? "<b>" : "<small>");
                close.push(c == SET ? "</b>" : "</small>");
            } else if (c == END) {
                out.append(close.isEmpty() ? "" : close.pop());
            } else {
                out.append(c);
            }
        }
        return out.toString();
    }
}
