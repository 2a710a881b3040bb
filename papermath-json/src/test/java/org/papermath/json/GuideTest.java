package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Kinds;

/** What is shown to whoever embeds the library is compiled, runs, and does what is said beside it. */
class GuideTest {
    private static final Pattern CODE = Pattern.compile("(?s)<pre>\\{@code\n(.*?)\\}</pre>");
    private static final Pattern SHOWN = Pattern.compile("out\\.println\\([^\n]*\\); // ([^\n]*)");

    @TempDir
    Path folder;

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final PrintStream out = new PrintStream(bytes, true, StandardCharsets.UTF_8);

    @BeforeEach
    void layTheDocumentsDown() throws IOException {
        for (String name : List.of("order.json", "studio.json", "tide-grey.json")) {
            Files.copy(
                    top().resolve("examples/src/main/resources/org/papermath/examples/midwinter-concert")
                            .resolve(name),
                    folder.resolve(name));
        }
    }

    private static Path top() {
        Path here = Path.of("").toAbsolutePath();
        return Files.exists(here.resolve("LICENSE")) ? here : here.getParent();
    }

    private String printed() {
        return bytes.toString(StandardCharsets.UTF_8);
    }

    @Test
    void anOrderIsPlannedAndItsPlanIsReadAgain() throws IOException {
        assertThat(Guide.plan(folder, out)).isEmpty();
        assertThat(printed()).startsWith("MAKING CARD  midwinter concert");
        assertThat(folder.resolve("plan.json")).exists();
    }

    @Test
    void faultsAreShownWithPlaceAndChoice() throws IOException {
        Path recipe = folder.resolve("tide-grey.json");
        Files.writeString(
                recipe, Files.readString(recipe).replace("\"3 h\"", "\"3\"").replace("flax-raw", "flax-row"));
        Guide.faults(folder, out);
        assertThat(printed())
                .contains(
                        "15:14 /beating quantity.no-unit", "accepted [h, min, s, d]", "/furnish/1/fibre fibre.unknown");
    }

    @Test
    void aChangedRecipeKeepsTheMembersOfOthers() throws IOException {
        Path recipe = folder.resolve("tide-grey.json");
        Files.writeString(
                recipe, Files.readString(recipe).replace("\"beating\"", "\"x-shelf\": \"by the door\", \"beating\""));
        Guide.change(folder);
        assertThat(PapermathDocuments.readRecipe(recipe).value().beating()).isEqualTo(Amounts.hours(4));
        assertThat(Files.readString(recipe)).contains("\"x-shelf\": \"by the door\"", "\"beating\": \"4 h\"");
    }

    @Test
    void recordsAreSavedAndReadLineByLine() throws IOException {
        RecordLines.Progress all = Guide.records(folder, Stream.of(PapermathDocuments.readRecord(Batch.RECORD)), out);
        assertThat(all.records()).isEqualTo(1);
        assertThat(printed()).isEqualTo("1 records" + System.lineSeparator());
    }

    @Test
    void quantitiesOfOwnDocumentsAreWrittenAsTheCommentsSay() throws IOException {
        assertThat(Guide.module(out).side()).isEqualTo(Kinds.LENGTH.of(4.5, "in"));
        List<String> lines = printed().lines().toList();
        List<String> said = new ArrayList<>();
        Matcher shown = SHOWN.matcher(lines("module"));
        while (shown.find()) {
            said.add(shown.group(1));
        }
        assertThat(said).hasSize(2).isEqualTo(lines.subList(0, 2));
        assertThat(lines.get(2)).contains("has no unit", "g/m2");
    }

    @Test
    void forecastsStagesAndNoticesAreWritten() throws IOException {
        OrderDocument order =
                PapermathDocuments.readOrder(folder.resolve("order.json")).value();
        assertThat(Guide.told(MakingPlan.of(order.order(), order.studio())))
                .startsWith("{\"grammage\":{\"likely\":\"")
                .contains(
                        " g/m2\",\"low\":\"",
                        "\"scatter\":\"",
                        "\"press\":{\"done\":true,\"content\":{\"press\":{",
                        "\"notices\":[{\"level\":\"");
    }

    @Test
    void aMappingOfOnesOwnReadsAndWrites() {
        DocumentFormat format = new DocumentFormat("felt", 1, 0);
        Guide.Felt felt = DocumentReader.of(format, Guide::felt)
                .read("{\"format\": \"papermath/felt\", \"version\": \"1.0\", \"name\": \"old\", \"mass\": \"140 g\"}")
                .value();
        assertThat(felt.mass()).isEqualTo(Kinds.MASS.of(140, "g"));
        assertThat(felt.count()).isEqualTo(1);
        assertThat(DocumentWriter.write(format, Document.of(felt), Guide::felt)).contains("\"mass\": \"140 g\"");
    }

    private static String lines(String name) throws IOException {
        String source = Files.readString(top().resolve("papermath-json/src/test/java/org/papermath/json/Guide.java"));
        int at = source.indexOf("// guide: " + name + "\n");
        return source.substring(at, source.indexOf("// end\n", at));
    }

    /** The code in the comments is looked for in the file that is compiled; folders and blanks may differ. */
    @Test
    void theCodeOfTheCommentsStandsInTheCompiledFile() throws IOException {
        Path guide = top().resolve("papermath-json/src/test/java/org/papermath/json/Guide.java");
        String source = plain(Files.readString(guide));
        Map<String, String> strange = new TreeMap<>();
        int blocks = 0;
        try (Stream<Path> files = Files.walk(top().resolve("papermath-json/src/main/java/org/papermath/json"))) {
            for (Path file :
                    files.filter(one -> one.toString().endsWith(".java")).toList()) {
                Matcher code = CODE.matcher(Files.readString(file).replace("\r\n", "\n"));
                while (code.find()) {
                    blocks++;
                    for (String part :
                            code.group(1).replaceAll("(?m)^\\s*\\* ?", "").split("\n\n")) {
                        if (!source.contains(plain(part))) {
                            strange.put(file.getFileName().toString(), part);
                        }
                    }
                }
            }
        }
        assertThat(blocks).isGreaterThanOrEqualTo(6);
        assertThat(strange).isEmpty();
    }

    private static String plain(String code) {
        return code.replaceAll("\\s+", "");
    }
}
