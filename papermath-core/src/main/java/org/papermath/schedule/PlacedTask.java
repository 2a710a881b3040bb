package org.papermath.schedule;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/** When a task is done. Immutable. */
public final class PlacedTask {
    private final Task task;
    private final List<PlacedPhase> phases;

    PlacedTask(Task task, List<PlacedPhase> phases) {
        this.task = task;
        this.phases = phases;
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
     * Returns its phases in order.
     *
     * @return an unmodifiable list, of one at least
     */
    public List<PlacedPhase> phases() {
        return phases;
    }

    /**
     * Returns when it begins.
     *
     * @return the start; empty if it hangs on something of which it is not known how long it takes
     */
    public Optional<LocalDateTime> start() {
        return phases.get(0).start();
    }

    /**
     * Returns when it is done.
     *
     * @return the finish; empty if it hangs on something of which it is not known how long it takes
     */
    public Optional<LocalDateTime> finish() {
        return phases.get(phases.size() - 1).finish();
    }

    /**
     * Returns by how much it is later than it is due.
     *
     * @return the duration; empty if it is in time, not due at all, or not known
     */
    public Optional<Duration> late() {
        return finish().flatMap(done -> task.dueBy().map(due -> Duration.between(due, done)))
                .filter(by -> !by.isNegative() && !by.isZero());
    }

    /** Returns name, start and finish, as {@code beat: 2026-11-30 09:00 to 2026-11-30 12:00}. */
    @Override
    public String toString() {
        return task.name() + ": " + PlacedPhase.words(start(), finish());
    }
}
