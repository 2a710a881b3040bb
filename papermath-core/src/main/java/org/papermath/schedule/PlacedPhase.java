package org.papermath.schedule;

import java.time.LocalDateTime;
import java.util.Optional;

/** When a phase of a task goes on. Immutable. */
public final class PlacedPhase {
    private final Phase phase;
    private final long start;
    private final long finish;

    PlacedPhase(Phase phase, long start, long finish) {
        this.phase = phase;
        this.start = start;
        this.finish = finish;
    }

    /**
     * Returns the phase.
     *
     * @return the phase as given
     */
    public Phase phase() {
        return phase;
    }

    /**
     * Returns when it begins.
     *
     * @return the start; empty if it is not known
     */
    public Optional<LocalDateTime> start() {
        return moment(start);
    }

    /**
     * Returns when it ends.
     *
     * @return the finish; empty if it is not known
     */
    public Optional<LocalDateTime> finish() {
        return moment(finish);
    }

    private static Optional<LocalDateTime> moment(long minutes) {
        return Placement.isKnown(minutes) ? Optional.of(Minutes.moment(minutes)) : Optional.empty();
    }

    static String words(Optional<LocalDateTime> start, Optional<LocalDateTime> finish) {
        return start.map(Minutes::words).orElse("not known when") + " to "
                + finish.map(Minutes::words).orElse("not known when");
    }

    /** Returns name, start and finish, as {@code form: 2026-11-30 09:00 to 2026-11-30 10:30}. */
    @Override
    public String toString() {
        return phase.name() + ": " + words(start(), finish());
    }
}
