package org.papermath.schedule;

import java.time.Duration;

/** A longest wait that no timetable that was found keeps. Immutable. */
public final class BrokenWait {
    private final String task;
    private final String after;
    private final long waited;
    private final long most;

    BrokenWait(String task, String after, long waited, long most) {
        this.task = task;
        this.after = after;
        this.waited = waited;
        this.most = most;
    }

    /**
     * Returns the task that begins too late.
     *
     * @return its name
     */
    public String task() {
        return task;
    }

    /**
     * Returns the task that it waits for.
     *
     * @return its name
     */
    public String after() {
        return after;
    }

    /**
     * Returns how long it waits.
     *
     * @return the time from the finish of the one to the start of the other
     */
    public Duration waited() {
        return Duration.ofMinutes(waited);
    }

    /**
     * Returns how long it was to wait at most.
     *
     * @return the duration
     */
    public Duration most() {
        return Duration.ofMinutes(most);
    }

    /** Returns a sentence, as {@code form begins 3 d 16 h after beat; at most 3 d were wanted}. */
    @Override
    public String toString() {
        return task + " begins " + Minutes.words(waited) + " after " + after + "; at most " + Minutes.words(most)
                + " were wanted";
    }
}
