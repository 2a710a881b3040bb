package org.papermath.json.kit;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.papermath.json.DocumentFormat;
import org.papermath.json.DocumentResolver;
import org.papermath.json.FaultCodes;
import org.papermath.json.WrittenBy;
import org.papermath.json.tree.FaultLog;
import org.papermath.json.tree.ForeignMembers;
import org.papermath.json.tree.JsonTree;
import org.papermath.json.tree.JsonValue;
import org.papermath.json.tree.Owner;
import org.papermath.json.tree.ReadableText;
import org.papermath.json.tree.Source;
import org.papermath.quantity.PapermathException;

/**
 * Whole documents, and where their values begin: what the rest of this module needs of the kit beside what everybody
 * holds. Its types are those of rooms that are not exported, so nobody outside can call it.
 *
 * @hidden
 */
@SuppressWarnings("exports")
public final class WholeDocuments {
    /** The level of a document that stands on one line. */
    public static final int ONE_LINE = ValueWriter.ONE_LINE;
    /** How many references may lead from document to document. */
    private static final int MOST_REFERENCES = 8;

    private static final Pattern VERSION = Pattern.compile("(0|[1-9][0-9]{0,5})\\.(0|[1-9][0-9]{0,5})");

    /** Characters that most records, and most other documents, fit into. */
    private static final int LINE_ROOM = 4096;

    private static final int ROOM = 16384;

    private WholeDocuments() {}

    /**
     * Returns a reader of one value.
     *
     * @param source where faults go
     * @param value the value
     * @return its reader
     */
    public static ValueReader reader(Source source, JsonValue value) {
        return ValueReader.of(source, value);
    }

    /**
     * Returns a writer of one value on one line, with nothing kept beside it.
     *
     * @param text where it is written
     * @return the writer
     */
    public static ValueWriter writer(StringBuilder text) {
        return new ValueWriter(text, new ForeignMembers(), ValueWriter.ONE_LINE, "");
    }

    /**
     * Reads a value; a refusal or a faulty value taken too early ends up at its place.
     *
     * @param <T> the type of the value
     * @param at where it stands
     * @param reading reads it
     * @return the value
     */
    public static <T> ReadResult<T> read(ValueReader at, Function<? super ValueReader, ReadResult<T>> reading) {
        return at.guarded(reading, at);
    }

    /**
     * Returns the object in which a value stands as a member.
     *
     * @param member the value
     * @return the object, or the value itself where it stands in none
     */
    public static Owner ownerOf(ReadResult<?> member) {
        ValueReader at = member.place();
        JsonValue around = at.value().parent();
        return new Owner(at.source(), around == null ? at.value() : around);
    }

    /**
     * Makes another value of one that was read; what is refused meanwhile is told where somebody else knows.
     *
     * @param <T> the type of the value
     * @param <R> the type of the other value
     * @param value the value
     * @param function what makes the other one
     * @param refused tells the refusal, with the object that was read
     * @return the other value, or a faulty one
     */
    public static <T, R> ReadResult<R> make(
            ReadResult<T> value,
            Function<? super T, ? extends R> function,
            BiConsumer<? super Owner, ? super PapermathException> refused) {
        ValueReader at = value.place();
        if (value.isFaulty() || !value.isGiven()) {
            return ReadResult.faulty(at);
        }
        try {
            return ReadResult.of(at, function.apply(value.get()));
        } catch (PapermathException e) {
            refused.accept(new Owner(at.source(), at.value()), e);
            return ReadResult.faulty(at);
        }
    }

    /**
     * Returns whether a list was so long that not all of it is held.
     *
     * @param list where it stands
     * @return whether items are missing
     */
    public static boolean isCut(ValueReader list) {
        return list.isCut();
    }

    /**
     * Reads a value of one sort as it stands, whatever is in it.
     *
     * @param at where it stands
     * @param wanted the sort
     * @return the value, on its own
     */
    public static ReadResult<JsonValue> tree(ValueReader at, JsonValue.Type wanted) {
        return at.tree(wanted);
    }

    /**
     * Writes a value as it was, with what is kept in it.
     *
     * @param out where to write it
     * @param value the value
     */
    public static void write(ValueWriter out, JsonValue value) {
        out.figures(value);
    }

    /**
     * Reads a document: its head, which is checked, and by a mapping the rest of it.
     *
     * @param <T> the type of the value
     * @param source where faults go
     * @param bytes the text in UTF-8
     * @param format the format wanted
     * @param mapping asks for the members other than the head, and makes the value
     * @return the value; empty after a fault that leaves nothing to read it by
     */
    public static <T> Optional<ReadResult<T>> read(
            Source source, byte[] bytes, DocumentFormat format, Function<? super ObjectReader, ReadResult<T>> mapping) {
        return JsonTree.read(bytes, source, format.renamed()).flatMap(root -> {
            ValueReader at = ValueReader.of(source, root);
            ObjectReader object = at.object();
            if (!at.isObject() || !isHeadRead(source, object, format)) {
                return Optional.empty();
            }
            return Optional.of(at.guarded(mapping, object));
        });
    }

    /** Checks the head; false if the rest would be read by the wrong rules. */
    private static boolean isHeadRead(Source source, ObjectReader object, DocumentFormat format) {
        ReadResult<String> word = object.required("format").text();
        ReadResult<String> version = object.required("version").text();
        object.optional("writtenBy")
                .object(WholeDocuments::writtenBy)
                .optionalUnlessFaulty()
                .ifPresent(source.kept()::writtenBy);
        boolean right = true;
        if (word.isGiven() && !word.isFaulty() && !word.get().equals(format.word())) {
            word.refuse(
                    FaultCodes.FORMAT,
                    "\"" + JsonValue.shown(word.get())
                            + "\" is written; a document of the format \""
                            + format.word() + "\" is expected here.",
                    List.of(format.word()));
            right = false;
        }
        if (version.isGiven() && !version.isFaulty() && !version.get().equals(format.version())) {
            Matcher parts = VERSION.matcher(version.get());
            if (!parts.matches()) {
                version.refuse(
                        FaultCodes.VERSION,
                        "\"" + JsonValue.shown(version.get()) + "\" is not a version. Write a text such as \""
                                + format.version() + "\".",
                        List.of(format.version()));
            } else if (Integer.parseInt(parts.group(1)) != format.major()
                    || Integer.parseInt(parts.group(2)) > format.minor()) {
                version.refuse(
                        FaultCodes.VERSION_OTHER,
                        "the document has version " + version.get() + " of "
                                + format.word() + "; this version of the library reads " + format.major() + ".0 to "
                                + format.version() + ". Use a version of the library that reads " + version.get() + ".",
                        List.of(format.version()));
                right = false;
            }
        }
        return right;
    }

    private static ReadResult<WrittenBy> writtenBy(ObjectReader in) {
        ReadResult<String> program = in.required("program").text();
        ReadResult<String> version = in.required("version").text();
        return in.make(() -> new WrittenBy(program.get(), version.get()));
    }

    /** Reads a document another one refers to. */
    static <T> ReadResult<T> follow(
            Source from,
            JsonValue at,
            String reference,
            DocumentFormat format,
            Function<? super ObjectReader, ReadResult<T>> mapping) {
        ValueReader place = ValueReader.of(from, at);
        if (from.depth() >= MOST_REFERENCES) {
            place.refuse(
                    FaultCodes.REFERENCE_DEPTH,
                    "references lead on through more than " + MOST_REFERENCES + " documents. Write the part in full.",
                    List.of());
            return ReadResult.faulty(place);
        }
        DocumentResolver.Found found;
        try {
            found = from.resolver().find(reference);
        } catch (PapermathException e) {
            place.refuse(e, List.of());
            return ReadResult.faulty(place);
        } catch (IOException e) {
            place.refuse(
                    FaultCodes.REFERENCE_UNREADABLE,
                    "\"" + JsonValue.shown(reference) + "\" cannot be read.",
                    List.of());
            return ReadResult.faulty(place);
        }
        Source source = new Source(found.name(), from.session(), found.next(), from.depth() + 1);
        ReadResult<T> got = read(source, found.bytes(), format, mapping).orElse(ReadResult.faulty(place));
        if (!got.isFaulty()) {
            from.kept().addReference(at.parent() == null ? at : at.parent(), reference, source.kept());
        }
        return got;
    }

    /**
     * Returns a value as its document would give it, without what is kept beside it.
     *
     * @param <T> the type of the value
     * @param format the format, for the head
     * @param value the value
     * @param mapping writes the members of the value, other than the head
     * @return the whole document
     */
    public static <T> JsonValue tree(
            DocumentFormat format, T value, BiConsumer<? super ObjectWriter, ? super T> mapping) {
        String plain = write(format, value, new ForeignMembers(), mapping, ValueWriter.ONE_LINE);
        return JsonTree.read(
                        plain.getBytes(StandardCharsets.UTF_8),
                        new Source(
                                "",
                                new FaultLog(),
                                reference -> {
                                    throw new IllegalStateException("nothing is followed here");
                                },
                                0),
                        List.of())
                .orElseThrow(() -> new IllegalStateException("what is written cannot be read: " + format));
    }

    /**
     * Writes a document.
     *
     * @param <T> the type of the value
     * @param format the format, for the head
     * @param value the value
     * @param kept what is kept beside it
     * @param mapping writes the members of the value, other than the head
     * @param level the level it stands at, 0 or {@link #ONE_LINE}
     * @return the text, with a line break at its end
     */
    public static <T> String write(
            DocumentFormat format,
            T value,
            ForeignMembers kept,
            BiConsumer<? super ObjectWriter, ? super T> mapping,
            int level) {
        StringBuilder text = new StringBuilder(level == ValueWriter.ONE_LINE ? LINE_ROOM : ROOM);
        new ValueWriter(text, kept, level, "").object(out -> {
            out.member("format").text(format.word());
            out.member("version").text(format.version());
            kept.writtenBy()
                    .ifPresent(who -> out.member("writtenBy").object(by -> {
                        by.member("program").text(ReadableText.name(who.program()));
                        by.member("version").text(ReadableText.name(who.version()));
                    }));
            mapping.accept(out, value);
        });
        return text.append('\n').toString();
    }
}
