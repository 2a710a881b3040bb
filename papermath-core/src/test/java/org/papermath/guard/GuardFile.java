package org.papermath.guard;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.papermath.guard.GuardReadings.Words;
import org.papermath.guard.GuardReadings.Work;

/** The files of the guard: two tables of hashes, by case and by stage or kind, and the figures kept of a few cases. */
final class GuardFile {
    private static final Path FOLDER = module().resolve("src/test/resources/guard");
    private static final String MACHINE = "# machine: ";
    private static final String CASE = "case ";
    private static final String STAGE = "stage ";

    private GuardFile() {}

    /** The folder of this module, wherever the tests are started. */
    static Path module() {
        Path here = Path.of(System.getProperty("basedir", "")).toAbsolutePath();
        return Files.isDirectory(here.resolve("src/main/java/org/papermath")) ? here : here.resolve("papermath-core");
    }

    /**
     * The processor, the Java and what its mathematical functions give: bits are only compared where all three are
     * those of the file.
     */
    static String machine() {
        MessageDigest digest = GuardFigures.digest();
        for (int i = 1; i <= 500; i++) {
            double x = i * 0.0173;
            ByteBuffer bytes = ByteBuffer.allocate(9 * 8);
            DoubleStream.of(
                            Math.pow(x, 1 / x),
                            Math.pow(x, -2.7),
                            Math.exp(-x),
                            Math.expm1(x / 9),
                            Math.log(x),
                            Math.log1p(x),
                            Math.cos(x),
                            Math.cbrt(x),
                            Math.hypot(x, 1))
                    .forEach(bytes::putDouble);
            digest.update(bytes.array());
        }
        return System.getProperty("os.arch") + ", Java " + System.getProperty("java.specification.version")
                + ", functions " + GuardFigures.print(digest);
    }

    // ------------------------------------------------------------------------------------------------ hashes

    /**
     * A table of hashes.
     *
     * @param machine where it was written; empty for words
     * @param columns the ids of stages or kinds
     * @param rows the hashes of each case, in the order of the columns
     */
    record Hashes(String machine, List<String> columns, Map<String, List<String>> rows) {
        String hash(String name, String column) {
            return rows.get(name).get(columns.indexOf(column));
        }
    }

    static Hashes numbers() {
        return read("numbers.csv");
    }

    static Hashes words() {
        return read("words.csv");
    }

    private static Hashes read(String file) {
        if (!Files.exists(FOLDER.resolve(file))) {
            return new Hashes("", List.of(), Map.of());
        }
        String machine = "";
        List<String> columns = List.of();
        Map<String, List<String>> rows = new LinkedHashMap<>();
        for (String line : lines(file)) {
            List<String> cells = Arrays.asList(line.split(","));
            if (line.startsWith(MACHINE)) {
                machine = line.substring(MACHINE.length());
            } else if (line.startsWith("#")) {
                continue;
            } else if (columns.isEmpty()) {
                columns = cells.subList(1, cells.size());
            } else {
                rows.put(cells.get(0), cells.subList(1, cells.size()));
            }
        }
        return new Hashes(machine, columns, rows);
    }

    static void writeNumbers(Map<String, GuardFigures> cases) {
        List<String> lines = new ArrayList<>(List.of(
                "# Hashes of every figure of the guard's plans, by stage of the work; PlanGuardTest says how to write"
                        + " them anew.",
                MACHINE + machine()));
        lines.add("case," + Arrays.stream(Work.values()).map(Work::id).collect(Collectors.joining(",")));
        cases.forEach((name, figures) -> lines.add(
                name + "," + Arrays.stream(Work.values()).map(figures::hash).collect(Collectors.joining(","))));
        write("numbers.csv", lines);
    }

    static void writeWords(Map<String, GuardFigures> cases) {
        List<String> lines = new ArrayList<>(List.of(
                "# Hashes of every word of the guard's plans, by kind; PlanGuardTest says how to write them anew."));
        lines.add("case," + Arrays.stream(Words.values()).map(Words::id).collect(Collectors.joining(",")));
        cases.forEach((name, figures) -> lines.add(
                name + "," + Arrays.stream(Words.values()).map(figures::hash).collect(Collectors.joining(","))));
        write("words.csv", lines);
    }

    // ------------------------------------------------------------------------------------------------ figures

    static Map<String, GuardFigures> figures() {
        Map<String, GuardFigures> cases = new LinkedHashMap<>();
        if (!Files.exists(FOLDER.resolve("figures.txt"))) {
            return cases;
        }
        GuardFigures figures = new GuardFigures();
        Work work = Work.ORDER;
        for (String line : lines("figures.txt")) {
            if (line.startsWith(CASE)) {
                figures = new GuardFigures();
                cases.put(line.substring(CASE.length()), figures);
            } else if (line.startsWith(STAGE)) {
                String id = line.substring(STAGE.length());
                work = Arrays.stream(Work.values())
                        .filter(one -> one.id().equals(id))
                        .findFirst()
                        .orElseThrow();
            } else if (!line.startsWith("#")) {
                String[] cells = line.split(" ");
                figures.set(
                        work,
                        cells[0],
                        Arrays.stream(cells)
                                .skip(1)
                                .mapToDouble(Double::parseDouble)
                                .toArray());
            }
        }
        return cases;
    }

    static void writeFigures(Map<String, GuardFigures> cases) {
        List<String> lines = new ArrayList<>(List.of(
                "# Every figure of some of the guard's plans in coherent SI, to the last bit.",
                "# An estimate has likely, low, high and its scatter; a list has its figures one after the other."));
        cases.forEach((name, figures) -> {
            lines.add(CASE + name);
            for (Work work : Work.values()) {
                lines.add(STAGE + work.id());
                figures.rows(work).forEach((id, row) -> lines.add(line(id, row)));
            }
        });
        write("figures.txt", lines);
    }

    private static String line(String id, double[] row) {
        return id + Arrays.stream(row).mapToObj(number -> " " + number).collect(Collectors.joining());
    }

    /** Writes all figures and words of every case into a folder, to be compared with those of another state. */
    static void dump(Map<String, GuardFigures> cases, Path folder) {
        cases.forEach((name, figures) -> {
            List<String> lines = new ArrayList<>();
            for (Work work : Work.values()) {
                figures.rows(work).forEach((id, row) -> lines.add(line(id, row)));
            }
            for (Words kind : Words.values()) {
                figures.words(kind).forEach(text -> lines.add(kind.id() + ": " + text));
            }
            write(folder.resolve(name + ".txt"), lines);
        });
    }

    // ------------------------------------------------------------------------------------------------ files

    private static List<String> lines(String file) {
        try {
            return Files.readAllLines(FOLDER.resolve(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void write(String file, List<String> lines) {
        write(FOLDER.resolve(file), lines);
    }

    private static void write(Path file, List<String> lines) {
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
            Files.writeString(file, String.join("\n", lines) + "\n");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
