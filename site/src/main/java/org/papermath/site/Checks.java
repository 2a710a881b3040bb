package org.papermath.site;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * What stands in the tests of the core about how far the numbers are to be trusted.
 *
 * @param rows the rows of check values, by what they are worth
 * @param figures published figures beside what the library gives
 * @param paints published mixtures of paints beside what the library foretells, as written in the table
 * @param soils soils judged dry and moist beside what the library tells, as written in the table
 * @param heldByNone the keys of the physical values that no published figure holds
 * @param heldFromOutside how many are held by figures no default was made from
 */
record Checks(
        Map<String, Integer> rows,
        List<Figure> figures,
        List<Map<String, String>> paints,
        List<Map<String, String>> soils,
        List<String> heldByNone,
        String heldFromOutside) {
    private static final String CLASS = "class";
    private static final String FROM_OUTSIDE = "# held by figures no default was made from: ";

    /** A published figure beside what the library gives, as written in the table. */
    record Figure(
            String name,
            String sample,
            String published,
            String within,
            String unit,
            String model,
            String error,
            String low,
            String high,
            String inside,
            String source) {
        private static Figure of(Map<String, String> cells) {
            List<String> found = List.of(
                            "case",
                            "sample",
                            "published",
                            "within",
                            "unit",
                            "model",
                            "error",
                            "low",
                            "high",
                            "inside",
                            "source")
                    .stream()
                    .map(column -> Objects.requireNonNull(cells.get(column), column))
                    .toList();
            return new Figure(
                    found.get(0),
                    found.get(1),
                    found.get(2),
                    found.get(3),
                    found.get(4),
                    found.get(5),
                    found.get(6),
                    found.get(7),
                    found.get(8),
                    found.get(9),
                    found.get(10));
        }

        /** Whether a default was made from it. */
        boolean isFitted() {
            return sample.equals("fitted");
        }

        /** Whether the library lies from it by more than it is published to. */
        boolean isMissed() {
            return Double.parseDouble(error) > Double.parseDouble(within);
        }

        /** Whether the case rests on any value with a band. */
        boolean hasBand() {
            return !inside.equals("-");
        }

        /** Whether the published value itself lies in the band of the library. */
        boolean isInside() {
            return inside.equals("yes");
        }
    }

    /** Reads the resources of the core's tests. */
    static Checks of(Path top) throws IOException {
        Path tests = top.resolve("papermath-core/src/test/resources");
        List<Path> tables;
        try (Stream<Path> files = Files.list(tests.resolve("checkvalues"))) {
            tables = files.filter(file -> file.toString().endsWith(".csv"))
                    .sorted()
                    .toList();
        }
        Map<String, Integer> rows = new TreeMap<>();
        for (Path table : tables) {
            count(Files.readAllLines(table), rows);
        }
        List<String> held = Files.readAllLines(tests.resolve("held-by-no-figure.txt"));
        return new Checks(
                rows,
                records(Files.readAllLines(tests.resolve("checkvalues/outside_figures.csv"))).stream()
                        .map(Figure::of)
                        .toList(),
                records(Files.readAllLines(tests.resolve("checkvalues/paint_colours.csv"))),
                records(Files.readAllLines(tests.resolve("checkvalues/moist_soils.csv"))),
                held.stream()
                        .filter(line -> !line.startsWith("#") && !line.isBlank())
                        .toList(),
                held.stream()
                        .filter(line -> line.startsWith(FROM_OUTSIDE))
                        .findFirst()
                        .orElseThrow()
                        .substring(FROM_OUTSIDE.length()));
    }

    /** Counts the rows of one table; its head says their class, or that of some by their first cells, or a column. */
    private static void count(List<String> lines, Map<String, Integer> rows) {
        String usual = "";
        Map<String, String> named = new LinkedHashMap<>();
        for (String line : lines) {
            String head = line.startsWith("#") ? line.substring(1).strip() : "";
            int colon = head.indexOf(':');
            if (head.startsWith(CLASS + ":")) {
                usual = head.substring(colon + 1).strip();
            } else if (head.startsWith(CLASS + " ") && colon > 0) {
                for (String row : head.substring(colon + 1).split("\\|", -1)) {
                    named.put(row.strip(), head.substring(CLASS.length(), colon).strip());
                }
            }
        }
        for (Map<String, String> record : records(lines)) {
            String first = record.values().iterator().next();
            rows.merge(record.getOrDefault(CLASS, named.getOrDefault(first, usual)), 1, Integer::sum);
        }
    }

    private static List<Map<String, String>> records(List<String> lines) {
        List<Map<String, String>> records = new ArrayList<>();
        List<String> columns = List.of();
        for (String line : lines) {
            if (line.startsWith("#") || line.isBlank()) {
                continue;
            }
            List<String> cells =
                    Contents.cells(line).stream().map(String::strip).toList();
            if (columns.isEmpty()) {
                columns = cells;
                continue;
            }
            Map<String, String> record = new LinkedHashMap<>();
            for (int i = 0; i < columns.size(); i++) {
                record.put(columns.get(i), cells.get(i));
            }
            records.add(record);
        }
        return records;
    }

    /** The number of all rows. */
    int all() {
        return rows.values().stream().mapToInt(Integer::intValue).sum();
    }

    /** The scopes of the values no figure holds, by the id. */
    Map<String, List<String>> scopesById() {
        Map<String, List<String>> scopes = new TreeMap<>();
        for (String key : heldByNone) {
            int bracket = key.indexOf('[');
            String id = bracket < 0 ? key : key.substring(0, bracket);
            scopes.computeIfAbsent(id, one -> new ArrayList<>())
                    .add(bracket < 0 ? "in general" : key.substring(bracket + 1, key.length() - 1));
        }
        return scopes;
    }
}
