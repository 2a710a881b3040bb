package org.papermath.examples.questions;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.lang.reflect.Method;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The index of the questions, and the program that prints them with their lines and answers. */
public final class Questions {
    private static final List<Class<?>> THEMES = List.of(
            FibreQuestions.class,
            VatQuestions.class,
            PressQuestions.class,
            DryingQuestions.class,
            StationeryQuestions.class,
            RecordQuestions.class,
            OrderQuestions.class,
            ColourQuestions.class,
            CautionQuestions.class,
            SmallQuestions.class);

    /** The comment of a method, its name and its body. */
    private static final Pattern METHOD = Pattern.compile(
            "    /\\*\\* (.*?) \\*/\\n    @Question\\([^\\n]*\\)\\n    public static \\S+ (\\w+)\\(\\) \\{\\n(.*?)\\n    \\}\\n",
            Pattern.DOTALL);

    private Questions() {}

    /**
     * Prints questions.
     *
     * @param args a number such as {@code B12}, or words of the trade; none for the list of all questions
     */
    public static void main(String[] args) {
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        run(List.of(args), out);
    }

    /** Does what the arguments say. */
    static void run(List<String> args, PrintStream out) {
        if (args.isEmpty()) {
            all().forEach(out::println);
            return;
        }
        List<Asked> found = find(String.join(" ", args));
        if (found.isEmpty()) {
            out.println("No question has all of these words. Without any, all questions are listed.");
        }
        for (Asked one : found) {
            out.println(one);
            one.lines().forEach(line -> out.println("    " + line));
            one.answer().lines().forEach(line -> out.println("  > " + line));
        }
    }

    /**
     * Finds questions.
     *
     * @param words a number, or words that all occur in what is asked or in its further words
     * @return the questions, by number
     */
    public static List<Asked> find(String words) {
        List<String> wanted =
                Arrays.asList(words.strip().toLowerCase(Locale.ROOT).split("\\s+"));
        List<Asked> all = all();
        List<Asked> numbered = all.stream()
                .filter(one -> wanted.contains(one.number().toLowerCase(Locale.ROOT)))
                .toList();
        return numbered.isEmpty()
                ? all.stream()
                        .filter(one -> {
                            String text = (one.asks() + " " + one.words()).toLowerCase(Locale.ROOT);
                            return wanted.stream().allMatch(text::contains);
                        })
                        .toList()
                : numbered;
    }

    /** {@return all questions: of the trade, cautions, and what a studio asks besides} */
    public static List<Asked> all() {
        List<Asked> all = new ArrayList<>();
        for (Class<?> theme : THEMES) {
            Matcher found = METHOD.matcher(source(theme));
            while (found.find()) {
                Method method = method(theme, found.group(2));
                Question question = method.getAnnotation(Question.class);
                all.add(new Asked(
                        question.number(),
                        theme.getSimpleName(),
                        asks(found.group(1)),
                        question.words(),
                        found.group(3).stripIndent().lines().toList(),
                        method));
            }
        }
        all.sort(Comparator.comparing((Asked one) -> one.number().charAt(0))
                .thenComparing(one -> Integer.parseInt(one.number().substring(1))));
        return all;
    }

    /** The first sentence of a comment; what follows a blank line or a full stop is for readers of the code. */
    private static String asks(String comment) {
        String plain = comment.replaceAll("\\s*\\n\\s*\\* ?", " ").strip();
        int end = plain.indexOf("? ");
        return end < 0 ? plain : plain.substring(0, end + 1);
    }

    private static Method method(Class<?> theme, String name) {
        try {
            return theme.getMethod(name);
        } catch (NoSuchMethodException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String source(Class<?> theme) {
        try (InputStream in = theme.getResourceAsStream(theme.getSimpleName() + ".java")) {
            if (in == null) {
                throw new IllegalStateException(theme + " is not beside its class");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
