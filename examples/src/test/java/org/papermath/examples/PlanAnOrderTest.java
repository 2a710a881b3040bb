package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.plan.MakingPlan;

class PlanAnOrderTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int run(String... args) {
        return PlanAnOrder.run(List.of(args), new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
    }

    private String printed() {
        return out.toString(StandardCharsets.UTF_8);
    }

    private String complained() {
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void theSampleIsTheOrderBuiltInCode() throws IOException {
        OrderDocument sample = PlanAnOrder.sample().value();
        assertThat(sample.order()).isEqualTo(Embed.order());
        assertThat(sample.studio()).isEqualTo(Embed.studio());
    }

    @Test
    void withoutArgumentsTheSampleIsPlanned() {
        assertThat(run()).isEqualTo(PlanAnOrder.DONE);
        assertThat(printed()).isEqualTo(MakingPlan.of(Embed.order(), Embed.studio()).card().toString())
                .contains("midwinter concert");
        assertThat(complained()).isEmpty();
    }

    @Test
    void thePlanCanBeWrittenAsADocument() {
        assertThat(run("--json")).isEqualTo(PlanAnOrder.DONE);
        assertThat(printed()).startsWith("{\n  \"format\": \"papermath/plan\"").endsWith("}\n");
    }

    @Test
    void aFileIsPlannedWithTheFilesBesideIt(@TempDir Path folder) throws IOException {
        for (String name : List.of("order.json", "studio.json", "tide-grey.json")) {
            try (var in = PlanAnOrder.class.getResourceAsStream("midwinter-concert/" + name)) {
                Files.copy(in, folder.resolve(name));
            }
        }
        assertThat(run(folder.resolve("order.json").toString())).isEqualTo(PlanAnOrder.DONE);
        assertThat(printed()).contains("midwinter concert");
    }

    @Test
    void everyFaultIsPrintedWithItsPlace(@TempDir Path folder) throws IOException {
        String text = PapermathDocuments.writeOrder(PlanAnOrder.sample().inlined())
                .replace("\"130 g/m2\"", "130").replace("\"side seam\"", "\"side sem\"")
                .replace("\"recipe\": \"tide grey\"", "\"recipe\": \"tide gray\"");
        Path file = Files.writeString(folder.resolve("concert.json"), text);
        assertThat(run(file.toString())).isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(printed()).isEmpty();
        assertThat(complained()).contains("concert.json:", "Accepted units: g/m2", "Did you mean \"side seam\"?",
                "Did you mean \"tide grey\"?", "at: /pieces/0/grammage", "\"side sem\" is not");
        assertThat(complained().lines().filter(line -> line.startsWith("concert.json:"))).hasSize(5);
    }

    @Test
    void whatTheSentenceLeavesOutStandsBelowIt(@TempDir Path folder) throws IOException {
        String text = PapermathDocuments.writeOrder(PlanAnOrder.sample().inlined())
                .replace("\"ISO A5\"", "\"ISO A55\"").replace("\"130 g/m2\"", "\"130 lb\"");
        Path file = Files.writeString(folder.resolve("concert.json"), text);
        assertThat(run(file.toString())).isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(complained()).containsPattern("(?m)^concert\\.json:\\d+:\\d+: .*ISO A55")
                .contains("ISO A5", "It may mean: a ream of 500 sheets")
                .containsPattern("(?m)^    at: /pieces/0/size$");
    }

    @Test
    void whatCannotBePlannedOrOpenedIsSaidToo(@TempDir Path folder) throws IOException {
        String text = PapermathDocuments.writeOrder(PlanAnOrder.sample().inlined())
                .replace("\"beating\": \"3 h\",", "\"beating\": \"3 h\", \"stockConsistency\": \"1 %\","
                        + " \"vatConsistency\": \"2 %\",");
        Path file = Files.writeString(folder.resolve("thick.json"), text);
        assertThat(run(file.toString())).isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(complained()).contains("not planned").contains("stock");
        assertThat(run(folder.resolve("none.json").toString())).isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(complained()).contains("none.json: this file cannot be opened");
        assertThat(run("--what")).isEqualTo(PlanAnOrder.BAD_INPUT);
    }
}
