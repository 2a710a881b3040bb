package org.papermath.guard;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The codes a plan can raise, found in the sources: string literals in the argument of a call that takes a code. Follow
 * here when a file that raises codes of a plan moves or comes anew.
 */
final class GuardCodes {
    private static final Path SOURCES = GuardFile.module().resolve("src/main/java/org/papermath");

    /** Where the notices of a plan are worded; a folder stands for all its files. */
    private static final List<String> NOTICE_PLACES = List.of("plan", "notice", "mail/MailLimits.java");

    private static final List<String> NOTICE_CALLS = List.of("warn", "note", "Notice.warning", "Notice.note");
    private static final Pattern NOTICE = Pattern.compile("\"([a-z0-9-]+\\.[a-z0-9-]+)\"");

    private static final List<String> STAGE_PLACES = List.of("plan");

    /** Where an order is refused or asked about while it is planned; what the builders refuse is no matter of the engine. */
    private static final List<String> REFUSAL_PLACES = List.of("engine");

    private GuardCodes() {}

    static Set<String> notices() {
        Set<String> codes = new TreeSet<>();
        for (String call : NOTICE_CALLS) {
            codes.addAll(literals(NOTICE_PLACES, call, 0, NOTICE));
        }
        return codes;
    }

    static Set<String> stages() {
        Set<String> codes = literals(STAGE_PLACES, "notDone", 0, NOTICE);
        codes.addAll(literals(STAGE_PLACES, "known", 2, NOTICE));
        return codes;
    }

    static Set<String> refusals() {
        Set<String> codes = literals(REFUSAL_PLACES, "Refused.of", 0, NOTICE);
        codes.addAll(literals(REFUSAL_PLACES, "Unclear", 0, NOTICE));
        return codes;
    }

    private static Set<String> literals(List<String> places, String call, int argument, Pattern code) {
        Set<String> found = new TreeSet<>();
        Pattern start = Pattern.compile(
                "(?<![\\w.])" + (call.contains(".") ? "" : "(?:\\w+\\.)?") + Pattern.quote(call) + "\\(");
        for (String place : places) {
            for (String source : sources(SOURCES.resolve(place))) {
                Matcher calls = start.matcher(source);
                while (calls.find()) {
                    List<String> arguments = arguments(source, calls.end());
                    if (arguments.size() > argument) {
                        Matcher literal = code.matcher(arguments.get(argument));
                        while (literal.find()) {
                            found.add(literal.group(1));
                        }
                    }
                }
            }
        }
        return found;
    }

    private static List<String> sources(Path place) {
        try (Stream<Path> files = Files.walk(place)) {
            List<String> sources = new ArrayList<>();
            for (Path file : files.filter(file -> file.toString().endsWith(".java"))
                    .sorted()
                    .toList()) {
                sources.add(Files.readString(file));
            }
            return sources;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Splits what stands in the parentheses of a call at its commas, but for those in strings and brackets. */
    private static List<String> arguments(String source, int from) {
        List<String> arguments = new ArrayList<>();
        int depth = 0;
        int start = from;
        boolean quoted = false;
        for (int i = from; i < source.length(); i++) {
            char c = source.charAt(i);
            if (quoted) {
                if (c == '\\') {
                    i++;
                } else if (c == '"') {
                    quoted = false;
                }
            } else if (c == '"') {
                quoted = true;
            } else if (c == '(' || c == '{') {
                depth++;
            } else if (depth > 0 && (c == ')' || c == '}')) {
                depth--;
            } else if (c == ',' || c == ')') {
                arguments.add(source.substring(start, i));
                start = i + 1;
                if (c == ')') {
                    break;
                }
            }
        }
        return arguments;
    }
}
