package org.papermath.json;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/** A JSON value that knows its place. Filled once while reading; later only asked for. */
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

    private static final int FEW = 12;

    private final Type type;
    private final @Nullable JsonValue parent;
    private final String step;
    private final Places places;
    private final int number;
    /** The characters of a text, the digits of a number, or the word of a literal. */
    private final String text;
    private final List<JsonValue> members;
    /** The members by name, once there are so many that looking through them takes longer. */
    private @Nullable Map<String, JsonValue> byName;
    private final List<JsonValue> items;
    /** The members kept for others, whose names begin with x-. */
    private Map<String, JsonValue> extras = Map.of();
    private boolean asked;

    JsonValue(Type type, @Nullable JsonValue parent, String step, Places places, int number, String text) {
        this.type = type;
        this.parent = parent;
        this.step = step;
        this.places = places;
        this.number = number;
        this.text = text;
        this.members = type == Type.OBJECT ? new ArrayList<>() : List.of();
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
        return places.line(number);
    }

    int column() {
        return places.column(number);
    }

    int nameLine() {
        return places.nameLine(number);
    }

    int nameColumn() {
        return places.nameColumn(number);
    }

    String text() {
        return text;
    }

    List<JsonValue> members() {
        return members;
    }

    @Nullable JsonValue member(String name) {
        Map<String, JsonValue> index = byName;
        if (index != null) {
            return index.get(name);
        }
        // Hashes of names are at hand, and tell most of them apart.
        int hash = name.hashCode();
        for (int i = 0; i < members.size(); i++) {
            JsonValue member = members.get(i);
            if (member.step.hashCode() == hash && member.step.equals(name)) {
                return member;
            }
        }
        return null;
    }

    void addMember(JsonValue member) {
        members.add(member);
        if (members.size() > FEW) {
            Map<String, JsonValue> index = byName;
            if (index == null) {
                index = new HashMap<>();
                for (JsonValue one : members) {
                    index.put(one.step, one);
                }
                byName = index;
            }
            index.put(member.step, member);
        }
    }

    List<JsonValue> items() {
        return items;
    }

    void ask() {
        asked = true;
    }

    boolean isAsked() {
        return asked;
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

    /** Returns a copy that holds on to nothing of the document around it, nor to its text. */
    JsonValue detached() {
        return copy(null, new Places(null));
    }

    private JsonValue copy(@Nullable JsonValue newParent, Places nowhere) {
        JsonValue copy = new JsonValue(type, newParent, step, nowhere, 0, text);
        members.forEach(member -> copy.addMember(member.copy(copy, nowhere)));
        items.forEach(item -> copy.items.add(item.copy(copy, nowhere)));
        return copy;
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
