package org.papermath.text;

import java.util.ArrayList;
import java.util.List;

/** Breaks text between words into lines that fit a width. */
public final class Wrap {
    private Wrap() {}

    /**
     * Breaks a text into lines of at most a number of characters; a word longer than that stands alone. Runs of white
     * space become one blank.
     *
     * @return the lines; none for a text of nothing but white space
     */
    public static List<String> lines(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+", -1)) {
            if (line.length() > 0 && line.length() + 1 + word.length() > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        if (line.length() > 0) {
            lines.add(line.toString());
        }
        return lines;
    }
}
