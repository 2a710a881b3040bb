package org.papermath.json.schema;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.papermath.json.tree.ForeignMembers;

/**
 * The schema of an object: its members, those that must be there, and further rules. No member goes in without its
 * meaning, what holds when it is left out, and an example.
 */
public final class SchemaObject {
    /** Parts what a member means from what holds when it is left out. */
    public static final String LEFT_OUT = " If left out: ";

    private final Map<String, Object> members = new LinkedHashMap<>();
    private final List<Object> required = new ArrayList<>();
    private final Map<String, Object> rules = new LinkedHashMap<>();
    private final boolean open;
    private String meaning = "";

    private SchemaObject(boolean open) {
        this.open = open;
    }

    /** An object in which members of others may stand. */
    static SchemaObject object() {
        return new SchemaObject(true);
    }

    /** An object that is closed against members of others too. */
    static SchemaObject closed() {
        return new SchemaObject(false);
    }

    /** A member that must be there. */
    SchemaObject required(String name, Object schema, String meaning, Object... examples) {
        required.add(name);
        members.put(name, described(schema, meaning, Optional.empty(), examples));
        return this;
    }

    /** A member that may be left out. */
    SchemaObject optional(String name, Object schema, String meaning, OmittedMembers leftOut, Object... examples) {
        members.put(name, described(schema, meaning + LEFT_OUT + leftOut.words() + ".", leftOut.value(), examples));
        return this;
    }

    /** A member that is written and read back as it stands; nobody has to give it. */
    SchemaObject figure(String name, Object schema, String meaning) {
        members.put(name, described(schema, meaning, Optional.empty()));
        return this;
    }

    /** The member that says which members there are; it is described where it is asked for. */
    SchemaObject saying(String name) {
        required.add(name);
        members.put(name, true);
        return this;
    }

    /** Describes what the object is. */
    SchemaObject meaning(String words) {
        meaning = words;
        return this;
    }

    /** Puts a description before a schema, and what follows from it behind. */
    static Map<String, Object> described(
            Object schema, String description, Optional<Object> standsFor, Object... examples) {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("description", description);
        Map<?, ?> plain = schema instanceof SchemaObject object ? object.schema() : (Map<?, ?>) schema;
        if (plain instanceof LinkedHashMap) {
            plain.forEach((key, value) -> all.put(key.toString(), value));
        } else {
            new TreeMap<>(plain).forEach((key, value) -> all.put(key.toString(), value));
        }
        all.put("description", description);
        standsFor.ifPresent(value -> all.put("default", value));
        if (examples.length > 0) {
            all.put("examples", List.of(examples));
        }
        return all;
    }

    SchemaObject rule(String keyword, Object value) {
        rules.put(keyword, value);
        return this;
    }

    /** Returns whether there is a member of this name. */
    boolean has(String name) {
        return members.containsKey(name);
    }

    /** Puts the members and rules of another object behind these, and takes over what it is. */
    SchemaObject followedBy(SchemaObject other) {
        members.putAll(other.members);
        required.addAll(other.required);
        rules.putAll(other.rules);
        meaning = other.meaning;
        return this;
    }

    Map<String, Object> schema() {
        Map<String, Object> schema = new LinkedHashMap<>();
        if (!meaning.isEmpty()) {
            schema.put("description", meaning);
        }
        schema.put("type", "object");
        schema.put("properties", members);
        if (!required.isEmpty()) {
            schema.put("required", required);
        }
        if (open) {
            schema.put("patternProperties", Map.of("^(" + ForeignMembers.PREFIX + "|\\$schema$)", true));
        }
        schema.put("additionalProperties", false);
        schema.putAll(rules);
        return schema;
    }
}
