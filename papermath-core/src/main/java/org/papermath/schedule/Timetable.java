package org.papermath.schedule;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Refused;

/**
 * When everything is done: work placed into working time so that nothing is held twice and nothing comes before what it
 * waits for. Immutable; the same workload gives the same timetable.
 *
 * <p>The rule. Tasks are placed one after the other at the first moment that fits, in the order of their latest starts,
 * in four other orders too; each is drawn together by passes from the end and from the beginning; the best of them is shaken a
 * fixed number of times with a seed that is always the same, by tasks, by groups and by phases, and kept where it gets
 * better. Better is: less of the longest waits passed, then less late, then sooner done as a whole. Where it ends a few
 * hours after days off it is shaken on until all is done before them, or the shakes are used up. It is a good timetable,
 * not proven the best one. A task of higher {@linkplain Task#priority() priority} goes first wherever two could be next.
 *
 * <p>A longest wait is kept wherever the rule finds a way, moving what is waited for to later moments. Where it finds none,
 * for example because drying ends at night and nobody may come, the wait is passed, and {@link #brokenWaits()} tells it.
 * Days that are due are wishes: {@link #late()} tells what passes them.
 *
 * <p>What hangs on a phase of unknown duration is not dated: what comes after it, reckoned on from a day, or before it,
 * reckoned back. What it holds it then holds for an unknown time; whatever needs that is not dated either.
 *
 * @source serial generation by J. E. Kelley, 1963; passes back and forth by K. Y. Li and R. J. Willis, 1992
 */
public final class Timetable {
    private final Workload work;
    private final Shop shop;
    private final Placement placement;
    private final @Nullable LocalDateTime due;
    /** When everything would be done at the soonest; where the day cannot be met, or there is none, this timetable. */
    private final Placement soonest;
    /** Whether the whole is in time; null if not known or not asked. */
    private final @Nullable Boolean met;

    private final List<PlacedTask> tasks;

    private Timetable(
            Workload work, Placement placement, Placement soonest, @Nullable LocalDateTime due, @Nullable Boolean met) {
        this.work = work;
        this.placement = placement;
        this.soonest = soonest;
        this.due = due;
        this.met = met;
        shop = work.shop();
        List<PlacedTask> all = new ArrayList<>();
        for (int i = 0; i < shop.tasks.length; i++) {
            List<PlacedPhase> phases = new ArrayList<>();
            for (int p = shop.first[i]; p < shop.first[i + 1]; p++) {
                phases.add(new PlacedPhase(shop.phases[p], placement.start[p], placement.finish[p]));
            }
            all.add(new PlacedTask(shop.tasks[i], List.copyOf(phases)));
        }
        tasks = List.copyOf(all);
    }

    /**
     * Reckons on from a moment: everything as soon as it can be.
     *
     * @param work the work
     * @param start when to begin, in whole minutes
     * @return the timetable
     * @throws Refused if the start is not in whole minutes
     */
    public static Timetable from(Workload work, LocalDateTime start) {
        Objects.requireNonNull(work, "work");
        Objects.requireNonNull(start, "start");
        Placement found = new Search(work.shop(), false, Minutes.of(start, "start")).best();
        return new Timetable(work, found, found, null, null);
    }

    /**
     * Reckons back from a moment: everything as late as it can be, whenever that begins.
     *
     * @param work the work
     * @param due when all has to be done, in whole minutes
     * @return the timetable; where dates before which something is not to begin forbid it, that of {@link #between} from
     *     the day on which it would have begun
     * @throws Refused if the moment is not in whole minutes
     */
    public static Timetable by(Workload work, LocalDateTime due) {
        Objects.requireNonNull(work, "work");
        Objects.requireNonNull(due, "due");
        long end = Minutes.of(due, "due");
        Shop shop = work.shop();
        Placement found = new Search(shop, true, end).best();
        if (found.early > 0) {
            return between(work, Minutes.moment(found.firstStart), due);
        }
        Placement soonest = found.isWhole() ? forwards(shop, found) : found;
        return new Timetable(work, found, soonest, due, found.isWhole() ? Boolean.TRUE : null);
    }

    /**
     * Reckons on from a moment and, if all can be done by another, back from that: everything as late as it can be.
     *
     * @param work the work
     * @param start when work may begin, in whole minutes
     * @param due when all has to be done, in whole minutes
     * @return the timetable; if the day cannot be met, the one that is done soonest
     * @throws Refused if a moment is not in whole minutes, or the due one lies before the start
     */
    public static Timetable between(Workload work, LocalDateTime start, LocalDateTime due) {
        Objects.requireNonNull(work, "work");
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(due, "due");
        long from = Minutes.of(start, "start");
        long end = Minutes.of(due, "due");
        if (end < from) {
            throw Refused.of(
                    "schedule.due-before-start",
                    "timetable: due " + Minutes.words(due) + ", before the start " + Minutes.words(start)
                            + ". Give a later day, or leave the start out.",
                    "start",
                    start,
                    "due",
                    due);
        }
        Shop shop = work.shop();
        Placement soonest = new Search(shop, false, from).best();
        if (!soonest.isWhole()) {
            return new Timetable(work, soonest, soonest, due, null);
        }
        if (soonest.lastFinish > end) {
            return new Timetable(work, soonest, soonest, due, false);
        }
        Placement best = soonest;
        Search back = new Search(shop, true, end);
        for (Placement found : List.of(back.from(soonest), back.best())) {
            if (found.early == 0
                    && found.firstStart >= from
                    && found.passed <= soonest.passed
                    && found.late <= soonest.late
                    && found.isLaterThan(best)) {
                best = found;
            }
        }
        return new Timetable(work, best, soonest, due, true);
    }

    /** The same order, drawn to its beginning. */
    private static Placement forwards(Shop shop, Placement given) {
        Placement found = new Search(shop, false, given.firstStart).from(given);
        return found.lastFinish <= given.lastFinish ? found : given;
    }

    /**
     * Returns what is timed.
     *
     * @return the work as given
     */
    public Workload work() {
        return work;
    }

    /**
     * Returns all tasks with their times.
     *
     * @return an unmodifiable list, in the order in which they were given
     */
    public List<PlacedTask> tasks() {
        return tasks;
    }

    /**
     * Returns a task with its times.
     *
     * @param name its name
     * @return the task
     * @throws Refused if there is none of the name
     */
    public PlacedTask task(String name) {
        return tasks.get(work.tasks().indexOf(work.task(name)));
    }

    /**
     * Returns when the first task begins.
     *
     * @return the moment; empty if the start of a task is not known
     */
    public Optional<LocalDateTime> start() {
        return tasks.stream().allMatch(one -> one.start().isPresent())
                ? Optional.of(Minutes.moment(placement.firstStart))
                : Optional.empty();
    }

    /**
     * Returns when all is done.
     *
     * @return the moment; empty if the finish of a task is not known
     */
    public Optional<LocalDateTime> finish() {
        return tasks.stream().allMatch(one -> one.finish().isPresent())
                ? Optional.of(Minutes.moment(placement.lastFinish))
                : Optional.empty();
    }

    /**
     * Returns the time from the first start to the last finish.
     *
     * @return the time, nights and days off counted; empty if one of the two is not known
     */
    public Optional<Duration> span() {
        return start().flatMap(from -> finish().map(to -> Duration.between(from, to)));
    }

    /**
     * Returns the moment by which all was to be done.
     *
     * @return the moment; empty if none was asked for
     */
    public Optional<LocalDateTime> due() {
        return Optional.ofNullable(due);
    }

    /**
     * Returns whether all is done by the moment that was asked for.
     *
     * @return whether it is; empty if none was asked for, or a duration is not known
     */
    public Optional<Boolean> isMet() {
        return Optional.ofNullable(met);
    }

    /**
     * Returns the soonest moment at which all can be done, from the start that was given or, without one, from the start
     * of this timetable.
     *
     * @return the moment; empty if a duration is not known
     */
    public Optional<LocalDateTime> soonest() {
        return soonest.isWhole() ? Optional.of(Minutes.moment(soonest.lastFinish)) : Optional.empty();
    }

    /**
     * Returns the tasks that are done later than they are due.
     *
     * @return an unmodifiable list
     */
    public List<PlacedTask> late() {
        return tasks.stream().filter(one -> one.late().isPresent()).toList();
    }

    /**
     * Returns the tasks of which it is not known when they begin or end.
     *
     * @return an unmodifiable list
     */
    public List<PlacedTask> undated() {
        return tasks.stream()
                .filter(one -> one.start().isEmpty() || one.finish().isEmpty())
                .toList();
    }

    /**
     * Returns the longest waits that are passed.
     *
     * @return an unmodifiable list, empty if all are kept
     */
    public List<BrokenWait> brokenWaits() {
        List<BrokenWait> broken = new ArrayList<>();
        for (int link = 0; link < shop.to.length; link++) {
            long by = placement.passed(link);
            if (by > 0) {
                broken.add(new BrokenWait(
                        shop.tasks[shop.to[link]].name(),
                        shop.tasks[shop.from[link]].name(),
                        shop.most[link] + by,
                        shop.most[link]));
            }
        }
        return List.copyOf(broken);
    }

    /**
     * Returns how much later a task could begin if all others stay where they are, and the whole is done no later.
     *
     * @param name its name
     * @return the time; empty if a start or a finish is not known
     * @throws Refused if there is none of the name
     */
    public Optional<Duration> slack(String name) {
        int task = work.tasks().indexOf(work.task(name));
        return placement.isWhole()
                ? Optional.of(
                        Duration.ofMinutes(Placing.latestStartAlone(shop, placement, task) - placement.startOf(task)))
                : Optional.empty();
    }

    /**
     * Returns what decides how soon all can be done: from the beginning on phases of which each waited for the one before
     * it, to the one that is done last. It is read from the timetable that is done soonest, see {@link #soonest()}.
     *
     * @return an unmodifiable list, rising; empty if a duration is not known
     */
    public List<ChainLink> chain() {
        return soonest.isWhole() ? Chain.of(shop, soonest) : List.of();
    }

    /**
     * Returns the resources by how much they hold the work up: first by their time on the {@link #chain()}, then by how
     * busy they are.
     *
     * @return an unmodifiable list of all resources, the narrowest first; empty if a duration is not known
     */
    public List<NarrowPlace> narrowPlaces() {
        if (!soonest.isWhole()) {
            return List.of();
        }
        long[] onChain = Chain.waited(shop, soonest);
        double[] busy = Chain.busy(shop, soonest);
        List<NarrowPlace> all = new ArrayList<>();
        for (int i = 0; i < shop.resources.length; i++) {
            all.add(new NarrowPlace(this, shop.resources[i], busy[i], onChain[i]));
        }
        all.sort(Comparator.comparing(NarrowPlace::onChain)
                .thenComparing(NarrowPlace::busy)
                .reversed());
        return Collections.unmodifiableList(all);
    }

    /**
     * Returns the timetable with one more of a resource, on from the same start.
     *
     * @param resource its name
     * @return the timetable, done no later than the soonest of this one
     * @throws Refused if there is none of the name
     */
    public Timetable withOneMore(String resource) {
        Resource more = work.resource(resource);
        Workload wider = work.with(Resource.of(resource, more.count() + 1));
        Placement found = new Search(wider.shop(), false, soonest.firstStart).best();
        // What fits into less fits into more too.
        Placement best = soonest.isSoonerThan(found) ? soonest : found;
        return new Timetable(wider, best, best, null, null);
    }

    /** From the first start to the soonest finish. */
    Duration forwardSpan() {
        return Duration.ofMinutes(soonest.lastFinish - soonest.firstStart);
    }

    /**
     * Draws all durations from their bands and works the days through again, in the order of this timetable and from its
     * start on.
     *
     * @param draws how many times, from 1 to 100 000
     * @param seed where the draws begin; the same gives the same
     * @return when all is done, by its chances
     * @throws Refused if there are too few or too many draws, or a duration is not known
     */
    public Chance chance(int draws, long seed) {
        return Chance.of(shop, placement, due, draws, seed);
    }

    /**
     * Returns what there is to do, day by day.
     *
     * @return an unmodifiable list of the days on which something begins, goes on or is started for the night
     */
    public List<Day> days() {
        return Day.of(shop, placement);
    }

    /**
     * Returns the days as plain text: what to do, and what to start for the night.
     *
     * @return lines that end with a line feed, the same in every locale
     */
    public String text() {
        return DaysText.of(this);
    }

    /**
     * Returns the days as a calendar file: an event for each phase, by the piece where it is broken, in local time without
     * a zone.
     *
     * @param name what the calendar is about; part of the identities of its events, which stay the same when the same
     *     phases are dated anew
     * @param stamp when the file is made; the library reads no clock
     * @return the text of an iCalendar file, with CR LF at the ends of lines of at most 75 octets
     * @source RFC 5545 (2009)
     */
    public String calendar(String name, Instant stamp) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(stamp, "stamp");
        return CalendarText.of(shop, placement, name, stamp);
    }

    /** Returns start, finish and count, as {@code 12 tasks, 2026-11-30 09:00 to 2026-12-04 15:00}. */
    @Override
    public String toString() {
        return tasks.size() + (tasks.size() == 1 ? " task, " : " tasks, ") + PlacedPhase.words(start(), finish());
    }
}
