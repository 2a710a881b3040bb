package org.papermath.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDateTime;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;

class TimetablePropertyTest {
    @Property(tries = 40, seed = "2026")
    void onwardKeepsEverything(@ForAll @LongRange(min = 0, max = 100_000) long seed) {
        Timetable timetable = Timetable.from(Studios.any(seed, 4), Studios.MONDAY);
        Checks.check(timetable);
        assertThat(timetable.start().orElseThrow()).isAfterOrEqualTo(Studios.MONDAY);
        assertThat(timetable.undated()).isEmpty();
    }

    @Property(tries = 20, seed = "2026")
    void backKeepsEverything(@ForAll @LongRange(min = 0, max = 100_000) long seed) {
        LocalDateTime due = Studios.MONDAY.plusDays(60).withHour(17);
        Timetable timetable = Timetable.by(Studios.any(seed, 4), due);
        Checks.check(timetable);
        assertThat(timetable.finish().orElseThrow()).isBeforeOrEqualTo(due);
        assertThat(timetable.isMet()).contains(true);
    }

    /** What can be met can be met when there is more time; and what cannot is done soonest all the same. */
    @Property(tries = 15, seed = "2026")
    void moreTimeNeverHurts(
            @ForAll @LongRange(min = 0, max = 100_000) long seed, @ForAll @IntRange(min = 1, max = 200) int hours) {
        Workload work = Studios.any(seed, 3);
        LocalDateTime due = Studios.MONDAY.plusHours(hours);
        Timetable first = Timetable.between(work, Studios.MONDAY, due);
        Checks.check(first);
        Timetable later = Timetable.between(work, Studios.MONDAY, due.plusHours(hours));
        assertThat(later.soonest()).isEqualTo(first.soonest());
        if (first.isMet().orElseThrow()) {
            assertThat(first.finish().orElseThrow()).isBeforeOrEqualTo(due);
            assertThat(later.isMet()).contains(true);
        } else {
            assertThat(first.soonest().orElseThrow()).isAfter(due);
            assertThat(Timetable.between(work, Studios.MONDAY, first.soonest().orElseThrow())
                            .isMet())
                    .contains(true);
        }
    }

    @Property(tries = 5, seed = "2026")
    void theSameGivesTheSame(@ForAll @LongRange(min = 0, max = 100_000) long seed) {
        Timetable one = Timetable.from(Studios.any(seed, 3), Studios.MONDAY);
        Timetable two = Timetable.from(Studios.any(seed, 3), Studios.MONDAY);
        assertThat(one.tasks().toString()).isEqualTo(two.tasks().toString());
        assertThat(one.text()).isEqualTo(two.text());
        assertThat(one.chance(20, seed)).hasToString(two.chance(20, seed).toString());
    }

    @Property(tries = 10, seed = "2026")
    void slackIsRoom(@ForAll @LongRange(min = 0, max = 100_000) long seed) {
        Timetable timetable = Timetable.from(Studios.any(seed, 3), Studios.MONDAY);
        for (PlacedTask task : timetable.tasks()) {
            Duration slack = timetable.slack(task.task().name()).orElseThrow();
            LocalDateTime start = task.start().orElseThrow().plus(slack);
            assertThat(slack).isGreaterThanOrEqualTo(Duration.ZERO);
            assertThat(start).isBefore(timetable.finish().orElseThrow());
            if (task.finish().equals(timetable.finish())) {
                assertThat(slack).as("%s", task).isZero();
            }
            for (PlacedTask other : timetable.tasks()) {
                if (other.task().links().stream()
                        .anyMatch(link -> link.after().equals(task.task().name()))) {
                    assertThat(start).isBefore(other.start().orElseThrow());
                }
            }
        }
    }

    @Property(tries = 4, seed = "2026")
    void theChainLeadsFromTheBeginningToTheEnd(@ForAll @LongRange(min = 0, max = 100_000) long seed) {
        Timetable timetable = Timetable.from(Studios.any(seed, 3), Studios.MONDAY);
        LocalDateTime at = null;
        for (ChainLink link : timetable.chain()) {
            LocalDateTime start = link.phase().start().orElseThrow();
            assertThat(at == null || !start.isBefore(at))
                    .as("%s", timetable.chain())
                    .isTrue();
            at = link.phase().finish().orElseThrow();
        }
        assertThat(timetable.finish()).contains(at);
        for (NarrowPlace place : timetable.narrowPlaces()) {
            assertThat(place.busy()).isBetween(0.0, 1.0);
            assertThat(place.saved()).isGreaterThanOrEqualTo(Duration.ZERO);
        }
    }
}
