package org.papermath.schedule;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;

/** What there is to do on a day. Immutable. */
public final class Day {
    private static final int DAY = 24 * 60;

    private final LocalDate date;
    private final List<Entry> entries;

    private Day(LocalDate date, List<Entry> entries) {
        this.date = date;
        this.entries = entries;
    }

    static List<Day> of(Shop shop, Placement found) {
        Clock clock = new Clock(shop.work.workingTime());
        TreeMap<Long, List<Entry>> byDay = new TreeMap<>();
        for (int p = 0; p < shop.phases.length; p++) {
            // What takes no time is nothing to do.
            if (!Placement.isKnown(found.start[p])
                    || !Placement.isKnown(found.finish[p])
                    || found.start[p] == found.finish[p]) {
                continue;
            }
            Phase phase = shop.phases[p];
            long[] spans = spans(clock, phase, found.start[p], found.finish[p]);
            for (int i = 0; i < spans.length; i += 2) {
                long day = Math.floorDiv(spans[i], (long) DAY);
                byDay.computeIfAbsent(day, key -> new ArrayList<>())
                        .add(new Entry(
                                shop.tasks[shop.taskOf[p]],
                                phase,
                                spans[i],
                                spans[i + 1],
                                i / 2 + 1,
                                spans.length / 2,
                                !phase.isInWorkingTime() && Math.floorDiv(spans[i + 1] - 1, (long) DAY) > day));
            }
        }
        List<Day> days = new ArrayList<>();
        byDay.forEach((day, entries) -> {
            entries.sort(Comparator.comparingLong(entry -> entry.from));
            days.add(new Day(LocalDate.ofEpochDay(day), List.copyOf(entries)));
        });
        return List.copyOf(days);
    }

    /** Where a phase goes on: from and to in turn; one piece a day for work that rests overnight. */
    static long[] spans(Clock clock, Phase phase, long start, long finish) {
        if (!phase.isInWorkingTime() || finish <= start) {
            return new long[] {start, finish};
        }
        long[] worked = clock.spansBetween(start, finish);
        long[] joined = new long[worked.length];
        int n = 0;
        for (int i = 0; i < worked.length; i += 2) {
            if (n > 0 && Math.floorDiv(joined[n - 2], (long) DAY) == Math.floorDiv(worked[i], (long) DAY)) {
                joined[n - 1] = worked[i + 1];
            } else {
                joined[n++] = worked[i];
                joined[n++] = worked[i + 1];
            }
        }
        return Arrays.copyOf(joined, n);
    }

    /** Something to do on a day. Immutable. */
    public static final class Entry {
        private final Task task;
        private final Phase phase;
        private final long from;
        private final long to;
        private final int part;
        private final int parts;
        private final boolean overnight;

        private Entry(Task task, Phase phase, long from, long to, int part, int parts, boolean overnight) {
            this.task = task;
            this.phase = phase;
            this.from = from;
            this.to = to;
            this.part = part;
            this.parts = parts;
            this.overnight = overnight;
        }

        /**
         * Returns the task.
         *
         * @return the task as given
         */
        public Task task() {
            return task;
        }

        /**
         * Returns the phase of the task.
         *
         * @return the phase as given
         */
        public Phase phase() {
            return phase;
        }

        /**
         * Returns when it begins on this day.
         *
         * @return the moment
         */
        public LocalDateTime from() {
            return Minutes.moment(from);
        }

        /**
         * Returns when it ends: on this day for work by hand, with the breaks of the day in it; else whenever it does.
         *
         * @return the moment
         */
        public LocalDateTime to() {
            return Minutes.moment(to);
        }

        /**
         * Returns which part of the phase it is, if that is broken overnight.
         *
         * @return the number of the part, from 1
         */
        public int part() {
            return part;
        }

        /**
         * Returns into how many parts the phase is broken.
         *
         * @return the count, 1 if it is not broken
         */
        public int parts() {
            return parts;
        }

        /**
         * Returns whether it goes on by itself past midnight: it has to be started this day.
         *
         * @return whether it does
         */
        public boolean isOvernight() {
            return overnight;
        }

        String words() {
            return task.name()
                    + (phase.name().equals(task.name()) ? "" : ": " + phase.name())
                    + (parts > 1 ? ", part " + part + " of " + parts : "")
                    + (task.group().isEmpty() ? "" : " (" + task.group() + ")");
        }

        /** Returns times and words, as {@code 09:00-10:30 post 3: form (harbour cards)}. */
        @Override
        public String toString() {
            return from().toLocalTime()
                    + (overnight ? " " : "-" + to().toLocalTime() + " ")
                    + words()
                    + (overnight ? ", until " + Minutes.words(to()) : "");
        }
    }

    /**
     * Returns the day.
     *
     * @return the date
     */
    public LocalDate date() {
        return date;
    }

    /**
     * Returns what there is to do.
     *
     * @return an unmodifiable list by the time of day, of one at least
     */
    public List<Entry> entries() {
        return entries;
    }

    /**
     * Returns what has to be started this day and then goes on by itself past midnight.
     *
     * @return an unmodifiable list by the time of day; empty if there is nothing
     */
    public List<Entry> tonight() {
        return entries.stream().filter(Entry::isOvernight).toList();
    }

    /** Returns the day and how much there is, as {@code Monday 2026-11-30, 5 entries}. */
    @Override
    public String toString() {
        return Minutes.name(date.getDayOfWeek()) + " " + date + ", " + entries.size()
                + (entries.size() == 1 ? " entry" : " entries");
    }
}
