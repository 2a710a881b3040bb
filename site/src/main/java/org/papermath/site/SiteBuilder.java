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

    private static final String BEGIN = "Begin";
    private static final String ASK = "Ask it";
    private static final String DOCUMENTS = "Documents and programs";
    private static final String RESTS = "What it rests on";
    private static final String LOOK_UP = "Look up";

    /** The pages in the order of the menu; the name of each is that of its Markdown and its HTML file. */
    private static final List<Page> PAGES = List.of(
            new Page("index", "Start here", BEGIN),
            new Page("tutorial", "Your own order", BEGIN),
            new Page("job", "The job, stage by stage", BEGIN),
            new Page("questions", "Questions of the trade", ASK),
            new Page("small", "Small arithmetic", ASK),
            new Page("jshell", "Line by line, in JShell", ASK),
            new Page("colour", "Colour", ASK),
            new Page("units", "Units, reams, formats", ASK),
            new Page("documents", "Documents", DOCUMENTS),
            new Page("order", "Order", DOCUMENTS, true),
            new Page("recipe", "Recipe", DOCUMENTS, true),
            new Page("studio", "Studio", DOCUMENTS, true),
            new Page("record", "Record", DOCUMENTS, true),
            new Page("plan", "Plan", DOCUMENTS, true),
            new Page("prices", "Prices", DOCUMENTS, true),
            new Page("quotation", "Quotation", DOCUMENTS, true),
            new Page("faults", "Faults", DOCUMENTS, true),
            new Page("programs", "In a program", DOCUMENTS),
            new Page("reference", "Reference of the code", DOCUMENTS),
            new Page("accuracy", "Accuracy", RESTS),
            new Page("sources", "Sources", RESTS),
            new Page("assumptions", "Assumptions", RESTS),
            new Page("safety", "Safety", RESTS),
            new Page("glossary", "Words of the trade", LOOK_UP),
            new Page("words", "Words of the code", LOOK_UP),
            new Page("codes", "Codes", LOOK_UP),
            new Page("changes", "Changes", LOOK_UP));

    private SiteBuilder() {}

    /** A page of the menu; an inner one belongs to the one above it. */
    record Page(String name, String title, String group, boolean inner) {
        Page(String name, String title, String group) {
            this(name, title, group, false);
        }
    }

    /**
     * Writes the site.
     *
     * @param args the top folder of the project, and the folder to write into
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String[] args) throws IOException {
        // Charts are drawn without a screen.
        System.setProperty("java.awt.headless", "true");
        build(Path.of(args[0]), Path.of(args[1]));
    }

    /** Writes every page, and the pictures they show. */
    static void build(Path top, Path out) throws IOException {
        Contents contents = Contents.of(top);
        Files.createDirectories(out);
        for (Map.Entry<String, String> picture : contents.pictures().entrySet()) {
            Files.writeString(out.resolve(picture.getKey()), picture.getValue());
        }
        for (String file : Frame.FILES) {
            Files.writeString(out.resolve(file), Frame.file(file));
        }
        Frame frame = new Frame(PAGES);
        SearchIndex index = new SearchIndex();
        for (Page page : PAGES) {
            String text = page.name().equals("changes")
                    ? Files.readString(top.resolve("CHANGELOG.md"))
                    : Files.readString(top.resolve("site/pages").resolve(page.name() + ".md"));
            String body = body(text, contents, page.name());
            index.add(page, body);
            Files.writeString(out.resolve(page.name() + ".html"), frame.page(page, body));
        }
        Files.writeString(out.resolve("search-index.js"), index.script());
        Reference.of(top).copy(out);
    }

    static List<Page> pages() {
        return PAGES;
    }

    private static String body(String text, Contents contents, String page) {
        String figures = FIGURE.matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(known(contents.figures(), found.group(1), page)));
        String html = RENDERER.render(PARSER.parse(figures));
        return BLOCK.matcher(html)
                .replaceAll(found -> Matcher.quoteReplacement(known(contents.blocks(), found.group(1), page)));
    }

    private static String known(Map<String, String> all, String name, String page) {
        String value = all.get(name);
        if (value == null) {
            throw new IllegalArgumentException(
                    "page " + page + " asks for \"" + name + "\", which is none of " + all.keySet());
        }
        return value;
    }
}
