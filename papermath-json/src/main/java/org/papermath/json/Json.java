package org.papermath.json;

import java.util.HexFormat;

/** Writing of JSON without surroundings: the same text everywhere. */
final class Json {
    private static final HexFormat HEX = HexFormat.of();

    private Json() {
    }

    static String hex(char c) {
        return HEX.toHexDigits(c);
    }

    static void quote(StringBuilder out, String text) {
        if (isPlain(text)) {
            out.append('"').append(text).append('"');
            return;
        }
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                case '\r' -> out.append("\\r");
                case '\t' -> out.append("\\t");
                default -> {
                    if (c < 0x20 || c == 0x7F || c == '\u2028' || c == '\u2029') {
                        out.append("\\u").append(hex(c));
                    } else if (Character.isSurrogate(c)) {
                        if (i + 1 >= text.length() || !Character.isSurrogatePair(c, text.charAt(i + 1))) {
                            throw new IllegalArgumentException("half a character in a text: \\u" + hex(c));
                        }
                        out.append(c).append(text.charAt(++i));
                    } else {
                        out.append(c);
                    }
                }
            }
        }
        out.append('"');
    }

    /** Tells whether a text stands in quotation marks as it is. */
    static boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' || c >= 0x7F || c == '"' || c == '\\') {
                return false;
            }
        }
        return true;
    }

    /** Writes a value on one line, for people and comparisons. */
    static void compact(StringBuilder out, JsonValue value) {
        switch (value.type()) {
            case OBJECT -> {
                out.append('{');
                String between = "";
                for (JsonValue member : value.members()) {
                    out.append(between);
                    quote(out, member.step());
                    out.append(": ");
                    compact(out, member);
                    between = ", ";
                }
                out.append('}');
            }
            case LIST -> {
                out.append('[');
                String between = "";
                for (JsonValue item : value.items()) {
                    out.append(between);
                    compact(out, item);
                    between = ", ";
                }
                out.append(']');
            }
            case TEXT -> quote(out, value.text());
            case NUMBER, FLAG, NULL -> out.append(value.text());
        }
    }
}
