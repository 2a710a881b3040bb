package org.papermath.site;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What stands around the text of a page: the head, the search, the menu, what is on the page, and the pages beside it. */
final class Frame {
    /** The files every page asks for. */
    static final List<String> FILES = List.of("site.css", "site.js");

    private static final Pattern PART = Pattern.compile("(?s)<h2 id=\"([^\"]+)\">(.*?)</h2>");
    /** So many parts make a page long. */
    private static final int LONG = 4;

    private final List<SiteBuilder.Page> pages;

    Frame(List<SiteBuilder.Page> pages) {
        this.pages = List.copyOf(pages);
    }

    static String file(String name) {
        try (InputStream in = Frame.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("there is no " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    String page(SiteBuilder.Page page, String body) {
        // The first page begins with what comes out.
        String whole = boxed(body);
        String text = page.name().equals("index") ? whole : withParts(whole);
        return "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                + "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\">\n<title>papermath: "
                + page.title()
                + "</title>\n<link rel=\"stylesheet\" href=\"site.css\">\n<script src=\"site.js\" defer></script>\n"
                + "</head>\n<body>\n<a class=\"skip\" href=\"#text\">To the text</a>\n<header>\n"
                + "<a class=\"name\" href=\"index.html\">papermath</a>\n<a class=\"tomenu\" href=\"#menu\">All pages</a>\n"
                + "<form id=\"search\" role=\"search\" hidden><label for=\"seek\">Search</label>"
                + "<input id=\"seek\" type=\"search\" autocomplete=\"off\"></form>\n</header>\n"
                + "<div id=\"found\" aria-live=\"polite\" hidden></div>\n"
                + "<div class=\"frame\">\n<main id=\"text\">\n" + text + turn(page)
                + "</main>\n" + menu(page) + "</div>\n</body>\n</html>\n";
    }

    /** Puts what is wide into boxes that scroll by themselves, and can be reached by the keyboard to do so. */
    private static String boxed(String body) {
        return body.replaceAll(
                        "<table([^>]*)>",
                        "<div class=\"wide\" role=\"region\" aria-label=\"table\" tabindex=\"0\"><table$1>")
                .replace("</table>", "</table></div>")
                .replace("<pre>", "<pre tabindex=\"0\">")
                .replaceAll(
                        "<p>(<img src=\"([^\"]+)\" [^>]*>)</p>", "<div class=\"drawing\"><a href=\"$2\">$1</a></div>");
    }

    /** Lists the parts of a long page under its heading. */
    private static String withParts(String body) {
        Matcher part = PART.matcher(body);
        List<String> parts = new ArrayList<>();
        while (part.find()) {
            parts.add("<li><a href=\"#" + part.group(1) + "\">" + part.group(2).replaceAll("</?a[^>]*>", "")
                    + "</a></li>\n");
        }
        int heading = body.indexOf("</h1>");
        if (parts.size() < LONG || heading < 0) {
            return body;
        }
        int end = body.indexOf('\n', heading) + 1;
        return body.substring(0, end) + "<nav class=\"toc\" aria-label=\"on this page\"><b>On this page</b>\n<ul>\n"
                + String.join("", parts) + "</ul></nav>\n" + body.substring(end);
    }

    private String turn(SiteBuilder.Page page) {
        int at = pages.indexOf(page);
        String out = "<nav class=\"turn\" aria-label=\"before and after\">\n";
        if (at > 0) {
            SiteBuilder.Page before = pages.get(at - 1);
            out += "<a rel=\"prev\" href=\"" + before.name() + ".html\">← " + before.title() + "</a>\n";
        }
        if (at >= 0 && at + 1 < pages.size()) {
            SiteBuilder.Page after = pages.get(at + 1);
            out += "<a rel=\"next\" href=\"" + after.name() + ".html\">" + after.title() + " →</a>\n";
        }
        return out + "</nav>\n";
    }

    private String menu(SiteBuilder.Page page) {
        StringBuilder out = new StringBuilder("<nav id=\"menu\" aria-label=\"all pages\">\n");
        String group = "";
        for (SiteBuilder.Page other : pages) {
            if (!other.group().equals(group)) {
                group = other.group();
                out.append("<b>").append(group).append("</b>\n");
            }
            out.append("<a href=\"")
                    .append(other.name())
                    .append(".html\"")
                    .append(other.inner() ? " class=\"inner\"" : "")
                    .append(other.equals(page) ? " aria-current=\"page\"" : "")
                    .append('>')
                    .append(other.title())
                    .append("</a>\n");
        }
        return out.append("</nav>\n").toString();
    }
}
