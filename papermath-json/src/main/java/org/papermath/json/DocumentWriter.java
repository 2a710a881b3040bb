package org.papermath.json;

import java.util.Objects;
import java.util.function.BiConsumer;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.WholeDocuments;
import org.papermath.json.tree.ForeignMembers;
import org.papermath.json.tree.ListMatching;

/**
 * Writes documents: JSON on lines of its own, the members in the order the mapping gives them, the members of others
 * where they stood. The same document gives the same text everywhere.
 */
public final class DocumentWriter {
    private DocumentWriter() {}

    /**
     * Writes a document.
     *
     * @param <T> the type of the value
     * @param format the format, for the head
     * @param document the value with what is kept beside it
     * @param mapping writes the members of the value, other than the head
     * @return the text, with a line break at its end
     */
    public static <T> String write(
            DocumentFormat format, Document<T> document, BiConsumer<? super ObjectWriter, ? super T> mapping) {
        Objects.requireNonNull(format, "format");
        Objects.requireNonNull(document, "document");
        Objects.requireNonNull(mapping, "mapping");
        return write(format, document, mapping, 0);
    }

    /**
     * Writes a document on one line, for files with a document on every line.
     *
     * @param <T> the type of the value
     * @param format the format, for the head
     * @param document the value with what is kept beside it
     * @param mapping writes the members of the value, other than the head
     * @return the text, with a line break at its end and none within
     */
    public static <T> String writeLine(
            DocumentFormat format, Document<T> document, BiConsumer<? super ObjectWriter, ? super T> mapping) {
        Objects.requireNonNull(format, "format");
        Objects.requireNonNull(document, "document");
        Objects.requireNonNull(mapping, "mapping");
        return write(format, document, mapping, WholeDocuments.ONE_LINE);
    }

    private static <T> String write(
            DocumentFormat format,
            Document<T> document,
            BiConsumer<? super ObjectWriter, ? super T> mapping,
            int level) {
        ForeignMembers kept = document.kept();
        if (document.isEdited() && !kept.isEmpty()) {
            kept = kept.movedBy(new ListMatching(
                    WholeDocuments.tree(format, document.original(), mapping),
                    WholeDocuments.tree(format, document.value(), mapping)));
        }
        return WholeDocuments.write(format, document.value(), kept, mapping, level);
    }
}
