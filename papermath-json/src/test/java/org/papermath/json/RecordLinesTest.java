package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.papermath.record.BatchRecord;

class RecordLinesTest {
    private static final String LINE = RecordLines.line(PapermathDocuments.readRecord(Batch.RECORD));

    @TempDir
    Path folder;

    private static InputStream stream(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void aRecordStandsOnOneLineAndLosesNothing() throws IOException {
        assertThat(LINE).endsWith("}\n").containsOnlyOnce("\n");
        List<RecordLines.Line> lines = new ArrayList<>();
        RecordLines.reader().read(stream(LINE), "", lines::add, bad -> {
            throw bad;
        });
        assertThat(lines).hasSize(1);
        assertThat(lines.get(0).value())
                .isEqualTo(PapermathDocuments.readRecord(Batch.RECORD).value());
        assertThat(RecordLines.line(lines.get(0).document())).isEqualTo(LINE);
        assertThat(PapermathDocuments.writeRecord(lines.get(0).document()))
                .isEqualTo(PapermathDocuments.writeRecord(PapermathDocuments.readRecord(Batch.RECORD)));
    }

    @Test
    void aBadLineIsReportedByItsNumberAndTheRestIsRead() throws IOException {
        String text = "\uFEFF" + LINE + "\r\n" + LINE.replace("\"handled\": 60", "\"handeld\": 60") + "  \n" + "{\n"
                + LINE.strip();
        List<Long> numbers = new ArrayList<>();
        List<DocumentException> bad = new ArrayList<>();
        RecordLines.Progress all =
                RecordLines.reader().read(stream(text), "batches.jsonl", one -> numbers.add(one.number()), bad::add);
        assertThat(all).isEqualTo(new RecordLines.Progress(6, 2, 2, text.getBytes(StandardCharsets.UTF_8).length));
        assertThat(numbers).containsExactly(1L, 6L);
        assertThat(bad)
                .flatExtracting(DocumentException::faults)
                .extracting(Fault::line)
                .containsExactly(3, 5);
        assertThat(bad.get(0))
                .hasMessageContaining("batches.jsonl, line 3, column ")
                .hasMessageContaining("Did you mean \"handled\"?");
    }

    @Test
    void whatIsWrittenTwiceInALineIsFoundInThatLine() throws IOException {
        List<DocumentException> bad = new ArrayList<>();
        String twice = LINE.replace("\"handled\": 60", "\"handled\": 60, \"handled\": 61");
        RecordLines.reader().read(stream(LINE + twice), "", one -> {}, bad::add);
        Fault fault = bad.get(0).faults().get(0);
        assertThat(fault.line()).isEqualTo(2);
        assertThat(fault.text()).contains("\"handled\" is written twice in one object; first in line 2, column ");
        assertThat(fault.arguments()).containsEntry("firstLine", 2);
    }

    @Test
    void stopsAtTheFirstBadLineWhenAsked() {
        List<Long> numbers = new ArrayList<>();
        DocumentException bad = catchThrowableOfType(
                DocumentException.class,
                () -> RecordLines.reader()
                        .stoppingAtFaults()
                        .read(stream(LINE + "oh\n" + LINE), "", one -> numbers.add(one.number()), fault -> {
                            throw new AssertionError(fault);
                        }));
        assertThat(bad.faults()).extracting(Fault::line).containsExactly(2);
        assertThat(numbers).containsExactly(1L);
    }

    @Test
    void aLineTooLongIsPassedOver() throws IOException {
        String text = "\"" + "a".repeat(3 * RecordLines.MOST_LINE_BYTES) + "\"\n" + LINE;
        List<DocumentException> bad = new ArrayList<>();
        RecordLines.Progress all = RecordLines.reader().read(stream(text), "", one -> {}, bad::add);
        assertThat(all.records()).isEqualTo(1);
        assertThat(bad)
                .flatExtracting(DocumentException::faults)
                .extracting(Fault::code)
                .containsExactly(FaultCodes.SIZE);
    }

    @Test
    void manyRecordsAreReadWithProgressInMemoryForOne() throws IOException {
        int count = Integer.getInteger("papermath.lines", 3000);
        long most = 0;
        byte[] line = LINE.getBytes(StandardCharsets.UTF_8);
        List<Long> told = new ArrayList<>();
        long[] heap = new long[2];
        RecordLines.Progress all = RecordLines.reader()
                .reportingEvery(count / 3, soFar -> {
                    told.add(soFar.records());
                    System.gc();
                    Runtime runtime = Runtime.getRuntime();
                    heap[told.size() == 1 ? 0 : 1] = runtime.totalMemory() - runtime.freeMemory();
                })
                .read(
                        new InputStream() {
                            private long at;

                            @Override
                            public int read() {
                                return at == (long) count * line.length ? -1 : line[(int) (at++ % line.length)];
                            }
                        },
                        "",
                        one -> {},
                        bad -> {
                            throw bad;
                        });
        assertThat(all.records()).isEqualTo(count);
        assertThat(told).startsWith((long) count / 3, 2L * (count / 3)).endsWith((long) count);
        assertThat(heap[1]).isLessThan(heap[0] + 20_000_000L);
    }

    @Test
    void savesInOneStepAndKeepsTheOldFileWhenItFails() throws IOException {
        Path file = folder.resolve("batches.jsonl");
        Document<BatchRecord> record = PapermathDocuments.readRecord(Batch.RECORD);
        RecordLines.save(file, Stream.of(record, record));
        assertThat(file).hasContent(LINE + LINE);
        assertThatThrownBy(() ->
                        RecordLines.save(file, Stream.of(record, record).peek(one -> {
                            throw new IllegalStateException("the source is gone");
                        })))
                .isInstanceOf(IllegalStateException.class);
        assertThat(file).hasContent(LINE + LINE);
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files).containsExactly(file);
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        RecordLines.write(out, Stream.of(record));
        assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo(LINE);
    }

    @Test
    void wantsANumberOfLines() {
        assertThatThrownBy(() -> RecordLines.reader().reportingEvery(0, soFar -> {}))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
