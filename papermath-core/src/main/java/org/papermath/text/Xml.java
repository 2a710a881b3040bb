package org.papermath.text;

/** Text that is safe in XML. */
public final class Xml {
    private Xml() {}

    /** Escapes what has a meaning in XML; characters XML does not know become spaces. */
    public static String escape(String text) {
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                default -> {
                    boolean known = c == '\t'
                            || c == '\n'
                            || c == '\r'
                            || (c >= 0x20 && c <= 0xD7FF)
                            || (c >= 0xE000 && c <= 0xFFFD)
                            || c >= 0x10000;
                    out.appendCodePoint(known ? c : ' ');
                }
            }
        });
        return out.toString();
    }
}
