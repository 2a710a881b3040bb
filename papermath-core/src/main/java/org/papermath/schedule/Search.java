package org.papermath.schedule;

import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Finds a good timetable by a fixed rule. Lists in several orders are placed serially; each is drawn together by passes
 * back and forth; then the best list is shaken a fixed number of times, always in the same way, by tasks, by groups and
 * by phases, and kept when it gets better. Where it ends a few hours after days off it is shaken on, with the end of the
 * work before them for an aim, and then by phases alone, so that hands are idle as late as can be. It stops where nothing
 * could be sooner even with enough of everything.
 */
final class Search {
    /** Passes back and forth of each list. */
    private static final int PASSES = 3;
    /** Shakes of the list of one phase; so many fewer the more there are. */
    private static final int SHAKES = 250_000;

    private static final int MOST_SHAKES = 3000;
    /** As many more as a small workload has time for. */
    private static final int SMALL = 110_000_000;

    /** Shakes to be done before days off: a few hours are worth a weekend. */
    private static final int MOST_AIMED = 16_000;

    private static final int AIMED = 320_000_000;
    /** Work after days off, in minutes, that there is hope to do before them. */
    private static final long LITTLE = 8 * 60;

    /** Phases from which on there is no time for that. */
    private static final int LARGE = 300;

    /** How much later than it may be, in minutes, a task is now and then let be on the way there. */
    private static final double LET = 1000;

    /** Shakes by phases, where it is still not; after so many they begin anew. */
    private static final int MOST_BUSIER = 45_000;

    private static final int BUSIER_ROUND = 15_000;
    private static final int BUSIER = 740_000_000;
    /** How many places a phase is moved. */
    private static final double[] FAR = {1, 3, 8, 25};

    /** How much longer, as a part, work may be undone on the way there. */
    private static final double MORE = 0.0016;

    /** What the end counts there beside the minutes of hands. */
    private static final double LAST = 0.2;

    /** Of a few the one that came nearest to what a solver finds for studio-like days. */
    private static final long SEED = 4;

    private final Shop shop;
    private final Clock clock;
    private final boolean back;
    private final long anchor;
    private final Axis onward;
    private final Axis backward;

    /**
     * Searches from a moment on, or back from one.
     *
     * @param back whether everything is to lie as late as can be
     * @param anchor where to begin, or to end, in minutes
     */
    Search(Shop shop, boolean back, long anchor) {
        this.shop = shop;
        this.back = back;
        this.anchor = anchor;
        clock = new Clock(shop.work.workingTime());
        onward = new Axis(shop, clock, false, shop.minutes);
        backward = new Axis(shop, clock, true, shop.minutes);
    }

    private Axis main() {
        return back ? backward : onward;
    }

    /** The nearest bounds on the axis that dates given set to each task. */
    private long[] bounds() {
        long[] lower = new long[shop.tasks.length];
        for (int i = 0; i < lower.length; i++) {
            lower[i] = back ? -Math.min(anchor, shop.due[i]) : Math.max(anchor, shop.notBefore[i]);
        }
        return lower;
    }

    private Placement place(Axis axis, long[] lower, int[] list, boolean limited) {
        return new Placing(shop, axis, axis.isBack() ? onward : backward, lower, true, limited).run(list);
    }

    private boolean isBetter(Placement one, Placement that) {
        return back ? one.isLaterThan(that) : one.isSoonerThan(that);
    }

    Placement best() {
        if (shop.work.isInOrderOfTime()) {
            return new Placing(shop, main(), back ? onward : backward, bounds(), false, true).inTime();
        }
        long[][] keys = keys();
        Placement free = place(main(), bounds(), list(main(), keys[0]), false);
        Placement best = tried(keys[0]);
        for (int i = 1; i < keys.length && !isBest(best, free); i++) {
            Placement found = tried(keys[i]);
            best = isBetter(found, best) ? found : best;
        }
        if (!best.isWhole()) {
            return best;
        }
        int size = shop.phases.length + 20;
        int shakes = Math.min(MOST_SHAKES, Math.max(SHAKES / size, SMALL / size / size));
        best = shaken(best, free, null, shakes, Math.max(1, Math.min(shakes, MOST_SHAKES / 2)));
        long end = clock.beforeDaysOff(best.lastFinish, best.firstStart);
        if (back || shop.phases.length >= LARGE || !passesByLittle(end, best)) {
            return best;
        }
        Aim aim = aim(best, end);
        Placement aimed = shaken(best, free, aim, Math.min(MOST_AIMED, AIMED / size / size), MOST_SHAKES);
        // What comes nearer to its aim and misses it may be done later.
        best = isBetter(aimed, best) ? aimed : best;
        return passesByLittle(end, best) ? busier(best, end, Math.min(MOST_BUSIER, BUSIER / size / size)) : best;
    }

    private boolean passesByLittle(long end, Placement found) {
        return end < found.lastFinish && clock.work(end, found.lastFinish) <= LITTLE;
    }

    /** What would have to begin by when for all to be done by an end. */
    private Aim aim(Placement found, long end) {
        Search late = new Search(shop, true, end);
        Placement latest = late.place(late.main(), late.bounds(), late.listBy(late.main(), found), false);
        return new Aim(
                IntStream.range(0, shop.tasks.length).mapToLong(latest::startOf).toArray());
    }

    /** When each task would have to begin with enough of everything. */
    private record Aim(long[] latest) {
        /** By how much tasks begin later than that, all together, in minutes. */
        long over(Placement found) {
            long over = 0;
            for (int task = 0; task < latest.length; task++) {
                over += Math.max(0, found.startOf(task) - latest[task]);
            }
            return over;
        }
    }

    private boolean isBetter(Placement one, Placement that, @Nullable Aim aim) {
        if (aim != null && one.passed == that.passed && one.late == that.late) {
            int by = Long.compare(aim.over(one), aim.over(that));
            if (by != 0) {
                return by < 0;
            }
        }
        return isBetter(one, that);
    }

    private Placement tried(long[] key) {
        return drawnTogether(place(main(), bounds(), list(main(), key), true), PASSES);
    }

    /** From another placement, for example one that lies as early as can be. */
    Placement from(Placement given) {
        return place(main(), bounds(), listBy(main(), given), true);
    }

    private boolean isBest(Placement found, Placement free) {
        return found.passed == 0
                && found.late + found.early == 0
                && (back ? found.firstStart >= free.firstStart : found.lastFinish <= free.lastFinish);
    }

    /**
     * Shakes a list.
     *
     * @param aim what is aimed at; null for to be done sooner
     * @param shakes how often
     * @param round after so many it begins anew, not to go on from where there is no way on: from the first, or from what
     *     came nearest to the aim
     */
    private Placement shaken(Placement first, Placement free, @Nullable Aim aim, int shakes, int round) {
        SplittableRandom random = new SplittableRandom(SEED);
        Placement best = first;
        Placement now = first;
        int n = shop.tasks.length;
        double[] widths = {1, 2, 4, n / 8.0 + 1};
        int[] group = groups();
        for (int i = 0; i < shakes && !isBest(best, free) && (aim == null || aim.over(best) > 0); i++) {
            now = i % round == 0 ? (aim == null ? first : best) : now;
            int[] list = listBy(main(), now);
            long[] key = new long[n];
            // One task with what only waits for it, or single tasks here and there, or one or two groups as they are.
            boolean alone = random.nextInt(4) == 0;
            boolean single = random.nextInt(3) == 0;
            int one = random.nextInt(n);
            double far = random.nextGaussian() * (n / (random.nextBoolean() ? 8.0 : 3.0) + 1);
            double width = widths[random.nextInt(widths.length)];
            int moved = group[random.nextInt(n)];
            int other = group[random.nextInt(n)];
            boolean both = random.nextBoolean();
            double by = swap(list, group, moved, other);
            for (int at = 0; at < n; at++) {
                double off = 0;
                if (alone) {
                    off = isWith(list[at], one) ? far : 0;
                } else if (single) {
                    off = random.nextInt(3) == 0 ? width * random.nextGaussian() : 0;
                } else {
                    off = group[list[at]] == moved ? by : both && group[list[at]] == other ? -by : 0;
                }
                key[list[at]] = Math.round(1000 * (at + off));
            }
            Placement found = i % 2 == 0
                    ? drawnTogether(place(main(), bounds(), list(main(), key), true), 1)
                    : byPhases(now, key, random);
            if (!isBetter(now, found, aim)
                    || isNear(found, now, aim, random.nextDouble(), 1 - i % round / (double) round)) {
                now = found;
            }
            if (isBetter(found, best, aim)) {
                best = found;
            }
        }
        return best;
    }

    /**
     * Shakes by phases alone until all is done by an end, or sooner at least. What counts is how long each minute of
     * hands is undone: in whatever order work without a gap is done that comes to the same, so what is left is how early
     * hands are idle.
     */
    private Placement busier(Placement first, long end, int shakes) {
        SplittableRandom random = new SplittableRandom(SEED);
        int[] group = groups();
        Placement best = first;
        Placement now = first;
        double undone = 0;
        for (int i = 0; i < shakes && best.lastFinish > end; i++) {
            if (i % BUSIER_ROUND == 0) {
                now = first;
                undone = undone(first);
            }
            // One phase, or it and what comes after it in its group.
            int one = random.nextInt(shop.phases.length);
            boolean alone = random.nextBoolean();
            long by = Math.round(1000 * FAR[random.nextInt(FAR.length)] * random.nextGaussian());
            double chance = random.nextDouble();
            int[] order = inOrder(now.start);
            long[] key = new long[order.length];
            for (int at = 0; at < order.length; at++) {
                int p = order[at];
                boolean with = p > one && !alone && group[shop.taskOf[p]] == group[shop.taskOf[one]];
                key[p] = 1000L * at + (p == one || with ? by : 0);
            }
            Placement found = waitsKept(key, now);
            if (found == null || found.passed > 0 || found.late + found.early > now.late + now.early) {
                continue;
            }
            best = isBetter(found, best) ? found : best;
            double left = undone(found);
            if (chance < Math.exp((undone - left) / (MORE * undone))) {
                now = found;
                undone = left;
            }
        }
        return best;
    }

    /** How long a minute of hands is undone on average, in working time, and with it all that is to be done. */
    private double undone(Placement found) {
        double sum = 0;
        long hands = 0;
        for (int p = 0; p < shop.phases.length; p++) {
            if (shop.phases[p].kind() == Phase.Kind.HANDS_ON) {
                sum += shop.minutes[p] * (double) clock.work(anchor, found.finish[p]);
                hands += shop.minutes[p];
            }
        }
        return sum / Math.max(1, hands) + LAST * clock.work(anchor, found.lastFinish);
    }

    /** Placed by phases; where a longest wait is passed what is waited for is placed later, a few times. */
    private @Nullable Placement waitsKept(long[] key, Placement given) {
        Placement found = phases(main(), bounds(), key, given);
        for (int i = 0; i < 3 && found != null && found.passed > 0; i++) {
            found = phases(main(), bounds(), key, found);
        }
        return found;
    }

    /** Phases by when they begin; of those that begin together the first as given. */
    private static int[] inOrder(long[] begins) {
        int n = begins.length;
        long[] both = new long[n];
        for (int p = 0; p < n; p++) {
            both[p] = begins[p] * n + p;
        }
        return Arrays.stream(both)
                .sorted()
                .mapToInt(one -> Math.floorMod(one, n))
                .toArray();
    }

    /** Whether a task is another, or waits for that one alone on the axis. */
    private boolean isWith(int task, int other) {
        int[] in = main().linksIn(task);
        return task == other || (in.length == 1 && main().before(in[0]) == other);
    }

    /** The same by phases: what one task leaves free between two of its phases another may use. */
    private Placement byPhases(Placement now, long[] key, SplittableRandom random) {
        Axis axis = main();
        int[] order = inOrder(begins(axis, now));
        long[] ranks = new long[order.length];
        double scale = order.length / (double) shop.tasks.length;
        int[] list = listBy(axis, now);
        long[] moved = new long[shop.tasks.length];
        for (int at = 0; at < list.length; at++) {
            moved[list[at]] = key[list[at]] - 1000L * at;
        }
        for (int at = 0; at < order.length; at++) {
            double off = random.nextInt(8) == 0 ? 3 * random.nextGaussian() : 0;
            ranks[order[at]] = Math.round(1000 * (at + off) + scale * moved[shop.taskOf[order[at]]]);
        }
        Placement found = phases(axis, bounds(), ranks, now);
        return nearByPhases(found == null ? drawnTogether(place(axis, bounds(), list(axis, key), true), 1) : found);
    }

    private Placement nearByPhases(Placement first) {
        Axis axis = back ? onward : backward;
        Placement away = first.passed > 0
                ? place(axis, far(first), listBy(axis, first), true)
                : phases(axis, far(first), begins(axis, first), first);
        if (away == null) {
            return first;
        }
        Placement near = phases(main(), bounds(), begins(main(), away), away);
        return near != null && isBetter(near, first) ? near : first;
    }

    private @Nullable Placement phases(Axis axis, long[] lower, long[] key, Placement given) {
        Axis other = axis.isBack() ? onward : backward;
        return new Placing(shop, axis, other, keeping(axis, lower, given), false, true).byPhases(key);
    }

    /** Bounds before which a task would leave what comes after it, where that lies now, waiting too long. */
    private long[] keeping(Axis axis, long[] lower, Placement given) {
        long[] kept = lower.clone();
        for (int link = 0; link < shop.most.length; link++) {
            if (shop.most[link] < Minutes.NEVER) {
                int task = axis.before(link);
                long start = axis.isBack() ? -given.finishOf(task) : given.startOf(task);
                long waits = given.startOf(shop.to[link]) - given.finishOf(shop.from[link]);
                kept[task] = Math.max(kept[task], start - (shop.most[link] - waits));
            }
        }
        return kept;
    }

    private static long[] begins(Axis axis, Placement given) {
        return axis.isBack() ? Arrays.stream(given.finish).map(end -> -end).toArray() : given.start.clone();
    }

    /** How far the middle of one group in a list lies from that of another. */
    private static double swap(int[] list, int[] group, int one, int other) {
        double[] sum = new double[2];
        int[] count = new int[2];
        for (int at = 0; at < list.length; at++) {
            if (group[list[at]] == one) {
                sum[0] += at;
                count[0]++;
            }
            if (group[list[at]] == other) {
                sum[1] += at;
                count[1]++;
            }
        }
        return sum[1] / count[1] - sum[0] / count[0];
    }

    /** Whether a worse one may be gone on from: the less so the worse it is and the fewer shakes are left. */
    private boolean isNear(Placement found, Placement now, @Nullable Aim aim, double chance, double left) {
        if (found.passed > now.passed || found.late + found.early > now.late + now.early) {
            return false;
        }
        if (aim != null) {
            return chance < Math.exp(-Math.max(0, aim.over(found) - aim.over(now)) / (LET * left + 1e-9));
        }
        double span = now.lastFinish - now.firstStart;
        double longer = (found.lastFinish - found.firstStart - span) / span;
        double slower = (found.sum - now.sum) / (span * shop.tasks.length);
        return chance < Math.exp(-(Math.max(0, longer) + Math.max(0, slower)) / (0.005 * left + 1e-9));
    }

    /** A number for each group by its label; tasks without a label are each a group. */
    private int[] groups() {
        Map<String, Integer> numbers = new HashMap<>();
        int[] group = new int[shop.tasks.length];
        for (int i = 0; i < group.length; i++) {
            String label = shop.tasks[i].group();
            group[i] = label.isEmpty() ? group.length + i : numbers.computeIfAbsent(label, key -> numbers.size());
        }
        return group;
    }

    /** Pushes everything to the far end and draws it near again, as long as that helps. */
    private Placement drawnTogether(Placement first, int passes) {
        Placement best = first;
        for (int i = 0; i < passes && best.isWhole(); i++) {
            Axis axis = back ? onward : backward;
            Placement away = place(axis, far(best), listBy(axis, best), true);
            Placement near = place(main(), bounds(), listBy(main(), away), true);
            if (!isBetter(near, best)) {
                break;
            }
            best = near;
        }
        return best;
    }

    /** The far ends to which tasks may be pushed without being late, or too early. */
    private long[] far(Placement given) {
        long[] lower = new long[shop.tasks.length];
        for (int task = 0; task < lower.length; task++) {
            lower[task] = back
                    ? Math.min(given.startOf(task), Math.max(shop.notBefore[task], given.firstStart))
                    : -Math.max(given.finishOf(task), Math.min(shop.due[task], given.lastFinish));
        }
        return lower;
    }

    /** What is placed earliest on the axis first. */
    private int[] listBy(Axis axis, Placement given) {
        long[] key = new long[shop.tasks.length];
        for (int i = 0; i < key.length; i++) {
            key[i] = axis.isBack() ? -given.finishOf(i) : given.startOf(i);
        }
        return list(axis, key);
    }

    /** All tasks, each after those before it on the axis; of those that could be next the one of the lowest key. */
    private int[] list(Axis axis, long[] key) {
        boolean[] open = open(axis);
        Comparator<Integer> by = Comparator.comparing((Integer i) -> open[i]);
        by = axis.isBack()
                ? by.thenComparing(i -> shop.tasks[i].priority())
                : by.thenComparing(i -> -(long) shop.tasks[i].priority());
        PriorityQueue<Integer> ready =
                new PriorityQueue<>(by.thenComparing(i -> key[i]).thenComparing(i -> axis.isBack() ? -i : i));
        int[] waiting = new int[shop.tasks.length];
        for (int i = 0; i < waiting.length; i++) {
            waiting[i] = axis.linksIn(i).length;
            if (waiting[i] == 0) {
                ready.add(i);
            }
        }
        int[] list = new int[waiting.length];
        int n = 0;
        while (!ready.isEmpty()) {
            int next = ready.remove();
            list[n++] = next;
            for (int link : axis.linksOut(next)) {
                if (--waiting[axis.after(link)] == 0) {
                    ready.add(axis.after(link));
                }
            }
        }
        return list;
    }

    /** What is or waits for something of which it is not known how long it takes comes last: it may block the rest. */
    private boolean[] open(Axis axis) {
        boolean[] open = new boolean[shop.tasks.length];
        for (int p = 0; p < shop.minutes.length; p++) {
            open[shop.taskOf[p]] |= shop.minutes[p] < 0;
        }
        for (int at = 0; at < open.length; at++) {
            int i = shop.order[axis.isBack() ? open.length - 1 - at : at];
            for (int link : axis.linksIn(i)) {
                open[i] |= open[axis.before(link)];
            }
        }
        return open;
    }

    /** Keys of the lists that are tried: latest starts by two measures of time, latest finishes, group by group, given. */
    private long[][] keys() {
        int n = shop.tasks.length;
        double stretch = 7.0 * 1440 / shop.work.workingTime().week().toMinutes();
        long[] raw = new long[n];
        long[] scaled = new long[n];
        for (int p = 0; p < shop.minutes.length; p++) {
            long takes = Math.max(0, shop.minutes[p]);
            raw[shop.taskOf[p]] += takes;
            scaled[shop.taskOf[p]] += shop.phases[p].isInWorkingTime() ? Math.round(stretch * takes) : takes;
        }
        long[] byScaled = latestStarts(scaled);
        long[] byRaw = latestStarts(raw);
        long[] byFinish = new long[n];
        long[] given = new long[n];
        Map<String, Long> groups = new HashMap<>();
        for (int i = 0; i < n; i++) {
            byFinish[i] = byScaled[i] + scaled[i];
            given[i] = back ? n - i : i;
            groups.merge(shop.tasks[i].group(), byScaled[i], Math::min);
        }
        Integer[] order = IntStream.range(0, n)
                .boxed()
                .sorted(Comparator.comparing((Integer i) -> groups.getOrDefault(shop.tasks[i].group(), 0L))
                        .thenComparing(i -> shop.tasks[i].group())
                        .thenComparing(i -> byScaled[i]))
                .toArray(Integer[]::new);
        long[] byGroup = new long[n];
        for (int i = 0; i < n; i++) {
            byGroup[order[i]] = i;
        }
        return new long[][] {byScaled, byRaw, byFinish, byGroup, given};
    }

    /** Latest starts on the axis, from the days that are due or from the end of the longest way. */
    private long[] latestStarts(long[] takes) {
        Axis axis = main();
        int n = takes.length;
        long[] early = bounds();
        long end = Arrays.stream(early).min().orElse(0);
        for (int at = 0; at < n; at++) {
            int i = shop.order[back ? n - 1 - at : at];
            for (int link : axis.linksIn(i)) {
                int before = axis.before(link);
                early[i] = Math.max(early[i], early[before] + takes[before] + shop.least[link]);
            }
            end = Math.max(end, early[i] + takes[i]);
        }
        long[] late = new long[n];
        for (int at = n - 1; at >= 0; at--) {
            int i = shop.order[back ? n - 1 - at : at];
            long date = back
                    ? (shop.notBefore[i] == -Minutes.NEVER ? end : -shop.notBefore[i])
                    : (shop.due[i] == Minutes.NEVER ? end : shop.due[i]);
            late[i] = date - takes[i];
            for (int link : axis.linksOut(i)) {
                late[i] = Math.min(late[i], late[axis.after(link)] - shop.least[link] - takes[i]);
            }
        }
        return late;
    }

    /** Places in the order of a placement, from a moment on, with other minutes; no wait is repaired. */
    static Placement again(Shop shop, Clock clock, Placement given, long from, long[] minutes) {
        Axis axis = new Axis(shop, clock, false, minutes);
        Axis other = new Axis(shop, clock, true, minutes);
        long[] lower = new long[shop.tasks.length];
        for (int i = 0; i < lower.length; i++) {
            lower[i] = Math.max(from, shop.notBefore[i]);
        }
        Search search = new Search(shop, false, from);
        return new Placing(shop, axis, other, lower, false, true).run(search.listBy(axis, given));
    }
}
