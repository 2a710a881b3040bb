package org.papermath.json;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.papermath.json.mapping.RecordMapping;
import org.papermath.record.BatchRecord;

/**
 * Records of many batches in one file, a whole record document on every line (JSON Lines, UTF-8). Reading and writing
 * go line by line, in memory for one. Immutable.
 *
 * <pre>{@code
 * RecordLines.Progress all = RecordLines.reader()
 *         .reportingEvery(10_000, soFar -> out.println(soFar.records() + " records"))
 *         .read(folder.resolve("batches.jsonl"), one -> batches.add(one.value()),
 *                 bad -> out.println(bad.getMessage()));
 * }</pre>
 *
 * <p>A line that cannot be read is handed over with its number and the rest is read on, unless
 * {@link #stoppingAtFaults()} was asked for. Empty lines are passed over. A record refers to no other document.
 */
public final class RecordLines {
    /** The longest line read, in bytes: 1 MiB. A longer one is reported and passed over without being held. */
    public static final int MOST_LINE_BYTES = 1024 * 1024;

    private static final int PIECE = 64 * 1024;
    private static final DocumentReader<BatchRecord> RECORDS =
            DocumentReader.of(RecordMapping.RECORD, RecordMapping::read);

    private final boolean stopping;
    private final long every;
    private final Consumer<? super Progress> report;

    /**
     * How far reading or writing has come.
     *
     * @param lines the lines so far, the empty and the faulty ones included
     * @param records the records so far
     * @param faulty the lines so far that could not be read
     * @param bytes the bytes so far
     */
    public record Progress(long lines, long records, long faulty, long bytes) {
        @Override
        public String toString() {
            return lines + " lines, " + records + " records, " + faulty + " faulty lines, " + bytes + " bytes";
        }
    }

    /**
     * One line of a file: an empty one is never handed over.
     *
     * @param number the number of the line, from 1
     * @param document the record
     */
    public record Line(long number, Document<BatchRecord> document) {
        /**
         * Returns the record.
         *
         * @return the record
         */
        public BatchRecord value() {
            return document.value();
        }

        @Override
        public String toString() {
            return "line " + number + ": " + document;
        }
    }

    private RecordLines(boolean stopping, long every, Consumer<? super Progress> report) {
        this.stopping = stopping;
        this.every = every;
        this.report = report;
    }

    /**
     * Returns a reader that goes on after a faulty line and reports no progress.
     *
     * @return the reader
     */
    public static RecordLines reader() {
        return new RecordLines(false, Long.MAX_VALUE, progress -> {});
    }

    /**
     * Returns a reader that stops at the first faulty line and throws its faults.
     *
     * @return the reader
     */
    public RecordLines stoppingAtFaults() {
        return new RecordLines(true, every, report);
    }

    /**
     * Returns a reader that says how far it has come.
     *
     * @param lines after how many lines each time, 1 or more
     * @param progress is notified; after the last line too
     * @return the reader
     * @throws IllegalArgumentException if the number of lines is less than 1
     */
    public RecordLines reportingEvery(long lines, Consumer<? super Progress> progress) {
        if (lines < 1) {
            throw new IllegalArgumentException("not a number of lines: " + lines);
        }
        return new RecordLines(stopping, lines, progress);
    }

    /**
     * Reads a file.
     *
     * @param file the file
     * @param each is given every record that could be read, in the order of the file
     * @param bad is given the faults of every line that could not; their line is the one of the file
     * @return what was read in all
     * @throws DocumentException at the first faulty line, if the reader stops there
     * @throws IOException if the file cannot be read
     */
    public Progress read(Path file, Consumer<? super Line> each, Consumer<? super DocumentException> bad)
            throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            Path name = file.getFileName();
            return read(in, name == null ? "" : name.toString(), each, bad);
        }
    }

    /**
     * Reads a stream to its end; it is not closed.
     *
     * @param in the stream, of UTF-8
     * @param name its name, for messages
     * @param each is given every record that could be read, in the order of the stream
     * @param bad is given the faults of every line that could not; their line is the one of the stream
     * @return what was read in all
     * @throws DocumentException at the first faulty line, if the reader stops there
     * @throws IOException if the stream cannot be read
     */
    public Progress read(
            InputStream in, String name, Consumer<? super Line> each, Consumer<? super DocumentException> bad)
            throws IOException {
        Reading reading = new Reading(name, each, bad);
        byte[] piece = new byte[PIECE];
        for (int got = in.read(piece); got >= 0; got = in.read(piece)) {
            reading.take(piece, got);
        }
        return reading.finish();
    }

    /** What stands of a file that is being read: the line that is not at its end yet, and the counts. */
    private final class Reading {
        private final String name;
        private final Consumer<? super Line> each;
        private final Consumer<? super DocumentException> bad;
        private final ByteArrayOutputStream line = new ByteArrayOutputStream(4096);
        private long length;
        private long lines;
        private long records;
        private long faulty;
        private long bytes;

        Reading(String name, Consumer<? super Line> each, Consumer<? super DocumentException> bad) {
            this.name = name;
            this.each = each;
            this.bad = bad;
        }

        void take(byte[] piece, int got) {
            bytes += got;
            int from = 0;
            for (int i = 0; i < got; i++) {
                if (piece[i] == '\n') {
                    hold(piece, from, i);
                    from = i + 1;
                    line();
                }
            }
            hold(piece, from, got);
        }

        private void hold(byte[] piece, int from, int to) {
            length += to - from;
            int room = MOST_LINE_BYTES - line.size();
            line.write(piece, from, Math.min(room, to - from));
        }

        private void line() {
            lines++;
            if (length > MOST_LINE_BYTES) {
                bad(new DocumentException(List.of(new Fault(
                        name,
                        "",
                        (int) Math.min(lines, Integer.MAX_VALUE),
                        1,
                        FaultCodes.SIZE,
                        length + " bytes",
                        List.of(),
                        "",
                        List.of(),
                        Map.of(),
                        "the line has " + length + " bytes; at most " + MOST_LINE_BYTES + " are read."))));
            } else {
                byte[] text = line.toByteArray();
                if (!isBlank(text)) {
                    read(text);
                }
            }
            line.reset();
            length = 0;
            if (lines % every == 0) {
                report.accept(progress());
            }
        }

        private void read(byte[] text) {
            Document<BatchRecord> document;
            try {
                document = RECORDS.read(text, name);
            } catch (DocumentException e) {
                bad(new DocumentException(e.faults().stream().map(this::placed).toList()));
                return;
            }
            records++;
            each.accept(new Line(lines, document));
        }

        private Fault placed(Fault fault) {
            int number = (int) Math.min(lines, Integer.MAX_VALUE);
            Map<String, Object> arguments = new LinkedHashMap<>(fault.arguments());
            String text = fault.text();
            // The first of two members of one name stands in this line too.
            if (arguments.replace("firstLine", number) != null) {
                text = text.replace("first in line 1,", "first in line " + number + ",");
            }
            return new Fault(
                    fault.document(),
                    fault.pointer(),
                    number,
                    fault.column(),
                    fault.code(),
                    fault.found(),
                    fault.accepted(),
                    fault.nearest(),
                    fault.candidates(),
                    arguments,
                    text);
        }

        private void bad(DocumentException faults) {
            faulty++;
            if (stopping) {
                throw faults;
            }
            bad.accept(faults);
        }

        private Progress progress() {
            return new Progress(lines, records, faulty, bytes);
        }

        Progress finish() {
            if (length > 0) {
                line();
            }
            if (every != Long.MAX_VALUE) {
                report.accept(progress());
            }
            return progress();
        }
    }

    private static boolean isBlank(byte[] text) {
        for (byte one : text) {
            if (one != ' ' && one != '\t' && one != '\r') {
                return false;
            }
        }
        return true;
    }

    /**
     * Returns the line of a record.
     *
     * @param record the record
     * @return the text, with a line break at its end and none within
     */
    public static String line(Document<BatchRecord> record) {
        Objects.requireNonNull(record, "record");
        return DocumentWriter.writeLine(RecordMapping.RECORD, record, RecordMapping::write);
    }

    /**
     * Writes records to a stream, in UTF-8; it is not closed.
     *
     * @param out the stream
     * @param records the records, taken one after another
     * @throws IOException if the stream cannot be written
     */
    public static void write(OutputStream out, Stream<Document<BatchRecord>> records) throws IOException {
        Objects.requireNonNull(records, "records");
        Objects.requireNonNull(out, "out");
        for (Iterator<Document<BatchRecord>> all = records.iterator(); all.hasNext(); ) {
            out.write(line(all.next()).getBytes(StandardCharsets.UTF_8));
        }
    }

    /**
     * Saves records in a file, in one step as {@link DocumentFiles#save(Path, String)} does: it is the old one or the
     * new one, never half of either.
     *
     * @param file the file, which may exist; its folder must
     * @param records the records, taken one after another
     * @throws IOException if it cannot be saved; the old file is then as it was
     */
    public static void save(Path file, Stream<Document<BatchRecord>> records) throws IOException {
        Objects.requireNonNull(file, "file");
        Objects.requireNonNull(records, "records");
        DocumentFiles.save(file, out -> write(out, records));
    }

    @Override
    public String toString() {
        return "reader of record lines" + (stopping ? ", stopping at faults" : "");
    }
}
