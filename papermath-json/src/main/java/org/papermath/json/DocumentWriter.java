package org.papermath.json;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.BiConsumer;

/**
 * Writes documents: JSON on lines of its own, the members in the order the mapping gives them, the members of others
 * where they stood. The same document gives the same text everywhere.
 */
public final class DocumentWriter {
    /** Characters that most records, and most other documents, fit into. */
    private static final int LINE_ROOM = 4096;
    private static final int ROOM = 16384;

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
    public static <T> String writeLine(DocumentFormat format, Document<T> document,
            BiConsumer<? super ObjectOut, ? super T> mapping) {
        return write(format, document, mapping, ValueOut.ONE_LINE);
    }

    private static <T> String write(DocumentFormat format, Document<T> document,
            BiConsumer<? super ObjectOut, ? super T> mapping, int level) {
        Kept kept = document.kept();
        if (document.isEdited() && !kept.isEmpty()) {
            kept = kept.movedBy(new Moves(tree(format, document.original(), mapping),
                    tree(format, document.value(), mapping)));
        }
        return write(format, document.value(), kept, mapping, level);
    }

    private static <T> JsonValue tree(DocumentFormat format, T value,
            BiConsumer<? super ObjectOut, ? super T> mapping) {
        String plain = write(format, value, new Kept(), mapping, ValueOut.ONE_LINE);
        return JsonTree.read(plain.getBytes(StandardCharsets.UTF_8), new Source("", new Session(), reference -> {
            throw new IllegalStateException("nothing is followed here");
        }, 0), List.of()).orElseThrow(() -> new IllegalStateException("what is written cannot be read: " + format));
    }

    private static <T> String write(DocumentFormat format, T value, Kept kept,
            BiConsumer<? super ObjectOut, ? super T> mapping, int level) {
        StringBuilder text = new StringBuilder(level == ValueOut.ONE_LINE ? LINE_ROOM : ROOM);
        new ValueOut(text, kept, level, "").object(out -> {
            out.member("format").text(format.word());
            out.member("version").text(format.version());
            kept.writtenBy().ifPresent(who -> out.member("writtenBy").object(by -> {
                Common.text(by.member("program"), who.program());
                Common.text(by.member("version"), who.version());
            }));
            mapping.accept(out, value);
        });
        return text.append('\n').toString();
    }
}
