package org.papermath.outside;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Role;
import org.papermath.quantity.Refused;
import org.papermath.testing.CheckValues.Row;

/**
 * Which defaults of the table a published figure holds: moved, alone, to the far end of its band, at least one figure
 * that the library gives today must be missed. A figure that is missed already holds nothing. What no figure holds
 * stands in {@code held-by-no-figure.txt}, which the site prints, and which may only get shorter:
 * {@code -Dfigures.write=true} takes out what is held now, {@code -Dfigures.write=all} also puts in what is new.
 */
class HeldDefaultsTest {
    private static final Path LIST = Path.of("src", "test", "resources", "held-by-no-figure.txt");
    private static final Assumptions TABLE = Assumptions.standard();

    /** The line of the list that says how many defaults are held by figures they were not made from; may only grow. */
    private static final String FROM_OUTSIDE = "# held by figures no default was made from: ";

    /** The figures the shipped table gives, within what each is published to. */
    private static final List<Row> GIVEN = OutsideFiguresCheckValuesTest.figures().stream()
            .filter(row -> isGiven(row, TABLE))
            .toList();

    private static boolean isGiven(Row row, Assumptions store) {
        return OutsideFigures.error(row, store) <= row.number("within") * (1 + OutsideFigures.DIGITS);
    }

    /** The end of the band that lies farther from the likely value; of two as far, the high one. */
    private static double farEnd(Assumption row) {
        double down = row.likely() - row.low();
        double up = row.high() - row.likely();
        return down > up * (1 + 1e-9) ? row.low() : row.high();
    }

    private static boolean isHeld(Assumption row) {
        return isHeld(row, GIVEN);
    }

    private static boolean isHeld(Assumption row, List<Row> figures) {
        double end = farEnd(row);
        if (end == row.likely()) {
            return false;
        }
        Assumptions moved = TABLE.with(row.given(row.scope(), end));
        return figures.stream().anyMatch(figure -> misses(figure, moved));
    }

    private static boolean misses(Row figure, Assumptions moved) {
        try {
            return !isGiven(figure, moved);
        } catch (Refused e) {
            // The library sees by itself that this cannot be: no work of a published figure.
            return false;
        }
    }

    private static Set<String> heldByNone() {
        Set<String> none = new TreeSet<>();
        for (Assumption row : TABLE.all()) {
            if (row.role() == Role.PHYSICAL && !isOfMakings(row) && !isHeld(row)) {
                none.add(row.key());
            }
        }
        return none;
    }

    @Test
    void theListOfDefaultsThatNoFigureHoldsOnlyGetsShorter() throws IOException {
        Set<String> none = heldByNone();
        List<String> head = new ArrayList<>();
        Set<String> listed = new TreeSet<>();
        for (String line : Files.readAllLines(LIST)) {
            if (line.startsWith("#")) {
                head.add(line);
            } else if (!line.isBlank()) {
                listed.add(line);
            }
        }
        String how = System.getProperty("figures.write", "");
        if (how.equals("true") || how.equals("all")) {
            Set<String> next = new TreeSet<>(none);
            if (how.equals("true")) {
                next.retainAll(listed);
            }
            head.addAll(next);
            Files.write(LIST, head);
            listed = next;
        }
        Set<String> fresh = new TreeSet<>(none);
        fresh.removeAll(listed);
        assertThat(fresh)
                .as("defaults that a published figure held before, or new ones that none holds: add a figure")
                .isEmpty();
        Set<String> over = new TreeSet<>(listed);
        over.removeAll(none);
        assertThat(over).as("held now, or gone: take them off %s", LIST).isEmpty();
    }

    /** A figure a default was made from holds it to itself; one it was not made from says more. */
    @Test
    void someAreHeldByFiguresTheyWereNotMadeFrom() throws IOException {
        List<Assumption> physical = TABLE.all().stream()
                .filter(row -> row.role() == Role.PHYSICAL && !isOfMakings(row))
                .toList();
        List<Row> outside = GIVEN.stream()
                .filter(row -> row.text("sample").equals("outside"))
                .toList();
        long held = physical.stream().filter(row -> isHeld(row, outside)).count();
        String how = System.getProperty("figures.write", "");
        List<String> lines = new ArrayList<>(Files.readAllLines(LIST));
        int at = lines.indexOf(lines.stream()
                .filter(line -> line.startsWith(FROM_OUTSIDE))
                .findFirst()
                .orElseThrow());
        long listed = Long.parseLong(lines.get(at).substring(FROM_OUTSIDE.length()));
        if (how.equals("all") || how.equals("true") && held > listed) {
            lines.set(at, FROM_OUTSIDE + held);
            Files.write(LIST, lines);
            listed = held;
        }
        assertThat(held).as("say so in %s", LIST).isEqualTo(listed);
    }

    /** What one making differs from the next moves bands and no value, and nobody has published any. */
    private static boolean isOfMakings(Assumption row) {
        return row.id().startsWith("making.");
    }
}
