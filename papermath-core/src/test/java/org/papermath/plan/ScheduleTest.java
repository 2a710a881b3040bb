package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.shortTons;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.drying.Dryer;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Formats;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Refused;
import org.papermath.quantity.VolumeFlow;
import org.papermath.schedule.Checks;
import org.papermath.schedule.Phase;
import org.papermath.schedule.PlacedPhase;
import org.papermath.schedule.PlacedTask;
import org.papermath.schedule.Timetable;
import org.papermath.schedule.WorkingTime;
import org.papermath.vat.Vat;

/** The days of a plan: what is begun when, in the working time of the studio. */
class ScheduleTest {
    private static final LocalDate DUE = LocalDate.of(2027, 4, 2);

    private static Order order(int count) {
        return Order.of("cards")
                .recipe(Recipe.of("oat", Furnish.of(Fibres.COTTON_RAG))
                        .beating(hours(3))
                        .build())
                .piece(Piece.of("card", count, "oat")
                        .size(Formats.ISO_A5)
                        .grammage(Grammage.gsm(240))
                        .build())
                .due(DUE)
                .build();
    }

    private static Studio studio() {
        return Studio.of("shed")
                .vat(Vat.of("vat", litres(60)))
                .beater(Beater.of("beater", litres(28), grams(700)))
                .mould(Mould.of("mould", mm(300), mm(420)))
                .press(Press.of("press", shortTons(20), mm(450), mm(600)))
                .felts(Felts.of(mm(450), mm(600), Grammage.gsm(500), 22))
                .dryer(Dryer.fanStack("stack", VolumeFlow.cubicMetresPerHour(1500), 40))
                .build();
    }

    private static List<PlacedPhase> worked(Timetable timetable) {
        return timetable.tasks().stream()
                .flatMap(task -> task.phases().stream())
                .filter(phase -> phase.phase().kind() != Phase.Kind.WAITING)
                .toList();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 60, 400, 5000})
    void nothingIsHeldTwiceAndNothingComesBeforeWhatItWaitsFor(int count) {
        Schedule schedule = MakingPlan.of(order(count), studio()).schedule();
        Checks.check(schedule.timetable());
        assertThat(schedule.timetable().undated()).isEmpty();
        assertThat(schedule.timetable().finish().orElseThrow())
                .isBefore(DUE.plusDays(1).atStartOfDay());
    }

    @Test
    void stuffAndWetSheetsDoNotPileUpHoweverManySheets() {
        Schedule schedule = MakingPlan.of(order(5000), studio()).schedule();
        // A weekend more at most; stuff is always fresh.
        assertThat(schedule.timetable().brokenWaits()).allSatisfy(wait -> {
            assertThat(wait.after()).doesNotContain("beat");
            assertThat(wait.waited()).isLessThan(wait.most().plusDays(3));
        });
        // The beater is the narrow place: one load a day of six hours, five days a week.
        assertThat(schedule.narrowest().orElseThrow().what()).isEqualTo("another beater");
        assertThat(schedule.narrowest().orElseThrow().toString()).contains("days sooner");
        long loads = schedule.timetable().tasks().stream()
                .filter(task -> task.task().name().startsWith("beat"))
                .count();
        double least = loads * 7 / 5.0;
        assertThat(schedule.days().orElseThrow()).isBetween((int) (0.95 * least), (int) (1.15 * least) + 25);
    }

    @Test
    void nobodyWorksOnSundaysAndDaysOff() {
        WorkingTime week = WorkingTime.builder()
                .on(EnumSet.range(DayOfWeek.TUESDAY, DayOfWeek.SATURDAY), LocalTime.of(9, 0), LocalTime.of(12, 30))
                .on(EnumSet.range(DayOfWeek.TUESDAY, DayOfWeek.SATURDAY), LocalTime.of(13, 30), LocalTime.of(17, 0))
                .off(LocalDate.of(2027, 3, 26))
                .build();
        Studio careful = studio().with(one -> one.workingTime(week));
        Schedule schedule = MakingPlan.of(order(200), careful).schedule();
        for (PlacedPhase phase : worked(schedule.timetable())) {
            LocalDateTime start = phase.start().orElseThrow();
            assertThat(week.isWorked(start)).as("%s", phase).isTrue();
            assertThat(start.getDayOfWeek()).isNotIn(DayOfWeek.SUNDAY, DayOfWeek.MONDAY);
            assertThat(start.toLocalDate()).isNotEqualTo("2027-03-26");
        }
        assertThat(careful.workingDay().in("h")).isEqualTo(7);
    }

    @Test
    void aDayThatCannotBeMetIsSaidWithTheSoonest() {
        MakingPlan plan = MakingPlan.of(order(60), studio());
        LocalDate start = plan.schedule().start().orElseThrow();
        assertThat(plan.schedule().verdict(start)).startsWith("can be done by 2027-04-02");
        assertThat(plan.schedule().verdict(start.minusDays(40)))
                .startsWith("can be done by 2027-04-02: begin on")
                .endsWith("at the latest");
        String late = plan.schedule().verdict(LocalDate.of(2027, 3, 22));
        assertThat(late).startsWith("cannot be done by 2027-04-02: begun on 2027-03-22 it is done on 2027-04");
        String past = plan.schedule().verdict(LocalDate.of(2027, 5, 3));
        assertThat(past).startsWith("cannot be done by 2027-04-02: begun on 2027-05-03 it is done on 2027-05");
        assertThat(plan.schedule().beginning(LocalDate.of(2027, 5, 3)).start()).contains(LocalDate.of(2027, 5, 3));
        MakingPlan undated = MakingPlan.of(
                Order.of("undated")
                        .recipe(order(60).recipes().get(0))
                        .piece(order(60).pieces().get(0))
                        .build(),
                studio());
        assertThat(undated.schedule().start()).isEmpty();
        assertThat(undated.schedule().days()).isPresent();
        assertThatThrownBy(() -> undated.schedule().verdict(DUE))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no date");
    }

    @Test
    void moreHandsAndMoreFeltsAreNeverSlower() {
        int alone = days(studio());
        assertThat(days(studio().with(one -> one.people(2)))).isLessThanOrEqualTo(alone);
        Studio wide =
                studio().with(one -> one.dryer(Dryer.fanStack("stack", VolumeFlow.cubicMetresPerHour(6000), 200)));
        assertThat(days(wide)).isLessThanOrEqualTo(alone);
        List<OneMore> more = MakingPlan.of(order(400), studio()).schedule().oneMore();
        assertThat(more)
                .extracting(OneMore::what)
                .containsExactlyInAnyOrder(
                        "another person",
                        "another beater",
                        "another vat",
                        "another press",
                        "ten more felts",
                        "as many places in stack again");
        assertThat(more)
                .isSortedAccordingTo(Comparator.comparing(OneMore::sooner).reversed());
    }

    private static int days(Studio studio) {
        return MakingPlan.of(order(400), studio).schedule().days().orElseThrow();
    }

    @Test
    void theChanceGrowsWithTheTimeThereIs() {
        Schedule schedule = MakingPlan.of(order(60), studio()).schedule();
        double chance = schedule.chanceOfDate().orElseThrow().si();
        assertThat(chance).isBetween(0.2, 0.98);
        assertThat(schedule.chance().orElseThrow().finish(0.9))
                .isAfter(schedule.chance().orElseThrow().finish(0.5));
    }

    @Test
    void stuffOfTheNextBatchDoesNotGoIntoAFullVat() {
        Recipe rust =
                Recipe.of("rust", Furnish.of(Fibres.ABACA)).beating(hours(2)).build();
        Order two = order(100).toBuilder()
                .recipe(rust)
                .piece(Piece.of("label", 100, "rust")
                        .size(Formats.ISO_A6)
                        .grammage(Grammage.gsm(120))
                        .build())
                .build();
        Timetable timetable = MakingPlan.of(two, studio()).schedule().timetable();
        LocalDateTime last = timetable.tasks().stream()
                .filter(task -> task.task().name().startsWith("form")
                        && task.task().name().endsWith("card"))
                .map(task -> task.finish().orElseThrow())
                .max(LocalDateTime::compareTo)
                .orElseThrow();
        PlacedTask charge = timetable.task("charge the vat with rust");
        assertThat(charge.start().orElseThrow()).isAfterOrEqualTo(last);
    }

    @Test
    void everyOrderHasItsDays() {
        for (long seed = 0; seed < 60; seed++) {
            AnyOrder.Job job = seed % 4 == 0 ? AnyOrder.extreme(seed) : AnyOrder.plausible(seed);
            MakingPlan plan;
            try {
                plan = MakingPlan.withoutBands(job.order(), job.studio());
            } catch (Refused refused) {
                continue;
            }
            Schedule schedule = plan.schedule();
            Checks.check(schedule.timetable());
            assertThat(schedule.leastDays()).isPositive();
            assertThat(schedule.toString()).isNotEmpty();
            schedule.timetable()
                    .brokenWaits()
                    .forEach(wait -> assertThat(wait.waited()).isGreaterThan(Duration.ZERO));
        }
    }
}
