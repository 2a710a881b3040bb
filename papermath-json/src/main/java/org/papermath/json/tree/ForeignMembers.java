package org.papermath.json.tree;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.papermath.json.WrittenBy;

/** What a document holds beside its value: members of others, and the references its parts were read from. */
public final class ForeignMembers {
    /** What marks a member as somebody else's. */
    public static final String PREFIX = "x-";

    /** Names the schema of a document to editors, which is nothing of the document's own. */
    public static final String SCHEMA = "$schema";

    public static boolean isOfOthers(String name) {
        return !name.isEmpty() && (name.charAt(0) == 'x' ? name.startsWith(PREFIX) : name.equals(SCHEMA));
    }

    /** By the pointer of an object and the name a member stands behind; no name at the beginning of the object. */
    private final Map<String, Map<@Nullable String, JsonValue>> byParent = new LinkedHashMap<>();

    private final Map<String, String> references = new LinkedHashMap<>();
    /** What the documents hold that were referred to, by the pointer of the reference. */
    private final Map<String, ForeignMembers> elsewhere = new LinkedHashMap<>();

    private @Nullable WrittenBy writtenBy;

    void add(JsonValue object, @Nullable String after, JsonValue value) {
        byParent.computeIfAbsent(object.pointer(), pointer -> new LinkedHashMap<>())
                .put(after, value);
    }

    public void addReference(JsonValue at, String reference, ForeignMembers there) {
        references.put(at.pointer(), reference);
        elsewhere.put(at.pointer(), there);
    }

    /** Returns whether members of others stand in the object of a pointer itself. */
    public boolean isIn(String pointer) {
        return byParent.containsKey(pointer);
    }

    /** Takes what is kept in the items of a list to where these are written: elsewhere, or nowhere below 0. */
    public void reorder(String list, int[] to) {
        Map<String, Map<@Nullable String, JsonValue>> moved = new LinkedHashMap<>();
        byParent.forEach((pointer, members) -> {
            String[] rest = pointer.startsWith(list + "/")
                    ? pointer.substring(list.length() + 1).split("/", 2)
                    : new String[0];
            int now = rest.length == 0 ? 0 : to[Integer.parseInt(rest[0])];
            if (rest.length == 0) {
                moved.put(pointer, members);
            } else if (now >= 0) {
                moved.put(list + "/" + now + (rest.length == 1 ? "" : "/" + rest[1]), members);
            }
        });
        byParent.clear();
        byParent.putAll(moved);
    }

    public void writtenBy(WrittenBy who) {
        writtenBy = who;
    }

    public Optional<WrittenBy> writtenBy() {
        return Optional.ofNullable(writtenBy);
    }

    public boolean isEmpty() {
        return byParent.isEmpty() && references.isEmpty();
    }

    public Map<@Nullable String, JsonValue> of(String objectPointer) {
        return byParent.getOrDefault(objectPointer, Map.of());
    }

    public Map<String, String> references() {
        return references;
    }

    public Map<String, String> asJson() {
        Map<String, String> map = new LinkedHashMap<>();
        byParent.forEach((pointer, members) -> members.values()
                .forEach(member -> map.put(JsonValue.pointer(pointer, member.step()), member.compact())));
        return map;
    }

    /** Returns a copy that does not hold on to the document it was read from. */
    public ForeignMembers detached() {
        if (isEmpty()) {
            return this;
        }
        ForeignMembers copy = new ForeignMembers();
        copy.writtenBy = writtenBy;
        copy.references.putAll(references);
        elsewhere.forEach((pointer, there) -> copy.elsewhere.put(pointer, there.detached()));
        byParent.forEach((pointer, members) -> {
            Map<@Nullable String, JsonValue> copies = new LinkedHashMap<>();
            members.forEach((after, member) -> copies.put(after, member.detached()));
            copy.byParent.put(pointer, copies);
        });
        return copy;
    }

    /** Returns what is kept where every part is written in full: the parts bring what their own documents held. */
    public ForeignMembers withoutReferences() {
        ForeignMembers copy = copy();
        copy.references.clear();
        copy.elsewhere.clear();
        elsewhere.forEach((place, there) -> there.withoutReferences().byParent.forEach((pointer, members) -> {
            // A part has no head, and so nobody who wrote it.
            if (!pointer.equals("/writtenBy")) {
                copy.byParent.put(place + pointer, joined(members, byParent.getOrDefault(place + pointer, Map.of())));
            }
        }));
        return copy;
    }

    /** Puts members behind others, but for those of a name that is there already. */
    private static Map<@Nullable String, JsonValue> joined(
            Map<@Nullable String, JsonValue> first, Map<@Nullable String, JsonValue> second) {
        Map<@Nullable String, JsonValue> all = new LinkedHashMap<>(first);
        String after = null;
        for (JsonValue member : second.values()) {
            if (first.values().stream().noneMatch(one -> one.step().equals(member.step()))) {
                while (all.containsKey(after)) {
                    after = all.get(after).step();
                }
                all.put(after, member);
            }
        }
        return all;
    }

    public ForeignMembers writtenBy(String program, String version) {
        ForeignMembers copy = copy();
        copy.writtenBy = new WrittenBy(program, version);
        return copy;
    }

    private ForeignMembers copy() {
        ForeignMembers copy = new ForeignMembers();
        copy.byParent.putAll(byParent);
        copy.references.putAll(references);
        copy.elsewhere.putAll(elsewhere);
        copy.writtenBy = writtenBy;
        return copy;
    }

    /** Returns what is kept at the places where its objects stand in another document. */
    public ForeignMembers movedBy(ListMatching moves) {
        ForeignMembers moved = new ForeignMembers();
        moved.writtenBy = writtenBy;
        byParent.forEach(
                (pointer, members) -> moves.of(pointer, false).ifPresent(place -> moved.byParent.put(place, members)));
        // A part under a new name is not what its reference leads to.
        references.forEach((pointer, reference) ->
                moves.of(pointer, true).ifPresent(place -> moved.references.put(place, reference)));
        return moved;
    }
}
