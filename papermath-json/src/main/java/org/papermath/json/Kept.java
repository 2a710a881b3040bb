package org.papermath.json;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.jspecify.annotations.Nullable;

/** What a document holds beside its value: members of others, and the references its parts were read from. */
final class Kept {
    /** What marks a member as somebody else's. */
    static final String PREFIX = "x-";

    /** By the pointer of an object and the name a member stands behind; no name at the beginning of the object. */
    private final Map<String, Map<@Nullable String, JsonValue>> byParent = new LinkedHashMap<>();
    private final Map<String, String> references = new LinkedHashMap<>();
    /** Where these objects stand by the names of the items around them, so that they are found again in another order. */
    private final Map<String, Identity> identities = new LinkedHashMap<>();
    private @Nullable WrittenBy writtenBy;

    void add(JsonValue object, @Nullable String after, JsonValue value) {
        byParent.computeIfAbsent(object.pointer(), pointer -> new LinkedHashMap<>()).put(after, value);
        identities.computeIfAbsent(object.pointer(), pointer -> Identity.of(object));
    }

    void addReference(JsonValue at, String reference, String name) {
        references.put(at.pointer(), reference);
        identities.put(at.pointer(), Identity.of(at).called(name));
    }

    void writtenBy(WrittenBy who) {
        writtenBy = who;
    }

    Optional<WrittenBy> writtenBy() {
        return Optional.ofNullable(writtenBy);
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
        if (isEmpty()) {
            return this;
        }
        Kept copy = new Kept();
        copy.writtenBy = writtenBy;
        copy.references.putAll(references);
        identities.forEach((pointer, identity) -> copy.identities.put(pointer, identity.detached()));
        byParent.forEach((pointer, members) -> {
            Map<@Nullable String, JsonValue> copies = new LinkedHashMap<>();
            members.forEach((after, member) -> copies.put(after, member.detached()));
            copy.byParent.put(pointer, copies);
        });
        return copy;
    }

    Kept withoutReferences() {
        Kept copy = copy();
        copy.references.clear();
        return copy;
    }

    Kept writtenBy(String program, String version) {
        Kept copy = copy();
        copy.writtenBy = new WrittenBy(program, version);
        return copy;
    }

    private Kept copy() {
        Kept copy = new Kept();
        copy.byParent.putAll(byParent);
        copy.references.putAll(references);
        copy.identities.putAll(identities);
        copy.writtenBy = writtenBy;
        return copy;
    }

    /** Returns what is kept at the places where its objects stand in another document. */
    Kept movedTo(JsonValue root) {
        Kept moved = new Kept();
        moved.writtenBy = writtenBy;
        identities.forEach((pointer, identity) -> identity.findIn(root).ifPresent(place -> {
            moved.identities.put(place, identity);
            if (byParent.containsKey(pointer)) {
                moved.byParent.put(place, byParent.get(pointer));
            }
            if (references.containsKey(pointer)) {
                moved.references.put(place, references.get(pointer));
            }
        }));
        return moved;
    }

    /** The way to an object: by the names of members, and in lists by what the item calls itself. */
    static final class Identity {
        /** What an item calls itself, where it does. */
        private static final List<String> OWN = List.of("name", "id", "fibre", "subject", "at", "figure", "what");

        /** One step of the way: into a member, or to an item of a list with these items in it. */
        private record Step(String name, boolean item, List<String> keys) {
        }

        private final List<Step> steps;
        private @Nullable JsonValue still;
        private final @Nullable String called;

        private Identity(List<Step> steps, @Nullable JsonValue still, @Nullable String called) {
            this.steps = steps;
            this.still = still;
            this.called = called;
        }

        /** The steps are worked out later, when the lists around the object are complete. */
        static Identity of(JsonValue object) {
            return new Identity(List.of(), object, null);
        }

        Identity called(String name) {
            return new Identity(steps, still, name);
        }

        Identity detached() {
            JsonValue object = still;
            if (object == null) {
                return this;
            }
            List<Step> way = new ArrayList<>();
            JsonValue at = object;
            for (JsonValue around = at.parent(); around != null; around = at.parent()) {
                boolean item = around.type() == JsonValue.Type.LIST;
                List<String> keys = item ? new ArrayList<>(keys(around)) : List.of();
                if (item && at == object && called != null) {
                    keys.set(Integer.parseInt(at.step()), called);
                }
                way.add(0, new Step(at.step(), item, keys));
                at = around;
            }
            return new Identity(way, null, null);
        }

        Optional<String> findIn(JsonValue root) {
            JsonValue at = root;
            for (Step step : steps) {
                JsonValue next = step.item() ? item(at, step) : at.member(step.name());
                if (next == null) {
                    return Optional.empty();
                }
                at = next;
            }
            return Optional.of(at.pointer());
        }

        /** Finds the item of the same name, or the one that stands in its place under a new name. */
        private static @Nullable JsonValue item(JsonValue list, Step step) {
            int before = Integer.parseInt(step.name());
            List<String> keys = keys(list);
            int now = keys.indexOf(step.keys().get(before));
            if (now < 0 && before < keys.size() && !step.keys().contains(keys.get(before))) {
                now = before;
            }
            return now < 0 ? null : list.items().get(now);
        }

        private static List<String> keys(JsonValue list) {
            List<String> keys = new ArrayList<>();
            Map<String, Integer> seen = new LinkedHashMap<>();
            for (JsonValue item : list.items()) {
                StringBuilder key = new StringBuilder();
                for (String name : OWN) {
                    JsonValue member = item.member(name);
                    if (member != null && member.type() == JsonValue.Type.TEXT) {
                        key.append(key.isEmpty() ? "" : "\n").append(member.text());
                    }
                }
                int twins = seen.merge(key.toString(), 1, Integer::sum);
                keys.add(twins == 1 && !key.isEmpty() ? key.toString() : key + "\n#" + twins);
            }
            return keys;
        }
    }
}
