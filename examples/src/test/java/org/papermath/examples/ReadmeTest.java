package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.quantity.Units;
import org.papermath.record.BatchRecord;
import org.papermath.record.Calibration;

/** What the README says of the library is so. */
class ReadmeTest {
    private static final Pattern GIVES =
            Pattern.compile("^(?:\\S+ )?\\S+ (\\w+) = .*// (?:a setting|a forecast|not done): (.*)$");

    @Test
    void theCardBeginsAsShown() {
        List<String> shown = Pages.blocks("README.md", "text");
        assertThat(shown).hasSize(2);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = PlanAnOrder.run(
                List.of(),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
        assertThat(status).isEqualTo(PlanAnOrder.DONE);
        assertThat(out.toString(StandardCharsets.UTF_8)).startsWith(shown.get(0).stripTrailing());
    }

    @Test
    void theProgramCompilesAndGivesWhatItsCommentsSay() {
        List<String> programs = Pages.blocks("README.md", "java");
        assertThat(programs).hasSize(2);
        int checked = 0;
        try (Shell shell = new Shell()) {
            shell.run(programs.get(0));
            for (String line : programs.get(0).split("\n")) {
                Matcher gives = GIVES.matcher(line);
                if (gives.find()) {
                    String written = line.contains("// not done: ") ? "not done: " + gives.group(2) : gives.group(2);
                    assertThat(shell.run(gives.group(1) + ".toString()")).isEqualTo('"' + written + '"');
                    checked++;
                }
            }
        }
        assertThat(checked).isEqualTo(3);
    }

    @Test
    void theLinesForDocumentsAreTheOnesTheGuideCompiles() {
        String shown = Pages.blocks("README.md", "java").get(1);
        assertThat(Pages.text("papermath-json/src/test/java/org/papermath/json/Guide.java")
                        .replaceAll("\\s+", ""))
                .contains(shown.replaceAll("\\s+", ""));
    }

    @Test
    void everyProgramIsNamed() throws IOException {
        String readme = Pages.text("README.md");
        List<String> programs;
        try (Stream<Path> files = Files.list(Pages.file("examples/src/main/java/org/papermath/examples"))) {
            programs = files.filter(file -> Files.isRegularFile(file)
                            && Pages.text("examples/src/main/java/org/papermath/examples/" + file.getFileName())
                                    .contains("public static void main("))
                    .map(file -> file.getFileName().toString().replace(".java", ""))
                    .filter(name -> !name.equals("PlanAnOrder"))
                    .toList();
        }
        assertThat(programs)
                .hasSizeGreaterThan(10)
                .allSatisfy(name -> assertThat(readme).contains("\n| `" + name + "` | "));
    }

    @Test
    void theCountsOfTheTableAreRight() {
        String readme = Pages.text("README.md").replaceAll("\\s+", " ");
        Assumptions table = Assumptions.standard();
        assertThat(readme)
                .contains("Of the " + table.all().size() + " values in the table of edition " + table.edition() + ", "
                        + count(table, Basis.PUBLISHED) + " are published or worked out from publications, "
                        + count(table, Basis.ANCHORED)
                        + " are anchored: tied to one published observation, with the rest assumed, "
                        + count(table, Basis.COMMON_PRACTICE) + " are common practice without a source, "
                        + count(table, Basis.RECALLED)
                        + " are recalled and were not looked up, and " + count(table, Basis.DEFINITION)
                        + " is a definition.");
    }

    @Test
    void theCountsOfTheSampleOrderAreRight() {
        List<Assumption> used = MakingPlan.of(Embed.order(), Embed.studio()).assumptionsUsed();
        long uncalibrated =
                used.stream().filter(one -> one.basis().isUncalibrated()).count();
        assertThat(Pages.text("README.md").replaceAll("\\s+", " "))
                .contains("(" + uncalibrated + " of " + used.size() + " for the sample order)");
    }

    @Test
    void theRecordOfTheSampleDoesWhatTheTableSays() throws IOException {
        Path folder = Pages.file("examples/src/main/resources/org/papermath/examples/midwinter-concert");
        OrderDocument sample =
                PapermathDocuments.readOrder(folder.resolve("order.json")).value();
        BatchRecord record =
                PapermathDocuments.readRecord(folder.resolve("record.json")).value();
        Studio studio = sample.studio();
        Studio known = studio.withAssumptions(Calibration.of(studio.assumptions(), List.of(record), studio.dryers())
                .assumptions());
        PiecePlan before = MakingPlan.of(sample.order(), studio).piece("programme");
        PiecePlan after = MakingPlan.of(sample.order(), known).piece("programme");
        StringBuilder table = new StringBuilder();
        row(table, "grammage", before.finished().grammage(), after.finished().grammage(), "g/m2");
        row(table, "caliper", before.finished().caliper(), after.finished().caliper(), "mm");
        row(table, "drains in", before.drainTime(), after.drainTime(), "s");
        row(table, "solids after pressing", before.solids(), after.solids(), "%");
        row(table, "dry after", before.drying().time(), after.drying().time(), "h");
        assertThat(Pages.text("README.md")).contains(table);
    }

    private static <Q extends Quantity<Q>> void row(
            StringBuilder table, String figure, Estimate<Q> before, Estimate<Q> after, String unit) {
        table.append("| ").append(figure);
        for (Estimate<Q> one : List.of(before.in(unit), after.in(unit))) {
            table.append(" | ").append(band(one));
        }
        Estimate.Part<Q> unknown = after.in(unit).unknown();
        Estimate.Part<Q> makings = after.in(unit).makings();
        table.append(" | ")
                .append(range(unknown.low().in(unit), unknown.high().in(unit)))
                .append(" | ")
                .append(range(makings.low().in(unit), makings.high().in(unit)))
                .append(" |\n");
    }

    private static String band(Estimate<?> one) {
        return one.likely() + ", " + range(one.low().value(), one.high().value());
    }

    private static String range(double low, double high) {
        return Units.fourDigits(low) + "–" + Units.fourDigits(high);
    }

    private static long count(Assumptions table, Basis basis) {
        return table.all().stream().filter(one -> one.basis() == basis).count();
    }
}
