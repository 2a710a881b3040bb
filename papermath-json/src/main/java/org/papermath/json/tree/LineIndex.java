package org.papermath.json.tree;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.TokenStreamLocation;

/**
 * The places of the values of a document, by their number in the order of the text. A document without faults never
 * asks for them, so they are found by going through the text a second time, when the first fault does.
 */
final class LineIndex {
    private static final int PARTS = 4;

    private final @Nullable Again again;
    private int[] parts = new int[0];
    private int count;
    private boolean complete;

    /** Opens the text once more. */
    interface Again {
        JsonParser open();
    }

    /**
     * Creates the places.
     *
     * @param again opens the text once more; null if it cannot be, and places are {@linkplain #add added} while reading
     */
    LineIndex(@Nullable Again again) {
        this.again = again;
    }

    boolean isAddedWhileReading() {
        return again == null;
    }

    void add(TokenStreamLocation value, @Nullable TokenStreamLocation name) {
        int at = PARTS * count++;
        if (at == parts.length) {
            parts = Arrays.copyOf(parts, Math.max(16 * PARTS, 2 * parts.length));
        }
        parts[at] = value.getLineNr();
        parts[at + 1] = value.getColumnNr();
        parts[at + 2] = name == null ? parts[at] : name.getLineNr();
        parts[at + 3] = name == null ? parts[at + 1] : name.getColumnNr();
    }

    int line(int number) {
        return part(number, 0);
    }

    int column(int number) {
        return part(number, 1);
    }

    int nameLine(int number) {
        return part(number, 2);
    }

    int nameColumn(int number) {
        return part(number, 3);
    }

    private int part(int number, int part) {
        if (again != null && !complete) {
            complete = true;
            goThrough(again);
        }
        return number < count ? parts[PARTS * number + part] : 1;
    }

    private void goThrough(Again text) {
        try (JsonParser parser = text.open()) {
            TokenStreamLocation name = null;
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if (token == JsonToken.PROPERTY_NAME) {
                    name = parser.currentTokenLocation();
                } else if (token != JsonToken.END_OBJECT && token != JsonToken.END_ARRAY) {
                    add(parser.currentTokenLocation(), name);
                    name = null;
                }
            }
        } catch (JacksonException e) {
            // The first reading came no further and reported why.
        }
    }
}
