package org.papermath.schedule;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.papermath.quantity.Refused;
import org.papermath.text.EditDistance;

/**
 * What is to be done and with what: tasks, the resources they share, and when people work. Immutable; all that cannot be
 * is refused when it is built.
 *
 * <pre>{@code
 * Workload work = Workload.in(WorkingTime.of(Duration.ofHours(6), EnumSet.allOf(DayOfWeek.class)))
 *         .resource(Resource.of("person", 1))
 *         .task(Task.of("soak").phase(Phase.waiting("soak", Duration.ofHours(12))).build())
 *         .task(Task.of("beat")
 *                 .phase(Phase.handsOn("beat", Duration.ofHours(3)).holding("person", 1))
 *                 .after("soak")
 *                 .build())
 *         .build();
 * Timetable.from(work, LocalDateTime.of(2026, 11, 30, 9, 0)).finish().orElseThrow(); // 2026-12-01T12:00
 * }</pre>
 */
public final class Workload {
    private final WorkingTime workingTime;
    private final Map<String, Resource> resources;
    private final Map<String, Task> tasks;
    private final Shop shop;
    private final boolean inOrderOfTime;

    private Workload(
            WorkingTime workingTime, Map<String, Resource> resources, Map<String, Task> tasks, boolean inOrderOfTime) {
        this.inOrderOfTime = inOrderOfTime;
        this.workingTime = workingTime;
        this.resources = resources;
        this.tasks = tasks;
        checkLinks(tasks);
        checkHeld(workingTime, resources, tasks.values());
        shop = new Shop(this);
        Network.check(shop);
    }

    private static void checkLinks(Map<String, Task> tasks) {
        for (Task task : tasks.values()) {
            for (Task.Link link : task.links()) {
                if (!tasks.containsKey(link.after())) {
                    throw unknown(task.name(), "task", link.after(), tasks.keySet());
                }
            }
        }
    }

    static Refused unknown(String of, String what, String name, Collection<String> known) {
        String nearest = "";
        int least = Integer.MAX_VALUE;
        for (String one : known) {
            int apart = EditDistance.between(name, one);
            if (apart < least) {
                least = apart;
                nearest = one;
            }
        }
        return Refused.of(
                "schedule.unknown",
                of + ": there is no " + what + " \"" + name + "\""
                        + (nearest.isEmpty() ? "" : "; the nearest is \"" + nearest + "\"")
                        + ". Add it, or name another.",
                "of",
                of,
                "given",
                name,
                "nearest",
                nearest);
    }

    private static void checkHeld(WorkingTime time, Map<String, Resource> resources, Collection<Task> tasks) {
        long longest = Clock.longestStretch(time);
        for (Task task : tasks) {
            for (Phase phase : task.phases()) {
                String of = task.name() + ", " + phase.name();
                phase.held().forEach((name, count) -> {
                    Resource resource = resources.get(name);
                    if (resource == null) {
                        throw unknown(of, "resource", name, resources.keySet());
                    }
                    if (count > resource.count()) {
                        throw Refused.of(
                                "schedule.not-enough",
                                of + ": it holds " + count + " " + name + ", and there are only " + resource.count()
                                        + ". Part the work, or give more.",
                                "of",
                                of,
                                "resource",
                                name,
                                "given",
                                count,
                                "most",
                                resource.count());
                    }
                });
                if (phase.isInWorkingTime() && !phase.isBreakable() && phase.minutes() > longest) {
                    throw Refused.of(
                            "schedule.longer-than-a-day",
                            of + ": it takes " + Minutes.words(phase.minutes())
                                    + " in one piece, and the longest day has " + Minutes.words(longest)
                                    + ". Part it, let it be broken, or work longer.",
                            "of",
                            of,
                            "given",
                            Minutes.words(phase.minutes()),
                            "most",
                            Minutes.words(longest));
                }
            }
        }
    }

    /**
     * Begins a workload.
     *
     * @param workingTime when people work
     * @return the builder
     */
    public static Builder in(WorkingTime workingTime) {
        return new Builder(Objects.requireNonNull(workingTime, "workingTime"));
    }

    /**
     * Returns the same work with another count of a resource, or with one more resource.
     *
     * @param resource the resource; in place of the one of the same name
     * @return the workload
     * @throws Refused if a task holds more of it than there then are
     */
    public Workload with(Resource resource) {
        Map<String, Resource> more = new LinkedHashMap<>(resources);
        more.put(resource.name(), resource);
        return new Workload(workingTime, more, tasks, inOrderOfTime);
    }

    /**
     * Returns the same work in other working time.
     *
     * @param other when people work
     * @return the workload
     * @throws Refused if work that may not be broken is longer than the longest day
     */
    public Workload with(WorkingTime other) {
        return new Workload(Objects.requireNonNull(other, "other"), resources, tasks, inOrderOfTime);
    }

    /**
     * Returns when people work.
     *
     * @return the working time
     */
    public WorkingTime workingTime() {
        return workingTime;
    }

    boolean isInOrderOfTime() {
        return inOrderOfTime;
    }

    /**
     * Returns the resources.
     *
     * @return an unmodifiable list, in the order given
     */
    public List<Resource> resources() {
        return List.copyOf(resources.values());
    }

    /**
     * Returns the tasks.
     *
     * @return an unmodifiable list, in the order given
     */
    public List<Task> tasks() {
        return List.copyOf(tasks.values());
    }

    /**
     * Returns a task.
     *
     * @param name its name
     * @return the task
     * @throws Refused if there is none of the name
     */
    public Task task(String name) {
        Task task = tasks.get(name);
        if (task == null) {
            throw unknown("workload", "task", name, tasks.keySet());
        }
        return task;
    }

    /**
     * Returns a resource.
     *
     * @param name its name
     * @return the resource
     * @throws Refused if there is none of the name
     */
    public Resource resource(String name) {
        Resource resource = resources.get(name);
        if (resource == null) {
            throw unknown("workload", "resource", name, resources.keySet());
        }
        return resource;
    }

    Shop shop() {
        return shop;
    }

    /** Returns the counts and the working time, as {@code 12 tasks with 1 person, 1 vat; Monday 09:00-15:00}. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder().append(tasks.size()).append(tasks.size() == 1 ? " task" : " tasks");
        String before = " with ";
        for (Resource resource : resources.values()) {
            text.append(before).append(resource);
            before = ", ";
        }
        return text.append("; ").append(workingTime).toString();
    }

    /** Puts a workload together. */
    public static final class Builder {
        private final WorkingTime workingTime;
        private final Map<String, Resource> resources = new LinkedHashMap<>();
        private final Map<String, Task> tasks = new LinkedHashMap<>();

        private boolean inOrderOfTime;

        private Builder(WorkingTime workingTime) {
            this.workingTime = workingTime;
        }

        /**
         * Adds a resource.
         *
         * @param one the resource
         * @return this builder
         * @throws Refused if there is one of the name
         */
        public Builder resource(Resource one) {
            Objects.requireNonNull(one, "one");
            if (resources.putIfAbsent(one.name(), one) != null) {
                throw twice("resource", one.name());
            }
            return this;
        }

        /**
         * Adds a task.
         *
         * @param one the task; those it waits for may be added later
         * @return this builder
         * @throws Refused if there is one of the name
         */
        public Builder task(Task one) {
            Objects.requireNonNull(one, "one");
            if (tasks.putIfAbsent(one.name(), one) != null) {
                throw twice("task", one.name());
            }
            return this;
        }

        /**
         * Adds tasks.
         *
         * @param more the tasks
         * @return this builder
         * @throws Refused if there is one of a name
         */
        public Builder tasks(Collection<Task> more) {
            Objects.requireNonNull(more, "more");
            more.forEach(this::task);
            return this;
        }

        private static Refused twice(String what, String name) {
            return Refused.of(
                    "schedule.twice",
                    what + " \"" + name + "\" is given twice. Give each a name of its own.",
                    "of",
                    what,
                    "given",
                    name);
        }

        /**
         * Has the tasks placed once, in the order of time: always the one that could begin first, of those that could begin
         * together the one that may wait the least, then the one given first. That is quick, reads as people work, and does
         * well where tasks are held back from piling up; nothing is tried to be done sooner.
         *
         * @return this builder
         */
        public Builder inOrderOfTime() {
            inOrderOfTime = true;
            return this;
        }

        /**
         * Builds the workload.
         *
         * @return the workload
         * @throws Refused if there is no task, one waits for what there is not or for itself, longest waits cannot be
         *     kept by any timetable, more is held than there is, or work in one piece is longer than the longest day
         */
        public Workload build() {
            if (tasks.isEmpty()) {
                throw Refused.of("schedule.no-task", "workload: there is no task. Add one at least.");
            }
            return new Workload(workingTime, new LinkedHashMap<>(resources), new LinkedHashMap<>(tasks), inOrderOfTime);
        }

        @Override
        public String toString() {
            return "workload, being put together: tasks " + tasks.keySet() + ", resources " + resources.keySet();
        }
    }
}
