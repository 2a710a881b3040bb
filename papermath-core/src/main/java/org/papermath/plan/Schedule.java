package org.papermath.plan;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.papermath.order.Order;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.schedule.Chance;
import org.papermath.schedule.Day;
import org.papermath.schedule.Phase;
import org.papermath.schedule.PlacedTask;
import org.papermath.schedule.Resource;
import org.papermath.schedule.Timetable;
import org.papermath.schedule.WorkingTime;
import org.papermath.schedule.Workload;

/**
 * The days of the work: every load, post and filling of a dryer in the working time of the studio, with nothing held twice.
 * Immutable.
 *
 * <p>The days are counted back from the date of the order, everything as late as it can be; without a date they are counted
 * from a Monday, and not dated. Steps of one's own ({@link org.papermath.order.OwnStep}) stand among the stages of the work. Hands and machines work in the {@linkplain org.papermath.order.Studio#workingTime() working
 * time}; soaking, drying and curing go on day and night. Stuff is formed before it is older than {@code stock.keeps}, and
 * sheets are laid to dry before they lay wet for {@code schedule.wet-sheets}, wherever the days allow it;
 * {@link Timetable#brokenWaits()} tells where not. Where it is not known how long the sheets dry, what comes after it is
 * dated, what comes before is not.
 */
public final class Schedule {
    /** A Monday that stands for any day. */
    private static final LocalDate SOME_MONDAY = LocalDate.of(2001, 1, 1);

    private static final int DRAWS = 400;
    /** Two hundred years. */
    private static final int MOST_DAYS = 73_000;

    private final Source source;
    /** Null where the work goes on beyond all calendars. */
    private final @Nullable Timetable placed;

    private final boolean dated;
    /** The same with what is not known how long it takes done at once. */
    private final Lazy<Timetable> known;

    private final Lazy<List<Step>> steps;
    private final Lazy<List<WaitsForStep>> waitsForSteps;

    /** What waits longer than it may, since a step of one's own lies between. */
    record WaitsForStep(String first, String next, Duration waits, Duration most) {}

    /** One step. */
    public sealed interface Step permits PlannedStep {
        /** {@return the step} */
        String name();

        /** {@return whether it is a step of one's own} */
        boolean isOwn();

        /** {@return calendar days from its first to its last, both of them counted, if they are known} */
        OptionalInt days();

        /** {@return the day it begins, if the order has a date and the days from here on are known} */
        Optional<LocalDate> start();

        /** {@return the day it ends, if the order has a date and the days from here on are known} */
        Optional<LocalDate> end();

        /** {@return the days in words, for example {@code 2 days}, or that they are not known} */
        String inDays();
    }

    /** A step that was counted. */
    record PlannedStep(String name, boolean isOwn, OptionalInt days, Optional<LocalDate> start, Optional<LocalDate> end)
            implements Step {
        @Override
        public String inDays() {
            return days.isPresent() ? count(days.getAsInt()) : "days not known";
        }

        @Override
        public String toString() {
            return name + ", " + inDays() + start.map(day -> ", from " + day).orElse("");
        }
    }

    /** What it is made from. */
    private record Source(PlainNumbers in, List<BatchPlan> batches, List<PiecePlan> pieces) {
        TasksOfPlan tasks(boolean unknown) {
            return new TasksOfPlan(in, batches, pieces, "", 0, null, unknown, List.of(), Map.of());
        }

        Workload work(TasksOfPlan tasks) {
            return SeveralOrders.work(in.studio(), List.of(tasks));
        }

        Order order() {
            return in.order();
        }
    }

    private Schedule(Source source, @Nullable Timetable placed, TasksOfPlan tasks, boolean dated) {
        this.source = source;
        this.placed = placed;
        this.dated = dated && placed != null;
        known = new Lazy<>(() -> timetable().undated().isEmpty()
                ? timetable()
                : placed(source.work(source.tasks(false)), source.order().due().orElse(null)));
        steps = new Lazy<>(() -> steps(tasks));
        waitsForSteps = new Lazy<>(() -> waitsForSteps(tasks));
    }

    static Schedule of(PlainNumbers in, List<BatchPlan> batches, List<PiecePlan> pieces, TasksOfPlan tasks) {
        Source source = new Source(in, batches, pieces);
        LocalDate due = in.order().due().orElse(null);
        return new Schedule(source, place(source.work(tasks), due), tasks, due != null);
    }

    /** As {@link #placed}; null where that would be farther than any calendar goes. */
    private static @Nullable Timetable place(Workload work, @Nullable LocalDate due) {
        try {
            return placed(work, due);
        } catch (Refused refused) {
            if (refused.code().equals("schedule.too-far")) {
                return null;
            }
            throw refused;
        }
    }

    /**
     * On from some Monday; or on from the last day that still lets all be done by the day it is due. Where something is not
     * known, back from there.
     */
    private static Timetable placed(Workload work, @Nullable LocalDate due) {
        if (due == null) {
            return Timetable.from(work, SOME_MONDAY.atStartOfDay());
        }
        LocalDate start = due;
        Timetable found = Timetable.from(work, start.atStartOfDay());
        if (!found.undated().isEmpty()) {
            return Timetable.by(work, end(due));
        }
        for (long late = late(found, due); late > 0; late = late(found, due)) {
            start = start.minusDays(late);
            found = Timetable.from(work, start.atStartOfDay());
        }
        // Days off lie otherwise for another beginning: a later one may do as well.
        for (int day = 1; day <= 3; day++) {
            Timetable later = Timetable.from(work, start.plusDays(day).atStartOfDay());
            found = late(later, due) <= 0 ? later : found;
        }
        return found;
    }

    /** By how many days all is done later than it is due; negative where it is done before. */
    private static long late(Timetable timetable, LocalDate due) {
        return ChronoUnit.DAYS.between(due, lastDay(timetable.finish().orElseThrow()));
    }

    /** When a day is over. */
    static LocalDateTime end(LocalDate day) {
        return day.atTime(LocalTime.of(23, 59));
    }

    /** The day on which what is done by then was worked last. */
    static LocalDate lastDay(LocalDateTime finish) {
        return finish.minusMinutes(1).toLocalDate();
    }

    private static OptionalInt daysOf(Timetable timetable) {
        Optional<LocalDateTime> start = timetable.start();
        Optional<LocalDateTime> finish = timetable.finish();
        return start.isPresent() && finish.isPresent() && timetable.undated().isEmpty()
                ? OptionalInt.of(days(start.get(), finish.get()))
                : OptionalInt.empty();
    }

    /** The days from a moment to another, both counted. */
    private static int days(LocalDateTime start, LocalDateTime finish) {
        LocalDate last = finish.equals(start) ? finish.toLocalDate() : lastDay(finish);
        return (int) ChronoUnit.DAYS.between(start.toLocalDate(), last) + 1;
    }

    private List<Step> steps(TasksOfPlan tasks) {
        if (placed == null) {
            return tasks.inOrder().stream()
                    .<Step>map(step -> new PlannedStep(
                            tasks.words(step), step.isOwn(), OptionalInt.empty(), Optional.empty(), Optional.empty()))
                    .toList();
        }
        Timetable timetable = timetable();
        Map<TasksOfPlan.Step, List<PlacedTask>> dates = bySteps(timetable, tasks);
        Map<TasksOfPlan.Step, List<PlacedTask>> lengths = bySteps(known.get(), tasks);
        List<Step> found = new ArrayList<>();
        dates.forEach((step, of) -> {
            List<PlacedTask> counted = lengths.getOrDefault(step, List.of());
            boolean open = of.stream()
                    .flatMap(task -> task.task().phases().stream())
                    .anyMatch(phase -> phase.likely().isEmpty());
            found.add(new PlannedStep(
                    tasks.words(step),
                    step.isOwn(),
                    open
                            ? OptionalInt.empty()
                            : OptionalInt.of(days(
                                    first(counted).orElseThrow(), last(counted).orElseThrow())),
                    first(of).map(LocalDateTime::toLocalDate).filter(day -> dated),
                    last(of).map(LocalDateTime::toLocalDate).filter(day -> dated)));
        });
        return List.copyOf(found);
    }

    private List<WaitsForStep> waitsForSteps(TasksOfPlan tasks) {
        if (placed == null || source.order().steps().isEmpty()) {
            return List.of();
        }
        Map<String, PlacedTask> byName = new LinkedHashMap<>();
        known.get().tasks().forEach(one -> byName.put(one.task().name(), one));
        List<WaitsForStep> found = new ArrayList<>();
        for (TasksOfPlan.Overlong one : tasks.waitsForSteps()) {
            Duration waits = Duration.between(
                    Objects.requireNonNull(byName.get(one.first())).finish().orElseThrow(),
                    Objects.requireNonNull(byName.get(one.next())).start().orElseThrow());
            if (waits.compareTo(one.most()) > 0) {
                found.add(new WaitsForStep(one.first(), one.next(), waits, one.most()));
            }
        }
        found.sort(Comparator.comparing(WaitsForStep::waits).reversed());
        return List.copyOf(found);
    }

    /** What waits longer than it may for a step of one's own, the longest first. */
    List<WaitsForStep> waitsForSteps() {
        return waitsForSteps.get();
    }

    private static Map<TasksOfPlan.Step, List<PlacedTask>> bySteps(Timetable timetable, TasksOfPlan tasks) {
        Map<TasksOfPlan.Step, List<PlacedTask>> bySteps = new LinkedHashMap<>();
        tasks.inOrder().forEach(step -> bySteps.put(step, new ArrayList<>()));
        for (PlacedTask task : timetable.tasks()) {
            Objects.requireNonNull(bySteps.get(tasks.steps().get(task.task().name())))
                    .add(task);
        }
        return bySteps;
    }

    /** When the first of them begins, if it is known of all. */
    private static Optional<LocalDateTime> first(List<PlacedTask> tasks) {
        return tasks.stream().allMatch(one -> one.start().isPresent())
                ? tasks.stream().map(one -> one.start().orElseThrow()).min(LocalDateTime::compareTo)
                : Optional.empty();
    }

    /** When the last of them ends, if it is known of all. */
    private static Optional<LocalDateTime> last(List<PlacedTask> tasks) {
        return tasks.stream().allMatch(one -> one.finish().isPresent())
                ? tasks.stream().map(one -> one.finish().orElseThrow()).max(LocalDateTime::compareTo)
                : Optional.empty();
    }

    /**
     * Returns the steps in the order of the work; several may go on at the same time.
     *
     * @return an unmodifiable list
     */
    public List<Step> steps() {
        return steps.get();
    }

    /**
     * Returns when each load, post and filling begins and ends, in hours and minutes. Of an order without a date it begins
     * on a Monday that stands for any day.
     *
     * @return the timetable
     * @throws Refused if the work goes on for more than 200 years
     */
    public Timetable timetable() {
        if (placed == null) {
            throw Refused.of(
                    "schedule.too-far",
                    "order " + source.order().name()
                            + ": the work goes on for more than 200 years. Order fewer pieces, or"
                            + " give the studio more hours, a larger beater or dryer.",
                    "order",
                    source.order().name());
        }
        return placed;
    }

    /**
     * Returns what there is to do on each day, in hours and minutes, if the order has a date or a day to begin on was given.
     * What is not known when is left out.
     *
     * @return an unmodifiable list of the days on which there is something to do; empty if the days are not dated
     */
    public List<Day> calendar() {
        return dated ? timetable().days() : List.of();
    }

    /**
     * Returns how long hands are at work on a day: its working time by hand, without its breaks, twice what two people do.
     *
     * @param day a day of the {@link #calendar()}
     * @return the time, zero where only machines run and things wait
     */
    public Amount<Time> handsOn(Day day) {
        Objects.requireNonNull(day, "day");
        WorkingTime time = timetable().work().workingTime();
        long minutes = 0;
        for (Day.Entry entry : day.entries()) {
            if (entry.phase().kind() == Phase.Kind.HANDS_ON) {
                minutes += time.between(entry.from(), entry.to()).toMinutes()
                        * Math.max(1, entry.phase().held().getOrDefault(TasksOfPlan.PERSON, 1));
            }
        }
        return Kinds.TIME.ofSi(60.0 * minutes, "h");
    }

    /**
     * Returns the calendar days from the beginning of the first step to the parcel, both days counted, if those of every step
     * are known.
     *
     * @return the days; empty if it is not known how long the sheets dry, see {@link #leastDays()}
     */
    public OptionalInt days() {
        return placed == null ? OptionalInt.empty() : daysOf(placed);
    }

    /**
     * Returns the calendar days the work would take if what is not known how long it dries were dry at once. Where
     * {@link #days()} is empty, the drying comes on top of them.
     *
     * @return the days; 73 000, where it is more than 200 years
     */
    public int leastDays() {
        return placed == null ? MOST_DAYS : daysOf(known.get()).orElseThrow();
    }

    /**
     * Returns the day by which the work has to begin, if the order has a date and the days of every step are known.
     *
     * @return the day
     */
    public Optional<LocalDate> start() {
        return dated && timetable().undated().isEmpty()
                ? timetable().start().map(LocalDateTime::toLocalDate)
                : Optional.empty();
    }

    /**
     * Returns the days if work can begin on a day and not before: back from the date of the order if it can be met, else as
     * soon as all can be done.
     *
     * @param day the day, for example today
     * @return the schedule; {@link Timetable#isMet()} says whether the date is met, {@link Timetable#soonest()} when all can
     *     be done
     */
    public Schedule beginning(LocalDate day) {
        Objects.requireNonNull(day, "day");
        TasksOfPlan tasks = source.tasks(true);
        Workload work = source.work(tasks);
        Optional<LocalDate> due = source.order().due();
        Timetable placed = due.filter(date -> !date.isBefore(day))
                .map(date -> Timetable.between(work, day.atStartOfDay(), end(date)))
                .orElseGet(() -> Timetable.from(work, day.atStartOfDay()));
        return new Schedule(source, placed, tasks, true);
    }

    /**
     * Returns whether the date of the order can be met, in a sentence with what holds the work up.
     *
     * @param today the day on which work can begin
     * @return for example {@code can be done by 2027-02-26: begin on 2027-01-25 at the latest}
     * @throws Refused if the order has no date
     */
    public String verdict(LocalDate today) {
        LocalDate due = source.order()
                .due()
                .orElseThrow(() -> Refused.of(
                        "schedule.no-date",
                        "order " + source.order().name()
                                + ": it has no date to be met. Give it one with due(…), or ask for beginning(day).",
                        "order",
                        source.order().name()));
        Schedule from = beginning(today);
        Optional<LocalDate> soonest = from.timetable().soonest().map(LocalDateTime::toLocalDate);
        if (soonest.isEmpty()) {
            return "not known: nobody knows how long the sheets dry; the rest takes " + count(leastDays());
        }
        if (!soonest.get().isAfter(due)) {
            return "can be done by " + due + ": begin on "
                    + from.start().map(LocalDate::toString).orElseThrow() + " at the latest";
        }
        return "cannot be done by " + due + ": begun on " + today + " it is done on " + soonest.get()
                + from.narrowest()
                        .map(place -> "; what holds it up most: " + place)
                        .orElse("");
    }

    /**
     * Returns how much sooner all would be done with another person, beater, vat or press, with ten more felts, or with as
     * many places again in a dryer: each by itself, begun on the same day.
     *
     * @return an unmodifiable list of what there is and is held, what helps most first; empty if a duration is not known
     */
    public List<OneMore> oneMore() {
        if (placed == null || !placed.undated().isEmpty()) {
            return List.of();
        }
        Workload work = placed.work();
        LocalDateTime start = placed.start().orElseThrow().toLocalDate().atStartOfDay();
        LocalDateTime now = Timetable.from(work, start).finish().orElseThrow();
        List<OneMore> all = new ArrayList<>();
        for (Resource one : work.resources()) {
            if (work.tasks().stream()
                    .flatMap(task -> task.phases().stream())
                    .anyMatch(phase -> phase.held().containsKey(one.name()))) {
                LocalDateTime then = Timetable.from(work.with(TasksOfPlan.more(one)), start)
                        .finish()
                        .orElseThrow();
                all.add(new OneMore(
                        TasksOfPlan.moreWords(one), then.isBefore(now) ? Duration.between(then, now) : Duration.ZERO));
            }
        }
        all.sort(Comparator.comparing(OneMore::sooner).reversed());
        return Collections.unmodifiableList(all);
    }

    /**
     * Returns what holds the work up most.
     *
     * @return what helps most of {@link #oneMore()}; empty if nothing does, or a duration is not known
     */
    public Optional<OneMore> narrowest() {
        return oneMore().stream().filter(more -> !more.sooner().isZero()).findFirst();
    }

    /**
     * Returns how likely the date of the order is met if the work begins as planned.
     *
     * @return the share of draws that are done by the end of that day; empty if there is no date, or a duration is not known
     */
    public Optional<Amount<Share>> chanceOfDate() {
        return source.order()
                .due()
                .flatMap(due -> chance().map(chance -> Kinds.SHARE.ofSi(chance.share(end(due)), "%")));
    }

    /**
     * Returns when all is done if the work begins as planned, all durations drawn from their bands: what leans on the same
     * pace of hands, or on the same drying, together.
     *
     * @return when all is done, by its chances; empty if a duration is not known
     */
    public Optional<Chance> chance() {
        return placed != null && placed.undated().isEmpty() ? Optional.of(placed.chance(DRAWS, 1)) : Optional.empty();
    }

    /**
     * Returns the days of all steps in words.
     *
     * @return for example {@code 33 days}, or how many there are at least
     */
    public String inDays() {
        if (placed == null) {
            return "more than 200 years";
        }
        return days().isPresent() ? count(leastDays()) : "at least " + count(leastDays()) + ", and the drying";
    }

    @Override
    public String toString() {
        return inDays() + start().map(day -> ", from " + day).orElse("");
    }

    private static String count(int days) {
        return days + (days == 1 ? " day" : " days");
    }
}
