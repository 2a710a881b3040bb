package org.papermath.site;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** The words of the trade and of standards among all words of the library, as people write them, each with all it means. */
final class Glossary {
    private final Map<String, Set<String>> meanings = new TreeMap<>();
    private final Map<String, Set<String>> places = new TreeMap<>();
    private final Map<String, Set<String>> origins = new TreeMap<>();

    private Glossary() {}

    /** Reads the list of words. */
    static Glossary of(Path list) throws IOException {
        Glossary glossary = new Glossary();
        for (String line : Files.readAllLines(list)) {
            List<String> cells = Contents.cells(line);
            String origin = cells.get(2);
            if (origin.equals("trade") || origin.startsWith("standard")) {
                glossary.add(cells.get(0), cells.get(1), origin, cells.get(3));
            }
        }
        return glossary;
    }

    private void add(String name, String kind, String origin, String meaning) {
        String word = written(name, kind);
        if (word.length() == 1) {
            // A letter of a formula, such as the a* of a colour.
            return;
        }
        meanings.computeIfAbsent(word, one -> new LinkedHashSet<>()).add(sentence(meaning));
        places.computeIfAbsent(word, one -> new TreeSet<>())
                .add(
                        switch (kind) {
                            case "label" -> "on the card";
                            case "member" -> "in documents as <code>" + name + "</code>";
                            case "type" -> "in code as <code>" + name + "</code>";
                            default -> "on drawings";
                        });
        if (!origin.equals("trade")) {
            origins.computeIfAbsent(word, one -> new TreeSet<>()).add(origin.replace("standard: ", ""));
        }
    }

    /** With a capital at the beginning, unless a sign stands there, and no full stop. */
    private static String sentence(String meaning) {
        boolean sign = meaning.length() > 1 && !Character.isLetter(meaning.charAt(1)) && meaning.charAt(1) != ' ';
        return (sign ? meaning.substring(0, 1) : meaning.substring(0, 1).toUpperCase(Locale.ROOT))
                + meaning.substring(1).replaceAll("\\.$", "");
    }

    /** A name as people write it: the last part of a type, the words of a name in one, in small letters. */
    static String written(String name, String kind) {
        String last = kind.equals("type") ? name.substring(name.lastIndexOf('.') + 1) : name;
        return last.replaceAll("(?<=[a-z])(?=[A-Z])", " ")
                .toLowerCase(Locale.ROOT)
                .replaceAll(" (model|kind)$", "");
    }

    /** {@return how many words there are} */
    int size() {
        return meanings.size();
    }

    /** {@return the words, from a to z} */
    String html() {
        StringBuilder out = new StringBuilder("<dl class=\"words\">\n");
        meanings.forEach((word, all) -> {
            List<String> told = new ArrayList<>();
            all.forEach(one -> told.add(Html.escape(one)));
            out.append("<div><dt id=\"")
                    .append(word.replaceAll("[^a-z0-9]+", "-"))
                    .append("\">")
                    .append(Html.escape(word))
                    .append("</dt>\n<dd>")
                    .append(String.join(". ", told))
                    .append(". <small>")
                    .append(String.join(", ", places.getOrDefault(word, Set.of())))
                    .append(origins.containsKey(word) ? "; the word of " + String.join(", ", origins.get(word)) : "")
                    .append("</small></dd></div>\n");
        });
        return out.append("</dl>").toString();
    }
}
