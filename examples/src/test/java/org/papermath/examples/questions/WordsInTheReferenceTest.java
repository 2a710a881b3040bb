package org.papermath.examples.questions;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The words a question is found by lead to a package in the index of the reference too. */
class WordsInTheReferenceTest {
    private static final Pattern INDEXED = Pattern.compile("\\{@index ([^}\\s]+)}");

    @Test
    void everyWordOfAQuestionIsInTheIndex() throws IOException {
        Set<String> indexed = new TreeSet<>();
        Path core = Path.of("..", "papermath-core", "src", "main", "java");
        try (Stream<Path> files = Files.walk(core)) {
            for (Path file :
                    files.filter(one -> one.endsWith("package-info.java")).toList()) {
                Matcher word = INDEXED.matcher(Files.readString(file));
                while (word.find()) {
                    assertThat(indexed.add(file.getParent().getFileName() + " " + word.group(1)))
                            .as(word.group(1) + " twice in " + file)
                            .isTrue();
                }
            }
        }
        Set<String> words = new TreeSet<>();
        indexed.forEach(one -> words.add(one.substring(one.indexOf(' ') + 1)));
        for (Asked asked : Questions.all()) {
            assertThat(words)
                    .as(asked.number())
                    .containsAll(List.of(asked.words().split(" ")));
        }
    }
}
