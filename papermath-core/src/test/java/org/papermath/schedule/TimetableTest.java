package org.papermath.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Refused;

class TimetableTest {
    private static LocalDateTime at(int day, int hour, int minute) {
        return LocalDateTime.of(2026, 12, day, hour, minute);
    }

    private static Phase work(String name, int minutes) {
        return Phase.handsOn(name, Duration.ofMinutes(minutes)).holding("person", 1);
    }

    private static Workload.Builder one() {
        return Workload.in(Studios.WEEK).resource(Resource.of("person", 1));
    }

    @Test
    void handsRestOvernightOnlyWhereTheyMay() {
        Workload work = one().task(Task.of("a").phase(work("a", 300)).build())
                .task(Task.of("b").phase(work("b", 300)).after("a").build())
                .task(Task.of("c").phase(work("c", 300).breakable()).after("b").build())
                .build();
        Timetable timetable = Timetable.from(work, at(1, 9, 0));
        // Lunch from 12:30 to 13:00 is no night.
        assertThat(timetable.task("a").finish()).contains(at(1, 14, 30));
        assertThat(timetable.task("b").start()).contains(at(2, 9, 0));
        assertThat(timetable.task("c").start()).contains(at(2, 14, 30));
        assertThat(timetable.task("c").finish()).contains(at(3, 11, 30));
        List<Day> days = timetable.days();
        assertThat(days.get(1).date()).isEqualTo(LocalDate.of(2026, 12, 2));
        assertThat(days.get(1).entries())
                .extracting(Object::toString)
                .containsExactly("09:00-14:30 b", "14:30-17:00 c, part 1 of 2");
    }

    @Test
    void machinesRunOnWhereTheyMay() {
        Workload work = one().task(Task.of("watched")
                        .phase(Phase.machine("beat", Duration.ofHours(3)))
                        .build())
                .task(Task.of("left")
                        .phase(Phase.machine("press", Duration.ofHours(3)).unattended())
                        .build())
                .build();
        Timetable timetable = Timetable.from(work, at(1, 16, 30));
        assertThat(timetable.task("watched").start()).contains(at(2, 9, 0));
        assertThat(timetable.task("left").finish()).contains(at(1, 19, 30));
        assertThat(Timetable.from(work, at(1, 17, 0)).task("left").start()).contains(at(2, 9, 0));
    }

    /** Felts stay in the press until somebody parts the post, though nobody presses any more. */
    @Test
    void whatBothHoldStaysHeldBetweenThem() {
        Workload.Builder work = one().resource(Resource.of("felts", 1));
        for (String post : List.of("one", "two")) {
            work.task(Task.of(post)
                    .phase(work("form", 60).holding("felts", 1))
                    .phase(Phase.machine("press", Duration.ofMinutes(30))
                            .unattended()
                            .holding("felts", 1))
                    .phase(work("part", 30).holding("felts", 1))
                    .build());
        }
        Timetable late = Timetable.from(work.build(), at(1, 15, 45));
        assertThat(late.task("one").phases().get(1).finish()).contains(at(1, 17, 15));
        assertThat(late.task("two").start()).contains(at(2, 9, 30));
        Checks.check(late);
        Timetable timetable = Timetable.from(work.build(), at(1, 13, 45));
        Checks.check(timetable);
        assertThat(timetable.finish()).contains(at(2, 9, 30));
        assertThat(timetable.chain())
                .extracting(Object::toString)
                .contains("two, form: from 2026-12-01 15:45, when felts was free");
        assertThat(timetable.narrowPlaces().get(0).resource().name()).isEqualTo("felts");
        // The second post is formed while the first one waits to be parted.
        assertThat(timetable.narrowPlaces().get(0).withOneMore().finish()).contains(at(1, 16, 45));
        assertThat(timetable.narrowPlaces().get(0).saved()).isEqualTo(Duration.ofMinutes(16 * 60 + 45));
    }

    @Test
    void oneMoreOfTheNarrowPlaceSavesTime() {
        Workload.Builder work = one().resource(Resource.of("dryer", 1));
        for (String post : List.of("one", "two")) {
            work.task(Task.of(post)
                    .phase(work("hang", 30).holding("dryer", 1))
                    .phase(Phase.waiting("dry", Duration.ofHours(20)).holding("dryer", 1))
                    .phase(work("take down", 30).holding("dryer", 1))
                    .build());
        }
        Timetable timetable = Timetable.from(work.build(), at(1, 9, 0));
        assertThat(timetable.finish()).contains(at(3, 9, 30));
        NarrowPlace place = timetable.narrowPlaces().get(0);
        assertThat(place.resource()).isEqualTo(Resource.of("dryer", 1));
        assertThat(place.onChain()).isPositive();
        Timetable more = place.withOneMore();
        assertThat(more.work().resource("dryer").count()).isEqualTo(2);
        assertThat(more.finish()).contains(at(2, 10, 0));
        assertThat(place.saved()).isEqualTo(Duration.ofMinutes(23 * 60 + 30));
    }

    /** Beaten so late that it is not too old when the person comes to it, though it could be beaten at once. */
    @Test
    void whatIsWaitedForMovesSoThatNothingGetsOld() {
        Workload work = one().resource(Resource.of("beater", 1))
                .task(Task.of("long")
                        .priority(1)
                        .phase(work("long", 1800).breakable())
                        .build())
                .task(Task.of("beat")
                        .phase(Phase.machine("beat", Duration.ofHours(2)).holding("beater", 1))
                        .build())
                .task(Task.of("form")
                        .phase(work("form", 60))
                        .after("beat", Duration.ZERO, Duration.ofDays(1))
                        .build())
                .build();
        Timetable timetable = Timetable.from(work, at(1, 9, 0));
        assertThat(timetable.brokenWaits()).isEmpty();
        assertThat(Duration.between(
                        timetable.task("beat").finish().orElseThrow(),
                        timetable.task("form").start().orElseThrow()))
                .isBetween(Duration.ZERO, Duration.ofDays(1));
        assertThat(timetable.task("long").finish()).contains(at(4, 17, 0));
        // Beaten on Friday it would be two days and more old on Monday.
        assertThat(timetable.task("form").start()).contains(at(7, 11, 0));
    }

    /** Drying ends at night however it is begun, and within the hour nobody comes. */
    @Test
    void aWaitThatCannotBeKeptIsTold() {
        Workload work = one().task(Task.of("hang")
                        .phase(work("hang", 60))
                        .phase(Phase.waiting("dry", Duration.ofHours(12)))
                        .build())
                .task(Task.of("take down")
                        .phase(work("take down", 30))
                        .after("hang", Duration.ZERO, Duration.ofHours(1))
                        .build())
                .build();
        Timetable timetable = Timetable.from(work, at(1, 9, 0));
        assertThat(timetable.brokenWaits()).hasSize(1);
        BrokenWait wait = timetable.brokenWaits().get(0);
        assertThat(wait.task()).isEqualTo("take down");
        assertThat(wait.after()).isEqualTo("hang");
        assertThat(wait.most()).isEqualTo(Duration.ofHours(1));
        assertThat(wait.waited()).isGreaterThan(wait.most());
        assertThat(timetable.text()).contains("Waits that are too long:\n  take down begins ");
        Checks.check(timetable);
    }

    @Test
    void aDayThatCannotBeMetSaysWhichCan() {
        Workload work = one().task(
                        Task.of("a").phase(work("a", 400)).dueBy(at(1, 12, 0)).build())
                .task(Task.of("b").phase(work("b", 400)).build())
                .build();
        Timetable timetable = Timetable.between(work, at(1, 9, 0), at(2, 12, 0));
        assertThat(timetable.isMet()).contains(false);
        assertThat(timetable.soonest()).contains(at(2, 16, 10)).isEqualTo(timetable.finish());
        assertThat(timetable.late()).extracting(one -> one.task().name()).containsExactly("a");
        assertThat(timetable.chain())
                .extracting(ChainLink::reason)
                .containsExactly(ChainLink.Reason.BEGINNING, ChainLink.Reason.RESOURCE);
        Timetable met = Timetable.between(work, at(1, 9, 0), at(4, 12, 0));
        assertThat(met.isMet()).contains(true);
        assertThat(met.finish().orElseThrow()).isBeforeOrEqualTo(at(4, 12, 0));
        assertThat(met.soonest()).isEqualTo(timetable.soonest());
        assertThatThrownBy(() -> Timetable.between(work, at(2, 9, 0), at(1, 9, 0)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("before the start");
    }

    @Test
    void datesAreKept() {
        Workload work = one().task(Task.of("a")
                        .phase(work("a", 60))
                        .notBefore(at(3, 10, 0))
                        .build())
                .task(Task.of("b").phase(work("b", 60)).build())
                .build();
        Timetable onward = Timetable.from(work, at(1, 9, 0));
        assertThat(onward.task("a").start()).contains(at(3, 10, 0));
        assertThat(onward.task("b").start()).contains(at(1, 9, 0));
        // Back from before that date, it would have to begin too early.
        Timetable back = Timetable.by(work, at(2, 17, 0));
        assertThat(back.isMet()).contains(false);
        assertThat(back.soonest()).contains(at(3, 11, 0));
    }

    /** Nobody knows how long it dries: what comes after it has no date reckoned on, what comes before none reckoned back. */
    @Test
    void nothingIsInventedForWhatNobodyKnows() {
        Workload work = one().task(Task.of("form").phase(work("form", 60)).build())
                .task(Task.of("dry")
                        .phase(work("hang", 15))
                        .phase(Phase.waiting("dry"))
                        .after("form")
                        .build())
                .task(Task.of("pack").phase(work("pack", 60)).after("dry").build())
                .task(Task.of("else").phase(work("else", 60)).build())
                .build();
        Timetable onward = Timetable.from(work, at(1, 9, 0));
        assertThat(onward.task("form").finish()).isPresent();
        assertThat(onward.task("dry").start()).isPresent();
        assertThat(onward.task("dry").finish()).isEmpty();
        assertThat(onward.task("pack").start()).isEmpty();
        assertThat(onward.finish()).isEmpty();
        assertThat(onward.undated()).extracting(one -> one.task().name()).containsExactly("dry", "pack");
        assertThat(onward.text()).contains("Not known when, for want of a duration:\n  dry: 2026-12-01 ");
        Timetable back = Timetable.by(work, at(4, 17, 0));
        assertThat(back.task("pack").start()).contains(at(4, 16, 0));
        assertThat(back.task("else").finish()).isPresent();
        assertThat(back.task("form").start()).isEmpty();
        assertThat(back.isMet()).isEmpty();
        assertThatThrownBy(() -> onward.chance(10, 1))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("dry, dry: it is not known how long it takes");
    }

    @Test
    void chancesAreThoseOfTheBand() {
        // One phase day and night: its own band comes back.
        Workload work = one().task(Task.of("dry")
                        .phase(Phase.waiting("dry", Duration.ofHours(20))
                                .between(Duration.ofHours(16), Duration.ofHours(40)))
                        .build())
                .build();
        Chance chance = Timetable.by(work, at(2, 5, 0)).chance(20_000, 5);
        assertThat(chance.share(at(2, 5, 0))).isBetween(0.48, 0.52);
        assertThat(chance.share(at(2, 1, 0))).isBetween(0.045, 0.055);
        assertThat(chance.share(at(3, 1, 0))).isBetween(0.945, 0.955);
        assertThat(chance.share()).hasValueSatisfying(share -> assertThat(share).isBetween(0.48, 0.52));
        assertThat(chance.finish(0.95)).isBetween(at(3, 0, 0), at(3, 2, 0));
        assertThat(chance.keepingWaits()).isEqualTo(1);
        assertThatThrownBy(() -> chance.finish(1.5)).isInstanceOf(Refused.class);
    }

    /** The later of two that are drawn together is later than likely in half of the draws, of two by themselves in three quarters. */
    @Test
    void togetherTheyAreLateTogether() {
        for (boolean together : List.of(true, false)) {
            Workload.Builder work = one();
            for (String name : List.of("one", "two")) {
                work.task(Task.of(name)
                        .together(together ? "rag" : "")
                        .phase(Phase.waiting("dry", Duration.ofHours(20))
                                .between(Duration.ofHours(10), Duration.ofHours(40)))
                        .build());
            }
            double share =
                    Timetable.from(work.build(), at(1, 9, 0)).chance(10_000, 3).share(at(2, 5, 0));
            assertThat(share).isBetween(together ? 0.48 : 0.23, together ? 0.52 : 0.27);
        }
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatThrownBy(() -> one().task(
                                Task.of("a").phase(work("a", 60)).after("beet").build())
                        .task(Task.of("beat").phase(work("b", 60)).build())
                        .build())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("a: there is no task \"beet\"; the nearest is \"beat\"");
        assertThatThrownBy(() ->
                        one().task(Task.of("a").phase(work("a", 451)).build()).build())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("a, a: it takes 7 h 31 min in one piece, and the longest day has 7 h 30 min");
        assertThatThrownBy(() -> one().task(Task.of("a")
                                .phase(work("a", 60).holding("person", 1))
                                .build())
                        .build())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("it holds 2 person, and there are only 1");
        assertThatThrownBy(() -> one().task(Task.of("a").phase(work("a", 60)).build())
                        .task(Task.of("b")
                                .phase(Phase.waiting("b", Duration.ofHours(30)))
                                .after("a")
                                .build())
                        .task(Task.of("c")
                                .phase(work("c", 60))
                                .after("b")
                                .after("a", Duration.ZERO, Duration.ofHours(24))
                                .build())
                        .build())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("at most 1 d after a, and what has to be done between them takes 1 d 6 h");
        assertThatThrownBy(() -> one().build()).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Task.of("a").build()).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Task.of("a").after("b", Duration.ofHours(2), Duration.ofHours(1)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() ->
                        Phase.waiting("dry", Duration.ofHours(2)).between(Duration.ofHours(3), Duration.ofHours(4)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("dry: 3 h given; the low end must be above 0 and at most 2 h");
        assertThatThrownBy(() -> Phase.waiting("dry", Duration.ofHours(2)).unattended())
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Resource.of("vat", 0)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> one().resource(Resource.of("person", 2)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("resource \"person\" is given twice");
        assertThatThrownBy(() -> Timetable.from(Studios.any(1, 1), at(1, 9, 0)).chance(0, 1))
                .isInstanceOf(Refused.class);
    }
}
