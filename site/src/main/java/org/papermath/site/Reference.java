package org.papermath.site;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The packages people use, and the Javadoc of them where it was written before the site.
 *
 * @param top the top folder of the project
 * @param about what each package is about, by its name, with its module before it
 */
record Reference(Path top, Map<String, String> about) {
    /** Where the Javadoc stands in the site. */
    static final String FOLDER = "reference";

    private static final Pattern EXPORTS = Pattern.compile("(?m)^ *exports ([\\w.]+)");
    private static final Pattern COMMENT = Pattern.compile("(?s)/\\*\\*(.*?)\\*/\\s*(?:@\\S+\\s*)*package ");
    private static final List<String> MODULES = List.of("papermath-core", "papermath-json");

    static Reference of(Path top) throws IOException {
        Map<String, String> about = new TreeMap<>();
        for (String module : MODULES) {
            Path sources = top.resolve(module).resolve("src/main/java");
            Matcher exported = EXPORTS.matcher(Files.readString(sources.resolve("module-info.java")));
            while (exported.find()) {
                Path file = sources.resolve(exported.group(1).replace('.', '/')).resolve("package-info.java");
                Matcher comment = COMMENT.matcher(Files.readString(file));
                if (!comment.find()) {
                    throw new IllegalStateException(file + " has no comment");
                }
                about.put(exported.group(1), firstSentence(comment.group(1)));
            }
        }
        return new Reference(top, about);
    }

    private static String firstSentence(String comment) {
        String text = comment.replaceAll("\\s*\\n\\s*\\* ?", " ")
                .replaceAll("\\{@(?:code|link) #?([^}]*)}", "$1")
                .strip();
        int end = text.indexOf(". ");
        return end < 0 ? text : text.substring(0, end + 1);
    }

    private Path written() {
        return top.resolve("target/site/apidocs");
    }

    private boolean isWritten() {
        return Files.exists(written().resolve("index.html"));
    }

    /** A sentence on where the Javadoc is. */
    String whereItIs() {
        return isWritten()
                ? "Every public type, with its meaning, units, ranges, equations and sources, stands in the"
                        + " [Javadoc](" + FOLDER + "/index.html)."
                : "Every public type has a comment with its meaning, units, ranges, equations and sources. This copy of the"
                        + " site was made without them: `mvn javadoc:aggregate` writes them, and `mvn package` then takes them in.";
    }

    /** The packages, each with what it is about. */
    String packages() {
        StringBuilder out = new StringBuilder("<dl class=\"words\">\n");
        about.forEach((name, text) -> out.append("<div><dt id=\"")
                .append(name.replace('.', '-'))
                .append("\">")
                .append(
                        isWritten()
                                ? "<a href=\"" + page(name) + "\"><code>" + name + "</code></a>"
                                : "<code>" + name + "</code>")
                .append("</dt>\n<dd>")
                .append(Html.escape(text))
                .append("</dd></div>\n"));
        return out.append("</dl>").toString();
    }

    private static String page(String name) {
        return FOLDER + "/" + (name.startsWith("org.papermath.json") ? "org.papermath.json/" : "org.papermath.core/")
                + name.replace('.', '/') + "/package-summary.html";
    }

    /** Takes the Javadoc into the site. */
    void copy(Path out) throws IOException {
        if (!isWritten()) {
            return;
        }
        List<Path> files;
        try (Stream<Path> all = Files.walk(written())) {
            files = all.filter(Files::isRegularFile).toList();
        }
        for (Path file : files) {
            Path target = out.resolve(FOLDER).resolve(written().relativize(file).toString());
            Files.createDirectories(target.getParent());
            Files.copy(file, target, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
