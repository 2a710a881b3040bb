package org.papermath.quantity;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/**
 * What every exception of the library has in common: a code and named arguments beside the text, so that a program that
 * embeds the library can word the message in its own language.
 */
public abstract sealed class PapermathException extends RuntimeException permits Refused, Unclear {
    private static final long serialVersionUID = 1L;

    /** The most characters of a message. */
    private static final int MOST = 2000;

    /** So many of them from the beginning of a longer one. */
    private static final int HEAD = 1200;

    /** The code, a stable dotted name. */
    private final String code;

    /** The named arguments of the message, in the order in which they were given. */
    private final transient Map<String, Object> arguments;

    /**
     * Creates an exception.
     *
     * @param code a stable dotted name, for example {@code quantity.range}
     * @param message the sentence for a person
     * @param arguments the values in the sentence, by name
     */
    PapermathException(String code, String message, Map<String, ?> arguments) {
        super(cut(message, arguments));
        this.code = code;
        this.arguments = Collections.unmodifiableMap(new LinkedHashMap<>(arguments));
    }

    /** Returns a message for people: long texts in it are cut, and what to do at its end stays. */
    private static String cut(String message, Map<String, ?> arguments) {
        if (message.length() <= MOST) {
            return message;
        }
        String cut = message;
        for (Object argument : arguments.values()) {
            if (argument instanceof String text && text.length() > Name.MOST) {
                cut = cut.replace(text, Name.shown(text));
            }
        }
        if (cut.length() <= MOST) {
            return cut;
        }
        int head = Character.isHighSurrogate(cut.charAt(HEAD - 1)) ? HEAD - 1 : HEAD;
        int tail = cut.length() - (MOST - HEAD - 5);
        return cut.substring(0, head) + " ... "
                + cut.substring(Character.isLowSurrogate(cut.charAt(tail)) ? tail + 1 : tail);
    }

    /**
     * Returns the code.
     *
     * @return a stable dotted name, for example {@code quantity.range}; {@link org.papermath.evidence.Codes} has all
     */
    public final String code() {
        return code;
    }

    /**
     * Returns the values in the sentence, by name.
     *
     * @return an unmodifiable map in the order of the sentence; empty after deserialisation
     */
    public final Map<String, Object> arguments() {
        return arguments == null ? Map.of() : arguments;
    }

    /**
     * Returns what is wrong and what would be accepted, for people.
     *
     * @return the text, never null
     */
    @Override
    public String getMessage() {
        return Objects.requireNonNull(super.getMessage(), "message");
    }
}
