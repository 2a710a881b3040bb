package org.papermath.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Code;
import org.papermath.evidence.Codes;
import org.papermath.guard.GuardReadings.Words;
import org.papermath.guard.GuardReadings.Work;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.Stage;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;

/**
 * Holds every figure of some four hundred plans to the bit while the engine is rebuilt, and their words apart from
 * them: a rename moves words and never a figure.
 *
 * <p>A step of the rebuilding that is to move nothing runs this test and finds it green. Where an accessor of the plan
 * was renamed, follow in {@link GuardReadings}; where a setter of a builder was, in {@link GuardCases}; where a file
 * that words notices has moved, in {@link GuardCodes}. The ids of the figures stay.
 *
 * <p>A step that changes figures names the stages it moves:
 * <pre>mvn -pl papermath-core test -Dtest=PlanGuardTest -Dguard.write=vat,hours</pre>
 * writes those columns anew and fails, without writing any figure, if a stage not named has moved too. A step that
 * changes texts says {@code -Dguard.write=words}, or some of {@code notices,stages,card,labels}. Words are compared
 * without the numbers in them; these are a kind of their own, {@code printed}, which moves with figures and with texts.
 * {@code numbers} stands for all stages, {@code all} for everything: with new cases, new figures or a new Java. The
 * files belong into the commit of the step, whose message says what moved.
 *
 * <p>Whatever changes the order of a sum moves last bits. The squares of a band are summed in the order in which the
 * engine looks its assumptions up, so a step that changes that order moves bands, by some 1e-14; the failure says how
 * far the kept figures moved at most, which tells such a step from one that changes a rule.
 *
 * <p>To see the figures themselves before and after, write all of them in both states and compare the folders:
 * <pre>… -Dguard.dump=target/guard/before</pre>
 *
 * <p>The bits hold for the processor, the Java and the mathematical functions that the file of numbers names. Elsewhere
 * the figures kept of a few plans have to agree to twelve digits, and all notices, reasons and cards in their words.
 */
class PlanGuardTest {
    /** The cases whose figures are kept: short ones, in which every stage is done somewhere. */
    private static final List<String> KEPT = List.of(
            "27",
            "39",
            "72",
            "121",
            "229",
            "263",
            "267",
            "328",
            "359",
            "362",
            "full",
            "heavy-posts",
            "rounds",
            "screw-press");

    /** Codes that no order can reach, each with the reason. */
    private static final Map<String, String> OUT_OF_REACH = Map.of(
            "vat.within-scatter", "said of a reading at the vat, which no plan has",
            "vat.stock-runs-short", "said of a vat in mid-run, which no plan has");

    /** Relative, on another machine: twelve digits. */
    private static final double TWELVE_DIGITS = 1e-12;

    private static final int MOST_LINES = 40;

    private static final Set<String> NOTICES = new TreeSet<>();
    private static final Set<String> STAGES = new TreeSet<>();
    private static final Set<String> REFUSALS = new TreeSet<>();
    /** What was said anywhere, with the names of the values said with it. */
    private static final Set<Said> SAID = new LinkedHashSet<>();

    private static final Map<String, GuardFigures> CASES = read();

    private record Said(String code, Code.Use use, Set<String> names) {}

    private static Map<String, GuardFigures> read() {
        Map<String, GuardFigures> cases = new LinkedHashMap<>();
        GuardCases.all().forEach((name, planned) -> {
            try {
                MakingPlan plan = planned.get();
                cases.put(name, GuardFigures.of(plan));
                GuardReadings.notices(plan).forEach(notice -> {
                    NOTICES.add(notice.code());
                    SAID.add(new Said(
                            notice.code(),
                            Code.Use.NOTICE,
                            Set.copyOf(notice.arguments().keySet())));
                });
                GuardReadings.stages(plan).stream()
                        .filter(stage -> !stage.isDone())
                        .map(Stage::code)
                        .forEach(code -> {
                            STAGES.add(code);
                            SAID.add(new Said(code, Code.Use.STAGE, Set.of()));
                        });
            } catch (PapermathException refused) {
                cases.put(name, GuardFigures.of(refused));
                REFUSALS.add(refused.code());
                SAID.add(new Said(
                        refused.code(),
                        refused instanceof Refused ? Code.Use.REFUSAL : Code.Use.QUESTION,
                        Set.copyOf(refused.arguments().keySet())));
            }
        });
        String folder = System.getProperty("guard.dump", "");
        if (!folder.isEmpty()) {
            GuardFile.dump(cases, Path.of(folder));
        }
        return cases;
    }

    @Test
    void noFigureMovesInAStageThatIsNotNamed() {
        List<String> stages = ids(Work.values(), Work::id);
        Set<String> named = named(System.getProperty("guard.write", ""));
        named.retainAll(stages);
        GuardFile.Hashes before = GuardFile.numbers();
        if (!named.containsAll(stages)) {
            sameTable(before, stages);
            if (!before.machine().equals(GuardFile.machine())) {
                assertThat(named)
                        .as("a part of the figures is only written where they all were: " + before.machine() + ", not "
                                + GuardFile.machine())
                        .isEmpty();
                sameToTwelveDigits();
                return;
            }
            Map<String, List<String>> moved =
                    moved(before, stages, (name, stage) -> CASES.get(name).hash(Work.values()[stages.indexOf(stage)]));
            moved.keySet().removeAll(named);
            if (!moved.isEmpty()) {
                fail(report(moved, named) + kept(moved.keySet()));
            }
        }
        if (!named.isEmpty()) {
            // What was not named has not moved, so the whole can be written.
            GuardFile.writeNumbers(CASES);
            GuardFile.writeFigures(keptCases());
        }
    }

    @Test
    void noWordMovesThatIsNotNamed() {
        List<String> kinds = ids(Words.values(), Words::id);
        Set<String> named = named(System.getProperty("guard.write", ""));
        named.retainAll(kinds);
        GuardFile.Hashes before = GuardFile.words();
        if (!named.containsAll(kinds)) {
            sameTable(before, kinds);
            Map<String, List<String>> moved =
                    moved(before, kinds, (name, kind) -> CASES.get(name).hash(Words.values()[kinds.indexOf(kind)]));
            moved.keySet().removeAll(named);
            if (!GuardFile.numbers().machine().equals(GuardFile.machine())) {
                // Drivers of the same weight may change places in the last bits.
                moved.keySet().removeAll(Set.of(Words.LABELS.id(), Words.PRINTED.id()));
            }
            if (!moved.isEmpty()) {
                fail(report(moved, named));
            }
        }
        if (!named.isEmpty()) {
            GuardFile.writeWords(CASES);
        }
    }

    @Test
    void everyNoticeOfAPlanIsReached() {
        reached(NOTICES, GuardCodes.notices());
    }

    @Test
    void everyStageIsSomewhereNotDoneForEachOfItsReasons() {
        reached(STAGES, GuardCodes.stages());
    }

    @Test
    void everyRefusalOfPlanningIsReached() {
        reached(REFUSALS, GuardCodes.refusals());
    }

    /** What a plan is told about is named where the table says so, and some plan of these says it of a piece or a batch. */
    @Test
    void everyCodeIsSaidAsTheTableOfCodesSaysItIs() {
        assertThat(SAID).hasSizeGreaterThan(60);
        for (Said said : SAID) {
            Code code = Codes.find(said.code()).orElseThrow(() -> new AssertionError(said + " is in no table"));
            assertThat(code.uses()).as(said.code()).contains(said.use());
            if (said.use() != Code.Use.STAGE) {
                Set<String> names = new TreeSet<>(said.names());
                assertThat(names).as(said.code()).containsAll(code.arguments());
                code.arguments().forEach(names::remove);
                assertThat(code.sometimes()).as(said.code()).containsAll(names);
            }
        }
        for (Code code : Codes.all()) {
            if (NOTICES.contains(code.name())) {
                code.sometimes().stream()
                        .filter(name -> name.equals("piece") || name.equals("batch"))
                        .forEach(name -> assertThat(SAID)
                                .as(code.name() + " of a " + name)
                                .anyMatch(said -> said.code().equals(code.name())
                                        && said.names().contains(name)));
            }
        }
    }

    @Test
    void keptFiguresReachEveryFigureOfTheTable() {
        Set<String> ids = new TreeSet<>();
        keptCases().values().forEach(figures -> {
            for (Work work : Work.values()) {
                figures.rows(work).forEach((id, row) -> {
                    if (row.length > 0) {
                        ids.add(id.replaceFirst("^(batch|piece)\\[\\d+\\]\\.", ""));
                    }
                });
            }
        });
        Stream.of(GuardReadings.PLAN, GuardReadings.BATCH, GuardReadings.PIECE)
                .flatMap(table -> table.stream().map(GuardReadings.Figure::id))
                .forEach(id -> assertThat(ids).contains(id));
    }

    @Test
    void oneBitOfOneFigureIsSeenInItsStageAlone() {
        GuardFigures moved = new GuardFigures();
        GuardFigures figures = CASES.get("full");
        String lift = "piece[0].vat.lift";
        for (Work work : Work.values()) {
            figures.rows(work)
                    .forEach((id, row) ->
                            moved.set(work, id, id.equals(lift) ? new double[] {Math.nextUp(row[0])} : row));
        }
        assertThat(Work.values())
                .filteredOn(work -> !moved.hash(work).equals(figures.hash(work)))
                .containsExactly(Work.VAT);
        double lifted = figures.rows(Work.VAT).get(lift)[0];
        assertThat(GuardFigures.differences(
                        lift,
                        figures.rows(Work.VAT).get(lift),
                        moved.rows(Work.VAT).get(lift)))
                .singleElement()
                .asString()
                .startsWith(lift + "[0]: " + lifted + " → " + Math.nextUp(lifted) + " (");
    }

    @Test
    void whatIsToBeWrittenHasToBeNamedRight() {
        assertThat(named("vat, drying")).containsExactlyInAnyOrder("vat", "drying");
        assertThat(named("words")).contains("card", "printed").doesNotContain("vat");
        assertThat(named("numbers")).contains("vat").doesNotContain("card");
        assertThatThrownBy(() -> named("vats"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("vats")
                .hasMessageContaining("post-and-press");
    }

    // ------------------------------------------------------------------------------------------------ comparing

    private static <E> List<String> ids(E[] values, Function<E, String> id) {
        return Arrays.stream(values).map(id).toList();
    }

    /** Reads what {@code guard.write} names. */
    private static Set<String> named(String property) {
        List<String> stages = ids(Work.values(), Work::id);
        List<String> kinds = ids(Words.values(), Words::id);
        Set<String> named = new TreeSet<>();
        for (String one : property.split(",")) {
            String name = one.strip();
            if (name.equals("all") || name.equals("numbers")) {
                named.addAll(stages);
            }
            if (name.equals("all") || name.equals("words")) {
                named.addAll(kinds);
            }
            if (stages.contains(name) || kinds.contains(name)) {
                named.add(name);
            } else if (!Set.of("", "all", "numbers", "words").contains(name)) {
                throw new IllegalArgumentException("guard.write: \"" + name
                        + "\" is no stage and no kind of words; there are all, numbers, words, " + stages + " and "
                        + kinds);
            }
        }
        return named;
    }

    private static void sameTable(GuardFile.Hashes before, List<String> columns) {
        assertThat(before.columns())
                .as("the columns of the table; other ones are written with -Dguard.write=all")
                .isEqualTo(columns);
        assertThat(List.copyOf(before.rows().keySet()))
                .as("the cases of the table; other ones are written with -Dguard.write=all")
                .isEqualTo(List.copyOf(CASES.keySet()));
    }

    private interface Hash {
        String of(String name, String column);
    }

    /** The cases that moved, by stage or kind. */
    private static Map<String, List<String>> moved(GuardFile.Hashes before, List<String> columns, Hash after) {
        Map<String, List<String>> moved = new LinkedHashMap<>();
        for (String column : columns) {
            List<String> names = CASES.keySet().stream()
                    .filter(name -> !before.hash(name, column).equals(after.of(name, column)))
                    .toList();
            if (!names.isEmpty()) {
                moved.put(column, names);
            }
        }
        return moved;
    }

    private static String report(Map<String, List<String>> moved, Set<String> named) {
        Set<String> all = new TreeSet<>(named);
        all.addAll(moved.keySet());
        return moved.entrySet().stream()
                .map(one -> one.getKey() + ": " + one.getValue().size() + " of "
                        + CASES.size() + " cases moved, "
                        + one.getValue().stream().limit(12).collect(Collectors.joining(", "))
                        + (one.getValue().size() > 12 ? ", …" : ""))
                .collect(Collectors.joining(
                        "\n", "\n", "\nIf that was meant: -Dguard.write=" + String.join(",", all) + "\n"));
    }

    private static Map<String, GuardFigures> keptCases() {
        Map<String, GuardFigures> kept = new LinkedHashMap<>();
        KEPT.forEach(name -> kept.put(name, CASES.get(name)));
        return kept;
    }

    /** How far the kept figures of these stages moved at most, and the first case in which some did. */
    private static String kept(Set<String> stages) {
        Map<String, GuardFigures> before = GuardFile.figures();
        List<String> lines = new ArrayList<>();
        for (Work work : Work.values()) {
            if (stages.contains(work.id())) {
                String first = "";
                List<String> differences = List.of();
                double most = 0;
                for (String name : KEPT) {
                    Map<String, double[]> old = before.get(name).rows(work);
                    List<String> found = differences(old, CASES.get(name).rows(work));
                    most = Math.max(most, greatest(old, CASES.get(name).rows(work)));
                    if (first.isEmpty() && !found.isEmpty()) {
                        first = name;
                        differences = found;
                    }
                }
                lines.add(
                        first.isEmpty()
                                ? work.id() + ": no figure of a kept case; see -Dguard.dump"
                                : work.id() + ": kept figures moved by " + String.format(Locale.ROOT, "%.1e", most)
                                        + " at most; case " + first + " has " + differences.size() + " differences");
                lines.addAll(differences.subList(0, Math.min(MOST_LINES / stages.size() + 1, differences.size())));
            }
        }
        return String.join("\n", lines);
    }

    private static List<String> differences(Map<String, double[]> before, Map<String, double[]> after) {
        List<String> lines = new ArrayList<>();
        before.forEach(
                (id, row) -> lines.addAll(GuardFigures.differences(id, row, after.getOrDefault(id, new double[0]))));
        after.keySet().stream().filter(id -> !before.containsKey(id)).forEach(id -> lines.add(id + ": new"));
        return lines;
    }

    /** The greatest relative difference; without end where a figure comes or goes. */
    private static double greatest(Map<String, double[]> before, Map<String, double[]> after) {
        double greatest = before.keySet().equals(after.keySet()) ? 0 : Double.POSITIVE_INFINITY;
        for (Map.Entry<String, double[]> one : before.entrySet()) {
            greatest = Math.max(greatest, relative(one.getValue(), after.getOrDefault(one.getKey(), new double[0])));
        }
        return greatest;
    }

    private static double relative(double[] before, double[] after) {
        double greatest = before.length == after.length ? 0 : Double.POSITIVE_INFINITY;
        for (int i = 0; i < Math.min(before.length, after.length); i++) {
            if (before[i] != after[i]) {
                greatest = Math.max(
                        greatest, Math.abs(before[i] - after[i]) / Math.max(Math.abs(before[i]), Math.abs(after[i])));
            }
        }
        return greatest;
    }

    private static void sameToTwelveDigits() {
        Map<String, GuardFigures> before = GuardFile.figures();
        List<String> differences = new ArrayList<>();
        for (String name : KEPT) {
            for (Work work : Work.values()) {
                Map<String, double[]> rows = CASES.get(name).rows(work);
                assertThat(List.copyOf(rows.keySet()))
                        .as("case " + name + ", " + work.id())
                        .isEqualTo(List.copyOf(before.get(name).rows(work).keySet()));
                before.get(name).rows(work).forEach((id, row) -> {
                    double[] here = rows.get(id);
                    if (!(relative(row, here) <= TWELVE_DIGITS)) {
                        GuardFigures.differences(id, row, here).forEach(line -> differences.add(name + " " + line));
                    }
                });
            }
        }
        assertThat(differences)
                .as("figures that differ by more than twelve digits")
                .isEmpty();
    }

    private static void reached(Set<String> reached, Set<String> inSources) {
        Set<String> wanted = new TreeSet<>(inSources);
        assertThat(wanted).isNotEmpty();
        wanted.removeAll(OUT_OF_REACH.keySet());
        assertThat(reached).containsExactlyInAnyOrderElementsOf(wanted);
    }
}
