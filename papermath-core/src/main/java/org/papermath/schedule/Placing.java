package org.papermath.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;

/**
 * Serial generation: task after task of a list is placed at the first place on the axis where working time, what it
 * waits for and what it holds let it be. Where a longest wait would be passed, the task that is waited for is moved on
 * and what follows it is placed again; a wait that cannot be kept even so is given up.
 */
final class Placing {
    /** Tries to keep one longest wait. */
    private static final int PATIENCE = 40;

    private static final int[] NOTHING = new int[0];

    private final Shop shop;
    private final Axis axis;
    private final Axis other;
    private final boolean repairs;
    private final boolean limited;
    private final long[] begin;
    private final long[] end;
    private final boolean[] placed;
    private final Profile[] profiles;
    private final long[] lower;
    private final int[] tries;
    private final boolean[] givenUp;
    /** Lower bounds of the phases of the task that is being placed. */
    private long[] bound = new long[8];

    Placing(Shop shop, Axis axis, Axis other, long[] lower, boolean repairs, boolean limited) {
        this.shop = shop;
        this.axis = axis;
        this.other = other;
        this.lower = lower.clone();
        this.repairs = repairs;
        this.limited = limited;
        begin = new long[shop.phases.length];
        end = new long[shop.phases.length];
        placed = new boolean[shop.tasks.length];
        profiles = new Profile[shop.resources.length];
        for (int i = 0; i < profiles.length; i++) {
            profiles[i] = new Profile(shop.resources[i].count());
        }
        tries = new int[shop.to.length];
        givenUp = new boolean[shop.to.length];
    }

    /** Places all tasks. The list has each task after those before it on the axis. */
    Placement run(int[] list) {
        long[] original = lower.clone();
        int[] place = new int[shop.tasks.length];
        for (int i = 0; i < list.length; i++) {
            place[list[i]] = i;
        }
        int left = 20 * list.length + 200;
        for (int at = 0; at < list.length; at++) {
            int task = list[at];
            if (placed[task]) {
                continue;
            }
            put(task, earliest(task));
            int passed = repairs ? passedWait(task) : -1;
            if (passed >= 0) {
                int before = axis.before(passed);
                long wanted = start(task) - shop.most[passed];
                if (--left < 0 || ++tries[passed] > PATIENCE) {
                    givenUp[passed] = true;
                    lower[before] = original[before];
                } else {
                    lower[before] = Math.max(start(before) + 1, latestStart(before, wanted));
                }
                take(before);
                at = place[before] - 1;
            }
        }
        return new Placement(shop, axis, begin, end);
    }

    /**
     * Places phase by phase, in the order of keys of the phases: what a phase and the one after it both hold is held from
     * there on until that one is placed. No longest wait is repaired.
     *
     * @return the placement; null if phases wait in a circle for what the others hold, or a duration is not known
     */
    @Nullable
    Placement byPhases(long[] key) {
        int[] waiting = new int[shop.tasks.length];
        PriorityQueue<Integer> ready = new PriorityQueue<>(
                Comparator.comparing((Integer p) -> key[p]).thenComparing(p -> axis.isBack() ? -p : p));
        for (int i = 0; i < waiting.length; i++) {
            waiting[i] = axis.linksIn(i).length;
            if (waiting[i] == 0) {
                ready.add(axis.firstPhase(i));
            }
        }
        List<Integer> blocked = new ArrayList<>();
        int left = shop.phases.length;
        while (!ready.isEmpty()) {
            int phase = ready.remove();
            int task = shop.taskOf[phase];
            int first = axis.firstPhase(task);
            int step = axis.step();
            int last = first + step * (axis.phasesOf(task) - 1);
            long from = phase == first ? earliest(task) : Math.max(lower[task], end[phase - step]);
            if (phase != first) {
                hold(axis.through(phase), end[phase - step], Minutes.NEVER, -1);
            }
            int[] kept = phase == last ? NOTHING : axis.through(phase + step);
            long at = free(phase, from, kept);
            if (at >= Minutes.NEVER) {
                if (phase != first) {
                    hold(axis.through(phase), end[phase - step], Minutes.NEVER, 1);
                }
                blocked.add(phase);
                continue;
            }
            begin[phase] = at;
            end[phase] = axis.end();
            hold(shop.held[phase], at, end[phase], 1);
            if (phase != first) {
                hold(axis.through(phase), end[phase - step], at, 1);
            }
            left--;
            if (phase == last) {
                placed[task] = true;
                for (int link : axis.linksOut(task)) {
                    if (--waiting[axis.after(link)] == 0) {
                        ready.add(axis.firstPhase(axis.after(link)));
                    }
                }
            } else {
                hold(kept, end[phase], Minutes.NEVER, 1);
                ready.add(phase + step);
            }
            if (phase != first && axis.through(phase).length > 0) {
                ready.addAll(blocked);
                blocked.clear();
            }
        }
        return left > 0 ? null : new Placement(shop, axis, begin, end);
    }

    private void hold(int[] held, long from, long to, int sign) {
        for (int i = 0; i < held.length; i += 2) {
            profiles[held[i]].hold(from, to, sign * held[i + 1]);
        }
    }

    /**
     * Places what can be next in the order of time: always the task that could begin first; of those that could begin at
     * the same moment the one that may wait the least, then the one that was given first.
     */
    Placement inTime() {
        int n = shop.tasks.length;
        int[] waiting = new int[n];
        PriorityQueue<Next> ready = new PriorityQueue<>();
        for (int i = 0; i < n; i++) {
            waiting[i] = axis.linksIn(i).length;
            if (waiting[i] == 0) {
                ready.add(next(i, Long.MIN_VALUE));
            }
        }
        while (!ready.isEmpty()) {
            Next first = ready.remove();
            Next now = next(first.task, first.start);
            Next other = ready.peek();
            if (other != null && now.compareTo(other) > 0) {
                // What was placed since holds it up.
                ready.add(now);
                continue;
            }
            placed[first.task] = true;
            hold(first.task, 1);
            for (int link : axis.linksOut(first.task)) {
                int after = axis.after(link);
                if (--waiting[after] == 0) {
                    ready.add(next(after, Long.MIN_VALUE));
                }
            }
        }
        return new Placement(shop, axis, begin, end);
    }

    /**
     * When a task could begin with what is placed, and how long what it waits for may still wait then.
     *
     * @param from where it could begin before the last was placed: it can only be later now
     */
    private Next next(int task, long from) {
        fit(task, Math.max(from, earliest(task)));
        long start = start(task);
        long left = Minutes.NEVER;
        for (int link : axis.linksIn(task)) {
            if (shop.most[link] < Minutes.NEVER) {
                left = Math.min(left, finish(axis.before(link)) + shop.most[link] - start);
            }
        }
        return new Next(start, -shop.tasks[task].priority(), left, axis.isBack() ? -task : task, task);
    }

    /** A task that could be next. */
    private record Next(long start, int priority, long left, int given, int task) implements Comparable<Next> {
        @Override
        public int compareTo(Next other) {
            int by = Long.compare(start, other.start);
            by = by == 0 ? Integer.compare(priority, other.priority) : by;
            by = by == 0 ? Long.compare(left, other.left) : by;
            return by == 0 ? Integer.compare(given, other.given) : by;
        }
    }

    private long earliest(int task) {
        long from = lower[task];
        for (int link : axis.linksIn(task)) {
            long done = finish(axis.before(link));
            from = Math.max(from, done >= Minutes.NEVER ? Minutes.NEVER : done + shop.least[link]);
        }
        return from;
    }

    private long start(int task) {
        return begin[axis.firstPhase(task)];
    }

    private long finish(int task) {
        return end[axis.firstPhase(task) + axis.step() * (axis.phasesOf(task) - 1)];
    }

    /** A longest wait into the task that is passed and was not given up; -1 if there is none. */
    private int passedWait(int task) {
        long start = start(task);
        if (start >= Minutes.NEVER) {
            return -1;
        }
        for (int link : axis.linksIn(task)) {
            if (!givenUp[link]
                    && shop.most[link] < Minutes.NEVER
                    && start - finish(axis.before(link)) > shop.most[link]) {
                return link;
            }
        }
        return -1;
    }

    /** The last start of a task that ends by a place, by working time alone. */
    private long latestStart(int task, long place) {
        long at = -place;
        int phase = other.firstPhase(task);
        for (int i = 0; i < other.phasesOf(task); i++, phase += other.step()) {
            other.fit(phase, at);
            at = other.end();
        }
        return -at;
    }

    /** Takes a task and all that was placed after it away again. */
    private void take(int task) {
        if (!placed[task]) {
            return;
        }
        placed[task] = false;
        hold(task, -1);
        for (int link : axis.linksOut(task)) {
            take(axis.after(link));
        }
    }

    private void put(int task, long from) {
        fit(task, from);
        placed[task] = true;
        hold(task, 1);
    }

    private void fit(int task, long from) {
        int phases = axis.phasesOf(task);
        int first = axis.firstPhase(task);
        int step = axis.step();
        if (bound.length < phases) {
            bound = new long[2 * phases];
        }
        Arrays.fill(bound, 0, phases, from);
        int k = 0;
        while (k < phases) {
            int phase = first + k * step;
            long lo = k == 0 ? bound[0] : Math.max(bound[k], end[phase - step]);
            long at = free(phase, lo, NOTHING);
            begin[phase] = at;
            end[phase] = axis.end();
            if (k > 0 && at < Minutes.NEVER) {
                long clear = clear(phase, end[phase - step], at);
                if (clear > end[phase - step]) {
                    // What is held between the two is not free all the while: the one before has to come later.
                    bound[k - 1] = clear;
                    k--;
                    continue;
                }
            }
            k++;
        }
    }

    /** The first place from there on where a phase fits and what it holds is free, and what is kept for ever after. */
    private long free(int phase, long from, int[] kept) {
        long at = axis.fit(phase, from);
        int[] held = shop.held[phase];
        boolean settled = !limited;
        while (!settled && at < Minutes.NEVER) {
            settled = true;
            for (int i = 0; i < held.length; i += 2) {
                long next = profiles[held[i]].freeFrom(at, axis.end(), held[i + 1]);
                if (next > at) {
                    at = axis.fit(phase, next);
                    settled = false;
                    break;
                }
            }
            for (int i = 0; settled && i < kept.length; i += 2) {
                long next = profiles[kept[i]].freeFrom(at, Minutes.NEVER, kept[i + 1]);
                if (next > at) {
                    at = axis.fit(phase, next);
                    settled = false;
                }
            }
        }
        return at;
    }

    private long clear(int phase, long from, long to) {
        int[] through = axis.through(phase);
        for (int i = 0; limited && i < through.length; i += 2) {
            long next = profiles[through[i]].freeFrom(from, to, through[i + 1]);
            if (next > from) {
                return next;
            }
        }
        return from;
    }

    private void hold(int task, int sign) {
        int phase = axis.firstPhase(task);
        for (int k = 0; k < axis.phasesOf(task); k++, phase += axis.step()) {
            if (begin[phase] >= Minutes.NEVER) {
                return;
            }
            int[] held = shop.held[phase];
            for (int i = 0; i < held.length; i += 2) {
                profiles[held[i]].hold(begin[phase], end[phase], sign * held[i + 1]);
            }
            if (k > 0) {
                int[] through = axis.through(phase);
                for (int i = 0; i < through.length; i += 2) {
                    profiles[through[i]].hold(end[phase - axis.step()], begin[phase], sign * through[i + 1]);
                }
            }
        }
    }

    /** The latest start of one task, with all others where they are and nothing of the whole later. */
    static long latestStartAlone(Shop shop, Placement given, int task) {
        Clock clock = new Clock(shop.work.workingTime());
        Axis onward = new Axis(shop, clock, false, shop.minutes);
        Axis back = new Axis(shop, clock, true, shop.minutes);
        Placing placing = new Placing(shop, back, onward, new long[shop.tasks.length], false, true);
        for (int i = 0; i < shop.tasks.length; i++) {
            for (int p = shop.first[i]; p < shop.first[i + 1]; p++) {
                placing.begin[p] = -given.finish[p];
                placing.end[p] = -given.start[p];
            }
            if (i != task) {
                placing.hold(i, 1);
            }
        }
        long latest = Math.min(given.lastFinish, Math.max(shop.due[task], given.finishOf(task)));
        for (int link : shop.out[task]) {
            latest = Math.min(latest, given.startOf(shop.to[link]) - shop.least[link]);
        }
        placing.put(task, -latest);
        long start = -placing.end[shop.first[task]];
        for (int link : shop.in[task]) {
            if (shop.most[link] < Minutes.NEVER) {
                long most = given.finishOf(shop.from[link]) + shop.most[link];
                start = Math.min(start, Math.max(most, given.startOf(task)));
            }
        }
        return Math.max(start, given.startOf(task));
    }
}
