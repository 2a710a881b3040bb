package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.papermath.json.PapermathDocuments;

class PlanManyOrdersTest {
    private static final Path SAMPLE = Path.of("src/main/resources/org/papermath/examples/midwinter-concert");

    private static String order(String name) throws IOException {
        return Files.readString(SAMPLE.resolve("order.json"))
                .lines()
                .map(String::strip)
                .collect(Collectors.joining(" "))
                .replace("\"midwinter concert\"", "\"" + name + "\"");
    }

    private static InputStream stream(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    private static PrintStream to(ByteArrayOutputStream out) {
        return new PrintStream(out, true, StandardCharsets.UTF_8);
    }

    @Test
    void plansComeInTheOrderOfTheLinesAndBadLinesAreTold() throws IOException {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            lines.add(
                    i == 5
                            ? "{\"format\": \"papermath/order\", \"version\": \"1.0\", \"nam\": 3}"
                            : order("concert " + i));
            lines.add("");
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status =
                PlanManyOrders.run(List.of(SAMPLE.toString()), stream(String.join("\n", lines)), to(out), to(err), 3);
        assertThat(status).isEqualTo(PlanManyOrders.SOME_BAD);
        List<String> plans = out.toString(StandardCharsets.UTF_8).lines().toList();
        assertThat(plans).hasSize(11);
        List<String> names = plans.stream()
                .map(plan -> PapermathDocuments.readPlan(plan).value().order().name())
                .toList();
        assertThat(names)
                .containsExactly(
                        "concert 0",
                        "concert 1",
                        "concert 2",
                        "concert 3",
                        "concert 4",
                        "concert 6",
                        "concert 7",
                        "concert 8",
                        "concert 9",
                        "concert 10",
                        "concert 11");
        assertThat(err.toString(StandardCharsets.UTF_8))
                .contains("line 11: ", "\"nam\" is not known here")
                .endsWith("11 planned, 1 not\n");
    }

    /** Many lines are read only as fast as they are planned. */
    @Test
    void itHoldsOnlyWhatIsBeingPlanned() throws IOException {
        String line = order("one") + "\n";
        byte[] bytes = line.getBytes(StandardCharsets.UTF_8);
        int[] handed = {0};
        InputStream endless = new InputStream() {
            private int at;
            private int lines;

            @Override
            public int read() {
                if (lines == 400) {
                    return -1;
                }
                int next = bytes[at++] & 0xff;
                if (at == bytes.length) {
                    at = 0;
                    lines++;
                    handed[0] = lines;
                }
                return next;
            }

            @Override
            public int read(byte[] into, int off, int length) {
                int next = read();
                if (next < 0) {
                    return -1;
                }
                into[off] = (byte) next;
                return 1;
            }
        };
        int[] written = {0};
        int[] most = {0};
        PrintStream counting = new PrintStream(new ByteArrayOutputStream() {
            @Override
            public synchronized void write(byte[] b, int off, int len) {
                for (int i = off; i < off + len; i++) {
                    if (b[i] == '\n') {
                        written[0]++;
                        most[0] = Math.max(most[0], handed[0] - written[0]);
                    }
                }
            }
        });
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        assertThat(PlanManyOrders.run(List.of(SAMPLE.toString()), endless, counting, to(err), 2))
                .isZero();
        assertThat(written[0]).isEqualTo(400);
        assertThat(most[0]).isLessThan(20);
        assertThat(err.toString(StandardCharsets.UTF_8))
                .contains("100 planned\n200 planned\n")
                .endsWith("400 planned\n");
    }

    @Test
    void whatCannotBeFollowedIsSaid() {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        assertThat(PlanManyOrders.run(List.of("--help"), stream(""), to(err), to(err), 1))
                .isEqualTo(PlanManyOrders.BAD_INPUT);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("usage: PlanManyOrders");
        assertThat(PlanManyOrders.run(List.of(), stream("\n\n"), to(err), to(err), 1))
                .isZero();
    }
}
