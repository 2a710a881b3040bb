package org.papermath.json;

import java.util.LinkedHashMap;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/** What a document holds beside its value: members of others, and the references its parts were read from. */
final class Kept {
    /** What marks a member as somebody else's. */
    static final String PREFIX = "x-";

    /** By the pointer of an object and the name a member stands behind; no name at the beginning of the object. */
    private final Map<String, Map<@Nullable String, JsonValue>> byParent = new LinkedHashMap<>();
    private final Map<String, String> references = new LinkedHashMap<>();

    void add(JsonValue object, @Nullable String after, JsonValue value) {
        byParent.computeIfAbsent(object.pointer(), pointer -> new LinkedHashMap<>()).put(after, value);
    }

    void addReference(String pointer, String reference) {
        references.put(pointer, reference);
    }

    boolean isEmpty() {
        return byParent.isEmpty() && references.isEmpty();
    }

    Map<@Nullable String, JsonValue> of(String objectPointer) {
        return byParent.getOrDefault(objectPointer, Map.of());
    }

    Map<String, String> references() {
        return references;
    }

    Map<String, String> asJson() {
        Map<String, String> map = new LinkedHashMap<>();
        byParent.forEach((pointer, members) -> members.values().forEach(member -> {
            StringBuilder text = new StringBuilder();
            Json.compact(text, member);
            map.put(JsonValue.pointer(pointer, member.step()), text.toString());
        }));
        return map;
    }

    /** Returns a copy that does not hold on to the document it was read from. */
    Kept detached() {
        Kept copy = new Kept();
        copy.references.putAll(references);
        byParent.forEach((pointer, members) -> {
            Map<@Nullable String, JsonValue> copies = new LinkedHashMap<>();
            members.forEach((after, member) -> copies.put(after, member.detached()));
            copy.byParent.put(pointer, copies);
        });
        return copy;
    }

    Kept withoutReferences() {
        Kept copy = new Kept();
        copy.byParent.putAll(byParent);
        return copy;
    }
}
