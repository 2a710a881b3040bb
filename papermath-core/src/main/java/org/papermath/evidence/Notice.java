package org.papermath.evidence;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/**
 * Something a result should not be read without: doubtful, outside what the model was made for, or against usual
 * practice. Immutable.
 */
public final class Notice {
    private final Level level;
    private final String code;
    private final String text;
    private final Map<String, Object> arguments;

    /** How much a notice matters. */
    public enum Level {
        /** Good to know. */
        NOTE,
        /** The result is doubtful or the practice unusual. */
        WARNING
    }

    private Notice(Level level, String code, String text, Map<String, Object> arguments) {
        this.level = level;
        this.code = code;
        this.text = text;
        this.arguments = arguments;
    }

    /**
     * Makes a note.
     *
     * @param code a stable dotted name
     * @param text the sentence for a person
     * @param namesAndValues names and values in turn; an even number of entries
     * @return the notice
     */
    public static Notice note(String code, String text, Object... namesAndValues) {
        Objects.requireNonNull(code, "code");
        Objects.requireNonNull(text, "text");
        Objects.requireNonNull(namesAndValues, "namesAndValues");
        return new Notice(Level.NOTE, code, text, named(namesAndValues));
    }

    /**
     * Makes a warning.
     *
     * @param code a stable dotted name
     * @param text the sentence for a person
     * @param namesAndValues names and values in turn; an even number of entries
     * @return the notice
     */
    public static Notice warning(String code, String text, Object... namesAndValues) {
        Objects.requireNonNull(code, "code");
        Objects.requireNonNull(text, "text");
        Objects.requireNonNull(namesAndValues, "namesAndValues");
        return new Notice(Level.WARNING, code, text, named(namesAndValues));
    }

    /**
     * Returns the same notice about one thing of several: its text begins with the thing, its arguments too.
     *
     * @param what the sort of thing, which is also the name of the argument, for example {@code piece}
     * @param name the name of the thing
     * @return the notice
     */
    public Notice about(String what, String name) {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put(what, name);
        all.putAll(arguments);
        return new Notice(level, code, what + " " + name + ": " + continued(), Collections.unmodifiableMap(all));
    }

    /** The text without the capital letter of its first word. */
    private String continued() {
        boolean word = text.length() > 1 && !Character.isUpperCase(text.charAt(1));
        return word ? Character.toLowerCase(text.charAt(0)) + text.substring(1) : text;
    }

    private static Map<String, Object> named(Object... namesAndValues) {
        if (namesAndValues.length % 2 != 0) {
            throw new IllegalArgumentException("a name without a value: " + namesAndValues[namesAndValues.length - 1]);
        }
        Map<String, Object> map = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            map.put(String.valueOf(namesAndValues[i]), namesAndValues[i + 1]);
        }
        return Collections.unmodifiableMap(map);
    }

    /**
     * Returns how much it matters.
     *
     * @return the level
     */
    public Level level() {
        return level;
    }

    /**
     * Returns the code.
     *
     * @return a stable dotted name, one of {@link Codes}
     */
    public String code() {
        return code;
    }

    /**
     * Returns the sentence for a person.
     *
     * @return the text
     */
    public String text() {
        return text;
    }

    /**
     * Returns the values in the sentence, by name.
     *
     * @return an unmodifiable map in the order of the sentence
     */
    public Map<String, Object> arguments() {
        return arguments;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Notice that
                && level == that.level
                && code.equals(that.code)
                && text.equals(that.text)
                && arguments.equals(that.arguments);
    }

    @Override
    public int hashCode() {
        return Objects.hash(level, code, text);
    }

    @Override
    public String toString() {
        return (level == Level.WARNING ? "warning: " : "note: ") + text;
    }
}
