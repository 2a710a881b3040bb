package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The examples in Javadoc compile and run, and give what the comment behind a line says. */
class JavadocExamplesTest {
    private static final Pattern EXAMPLE = Pattern.compile("<pre>\\{@code\\n(.*?)\\n *\\* *\\}</pre>", Pattern.DOTALL);
    private static final Pattern GIVES = Pattern.compile("(.*?); // (.+)");

    /** The types people meet first. Each opens with an example. */
    private static final List<String> MAIN_TYPES = List.of(
            "quantity/Amounts",
            "evidence/Assumptions",
            "evidence/Estimate",
            "order/Order",
            "order/Piece",
            "order/Recipe",
            "order/Studio",
            "plan/MakingPlan",
            "card/MakingCard",
            "record/Calibration");

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

    static Stream<Arguments> examples() throws IOException {
        List<Arguments> all = new ArrayList<>();
        Path core = Pages.file("papermath-core/src/main/java");
        try (Stream<Path> files = Files.walk(core)) {
            for (Path file : files.filter(one -> one.toString().endsWith(".java"))
                    .sorted()
                    .toList()) {
                Matcher found = EXAMPLE.matcher(Files.readString(file).replace("\r\n", "\n"));
                while (found.find()) {
                    all.add(Arguments.of(
                            core.relativize(file).toString(),
                            found.group(1).replaceAll("(?m)^ *\\* ?", "").replace("&#64;", "@")));
                }
            }
        }
        return all.stream();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("examples")
    void runs(String file, String code) {
        StringBuilder statement = new StringBuilder();
        for (String line : code.split("\n")) {
            Matcher gives = GIVES.matcher(line);
            if (gives.matches()) {
                String answer = shell.run(statement + gives.group(1) + ";");
                assertThat(answer).as(line).isEqualTo(gives.group(2));
                statement.setLength(0);
            } else {
                statement.append(line).append('\n');
            }
        }
        shell.run(statement.toString());
    }

    @Test
    void theMainTypesOpenWithAnExample() {
        for (String type : MAIN_TYPES) {
            String source = Pages.text("papermath-core/src/main/java/org/papermath/" + type + ".java");
            String comment = source.substring(source.indexOf("\n/**"), source.indexOf("\npublic final class"));
            int example = comment.indexOf("<pre>{@code");
            int second = comment.indexOf("<p>");
            assertThat(example).as(type).isPositive();
            assertThat(second < 0 || example < second).as(type).isTrue();
        }
    }
}
