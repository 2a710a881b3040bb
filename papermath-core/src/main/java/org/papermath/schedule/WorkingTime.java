package org.papermath.schedule;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.papermath.quantity.Refused;

/**
 * When people work: hours of each day of the week, and days off. Immutable; exact to the minute; local time, without
 * zones.
 *
 * <pre>{@code
 * WorkingTime week = WorkingTime.builder()
 *         .on(Set.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY), LocalTime.of(9, 0), LocalTime.of(12, 30))
 *         .on(Set.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY), LocalTime.of(13, 0), LocalTime.of(17, 0))
 *         .off(LocalDate.of(2026, 12, 21), LocalDate.of(2027, 1, 3))
 *         .build();
 * week.plus(LocalDateTime.of(2026, 11, 30, 16, 0), Duration.ofHours(2)); // 2026-12-01T10:00
 * week.isWorked(LocalDate.of(2026, 12, 21)); // false
 * }</pre>
 *
 * <p>The library knows no holidays: every day off is given. A moment is worked from the beginning of a span on and until
 * its end, which is not worked any more.
 */
public final class WorkingTime {
    /** Where {@link #of} lets the day begin. */
    private static final int NINE = 9 * 60;

    private static final int DAY = 24 * 60;

    /** From and to in minutes of the day, in turn, rising; by day of the week. */
    private final Map<DayOfWeek, int[]> spans;
    /** First and last day in turn, as given. */
    private final List<LocalDate> off;

    private WorkingTime(Map<DayOfWeek, int[]> spans, List<LocalDate> off) {
        this.spans = spans;
        this.off = off;
    }

    /**
     * So many hours in one piece on some days of the week, from nine o'clock on, or so much earlier that they end by
     * midnight.
     *
     * @param hours working time of a day, above zero and at most 24 hours, in whole minutes
     * @param days the days of the week that are worked, at least one
     * @return the working time
     * @throws Refused if the hours are out of range, or there is no day
     */
    public static WorkingTime of(Duration hours, Set<DayOfWeek> days) {
        Objects.requireNonNull(hours, "hours");
        Objects.requireNonNull(days, "days");
        long minutes = Minutes.whole(hours, "hours of a working day");
        if (minutes < 1 || minutes > DAY) {
            throw Refused.of(
                    "schedule.hours",
                    "hours of a working day: " + Minutes.words(minutes) + " given; must be above 0 and at most 24 h.",
                    "given",
                    hours);
        }
        int from = (int) Math.min(NINE, DAY - minutes);
        Builder builder = builder();
        for (DayOfWeek day : DayOfWeek.values()) {
            if (days.contains(day)) {
                builder.add(day, from, from + (int) minutes);
            }
        }
        return builder.build();
    }

    /**
     * Begins a working time with no hours and no days off.
     *
     * @return the builder
     */
    public static Builder builder() {
        return new Builder();
    }

    /**
     * Returns a builder that holds all that this one has.
     *
     * @return the builder
     */
    public Builder toBuilder() {
        Builder builder = new Builder();
        spans.forEach((day, hours) -> {
            for (int i = 0; i < hours.length; i += 2) {
                builder.add(day, hours[i], hours[i + 1]);
            }
        });
        builder.off.addAll(off);
        return builder;
    }

    /**
     * Returns whether a day is worked at all.
     *
     * @param day the day
     * @return whether there are hours on it and it is not off
     */
    public boolean isWorked(LocalDate day) {
        return spansOf(day).length > 0;
    }

    /**
     * Returns whether a moment is worked.
     *
     * @param moment the moment
     * @return whether it lies in a span of work; the end of a span does not
     */
    public boolean isWorked(LocalDateTime moment) {
        int[] hours = spansOf(moment.toLocalDate());
        LocalTime time = moment.toLocalTime();
        for (int i = 0; i < hours.length; i += 2) {
            if (!time.isBefore(timeOf(hours[i])) && (hours[i + 1] == DAY || time.isBefore(timeOf(hours[i + 1])))) {
                return true;
            }
        }
        return false;
    }

    private static LocalTime timeOf(int minute) {
        return LocalTime.ofSecondOfDay(minute % DAY * 60L);
    }

    /**
     * Returns the first moment that is worked, from a moment on.
     *
     * @param moment a moment, in whole minutes
     * @return the same moment if it is worked, or the beginning of the next span
     * @throws Refused if the moment is not a whole minute
     */
    public LocalDateTime next(LocalDateTime moment) {
        return Minutes.moment(new Clock(this).next(Minutes.of(moment, "moment")));
    }

    /**
     * Adds working time.
     *
     * @param moment where to begin, in whole minutes
     * @param work how much, not below zero, in whole minutes
     * @return the moment at which so much is done: the end of a span rather than the beginning of the next one; for no
     *     work the moment itself
     * @throws Refused if the moment or the work is not in whole minutes, or the work is below zero
     */
    public LocalDateTime plus(LocalDateTime moment, Duration work) {
        long from = Minutes.of(moment, "moment");
        long minutes = positive(work);
        return minutes == 0 ? moment : Minutes.moment(new Clock(this).after(from, minutes));
    }

    /**
     * Takes working time off: the moment at which to begin, to have done so much by then.
     *
     * @param moment where to end, in whole minutes
     * @param work how much, not below zero, in whole minutes
     * @return the latest moment to begin at, which is worked; for no work the moment itself
     * @throws Refused if the moment or the work is not in whole minutes, or the work is below zero
     */
    public LocalDateTime minus(LocalDateTime moment, Duration work) {
        long to = Minutes.of(moment, "moment");
        long minutes = positive(work);
        return minutes == 0 ? moment : Minutes.moment(new Clock(this).before(to, minutes));
    }

    private static long positive(Duration work) {
        long minutes = Minutes.whole(work, "working time");
        if (minutes < 0) {
            throw Refused.of(
                    "schedule.duration",
                    "working time: " + Minutes.words(minutes)
                            + " given; must be 0 or more. Use plus or minus for the direction.",
                    "of",
                    "working time",
                    "given",
                    work);
        }
        return minutes;
    }

    /**
     * Returns the working time between two moments.
     *
     * @param from the earlier moment, in whole minutes
     * @param to the later moment, in whole minutes
     * @return the working time; zero if {@code to} is not after {@code from}
     * @throws Refused if a moment is not a whole minute
     */
    public Duration between(LocalDateTime from, LocalDateTime to) {
        long first = Minutes.of(from, "from");
        long last = Minutes.of(to, "to");
        return Duration.ofMinutes(last <= first ? 0 : new Clock(this).work(first, last));
    }

    /**
     * Returns the working time of a usual week, without days off.
     *
     * @return the working time
     */
    public Duration week() {
        long minutes = 0;
        for (int[] hours : spans.values()) {
            for (int i = 0; i < hours.length; i += 2) {
                minutes += hours[i + 1] - hours[i];
            }
        }
        return Duration.ofMinutes(minutes);
    }

    /**
     * Returns the working time of the longest day of a usual week.
     *
     * @return the working time
     */
    public Duration longestDay() {
        long most = 0;
        for (int[] hours : spans.values()) {
            long minutes = 0;
            for (int i = 0; i < hours.length; i += 2) {
                minutes += hours[i + 1] - hours[i];
            }
            most = Math.max(most, minutes);
        }
        return Duration.ofMinutes(most);
    }

    /**
     * Returns the hours of a day of the week.
     *
     * @param day the day of the week
     * @return an unmodifiable list of when a span of work begins and when it ends, in turn, rising; midnight at the end
     *     means the end of the day; empty if it is not worked
     */
    public List<LocalTime> hours(DayOfWeek day) {
        List<LocalTime> all = new ArrayList<>();
        for (int minute : spans.getOrDefault(Objects.requireNonNull(day, "day"), new int[0])) {
            all.add(timeOf(minute % DAY));
        }
        return List.copyOf(all);
    }

    /**
     * Returns the days off.
     *
     * @return an unmodifiable list of the first and the last day of each time off, in turn, as given
     */
    public List<LocalDate> daysOff() {
        return off;
    }

    /** From and to in minutes of the day, in turn; none for a day off. */
    int[] spansOf(LocalDate day) {
        for (int i = 0; i < off.size(); i += 2) {
            if (!day.isBefore(off.get(i)) && !day.isAfter(off.get(i + 1))) {
                return new int[0];
            }
        }
        return usualSpansOf(day);
    }

    /** The same, whether it is off or not. */
    int[] usualSpansOf(LocalDate day) {
        int[] hours = spans.get(day.getDayOfWeek());
        return hours == null ? new int[0] : hours;
    }

    /** Returns whether the other has the same hours and days off. */
    @Override
    public boolean equals(Object other) {
        return other instanceof WorkingTime that && toString().equals(that.toString());
    }

    @Override
    public int hashCode() {
        return toString().hashCode();
    }

    /** Returns the hours by day, then the days off, as {@code Monday 09:00-12:30 13:00-17:00; off 2026-12-24}. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        spans.forEach((day, hours) -> {
            text.append(text.length() == 0 ? "" : ", ").append(Minutes.name(day));
            for (int i = 0; i < hours.length; i += 2) {
                text.append(' ').append(clock(hours[i])).append('-').append(clock(hours[i + 1]));
            }
        });
        for (int i = 0; i < off.size(); i += 2) {
            text.append(i == 0 ? "; off " : ", ").append(off.get(i));
            if (!off.get(i).equals(off.get(i + 1))) {
                text.append(" to ").append(off.get(i + 1));
            }
        }
        return text.toString();
    }

    private static String clock(int minute) {
        return minute == DAY ? "24:00" : timeOf(minute).toString();
    }

    /** Puts a working time together. */
    public static final class Builder {
        private final Map<DayOfWeek, List<int[]>> hours = new EnumMap<>(DayOfWeek.class);
        private final List<LocalDate> off = new ArrayList<>();

        private Builder() {}

        /**
         * Adds a span of work to a day of the week.
         *
         * @param day the day of the week
         * @param from when it begins, in whole minutes
         * @param to when it ends, after the beginning; midnight is the end of the day
         * @return this builder
         * @throws Refused if it does not end after it begins, is not in whole minutes, or overlaps another
         */
        public Builder on(DayOfWeek day, LocalTime from, LocalTime to) {
            Objects.requireNonNull(day, "day");
            Objects.requireNonNull(from, "from");
            Objects.requireNonNull(to, "to");
            int first = Minutes.ofDay(from, "from");
            int last = Minutes.ofDay(to, "to");
            return add(day, first, last == 0 ? DAY : last);
        }

        /**
         * Adds a span of work to several days of the week.
         *
         * @param days the days of the week
         * @param from when it begins, in whole minutes
         * @param to when it ends, after the beginning; midnight is the end of the day
         * @return this builder
         * @throws Refused if it does not end after it begins, is not in whole minutes, or overlaps another
         */
        public Builder on(Collection<DayOfWeek> days, LocalTime from, LocalTime to) {
            Objects.requireNonNull(days, "days");
            Objects.requireNonNull(from, "from");
            Objects.requireNonNull(to, "to");
            new TreeSet<>(days).forEach(day -> on(day, from, to));
            return this;
        }

        private Builder add(DayOfWeek day, int from, int to) {
            if (from >= to) {
                throw Refused.of(
                        "schedule.hours",
                        Minutes.name(day) + ": work from " + clock(from) + " to " + clock(to)
                                + " does not end after it begins. Give a night as two spans, to 00:00 and from 00:00.",
                        "given",
                        clock(from) + "-" + clock(to));
            }
            List<int[]> all = hours.computeIfAbsent(day, key -> new ArrayList<>());
            for (int[] span : all) {
                if (from < span[1] && span[0] < to) {
                    throw Refused.of(
                            "schedule.hours",
                            Minutes.name(day) + ": work from " + clock(from) + " to " + clock(to)
                                    + " overlaps that from " + clock(span[0]) + " to " + clock(span[1])
                                    + ". Give each hour once.",
                            "given",
                            clock(from) + "-" + clock(to));
                }
            }
            all.add(new int[] {from, to});
            all.sort((a, b) -> Integer.compare(a[0], b[0]));
            return this;
        }

        /**
         * Takes a day off.
         *
         * @param day the day
         * @return this builder
         */
        public Builder off(LocalDate day) {
            Objects.requireNonNull(day, "day");
            return off(day, day);
        }

        /**
         * Takes some days off.
         *
         * @param from the first day off
         * @param to the last day off
         * @return this builder
         * @throws Refused if the last is before the first
         */
        public Builder off(LocalDate from, LocalDate to) {
            Objects.requireNonNull(from, "from");
            Objects.requireNonNull(to, "to");
            if (to.isBefore(from)) {
                throw Refused.of(
                        "schedule.days-off",
                        "days off: from " + from + " to " + to + " ends before it begins. Give the earlier day first.",
                        "from",
                        from,
                        "to",
                        to);
            }
            off.add(from);
            off.add(to);
            return this;
        }

        /**
         * Builds the working time.
         *
         * @return the working time
         * @throws Refused if no day of the week has hours
         */
        public WorkingTime build() {
            if (hours.isEmpty()) {
                throw Refused.of(
                        "schedule.no-working-time",
                        "working time: no day of the week has hours, so nothing would ever be done. Give one at least.");
            }
            Map<DayOfWeek, int[]> spans = new EnumMap<>(DayOfWeek.class);
            hours.forEach((day, all) -> {
                int[] flat = new int[2 * all.size()];
                for (int i = 0; i < all.size(); i++) {
                    flat[2 * i] = all.get(i)[0];
                    flat[2 * i + 1] = all.get(i)[1];
                }
                spans.put(day, flat);
            });
            return new WorkingTime(spans, List.copyOf(off));
        }

        @Override
        public String toString() {
            return "working time, being put together: " + hours.keySet() + (off.isEmpty() ? "" : ", with days off");
        }
    }
}
