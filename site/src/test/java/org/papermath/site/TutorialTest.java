package org.papermath.site;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
    static void copyTheSample() throws IOException {
        page = Files.readString(top().resolve("site/pages/tutorial.md")).replace("\r\n", "\n");
        String copy = blocks(page, "sh").get(0).strip();
        assertThat(copy).startsWith("cp -r ").endsWith(" first-frost");
        Path sample = top().resolve(copy.split(" ")[2]);
        Path folder = Files.createDirectory(work.resolve("first-frost"));
        try (Stream<Path> files = Files.list(sample)) {
            for (Path file : files.toList()) {
                Files.copy(file, folder.resolve(file.getFileName().toString()));
            }
        }
        try (Stream<Path> files = Files.list(top().resolve(Tutorial.FOLDER))) {
            for (Path file : files.toList()) {
                String name = file.getFileName().toString();
                assertThat(page).contains("first-frost/" + name);
                Files.copy(file, folder.resolve(name), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
            }
        }
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
    void everyCommandWritesWhatItSays() throws IOException {
        Matcher command = COMMAND.matcher(String.join("\n", blocks(page, "sh")));
        List<String> results = new ArrayList<>();
        while (command.find()) {
            List<String> args = new ArrayList<>();
            for (String arg : command.group(1).split(" ")) {
                args.add(arg.startsWith("first-frost/") ? work.resolve(arg).toString() : arg);
            }
            if (!args.contains("--out")) {
                args.addAll(
                        0, List.of("--out", work.resolve("first-frost/card.txt").toString()));
            }
            Path written = Path.of(args.get(args.indexOf("--out") + 1));
            PlanAnOrder.main(args.toArray(String[]::new));
            results.add(Files.readString(written));
        }
        assertThat(results).hasSize(4);
        String shown = Tutorial.of(top())
                .blocks()
                .get("tutorial-card")
                .replaceAll("</?(pre|code)>", "")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&amp;", "&");
        assertThat(results.get(0)).startsWith(shown);
        assertThat(results.get(1)).startsWith("<!DOCTYPE html>").contains("first frost");
        assertThat(results.get(2)).contains("2027-10-");
        assertThat(results.get(3)).startsWith("BEGIN:VCALENDAR");
    }

    @Test
    void whatIsAddedMendsWhatItIsSaidToMend() throws IOException {
        Tutorial tutorial = Tutorial.of(top());
        assertThat(tutorial.blocks().get("tutorial-look-out"))
                .contains(
                        "without a retention aid: about half of it stays in the water",
                        "standards for permanent paper");
        assertThat(tutorial.blocks().get("tutorial-slip"))
                .startsWith("<pre><code>first-frost/order.json:28:15: ")
                .contains("shaped");
        assertThat(tutorial.blocks().get("tutorial-changed")).contains("retention aid");
        assertThat(tutorial.files().get("first-frost-card.html"))
                .doesNotContain("without a retention aid", "standards for permanent paper");
        String recipe = Files.readString(top().resolve(Tutorial.FOLDER).resolve("quince-white.json"))
                .replace("\r\n", "\n");
        assertThat(Tutorial.withAid(recipe)).contains("retention aid").isNotEqualTo(recipe);
    }

    @Test
    void theLinesForJShellGiveWhatStandsBehindThem() throws IOException {
        List<String> lines = new ArrayList<>();
        for (String name : List.of("jshell.md", "tutorial.md")) {
            String text =
                    Files.readString(top().resolve("site/pages").resolve(name)).replace("\r\n", "\n");
            blocks(text, "jshell").forEach(block -> lines.addAll(block.lines().toList()));
        }
        assertThat(lines).hasSize(12);
        String overview = Files.readString(top().resolve("site/overview.html")).replace("\r\n", "\n");
        overview.substring(overview.indexOf("<pre>\n") + 6, overview.indexOf("</pre>"))
                .lines()
                .forEach(line -> lines.add(line.replaceFirst(";(?= // |$)", "")));
        assertThat(lines).hasSize(16);
        // They are typed after the recipe was mended.
        Path mended = Files.createDirectory(work.resolve("mended"));
        for (String name : List.of("order.json", "studio.json", "quince-white.json")) {
            Files.writeString(
                    mended.resolve(name),
                    Tutorial.withAid(
                            Files.readString(work.resolve("first-frost").resolve(name))
                                    .replace("\r\n", "\n")));
        }
        int answered = 0;
        try (JShell shell = JShell.create()) {
            shell.addToClasspath(System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
            run(shell, Files.readString(top().resolve("examples/papermath.jsh")));
            for (String line : lines) {
                String[] parts = line.split(" // ", 2);
                String answer = run(
                        shell,
                        parts[0].replace("\"first-frost/", "\"" + mended.toUri().getPath()));
                if (parts.length == 2) {
                    assertThat(answer).as(line).isEqualTo(parts[1]);
                    answered++;
                }
            }
        }
        assertThat(answered).isEqualTo(10);
        assertThat(Files.readString(mended.resolve("deckle.svg")))
                .isEqualTo(Tutorial.of(top()).files().get("first-frost-deckle.svg"));
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
