package org.papermath.card;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.papermath.text.Xml;

/** A card as a page to print, on A4 or Letter: one HTML text, pictures in it, no script and nothing from elsewhere. */
final class PageForm implements CardForm {
    /** Pieces side by side in a table; more go on in another. */
    private static final int ACROSS = 4;
    /** The room of a page within its margins, on A4 and on Letter, mm; a line of words stands below. */
    private static final double PAGE_WIDE = 190;

    private static final double PAGE_HIGH = 245;
    /** Names of up to so many letters are not broken. */
    private static final int SHORT = 12;

    private static final String COUNT = "<span class=\"write short\"></span>";
    private static final Pattern SIZE = Pattern.compile("<svg[^>]* width=\"([0-9.]+)mm\" height=\"([0-9.]+)mm\"");
    private static final Pattern RULES = Pattern.compile("<style>(.*?)</style>", Pattern.DOTALL);

    private static final String STYLE = """
            @page { size: auto; margin: 11mm 10mm; }
            * { box-sizing: border-box; }
            html { color-scheme: light; }
            body { font: 16px/1.35 serif; color: #000; background: #fff; max-width: 190mm; margin: 1rem auto; padding: 0 .7rem; overflow-wrap: break-word; }
            h1 { font-size: 1.7em; font-weight: normal; margin: 0; } h1 small { font-size: .6em; }
            .head { display: flex; flex-wrap: wrap; gap: 0 1.5em; justify-content: space-between; align-items: baseline; }
            h2 { font-size: 1.1em; margin: .8em 0 .15em; border-top: .3mm solid #000; padding-top: .15em; break-after: avoid; display: flex; flex-wrap: wrap; gap: 0 1em; justify-content: space-between; }
            h2 i { font-weight: normal; font-size: .92em; }
            section { break-inside: avoid-page; } section.place { break-before: page; }
            p { margin: .12em 0; padding-left: 1.7em; text-indent: -1.7em; break-inside: avoid; }
            p.more { padding-left: 1.7em; text-indent: 0; }
            p.key, footer p { padding: 0; text-indent: 0; }
            .sign { display: inline-block; width: 1.7em; text-indent: 0; font-weight: bold; }
            .set > .sign::before, .box::before { content: ""; display: inline-block; width: .72em; height: .72em; border: .3mm solid #000; }
            .expect { font-style: italic; } .expect b { font-weight: normal; }
            .caution { border-left: .8mm solid #000; margin-left: .2em; }
            .caution > .sign { width: 1.5em; text-align: center; }
            .out { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
            small { font-size: .82em; }
            table { width: 100%; border-collapse: collapse; margin: .25em 0; break-inside: avoid; }
            th, td { text-align: left; vertical-align: top; padding: .08em .7em .08em 0; font-weight: normal; }
            thead th { font-style: italic; font-size: .88em; border-bottom: .2mm solid #000; vertical-align: bottom; }
            tbody tr + tr > * { border-top: .1mm solid #999; }
            table.across { table-layout: fixed; } table.across th:first-child { width: 27%; }
            tbody th .box { margin-right: .7em; } tbody th.short { white-space: nowrap; }
            p:has(+ table) { break-after: avoid; } td:has(.write), th:has(+ td .write) { padding-top: 1.2mm; }
            .write { display: inline-block; border-bottom: .25mm dotted #000; min-width: 15mm; height: 1.1em; vertical-align: bottom; }
            .write.short { min-width: 9mm; }
            .pictures { display: flex; flex-wrap: wrap; gap: .4em 4mm; align-items: flex-end; margin: .3em 0; }
            figure { margin: 0; max-width: 100%; break-inside: avoid; } figure svg { max-width: 100%; height: auto; display: block; }
            figcaption { font-size: .88em; }
            figure.whole { break-before: page; }
            footer { margin-top: .8em; font-size: .9em; border-top: .3mm solid #000; }
            @media (max-width: 44rem) {
              table, tbody, tr, th, td { display: block; width: 100%; } thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
              tbody tr { padding: .25em 0; border-top: .1mm solid #999; } tbody tr > * { border: 0 !important; }
              tbody td { display: inline; padding: 0; } td:not(:last-child):not(:empty)::after { content: "; "; }
              td[data-head]::before { content: attr(data-head) ": "; font-style: italic; }
              tbody th { font-weight: bold; }
            }
            @media print { body { font-size: 9pt; line-height: 1.24; margin: 0 auto; padding: 0; } h1 { font-size: 19pt; } figure.whole svg { max-width: none; } figure.reduced svg { max-width: 100%; max-height: 240mm; } }
            """;

    private final StringBuilder out = new StringBuilder(1 << 15);
    private boolean isSection;
    private boolean isPictures;
    private boolean isMoved;
    private int pictures;
    private final List<Picture> whole = new ArrayList<>();
    private List<String> foot = List.of();

    String page() {
        endSection();
        out.append("<footer>\n");
        foot.forEach(line -> out.append("<p>").append(html(line)).append("</p>\n"));
        out.append("</footer>\n");
        whole.forEach(this::whole);
        return out.append("</main>\n</body>\n</html>\n").toString();
    }

    private static String safe(String text) {
        return Xml.escape(Written.plain(text));
    }

    private static String html(String text) {
        return Written.html(Xml.escape(text))
                .replace(TWO_TO_WRITE, COUNT + " / " + COUNT)
                .replace(TO_WRITE, "<span class=\"write\"></span>");
    }

    @Override
    public void title(String kind, String order, String whose, String leaves, String key) {
        out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
                .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
                .append(safe(kind + ": " + order))
                .append("</title>\n<style>\n")
                .append(STYLE)
                .append("</style>\n</head>\n<body>\n<main>\n<div class=\"head\"><h1>")
                .append(safe(order))
                .append(" <small>")
                .append(safe(kind + " " + whose))
                .append("</small></h1><span>")
                .append(html(leaves))
                .append("</span></div>\n<p class=\"key\">")
                .append(html(key))
                .append("</p>\n");
    }

    @Override
    public void section(int number, String name, String aside) {
        endSection();
        out.append(isMoved ? "<section class=\"place\">\n<h2><span>" : "<section>\n<h2><span>")
                .append(number > 0 ? number + "&#160; " : "")
                .append(safe(name))
                .append("</span>")
                .append(aside.isEmpty() ? "" : " <i>" + html(aside) + "</i>")
                .append("</h2>\n");
        isMoved = false;
        isSection = true;
    }

    @Override
    public void otherPlace() {
        isMoved = true;
    }

    private void endPictures() {
        if (isPictures) {
            out.append("</div>\n");
            isPictures = false;
        }
    }

    private void endSection() {
        endPictures();
        if (isSection) {
            out.append("</section>\n");
            isSection = false;
        }
    }

    @Override
    public void line(Mark mark, String text) {
        endPictures();
        out.append("<p class=\"").append(mark.style()).append("\">").append(sign(mark));
        out.append(html(text)).append("</p>\n");
    }

    private static String sign(Mark mark) {
        if (mark == Mark.MORE) {
            return "";
        }
        return "<span class=\"sign\" aria-hidden=\"true\">" + (mark == Mark.SET ? "" : mark.bareSign())
                + "</span><span class=\"out\">" + mark.words() + "</span>";
    }

    @Override
    public void table(Mark mark, List<String> heads, List<List<String>> rows) {
        table(
                "",
                heads,
                rows.stream()
                        .map(row -> new Across(mark, row.get(0), row.subList(1, row.size())))
                        .toList());
    }

    private void table(String style, List<String> heads, List<Across> rows) {
        endPictures();
        out.append(style.isEmpty() ? "<table>" : "<table class=\"" + style + "\">")
                .append("\n<thead><tr>");
        for (String head : heads) {
            out.append(head.isEmpty() ? "<td></td>" : "<th scope=\"col\">" + html(head) + "</th>");
        }
        out.append("</tr></thead>\n<tbody>\n");
        boolean isMarked = rows.stream().anyMatch(row -> row.mark() != Mark.MORE);
        for (Across row : rows) {
            out.append("<tr class=\"")
                    .append(row.mark().style())
                    .append(
                            row.label().length() > SHORT
                                    ? "\"><th scope=\"row\">"
                                    : "\"><th class=\"short\" scope=\"row\">");
            out.append(
                    row.mark() == Mark.SET
                            ? "<span class=\"box\" aria-hidden=\"true\"></span><span class=\"out\">" + Mark.SET.words()
                                    + "</span>"
                            : row.mark() == Mark.MORE && isMarked ? "<span class=\"sign\"></span>" : sign(row.mark()));
            out.append(html(row.label())).append("</th>");
            for (int c = 0; c < row.cells().size(); c++) {
                String cell = row.cells().get(c);
                String head = heads.get(c + 1);
                out.append(head.isEmpty() || cell.isEmpty() ? "<td>" : "<td data-head=\"" + safe(head) + "\">")
                        .append(html(cell))
                        .append("</td>");
            }
            out.append("</tr>\n");
        }
        out.append("</tbody></table>\n");
    }

    @Override
    public void columns(String head, List<String> names, List<Across> rows) {
        for (int from = 0; from < names.size(); from += ACROSS) {
            int to = Math.min(from + ACROSS, names.size());
            List<String> heads = new ArrayList<>(List.of(head));
            heads.addAll(names.subList(from, to));
            int start = from;
            table(
                    "across",
                    heads,
                    rows.stream()
                            .map(row -> new Across(
                                    row.mark(), row.label(), row.cells().subList(start, to)))
                            .toList());
        }
    }

    @Override
    public void picture(Picture picture) {
        if (picture.isWhole()) {
            whole.add(picture);
            return;
        }
        if (!isPictures) {
            out.append("<div class=\"pictures\">\n");
            isPictures = true;
        }
        figure(picture, "");
    }

    /** A picture with a page of its own: at true scale where the page has room for it. */
    private void whole(Picture picture) {
        Matcher size = SIZE.matcher(picture.svg());
        boolean fits = size.find()
                && Double.parseDouble(size.group(1)) <= PAGE_WIDE
                && Double.parseDouble(size.group(2)) <= PAGE_HIGH;
        figure(
                new Picture(
                        picture.svg(),
                        picture.words()
                                + (fits
                                        ? ", at true scale: print at 100 % and lay a rule on the bar"
                                        : ", reduced to fit the page: cut by its own drawing, not by this one"),
                        true),
                fits ? " class=\"whole\"" : " class=\"whole reduced\"");
    }

    private void figure(Picture picture, String style) {
        Matcher size = SIZE.matcher(picture.svg());
        out.append("<figure")
                .append(style)
                .append(size.find() ? " style=\"width:" + size.group(1) + "mm\">" : ">")
                .append(inside(picture.svg()));
        out.append("<figcaption>").append(html(picture.words())).append("</figcaption></figure>\n");
    }

    /** The picture as a part of the page: its rules and names of patterns hold for itself alone. */
    private String inside(String svg) {
        pictures++;
        String name = "picture" + pictures;
        String part = svg.substring(svg.indexOf("<svg"))
                .replace(" xmlns=\"http://www.w3.org/2000/svg\"", "")
                .replaceFirst("<svg ", "<svg class=\"" + name + "\" ")
                .replace("id=\"", "id=\"" + name + "-")
                .replace("url(#", "url(#" + name + "-");
        Matcher rules = RULES.matcher(part);
        if (!rules.find()) {
            return part;
        }
        StringBuilder scoped = new StringBuilder();
        for (String rule : rules.group(1).split("}", -1)) {
            int open = rule.indexOf('{');
            if (open > 0) {
                for (String selector : rule.substring(0, open).split(",", -1)) {
                    scoped.append(scoped.length() > 0 && scoped.charAt(scoped.length() - 1) != '}' ? "," : "")
                            .append('.')
                            .append(name)
                            .append(' ')
                            .append(selector.strip());
                }
                scoped.append(rule.substring(open)).append('}');
            }
        }
        return part.substring(0, rules.start(1)) + scoped + part.substring(rules.end(1));
    }

    @Override
    public void foot(String before, String rests) {
        foot = List.of(before, rests);
    }
}
