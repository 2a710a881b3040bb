package org.papermath.json.schema;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.papermath.json.DocumentFormat;
import org.papermath.json.tree.JsonText;

/** The text of a schema: a document with its head, and the definitions of what it refers to. */
public final class SchemaText {
    private SchemaText() {}

    /**
     * Returns the text.
     *
     * @param format the format of the document
     * @param document what stands in it, without the head
     * @param definitions gives what a reference leads to, by its name
     * @return the text, with a line break at its end
     */
    public static String of(DocumentFormat format, SchemaObject document, Function<String, Object> definitions) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.put("$id", "urn:papermath:" + format.name() + ":" + format.version());
        schema.put("title", format.word() + " " + format.version());
        Map<String, Object> body = withHead(document, format).schema();
        schema.putAll(body);
        schema.put("$defs", definitions(body, definitions));
        StringBuilder text = new StringBuilder(16_384);
        print(text, schema, 0);
        return text.append('\n').toString();
    }

    /** Returns a document with its head. */
    private static SchemaObject withHead(SchemaObject document, DocumentFormat format) {
        SchemaObject head = SchemaObject.object()
                .required(
                        "format",
                        SchemaWords.oneOf(List.of(format.word())),
                        "Names the kind of document.",
                        format.word())
                .required(
                        "version",
                        SchemaWords.version(format),
                        "The version of the format it was written by.",
                        format.version());
        if (!document.has("writtenBy")) {
            head.optional(
                    "writtenBy",
                    SchemaWords.writtenBy(),
                    "The program that wrote the document.",
                    OmittedMembers.then("it is not known"));
        }
        return head.followedBy(document);
    }

    /** Returns what is referred to, and what that refers to, in the order of the names. */
    private static Map<String, Object> definitions(Object body, Function<String, Object> definitions) {
        Map<String, Object> all = new LinkedHashMap<>();
        Set<String> wanted = new TreeSet<>();
        references(body, wanted);
        while (!all.keySet().containsAll(wanted)) {
            for (String name : List.copyOf(wanted)) {
                if (!all.containsKey(name)) {
                    Object one = definitions.apply(name);
                    all.put(name, one);
                    references(one, wanted);
                }
            }
        }
        Map<String, Object> sorted = new LinkedHashMap<>();
        wanted.forEach(name -> sorted.put(name, all.get(name)));
        return sorted;
    }

    private static void references(Object schema, Set<String> names) {
        if (schema instanceof Map<?, ?> map) {
            if (map.get("$ref") instanceof String ref) {
                names.add(ref.substring(SchemaWords.REF.length()));
            }
            map.values().forEach(one -> references(one, names));
        } else if (schema instanceof List<?> list) {
            list.forEach(one -> references(one, names));
        } else if (schema instanceof SchemaObject object) {
            references(object.schema(), names);
        }
    }

    private static void print(StringBuilder out, Object value, int level) {
        if (value instanceof SchemaObject object) {
            print(out, object.schema(), level);
        } else if (value instanceof Map<?, ?> map) {
            Map<String, Object> entries = new LinkedHashMap<>();
            // Small maps come in no order of their own.
            List<String> keys = map.keySet().stream().map(String::valueOf).collect(Collectors.toList());
            if (!(map instanceof LinkedHashMap)) {
                keys.sort(null);
            }
            keys.forEach(key -> entries.put(key, map.get(key)));
            block(out, '{', '}', entries.entrySet(), level, entry -> {
                JsonText.quote(out, entry.getKey());
                out.append(": ");
                print(out, entry.getValue(), level + 1);
            });
        } else if (value instanceof List<?> list) {
            block(out, '[', ']', list, level, item -> print(out, item, level + 1));
        } else if (value instanceof String text) {
            JsonText.quote(out, text);
        } else {
            out.append(value);
        }
    }

    private static <T> void block(
            StringBuilder out, char opening, char closing, Iterable<T> items, int level, Consumer<? super T> item) {
        out.append(opening);
        String between = "\n";
        for (T one : items) {
            out.append(between).append("  ".repeat(level + 1));
            item.accept(one);
            between = ",\n";
        }
        if (between.length() > 1) {
            out.append('\n').append("  ".repeat(level));
        }
        out.append(closing);
    }
}
