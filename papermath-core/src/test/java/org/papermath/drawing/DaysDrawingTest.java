package org.papermath.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.EnumSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.papermath.schedule.Phase;
import org.papermath.schedule.Task;
import org.papermath.schedule.Timetable;
import org.papermath.schedule.WorkingTime;
import org.papermath.schedule.Workload;

class DaysDrawingTest {
    private static final LocalDateTime FRIDAY = LocalDateTime.of(2026, 12, 4, 9, 0);

    private static Timetable days(boolean known) {
        Task.Builder dry = Task.of("dry <b> & turn").group("cards");
        return Timetable.from(
                Workload.in(WorkingTime.of(Duration.ofHours(8), EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY)))
                        .task(Task.of("form")
                                .group("cards")
                                .phase(Phase.handsOn("form", Duration.ofHours(3)))
                                .phase(Phase.machine("press", Duration.ofHours(1))
                                        .unattended())
                                .build())
                        .task(dry.phase(known ? Phase.waiting("dry", Duration.ofHours(30)) : Phase.waiting("dry"))
                                .after("form")
                                .build())
                        .task(Task.of("pack")
                                .phase(Phase.handsOn("pack", Duration.ofHours(1)))
                                .after("dry <b> & turn")
                                .build())
                        .build(),
                FRIDAY);
    }

    private static final Pattern RECT = Pattern.compile("<rect class=\"(\\w+)\" x=\"([0-9.]+)\" y=\"[0-9.]+\""
            + " width=\"([0-9.]+)\" height=\"[0-9.]+\"(?:/>|><title>([^<]+)</title></rect>)");

    @Test
    void barsLieWhereTheDaysSay() {
        Matcher rect = RECT.matcher(DaysDrawing.of("x", days(true)).svg());
        // Friday to Monday are 180 mm, from 84 mm on.
        int bars = 0;
        while (rect.find()) {
            String said = rect.group(4) == null ? "" : rect.group(4);
            double x = (Double.parseDouble(rect.group(2)) - 84) / 45;
            double w = Double.parseDouble(rect.group(3)) / 45;
            if (said.startsWith("form: form")) {
                assertThat(x).isBetween(9 / 24.0 - 0.001, 9 / 24.0 + 0.001);
                assertThat(w).isBetween(3 / 24.0 - 0.001, 3 / 24.0 + 0.001);
                assertThat(rect.group(1)).isEqualTo("hands");
                assertThat(said).endsWith("2026-12-04 09:00 to 2026-12-04 12:00, hands on");
            } else if (said.startsWith("dry &lt;b&gt; &amp; turn")) {
                assertThat(x + w).isBetween(1 + 19 / 24.0 - 0.001, 1 + 19 / 24.0 + 0.001);
                assertThat(rect.group(1)).isEqualTo("waiting");
            }
            bars += said.isEmpty() ? 0 : 1;
        }
        assertThat(bars).isEqualTo(4);
    }

    @Test
    void everyBarHasItsWordsAndNoColourStandsAlone() {
        String svg = DaysDrawing.of("days & nights", days(true)).svg();
        assertThat(svg)
                .contains(">days &amp; nights<", ">cards<", ">dry &lt;b&gt; &amp; turn<")
                .contains(">2026-12-04 13:00 to 2026-12-05 19:00<")
                .contains(">hands on<", ">machine<", ">waiting<", ">× no work<", ">5.12. ×<", ">Mon<")
                .contains("rect.machine{fill:url(#hatch)}")
                .doesNotContainPattern("fill:#(?!(\\w)\\1)");
    }

    @Test
    void whatHasNoDateHasWordsAndNoBar() {
        String svg = DaysDrawing.of("x", days(false)).svg();
        assertThat(svg).contains(">not known when to not known when<");
        // Form and press, and the legend.
        assertThat(RECT.matcher(svg).results().count()).isEqualTo(2 + 4);
        assertThat(DaysDrawing.of("x", days(false))).hasToString("days \"x\"");
    }
}
