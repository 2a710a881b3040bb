package org.papermath.json;

import java.util.function.BiConsumer;

/**
 * Writes documents: JSON on lines of its own, the members in the order the mapping gives them, the members of others
 * where they stood. The same document gives the same text everywhere.
 */
public final class DocumentWriter {
    private DocumentWriter() {
    }

    /**
     * Writes a document.
     *
     * @param <T> the type of the value
     * @param format the format, for the head
     * @param document the value with what is kept beside it
     * @param mapping writes the members of the value, other than the head
     * @return the text, with a line break at its end
     */
    public static <T> String write(DocumentFormat format, Document<T> document,
            BiConsumer<? super ObjectOut, ? super T> mapping) {
        StringBuilder text = new StringBuilder(1024);
        new ValueOut(text, document.kept(), 0, "").object(out -> {
            out.member("format").text(format.word());
            out.member("version").text(format.version());
            mapping.accept(out, document.value());
        });
        return text.append('\n').toString();
    }
}
