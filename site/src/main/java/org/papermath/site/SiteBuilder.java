package org.papermath.site;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.ext.heading.anchor.HeadingAnchorExtension;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/**
 * Writes the guide pages: Markdown in, HTML out. Figures, tables and pictures are made by running the library, so that no page
 * says what the library does not.
 *
 * <p>In a page, {@code {{name}}} stands for a figure, and a comment {@code <!-- name -->} on a line of its own for a block.
 */
public final class SiteBuilder {
    private static final List<Extension> EXTENSIONS =
            List.of(TablesExtension.create(), HeadingAnchorExtension.create());
    private static final Parser PARSER = Parser.builder().extensions(EXTENSIONS).build();
    private static final HtmlRenderer RENDERER =
            HtmlRenderer.builder().extensions(EXTENSIONS).build();
    private static final Pattern FIGURE = Pattern.compile("\\{\\{([a-z-]+)}}");
    private static final Pattern BLOCK = Pattern.compile("(?m)^<!-- ([a-z0-9-]+) -->$");

    /** The pages in the order of the menu; the name of each is that of its Markdown and its HTML file. */
    private static final List<Page> PAGES = List.of(
            new Page("index", "Start here"),
            new Page("job", "The job, stage by stage"),
            new Page("colour", "Colour"),
            new Page("units", "Units, reams, formats"),
            new Page("small", "Small arithmetic"),
            new Page("documents", "Documents"),
            new Page("order", "Order", true),
            new Page("recipe", "Recipe", true),
            new Page("studio", "Studio", true),
            new Page("record", "Record", true),
            new Page("plan", "Plan", true),
            new Page("prices", "Prices", true),
            new Page("quotation", "Quotation", true),
            new Page("faults", "Faults", true),
            new Page("programs", "In a program", true),
            new Page("codes", "Codes"),
            new Page("accuracy", "Accuracy"),
            new Page("sources", "Sources"),
            new Page("assumptions", "Assumptions"),
            new Page("safety", "Safety"),
            new Page("words", "Words"),
            new Page("changes", "Changes"));

    private static final String STYLE = """
            :root{--ink:#222;--soft:#5c5c5c;--paper:#fdfcf9;--edge:#ddd8cc;--link:#1f5d8c;--shade:#f3f0e8}
            @media (prefers-color-scheme:dark){:root{--ink:#e6e3dc;--soft:#a8a49b;--paper:#1b1b1a;--edge:#3c3a36;--link:#8cc0e8;
            --shade:#262523}}
            *{box-sizing:border-box}
            body{margin:0;background:var(--paper);color:var(--ink);font:16px/1.55 system-ui,sans-serif}
            .frame{display:grid;grid-template-columns:14rem minmax(0,1fr);max-width:80rem;margin:0 auto}
            nav{padding:1.5rem 1rem;border-right:1px solid var(--edge)}
            nav b{display:block;margin-bottom:.8rem;font-size:1.15rem}
            nav a{display:block;padding:.25rem .5rem;border-radius:.3rem;text-decoration:none}
            nav a.inner{padding-left:1.4rem;font-size:.92em}
            nav a[aria-current]{background:var(--shade);color:var(--ink);font-weight:600}
            main{padding:1.5rem 2rem 4rem;min-width:0;overflow-wrap:break-word}
            main>p,main>ul,main>ol{max-width:46rem}
            a{color:var(--link)}
            h1{font-size:1.8rem;line-height:1.2;margin:.2rem 0 1rem}
            h2{font-size:1.3rem;margin:2.2rem 0 .6rem;border-bottom:1px solid var(--edge);padding-bottom:.2rem}
            h3{font-size:1.05rem;margin:1.6rem 0 .4rem}
            .members{width:100%;table-layout:fixed}
            .c3{width:17%}.c4{width:19%}.c5{width:24%}.c6{width:29%}
            .members td{overflow-wrap:anywhere}
            pre{background:var(--shade);padding:.8rem 1rem;overflow-x:auto;font-size:.82rem;line-height:1.4;border-radius:.3rem}
            code{font-family:ui-monospace,monospace;font-size:.9em}
            pre code{font-size:inherit}
            .wide{overflow-x:auto}
            table{border-collapse:collapse;font-size:.88rem;margin:.8rem 0}
            th,td{text-align:left;vertical-align:top;padding:.3rem .7rem;border-bottom:1px solid var(--edge)}
            th{background:var(--shade)}
            .codes{width:100%}.codes tbody th{background:none;padding-top:.8rem}
            img{display:block;max-width:min(100%,46rem);max-height:36rem;width:auto;height:auto;background:#fff;border:1px solid var(--edge);padding:.5rem;margin:.5rem 0}
            @media (max-width:46rem){.frame{grid-template-columns:minmax(0,1fr)}
            nav{border-right:0;border-bottom:1px solid var(--edge);padding:1rem}
            nav a,nav a.inner{display:inline-block;padding:.25rem .5rem;font-size:1em}main{padding:1rem}
            .members,.members tbody,.members tr,.members td{display:block}.members thead{display:none}
            .members tr{border-bottom:1px solid var(--edge);padding:.4rem 0}
            .members td{border:0;padding:.1rem 0}.members td:empty{display:none}
            .members td::before{content:attr(data-head) ": ";color:var(--soft)}
            .members td:first-child::before{content:none}.members td:first-child{font-weight:600}}
            """;

    private SiteBuilder() {}

    /** A page of the menu; an inner one belongs to the one above it. */
    record Page(String name, String title, boolean inner) {
        Page(String name, String title) {
            this(name, title, false);
        }
    }

    /**
     * Writes the site.
     *
     * @param args the top folder of the project, and the folder to write into
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String[] args) throws IOException {
        build(Path.of(args[0]), Path.of(args[1]));
    }

    /** Writes every page, and the pictures they show. */
    static void build(Path top, Path out) throws IOException {
        Contents contents = Contents.of(top);
        Files.createDirectories(out);
        for (Map.Entry<String, String> picture : contents.pictures().entrySet()) {
            Files.writeString(out.resolve(picture.getKey()), picture.getValue());
        }
        for (Page page : PAGES) {
            String text = page.name().equals("changes")
                    ? Files.readString(top.resolve("CHANGELOG.md"))
                    : Files.readString(top.resolve("site/pages").resolve(page.name() + ".md"));
            Files.writeString(out.resolve(page.name() + ".html"), page(page, body(text, contents, page.name())));
        }
    }

    static List<Page> pages() {
        return PAGES;
    }

    private static String body(String text, Contents contents, String page) {
        String figures = FIGURE.matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(known(contents.figures(), found.group(1), page)));
        String html = RENDERER.render(PARSER.parse(figures));
        String whole = BLOCK.matcher(html)
                .replaceAll(found -> Matcher.quoteReplacement(known(contents.blocks(), found.group(1), page)));
        return whole.replaceAll("<table([^>]*)>", "<div class=\"wide\"><table$1>")
                .replace("</table>", "</table></div>");
    }

    private static String known(Map<String, String> all, String name, String page) {
        String value = all.get(name);
        if (value == null) {
            throw new IllegalArgumentException(
                    "page " + page + " asks for \"" + name + "\", which is none of " + all.keySet());
        }
        return value;
    }

    private static String page(Page page, String body) {
        StringBuilder out = new StringBuilder("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                + "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\">\n<title>papermath: ");
        out.append(page.title()).append("</title>\n<style>\n").append(STYLE).append("</style>\n</head>\n<body>\n");
        out.append("<div class=\"frame\">\n<nav aria-label=\"pages\"><b>papermath</b>\n");
        for (Page other : PAGES) {
            out.append("<a href=\"")
                    .append(other.name())
                    .append(".html\"")
                    .append(other.inner() ? " class=\"inner\"" : "")
                    .append(other.equals(page) ? " aria-current=\"page\"" : "")
                    .append('>')
                    .append(other.title())
                    .append("</a>\n");
        }
        out.append("</nav>\n<main>\n").append(body).append("</main>\n</div>\n</body>\n</html>\n");
        return out.toString();
    }
}
