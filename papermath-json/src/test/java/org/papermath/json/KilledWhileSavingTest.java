package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A process that saves and is killed, a few times in short runs, {@code -Dpapermath.kills} times else. */
class KilledWhileSavingTest {
    private static final int LENGTH = 400_000;

    @TempDir
    Path folder;

    /** Saves one text after another until it is killed. */
    static final class Saver {
        private Saver() {}

        public static void main(String[] file) throws IOException {
            for (int i = 0; ; i++) {
                DocumentFiles.save(Path.of(file[0]), text(i));
                if (i == 0) {
                    Files.createFile(Path.of(file[1]));
                }
            }
        }
    }

    /** Texts that differ from end to end, and in length. */
    static String text(int number) {
        return (char) ('a' + number % 26)
                + String.valueOf((char) ('a' + number % 26)).repeat(LENGTH + number % 26);
    }

    @Test
    void leavesTheOldOrTheNewFileWhole() throws IOException, InterruptedException {
        Path file = folder.resolve("order.json");
        Random random = new Random(20270122);
        int kills = Integer.getInteger("papermath.kills", 3);
        for (int i = 0; i < kills; i++) {
            Path started = folder.resolve("started" + i);
            Process saver = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-XX:TieredStopAtLevel=1",
                            "-cp",
                            classPath(),
                            Saver.class.getName(),
                            file.toString(),
                            started.toString())
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            try {
                for (int wait = 0; wait < 6000 && !Files.exists(started); wait++) {
                    assertThat(saver.isAlive()).as("the saver runs").isTrue();
                    Thread.sleep(10);
                }
                Thread.sleep(random.nextInt(60));
            } finally {
                saver.destroyForcibly();
            }
            assertThat(saver.waitFor(60, TimeUnit.SECONDS)).isTrue();
            String found = Files.readString(file);
            assertThat(found).isEqualTo(text(found.charAt(0) - 'a'));
            Files.delete(started);
        }
        // What was being written when the process was killed may lie beside the file, and is in nobody's way.
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(one -> one.getFileName().toString()))
                    .allMatch(name -> name.equals("order.json") || name.matches("\\.order\\.json\\.[0-9]+\\.part"));
        }
    }

    private static String classPath() {
        return Stream.of(DocumentFiles.class, Saver.class)
                .map(KilledWhileSavingTest::place)
                .distinct()
                .reduce((one, other) -> one + System.getProperty("path.separator") + other)
                .orElseThrow();
    }

    private static String place(Class<?> type) {
        try {
            return Path.of(type.getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (java.net.URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void theTextsDifferEverywhere() {
        assertThat(List.of(text(0), text(1))).doesNotHaveDuplicates().allMatch(text -> text.length() > LENGTH);
    }
}
