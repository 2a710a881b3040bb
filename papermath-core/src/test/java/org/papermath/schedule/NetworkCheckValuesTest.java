package org.papermath.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.quantity.Refused;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class NetworkCheckValuesTest {
    private static final Pattern TASK = Pattern.compile("(?:([A-Z])|(\\d+):)(\\d+)(?:\\(([^)]*)\\))?");

    static List<Row> networks() {
        return CheckValues.read("critical_path");
    }

    private static Workload read(String text) {
        Workload.Builder work = Workload.in(Studios.WEEK);
        Matcher found = TASK.matcher(text);
        while (found.find()) {
            Task.Builder task = Task.of(found.group(1) != null ? found.group(1) : found.group(2))
                    .phase(Phase.waiting("goes on", Duration.ofMinutes(Long.parseLong(found.group(3)))));
            if (found.group(4) != null) {
                for (String before : found.group(4).split(" ")) {
                    task.after(before);
                }
            }
            work.task(task.build());
        }
        return work.build();
    }

    @ParameterizedTest
    @MethodSource("networks")
    void asPrinted(Row row) {
        Network network = Network.of(read(row.text("tasks")));
        assertThat(network.duration()).isEqualTo(Duration.ofMinutes((long) row.number("length")));
        assertThat(network.criticalPath())
                .containsExactlyInAnyOrder(row.text("critical").split(" "));
        for (String slack : row.has("slack") ? row.text("slack").split(" ") : new String[0]) {
            assertThat(network.times(slack.substring(0, 1)).slack())
                    .as(slack)
                    .isEqualTo(Duration.ofMinutes(Long.parseLong(slack.substring(1))));
        }
    }

    /** All that a network says of itself, for each of them. */
    @ParameterizedTest
    @MethodSource("networks")
    void holdsTogether(Row row) {
        Workload work = read(row.text("tasks"));
        Network network = Network.of(work);
        assertThat(network.times()).hasSameSizeAs(work.tasks());
        for (Network.Times times : network.times()) {
            assertThat(times.earliestFinish()).isEqualTo(times.earliestStart().plus(times.duration()));
            assertThat(times.latestFinish()).isEqualTo(times.latestStart().plus(times.duration()));
            assertThat(times.latestFinish()).isLessThanOrEqualTo(network.duration());
            assertThat(times.freeSlack()).isBetween(Duration.ZERO, times.slack());
            assertThat(times.isCritical()).isEqualTo(times.slack().isZero());
            for (Task.Link link : work.task(times.task()).links()) {
                Network.Times before = network.times(link.after());
                assertThat(before.earliestFinish()).isLessThanOrEqualTo(times.earliestStart());
                assertThat(before.latestFinish()).isLessThanOrEqualTo(times.latestStart());
                assertThat(before.earliestFinish().plus(before.freeSlack())).isLessThanOrEqualTo(times.earliestStart());
            }
        }
    }

    /** With enough of everything, day and night, a timetable is done when the network is. */
    @ParameterizedTest
    @MethodSource("networks")
    void isTheTimetableOfPlenty(Row row) {
        Workload work = read(row.text("tasks"));
        Timetable timetable = Timetable.from(work, Studios.MONDAY);
        assertThat(timetable.span()).contains(Network.of(work).duration());
        Timetable back = Timetable.by(work, Studios.MONDAY.plusDays(3));
        assertThat(back.span()).contains(Network.of(work).duration());
    }

    @Test
    void aCircleIsNamed() {
        assertThatThrownBy(() -> read("A1 B1(A D) C1(B) D1(C) E1(D)"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("in a circle")
                .hasMessageContaining("B, C, D")
                .hasMessageNotContaining("A,");
    }

    @Test
    void anUnknownDurationIsRefused() {
        Workload work = Workload.in(Studios.WEEK)
                .task(Task.of("dry").phase(Phase.waiting("dry")).build())
                .build();
        assertThatThrownBy(() -> Network.of(work))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("dry, dry: it is not known how long it takes");
    }
}
