package org.papermath.evidence;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Every code under which the library refuses, asks, warns, or says why a stage of the work was not done.
 *
 * <p>The texts of the library are English. A program that words them itself goes by the code of what is reported and by
 * the named values that come with it, and finds here, before it happens, all that may come:
 *
 * <pre>{@code
 * Codes.find("post.heavy").orElseThrow().arguments();   // [mass, limit, guidance]
 * }</pre>
 *
 * <p>What a plan reports of one of several pieces or batches has the value {@code piece} or {@code batch} too, its
 * name. A refusal met while records of batches are made use of is reported as a notice with the same code and the same
 * values. A stage that is not done has its code and no values.
 *
 * <p>The documents of {@code org.papermath.json} have further codes, of what is wrong with a text before it says
 * anything to this library; they stand in {@code FaultCodes} there.
 */
public final class Codes {
    private static final Map<String, Code> ALL = shipped();

    private Codes() {}

    /**
     * Returns all codes.
     *
     * @return an unmodifiable list, by name
     */
    public static List<Code> all() {
        return List.copyOf(ALL.values());
    }

    /**
     * Finds a code.
     *
     * @param name the name, such as that of {@link Notice#code()}
     * @return the code; empty if it is none of this library
     */
    public static Optional<Code> find(String name) {
        Objects.requireNonNull(name, "name");
        return Optional.ofNullable(ALL.get(name));
    }

    private static Map<String, Code> shipped() {
        try (InputStream stream = Codes.class.getResourceAsStream("codes.csv")) {
            if (stream == null) {
                throw new IllegalStateException("the library is incomplete: codes.csv is missing");
            }
            return read(stream);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Reads the text of the table. */
    static Map<String, Code> read(InputStream text) throws IOException {
        Map<String, Code> all = new LinkedHashMap<>();
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(text, StandardCharsets.UTF_8))) {
            reader.readLine();
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                Code code = row(AssumptionsTable.cells(line), line);
                if (all.put(code.name(), code) != null) {
                    throw new IllegalStateException("the table of codes: " + code.name() + " stands twice");
                }
            }
        }
        return Collections.unmodifiableMap(all);
    }

    /** Of the arguments, those that come only at times are marked by a question mark. */
    private static Code row(List<String> cells, String line) {
        if (cells.size() != 4) {
            throw new IllegalStateException("the table of codes: a row of " + cells.size() + " cells: " + line);
        }
        Set<Code.Use> uses = EnumSet.noneOf(Code.Use.class);
        for (String use : words(cells.get(1))) {
            uses.add(Code.Use.valueOf(use.toUpperCase(Locale.ROOT)));
        }
        List<String> always = new ArrayList<>();
        List<String> sometimes = new ArrayList<>();
        for (String argument :
                cells.get(2).isEmpty() ? new String[0] : cells.get(2).split(" ")) {
            if (argument.endsWith("?")) {
                sometimes.add(argument.substring(0, argument.length() - 1));
            } else {
                always.add(argument);
            }
        }
        return new Code(cells.get(0), uses, always, sometimes, cells.get(3));
    }

    private static List<String> words(String cell) {
        return cell.isEmpty() ? List.of() : List.of(cell.split(" ", -1));
    }
}
