package org.papermath.card;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import org.papermath.text.Xml;

/** A card as a page to print: one HTML text, pictures in it, no script and nothing from elsewhere. */
final class PageForm implements CardForm {
    private static final int ACROSS = 4;

    private static final String STYLE = """
            @page { size: auto; margin: 12mm 10mm; }
            * { box-sizing: border-box; }
            body { font: 15px/1.35 serif; color: #000; background: #fff; max-width: 186mm; margin: 1rem auto; padding: 0 .6rem; }
            h1 { font-size: 1.7em; margin: 0; } h1 small { font-size: .55em; font-weight: normal; display: block; }
            h2 { font-size: 1.1em; margin: .9em 0 .2em; border-bottom: .5mm solid #000; break-after: avoid; }
            section { break-inside: avoid-page; }
            table { width: 100%; border-collapse: collapse; }
            th { text-align: left; font-weight: normal; font-style: italic; width: 24%; vertical-align: top; padding: .05em .6em .05em 0; }
            td { vertical-align: top; padding: .05em .6em .05em 0; }
            tr { break-inside: avoid; }
            thead th { width: auto; font-weight: bold; font-style: normal; }
            p { margin: .25em 0; } p.warn { border-left: 1mm solid #000; padding-left: 2mm; }
            p.warn::before { content: "! "; font-weight: bold; }
            p.note::before { content: "– "; }
            figure { margin: .5em 0; break-inside: avoid; } figure img { max-width: 100%; height: auto; border: .1mm solid #767676; }
            figcaption { font-style: italic; font-size: .9em; }
            ol.days { columns: 2; padding: 0; margin: .2em 0; list-style: none; } ol.days b { display: inline-block; min-width: 6.5em; font-weight: normal; font-style: italic; }
            td.write { width: 34%; border-bottom: .2mm solid #000; height: 7mm; } td.unit { width: 12%; }
            footer { margin-top: 1em; font-size: .85em; }
            @media (max-width: 44rem) { ol.days { columns: 1; } table, tbody, tr, th, td { display: block; width: 100%; } thead { display: none; } td.write { width: 100%; } }
            @media print { body { font-size: 9.5pt; margin: 0 auto; padding: 0; } }
            """;

    private final StringBuilder out = new StringBuilder(1 << 15);
    private boolean isTable;
    private boolean isSection;
    private int last;
    private List<String> foot = List.of();

    String page() {
        endSection();
        out.append("<footer>\n");
        foot.forEach(line -> paragraph("", line));
        out.append("</footer>\n</main>\n</body>\n</html>\n");
        return out.toString();
    }

    private static String safe(String text) {
        return Xml.escape(text);
    }

    @Override
    public void title(String kind, String order, String whose, String how) {
        out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
                .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
                .append(safe(kind + ": " + order))
                .append("</title>\n<style>\n")
                .append(STYLE)
                .append("</style>\n</head>\n<body>\n<main>\n<h1>")
                .append(safe(order))
                .append("<small>")
                .append(safe(kind + " " + whose))
                .append("</small></h1>\n");
        paragraph("", how);
    }

    @Override
    public void section(int number, String name) {
        endSection();
        last = number;
        out.append("<section>\n<h2>")
                .append(number)
                .append(' ')
                .append(safe(name))
                .append("</h2>\n");
        isSection = true;
    }

    private void endSection() {
        endTable();
        if (isSection) {
            out.append("</section>\n");
            isSection = false;
        }
    }

    private void table() {
        if (!isTable) {
            out.append("<table><tbody>\n");
            isTable = true;
        }
    }

    private void endTable() {
        if (isTable) {
            out.append("</tbody></table>\n");
            isTable = false;
        }
    }

    @Override
    public void row(String label, String text) {
        table();
        out.append("<tr>")
                .append(label.isEmpty() ? "<td></td>" : "<th scope=\"row\">" + safe(label) + "</th>")
                .append("<td colspan=\"" + ACROSS + "\">")
                .append(safe(text))
                .append("</td></tr>\n");
    }

    @Override
    public void alike(String label, String cell) {
        row(label, cell);
    }

    @Override
    public void cells(String label, List<String> cells) {
        table();
        for (int from = 0; from < cells.size(); from += ACROSS) {
            List<String> some = cells.subList(from, Math.min(from + ACROSS, cells.size()));
            out.append("<tr>")
                    .append(label.isEmpty() || from > 0 ? "<td></td>" : "<th scope=\"row\">" + safe(label) + "</th>");
            for (int i = 0; i < some.size(); i++) {
                int last = i == some.size() - 1 ? ACROSS - i : 1;
                out.append(last > 1 ? "<td colspan=\"" + last + "\">" : "<td>")
                        .append(safe(some.get(i)))
                        .append("</td>");
            }
            out.append("</tr>\n");
        }
    }

    @Override
    public void line(String mark, String text) {
        endTable();
        paragraph(mark.startsWith("!") ? "warn" : mark.startsWith("-") ? "note" : "", text);
    }

    private void paragraph(String style, String text) {
        out.append(style.isEmpty() ? "<p>" : "<p class=\"" + style + "\">")
                .append(style.equals("warn") ? "<strong>Take care:</strong> " : "")
                .append(safe(text))
                .append("</p>\n");
    }

    @Override
    public void days(List<DatedWork> days) {
        endTable();
        out.append("<ol class=\"days\">\n");
        for (DatedWork one : days) {
            out.append("<li><b>")
                    .append(safe(one.day()))
                    .append("</b> ")
                    .append(safe(one.what()))
                    .append("</li>\n");
        }
        out.append("</ol>\n");
    }

    /** A picture that stands by itself, with its words. */
    void picture(String svg, String words) {
        endTable();
        out.append("<figure><img alt=\"")
                .append(safe(words))
                .append("\" src=\"data:image/svg+xml;base64,")
                .append(Base64.getEncoder().encodeToString(svg.getBytes(StandardCharsets.UTF_8)))
                .append("\"><figcaption>")
                .append(safe(words))
                .append("</figcaption></figure>\n");
    }

    /** A line to write a reading on. */
    void write(String what, String planned, String unit) {
        table();
        out.append("<tr><th scope=\"row\">")
                .append(safe(what))
                .append("</th><td>")
                .append(safe(planned))
                .append("</td><td class=\"write\"></td><td class=\"unit\">")
                .append(safe(unit))
                .append("</td></tr>\n");
    }

    /** Begins a section behind the last. */
    void section(String name) {
        section(last + 1, name);
    }

    @Override
    public void foot(String before, String rests) {
        foot = List.of(before, rests);
    }
}
