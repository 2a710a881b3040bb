package org.papermath.examples;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.papermath.colour.ColourDrawing;
import org.papermath.json.DocumentFiles;

/** Where the short programs print, and how they save a picture or another text when a file is named. */
final class Output {
    private Output() {}

    static PrintStream utf8() {
        return new PrintStream(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
    }

    static PrintStream errors() {
        return new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
    }

    /** Saves the picture in the file that the first argument names; does nothing without one. */
    static void save(String[] args, ColourDrawing picture) throws IOException {
        save(args, picture.svg());
    }

    /** Saves a text in the file that the first argument names; does nothing without one. */
    static void save(String[] args, String text) throws IOException {
        if (args.length > 0) {
            DocumentFiles.save(Path.of(args[0]).toAbsolutePath(), text);
        }
    }
}
