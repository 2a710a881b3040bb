package org.papermath.examples;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Files of the project as they stand beside the examples, and the fenced blocks of its pages. */
public final class Pages {
    private static final String FENCE = "```";

    private Pages() {}

    /** Returns a file of the project, named from its top. */
    public static Path file(String name) {
        Path here = Path.of("").toAbsolutePath();
        Path top = Files.exists(here.resolve("LICENSE")) ? here : here.getParent();
        return top.resolve(name);
    }

    public static String text(String name) {
        try {
            return Files.readString(file(name)).replace("\r\n", "\n");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Returns the blocks of a page that are marked with a word, such as {@code java}. */
    public static List<String> blocks(String name, String word) {
        List<String> blocks = new ArrayList<>();
        StringBuilder block = null;
        for (String line : text(name).split("\n", -1)) {
            if (block != null && line.equals(FENCE)) {
                blocks.add(block.toString());
                block = null;
            } else if (block != null) {
                block.append(line).append('\n');
            } else if (line.equals(FENCE + word)) {
                block = new StringBuilder();
            }
        }
        return blocks;
    }
}
