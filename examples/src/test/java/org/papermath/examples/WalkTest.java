package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A newcomer does what the README says, from its text alone: every command of the walk stands in the README, every document
 * is written as the README shows it, and the answers are those of the programs.
 */
class WalkTest {
    private static final Pattern COMMAND = Pattern.compile("mvn -q compile exec:java \"-Dexec\\.args=([^\"]*)\"");
    private static final String ANY = "...";

    @TempDir
    Path folder;

    @Test
    void anOrderOfOnesOwn() throws IOException {
        String readme = Pages.text("README.md");
        List<String> lines = Pages.text("examples/src/test/resources/walk/own-order.txt")
                .lines()
                .filter(line -> !line.startsWith("#"))
                .toList();
        int commands = 0;
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            if (line.startsWith("> ")) {
                write(line.substring(2));
                continue;
            }
            assertThat(line).startsWith("$ ");
            String command = line.substring(2);
            assertThat(readme).contains("\n" + command + "\n");
            List<String> expected = new ArrayList<>();
            while (i + 1 < lines.size() && !lines.get(i + 1).matches("[$>] .*")) {
                expected.add(lines.get(++i));
            }
            assertThat(answer(command)).as(command).matches(pattern(expected));
            commands++;
        }
        assertThat(commands).isEqualTo(5);
        assertThat(folder.resolve("card.html")).content().contains("naming day", "</html>");
        assertThat(folder.resolve("naming-day.ics")).content().startsWith("BEGIN:VCALENDAR");
        // The deckle of the envelope has its folds, and stands at true scale.
        assertThat(folder.resolve("templates/envelope-deckle.svg"))
                .content()
                .contains("181.4 mm", "class=\"fold\"", "class=\"score\"");
        Path shown = Pages.file("site/pictures/envelope-deckle.svg");
        if (Boolean.getBoolean("answers.write")) {
            Files.copy(folder.resolve("templates/envelope-deckle.svg"), shown, StandardCopyOption.REPLACE_EXISTING);
        }
        assertThat(folder.resolve("templates/envelope-deckle.svg"))
                .as("the picture in the README; written anew with -Danswers.write=true")
                .hasSameTextualContentAs(shown);
    }

    /** What the README shows below a command is what the walk has there. */
    @Test
    void theAnswersInTheReadmeAreThoseOfTheWalk() {
        List<String> shown = Pages.blocks("README.md", "walk");
        assertThat(shown).hasSizeGreaterThan(1);
        String walk = Pages.text("examples/src/test/resources/walk/own-order.txt");
        assertThat(shown).allSatisfy(block -> assertThat(walk).contains(block));
    }

    private void write(String document) throws IOException {
        List<String> shown = Pages.blocks("README.md", "json " + document);
        assertThat(shown).as(document).hasSize(1);
        Files.writeString(folder.resolve(document), shown.get(0));
    }

    /** What a command gives: first what it prints, then what it says beside that. */
    private String answer(String command) {
        Matcher program = COMMAND.matcher(command);
        assertThat(program.matches()).as(command).isTrue();
        // Where the command is typed there is the folder of the walk.
        List<String> args = Stream.of(program.group(1).split(" "))
                .map(arg -> arg.startsWith("-") ? arg : folder.resolve(arg).toString())
                .toList();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = PlanAnOrder.run(
                args,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        String said = err.toString(StandardCharsets.UTF_8);
        assertThat(status).as(said).isZero();
        return (out.toString(StandardCharsets.UTF_8) + said)
                .replace(folder.toAbsolutePath().toString(), "/...")
                .replace("\r\n", "\n")
                .strip();
    }

    private static String pattern(List<String> expected) {
        String one = expected.stream()
                .map(line -> Arrays.stream(line.split(Pattern.quote(ANY), -1))
                        .map(Pattern::quote)
                        .collect(Collectors.joining(".*")))
                .collect(Collectors.joining("\n"));
        return "(?s)" + one;
    }
}
