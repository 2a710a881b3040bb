package org.papermath.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

import org.jspecify.annotations.Nullable;

/**
 * The days of the work, counted backwards from the date of the order. Immutable.
 *
 * <p>Drying, curing and conditioning always have their days; working time is rounded up to whole working days.
 */
public final class Schedule {
    private final List<Step> steps;

    /**
     * One step.
     *
     * @param name the step
     * @param days calendar days it takes
     * @param start the day it begins, if the order has a date
     */
    public record Step(String name, int days, Optional<LocalDate> start) {
        @Override
        public String toString() {
            return name + ", " + days + (days == 1 ? " day" : " days") + start.map(day -> ", from " + day).orElse("");
        }
    }

    private Schedule(List<Step> steps) {
        this.steps = List.copyOf(steps);
    }

    /** Counts backwards; the steps come in the order of the work. */
    static Schedule backwards(List<String> names, List<Integer> days, @Nullable LocalDate due) {
        List<Step> steps = new ArrayList<>();
        LocalDate end = due;
        for (int i = names.size() - 1; i >= 0; i--) {
            LocalDate start = end == null ? null : end.minusDays(days.get(i));
            steps.add(new Step(names.get(i), days.get(i), Optional.ofNullable(start)));
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
     * Returns the calendar days from the first step to the parcel.
     *
     * @return the days
     */
    public int days() {
        return steps.stream().mapToInt(Step::days).sum();
    }

    /**
     * Returns the day by which the work has to begin, if the order has a date.
     *
     * @return the day
     */
    public Optional<LocalDate> start() {
        return steps.isEmpty() ? Optional.empty() : steps.get(0).start();
    }

    @Override
    public String toString() {
        return days() + " days" + start().map(day -> ", from " + day).orElse("");
    }
}
