package org.papermath.schedule;

import java.time.Duration;
import java.util.Objects;
import org.papermath.text.Digits;

/** How much a resource holds a timetable up. Immutable. */
public final class NarrowPlace {
    private final Timetable timetable;
    private final Resource resource;
    private final double busy;
    private final long onChain;

    NarrowPlace(Timetable timetable, Resource resource, double busy, long onChain) {
        this.timetable = timetable;
        this.resource = resource;
        this.busy = busy;
        this.onChain = onChain;
    }

    /**
     * Returns the resource.
     *
     * @return the resource as given
     */
    public Resource resource() {
        return resource;
    }

    /**
     * Returns the share of the working time, from the first start to the last finish, in which it is held, over all there
     * are of it.
     *
     * @return from 0 to 1
     */
    public double busy() {
        return busy;
    }

    /**
     * Returns how long phases on the longest chain held it while the next one waited for it.
     *
     * @return the time, from their starts to their finishes
     */
    public Duration onChain() {
        return Duration.ofMinutes(onChain);
    }

    /**
     * Returns the timetable with one more of it: scheduled again from the same start.
     *
     * @return the timetable, in which nothing is done later than in this one as a whole
     */
    public Timetable withOneMore() {
        return timetable.withOneMore(resource.name());
    }

    /**
     * Returns how much sooner everything is done with one more of it.
     *
     * @return the time saved; zero if none
     */
    public Duration saved() {
        Duration now = timetable.forwardSpan();
        return now.minus(Objects.requireNonNull(withOneMore()).forwardSpan());
    }

    /** Returns the resource and its shares, as {@code 1 beater: busy 92.5 % of the working time, 3 d 4 h on the chain}. */
    @Override
    public String toString() {
        return resource + ": busy " + Digits.percent(busy) + " of the working time, " + Minutes.words(onChain)
                + " on the longest chain";
    }
}
