package org.papermath.plan;

import java.time.Duration;

/** How much sooner an order is done with more of something. Immutable. */
public final class OneMore {
    private final String what;
    private final Duration sooner;

    OneMore(String what, Duration sooner) {
        this.what = what;
        this.sooner = sooner;
    }

    /** {@return what there is more of, for example {@code another person} or {@code ten more felts}} */
    public String what() {
        return what;
    }

    /** {@return how much sooner all is done, begun on the same day; never below zero} */
    public Duration sooner() {
        return sooner;
    }

    @Override
    public String toString() {
        long days = sooner.toDays();
        return what + ": "
                + (sooner.isZero()
                        ? "no sooner"
                        : days > 0
                                ? days + (days == 1 ? " day sooner" : " days sooner")
                                : Math.max(1, sooner.toHours()) + " h sooner");
    }
}
