package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class DocumentReaderPropertyTest {
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
            "x-",
            "\"ref\": \"..\"",
            "{\"ref\":\"a\"}",
            "\"value\": 3",
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
            "\"title\": 1,",
            "1e-999999999",
            "9999999999999999999999");

    private static byte[] mutated(long seed, int changes) {
        Random random = new Random(seed);
        byte[] bytes = Bench.GOOD.getBytes(StandardCharsets.UTF_8);
        for (int i = 0; i < changes; i++) {
            int at = random.nextInt(bytes.length + 1);
            int to = Math.min(bytes.length, at + random.nextInt(6));
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            out.write(bytes, 0, at);
            switch (random.nextInt(4)) {
                case 0 ->
                    out.writeBytes(PIECES.get(random.nextInt(PIECES.size())).getBytes(StandardCharsets.UTF_8));
                case 1 -> out.write(random.nextInt(256));
                case 2 -> out.write(bytes, Math.min(at, bytes.length / 2), Math.min(20, bytes.length / 2));
                default -> {
                    // only takes away
                }
            }
            out.write(bytes, to, bytes.length - to);
            bytes = out.toByteArray();
        }
        return bytes;
    }

    @Property(tries = 2000, seed = "2026")
    void everyTextIsReadOrRefusedWithPlaces(@ForAll long seed, @ForAll @IntRange(min = 1, max = 6) int changes) {
        byte[] bytes = mutated(seed, changes);
        Document<Bench.Plan> document;
        try {
            document = Bench.reader().read(bytes);
        } catch (DocumentException e) {
            assertThat(e.faults()).isNotEmpty().allSatisfy(fault -> {
                assertThat(fault.line()).isPositive();
                assertThat(fault.column()).isPositive();
                assertThat(fault.text()).isNotBlank();
                assertThat(fault.text().chars().noneMatch(Character::isISOControl))
                        .as(fault.text())
                        .isTrue();
            });
            return;
        }
        String text = Bench.write(document);
        Document<Bench.Plan> again = Bench.reader().read(text);
        assertThat(again.value()).isEqualTo(document.value());
        assertThat(Bench.write(again)).isEqualTo(text);
    }
}
