package org.papermath.examples;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import jdk.jshell.EvalException;
import jdk.jshell.JShell;
import jdk.jshell.JShellException;
import jdk.jshell.Snippet;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis;

/** A JShell with the library on its class path, which answers as the tool does. */
final class Shell implements AutoCloseable {
    private final ByteArrayOutputStream printed = new ByteArrayOutputStream();
    private final JShell shell;

    Shell() {
        shell = JShell.builder()
                .out(new PrintStream(printed, true, StandardCharsets.UTF_8))
                .build();
        String path = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        shell.addToClasspath(path);
    }

    /** Runs all snippets of a text, which must all be right, and returns what the last of them gives. */
    String run(String text) {
        String rest = text;
        String answer = "";
        while (!rest.isBlank()) {
            SourceCodeAnalysis.CompletionInfo next = shell.sourceCodeAnalysis().analyzeCompletion(rest);
            if (next.source() == null) {
                throw new AssertionError("not a whole snippet: " + rest);
            }
            answer = one(next.source());
            rest = next.remaining();
        }
        return answer;
    }

    /** What the snippets printed so far; letters beyond ASCII as the machine behind the shell writes them. */
    String printed() {
        return printed.toString(StandardCharsets.UTF_8);
    }

    private String one(String source) {
        String answer = "";
        for (SnippetEvent event : shell.eval(source)) {
            if (event.status() != Snippet.Status.VALID && event.status() != Snippet.Status.OVERWRITTEN) {
                List<String> why = shell.diagnostics(event.snippet())
                        .map(d -> d.getMessage(null))
                        .toList();
                throw new AssertionError(source.strip() + ": " + event.status() + " " + why);
            }
            if (event.exception() != null) {
                answer = said(event.exception());
            } else if (event.value() != null) {
                answer = event.value();
            }
        }
        return answer;
    }

    private static String said(JShellException exception) {
        String name = exception instanceof EvalException thrown
                ? thrown.getExceptionClassName()
                : exception.getClass().getName();
        return "Exception " + name + ": " + exception.getMessage();
    }

    @Override
    public void close() {
        shell.close();
    }
}
