package org.papermath.json.kit;

import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.papermath.json.tree.ForeignMembers;
import org.papermath.json.tree.JsonText;
import org.papermath.json.tree.JsonValue;

/**
 * An object of a document while it is written.
 *
 * <pre>{@code
 * static void felt(ObjectWriter out, Felt felt) {
 *     out.member("name").text(felt.name());
 *     out.member("mass").quantity(felt.mass());
 *     felt.note().ifPresent(note -> out.member("note").text(note));
 * }
 * }</pre>
 */
public final class ObjectWriter {
    private static final int FEW = 16;

    private final StringBuilder text;
    private final ForeignMembers kept;
    private final int level;
    private final String pointer;
    /** The members of others that are not written yet, by the name they stand behind. */
    private final Map<@Nullable String, JsonValue> waiting;

    private String[] few = new String[FEW / 2];
    private int written;
    /** A bit for the hash of every name so far: a new one is rarely taken for an old one. */
    private long seen;

    private Set<String> many = Set.of();
    private boolean first = true;

    ObjectWriter(StringBuilder text, ForeignMembers kept, int level, String pointer) {
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
    public ValueWriter member(String name) {
        if (ForeignMembers.isOfOthers(name)) {
            throw new IllegalArgumentException("a name beginning with x- belongs to others: " + name);
        }
        return new ValueWriter(text, kept, level, kept.isEmpty() ? "" : JsonValue.pointer(pointer, name), this, name);
    }

    void begin(String name) {
        if (written == 0) {
            writeKeptAfter(null);
        }
        if (!isNew(name)) {
            throw new IllegalArgumentException("a member written twice: " + name);
        }
        line(name);
    }

    /** Few names are looked through, many are looked up. */
    private boolean isNew(String name) {
        long bit = 1L << name.hashCode();
        boolean fresh = (seen & bit) == 0 || !isAmong(name);
        seen |= bit;
        if (written == FEW && many.isEmpty()) {
            many = new HashSet<>(Arrays.asList(few));
        }
        if (written >= FEW) {
            many.add(name);
        } else {
            if (written == few.length) {
                few = Arrays.copyOf(few, FEW);
            }
            few[written] = name;
        }
        written++;
        return fresh;
    }

    private boolean isAmong(String name) {
        if (!many.isEmpty()) {
            return many.contains(name);
        }
        for (int i = 0; i < written; i++) {
            if (few[i].equals(name)) {
                return true;
            }
        }
        return false;
    }

    void written(String name) {
        writeKeptAfter(name);
    }

    private void line(String name) {
        if (JsonText.isPlain(name)) {
            text.append(ValueWriter.quoteOnLine(level, first)).append(name).append("\": ");
        } else {
            ValueWriter.line(text, level, first);
            JsonText.quote(text, name);
            text.append(": ");
        }
        first = false;
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
        new ValueWriter(text, new ForeignMembers(), level, "").raw(member);
    }

    /** Writes the members of others whose neighbours are gone, and closes the object. */
    void end() {
        if (!waiting.isEmpty()) {
            waiting.values().forEach(this::writeKept);
        }
        ValueWriter.close(text, level, first, '}');
    }

    @Override
    public String toString() {
        return "object with "
                + (many.isEmpty()
                        ? String.join(", ", Arrays.asList(few).subList(0, written))
                        : String.join(", ", many));
    }
}
