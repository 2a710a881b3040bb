package org.papermath.json;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/** What a document holds beside its value: members of others, and the references its parts were read from. */
final class Kept {
    /** What marks a member as somebody else's. */
    static final String PREFIX = "x-";

    /**
     * A member of others.
     *
     * @param after the member it stood behind; none at the beginning of its object
     * @param value the member
     */
    record Member(@Nullable String after, JsonValue value) {
    }

    private final Map<String, List<Member>> byParent = new LinkedHashMap<>();
    private final Map<String, String> references = new LinkedHashMap<>();

    void add(JsonValue object, @Nullable String after, JsonValue value) {
        byParent.computeIfAbsent(object.pointer(), pointer -> new ArrayList<>()).add(new Member(after, value));
    }

    void addReference(String pointer, String reference) {
        references.put(pointer, reference);
    }

    boolean isEmpty() {
        return byParent.isEmpty() && references.isEmpty();
    }

    List<Member> of(String objectPointer) {
        return byParent.getOrDefault(objectPointer, List.of());
    }

    Map<String, String> references() {
        return references;
    }

    Map<String, String> asJson() {
        Map<String, String> map = new LinkedHashMap<>();
        for (List<Member> members : byParent.values()) {
            for (Member member : members) {
                StringBuilder text = new StringBuilder();
                Json.compact(text, member.value());
                map.put(member.value().pointer(), text.toString());
            }
        }
        return map;
    }

    Kept withoutReferences() {
        Kept copy = new Kept();
        copy.byParent.putAll(byParent);
        return copy;
    }
}
