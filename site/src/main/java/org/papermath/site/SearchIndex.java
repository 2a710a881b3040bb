package org.papermath.site;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The words of all pages, part by part, as a script: a page opened from a folder may not read other files, but may load a script.
 */
final class SearchIndex {
    private static final Pattern HEADING =
            Pattern.compile("(?s)<h[123][^>]*?(?: id=\"([^\"]+)\")?[^>]*>(.*?)</h[123]>");
    private static final Pattern TERM = Pattern.compile("(?s)<dt id=\"([^\"]+)\">(.*?)</dt>\\s*<dd>(.*?)</dd>");

    private final List<String> entries = new ArrayList<>();

    /** Adds the parts of a page. */
    void add(SiteBuilder.Page page, String body) {
        Matcher heading = HEADING.matcher(body);
        String anchor = "";
        String title = page.title();
        int from = 0;
        while (heading.find()) {
            entry(page, anchor, title, body.substring(from, heading.start()));
            boolean first = from == 0;
            anchor = first || heading.group(1) == null ? "" : "#" + heading.group(1);
            title = first ? page.title() : plain(heading.group(2));
            from = heading.end();
        }
        entry(page, anchor, title, body.substring(from));
        Matcher term = TERM.matcher(body);
        while (term.find()) {
            put(page, "#" + term.group(1), plain(term.group(2)), plain(term.group(3)));
        }
    }

    private void entry(SiteBuilder.Page page, String anchor, String title, String html) {
        String text = plain(TERM.matcher(html).replaceAll(""));
        if (!text.isBlank()) {
            put(page, anchor, title, text);
        }
    }

    private void put(SiteBuilder.Page page, String anchor, String title, String text) {
        entries.add("{u:" + quoted(page.name() + ".html" + anchor) + ",p:" + quoted(page.title()) + ",h:"
                + quoted(title) + ",t:" + quoted(text) + "}");
    }

    /** The text of HTML, without its tags. */
    static String plain(String html) {
        return html.replaceAll("<wbr>|</?code>|</?a[^>]*>|</?em>|</?strong>", "")
                .replaceAll("(?s)<[^>]*>", " ")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&#39;", "'")
                .replace("&amp;", "&")
                .replaceAll("\\s+", " ")
                .strip();
    }

    private static String quoted(String text) {
        return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"").replace("</", "<\\/") + '"';
    }

    /** {@return how many parts there are} */
    int size() {
        return entries.size();
    }

    /** {@return the script} */
    String script() {
        return "window.papermathIndex=[\n" + String.join(",\n", entries) + "\n];\n";
    }
}
