package org.papermath.json;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;

/** Saving of documents so that a file is either the old one or the new one, never half of either. */
public final class DocumentFiles {
    private static final int MOST_TRIES = 1000;

    private DocumentFiles() {
    }

    /**
     * Saves a text in UTF-8: writes it to a new file in the same folder, makes sure it is on the disk, then puts it in
     * the place of the old one in a single step. A symbolic link stays one; the file it leads to is replaced.
     *
     * @param target the file, which may exist; its folder must
     * @param text the text
     * @throws IOException if it cannot be saved; the old file is then as it was
     */
    public static void save(Path target, String text) throws IOException {
        Path file = Files.isSymbolicLink(target) ? target.toRealPath() : target.toAbsolutePath();
        Path folder = file.getParent();
        Path name = file.getFileName();
        if (folder == null || name == null) {
            throw new IOException("not the name of a file: " + target);
        }
        ByteBuffer bytes = StandardCharsets.UTF_8.newEncoder().encode(java.nio.CharBuffer.wrap(text));
        Path part = null;
        for (int i = 1; part == null; i++) {
            Path candidate = folder.resolve("." + name + "." + i + ".part");
            try (FileChannel out = FileChannel.open(candidate, StandardOpenOption.CREATE_NEW,
                    StandardOpenOption.WRITE)) {
                part = candidate;
                while (bytes.hasRemaining()) {
                    out.write(bytes);
                }
                out.force(true);
            } catch (FileAlreadyExistsException e) {
                if (i >= MOST_TRIES) {
                    throw e;
                }
            } catch (IOException e) {
                if (part != null) {
                    Files.deleteIfExists(part);
                }
                throw e;
            }
        }
        try {
            keepPermissions(file, part);
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            Files.deleteIfExists(part);
            throw e;
        }
    }

    private static void keepPermissions(Path old, Path part) throws IOException {
        PosixFileAttributeView from = Files.getFileAttributeView(old, PosixFileAttributeView.class);
        PosixFileAttributeView to = Files.getFileAttributeView(part, PosixFileAttributeView.class);
        if (from != null && to != null && Files.exists(old)) {
            to.setPermissions(from.readAttributes().permissions());
        }
    }
}
