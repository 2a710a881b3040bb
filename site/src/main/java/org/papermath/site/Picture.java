package org.papermath.site;

import java.util.List;
import java.util.stream.Collectors;

/**
 * A picture of a page: the drawing in a file of its own, what it shows in words, and its figures as a table.
 *
 * @param name its name, which is that of the file without the ending
 * @param title what it shows
 * @param description what can be seen in it, for whoever cannot see it
 * @param svg the drawing
 * @param head the heads of the columns of the table; empty if there is no table
 * @param rows its rows
 */
record Picture(String name, String title, String description, String svg, List<String> head, List<List<String>> rows) {
    Picture {
        head = List.copyOf(head);
        rows = List.copyOf(rows);
    }

    String file() {
        return name + ".svg";
    }

    /** The picture in its place on a page, with its words and its figures below it. */
    String html() {
        String figure = "<figure class=\"chart\">\n<img src=\"" + file() + "\" alt=\"" + quoted(words())
                + "\">\n<figcaption>" + Html.escape(words()) + "</figcaption>\n";
        if (!head.isEmpty()) {
            figure += "<details><summary>The same in numbers</summary>\n" + table() + "</details>\n";
        }
        return figure + "</figure>";
    }

    private String words() {
        return title + ". " + description + ".";
    }

    private String table() {
        return "<table>\n<thead><tr>"
                + head.stream()
                        .map(one -> "<th scope=\"col\">" + Html.escape(one) + "</th>")
                        .collect(Collectors.joining())
                + "</tr></thead>\n<tbody>\n"
                + rows.stream()
                        .map(row -> row.stream()
                                .map(cell -> "<td>" + Html.escape(cell) + "</td>")
                                .collect(Collectors.joining("", "<tr>", "</tr>\n")))
                        .collect(Collectors.joining())
                + "</tbody>\n</table>\n";
    }

    private static String quoted(String text) {
        return Html.escape(text).replace("\"", "&quot;");
    }
}
