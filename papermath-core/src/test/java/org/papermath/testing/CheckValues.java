package org.papermath.testing;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.assertj.core.data.Offset;

/**
 * Values from outside that the code is held against: a comma-separated table in {@code checkvalues/} of the test
 * resources, with the source, how it is known, the tolerance and what the rows are worth in its head.
 *
 * <p>The line {@code class: identity} of a head holds for every row; a line {@code class standard: a | b} for those of
 * which the first cell is {@code a} or {@code b}, and a column {@code class} for its row.
 */
public final class CheckValues {
    private static final List<String> HEAD = List.of("source", "known-by", "tolerance", "class");
    private static final String CLASS = "class";

    private CheckValues() {}

    /** What a row is worth as evidence. */
    public enum Worth {
        /** Measured and published by others. */
        MEASURED_OUTSIDE,
        /** By a standard or a printed list of others, or what their code gives. */
        STANDARD,
        /** Worked out again another way: shows that the arithmetic is right. */
        IDENTITY,
        /** What this library gave before: shows that it still does. */
        REGRESSION;

        /** {@return the word in the tables} */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }

        private static Worth of(String place, String word) {
            for (Worth worth : values()) {
                if (worth.word().equals(word)) {
                    return worth;
                }
            }
            throw new AssertionError(place + ": the class \"" + word + "\" is none of " + List.of(values()));
        }
    }

    /** One line of a table; {@code toString} is its first cell, so that a failing case names itself. */
    public static final class Row {
        private final String place;
        private final Map<String, String> cells;
        private final Worth worth;

        private Row(String place, Map<String, String> cells, Worth worth) {
            this.place = place;
            this.cells = cells;
            this.worth = worth;
        }

        /** What the row is worth. */
        public Worth worth() {
            return worth;
        }

        /** The cell of a column as written; fails when there is no such column. */
        public String text(String column) {
            String cell = cells.get(column);
            if (cell == null) {
                throw new AssertionError(place + ": no column \"" + column + "\" among " + cells.keySet());
            }
            return cell;
        }

        /** The cell of a column as a number; fails when it is not one. */
        public double number(String column) {
            String cell = text(column);
            try {
                return Double.parseDouble(cell);
            } catch (NumberFormatException e) {
                throw new AssertionError(place + ": \"" + column + "\" is not a number: \"" + cell + "\"", e);
            }
        }

        /** Whether the cell of a column holds anything. */
        public boolean has(String column) {
            return !text(column).isEmpty();
        }

        @Override
        public String toString() {
            return cells.values().iterator().next();
        }
    }

    /** The rows of the table {@code checkvalues/<name>.csv}, in order. */
    public static List<Row> read(String name) {
        String file = "/checkvalues/" + name + ".csv";
        try (InputStream in = CheckValues.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new AssertionError("no table " + file);
            }
            return parse(file, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The one row of a table whose column holds the given text. */
    public static Row row(String name, String column, String value) {
        List<Row> found = read(name).stream()
                .filter(row -> row.text(column).equals(value))
                .toList();
        if (found.size() != 1) {
            throw new AssertionError(name + ": " + found.size() + " rows with " + column + " = \"" + value + "\"");
        }
        return found.get(0);
    }

    /** Writes each row of a table anew with {@code -Dfigures.write=all}, for tables that hold what the library gives. */
    public static void rewriteIfAsked(String name, Function<Row, String> line) throws IOException {
        if (System.getProperty("figures.write", "").equals("all")) {
            rewrite(name, line);
        }
    }

    /** Writes each row of a table anew, under its head and its columns. */
    public static void rewrite(String name, Function<Row, String> line) throws IOException {
        Path file = Path.of("src", "test", "resources", "checkvalues", name + ".csv");
        List<String> lines = Files.readAllLines(file);
        int columns = 0;
        while (lines.get(columns).startsWith("#")) {
            columns++;
        }
        List<String> out = new ArrayList<>(lines.subList(0, columns + 1));
        read(name).stream().map(line).forEach(out::add);
        Files.write(file, out);
    }

    /** How far a value may lie from an expected one, as a part of that. */
    public static Offset<Double> relative(double expected, double part) {
        return Offset.offset(Math.abs(expected) * part);
    }

    static List<Row> parse(String file, String text) {
        List<String> lines = text.lines().toList();
        int at = 0;
        List<String> head = new ArrayList<>();
        while (at < lines.size() && lines.get(at).startsWith("#")) {
            head.add(lines.get(at++).substring(1).strip());
        }
        for (String key : HEAD) {
            if (head.stream().noneMatch(line -> line.startsWith(key + ":") && line.length() > key.length() + 2)) {
                throw new AssertionError(file + ": the head does not say \"" + key + "\"");
            }
        }
        if (at == lines.size()) {
            throw new AssertionError(file + ": no header row");
        }
        List<String> columns = cells(file, lines.get(at++));
        Map<String, Worth> named = named(file, head);
        Set<String> met = new HashSet<>();
        Worth usual = Worth.of(file, valueOf(head, CLASS));
        List<Row> rows = new ArrayList<>();
        for (; at < lines.size(); at++) {
            String line = lines.get(at);
            if (line.isBlank()) {
                continue;
            }
            String place = file + " line " + (at + 1);
            List<String> values = cells(place, line);
            if (values.size() != columns.size()) {
                throw new AssertionError(place + ": " + values.size() + " cells, expected " + columns.size());
            }
            Map<String, String> byColumn = new LinkedHashMap<>();
            for (int i = 0; i < values.size(); i++) {
                if (byColumn.put(columns.get(i), values.get(i)) != null) {
                    throw new AssertionError(place + ": column \"" + columns.get(i) + "\" twice");
                }
            }
            Worth own = named.get(values.get(0));
            met.add(values.get(0));
            String cell = byColumn.get(CLASS);
            rows.add(new Row(place, byColumn, cell != null ? Worth.of(place, cell) : own != null ? own : usual));
        }
        if (!met.containsAll(named.keySet())) {
            throw new AssertionError(
                    file + ": not all there: " + named.keySet() + ", of which the head says the class");
        }
        if (rows.isEmpty()) {
            throw new AssertionError(file + ": no rows");
        }
        return List.copyOf(rows);
    }

    private static String valueOf(List<String> head, String key) {
        return head.stream()
                .filter(line -> line.startsWith(key + ":"))
                .findFirst()
                .orElseThrow()
                .substring(key.length() + 1)
                .strip();
    }

    /** The rows of which a line of the head says the class, by their first cells. */
    private static Map<String, Worth> named(String file, List<String> head) {
        Map<String, Worth> named = new LinkedHashMap<>();
        for (String line : head) {
            int colon = line.indexOf(':');
            if (line.startsWith(CLASS + " ") && colon > 0) {
                Worth worth =
                        Worth.of(file, line.substring(CLASS.length(), colon).strip());
                for (String row : line.substring(colon + 1).split("\\|")) {
                    named.put(row.strip(), worth);
                }
            }
        }
        return named;
    }

    private static List<String> cells(String place, String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"') {
                if (quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                    cell.append(c);
                    i++;
                } else {
                    quoted = !quoted;
                }
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString().strip());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        if (quoted) {
            throw new AssertionError(place + ": a quote is not closed");
        }
        cells.add(cell.toString().strip());
        return cells;
    }
}
