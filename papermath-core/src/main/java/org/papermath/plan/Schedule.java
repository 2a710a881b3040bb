package org.papermath.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

import org.jspecify.annotations.Nullable;

/**
 * The days of the work, counted backwards from the date of the order. Immutable.
 *
 * <p>Drying, curing and conditioning always have their step; working time is rounded up to whole working days. Where
 * nobody knows how long the sheets dry, that step has no number of days: what comes after it is dated, what comes before
 * is not.
 */
public final class Schedule {
    private final List<Step> steps;

    /** One step. */
    public sealed interface Step permits PlannedStep {
        /** {@return the step} */
        String name();

        /** {@return calendar days it takes, if they are known} */
        OptionalInt days();

        /** {@return the day it begins, if the order has a date and the days from here on are known} */
        Optional<LocalDate> start();

        /** {@return the days in words, for example {@code 2 days}, or that they are not known} */
        String inDays();
    }

    /** A step that was counted. */
    record PlannedStep(String name, OptionalInt days, Optional<LocalDate> start) implements Step {
        @Override
        public String inDays() {
            return days.isPresent() ? count(days.getAsInt()) : "days not known";
        }

        @Override
        public String toString() {
            return name + ", " + inDays() + start.map(day -> ", from " + day).orElse("");
        }
    }

    private Schedule(List<Step> steps) {
        this.steps = List.copyOf(steps);
    }

    /** Counts backwards; the steps come in the order of the work. */
    static Schedule backwards(List<String> names, List<OptionalInt> days, @Nullable LocalDate due) {
        List<Step> steps = new ArrayList<>();
        LocalDate end = due;
        for (int i = names.size() - 1; i >= 0; i--) {
            OptionalInt count = days.get(i);
            LocalDate start = end == null || count.isEmpty() ? null : end.minusDays(count.getAsInt());
            steps.add(new PlannedStep(names.get(i), count, Optional.ofNullable(start)));
            end = start;
        }
        Collections.reverse(steps);
        return new Schedule(steps);
    }

    /**
     * Returns the steps in the order of the work.
     *
     * @return an unmodifiable list
     */
    public List<Step> steps() {
        return steps;
    }

    /**
     * Returns the calendar days from the first step to the parcel, if those of every step are known.
     *
     * @return the days; empty if nobody knows how long the sheets dry, see {@link #leastDays()}
     */
    public OptionalInt days() {
        return steps.stream().allMatch(step -> step.days().isPresent()) ? OptionalInt.of(leastDays())
                : OptionalInt.empty();
    }

    /**
     * Returns the calendar days of the steps whose days are known. Where {@link #days()} is empty, the drying comes on
     * top of them.
     *
     * @return the days
     */
    public int leastDays() {
        return steps.stream().mapToInt(step -> step.days().orElse(0)).sum();
    }

    /**
     * Returns the day by which the work has to begin, if the order has a date and the days of every step are known.
     *
     * @return the day
     */
    public Optional<LocalDate> start() {
        return steps.isEmpty() ? Optional.empty() : steps.get(0).start();
    }

    /**
     * Returns the days of all steps in words.
     *
     * @return for example {@code 33 days}, or how many there are at least
     */
    public String inDays() {
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
