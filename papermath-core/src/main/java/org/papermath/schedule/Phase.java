package org.papermath.schedule;

import java.time.Duration;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Refused;

/**
 * A part of a {@link Task} that goes on in one way: by hand, in a machine, or by waiting. Immutable.
 *
 * <pre>{@code
 * Phase.handsOn("form", Duration.ofMinutes(90)).holding("person", 1).holding("vat", 1).holding("felts", 20);
 * Phase.machine("press", Duration.ofMinutes(30)).unattended().holding("press", 1).holding("felts", 20);
 * Phase.waiting("dry").between(Duration.ofHours(20), Duration.ofHours(60)).likely().isPresent(); // false
 * }</pre>
 *
 * <p>How it goes on by kind:
 *
 * <ul>
 *   <li>Work by hand goes on in working time only. It rests in the breaks of a day; overnight only if it
 *       {@linkplain #breakable() may be broken}, and otherwise begins and ends on one day.
 *   <li>A machine that is watched goes on like work by hand; one that runs {@linkplain #unattended() unattended} begins
 *       in working time, since somebody starts it, and then runs on day and night.
 *   <li>Waiting begins as soon as what is before it is done and goes on day and night; what {@linkplain #pausing() pauses}
 *       goes on in working time only.
 * </ul>
 *
 * <p>What a phase holds it holds from its start to its finish, breaks and nights between them too; what the phase after it
 * of the same task holds as well stays held between the two. Durations count in whole minutes; a part of one counts as
 * a whole one.
 */
public final class Phase {
    /** How a phase goes on. */
    public enum Kind {
        /** People work, in working time. */
        HANDS_ON,
        /** A machine runs. */
        MACHINE,
        /** Time passes: soaking, drying, curing. */
        WAITING;

        /**
         * Returns the kind in words.
         *
         * @return one or two words
         */
        public String words() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    private final String name;
    private final Kind kind;
    private final @Nullable Duration likely;
    private final @Nullable Duration low;
    private final @Nullable Duration high;
    private final boolean unattended;
    private final boolean breakable;
    private final boolean pausing;
    private final Map<String, Integer> held;

    private Phase(
            String name,
            Kind kind,
            @Nullable Duration likely,
            @Nullable Duration low,
            @Nullable Duration high,
            boolean unattended,
            boolean breakable,
            boolean pausing,
            Map<String, Integer> held) {
        this.name = name;
        this.kind = kind;
        this.likely = likely;
        this.low = low;
        this.high = high;
        this.unattended = unattended;
        this.breakable = breakable;
        this.pausing = pausing;
        this.held = held;
    }

    private static Phase of(Kind kind, String name, @Nullable Duration likely) {
        String called = Names.check(name, "phase");
        if (likely != null && likely.isNegative()) {
            throw duration(called, likely, "must be 0 or more");
        }
        return new Phase(called, kind, likely, likely, likely, false, false, false, Map.of());
    }

    private static Refused duration(String name, Duration given, String wanted) {
        return Refused.of(
                "schedule.duration",
                name + ": " + words(given) + " given; " + wanted + ". Give low, likely and high in rising order.",
                "of",
                name,
                "given",
                given);
    }

    private static String words(Duration duration) {
        return Minutes.words(Minutes.up(duration));
    }

    /**
     * Work by hand.
     *
     * @param name what is done
     * @param duration how long it takes, likely; 0 or more
     * @return the phase
     * @throws Refused if the name is empty or cannot be shown, or the duration is below zero
     */
    public static Phase handsOn(String name, Duration duration) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(duration, "duration");
        return of(Kind.HANDS_ON, name, duration);
    }

    /**
     * Work by hand of which it is not known how long it takes.
     *
     * @param name what is done
     * @return the phase
     * @throws Refused if the name is empty or cannot be shown
     */
    public static Phase handsOn(String name) {
        Objects.requireNonNull(name, "name");
        return of(Kind.HANDS_ON, name, null);
    }

    /**
     * A machine that runs, watched; see {@link #unattended()}.
     *
     * @param name what it does
     * @param duration how long it runs, likely; 0 or more
     * @return the phase
     * @throws Refused if the name is empty or cannot be shown, or the duration is below zero
     */
    public static Phase machine(String name, Duration duration) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(duration, "duration");
        return of(Kind.MACHINE, name, duration);
    }

    /**
     * A machine that runs it is not known how long, watched; see {@link #unattended()}.
     *
     * @param name what it does
     * @return the phase
     * @throws Refused if the name is empty or cannot be shown
     */
    public static Phase machine(String name) {
        Objects.requireNonNull(name, "name");
        return of(Kind.MACHINE, name, null);
    }

    /**
     * Waiting: soaking, drying, curing.
     *
     * @param name what is waited for
     * @param duration how long it takes, likely; 0 or more
     * @return the phase
     * @throws Refused if the name is empty or cannot be shown, or the duration is below zero
     */
    public static Phase waiting(String name, Duration duration) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(duration, "duration");
        return of(Kind.WAITING, name, duration);
    }

    /**
     * Waiting of which it is not known how long it takes.
     *
     * @param name what is waited for
     * @return the phase
     * @throws Refused if the name is empty or cannot be shown
     */
    public static Phase waiting(String name) {
        Objects.requireNonNull(name, "name");
        return of(Kind.WAITING, name, null);
    }

    /**
     * Sets the band of the duration.
     *
     * @param shortest what it takes as long as or longer than in 19 of 20 cases, its 5 % point; above zero
     * @param longest what it takes no longer than in 19 of 20 cases, its 95 % point
     * @return the phase
     * @throws Refused if the likely duration does not lie between them, or the lower is not above zero and differs from
     *     the likely one
     */
    public Phase between(Duration shortest, Duration longest) {
        Objects.requireNonNull(shortest, "shortest");
        Objects.requireNonNull(longest, "longest");
        Duration middle = likely == null ? shortest : likely;
        if (shortest.compareTo(middle) > 0 || (shortest.compareTo(Duration.ZERO) <= 0 && !shortest.equals(longest))) {
            throw duration(name, shortest, "the low end must be above 0 and at most " + words(middle));
        }
        if (longest.compareTo(middle) < 0) {
            throw duration(name, longest, "the high end must be at least " + words(middle));
        }
        return new Phase(name, kind, likely, shortest, longest, unattended, breakable, pausing, held);
    }

    /**
     * Holds a resource from start to finish.
     *
     * @param resource its name, as in the {@link Workload}
     * @param count how many of it, at least one; more if the same was named before
     * @return the phase
     * @throws Refused if the count is below one
     */
    public Phase holding(String resource, int count) {
        Objects.requireNonNull(resource, "resource");
        if (count < 1) {
            throw Refused.of(
                    "schedule.count",
                    name + ": " + count + " of " + resource + " given; must be 1 or more. Leave out what is not held.",
                    "of",
                    name,
                    "given",
                    count);
        }
        Map<String, Integer> more = new LinkedHashMap<>(held);
        more.merge(Names.check(resource, "resource"), count, Math::addExact);
        return new Phase(name, kind, likely, low, high, unattended, breakable, pausing, more);
    }

    /**
     * Lets the machine run on outside of working time, once it was started.
     *
     * @return the phase
     * @throws Refused if it is no machine
     */
    public Phase unattended() {
        if (kind != Kind.MACHINE) {
            throw Refused.of(
                    "schedule.not-a-machine",
                    name + ": only a machine can run unattended, and this is " + kind.words()
                            + ". Waiting goes on day and night as it is.",
                    "of",
                    name);
        }
        return new Phase(name, kind, likely, low, high, true, breakable, pausing, held);
    }

    /**
     * Lets the work rest overnight and over days off: what is done on one day is gone on with on the next.
     *
     * @return the phase; the same where time passes or a machine runs on by itself, which nothing breaks
     */
    public Phase breakable() {
        return new Phase(name, kind, likely, low, high, unattended, true, pausing, held);
    }

    /**
     * Lets the waiting pause at night and on days off: for people elsewhere who keep the same hours.
     *
     * @return the phase
     * @throws Refused if it is no waiting
     */
    public Phase pausing() {
        if (kind != Kind.WAITING) {
            throw Refused.of(
                    "schedule.not-waiting",
                    name + ": only waiting can pause, and this is " + kind.words()
                            + ". Work by hand and a machine that is watched go on in working time as they are.",
                    "of",
                    name);
        }
        return new Phase(name, kind, likely, low, high, unattended, true, true, held);
    }

    /**
     * Returns what is done.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns how it goes on.
     *
     * @return the kind
     */
    public Kind kind() {
        return kind;
    }

    /**
     * Returns how long it takes, likely.
     *
     * @return the duration; empty if it is not known
     */
    public Optional<Duration> likely() {
        return Optional.ofNullable(likely);
    }

    /**
     * Returns the low end of its band, the 5 % point.
     *
     * @return the duration, the likely one if there is no band; empty if nothing is known of it
     */
    public Optional<Duration> low() {
        return Optional.ofNullable(low);
    }

    /**
     * Returns the high end of its band, the 95 % point.
     *
     * @return the duration, the likely one if there is no band; empty if nothing is known of it
     */
    public Optional<Duration> high() {
        return Optional.ofNullable(high);
    }

    /**
     * Returns whether it is a machine that runs on outside of working time.
     *
     * @return whether it is
     */
    public boolean isUnattended() {
        return unattended;
    }

    /**
     * Returns whether it may rest overnight and over days off.
     *
     * @return whether it may
     */
    public boolean isBreakable() {
        return breakable;
    }

    /**
     * Returns whether it is waiting that goes on in working time only.
     *
     * @return whether it is
     */
    public boolean isPausing() {
        return pausing;
    }

    /**
     * Returns what it holds from start to finish.
     *
     * @return an unmodifiable map of counts by the name of the resource, in the order given
     */
    public Map<String, Integer> held() {
        return Collections.unmodifiableMap(held);
    }

    /** Whether it goes on in working time only. */
    boolean isInWorkingTime() {
        return kind == Kind.HANDS_ON || (kind == Kind.MACHINE && !unattended) || pausing;
    }

    /** In whole minutes; -1 if not known. */
    long minutes() {
        return likely == null ? -1 : Minutes.up(likely);
    }

    /** Returns name, duration and what is held, as {@code form, 1 h 30 min hands on, holds 1 person, 1 vat}. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(name)
                .append(", ")
                .append(likely == null ? "not known how long" : words(likely))
                .append(' ')
                .append(kind.words())
                .append(pausing ? " in working time" : "");
        String before = ", holds ";
        for (Map.Entry<String, Integer> one : held.entrySet()) {
            text.append(before).append(one.getValue()).append(' ').append(one.getKey());
            before = ", ";
        }
        return text.toString();
    }
}
