package org.papermath.json;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Objects;
import org.papermath.json.tree.JsonTree;
import org.papermath.json.tree.JsonValue;
import org.papermath.quantity.Refused;

/**
 * Finds documents in one folder and the folders below it, and nowhere else: absolute references, {@code ..} that leads
 * out and symbolic links that lead out are refused. A reference is read from where it stands, with {@code /} between
 * folders.
 */
public final class FolderResolver implements DocumentResolver {
    private final Path root;
    private final Path here;

    private FolderResolver(Path root, Path here) {
        this.root = root;
        this.here = here;
    }

    /**
     * Makes a resolver for a folder.
     *
     * @param folder the folder, which must exist
     * @return the resolver
     * @throws IOException if there is no such folder
     */
    public static FolderResolver of(Path folder) throws IOException {
        Objects.requireNonNull(folder, "folder");
        Path real = folder.toRealPath();
        if (!Files.isDirectory(real)) {
            throw new NoSuchFileException(folder.toString(), null, "not a folder");
        }
        return new FolderResolver(real, real);
    }

    @Override
    public Found find(String reference) throws IOException {
        Path wanted = here.resolve(relative(reference)).normalize();
        if (!wanted.startsWith(root)) {
            throw outside(reference, "leads out of the folder of the document");
        }
        Path real;
        try {
            real = wanted.toRealPath();
        } catch (NoSuchFileException e) {
            throw Refused.of(
                    FaultCodes.REFERENCE_MISSING,
                    "there is no file \"" + JsonValue.shown(reference)
                            + "\" here. Check the name, or put the file beside this one.",
                    "found",
                    reference);
        }
        if (!real.startsWith(root)) {
            throw outside(reference, "is a link that leads out of the folder of the document");
        }
        if (!Files.isRegularFile(real)) {
            throw Refused.of(
                    FaultCodes.REFERENCE_UNREADABLE,
                    "\"" + JsonValue.shown(reference) + "\" is not a file.",
                    "found",
                    reference);
        }
        String name =
                root.relativize(real).toString().replace(real.getFileSystem().getSeparator(), "/");
        Path parent = real.getParent();
        return new Found(name, read(real), new FolderResolver(root, parent == null ? root : parent));
    }

    /** Reads a file, but no more of it than it takes to see that it is too large. */
    static byte[] read(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(JsonTree.MOST_BYTES + 1);
        }
    }

    private Path relative(String reference) {
        boolean form = !reference.startsWith("/")
                && reference.indexOf('\\') < 0
                && reference.indexOf(':') < 0
                && !reference.isBlank();
        try {
            Path path = here.getFileSystem().getPath(reference);
            if (form && !path.isAbsolute()) {
                return path;
            }
        } catch (InvalidPathException e) {
            // falls to the refusal below
        }
        throw Refused.of(
                FaultCodes.REFERENCE_FORM,
                "\"" + JsonValue.shown(reference)
                        + "\" cannot be followed. Write the name of a file beside this one or below, with / between folders.",
                "found",
                reference);
    }

    private static Refused outside(String reference, String how) {
        return Refused.of(
                FaultCodes.REFERENCE_OUTSIDE,
                "\"" + JsonValue.shown(reference) + "\" " + how + ". Put the file beside this one or below.",
                "found",
                reference);
    }

    @Override
    public String toString() {
        return "documents in " + root;
    }
}
