package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What is typed into JShell on the pages gives what the pages say. */
class JShellLinesTest {
    private static final String PROMPT = "jshell> ";
    private static final String GIVES = " ==> ";
    private static final String CUT = " ... ";

    private static Shell shell;

    @BeforeAll
    static void start() {
        shell = new Shell();
        shell.run(Pages.text("examples/papermath.jsh"));
    }

    @AfterAll
    static void stop() {
        shell.close();
    }

    @Test
    void theStartUpFileIsAsciiBecauseOldShellsReadItInTheCharsetOfThePlatform() {
        assertThat(Pages.text("examples/papermath.jsh")).matches("[\\x00-\\x7F]*");
    }

    @Test
    void theReadmeSaysWhatJShellSays() {
        List<String> blocks = Pages.blocks("README.md", "jshell");
        assertThat(blocks).hasSize(1);
        assertThat(check(blocks.get(0))).isGreaterThanOrEqualTo(10);
    }

    /** The tour shows what each of its lines gives; written anew with -Danswers.write=true. */
    @Test
    void theTourIsWhatJShellSays() throws IOException {
        StringBuilder typed = new StringBuilder();
        int lines = 0;
        for (String line : AtThePrompt.tourText().split("\n", -1)) {
            if (line.startsWith(PROMPT)) {
                typed.append(line).append('\n');
                typed.append(shell.run(line.substring(PROMPT.length())).strip()).append('\n');
                lines++;
            } else if (line.startsWith("# ")) {
                typed.append(typed.length() == 0 ? "" : "\n").append(line).append('\n');
            }
        }
        assertThat(lines).isGreaterThan(15);
        Path file = Pages.file("examples/src/main/resources/org/papermath/examples/tour.txt");
        if (Boolean.getBoolean("answers.write")) {
            Files.writeString(file, typed);
        }
        assertThat(Files.readString(file)).isEqualTo(typed.toString());
        assertThat(shell.run("tour()")).isEmpty();
        assertThat(shell.printed())
                .contains("order, studio and plan are at hand", "# What is ordered, and the studio that makes it.");
    }

    @Test
    void everyWhatIfHasATable() {
        for (String whatIf : List.of("Beaten", "Ordered", "VatStood", "Pressed", "RoomDamp")) {
            for (String piece : List.of("programme", "seat card", "envelope")) {
                String table = shell.run("whatIf" + whatIf + "(plan, \"" + piece + "\")");
                assertThat(table.lines()).as(whatIf).hasSizeGreaterThan(6);
                assertThat(table).contains(whatIf.equals("RoomDamp") ? "What comes out of" : "What the plan would be");
            }
        }
    }

    @Test
    void aReamWeightBecomesAGrammage() {
        assertThat(shell.run("ReamBasis.COVER.pounds(80).to(GSM)")).isEqualTo("216.3 g/m²");
    }

    @Test
    void pulpIsThinnedToItsVolume() {
        assertThat(shell.run("Pulp.ofOvenDry(kilograms(1.2)).at(Consistency.percent(3))"
                        + ".dilutedTo(Consistency.percent(0.6)).volume()"))
                .isEqualTo("200 L");
    }

    @Test
    void anOpeningAllowsForShrinkageOfEachSide() {
        assertThat(shell.run("Mould.openingFor(Formats.ISO_A5, Shrinkage.across(percent(6)).along(percent(8)))"))
                .isEqualTo("157.4 mm × 228.3 mm");
        assertThat(
                        shell.run(
                                "Mould.openingFor(Formats.ISO_A5, Shrinkage.across(percent(6)).along(percent(8))).width().in(\"mm\")"))
                .isEqualTo(Double.toString(148 / 0.94));
    }

    @Test
    void aWeighedSheetIsBroughtToTheReferenceAtmosphere() {
        String sheet =
                "DrySheet.weighed(grams(4.92), mm(148), mm(105)).in(Air.of(celsius(21), RelativeHumidity.percent(61)))";
        double there = Double.parseDouble(shell.run(sheet + ".grammage().in(GSM)"));
        double conditioned = Double.parseDouble(shell.run(sheet + ".conditioned().grammage().in(GSM)"));
        assertThat(there).isCloseTo(4.92 / (0.148 * 0.105), org.assertj.core.data.Offset.offset(1e-9));
        assertThat(conditioned).isBetween(there * 0.97, there * 0.999);
    }

    @Test
    void aPlanIsReadStageByStage() {
        assertThat(shell.run("plan.batch(\"tide grey\").fibre().asBought()")).endsWith(" g");
        assertThat(shell.run("plan.piece(\"programme\").vat().recharges()")).startsWith("[after sheet ");
        assertThat(shell.run("plan.piece(\"programme\").finished().grammage()"))
                .contains("mean")
                .contains("single pieces ±");
        assertThat(shell.run("plan.sensitivity().size() > 3")).isEqualTo("true");
    }

    @Test
    void aWrongKindDoesNotCompile() {
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> shell.run("Grammage.gsm(120).add(grams(3))"))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("REJECTED");
    }

    /** Types each line behind a prompt and compares the answer with the lines below it. */
    private static int check(String shown) {
        String[] lines = shown.split("\n");
        int checked = 0;
        for (int i = 0; i < lines.length; i++) {
            if (!lines[i].startsWith(PROMPT)) {
                continue;
            }
            String typed = lines[i].substring(PROMPT.length());
            String answer = shell.run(typed);
            assertThat(lines).as("an answer below %s", typed).hasSizeGreaterThan(i + 1);
            StringBuilder written = new StringBuilder(lines[i + 1]);
            for (int next = i + 2; next < lines.length && !lines[next].startsWith(PROMPT); next++) {
                written.append('\n').append(lines[next]);
            }
            compare(typed, answer.strip(), written.toString());
            checked++;
        }
        return checked;
    }

    private static void compare(String typed, String answer, String written) {
        String said = written.startsWith("|  ")
                ? written.substring(3)
                : written.substring(written.indexOf(GIVES) + GIVES.length());
        int cut = said.indexOf(CUT);
        if (cut < 0) {
            assertThat(answer).as(typed).isEqualTo(said);
        } else {
            assertThat(answer)
                    .as(typed)
                    .startsWith(said.substring(0, cut).strip())
                    .endsWith(said.substring(cut + CUT.length()));
        }
    }
}
