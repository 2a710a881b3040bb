package org.papermath.examples;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.papermath.colour.ColourDrawing;
import org.papermath.json.DocumentFiles;

/** Where the programs on colour print, and how they save their picture when a file is named. */
final class ColourOutput {
    private ColourOutput() {}

    static PrintStream utf8() {
        return new PrintStream(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
    }

    /** Saves the picture in the file that the first argument names; does nothing without one. */
    static void save(String[] args, ColourDrawing picture) throws IOException {
        if (args.length > 0) {
            DocumentFiles.save(Path.of(args[0]).toAbsolutePath(), picture.svg());
        }
    }
}
