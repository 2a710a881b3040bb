package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DocumentFilesTest {
    @TempDir
    Path folder;

    private String[] names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toArray(String[]::new);
        }
    }

    @Test
    void savesAndReplacesWithoutLeavingAnything() throws IOException {
        Path file = folder.resolve("bench.json");
        DocumentFiles.save(file, "one é");
        DocumentFiles.save(file, "two");

        assertThat(Files.readString(file)).isEqualTo("two");
        assertThat(names()).containsExactly("bench.json");
    }

    @Test
    void keepsLinksAndPermissions() throws IOException {
        Path file = Files.writeString(folder.resolve("real.json"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("link.json"), file);
        boolean posix = Files.getFileAttributeView(file, PosixFileAttributeView.class) != null;
        if (posix) {
            Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw-r--"));
        }
        DocumentFiles.save(link, "new");

        assertThat(Files.isSymbolicLink(link)).isTrue();
        assertThat(Files.readString(file)).isEqualTo("new");
        if (posix) {
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                    .isEqualTo("rw-rw-r--");
        }
    }

    @Test
    void leavesTheOldFileWhenItFails() throws IOException {
        Path file = Files.writeString(folder.resolve("bench.json"), "old");

        assertThatThrownBy(() -> DocumentFiles.save(file, "half \uD83D")).isInstanceOf(IOException.class);
        assertThatThrownBy(() -> DocumentFiles.save(folder.resolve("no/bench.json"), "x"))
                .isInstanceOf(IOException.class);
        Files.createDirectories(folder.resolve("dir/inside"));
        assertThatThrownBy(() -> DocumentFiles.save(folder.resolve("dir"), "x")).isInstanceOf(IOException.class);
        assertThat(Files.readString(file)).isEqualTo("old");
        assertThat(names()).containsExactly("bench.json", "dir");
    }

    @Test
    void goesRoundALeftOverFile() throws IOException {
        Files.writeString(folder.resolve(".bench.json.1.part"), "from a crash");
        DocumentFiles.save(folder.resolve("bench.json"), "new");

        assertThat(names()).containsExactly(".bench.json.1.part", "bench.json");
    }
}
