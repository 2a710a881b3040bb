package org.papermath.json;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.Predicate;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.WholeDocuments;
import org.papermath.json.tree.FaultLog;
import org.papermath.json.tree.JsonTree;
import org.papermath.json.tree.JsonValue;
import org.papermath.json.tree.Source;
import org.papermath.quantity.Refused;

/**
 * Reads whole documents of one format and reports all their faults at once, each at its line and column. Immutable.
 *
 * <p>Documents are JSON in UTF-8, with or without a byte order mark, without comments, at most {@value #MOST_BYTES}
 * bytes and {@value #MOST_LEVELS} levels deep. No member may be written twice. The head is checked: {@code "format"}
 * names the format and {@code "version"} one that this version of the library reads.
 *
 * @param <T> the type of the value
 */
public final class DocumentReader<T> {
    /** The greatest document read, in bytes: 8 MiB. */
    public static final int MOST_BYTES = JsonTree.MOST_BYTES;

    /** How many objects and lists may stand in one another. */
    public static final int MOST_LEVELS = JsonTree.MOST_LEVELS;

    private static final DocumentResolver NONE = reference -> {
        throw Refused.of(
                FaultCodes.REFERENCE_NONE,
                "\"" + JsonValue.shown(reference)
                        + "\" is in another document, and none is opened here. Write the part in full instead.",
                "found",
                reference);
    };

    private final DocumentFormat format;
    private final Function<? super ObjectReader, ReadResult<T>> mapping;
    private final DocumentResolver resolver;
    private final Predicate<String> shortLists;

    private DocumentReader(
            DocumentFormat format,
            Function<? super ObjectReader, ReadResult<T>> mapping,
            DocumentResolver resolver,
            Predicate<String> shortLists) {
        this.shortLists = shortLists;
        this.format = format;
        this.mapping = mapping;
        this.resolver = resolver;
    }

    /**
     * Makes a reader that follows no references.
     *
     * @param <T> the type of the value
     * @param format the format read
     * @param mapping asks for the members of the document, other than its head, and makes the value
     * @return the reader
     */
    public static <T> DocumentReader<T> of(
            DocumentFormat format, Function<? super ObjectReader, ReadResult<T>> mapping) {
        Objects.requireNonNull(format, "format");
        Objects.requireNonNull(mapping, "mapping");
        return new DocumentReader<>(format, mapping, NONE, list -> false);
    }

    /**
     * Returns a reader that follows references.
     *
     * @param documents finds the documents referred to
     * @return the reader
     */
    public DocumentReader<T> following(DocumentResolver documents) {
        return new DocumentReader<>(format, mapping, documents, shortLists);
    }

    /** Returns a reader that only counts what is more than {@link JsonTree#MANY} items in lists at such pointers. */
    DocumentReader<T> withShortLists(Predicate<String> lists) {
        return new DocumentReader<>(format, mapping, resolver, lists);
    }

    /**
     * Reads a document.
     *
     * @param bytes the text in UTF-8
     * @return the document
     * @throws DocumentException if it has faults
     */
    public Document<T> read(byte[] bytes) {
        return read(bytes, "");
    }

    /**
     * Reads a document.
     *
     * @param text the text
     * @return the document
     * @throws DocumentException if it has faults
     */
    public Document<T> read(String text) {
        return read(text.getBytes(StandardCharsets.UTF_8), "");
    }

    /**
     * Reads a file. References are followed in its folder and below, unless a resolver was given.
     *
     * @param file the file
     * @return the document
     * @throws DocumentException if it has faults
     * @throws IOException if the file cannot be opened
     */
    public Document<T> read(Path file) throws IOException {
        Path real = file.toRealPath();
        Path folder = real.getParent();
        Path name = real.getFileName();
        DocumentReader<T> reader = resolver == NONE && folder != null ? following(FolderResolver.of(folder)) : this;
        return reader.read(FolderResolver.read(real), name == null ? "" : name.toString());
    }

    /**
     * Reads a document that has a name.
     *
     * @param bytes the text in UTF-8
     * @param name the name, for messages
     * @return the document
     * @throws DocumentException if it has faults
     */
    public Document<T> read(byte[] bytes, String name) {
        FaultLog session = new FaultLog(shortLists);
        Source source = new Source(name, session, resolver, 0);
        ReadResult<T> got = WholeDocuments.read(source, bytes, format, mapping).orElse(null);
        if (session.hasFaults()) {
            throw session.exception();
        }
        if (got == null || got.isFaulty() || !got.isGiven()) {
            throw new IllegalStateException("the mapping of " + format.word() + " gave no value and reported no fault");
        }
        return new Document<>(got.get(), source.kept().detached(), session.notes());
    }

    @Override
    public String toString() {
        return "reader of " + format.word() + " " + format.version();
    }
}
