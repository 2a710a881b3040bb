package org.papermath.json.tree;

import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Name;

/** A JSON value that knows its place. Filled once while reading; later only asked for. */
public final class JsonValue {
    public enum Type {
        OBJECT("an object"),
        LIST("a list"),
        TEXT("a text"),
        NUMBER("a number"),
        FLAG("true or false"),
        NULL("null");

        private final String words;

        Type(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** What stands in an object or a list. */
    private static final class Inside {
        static final Inside NOTHING = new Inside(0);
        private static final int FEW = 12;

        /** The members of an object or the items of a list, as they are written. */
        private JsonValue[] values;

        private int count;
        /** A bit for the hash of every name: most names that are not here are seen to be missing at once. */
        private long bits;
        /** Where the next name asked for is likely to stand. */
        private int next;
        /** The members by name, once there are so many that looking through them takes longer. */
        private @Nullable Map<String, JsonValue> byName;
        /** The members kept for others, whose names begin with x-. */
        private Map<String, JsonValue> extras = Map.of();

        Inside(int room) {
            values = new JsonValue[room];
        }

        void add(JsonValue value) {
            if (count == values.length) {
                values = Arrays.copyOf(values, 2 * count);
            }
            values[count++] = value;
        }

        void addMember(JsonValue member, String name) {
            add(member);
            bits |= 1L << name.hashCode();
            if (count > FEW) {
                Map<String, JsonValue> index = byName;
                if (index == null) {
                    index = new HashMap<>();
                    for (int i = 0; i < count; i++) {
                        index.put(values[i].step(), values[i]);
                    }
                    byName = index;
                }
                index.put(name, member);
            }
        }

        @Nullable
        JsonValue member(String wanted) {
            int hash = wanted.hashCode();
            if ((bits & 1L << hash) == 0) {
                return null;
            }
            Map<String, JsonValue> index = byName;
            if (index != null) {
                return index.get(wanted);
            }
            // Members are mostly asked for in the order they are written in.
            for (int i = next; i < count; i++) {
                if (values[i].isCalled(wanted, hash)) {
                    next = i + 1;
                    return values[i];
                }
            }
            for (int i = 0; i < next; i++) {
                if (values[i].isCalled(wanted, hash)) {
                    return values[i];
                }
            }
            return null;
        }
    }

    private final Type type;
    private final @Nullable JsonValue parent;
    /** The name of a member; null for an item and for the document itself. */
    private final @Nullable String name;

    private final int index;
    private final LineIndex places;
    private final int number;
    /** The characters of a text, the digits of a number, or the word of a literal. */
    private final String text;

    private final Inside inside;
    private boolean asked;
    /** Items of a list that were only counted. */
    private int unheld;

    private JsonValue(
            Type type,
            @Nullable JsonValue parent,
            @Nullable String name,
            int index,
            LineIndex places,
            int number,
            String text) {
        this.type = type;
        this.parent = parent;
        this.name = name;
        this.index = index;
        this.places = places;
        this.number = number;
        this.text = text;
        this.inside = type == Type.OBJECT ? new Inside(Inside.FEW) : type == Type.LIST ? new Inside(4) : Inside.NOTHING;
    }

    static JsonValue root(Type type, LineIndex places, int number, String text) {
        return new JsonValue(type, null, null, 0, places, number, text);
    }

    /** Returns a plain value that stands in no document. */
    public static JsonValue of(Type type, String text) {
        return new JsonValue(type, null, null, 0, new LineIndex(null), 0, text);
    }

    /** Returns an object that stands in no document. */
    public static JsonValue object(Map<String, JsonValue> members) {
        JsonValue object = of(Type.OBJECT, "");
        members.forEach((name, one) -> object.addMember(object.copy(one, name), name));
        return object;
    }

    /** Returns a list that stands in no document. */
    public static JsonValue list(List<JsonValue> items) {
        JsonValue list = of(Type.LIST, "");
        items.forEach(one -> list.addItem(list.copy(one, null)));
        return list;
    }

    /** Makes a value that belongs into this one: under a name, or as the next item. */
    JsonValue part(Type its, @Nullable String under, int numbered, String content) {
        return new JsonValue(its, this, under, inside.count, places, numbered, content);
    }

    public Type type() {
        return type;
    }

    public @Nullable JsonValue parent() {
        return parent;
    }

    /** Returns the name of the member or the number of the item; nothing for the document itself. */
    public String step() {
        return name != null ? name : parent == null ? "" : Integer.toString(index);
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

    public String text() {
        return text;
    }

    public List<JsonValue> members() {
        return type == Type.OBJECT ? inside() : List.of();
    }

    public List<JsonValue> items() {
        return type == Type.LIST ? inside() : List.of();
    }

    /** Returns how many members or items there are. */
    public int size() {
        return inside.count;
    }

    /** Returns how many items there are behind those that are held. */
    public int unheld() {
        return unheld;
    }

    void addUnheld(int items) {
        unheld += items;
    }

    public JsonValue at(int place) {
        return inside.values[place];
    }

    private List<JsonValue> inside() {
        return Collections.unmodifiableList(Arrays.asList(inside.values).subList(0, inside.count));
    }

    public @Nullable JsonValue member(String wanted) {
        return inside.member(wanted);
    }

    /** Hashes of names are at hand, and most of them differ. */
    private boolean isCalled(String wanted, int hash) {
        return name != null && name.hashCode() == hash && name.equals(wanted);
    }

    void addItem(JsonValue item) {
        inside.add(item);
    }

    void addMember(JsonValue member, String its) {
        inside.addMember(member, its);
    }

    public void ask() {
        asked = true;
    }

    public boolean isAsked() {
        return asked;
    }

    /** Returns whether somebody asked for every member. */
    public boolean isAllAsked() {
        for (int i = 0; i < inside.count; i++) {
            if (!inside.values[i].asked) {
                return false;
            }
        }
        return true;
    }

    public Map<String, JsonValue> extras() {
        return inside.extras;
    }

    void addExtra(JsonValue extra) {
        if (inside.extras.isEmpty()) {
            inside.extras = new LinkedHashMap<>();
        }
        inside.extras.put(extra.step(), extra);
    }

    public String pointer() {
        return parent == null ? "" : pointer(parent.pointer(), step());
    }

    public static String pointer(String parent, String step) {
        return parent + "/" + step.replace("~", "~0").replace("/", "~1");
    }

    /** Returns a copy that holds on to nothing of the document around it, nor to its text; its name stays. */
    public JsonValue detached() {
        return new JsonValue(type, null, name, index, new LineIndex(null), 0, text).with(this);
    }

    /** Makes a copy that belongs into this one. */
    private JsonValue copy(JsonValue other, @Nullable String under) {
        return part(other.type, under, 0, other.text).with(other);
    }

    private JsonValue with(JsonValue other) {
        for (JsonValue member : other.members()) {
            addMember(copy(member, member.name), member.step());
        }
        for (JsonValue item : other.items()) {
            addItem(copy(item, null));
        }
        return this;
    }

    /** Returns what stands here, shortened and without characters that cannot be shown. */
    public String found() {
        return switch (type) {
            case OBJECT, LIST -> type.words();
            case TEXT -> shown(text);
            case NUMBER, FLAG, NULL -> text.length() > 40 ? text.substring(0, 37) + "..." : text;
        };
    }

    /** Writes the value on one line, for people and comparisons. */
    String compact() {
        StringBuilder out = new StringBuilder();
        compact(out);
        return out.toString();
    }

    private void compact(StringBuilder out) {
        switch (type) {
            case OBJECT -> {
                out.append('{');
                String between = "";
                for (JsonValue member : members()) {
                    out.append(between);
                    JsonText.quote(out, member.step());
                    out.append(": ");
                    member.compact(out);
                    between = ", ";
                }
                out.append('}');
            }
            case LIST -> {
                out.append('[');
                String between = "";
                for (JsonValue item : items()) {
                    out.append(between);
                    item.compact(out);
                    between = ", ";
                }
                out.append(']');
            }
            case TEXT -> JsonText.quote(out, text);
            case NUMBER, FLAG, NULL -> out.append(text);
        }
    }

    public static String shown(String text) {
        return Name.shown(text);
    }
}
