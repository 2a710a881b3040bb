package org.papermath.site;

/** Text in HTML. */
final class Html {
    private Html() {}

    static String escape(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    /** A listing. */
    static String code(String text) {
        return "<pre><code>" + escape(text) + "</code></pre>";
    }
}
