package org.papermath.json;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.papermath.quantity.PapermathException;
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
    public static final int MOST_BYTES = 8 * 1024 * 1024;

    /** How many objects and lists may stand in one another. */
    public static final int MOST_LEVELS = 64;

    /** How many references may lead from document to document. */
    static final int MOST_REFERENCES = 8;

    private static final Pattern VERSION = Pattern.compile("(0|[1-9][0-9]{0,5})\\.(0|[1-9][0-9]{0,5})");

    private static final DocumentResolver NONE = reference -> {
        throw Refused.of(FaultCodes.REFERENCE_NONE, "\"" + JsonValue.shown(reference)
                + "\" is in another document, and none is opened here. Write the part in full instead.", "found",
                reference);
    };

    private final DocumentFormat format;
    private final Function<? super ObjectAt, Got<T>> mapping;
    private final DocumentResolver resolver;
    private final Predicate<String> shortLists;

    private DocumentReader(DocumentFormat format, Function<? super ObjectAt, Got<T>> mapping,
            DocumentResolver resolver, Predicate<String> shortLists) {
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
    public static <T> DocumentReader<T> of(DocumentFormat format, Function<? super ObjectAt, Got<T>> mapping) {
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

    /** Returns a reader that only counts what is more than {@link Common#MANY} items in lists at such pointers. */
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
        Session session = new Session(shortLists);
        Source source = new Source(name, session, resolver, 0);
        Got<T> got = value(source, bytes, format, mapping).orElse(null);
        if (session.hasFaults()) {
            throw session.exception();
        }
        if (got == null || got.isFaulty() || !got.isGiven()) {
            throw new IllegalStateException("the mapping of " + format.word() + " gave no value and reported no fault");
        }
        return new Document<>(got.get(), source.kept().detached(), session.notes());
    }

    private static <T> Optional<Got<T>> value(Source source, byte[] bytes, DocumentFormat format,
            Function<? super ObjectAt, Got<T>> mapping) {
        return JsonTree.read(bytes, source, format.renamed()).flatMap(root -> {
            ValueAt at = ValueAt.of(source, root);
            ObjectAt object = at.object();
            if (!at.isObject() || !isHeadRead(source, object, format)) {
                return Optional.empty();
            }
            return Optional.of(at.guarded(mapping, object));
        });
    }

    /** Checks the head; false if the rest would be read by the wrong rules. */
    private static boolean isHeadRead(Source source, ObjectAt object, DocumentFormat format) {
        Got<String> word = object.required("format").text();
        Got<String> version = object.required("version").text();
        object.optional("writtenBy").object(DocumentReader::writtenBy).optionalUnlessFaulty()
                .ifPresent(source.kept()::writtenBy);
        boolean right = true;
        if (word.isGiven() && !word.isFaulty() && !word.get().equals(format.word())) {
            word.refuse(FaultCodes.FORMAT, "\"" + JsonValue.shown(word.get())
                    + "\" is written; a document of the format \""
                    + format.word() + "\" is wanted here.", List.of(format.word()));
            right = false;
        }
        if (version.isGiven() && !version.isFaulty() && !version.get().equals(format.version())) {
            Matcher parts = VERSION.matcher(version.get());
            if (!parts.matches()) {
                version.refuse(FaultCodes.VERSION, "\"" + JsonValue.shown(version.get())
                        + "\" is not a version. Write a text such as \"" + format.version() + "\".",
                        List.of(format.version()));
            } else if (Integer.parseInt(parts.group(1)) != format.major()
                    || Integer.parseInt(parts.group(2)) > format.minor()) {
                version.refuse(FaultCodes.VERSION_OTHER, "the document has version " + version.get() + " of "
                        + format.word() + "; this version of the library reads " + format.major() + ".0 to "
                        + format.version() + ". Use a version of the library that reads " + version.get() + ".",
                        List.of(format.version()));
                right = false;
            }
        }
        return right;
    }

    private static Got<WrittenBy> writtenBy(ObjectAt in) {
        Got<String> program = in.required("program").text();
        Got<String> version = in.required("version").text();
        return in.make(() -> new WrittenBy(program.get(), version.get()));
    }

    static <T> Got<T> follow(Source from, JsonValue at, String reference, DocumentFormat format,
            Function<? super ObjectAt, Got<T>> mapping) {
        ValueAt place = ValueAt.of(from, at);
        if (from.depth() >= MOST_REFERENCES) {
            place.refuse(FaultCodes.REFERENCE_DEPTH, "references lead on through more than " + MOST_REFERENCES
                    + " documents. Write the part in full.", List.of());
            return Got.faulty(place);
        }
        DocumentResolver.Found found;
        try {
            found = from.resolver().find(reference);
        } catch (PapermathException e) {
            place.refuse(e, List.of());
            return Got.faulty(place);
        } catch (IOException e) {
            place.refuse(FaultCodes.REFERENCE_UNREADABLE, "\"" + JsonValue.shown(reference) + "\" cannot be read.",
                    List.of());
            return Got.faulty(place);
        }
        Source source = new Source(found.name(), from.session(), found.next(), from.depth() + 1);
        Got<T> got = value(source, found.bytes(), format, mapping).orElse(Got.faulty(place));
        if (!got.isFaulty()) {
            from.kept().addReference(at.parent() == null ? at : at.parent(), reference,
                    source.kept());
        }
        return got;
    }

    @Override
    public String toString() {
        return "reader of " + format.word() + " " + format.version();
    }
}
