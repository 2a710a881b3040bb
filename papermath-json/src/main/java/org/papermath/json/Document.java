package org.papermath.json;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A value with what its document held beside it: the members of others, whose names begin with {@code x-}, and the
 * references its parts were read from. Writing takes it, so nothing of that is lost. Immutable.
 *
 * @param <T> the type of the value
 */
public final class Document<T> {
    private final T value;
    private final Kept kept;

    Document(T value, Kept kept) {
        this.value = value;
        this.kept = kept;
    }

    /**
     * Makes a document of a value that was not read from one.
     *
     * @param <T> the type of the value
     * @param value the value
     * @return the document
     */
    public static <T> Document<T> of(T value) {
        return new Document<>(value, new Kept());
    }

    /**
     * Returns the value.
     *
     * @return the value
     */
    public T value() {
        return value;
    }

    Kept kept() {
        return kept;
    }

    /**
     * Returns the same document around another value. The members of others stay at their JSON Pointers; those whose
     * object is no longer written are left out. References stay too: use {@link #inlined()} if a part that came from
     * another document was changed.
     *
     * @param other the new value
     * @return the document
     */
    public Document<T> with(T other) {
        return new Document<>(other, kept);
    }

    /**
     * Returns the document without its references, so that every part is written in full.
     *
     * @return the document
     */
    public Document<T> inlined() {
        return new Document<>(value, kept.withoutReferences());
    }

    /**
     * Returns the members of others as JSON text, by JSON Pointer.
     *
     * @return an unmodifiable map, grouped by the objects they stand in
     */
    public Map<String, String> keptMembers() {
        return Collections.unmodifiableMap(kept.asJson());
    }

    /**
     * Returns the references that were followed, by the JSON Pointer of the part they stand for.
     *
     * @return an unmodifiable map in the order of the document
     */
    public Map<String, String> references() {
        return Collections.unmodifiableMap(new LinkedHashMap<>(kept.references()));
    }

    @Override
    public String toString() {
        return String.valueOf(value);
    }
}
