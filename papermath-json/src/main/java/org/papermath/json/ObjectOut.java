package org.papermath.json;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.jspecify.annotations.Nullable;

/**
 * An object of a document while it is written.
 *
 * <pre>{@code
 * static void felt(ObjectOut out, Felt felt) {
 *     out.member("name").text(felt.name());
 *     out.member("mass").quantity(felt.mass());
 *     felt.note().ifPresent(note -> out.member("note").text(note));
 * }
 * }</pre>
 */
public final class ObjectOut {
    private static final int FEW = 16;

    private final StringBuilder text;
    private final Kept kept;
    private final int level;
    private final String pointer;
    private final Map<@Nullable String, JsonValue> waiting;
    private final List<String> few = new ArrayList<>();
    private Set<String> many = Set.of();

    ObjectOut(StringBuilder text, Kept kept, int level, String pointer) {
        this.text = text;
        this.kept = kept;
        this.level = level;
        this.pointer = pointer;
        this.waiting = kept.isEmpty() ? Map.of() : new LinkedHashMap<>(kept.of(pointer));
    }

    /**
     * Begins a member. Nothing is written until its value is.
     *
     * @param name the name, not used before in this object and not beginning with {@code x-}
     * @return where to write the value
     * @throws IllegalArgumentException if the name cannot be used
     */
    public ValueOut member(String name) {
        if (name.startsWith(Kept.PREFIX)) {
            throw new IllegalArgumentException("a name beginning with x- belongs to others: " + name);
        }
        return new ValueOut(text, kept, level, kept.isEmpty() ? "" : JsonValue.pointer(pointer, name), this, name);
    }

    void begin(String name) {
        if (few.isEmpty()) {
            writeKeptAfter(null);
        }
        if (!isNew(name)) {
            throw new IllegalArgumentException("a member written twice: " + name);
        }
        line(name);
    }

    /** Few names are looked through, many are looked up. */
    private boolean isNew(String name) {
        if (few.size() < FEW) {
            return !few.contains(name) && few.add(name);
        }
        if (many.isEmpty()) {
            many = new HashSet<>(few);
        }
        return many.add(name);
    }

    void written(String name) {
        writeKeptAfter(name);
    }

    private void line(String name) {
        ValueOut.line(text, level, text.charAt(text.length() - 1) == '{');
        Json.quote(text, name);
        text.append(": ");
    }

    private void writeKeptAfter(@Nullable String before) {
        if (waiting.isEmpty()) {
            return;
        }
        JsonValue member = waiting.remove(before);
        while (member != null) {
            writeKept(member);
            member = waiting.remove(member.step());
        }
    }

    private void writeKept(JsonValue member) {
        line(member.step());
        new ValueOut(text, new Kept(), level, "").raw(member);
    }

    /** Writes the members of others whose neighbours are gone. */
    void end() {
        waiting.values().forEach(this::writeKept);
    }

    @Override
    public String toString() {
        return "object with " + String.join(", ", many.isEmpty() ? few : many);
    }
}
