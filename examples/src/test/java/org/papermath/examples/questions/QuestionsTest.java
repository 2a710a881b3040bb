package org.papermath.examples.questions;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.papermath.examples.Pages;

/** The questions are complete, short and answered with the figures of their worked examples. */
class QuestionsTest {
    private static final String FOLDER = "examples/src/test/resources/questions/";

    private static final int STATEMENTS = 3;

    /** What was built for one question and is called by no other, nor by the library itself: six at most. */
    private static final Set<String> SINGLE_USE = Set.of(
            "forecastChange", // B1: the drift of a vat with its band
            "massIn", // B39: a weighing carried to other air
            "consistencyWanted", // F10: litres of pulp
            "notices(Grammage", // F15: a caliper beside a grammage
            "notices(micrometres", // F15: a dry sheet beside its caliper
            "whichBasis"); // F20: a bare per cent of moisture

    /** What the questions made necessary. */
    private static final List<String> BUILT = List.of(
            "forecastChange",
            "massIn",
            "consistencyWanted",
            "notices(Grammage",
            "notices(micrometres",
            "whichBasis",
            "Point.read");

    private static List<Asked> all;

    @BeforeAll
    static void read() {
        all = Questions.all();
    }

    @Test
    void everyQuestionIsThere() {
        Set<String> numbers = new TreeSet<>();
        all.forEach(
                one -> assertThat(numbers.add(one.number())).as(one.number()).isTrue());
        assertThat(numbers)
                .containsExactlyInAnyOrderElementsOf(Stream.of(numbers('B', 45), numbers('F', 24), numbers('G', 34))
                        .flatMap(List::stream)
                        .toList());
    }

    private static List<String> numbers(char letter, int last) {
        return IntStream.rangeClosed(1, last).mapToObj(i -> letter + "" + i).toList();
    }

    /** Each public method that is marked is found in its source, and none is unmarked. */
    @Test
    void noMethodIsLeftOut() throws ReflectiveOperationException {
        long methods = 0;
        for (String theme : all.stream().map(Asked::theme).distinct().toList()) {
            methods += Stream.of(Class.forName("org.papermath.examples.questions." + theme)
                            .getDeclaredMethods())
                    .filter(method -> !method.isSynthetic())
                    .count();
        }
        assertThat(all).hasSize((int) methods);
        assertThat(all)
                .allSatisfy(one -> assertThat(one.method().getName())
                        .startsWith(
                                one.number().toLowerCase(java.util.Locale.ROOT).charAt(0)
                                        + String.format(
                                                "%02d",
                                                Integer.parseInt(one.number().substring(1)))));
    }

    @Test
    void eachAsksAndHasWords() {
        assertThat(all).allSatisfy(one -> {
            assertThat(one.asks()).endsWith("?").hasSizeBetween(12, 120);
            assertThat(one.words().split(" ")).hasSizeGreaterThanOrEqualTo(3);
        });
    }

    @Test
    void noneTakesMoreThanThreeStatements() {
        assertThat(all)
                .allSatisfy(one -> assertThat(statements(String.join("\n", one.lines())))
                        .as(one.number())
                        .isBetween(1, STATEMENTS));
    }

    /** Counts what ends with a semicolon; texts in quotation marks do not count. */
    private static int statements(String body) {
        return (int) body.replaceAll("\"(\\\\.|[^\"\\\\])*\"", "")
                .chars()
                .filter(one -> one == ';')
                .count();
    }

    @Test
    void statementsAreCounted() {
        assertThat(statements("return \"a; b\" + x;")).isEqualTo(1);
        assertThat(statements("A a = b();\ntry {\n return a;\n} catch (E e) {\n return e;\n}"))
                .isEqualTo(3);
    }

    /** The answers as they stand, to be read whenever they change. */
    @Test
    void answersAreAsWritten() throws IOException {
        StringBuilder text = new StringBuilder();
        for (Asked one : all) {
            text.append(one).append('\n');
            one.answer()
                    .lines()
                    .forEach(line -> text.append("    ").append(line).append('\n'));
        }
        Path file = Pages.file(FOLDER + "answers.txt");
        if (Boolean.getBoolean("answers.write")) {
            Files.writeString(file, text);
        }
        assertThat(text.toString())
                .as("write anew with -Danswers.write=true")
                .isEqualTo(Files.readString(file, StandardCharsets.UTF_8));
    }

    @Test
    void workedFiguresComeOut() throws IOException {
        Set<String> held = new TreeSet<>();
        for (String line : Files.readAllLines(Pages.file(FOLDER + "worked.csv"), StandardCharsets.UTF_8)) {
            if (line.startsWith("#") || line.startsWith("number,")) {
                continue;
            }
            String[] row = line.split(",", 6);
            Asked one = Questions.find(row[0]).get(0);
            double exact = Double.parseDouble(row[3]);
            double off = Math.abs(exact) * Double.parseDouble(row[4]) / 100 + 1e-9;
            assertThat(figures(one.answer(), row[1]))
                    .as(line + ": " + one.answer())
                    .anySatisfy(figure -> assertThat(Math.abs(figure - exact)).isLessThanOrEqualTo(off));
            if (Math.abs(exact / Double.parseDouble(row[2]) - 1) > 0.01) {
                assertThat(row[5]).as(line).isNotBlank();
            }
            held.add(row[0]);
        }
        assertThat(held)
                .containsExactlyInAnyOrderElementsOf(all.stream()
                        .map(Asked::number)
                        .filter(number -> number.startsWith("B"))
                        .toList());
    }

    /** The numbers of a text that have a sign behind or before them. */
    private static List<Double> figures(String text, String sign) {
        List<Double> figures = new ArrayList<>();
        String number = "(-?\\d+(?:\\.\\d+)?)";
        Matcher found = Pattern.compile(
                        number + "(?: " + Pattern.quote(sign) + ")(?![\\w/])|" + Pattern.quote(sign) + " " + number)
                .matcher(text);
        while (found.find()) {
            figures.add(Double.valueOf(found.group(1) == null ? found.group(2) : found.group(1)));
        }
        return figures;
    }

    /** Figures have units, and nothing is printed that is no answer. */
    @Test
    void answersAreSentences() {
        assertThat(all).allSatisfy(one -> {
            String answer = one.answer();
            assertThat(answer)
                    .as(one.number())
                    .isNotBlank()
                    .doesNotContain("NaN", "Optional", "@", "null", "[", "]", "Infinity", "taken: ")
                    .doesNotContainPattern("[1-9]\\d*\\.\\d{4}");
            assertThat(answer.length()).as(answer).isBetween(12, 1500);
        });
    }

    /** What comes out, and is not settled by what was given, has a band. */
    @Test
    void forecastsHaveBands() {
        for (String number : List.of("B1", "B39", "G15", "G16", "G17")) {
            assertThat(Questions.find(number).get(0).answer()).as(number).containsPattern("mean -?[\\d.]+–-?[\\d.]+");
        }
        assertThat(Questions.find("G2").get(0).answer()).containsPattern("good pieces \\d+ \\(\\d+–\\d+\\)");
    }

    @Test
    void cautionsRefuseAskOrWarn() {
        assertThat(all.stream().filter(one -> one.number().startsWith("F")))
                .hasSize(24)
                .allSatisfy(one -> assertThat(one.answer())
                        .as(one.number())
                        .containsPattern(
                                one.number().equals("F21") || one.number().equals("F24")
                                        ? "15 pieces|220 sheets"
                                        : "warning: |It may mean: |given|not extrapolated|were households counted"));
    }

    @Test
    void fewDoorsServeOneQuestionOnly() {
        assertThat(SINGLE_USE).hasSizeLessThanOrEqualTo(6);
        for (String door : BUILT) {
            long uses = all.stream()
                    .filter(one ->
                            String.join(" ", one.lines()).replaceAll("\\s+", "").contains(door))
                    .count();
            assertThat(uses).as(door).isPositive();
            assertThat(uses == 1).as(door).isEqualTo(SINGLE_USE.contains(door));
        }
    }

    @Test
    void aNumberOrWordsFindAQuestion() {
        assertThat(Questions.find("b12")).hasSize(1);
        assertThat(Questions.find("heel")).extracting(Asked::number).contains("B4", "B5", "F17");
        assertThat(Questions.find("kiln")).isEmpty();
        assertThat(run()).hasLineCount(all.size()).startsWith("B1 Why do sheets get thinner");
        assertThat(run("kiln")).startsWith("No question has all of these words.");
    }

    @Test
    void theReadmeShowsWhatIsPrinted() {
        assertThat(Pages.blocks("README.md", "text").get(1).stripTrailing())
                .isEqualTo(run("post", "height").stripTrailing());
    }

    private static String run(String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Questions.run(List.of(args), new PrintStream(out, true, StandardCharsets.UTF_8));
        return out.toString(StandardCharsets.UTF_8);
    }
}
