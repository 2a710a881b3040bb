package org.papermath.json;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.papermath.json.tree.ForeignMembers;

/**
 * A value with what its document held beside it: the members of others, whose names begin with {@code x-}, and the
 * references its parts were read from. Writing takes it, so nothing of that is lost. Immutable.
 *
 * @param <T> the type of the value
 */
public final class Document<T> {
    private final T value;
    private final ForeignMembers kept;
    private final List<Fault> notes;
    /** The value as it was read, by which what is kept is found its place again in another one. */
    private final T original;

    Document(T value, ForeignMembers kept, List<Fault> notes) {
        this(value, kept, notes, value);
    }

    private Document(T value, ForeignMembers kept, List<Fault> notes, T original) {
        this.value = value;
        this.kept = kept;
        this.notes = List.copyOf(notes);
        this.original = original;
    }

    /**
     * Makes a document of a value that was not read from one.
     *
     * @param <T> the type of the value
     * @param value the value
     * @return the document
     */
    public static <T> Document<T> of(T value) {
        Objects.requireNonNull(value, "value");
        return new Document<>(value, new ForeignMembers(), List.of());
    }

    /**
     * Returns the value.
     *
     * @return the value
     */
    public T value() {
        return value;
    }

    ForeignMembers kept() {
        return kept;
    }

    T original() {
        return original;
    }

    /** Returns whether the value may be another than was read, so that what is kept has to be found its place again. */
    boolean isEdited() {
        return value != original;
    }

    /**
     * Returns what was read under an old name, and where: accepted, but written under the new one.
     *
     * @return an unmodifiable list in the order of the document
     */
    public List<Fault> notes() {
        return notes;
    }

    /**
     * Returns who wrote the document, if it says so.
     *
     * @return the program and its version
     */
    public Optional<WrittenBy> writtenBy() {
        return kept.writtenBy();
    }

    /**
     * Returns the same document, marked as written by a program.
     *
     * @param program the name of the program
     * @param version its version
     * @return the document
     */
    public Document<T> writtenBy(String program, String version) {
        return new Document<>(value, kept.writtenBy(program, version), notes, original);
    }

    /**
     * Returns the same document around another value. The members of others stay with their objects: an item of a list
     * is known again by what it says, then by its name, wherever it stands now, and by its neighbours if its name was
     * changed. Those whose object is no longer written are left out. References stay too, but for a part that has
     * another name now: use {@link #inlined()} if a part that came from another document was changed.
     *
     * @param other the new value
     * @return the document
     */
    public Document<T> with(T other) {
        return new Document<>(other, kept, notes, original);
    }

    /**
     * Returns the document without its references, so that every part is written in full, with the members of others
     * its own document held; of two of one name that one stays.
     *
     * @return the document
     */
    public Document<T> inlined() {
        return new Document<>(value, kept.withoutReferences(), notes, original);
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
