package org.papermath.json.tree;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.HexFormat;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Units;

/** Writing of JSON without surroundings: the same text everywhere. */
public final class JsonText {
    private static final HexFormat HEX = HexFormat.of();
    private static final MathContext FIGURE = new MathContext(12);

    private JsonText() {}

    static String hex(char c) {
        return HEX.toHexDigits(c);
    }

    /** Returns a figure that was worked out, to twelve digits: 0.2 L, not 0.19999999999999998 L. */
    public static String figure(Amount<?> amount) {
        String[] parts = Units.print(amount).split(" ", 2);
        String number = Units.number(new BigDecimal(parts[0]).round(FIGURE).doubleValue());
        return parts.length == 1 ? number : number + " " + parts[1];
    }

    public static void quote(StringBuilder out, String text) {
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

    /** Returns whether a text stands in quotation marks as it is. */
    public static boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' || c >= 0x7F || c == '"' || c == '\\') {
                return false;
            }
        }
        return true;
    }
}
