package org.papermath.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.EnumSet;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Refused;

class WorkingTimeTest {
    private static final WorkingTime WEEK = Studios.WEEK.toBuilder()
            .off(LocalDate.of(2026, 12, 8))
            .off(LocalDate.of(2026, 12, 21), LocalDate.of(2027, 1, 3))
            .build();

    private static LocalDateTime at(int day, int hour, int minute) {
        return LocalDateTime.of(2026, 12, day, hour, minute);
    }

    @Test
    void whatIsWorked() {
        assertThat(WEEK.isWorked(at(1, 9, 0))).isTrue();
        assertThat(WEEK.isWorked(at(1, 8, 59))).isFalse();
        assertThat(WEEK.isWorked(at(1, 12, 29))).isTrue();
        assertThat(WEEK.isWorked(at(1, 12, 30))).isFalse();
        assertThat(WEEK.isWorked(at(1, 17, 0))).isFalse();
        assertThat(WEEK.isWorked(at(5, 10, 0))).as("Saturday").isFalse();
        assertThat(WEEK.isWorked(at(8, 10, 0))).as("a day off").isFalse();
        assertThat(WEEK.isWorked(LocalDate.of(2027, 1, 3))).isFalse();
        assertThat(WEEK.isWorked(LocalDate.of(2027, 1, 4))).isTrue();
    }

    @Test
    void onAndBack() {
        assertThat(WEEK.next(at(4, 17, 0))).isEqualTo(at(7, 9, 0));
        assertThat(WEEK.next(at(7, 12, 45))).isEqualTo(at(7, 13, 0));
        assertThat(WEEK.plus(at(7, 9, 0), Duration.ofMinutes(210))).isEqualTo(at(7, 12, 30));
        assertThat(WEEK.plus(at(7, 9, 0), Duration.ofMinutes(211))).isEqualTo(at(7, 13, 1));
        // Monday has seven and a half hours, Tuesday is off.
        assertThat(WEEK.plus(at(7, 9, 0), Duration.ofHours(8))).isEqualTo(at(9, 9, 30));
        assertThat(WEEK.minus(at(9, 9, 30), Duration.ofHours(8))).isEqualTo(at(7, 9, 0));
        assertThat(WEEK.plus(at(18, 16, 0), Duration.ofHours(2))).isEqualTo(LocalDateTime.of(2027, 1, 4, 10, 0));
        assertThat(WEEK.between(at(18, 16, 0), LocalDateTime.of(2027, 1, 4, 10, 0)))
                .isEqualTo(Duration.ofHours(2));
        assertThat(WEEK.between(at(9, 9, 0), at(8, 9, 0))).isZero();
        assertThat(WEEK.plus(at(6, 3, 7), Duration.ZERO)).isEqualTo(at(6, 3, 7));
    }

    @Test
    void hoursOfADay() {
        WorkingTime six = WorkingTime.of(Duration.ofHours(6), Set.of(DayOfWeek.SATURDAY));
        assertThat(six).hasToString("Saturday 09:00-15:00");
        assertThat(six.week()).isEqualTo(Duration.ofHours(6));
        WorkingTime all = WorkingTime.of(Duration.ofHours(24), EnumSet.allOf(DayOfWeek.class));
        assertThat(all.isWorked(at(1, 23, 59))).isTrue();
        assertThat(all.plus(at(1, 12, 0), Duration.ofHours(36))).isEqualTo(at(3, 0, 0));
        assertThat(all.toBuilder().build()).isEqualTo(all).hasSameHashCodeAs(all);
        assertThat(WEEK.toString())
                .endsWith("Friday 09:00-12:30 13:00-17:00; off 2026-12-08, 2026-12-21 to 2027-01-03");
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatThrownBy(() -> WorkingTime.builder().build())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no day of the week has hours");
        assertThatThrownBy(
                        () -> Studios.WEEK.toBuilder().on(DayOfWeek.MONDAY, LocalTime.of(12, 0), LocalTime.of(14, 0)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Monday: work from 12:00 to 14:00 overlaps that from 09:00 to 12:30");
        assertThatThrownBy(() -> WorkingTime.builder().on(DayOfWeek.MONDAY, LocalTime.of(22, 0), LocalTime.of(6, 0)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Give a night as two spans");
        assertThatThrownBy(() -> WEEK.next(at(1, 9, 0).plusSeconds(1)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("must be in whole minutes");
        assertThatThrownBy(() -> WEEK.plus(at(1, 9, 0), Duration.ofMinutes(-1)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("-1 min given");
        assertThatThrownBy(() -> WorkingTime.builder().off(LocalDate.of(2026, 12, 2), LocalDate.of(2026, 12, 1)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("ends before it begins");
        assertThatThrownBy(() -> WEEK.plus(at(1, 9, 0), Duration.ofDays(400_000)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("more than 200 years");
    }

    /** Against counting every minute. */
    @Property(tries = 200, seed = "2026")
    void workIsWhatEachMinuteSays(
            @ForAll @IntRange(min = 0, max = 60_000) int from, @ForAll @IntRange(min = 1, max = 4000) int work) {
        LocalDateTime start = at(1, 0, 0).plusMinutes(from);
        LocalDateTime end = WEEK.plus(start, Duration.ofMinutes(work));
        int counted = 0;
        for (LocalDateTime at = start; at.isBefore(end); at = at.plusMinutes(1)) {
            counted += WEEK.isWorked(at) ? 1 : 0;
        }
        assertThat(counted).isEqualTo(work);
        assertThat(WEEK.isWorked(end.minusMinutes(1))).isTrue();
        assertThat(WEEK.between(start, end)).isEqualTo(Duration.ofMinutes(work));
        assertThat(WEEK.minus(end, Duration.ofMinutes(work))).isEqualTo(WEEK.next(start));
    }
}
