package org.papermath.quantity;

import java.util.HexFormat;
import java.util.Objects;

/**
 * What a name is made of: signs that can be seen, and not too many of them. Builders and the reader of documents judge
 * names alike.
 */
public final class Name {
    /** The most characters of a name. */
    public static final int MOST = 200;

    private static final int SHOWN = 60;

    private Name() {}

    /**
     * Checks a name and takes the blanks around it away.
     *
     * @param name the name
     * @param what what is called so, for the message
     * @return the name without the blanks around it; empty if there is nothing else
     * @throws Refused if it is longer than {@link #MOST} characters, or has one that cannot be shown
     */
    public static String check(String name, String what) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(what, "what");
        if (isPlain(name)) {
            return name;
        }
        String bare = name.strip();
        int at = hiddenIn(bare, false);
        if (at >= 0) {
            throw Refused.of("text.character", what + ": " + hidden(bare, at), "of", what, "given", shown(bare));
        }
        if (bare.length() > MOST) {
            throw Refused.of("text.long", what + ": " + longer(bare), "of", what, "given", shown(bare), "most", MOST);
        }
        return bare;
    }

    /**
     * Checks a name under which values of one's own are kept, and takes the blanks around it away.
     *
     * @param name the name
     * @param what what is called so, for the message
     * @return the name without the blanks around it; empty if there is nothing else
     * @throws Refused as {@link #check}, and if it has one of the signs by which places of values are written
     */
    public static String checkKey(String name, String what) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(what, "what");
        String bare = check(name, what);
        if (hasSign(bare)) {
            throw Refused.of(
                    "scope.name",
                    what + ": \"" + shown(bare) + "\" has one of the signs [ ] @ in it, by which"
                            + " the places of measured values are written. Use a name without them.",
                    "of",
                    what,
                    "given",
                    bare);
        }
        return bare;
    }

    /**
     * Returns whether a text has one of the signs by which places of values are written.
     *
     * @param text the text
     * @return whether one of {@code [ ] @} is in it
     */
    public static boolean hasSign(String text) {
        Objects.requireNonNull(text, "text");
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '[' || c == ']' || c == '@') {
                return true;
            }
        }
        return false;
    }

    private static boolean isPlain(String text) {
        int length = text.length();
        if (length > MOST || (length > 0 && (text.charAt(0) == ' ' || text.charAt(length - 1) == ' '))) {
            return false;
        }
        for (int i = 0; i < length; i++) {
            if (text.charAt(i) < ' ' || text.charAt(i) >= 0x7F) {
                return false;
            }
        }
        return true;
    }

    /**
     * Returns the refusal of a text that is too long for a name.
     *
     * @param text the text
     * @return the sentence
     */
    public static String longer(String text) {
        Objects.requireNonNull(text, "text");
        return "the text has " + text.length() + " characters; at most " + MOST + " fit here. Shorten it.";
    }

    /**
     * Returns the refusal of a text with a character that cannot be shown.
     *
     * @param text the text
     * @param at where the character stands, as returned by {@link #hiddenIn}
     * @return the sentence
     */
    public static String hidden(String text, int at) {
        Objects.requireNonNull(text, "text");
        char c = text.charAt(at);
        String code = "\\u" + HexFormat.of().toHexDigits(c);
        if (Character.isSurrogate(c) && !isPair(text, at)) {
            return "the text has half of a character, " + code + ". Write both halves or the character itself.";
        }
        if (Character.isISOControl(c)) {
            return "the text has the control character " + code + ", which cannot be shown. Take it away.";
        }
        return "the text has the invisible character "
                + (isPair(text, at) ? code + "\\u" + HexFormat.of().toHexDigits(text.charAt(at + 1)) : code)
                + ", by which two names can look alike or be read in another order. Take it away.";
    }

    /**
     * Returns where a text has a character that cannot be shown: a control character, half of a character, or one that
     * is invisible or turns the direction of reading. The joiners of scripts that need them are none between two signs
     * of such scripts.
     *
     * @param text the text
     * @param lines whether it may have several lines: then line breaks and tabs are allowed
     * @return the place of the character; -1 for none
     */
    public static int hiddenIn(String text, boolean lines) {
        Objects.requireNonNull(text, "text");
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c >= ' ' && c < 0x7F) {
                continue;
            }
            if (Character.isISOControl(c)) {
                if (!(lines && (c == '\n' || c == '\r' || c == '\t'))) {
                    return i;
                }
            } else if (Character.isSurrogate(c)) {
                if (!isPair(text, i) || isInvisible(text.codePointAt(i))) {
                    return i;
                }
                i++;
            } else if (isInvisible(c) && !isJoining(text, i)) {
                return i;
            }
        }
        return -1;
    }

    private static boolean isPair(String text, int at) {
        return at + 1 < text.length() && Character.isSurrogatePair(text.charAt(at), text.charAt(at + 1));
    }

    private static boolean isInvisible(int point) {
        return switch (Character.getType(point)) {
            // Signs of Arabic and Syriac that stand before numbers are of this sort, and can be seen.
            case Character.FORMAT ->
                !((point >= 0x600 && point <= 0x605) || point == 0x6DD || point == 0x70F || point == 0x8E2);
            case Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> true;
            // Fillers of Korean, and what keeps marks apart.
            default -> point == 0x34F || point == 0x115F || point == 0x1160 || point == 0x3164 || point == 0xFFA0;
        };
    }

    /** Returns whether this joins, or keeps apart, two signs of scripts in which that can be seen. */
    private static boolean isJoining(String text, int at) {
        char c = text.charAt(at);
        return (c == 0x200C || c == 0x200D)
                && at > 0
                && at + 1 < text.length()
                && isOfSuchScript(text.charAt(at - 1))
                && isOfSuchScript(text.charAt(at + 1));
    }

    private static boolean isOfSuchScript(char c) {
        return c >= 0x600
                && Character.getType(c) != Character.FORMAT
                && Character.getType(c) != Character.SPACE_SEPARATOR;
    }

    /**
     * Returns a text as it can stand in a message: not too long, and without characters that cannot be shown.
     *
     * @param text the text
     * @return the text, or its beginning
     */
    public static String shown(String text) {
        Objects.requireNonNull(text, "text");
        if (text.length() <= SHOWN && hiddenIn(text, false) < 0) {
            return text;
        }
        StringBuilder shown = new StringBuilder();
        int end = Math.min(text.length(), SHOWN);
        for (int i = 0; i < end; i++) {
            char c = text.charAt(i);
            if (i + 1 < end && isPair(text, i) && !isInvisible(text.codePointAt(i))) {
                shown.append(c).append(text.charAt(++i));
            } else if (Character.isSurrogate(c)
                    || Character.isISOControl(c)
                    || (isInvisible(c) && !isJoining(text, i))) {
                shown.append("\\u").append(HexFormat.of().toHexDigits(c));
            } else {
                shown.append(c);
            }
        }
        return text.length() > end ? shown.append("...").toString() : shown.toString();
    }
}
