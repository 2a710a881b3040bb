package org.papermath.json;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.Objects;

/** Saving of documents so that a file is either the old one or the new one, never half of either. */
public final class DocumentFiles {
    private static final int MOST_TRIES = 1000;
    private static final int BUFFER = 64 * 1024;

    private DocumentFiles() {}

    /** Writes the contents of a file. */
    @FunctionalInterface
    interface Contents {
        void writeTo(OutputStream out) throws IOException;
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
        Objects.requireNonNull(target, "target");
        Objects.requireNonNull(text, "text");
        ByteBuffer bytes = StandardCharsets.UTF_8.newEncoder().encode(CharBuffer.wrap(text));
        save(target, out -> out.write(bytes.array(), bytes.arrayOffset(), bytes.remaining()));
    }

    static void save(Path target, Contents contents) throws IOException {
        Path file = Files.isSymbolicLink(target) ? target.toRealPath() : target.toAbsolutePath();
        Path folder = file.getParent();
        Path name = file.getFileName();
        if (folder == null || name == null) {
            throw new IOException("not the name of a file: " + target);
        }
        Path part = newPart(folder, name);
        try {
            try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
                OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), BUFFER);
                contents.writeTo(out);
                out.flush();
                channel.force(true);
            }
            keepPermissions(file, part);
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException | RuntimeException e) {
            Files.deleteIfExists(part);
            throw e;
        }
    }

    private static Path newPart(Path folder, Path name) throws IOException {
        for (int i = 1; ; i++) {
            try {
                return Files.createFile(folder.resolve("." + name + "." + i + ".part"));
            } catch (FileAlreadyExistsException e) {
                if (i >= MOST_TRIES) {
                    throw e;
                }
            }
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
