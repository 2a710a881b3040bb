package org.papermath.json.tree;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.papermath.json.FaultCodes;
import org.papermath.json.Renamed;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.core.json.JsonFactory;

/** Reads bytes into values that know their places. Faults go to the source; a fault in the grammar ends the reading. */
public final class JsonTree {
    /** The greatest document read, in bytes: 8 MiB. */
    public static final int MOST_BYTES = 8 * 1024 * 1024;
    /** How many objects and lists may stand in one another. */
    public static final int MOST_LEVELS = 64;
    /** More items than this of a list known to be short are only counted. */
    public static final int MANY = 1000;
    /** The longest text read as a quantity, in characters. */
    public static final int MOST_QUANTITY = 100;

    public static final int MOST_TEXT = 100_000;
    private static final int MOST_NAME = 500;
    private static final int MOST_DIGITS = 100;
    private static final String MARK = "\uFEFF";
    /** The bytes of a byte order mark. */
    private static final int MARK_BYTES = 3;

    private static final String HALF =
            " has half of a character written as \\u...; write both halves or the character itself.";

    private static final JsonFactory FACTORY = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(MOST_LEVELS + 2)
                    .maxStringLength(MOST_TEXT)
                    .maxNameLength(MOST_NAME)
                    .maxNumberLength(10 * MOST_DIGITS)
                    .build())
            .build();

    private final Source source;
    private final JsonParser parser;
    private final LineIndex places;
    private final List<Renamed> renamed;
    /** Whether there are escapes: only such a one can leave half a character. */
    private final boolean escapes;

    private int numbered;

    /** Ends the reading after a fault that leaves nothing to go on with. */
    private static final class Stop extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Stop() {
            super(null, null, false, false);
        }
    }

    private JsonTree(Source source, JsonParser parser, LineIndex places, List<Renamed> renamed, boolean escapes) {
        this.escapes = escapes;
        this.source = source;
        this.parser = parser;
        this.places = places;
        this.renamed = renamed;
    }

    /** Reads a whole document; empty after a fault that ends the reading. */
    public static Optional<JsonValue> read(byte[] bytes, Source source, List<Renamed> renamed) {
        if (bytes.length > MOST_BYTES) {
            source.fault(
                    "",
                    1,
                    1,
                    FaultCodes.SIZE,
                    bytes.length + " bytes",
                    List.of(),
                    "",
                    "the document has " + bytes.length + " bytes; at most " + MOST_BYTES + " are read.");
            return Optional.empty();
        }
        String text = new String(bytes, StandardCharsets.UTF_8);
        // What cannot be decoded is replaced by this sign, which may also be written.
        if (text.indexOf('\uFFFD') >= 0 && !isUtf8(bytes, source)) {
            return Optional.empty();
        }
        boolean mark = text.startsWith(MARK);
        return read(bytes, mark ? MARK_BYTES : 0, text.substring(mark ? 1 : 0), source, renamed);
    }

    private static boolean isUtf8(byte[] bytes, Source source) {
        CharBuffer text = CharBuffer.allocate(bytes.length);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CoderResult result = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT)
                .decode(in, text, true);
        if (!result.isError()) {
            return true;
        }
        text.flip();
        int[] place = place(text.array(), text.limit());
        String more = bytes.length > 1
                        && ((bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF)
                                || (bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE))
                ? " It looks like UTF-16."
                : "";
        String found = "byte " + Integer.toHexString(bytes[in.position()] & 0xFF);
        source.fault(
                "",
                place[0],
                place[1],
                FaultCodes.ENCODING,
                found,
                List.of("UTF-8"),
                "",
                "the bytes are not UTF-8 here (" + found + ")." + more + " Save the file as UTF-8.");
        return false;
    }

    /** Reads the bytes; only to say where a fault stands the text is gone through again. */
    private static Optional<JsonValue> read(
            byte[] bytes, int start, String text, Source source, List<Renamed> renamed) {
        if (text.indexOf('\0') >= 0 || text.startsWith(MARK)) {
            // No JSON has these, and the reader of bytes would take them for another encoding or pass over them.
            broken(text, source, 1, 1);
            return Optional.empty();
        }
        JsonParser parser = FACTORY.createParser(ObjectReadContext.empty(), bytes, start, bytes.length - start);
        LineIndex places = new LineIndex(() -> FACTORY.createParser(ObjectReadContext.empty(), text));
        JsonTree tree = new JsonTree(source, parser, places, renamed, text.indexOf('\\') >= 0);
        try (parser) {
            JsonToken first = parser.nextToken();
            if (first == null) {
                source.fault("", 1, 1, FaultCodes.EMPTY, "", List.of(), "", "the document is empty.");
                return Optional.empty();
            }
            JsonValue root = tree.value(null, null, null, 1, false);
            int behind = start + (int) parser.currentLocation().getByteOffset();
            if (!isBlank(bytes, behind)) {
                char[] all = text.toCharArray();
                int at = skipBlank(
                        all, new String(bytes, start, behind - start, StandardCharsets.UTF_8).length(), all.length);
                int[] place = place(all, 0, at);
                source.fault(
                        "",
                        place[0],
                        place[1],
                        FaultCodes.TRAILING,
                        shown(all, at, all.length),
                        List.of(),
                        "",
                        "the document is at its end, but more text follows. Take it away.");
            }
            return Optional.of(root);
        } catch (Stop e) {
            return Optional.empty();
        } catch (JacksonException e) {
            TokenStreamLocation at = parser.currentLocation();
            broken(text, source, at.getLineNr(), at.getColumnNr());
            return Optional.empty();
        }
    }

    private static boolean isBlank(byte[] bytes, int from) {
        for (int i = from; i < bytes.length; i++) {
            if (!isBlank((char) bytes[i])) {
                return false;
            }
        }
        return true;
    }

    /** Goes through a text that cannot be read to its end, to the place where it breaks; else that is about here. */
    private static void broken(String text, Source source, int line, int column) {
        char[] all = text.toCharArray();
        try (JsonParser parser = FACTORY.createParser(ObjectReadContext.empty(), all, 0, all.length)) {
            try {
                for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                    parser.getString();
                }
            } catch (StreamConstraintsException e) {
                limit(parser.currentLocation(), source);
                return;
            } catch (JacksonException e) {
                syntax(all, 0, all.length, e, source);
                return;
            }
        }
        source.fault("", line, column, FaultCodes.SYNTAX, "", List.of(), "", "this is not JSON here.");
    }

    /** Reads the value an embedder's parser stands at. */
    public static Optional<JsonValue> readCurrent(JsonParser parser, Source source) {
        try {
            return Optional.of(new JsonTree(source, parser, new LineIndex(null), List.of(), true)
                    .value(null, null, null, 1, false));
        } catch (Stop e) {
            return Optional.empty();
        }
    }

    private static void limit(TokenStreamLocation at, Source source) {
        source.fault(
                "",
                at.getLineNr(),
                at.getColumnNr(),
                FaultCodes.LIMIT,
                "",
                List.of(),
                "",
                "a text, a name or a number is longer than is read: at most " + MOST_TEXT + " characters for a text, "
                        + MOST_NAME + " for a name, " + MOST_DIGITS + " for a number.");
    }

    private JsonValue value(
            @Nullable JsonValue around,
            @Nullable String under,
            @Nullable TokenStreamLocation name,
            int level,
            boolean ofOthers) {
        if (places.isAddedWhileReading()) {
            places.add(parser.currentTokenLocation(), name);
        }
        return switch (parser.currentToken()) {
            case VALUE_STRING -> text(around, under);
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> number(around, under);
            case START_OBJECT -> {
                JsonValue object = made(JsonValue.Type.OBJECT, around, under, "");
                members(object, deeper(object, level), ofOthers);
                yield object;
            }
            case START_ARRAY -> {
                JsonValue list = made(JsonValue.Type.LIST, around, under, "");
                items(list, deeper(list, level), ofOthers);
                yield list;
            }
            case VALUE_TRUE, VALUE_FALSE -> made(JsonValue.Type.FLAG, around, under, parser.getString());
            case VALUE_NULL, VALUE_EMBEDDED_OBJECT, NOT_AVAILABLE, END_ARRAY, END_OBJECT, PROPERTY_NAME ->
                made(JsonValue.Type.NULL, around, under, parser.getString());
        };
    }

    private JsonValue made(JsonValue.Type type, @Nullable JsonValue around, @Nullable String under, String text) {
        int number = numbered++;
        return around == null ? JsonValue.root(type, places, number, text) : around.part(type, under, number, text);
    }

    private JsonValue text(@Nullable JsonValue around, @Nullable String under) {
        String text = parser.getString();
        JsonValue value = made(JsonValue.Type.TEXT, around, under, text);
        if (escapes && hasHalfCharacter(text)) {
            source.fault(value, FaultCodes.CHARACTER, value.found(), List.of(), "", "the text" + HALF);
        }
        return value;
    }

    private JsonValue number(@Nullable JsonValue around, @Nullable String under) {
        String text = parser.getString();
        JsonValue value = made(JsonValue.Type.NUMBER, around, under, text);
        if (text.length() > MOST_DIGITS) {
            source.fault(
                    value,
                    FaultCodes.NUMBER,
                    value.found(),
                    List.of(),
                    "",
                    "the number has " + text.length() + " characters; at most " + MOST_DIGITS + " are read.");
        }
        return value;
    }

    private int deeper(JsonValue value, int level) {
        if (level > MOST_LEVELS) {
            source.fault(
                    value,
                    FaultCodes.DEPTH,
                    "",
                    List.of(),
                    "",
                    "objects and lists stand more than " + MOST_LEVELS + " deep here.");
            throw new Stop();
        }
        return level + 1;
    }

    private void members(JsonValue object, int level, boolean ofOthers) {
        String before = null;
        for (String written = parser.nextName(); written != null; written = parser.nextName()) {
            Renamed other = renamed.isEmpty() ? null : renamed(object, written);
            String name = other == null ? written : other.now();
            TokenStreamLocation at = places.isAddedWhileReading() ? parser.currentTokenLocation() : null;
            boolean kept = !ofOthers && ForeignMembers.isOfOthers(name);
            parser.nextToken();
            JsonValue member = value(object, name, at, level, ofOthers || kept);
            JsonValue twin = kept ? object.extras().get(name) : object.member(name);
            if (twin != null) {
                source.faultAtName(
                        member,
                        FaultCodes.DUPLICATE,
                        List.of(),
                        "",
                        "\"" + JsonValue.shown(name)
                                + "\" is written twice in one object; first in line " + twin.nameLine() + ", column "
                                + twin.nameColumn() + ". Take one away.",
                        "firstLine",
                        twin.nameLine(),
                        "firstColumn",
                        twin.nameColumn());
                continue;
            }
            if (escapes && hasHalfCharacter(name)) {
                source.faultAtName(member, FaultCodes.CHARACTER, List.of(), "", "the name" + HALF);
            }
            if (kept) {
                object.addExtra(member);
                source.kept().add(object, before, member);
            } else {
                object.addMember(member, name);
            }
            if (other != null) {
                source.renamed(member, other);
            }
            before = name;
        }
    }

    private @Nullable Renamed renamed(JsonValue object, String name) {
        for (Renamed one : renamed) {
            if (one.old().equals(name) && one.object().equals(pattern(object))) {
                return one;
            }
        }
        return null;
    }

    private static String pattern(JsonValue value) {
        JsonValue around = value.parent();
        return around == null
                ? ""
                : JsonValue.pointer(pattern(around), around.type() == JsonValue.Type.LIST ? "*" : value.step());
    }

    private void items(JsonValue list, int level, boolean ofOthers) {
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            if (!ofOthers && list.size() >= MANY && source.session().isShort(pattern(list))) {
                countTheRest(list);
                return;
            }
            list.addItem(value(list, null, null, level, ofOthers));
        }
    }

    /** Goes on to the end of a list without holding what stands in it. The parser stands at an item. */
    private void countTheRest(JsonValue list) {
        int deep = 0;
        int more = 0;
        for (JsonToken token = parser.currentToken();
                deep > 0 || token != JsonToken.END_ARRAY;
                token = parser.nextToken()) {
            if (token == JsonToken.END_ARRAY || token == JsonToken.END_OBJECT) {
                deep--;
                continue;
            }
            if (token == JsonToken.PROPERTY_NAME) {
                continue;
            }
            more += deep == 0 ? 1 : 0;
            numbered++;
            deep += token == JsonToken.START_ARRAY || token == JsonToken.START_OBJECT ? 1 : 0;
        }
        list.addUnheld(more);
    }

    private static boolean hasHalfCharacter(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (Character.isSurrogate(c)) {
                if (i + 1 >= text.length() || !Character.isSurrogatePair(c, text.charAt(i + 1))) {
                    return true;
                }
                i++;
            }
        }
        return false;
    }

    /** Returns in plain words what is wrong at the place where the grammar broke. */
    private static void syntax(char[] text, int start, int end, JacksonException e, Source source) {
        TokenStreamLocation location = e.getLocation();
        int at = location == null ? end : start + (int) Math.max(0, location.getCharOffset());
        at = Math.min(at, end);
        boolean inside = at < end;
        if (!inside) {
            int[] place = place(text, start, at);
            source.fault(
                    "",
                    place[0],
                    place[1],
                    FaultCodes.SYNTAX,
                    "",
                    List.of(),
                    "",
                    "the document ends too early: a closing bracket, brace or quotation mark is missing.");
            return;
        }
        at = startOfWord(text, start, at);
        int[] place = place(text, start, at);
        String found = shown(text, at, end);
        // The parser refuses halves of characters in names by itself; only its message shows it.
        boolean half = String.valueOf(e.getOriginalMessage()).contains("surrogate");
        source.fault(
                "",
                place[0],
                place[1],
                half ? FaultCodes.CHARACTER : FaultCodes.SYNTAX,
                found,
                List.of(),
                "",
                half
                        ? "the text before \"" + found + "\"" + HALF
                        : "this is not JSON from here on: \"" + found + "\"." + advice(text, start, at, found));
    }

    /** Goes back to where a broken number or word begins; the parser stands inside it or behind it. */
    private static int startOfWord(char[] text, int start, int at) {
        int first = at;
        while (first > start && isWordPart(text[first - 1])) {
            first--;
        }
        String word = new String(text, first, at - first);
        if (isBlank(text[at])) {
            return word.equals("NaN") || word.endsWith("Infinity") ? first : at;
        }
        if (isWordPart(text[at]) || (!word.isEmpty() && "+-.".indexOf(text[at - 1]) >= 0)) {
            return first > start && text[first - 1] == '\\' ? first - 1 : first;
        }
        return at;
    }

    private static boolean isWordPart(char c) {
        return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || "+-.".indexOf(c) >= 0;
    }

    private static String advice(char[] text, int start, int at, String found) {
        char c = text[at];
        char before = lastInk(text, start, at);
        if (c == '/' || c == '#') {
            return " Comments are not part of JSON; use a member whose name begins with x-.";
        }
        if (c == '\'' || c == '\u201C' || c == '\u201D') {
            return " Write straight double quotation marks.";
        }
        if (c == '\\') {
            return " A backslash begins an escape such as \\n; a backslash itself is written \\\\.";
        }
        if (c == '}' || c == ']') {
            return before == ','
                    ? " Take away the comma before it."
                    : before == ':'
                            ? " A value is missing before it."
                            : " Something else was opened last; close that first.";
        }
        if (c == '"') {
            return " A comma or a colon is missing before it.";
        }
        if (c == ',') {
            return " A value is missing before it.";
        }
        if (found.startsWith("NaN") || found.startsWith("Infinity") || found.startsWith("-Infinity")) {
            return " A number must be finite; leave the member out if there is none.";
        }
        if (before == '"' && text[at] != ':') {
            return " A colon is missing before it.";
        }
        if (Character.isLetter(c)) {
            return " Names and texts stand in double quotation marks; only true, false and null do not.";
        }
        if ((c >= '0' && c <= '9') || "+-.".indexOf(c) >= 0) {
            return " A number is written such as 12, 0.5, -3 or 1.5e3.";
        }
        if (c < ' ') {
            return " A line break or a tab inside quotation marks is written \\n or \\t.";
        }
        return " Look at the sign here and the one before it.";
    }

    private static char lastInk(char[] text, int start, int at) {
        int i = at - 1;
        while (i >= start && isBlank(text[i])) {
            i--;
        }
        return i >= start ? text[i] : ' ';
    }

    private static int skipBlank(char[] text, int from, int end) {
        int i = from;
        while (i < end && isBlank(text[i])) {
            i++;
        }
        return i;
    }

    private static boolean isBlank(char c) {
        return c == ' ' || c == '\t' || c == '\n' || c == '\r';
    }

    private static String shown(char[] text, int at, int end) {
        int stop = at;
        while (stop < end && stop < at + 20 && text[stop] != '\n' && text[stop] != '\r') {
            stop++;
        }
        return JsonValue.shown(new String(text, at, Math.max(stop, Math.min(end, at + 1)) - at));
    }

    private static int[] place(char[] text, int at) {
        return place(text, at > 0 && text[0] == '\uFEFF' ? 1 : 0, at);
    }

    private static int[] place(char[] text, int start, int at) {
        int line = 1;
        int column = 1;
        for (int i = start; i < at; i++) {
            if (text[i] == '\n' || (text[i] == '\r' && !(i + 1 < text.length && text[i + 1] == '\n'))) {
                line++;
                column = 1;
            } else {
                column++;
            }
        }
        return new int[] {line, column};
    }
}
