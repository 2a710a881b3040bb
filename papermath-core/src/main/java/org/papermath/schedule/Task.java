package org.papermath.schedule;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/**
 * A piece of work: phases in their order, what it waits for, and dates it has to keep. Immutable.
 *
 * <pre>{@code
 * Task.of("form post 3")
 *         .group("harbour cards")
 *         .phase(Phase.handsOn("form", Duration.ofMinutes(60)).holding("person", 1).holding("vat", 1))
 *         .after("beat load 1", Duration.ZERO, Duration.ofDays(3)) // stuff no older than three days
 *         .build();
 * }</pre>
 *
 * <p>A phase follows the one before it as soon as working time and what it holds let it. Nothing limits how long it may
 * come after; where that matters, make it a task of its own with a most wait.
 */
public final class Task {
    private final String name;
    private final String group;
    private final String together;
    private final List<Phase> phases;
    private final List<Link> links;
    private final @Nullable LocalDateTime notBefore;
    private final @Nullable LocalDateTime dueBy;
    private final int priority;

    private Task(Builder builder) {
        name = builder.name;
        group = builder.group;
        together = builder.together;
        phases = List.copyOf(builder.phases);
        links = List.copyOf(builder.links);
        notBefore = builder.notBefore;
        dueBy = builder.dueBy;
        priority = builder.priority;
    }

    /** What a task waits for: from the finish of another to its own start. Immutable. */
    public static final class Link {
        private final String after;
        private final Duration least;
        private final @Nullable Duration most;

        private Link(String after, Duration least, @Nullable Duration most) {
            this.after = after;
            this.least = least;
            this.most = most;
        }

        /**
         * Returns the task that is waited for.
         *
         * @return its name
         */
        public String after() {
            return after;
        }

        /**
         * Returns the least time from its finish to the start.
         *
         * @return the duration, 0 or more
         */
        public Duration least() {
            return least;
        }

        /**
         * Returns the most time from its finish to the start.
         *
         * @return the duration; empty if there is no most
         */
        public Optional<Duration> most() {
            return Optional.ofNullable(most);
        }

        long leastMinutes() {
            return Minutes.up(least);
        }

        /** Down to a whole minute, so that it is kept to the second; never if there is none. */
        long mostMinutes() {
            return most == null ? Minutes.NEVER : most.toMinutes();
        }

        /** Returns the link, as {@code after beat load 1, at most 3 d}. */
        @Override
        public String toString() {
            return "after " + after + (least.isZero() ? "" : ", at least " + Minutes.words(leastMinutes()))
                    + (most == null ? "" : ", at most " + Minutes.words(mostMinutes()));
        }
    }

    /**
     * Begins a task.
     *
     * @param name what it is called, unlike any other of the same {@link Workload}
     * @return the builder
     * @throws Refused if the name is empty or cannot be shown
     */
    public static Builder of(String name) {
        Objects.requireNonNull(name, "name");
        return new Builder(Names.check(name, "task"));
    }

    /**
     * Returns a builder that holds all that this one has.
     *
     * @return the builder
     */
    public Builder toBuilder() {
        Builder builder = new Builder(name);
        builder.group = group;
        builder.together = together;
        builder.phases.addAll(phases);
        builder.links.addAll(links);
        builder.notBefore = notBefore;
        builder.dueBy = dueBy;
        builder.priority = priority;
        return builder;
    }

    /**
     * Returns what it is called.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns the batch or order it belongs to.
     *
     * @return the label; empty text if it has none
     */
    public String group() {
        return group;
    }

    /**
     * Returns the name under which its durations are drawn together with those of others.
     *
     * @return the name; empty text if its durations are drawn by themselves
     */
    public String together() {
        return together;
    }

    /**
     * Returns its phases in order.
     *
     * @return an unmodifiable list, of one at least
     */
    public List<Phase> phases() {
        return phases;
    }

    /**
     * Returns what it waits for.
     *
     * @return an unmodifiable list
     */
    public List<Link> links() {
        return links;
    }

    /**
     * Returns the moment it does not begin before.
     *
     * @return the moment, if one was given
     */
    public Optional<LocalDateTime> notBefore() {
        return Optional.ofNullable(notBefore);
    }

    /**
     * Returns the moment by which it has to be done.
     *
     * @return the moment, if one was given
     */
    public Optional<LocalDateTime> dueBy() {
        return Optional.ofNullable(dueBy);
    }

    /**
     * Returns how much it goes before others.
     *
     * @return a number; the higher goes first, 0 where none was given
     */
    public int priority() {
        return priority;
    }

    /** Returns name and phases, as {@code form post 3: form, 1 h hands on; after beat load 1}. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(name).append(": ");
        for (int i = 0; i < phases.size(); i++) {
            text.append(i == 0 ? "" : "; ").append(phases.get(i));
        }
        links.forEach(link -> text.append("; ").append(link));
        return text.toString();
    }

    /** Puts a task together. */
    public static final class Builder {
        private final String name;
        private final List<Phase> phases = new ArrayList<>();
        private final List<Link> links = new ArrayList<>();
        private String group = "";
        private String together = "";
        private @Nullable LocalDateTime notBefore;
        private @Nullable LocalDateTime dueBy;
        private int priority;

        private Builder(String name) {
            this.name = name;
        }

        /**
         * Sets the batch or order it belongs to.
         *
         * @param label any name; a day's list shows it
         * @return this builder
         * @throws Refused if it cannot be shown
         */
        public Builder group(String label) {
            Objects.requireNonNull(label, "label");
            group = Name.check(label, "group of " + name);
            return this;
        }

        /**
         * Sets what its durations go with: tasks of one name take long together or short together, phase by phase, as
         * all beater loads of one furnish do.
         *
         * @param key any name
         * @return this builder
         * @throws Refused if it cannot be shown
         */
        public Builder together(String key) {
            Objects.requireNonNull(key, "key");
            together = Name.check(key, "togetherness of " + name);
            return this;
        }

        /**
         * Adds a phase after those there are.
         *
         * @param next the phase
         * @return this builder
         */
        public Builder phase(Phase next) {
            phases.add(Objects.requireNonNull(next, "next"));
            return this;
        }

        /**
         * Waits for another task to be done.
         *
         * @param task the name of the other
         * @return this builder
         */
        public Builder after(String task) {
            Objects.requireNonNull(task, "task");
            return link(task, Duration.ZERO, null);
        }

        /**
         * Waits for another task to be done, and then for some time.
         *
         * @param task the name of the other
         * @param least the least time from its finish to the start of this, 0 or more
         * @return this builder
         * @throws Refused if the time is below zero
         */
        public Builder after(String task, Duration least) {
            Objects.requireNonNull(task, "task");
            Objects.requireNonNull(least, "least");
            return link(task, least, null);
        }

        /**
         * Waits for another task to be done, and then for some time, and not too long.
         *
         * @param task the name of the other
         * @param least the least time from its finish to the start of this, 0 or more
         * @param most the most time from its finish to the start of this, at least as long
         * @return this builder
         * @throws Refused if the least is below zero or above the most
         */
        public Builder after(String task, Duration least, Duration most) {
            Objects.requireNonNull(task, "task");
            Objects.requireNonNull(least, "least");
            Objects.requireNonNull(most, "most");
            return link(task, least, most);
        }

        private Builder link(String task, Duration least, @Nullable Duration most) {
            Link link = new Link(Names.check(task, "task before " + name), least, most);
            if (least.isNegative() || link.leastMinutes() > link.mostMinutes()) {
                throw Refused.of(
                        "schedule.wait",
                        name + ": it waits for " + task + " at least " + Minutes.words(link.leastMinutes())
                                + (most == null ? "" : " and at most " + Minutes.words(most.toMinutes()))
                                + "; the least must be 0 or more and not above the most, in whole minutes.",
                        "of",
                        name,
                        "after",
                        task,
                        "least",
                        least);
            }
            links.add(link);
            return this;
        }

        /**
         * Sets the moment it does not begin before.
         *
         * @param moment the moment, in whole minutes
         * @return this builder
         * @throws Refused if it is not in whole minutes
         */
        public Builder notBefore(LocalDateTime moment) {
            Minutes.of(moment, "moment");
            notBefore = moment;
            return this;
        }

        /**
         * Sets the moment by which it has to be done. It is wished for, not forced: a timetable says what is late.
         *
         * @param moment the moment, in whole minutes
         * @return this builder
         * @throws Refused if it is not in whole minutes
         */
        public Builder dueBy(LocalDateTime moment) {
            Minutes.of(moment, "moment");
            dueBy = moment;
            return this;
        }

        /**
         * Sets how much it goes before others, where both could be next.
         *
         * @param number the higher goes first; 0 where none is given
         * @return this builder
         */
        public Builder priority(int number) {
            priority = number;
            return this;
        }

        /**
         * Builds the task.
         *
         * @return the task
         * @throws Refused if it has no phase
         */
        public Task build() {
            if (phases.isEmpty()) {
                throw Refused.of(
                        "schedule.no-phase",
                        name + ": the task has no phase, so nothing is done. Add one at least.",
                        "of",
                        name);
            }
            return new Task(this);
        }

        @Override
        public String toString() {
            return "task " + name + ", being put together: " + phases + (links.isEmpty() ? "" : "; " + links);
        }
    }
}
