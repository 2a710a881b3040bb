package org.papermath.quantity;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What every exception of the library has in common: a code and named arguments beside the text, so that a program that
 * embeds the library can word the message in its own language.
 */
public abstract sealed class PapermathException extends RuntimeException permits Refused, Unclear {
    private static final long serialVersionUID = 1L;

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
        super(message);
        this.code = code;
        this.arguments = Collections.unmodifiableMap(new LinkedHashMap<>(arguments));
    }

    /**
     * Returns the code.
     *
     * @return a stable dotted name, for example {@code quantity.range}
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
}
