package org.papermath.json;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/** A JSON value that knows its place. Filled once while reading, never changed afterwards. */
final class JsonValue {
    enum Type {
        OBJECT("an object"), LIST("a list"), TEXT("a text"), NUMBER("a number"), FLAG("true or false"), NULL("null");

        private final String words;

        Type(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    private final Type type;
    private final @Nullable JsonValue parent;
    private final String step;
    private final int line;
    private final int column;
    private final int nameLine;
    private final int nameColumn;
    /** The characters of a text, the digits of a number, or the word of a literal. */
    private final String text;
    private final Map<String, JsonValue> members;
    private final List<JsonValue> items;
    /** The members kept for others, whose names begin with x-. */
    private Map<String, JsonValue> extras = Map.of();

    JsonValue(Type type, @Nullable JsonValue parent, String step, int line, int column, int nameLine, int nameColumn,
            String text) {
        this.type = type;
        this.parent = parent;
        this.step = step;
        this.line = line;
        this.column = column;
        this.nameLine = nameLine;
        this.nameColumn = nameColumn;
        this.text = text;
        this.members = type == Type.OBJECT ? new LinkedHashMap<>() : Map.of();
        this.items = type == Type.LIST ? new ArrayList<>() : List.of();
    }

    Type type() {
        return type;
    }

    @Nullable JsonValue parent() {
        return parent;
    }

    /** Returns the name of the member or the number of the item. */
    String step() {
        return step;
    }

    int line() {
        return line;
    }

    int column() {
        return column;
    }

    int nameLine() {
        return nameLine;
    }

    int nameColumn() {
        return nameColumn;
    }

    String text() {
        return text;
    }

    Map<String, JsonValue> members() {
        return members;
    }

    List<JsonValue> items() {
        return items;
    }

    Map<String, JsonValue> extras() {
        return extras;
    }

    void addExtra(JsonValue extra) {
        if (extras.isEmpty()) {
            extras = new LinkedHashMap<>();
        }
        extras.put(extra.step(), extra);
    }

    String pointer() {
        return parent == null ? "" : pointer(parent.pointer(), step);
    }

    static String pointer(String parent, String step) {
        return parent + "/" + step.replace("~", "~0").replace("/", "~1");
    }

    /** Returns what stands here, shortened and without characters that cannot be shown. */
    String found() {
        return switch (type) {
            case OBJECT, LIST -> type.words();
            case TEXT -> shown(text);
            case NUMBER, FLAG, NULL -> text.length() > 40 ? text.substring(0, 37) + "..." : text;
        };
    }

    static String shown(String text) {
        StringBuilder shown = new StringBuilder();
        int shownChars = Math.min(text.length(), 60);
        for (int i = 0; i < shownChars; i++) {
            char c = text.charAt(i);
            boolean pair = i + 1 < shownChars && Character.isSurrogatePair(c, text.charAt(i + 1));
            if (pair) {
                shown.append(c).append(text.charAt(++i));
            } else if (Character.isSurrogate(c) || Character.isISOControl(c)) {
                shown.append("\\u").append(Json.hex(c));
            } else {
                shown.append(c);
            }
        }
        return text.length() > shownChars ? shown.append("...").toString() : shown.toString();
    }
}
