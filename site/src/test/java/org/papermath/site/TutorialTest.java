package org.papermath.site;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.papermath.examples.PlanAnOrder;

/** What the pages tell to type does what they say: the commands of the tutorial in order, the lines of JShell and of the overview. */
class TutorialTest {
    private static final Pattern COMMAND = Pattern.compile("mvn -q compile exec:java \"-Dexec\\.args=([^\"]*)\"");
    private static final Pattern BLOCK = Pattern.compile("(?s)```(\\w+)\n(.*?)```");

    @TempDir
    static Path work;

    private static String page;

    @BeforeAll
    static void readThePage() throws IOException {
        page = Files.readString(top().resolve("site/pages/tutorial.md")).replace("\r\n", "\n");
    }

    private static Path top() {
        Path here = Path.of("").toAbsolutePath();
        return Files.exists(here.resolve("LICENSE")) ? here : here.getParent();
    }

    private static List<String> blocks(String text, String word) {
        List<String> found = new ArrayList<>();
        Matcher block = BLOCK.matcher(text);
        while (block.find()) {
            if (block.group(1).equals(word)) {
                found.add(block.group(2));
            }
        }
        return found;
    }

    @Test
    void everyCommandDoesWhatThePageSays() throws IOException, InterruptedException {
        Matcher command = COMMAND.matcher(String.join("\n", blocks(page, "sh")));
        List<String> printed = new ArrayList<>();
        while (command.find()) {
            printed.add(type(command.group(1).split(" ")));
            if (printed.size() == 1) {
                writeTheDocuments();
            }
        }
        assertThat(printed).hasSize(6);
        String shown = Tutorial.of(top())
                .blocks()
                .get("tutorial-card")
                .replaceAll("</?(pre|code)>", "")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&amp;", "&");
        assertThat(printed.get(1)).startsWith(shown);
        Path folder = work.resolve("first-frost");
        try (Stream<Path> drawings = Files.list(folder.resolve("drawings"))) {
            assertThat(drawings.map(file -> file.getFileName().toString())).contains("envelope-deckle.svg");
        }
        assertThat(Files.readString(folder.resolve("card.html")))
                .startsWith("<!DOCTYPE html>")
                .contains("first frost");
        assertThat(Files.readString(folder.resolve("days.txt"))).contains("2027-10-");
        assertThat(Files.readString(folder.resolve("days.ics"))).startsWith("BEGIN:VCALENDAR");
    }

    /** Writes the documents as the page has them, over those of the sample. */
    private static void writeTheDocuments() throws IOException {
        assertThat(work.resolve("first-frost/order.json")).exists();
        try (Stream<Path> files = Files.list(top().resolve(Tutorial.FOLDER))) {
            for (Path file : files.toList()) {
                String name = file.getFileName().toString();
                assertThat(page).contains("first-frost/" + name);
                Files.copy(file, work.resolve("first-frost").resolve(name), StandardCopyOption.REPLACE_EXISTING);
            }
        }
    }

    /** Runs the program in the folder of the test, and returns what it prints. */
    private static String type(String... args) throws IOException, InterruptedException {
        List<String> line = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                PlanAnOrder.class.getName()));
        line.addAll(List.of(args));
        Path out = work.resolve("printed.txt");
        Path err = work.resolve("faults.txt");
        Process process = new ProcessBuilder(line)
                .directory(work.toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue())
                .as(String.join(" ", args) + ": " + Files.readString(err))
                .isZero();
        return Files.readString(out);
    }

    @Test
    void whatIsAddedMendsWhatItIsSaidToMend() throws IOException {
        Tutorial tutorial = Tutorial.of(top());
        assertThat(tutorial.blocks().get("tutorial-look-out").replaceAll("\\s+", " "))
                .contains(
                        "without a retention aid: about half of it stays in the water",
                        "standards for permanent paper");
        assertThat(tutorial.blocks().get("tutorial-slip"))
                .startsWith("<pre><code>first-frost/order.json:28:15: ")
                .contains("shaped");
        assertThat(tutorial.blocks().get("tutorial-changed")).contains("retention aid");
        assertThat(tutorial.files().get("first-frost-card.html").replaceAll("\\s+", " "))
                .doesNotContain("without a retention aid", "standards for permanent paper");
        String recipe = Files.readString(top().resolve(Tutorial.FOLDER).resolve("quince-white.json"))
                .replace("\r\n", "\n");
        assertThat(Tutorial.withAid(recipe)).contains("retention aid").isNotEqualTo(recipe);
    }

    @Test
    void theLinesForJShellGiveWhatStandsBehindThem() throws IOException {
        List<String> lines = new ArrayList<>();
        String text = Files.readString(top().resolve("site/pages/jshell.md")).replace("\r\n", "\n");
        blocks(text, "jshell").forEach(block -> lines.addAll(block.lines().toList()));
        assertThat(lines).hasSize(8);
        String overview = Files.readString(top().resolve("site/overview.html")).replace("\r\n", "\n");
        overview.substring(overview.indexOf("<pre>\n") + 6, overview.indexOf("</pre>"))
                .lines()
                .forEach(line -> lines.add(line.replaceFirst(";(?= // |$)", "")));
        assertThat(lines).hasSize(12);
        int answered = 0;
        try (JShell shell = JShell.create()) {
            shell.addToClasspath(System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
            run(shell, Files.readString(top().resolve("examples/papermath.jsh")));
            for (String line : lines) {
                String[] parts = line.split(" // ", 2);
                String answer = run(shell, parts[0]);
                if (parts.length == 2) {
                    assertThat(answer).as(line).isEqualTo(parts[1]);
                    answered++;
                }
            }
        }
        assertThat(answered).isEqualTo(10);
    }

    private static String run(JShell shell, String text) {
        String rest = text;
        String answer = "";
        while (!rest.isBlank()) {
            SourceCodeAnalysis.CompletionInfo next = shell.sourceCodeAnalysis().analyzeCompletion(rest);
            assertThat(next.source()).as(rest).isNotNull();
            for (SnippetEvent event : shell.eval(next.source())) {
                assertThat(event.status()).as(next.source()).isIn(Snippet.Status.VALID, Snippet.Status.OVERWRITTEN);
                assertThat(event.exception()).as(next.source()).isNull();
                answer = event.value() == null ? answer : event.value();
            }
            rest = next.remaining();
        }
        return answer;
    }
}
