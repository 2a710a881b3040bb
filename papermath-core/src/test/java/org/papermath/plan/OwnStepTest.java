package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.days;
import static org.papermath.quantity.Amounts.hours;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.papermath.card.MakingCard;
import org.papermath.evidence.Notice;
import org.papermath.order.Order;
import org.papermath.order.OwnStep;
import org.papermath.order.OwnStep.Stage;
import org.papermath.quantity.Refused;
import org.papermath.schedule.Checks;
import org.papermath.schedule.PlacedTask;
import org.papermath.schedule.Timetable;

/** Steps of one's own among the stages of the work. */
class OwnStepTest {
    private static final OwnStep PROOF = OwnStep.of("have the proof approved")
            .waits(days(9))
            .after(Stage.FIBRE)
            .before(Stage.FORM)
            .build();
    private static final OwnStep PRINT = OwnStep.of("print elsewhere")
            .hands(hours(2))
            .waits(days(5))
            .between(days(3), days(11))
            .after(Stage.CONDITION)
            .build();
    private static final OwnStep BRING =
            OwnStep.of("bring it").hands(hours(1.5)).after(Stage.PACK).build();

    private static MakingPlan plan(OwnStep... steps) {
        Order.Builder order = Sample.order().toBuilder();
        for (OwnStep step : steps) {
            order.step(step);
        }
        return MakingPlan.withoutBands(order.build(), Sample.studio());
    }

    private static PlacedTask task(Timetable timetable, String name) {
        return timetable.tasks().stream()
                .filter(one -> one.task().name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static LocalDateTime first(Timetable timetable, String begins) {
        return timetable.tasks().stream()
                .filter(one -> one.task().name().startsWith(begins))
                .map(one -> one.start().orElseThrow())
                .min(LocalDateTime::compareTo)
                .orElseThrow();
    }

    private static LocalDateTime last(Timetable timetable, String begins) {
        return timetable.tasks().stream()
                .filter(one -> one.task().name().startsWith(begins))
                .map(one -> one.finish().orElseThrow())
                .max(LocalDateTime::compareTo)
                .orElseThrow();
    }

    @Test
    void aStepStandsWhereItIsPutAndTheWorkWaits() {
        MakingPlan plan = plan(PROOF, PRINT, BRING);
        Timetable timetable = plan.schedule().timetable();
        Checks.check(timetable);
        PlacedTask print = task(timetable, "print elsewhere");
        assertThat(print.start().orElseThrow()).isAfterOrEqualTo(last(timetable, "condition "));
        assertThat(task(timetable, "pack").start().orElseThrow())
                .isAfterOrEqualTo(print.finish().orElseThrow());
        assertThat(Duration.between(print.start().orElseThrow(), print.finish().orElseThrow()))
                .isGreaterThanOrEqualTo(Duration.ofHours(2 + 5 * 24));
        assertThat(task(timetable, "bring it").start().orElseThrow()).isAfterOrEqualTo(last(timetable, "pack"));
        // The parcel of an order with a date has been brought by then.
        assertThat(timetable.finish()).isEqualTo(task(timetable, "bring it").finish());
        assertThat(timetable.finish().orElseThrow())
                .isBefore(LocalDate.of(2027, 3, 6).atStartOfDay());
        // Soaking and beating go on beside the proof, forming waits for it.
        PlacedTask proof = task(timetable, "have the proof approved");
        assertThat(proof.start().orElseThrow()).isBefore(last(timetable, "beat "));
        assertThat(first(timetable, "form ")).isAfterOrEqualTo(proof.finish().orElseThrow());
        List<String> names =
                plan.schedule().steps().stream().map(Schedule.Step::name).toList();
        assertThat(names.get(1)).isEqualTo("have the proof approved");
        assertThat(names.subList(names.size() - 4, names.size()))
                .containsExactly("condition under weight", "print elsewhere", "count and pack", "bring it");
        assertThat(plan.schedule().steps().stream().filter(Schedule.Step::isOwn).map(Schedule.Step::name))
                .containsExactly("have the proof approved", "print elsewhere", "bring it");
    }

    @Test
    void daysStartVerdictTextAndCalendarHaveThem() {
        MakingPlan without = plan();
        MakingPlan with = plan(PRINT);
        int longer =
                with.schedule().days().orElseThrow() - without.schedule().days().orElseThrow();
        assertThat(longer).isBetween(5, 8);
        assertThat(with.schedule().start().orElseThrow())
                .isBefore(without.schedule().start().orElseThrow());
        LocalDate last = without.schedule().start().orElseThrow();
        assertThat(without.schedule().verdict(last)).startsWith("can be done by");
        assertThat(with.schedule().verdict(last)).startsWith("cannot be done by");
        assertThat(with.schedule().timetable().text()).contains("print elsewhere");
        assertThat(with.schedule().timetable().chain().toString()).contains("print elsewhere");
        assertThat(with.schedule().timetable().calendar("days", Instant.EPOCH)).contains("print elsewhere");
        assertThat(MakingCard.of(with).toString().replaceAll("\\s+", " "))
                .contains(" print elsewhere, ")
                .contains("Steps of your own: 2 h of hands more.");
        assertThat(MakingCard.of(without).toString()).doesNotContain("Steps of your own");
    }

    @Test
    void itsBandGoesIntoTheChanceOfTheDate() {
        double narrow = plan(OwnStep.of("print")
                        .waits(days(5))
                        .after(Stage.CONDITION)
                        .build())
                .schedule()
                .chanceOfDate()
                .orElseThrow()
                .si();
        double wide = plan(PRINT).schedule().chanceOfDate().orElseThrow().si();
        assertThat(narrow).isGreaterThan(0.9);
        assertThat(wide).isLessThan(0.8);
    }

    @Test
    void handsAreCountedApartFromThoseOfTheStages() {
        MakingPlan with = plan(PRINT, BRING);
        assertThat(with.ownStepHours().in("h")).isEqualTo(3.5);
        assertThat(plan().ownStepHours().si()).isZero();
        assertThat(with.workingHours().likely().si())
                .isEqualTo(plan().workingHours().likely().si());
    }

    @Test
    void workingDaysLeaveNightsAndDaysOffOut() {
        OwnStep.Builder ten = OwnStep.of("print").waits(days(10)).after(Stage.CONDITION);
        Timetable dayAndNight = plan(ten.build()).schedule().timetable();
        Timetable working = plan(OwnStep.of("print")
                        .waits(days(10))
                        .inWorkingDays()
                        .after(Stage.CONDITION)
                        .build())
                .schedule()
                .timetable();
        Checks.check(working);
        assertThat(Duration.between(
                        task(dayAndNight, "print").start().orElseThrow(),
                        task(dayAndNight, "print").finish().orElseThrow()))
                .isEqualTo(Duration.ofDays(10));
        Duration waited = working.work()
                .workingTime()
                .between(
                        task(working, "print").start().orElseThrow(),
                        task(working, "print").finish().orElseThrow());
        assertThat(waited).isEqualTo(working.work().workingTime().longestDay().multipliedBy(10));
        // It holds nobody: a waiting is free in a calendar.
        assertThat(task(working, "print").phases())
                .allSatisfy(phase -> assertThat(phase.phase().held()).isEmpty());
    }

    @Test
    void stepsOfOnePlaceFollowOneAnotherAsTheyStand() {
        OwnStep[] steps = IntStream.range(0, 4)
                .mapToObj(i -> OwnStep.of("step " + (9 - i))
                        .hands(hours(1))
                        .waits(days(1))
                        .before(Stage.PACK)
                        .build())
                .toArray(OwnStep[]::new);
        Timetable timetable = plan(steps).schedule().timetable();
        for (int i = 1; i < steps.length; i++) {
            assertThat(task(timetable, steps[i].name()).start().orElseThrow())
                    .isAfterOrEqualTo(
                            task(timetable, steps[i - 1].name()).finish().orElseThrow());
        }
    }

    @Test
    void aStepInEachPlaceCanBePlaced() {
        for (Stage stage : Stage.values()) {
            OwnStep after = OwnStep.of("pack").waits(hours(1)).after(stage).build();
            OwnStep before = OwnStep.of("step").hands(hours(30)).before(stage).build();
            MakingPlan plan = plan(after, before);
            Checks.check(plan.schedule().timetable());
            assertThat(plan.schedule().days()).as(stage.words()).isPresent();
            for (Stage later : Stage.values()) {
                if (later.compareTo(stage) > 0) {
                    Checks.check(plan(OwnStep.of("between")
                                    .waits(days(2))
                                    .after(stage)
                                    .before(later)
                                    .build())
                            .schedule()
                            .timetable());
                }
            }
        }
    }

    @Test
    void whatGrowsOldForAStepIsSaid() {
        MakingPlan stale = plan(
                OwnStep.of("show the stuff").waits(days(20)).after(Stage.BEAT).build());
        assertThat(stale.notices()).extracting(Notice::code).contains("schedule.waits-for-step");
        assertThat(stale.schedule().days()).isPresent();
        assertThat(plan(PRINT, PROOF).notices()).extracting(Notice::code).doesNotContain("schedule.waits-for-step");
    }

    @Test
    void eachOrderOfSeveralHasItsOwn() {
        MakingPlan one = plan(PRINT);
        MakingPlan other = MakingPlan.withoutBands(
                Order.of("other")
                        .recipe(one.order().recipes().get(0))
                        .piece(one.order().pieces().get(0))
                        .step(PRINT)
                        .build(),
                one.studio());
        Timetable both =
                SeveralOrders.of(List.of(one, other), LocalDate.of(2027, 1, 4)).timetable();
        Checks.check(both);
        assertThat(both.tasks().stream()
                        .map(task -> task.task().name())
                        .filter(name -> name.endsWith("print elsewhere")))
                .containsExactlyInAnyOrder("reading evening: print elsewhere", "other: print elsewhere");
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatThrownBy(() -> OwnStep.of("idle").after(Stage.PACK).build())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("takes no time");
        assertThatThrownBy(() -> OwnStep.of("lost").hands(hours(1)).build())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no place");
        assertThatThrownBy(() -> OwnStep.of("print")
                        .hands(hours(1))
                        .after(Stage.PACK)
                        .before(Stage.FORM)
                        .build())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("after pack and before form");
        assertThatThrownBy(() -> OwnStep.of("print")
                        .waits(days(5))
                        .between(days(6), days(7))
                        .after(Stage.PACK)
                        .build())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("rising order");
        assertThatThrownBy(() -> OwnStep.of("print")
                        .waits(hours(48))
                        .inWorkingDays()
                        .after(Stage.PACK)
                        .build())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("in working days");
        assertThatThrownBy(() -> plan(PRINT, PRINT)).isInstanceOf(Refused.class).hasMessageContaining("twice");
        OwnStep[] many = IntStream.range(0, 101)
                .mapToObj(i -> OwnStep.of("step " + i)
                        .hands(hours(1))
                        .after(Stage.PACK)
                        .build())
                .toArray(OwnStep[]::new);
        assertThatThrownBy(() -> plan(many)).isInstanceOf(Refused.class).hasMessageContaining("101 given");
    }

    @Test
    void whatIsAskedOtherwiseIsTold() {
        OwnStep sure = OwnStep.of("print elsewhere")
                .hands(hours(2))
                .waits(days(5))
                .after(Stage.CONDITION)
                .build();
        assertThat(plan(PRINT).comparedWith(plan(sure)).asked().toString()).contains("step", "waits 5 d (3 d to 11 d)");
        assertThat(plan(PRINT).comparedWith(plan(PRINT)).asked()).isEmpty();
    }

    @Test
    void aLongNameKeepsTheCardInItsWidth() {
        String name = "carry everything to the printer in the next town and wait for it "
                .repeat(3)
                .strip();
        MakingCard card = MakingCard.of(
                plan(OwnStep.of(name).waits(days(2)).after(Stage.CONDITION).build()));
        assertThat(card.lines()).allMatch(line -> line.length() <= 80);
        assertThat(card.toString().replaceAll("\\s+", " ")).contains(name + ", 3 days");
    }

    @Test
    void anOrderKeepsItsSteps() {
        Order order = Sample.order().withStep(PRINT).withStep(BRING);
        assertThat(order.steps()).containsExactly(PRINT, BRING);
        assertThat(order.withDue(LocalDate.of(2027, 4, 1)).steps()).containsExactly(PRINT, BRING);
        assertThat(order).isNotEqualTo(Sample.order());
        OwnStep longer =
                OwnStep.of("print elsewhere").waits(days(9)).after(Stage.FINISH).build();
        assertThat(order.withStep(longer).steps()).containsExactly(longer, BRING);
        assertThat(PRINT.toString())
                .isEqualTo("print elsewhere: 2 h of hands, waits 5 d (3 d to 11 d), after condition");
    }
}
