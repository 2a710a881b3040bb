package org.papermath.site;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.papermath.json.PapermathSchemas;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The members of one document as tables, one for each object, made from its schema. */
final class MemberTables {
    private static final String LEFT_OUT = " If left out: ";
    private static final String DEFINITIONS = "#/$defs/";
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private final JsonNode root;
    private final StringBuilder out = new StringBuilder();
    private final Set<String> done = new LinkedHashSet<>();
    private final List<Section> waiting = new ArrayList<>();

    /** An object whose table comes later. */
    private record Section(String title, JsonNode schema) {
        String anchor() {
            return anchor(title);
        }

        static String anchor(String title) {
            return "of-"
                    + title.toLowerCase(Locale.ROOT)
                            .replaceAll("[^a-z0-9]+", "-")
                            .replaceAll("^-|-$", "");
        }
    }

    private MemberTables(JsonNode root) {
        this.root = root;
    }

    /** Returns the tables of a document. */
    static String of(String document) {
        MemberTables tables = new MemberTables(MAPPER.readTree(PapermathSchemas.text(document)));
        tables.table(tables.root, "");
        while (!tables.waiting.isEmpty()) {
            Section next = tables.waiting.remove(0);
            tables.out
                    .append("<h3 id=\"")
                    .append(next.anchor())
                    .append("\">")
                    .append(escape(next.title()))
                    .append("</h3>\n");
            String meaning = next.schema().path("description").asString("").split(LEFT_OUT, 2)[0];
            if (!meaning.isEmpty()) {
                tables.out.append("<p>").append(escape(meaning)).append("</p>\n");
            }
            tables.table(next.schema(), next.title());
        }
        return tables.out.toString();
    }

    private void table(JsonNode schema, String title) {
        boolean figures = !schema.has("additionalProperties");
        out.append("<table class=\"members\">\n<thead><tr><th>member</th><th>what it is</th>"
                + "<th>how it is written</th>");
        // Tables under one another have columns of one width.
        out.insert(
                out.lastIndexOf("<thead>"),
                figures
                        ? "<colgroup><col class=\"c3\"><col class=\"c6\"><col class=\"c6\">"
                                + "<col class=\"c5\"></colgroup>\n"
                        : "<colgroup><col class=\"c3\"><col class=\"c5\"><col class=\"c5\">"
                                + "<col class=\"c4\"><col class=\"c3\"></colgroup>\n");
        out.append(figures ? "" : "<th>if left out</th>").append("<th>example</th></tr></thead>\n<tbody>\n");
        for (Map.Entry<String, JsonNode> member : schema.get("properties").properties()) {
            JsonNode one = member.getValue();
            String path =
                    title.isEmpty() ? member.getKey() : title + (title.endsWith(":") ? " " : " / ") + member.getKey();
            if (one.isBoolean()) {
                cell("member", "<code>" + escape(member.getKey()) + "</code>", true);
                cell("what it is", "The word above.", false);
                cell(
                        "how it is written",
                        "<code>" + escape(quoted(title.substring(title.indexOf(": ") + 2))) + "</code>",
                        false);
                cell("if left out", "Has to be there.", false);
                cell("example", "", false);
                out.append("</tr>\n");
                continue;
            }
            String[] text = one.path("description").asString().split(LEFT_OUT, 2);
            boolean required = schema.path("required")
                    .valueStream()
                    .anyMatch(name -> name.asString().equals(member.getKey()));
            cell("member", "<code>" + escape(member.getKey()) + "</code>", true);
            cell("what it is", escape(text[0]), false);
            cell("how it is written", written(one, path), false);
            if (!figures) {
                cell(
                        "if left out",
                        text.length > 1
                                ? escape(capital(text[1]))
                                : required ? "Has to be there." : "There is nothing to compare.",
                        false);
            }
            List<String> examples = new ArrayList<>();
            one.path("examples").forEach(example -> examples.add("<code>" + escape(json(example)) + "</code>"));
            cell("example", String.join("<br>", examples), false);
            out.append("</tr>\n");
        }
        out.append("</tbody>\n</table>\n");
    }

    private void cell(String head, String html, boolean first) {
        out.append(first ? "<tr>" : "")
                .append("<td data-head=\"")
                .append(head)
                .append("\">")
                .append(html)
                .append("</td>");
    }

    /** Returns how a value is written; the tables of the objects in it follow later. */
    private String written(JsonNode schema, String path) {
        if (schema.has("$ref")) {
            return defined(schema, schema.get("$ref").asString().substring(DEFINITIONS.length()));
        }
        if (schema.has("anyOf")) {
            List<String> forms = new ArrayList<>();
            for (JsonNode one : schema.get("anyOf")) {
                String form = written(one, path);
                if (!forms.contains(form)) {
                    forms.add(form);
                }
            }
            return String.join("; or ", forms);
        }
        if (schema.has("allOf")) {
            return byWord(schema, path);
        }
        if (schema.has("properties") && path.equals("order")) {
            return "<a href=\"order.html\">an order</a>, without its head and its studio";
        }
        if (schema.has("properties")) {
            boolean reference = schema.get("properties").has("ref");
            return reference ? "<a href=\"documents.html#references\">a reference</a>" : object(path, schema);
        }
        if (schema.has("items")) {
            if (schema.path("maxItems").asInt(0) == 2 && schema.path("minItems").asInt(0) == 2) {
                return "list of two: " + written(schema.get("items"), path);
            }
            return "list of " + written(schema.get("items"), path);
        }
        return plain(schema);
    }

    private static String plain(JsonNode schema) {
        if (schema.has("enum")) {
            List<String> words = new ArrayList<>();
            schema.get("enum").forEach(word -> words.add("<code>" + escape(json(word)) + "</code>"));
            return "one of " + String.join(", ", words);
        }
        return switch (schema.path("type").asString("")) {
            case "boolean" -> "<code>true</code> or <code>false</code>";
            case "integer" ->
                "whole number, "
                        + (schema.get("maximum").asLong() >= 1_000_000_000L
                                ? schema.get("minimum").asLong() + " or more"
                                : schema.get("minimum").asLong() + " to "
                                        + schema.get("maximum").asLong());
            case "number" -> "number";
            default -> schema.has("title") ? titled(schema.get("title").asString()) : "text";
        };
    }

    private static String titled(String title) {
        return kind(title).map(MemberTables::units).orElse(escape(title));
    }

    private String defined(JsonNode schema, String name) {
        if (name.equals("text") || name.equals("note")) {
            return "text";
        }
        if (name.equals("day")) {
            return "day";
        }
        if (name.startsWith("inline-")) {
            String document = name.substring("inline-".length());
            return "<a href=\"" + document + ".html\">a " + document + "</a>, without its head";
        }
        JsonNode definition = root.get("$defs").get(name);
        Optional<Kind<?>> kind = kind(definition.path("title").asString(""));
        if (kind.isPresent()) {
            return units(kind.get());
        }
        if (name.startsWith("reading-of-")) {
            String of = definition.get("title").asString().substring("reading of ".length());
            section("reading", definition);
            return "<a href=\"#of-reading\">a reading</a> of " + units(kind(of).orElseThrow());
        }
        if (name.equals("forecast")) {
            section(name, definition);
            return "<a href=\"#of-forecast\">a forecast</a> of "
                    + units(kind(schema.get("title").asString().substring("forecast of ".length()))
                            .orElseThrow());
        }
        if (!definition.has("properties")) {
            return written(definition, name);
        }
        return object(name.replace('-', ' '), definition);
    }

    private String byWord(JsonNode schema, String path) {
        String word = schema.get("properties").propertyNames().iterator().next();
        JsonNode text = schema.get("properties").get(word);
        Set<Set<String>> shapes = new LinkedHashSet<>();
        schema.get("allOf")
                .forEach(one -> shapes.add(Set.copyOf(one.at("/then/properties").propertyNames())));
        List<String> links = new ArrayList<>();
        for (JsonNode one : schema.get("allOf")) {
            String value = one.at("/if/properties/" + word + "/const").asString();
            links.add(section(path + ": " + value, one.get("then")).replaceAll("(?<=>)[^<]*(?=<)", escape(value)));
        }
        if (shapes.size() == 1) {
            // Every word has the same members, and only the kind of one of them differs.
            while (waiting.get(waiting.size() - 1).title().startsWith(path + ": ")) {
                waiting.remove(waiting.size() - 1);
            }
            Map<String, Object> members = new LinkedHashMap<>();
            schema.at("/allOf/0/then/properties")
                    .properties()
                    .forEach(member -> members.put(member.getKey(), member.getValue()));
            members.put(word, text);
            members.put(
                    "value",
                    Map.of(
                            "description",
                            "What was planned.",
                            "title",
                            "a quantity of that kind",
                            "examples",
                            List.of("8.73 g")));
            section(
                    path,
                    MAPPER.valueToTree(Map.of(
                            "additionalProperties",
                            false,
                            "description",
                            "",
                            "properties",
                            members,
                            "required",
                            List.copyOf(members.keySet()))));
            return "<a href=\"#" + Section.anchor(path) + "\">objects</a>";
        }
        return "objects; <code>" + escape(word) + "</code> says which members there are: " + String.join(", ", links);
    }

    private String object(String path, JsonNode schema) {
        return section(path, schema);
    }

    private String section(String title, JsonNode schema) {
        Section section = new Section(title, schema);
        if (done.add(title)) {
            waiting.add(section);
        }
        return "<a href=\"#" + section.anchor() + "\">"
                + escape(title.substring(title.lastIndexOf('/') + 1).strip()) + "</a>";
    }

    private static Optional<Kind<?>> kind(String name) {
        for (Kind<?> kind : Kinds.all()) {
            if (kind.name().equals(name)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }

    private static String units(Kind<?> kind) {
        return escape(kind.name()) + " in <code>" + String.join("</code>, <code>", kind.codes()) + "</code>";
    }

    private static String json(JsonNode value) {
        return value.toString()
                .replace("\",\"", "\", \"")
                .replace("\":", "\": ")
                .replace(",\"", ", \"")
                .replace("\\n", "\\n");
    }

    private static String quoted(String text) {
        return '"' + text + '"';
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private static String escape(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
