package org.papermath.json;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The schema of an object: its members, those that must be there, and further rules. */
final class SchemaObject {
    private final Map<String, Object> members = new LinkedHashMap<>();
    private final List<Object> required = new ArrayList<>();
    private final Map<String, Object> rules = new LinkedHashMap<>();
    private final boolean open;

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

    SchemaObject required(String name, Object schema) {
        required.add(name);
        return optional(name, schema);
    }

    SchemaObject optional(String name, Object schema) {
        members.put(name, schema);
        return this;
    }

    SchemaObject rule(String keyword, Object value) {
        rules.put(keyword, value);
        return this;
    }

    /** Returns the same object at the top of a document, with its head. */
    SchemaObject withHead(DocumentFormat format) {
        SchemaObject whole = object()
                .required("format", SchemaText.oneOf(List.of(format.word())))
                .required("version", SchemaText.version(format));
        boolean named = members.containsKey("writtenBy");
        if (!named) {
            whole.optional("writtenBy", SchemaText.writtenBy());
        }
        whole.members.putAll(members);
        whole.required.addAll(required);
        whole.rules.putAll(rules);
        return whole;
    }

    Map<String, Object> schema() {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("type", "object");
        schema.put("properties", members);
        if (!required.isEmpty()) {
            schema.put("required", required);
        }
        if (open) {
            schema.put("patternProperties", Map.of("^" + Kept.PREFIX, true));
        }
        schema.put("additionalProperties", false);
        schema.putAll(rules);
        return schema;
    }
}
