package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.papermath.plan.MakingPlan;

/**
 * Documents with random damage: some thousand in short runs, {@code -Dpapermath.mutations} in long ones. Each is read,
 * or refused with faults that have a place; nothing else is thrown, none takes a second, and memory does not grow.
 */
class MutatedDocumentsTest {
    private static final List<String> PIECES = List.of(
            "{",
            "}",
            "[",
            "]",
            ",",
            ":",
            "\"",
            "null",
            "1e400",
            "-",
            "NaN",
            "\\ud800",
            "\uFEFF",
            "\"x-\":1,",
            "{\"ref\":\"a\"}",
            "{\"ref\":\"studio.json\"}",
            "0 ",
            "\\u0000",
            "é",
            "\uD83D\uDE00",
            "\"260 lb\"",
            "260",
            "true",
            "\n",
            "\r",
            "\t",
            "//",
            "\"name\": 1,",
            "1e-999999999",
            "9999999999999999999999",
            "\"abaca\"",
            "\"1e9999 g\"",
            "[[[[[[[[[[[[",
            "\"12 %\"",
            "\"envelopeFor\": \"a\",",
            "{\"value\": 3, \"unit\": \"kg\"}",
            "\"ISO A4\"",
            "\"2027-02-29\"");
    private static final long SECOND = 1_000_000_000L;

    private record Sort(byte[] good, Function<byte[], Document<?>> read) {}

    private static List<Sort> sorts() {
        OrderDocument concert = Concert.read().value();
        String plan = PapermathDocuments.writePlan(MakingPlan.of(concert.order(), concert.studio()), "p", "1");
        List<Sort> sorts = new ArrayList<>();
        sorts.add(new Sort(bytes(Concert.ORDER), text -> PapermathDocuments.readOrder(text, "", Concert.FILES)));
        sorts.add(new Sort(bytes(Concert.RECIPE), text -> PapermathDocuments.readRecipe(text, "")));
        sorts.add(new Sort(bytes(Concert.STUDIO), text -> PapermathDocuments.readStudio(text, "")));
        sorts.add(new Sort(bytes(Batch.RECORD), text -> PapermathDocuments.readRecord(text, "")));
        sorts.add(new Sort(bytes(plan), text -> PapermathDocuments.readPlan(text, "")));
        return sorts;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Puts something else in the place of one text, so that the grammar stays whole. */
    private static byte[] exchanged(byte[] good, Random random) {
        String text = new String(good, StandardCharsets.UTF_8);
        int at = text.indexOf('"', random.nextInt(text.length() - 100));
        int end = text.indexOf('"', at + 1);
        if (at < 0 || end < 0) {
            return good;
        }
        String piece = PIECES.get(random.nextInt(PIECES.size()));
        boolean whole = piece.startsWith("\"") && piece.endsWith("\"") || piece.endsWith("}") && piece.length() > 1;
        return bytes(text.substring(0, at)
                + (whole ? piece : "\"" + piece.replaceAll("[\"\\\\\\p{Cntrl}]", "") + "\"")
                + text.substring(end + 1));
    }

    private static byte[] mutated(byte[] good, Random random) {
        byte[] bytes = good;
        if (random.nextBoolean()) {
            for (int changes = 1 + random.nextInt(3); changes > 0; changes--) {
                bytes = exchanged(bytes, random);
            }
            return bytes;
        }
        for (int changes = 1 + random.nextInt(6); changes > 0; changes--) {
            int at = random.nextInt(bytes.length + 1);
            int to = Math.min(bytes.length, at + random.nextInt(6));
            ByteArrayOutputStream out = new ByteArrayOutputStream(bytes.length + 100);
            out.write(bytes, 0, at);
            switch (random.nextInt(5)) {
                case 0, 1 -> out.writeBytes(bytes(PIECES.get(random.nextInt(PIECES.size()))));
                case 2 -> out.write(random.nextInt(256));
                case 3 -> out.write(bytes, random.nextInt(1 + bytes.length / 2), Math.min(200, bytes.length / 2));
                default -> {
                    // only takes away
                }
            }
            out.write(bytes, to, bytes.length - to);
            bytes = out.toByteArray();
        }
        return bytes;
    }

    @Test
    void everyDocumentIsReadOrRefusedInTimeAndMemory() {
        int count = Integer.getInteger("papermath.mutations", 3000);
        List<Sort> sorts = sorts();
        Random random = new Random(20270122);
        Set<String> codes = new TreeSet<>();
        long slowest = 0;
        long early = 0;
        int read = 0;
        for (int i = 0; i < count; i++) {
            Sort sort = sorts.get(i % sorts.size());
            byte[] text = mutated(sort.good(), random);
            long start = System.nanoTime();
            try {
                assertThat(sort.read().apply(text).value()).isNotNull();
                read++;
            } catch (DocumentException e) {
                check(e, codes);
            } catch (RuntimeException e) {
                throw new AssertionError("document " + i + ": " + new String(text, StandardCharsets.UTF_8), e);
            }
            slowest = Math.max(slowest, System.nanoTime() - start);
            if (i == count / 10) {
                early = held();
            }
        }
        long late = held();
        System.out.println(count + " mutated documents: " + read + " read, " + codes.size() + " codes, slowest "
                + slowest / 1_000_000 + " ms, memory " + early / 1_000_000 + " then " + late / 1_000_000 + " MB");
        assertThat(slowest).isLessThan(SECOND);
        assertThat(late).isLessThan(early + 10_000_000);
        assertThat(codes).hasSizeGreaterThan(20);
        assertThat(FaultCodes.meanings()).containsKeys(codes.toArray(String[]::new));
        assertThat(read).isPositive();
    }

    private static void check(DocumentException e, Set<String> codes) {
        assertThat(e.faults()).isNotEmpty();
        for (Fault fault : e.faults()) {
            codes.add(fault.code());
            if (fault.line() < 1
                    || fault.column() < 1
                    || fault.text().isBlank()
                    || !fault.code().contains(".")
                    || fault.text().chars().anyMatch(Character::isISOControl)) {
                throw new AssertionError("not a fault: " + fault);
            }
        }
    }

    private static long held() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }
}
