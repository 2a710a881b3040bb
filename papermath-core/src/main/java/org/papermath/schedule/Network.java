package org.papermath.schedule;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.papermath.quantity.Refused;

/**
 * The critical path: when each task could begin and would have to, if there were enough of everything and work went on day
 * and night. Immutable.
 *
 * <p>It counts the likely durations of the phases one after the other and the least waits of the links; working time,
 * resources, fixed dates and longest waits are left to the {@link Timetable}. A task with no slack is critical: each
 * delay of it delays the whole.
 *
 * @source the critical path method of J. E. Kelley and M. R. Walker, 1959, as printed in textbooks
 */
public final class Network {
    private final Map<String, Times> times;
    private final long length;

    private Network(Map<String, Times> times, long length) {
        this.times = times;
        this.length = length;
    }

    /** When a task could begin and end, and would have to, from the beginning of the whole on. Immutable. */
    public static final class Times {
        private final String task;
        private final long earliestStart;
        private final long duration;
        private final long latestStart;
        private final long freeSlack;

        private Times(String task, long earliestStart, long duration, long latestStart, long freeSlack) {
            this.task = task;
            this.earliestStart = earliestStart;
            this.duration = duration;
            this.latestStart = latestStart;
            this.freeSlack = freeSlack;
        }

        /**
         * Returns the task.
         *
         * @return its name
         */
        public String task() {
            return task;
        }

        /**
         * Returns how long it takes, all its phases.
         *
         * @return the duration
         */
        public Duration duration() {
            return Duration.ofMinutes(duration);
        }

        /**
         * Returns the earliest start.
         *
         * @return the time from the beginning of the whole
         */
        public Duration earliestStart() {
            return Duration.ofMinutes(earliestStart);
        }

        /**
         * Returns the earliest finish.
         *
         * @return the time from the beginning of the whole
         */
        public Duration earliestFinish() {
            return Duration.ofMinutes(earliestStart + duration);
        }

        /**
         * Returns the latest start that delays nothing of the whole.
         *
         * @return the time from the beginning of the whole
         */
        public Duration latestStart() {
            return Duration.ofMinutes(latestStart);
        }

        /**
         * Returns the latest finish that delays nothing of the whole.
         *
         * @return the time from the beginning of the whole
         */
        public Duration latestFinish() {
            return Duration.ofMinutes(latestStart + duration);
        }

        /**
         * Returns how much later it may begin without a delay of the whole.
         *
         * @return the total slack
         */
        public Duration slack() {
            return Duration.ofMinutes(latestStart - earliestStart);
        }

        /**
         * Returns how much later it may begin without a delay of any other task.
         *
         * @return the free slack, at most the total slack
         */
        public Duration freeSlack() {
            return Duration.ofMinutes(freeSlack);
        }

        /**
         * Returns whether each delay of it delays the whole.
         *
         * @return whether it has no slack
         */
        public boolean isCritical() {
            return latestStart == earliestStart;
        }

        /** Returns the earliest start and the slack, as {@code beat: from 12 h on, slack 3 h}. */
        @Override
        public String toString() {
            return task + ": from " + Minutes.words(earliestStart) + " on, slack "
                    + Minutes.words(latestStart - earliestStart);
        }
    }

    /**
     * Works out the critical path.
     *
     * @param work the tasks
     * @return the network
     * @throws Refused if it is not known how long a phase takes
     */
    public static Network of(Workload work) {
        Objects.requireNonNull(work, "work");
        Shop shop = work.shop();
        int n = shop.tasks.length;
        long[] duration = new long[n];
        for (int p = 0; p < shop.phases.length; p++) {
            if (shop.minutes[p] < 0) {
                String of = shop.tasks[shop.taskOf[p]].name() + ", " + shop.phases[p].name();
                throw Refused.of(
                        "schedule.unknown-duration",
                        of + ": it is not known how long it takes, and a critical path needs all durations."
                                + " Give one, or ask for a timetable, which leaves open what depends on it.",
                        "of",
                        of);
            }
            duration[shop.taskOf[p]] += shop.minutes[p];
        }
        long[] early = earliest(shop, duration);
        long length = 0;
        for (int i = 0; i < n; i++) {
            length = Math.max(length, early[i] + duration[i]);
        }
        long[] late = new long[n];
        long[] free = new long[n];
        for (int at = n - 1; at >= 0; at--) {
            int i = shop.order[at];
            late[i] = length - duration[i];
            free[i] = late[i] - early[i];
            for (int link : shop.out[i]) {
                late[i] = Math.min(late[i], late[shop.to[link]] - shop.least[link] - duration[i]);
                free[i] = Math.min(free[i], early[shop.to[link]] - shop.least[link] - duration[i] - early[i]);
            }
        }
        Map<String, Times> times = new LinkedHashMap<>();
        for (int i = 0; i < n; i++) {
            times.put(shop.tasks[i].name(), new Times(shop.tasks[i].name(), early[i], duration[i], late[i], free[i]));
        }
        return new Network(times, length);
    }

    private static long[] earliest(Shop shop, long[] duration) {
        long[] early = new long[shop.tasks.length];
        for (int i : shop.order) {
            for (int link : shop.in[i]) {
                int before = shop.from[link];
                early[i] = Math.max(early[i], early[before] + duration[before] + shop.least[link]);
            }
        }
        return early;
    }

    /** Refuses longest waits that what lies between is longer than, however much there is of everything. */
    static void check(Shop shop) {
        long[] duration = new long[shop.tasks.length];
        for (int p = 0; p < shop.phases.length; p++) {
            duration[shop.taskOf[p]] += Math.max(0, shop.minutes[p]);
        }
        for (int link = 0; link < shop.to.length; link++) {
            if (shop.most[link] == Minutes.NEVER) {
                continue;
            }
            // The longest way from the one to the other through others.
            long[] way = new long[shop.tasks.length];
            Arrays.fill(way, -1);
            way[shop.from[link]] = 0;
            for (int i : shop.order) {
                for (int step : shop.in[i]) {
                    int before = shop.from[step];
                    if (way[before] >= 0) {
                        long through = before == shop.from[link] ? 0 : duration[before];
                        way[i] = Math.max(way[i], way[before] + through + shop.least[step]);
                    }
                }
            }
            if (way[shop.to[link]] > shop.most[link]) {
                String of = shop.tasks[shop.to[link]].name();
                String after = shop.tasks[shop.from[link]].name();
                throw Refused.of(
                        "schedule.wait-too-short",
                        of + ": it is to begin at most " + Minutes.words(shop.most[link]) + " after " + after
                                + ", and what has to be done between them takes "
                                + Minutes.words(way[shop.to[link]]) + ". Give more time, or take a wait out.",
                        "of",
                        of,
                        "after",
                        after,
                        "most",
                        Minutes.words(shop.most[link]),
                        "least",
                        Minutes.words(way[shop.to[link]]));
            }
        }
    }

    /**
     * Returns how long the whole takes.
     *
     * @return the length of the critical path
     */
    public Duration duration() {
        return Duration.ofMinutes(length);
    }

    /**
     * Returns the times of all tasks.
     *
     * @return an unmodifiable list, in the order in which the tasks were given
     */
    public List<Times> times() {
        return List.copyOf(times.values());
    }

    /**
     * Returns the times of a task.
     *
     * @param task its name
     * @return the times
     * @throws Refused if there is no such task
     */
    public Times times(String task) {
        Times found = times.get(task);
        if (found == null) {
            throw Workload.unknown("network", "task", task, times.keySet());
        }
        return found;
    }

    /**
     * Returns the critical tasks.
     *
     * @return their names by earliest start; of several critical paths those of all
     */
    public List<String> criticalPath() {
        List<Times> critical = new ArrayList<>(
                times.values().stream().filter(Times::isCritical).toList());
        critical.sort((a, b) -> Long.compare(a.earliestStart, b.earliestStart));
        return critical.stream().map(Times::task).toList();
    }

    /** Returns length and path, as {@code 20 min: A, D, G}. */
    @Override
    public String toString() {
        return Minutes.words(length) + ": " + String.join(", ", criticalPath());
    }
}
