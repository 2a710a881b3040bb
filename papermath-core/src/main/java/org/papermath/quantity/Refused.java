package org.papermath.quantity;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/**
 * An input that cannot be: out of its hard range, of the wrong kind, not a number, or against a balance.
 *
 * <p>The message names the quantity, the value given with its unit, the limit with its unit, and what to do.
 */
public final class Refused extends PapermathException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates a refusal.
     *
     * @param code a stable dotted name
     * @param message the sentence for a person
     * @param arguments the values in the sentence, by name
     */
    public Refused(String code, String message, Map<String, ?> arguments) {
        super(code, message, arguments);
    }

    /**
     * Creates a refusal with up to a few named arguments.
     *
     * @param code a stable dotted name
     * @param message the sentence for a person
     * @param namesAndValues names and values in turn; an even number of entries
     * @return the refusal, to be thrown
     */
    public static Refused of(String code, String message, Object... namesAndValues) {
        Objects.requireNonNull(code, "code");
        Objects.requireNonNull(message, "message");
        Objects.requireNonNull(namesAndValues, "namesAndValues");
        return new Refused(code, message, named(namesAndValues));
    }

    /**
     * Makes a map of names and values given in turn.
     *
     * @param namesAndValues names and values in turn; an even number of entries
     * @return the map, in the order given
     * @throws IllegalArgumentException if a name has no value
     */
    static Map<String, Object> named(Object... namesAndValues) {
        if (namesAndValues.length % 2 != 0) {
            throw new IllegalArgumentException("a name without a value: " + namesAndValues[namesAndValues.length - 1]);
        }
        Map<String, Object> map = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            map.put(String.valueOf(namesAndValues[i]), namesAndValues[i + 1]);
        }
        return map;
    }
}
