package org.papermath.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

/**
 * How much longer studio-like days take than the best that a constraint solver found for the same work. A few hours more
 * may be a weekend more: that is what the worst ones would be.
 */
class SolverCheckValuesTest {
    private static final boolean ALL = Boolean.getBoolean("papermath.long");
    private static final int EACH = ALL ? 1 : 25;
    /** Two weeks in which nearly every hour has to be worked, not to end on the Monday after. */
    private static final int DENSE = 5140;

    @Test
    void daysAreNearlyAsShortAsTheSolvers() {
        List<Double> over = new ArrayList<>();
        StringBuilder said = new StringBuilder();
        List<Row> rows = CheckValues.read("solver_days");
        assertThat(rows).hasSize(200);
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            if (i % EACH != 0 && row.number("seed") != DENSE) {
                continue;
            }
            Workload work = Studios.any((long) row.number("seed"), 12);
            assertThat(work.tasks()).hasSize((int) row.number("tasks"));
            Timetable timetable = Timetable.from(work, Studios.MONDAY);
            Checks.check(timetable);
            assertThat(timetable.brokenWaits()).as("%s", row).isEmpty();
            double ours = timetable.span().orElseThrow().toMinutes();
            // Nothing can be shorter than what the solver proved.
            assertThat(ours).as("%s", row).isGreaterThanOrEqualTo(row.number("bound"));
            double part = Math.max(0, ours / row.number("found") - 1);
            over.add(part);
            said.append(part > 0.1 ? row + ": " + Math.round(1000 * part) / 10.0 + " %; " : "");
        }
        double mean = over.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
        said.append("mean ")
                .append(Math.round(10_000 * mean) / 100.0)
                .append(" % of ")
                .append(over.size());
        assertThat(mean).as(said.toString()).isLessThanOrEqualTo(0.05);
        assertThat(over).as(said.toString()).allMatch(part -> part <= 0.2);
        if (ALL) {
            System.out.println(said);
        }
    }
}
