package org.papermath.schedule;

import java.time.LocalDateTime;

/** A phase of the longest chain of a timetable, with what it waited for: why it did not begin sooner. Immutable. */
public final class ChainLink {
    /** What a phase waited for. */
    public enum Reason {
        /** For the day on which all of it begins. */
        BEGINNING("the beginning"),
        /** For the date it is not to begin before. */
        NOT_BEFORE("its own date"),
        /** For what has to be done before it. */
        WORK_BEFORE("the work before it"),
        /** For a resource that another phase held. */
        RESOURCE("a resource"),
        /** For what comes after it and must not wait too long. */
        KEPT_BACK("what comes after it");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        /**
         * Returns the reason in words.
         *
         * @return a few words
         */
        public String words() {
            return words;
        }
    }

    private final String task;
    private final PlacedPhase phase;
    private final Reason reason;
    private final String of;

    ChainLink(String task, PlacedPhase phase, Reason reason, String of) {
        this.task = task;
        this.phase = phase;
        this.reason = reason;
        this.of = of;
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
     * Returns the phase and its times.
     *
     * @return the phase
     */
    public PlacedPhase phase() {
        return phase;
    }

    /**
     * Returns why it did not begin sooner. Besides, all work by hand waits for working time.
     *
     * @return the reason
     */
    public Reason reason() {
        return reason;
    }

    /**
     * Returns what it waited for.
     *
     * @return the name of the resource or of the task; empty text where there is none
     */
    public String of() {
        return of;
    }

    LocalDateTime from() {
        return phase.start().orElseThrow();
    }

    /** Returns a line, as {@code beat load 2, beat: from 2026-12-01 09:00, after beater was free}. */
    @Override
    public String toString() {
        String why = switch (reason) {
            case BEGINNING -> "at once";
            case NOT_BEFORE -> "not before its date";
            case WORK_BEFORE -> "after " + of;
            case RESOURCE -> "when " + of + " was free";
            case KEPT_BACK -> "kept back for " + of;
        };
        return task + ", " + phase.phase().name() + ": from " + Minutes.words(from()) + ", " + why;
    }
}
