package org.papermath.schedule;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Reads from a placement that lies as early as can be what decided it. */
final class Chain {
    private Chain() {}

    /** A phase, why it began no sooner, and the phase it waited for; -1 for none. */
    private record Step(int phase, ChainLink.Reason reason, String of, int resource, int before) {}

    static List<ChainLink> of(Shop shop, Placement found) {
        List<ChainLink> links = new ArrayList<>();
        for (Step step : steps(shop, found)) {
            int p = step.phase();
            links.add(new ChainLink(
                    shop.tasks[shop.taskOf[p]].name(),
                    new PlacedPhase(shop.phases[p], found.start[p], found.finish[p]),
                    step.reason(),
                    step.of()));
        }
        return List.copyOf(links);
    }

    /** Minutes of phases on the chain by the resource for which the next one waited. */
    static long[] waited(Shop shop, Placement found) {
        long[] waited = new long[shop.resources.length];
        for (Step step : steps(shop, found)) {
            if (step.resource() >= 0) {
                waited[step.resource()] += found.finish[step.before()] - found.start[step.before()];
            }
        }
        return waited;
    }

    /** The share of working time that each resource is held, over all there are. */
    static double[] busy(Shop shop, Placement found) {
        Clock clock = new Clock(shop.work.workingTime());
        double all = clock.work(found.firstStart, found.lastFinish);
        double[] busy = new double[shop.resources.length];
        for (int p = 0; p < shop.phases.length; p++) {
            add(busy, shop, shop.held[p], clock.work(found.start[p], found.finish[p]));
            if (shop.through[p].length > 0) {
                add(busy, shop, shop.through[p], clock.work(found.finish[p - 1], found.start[p]));
            }
        }
        for (int i = 0; i < busy.length; i++) {
            busy[i] = all > 0 ? busy[i] / all : 0;
        }
        return busy;
    }

    private static void add(double[] busy, Shop shop, int[] held, long minutes) {
        for (int i = 0; i < held.length; i += 2) {
            busy[held[i]] += (double) minutes * held[i + 1] / shop.resources[held[i]].count();
        }
    }

    private static List<Step> steps(Shop shop, Placement found) {
        Axis axis = new Axis(shop, new Clock(shop.work.workingTime()), false, shop.minutes);
        boolean[] seen = new boolean[shop.phases.length];
        List<Step> steps = new ArrayList<>();
        int at = 0;
        for (int p = 1; p < seen.length; p++) {
            at = found.finish[p] > found.finish[at] ? p : at;
        }
        while (at >= 0 && !seen[at]) {
            seen[at] = true;
            Step step = step(shop, found, axis, at);
            steps.add(step);
            at = step.before();
        }
        Collections.reverse(steps);
        return steps;
    }

    private static Step step(Shop shop, Placement found, Axis axis, int phase) {
        int task = shop.taskOf[phase];
        long start = found.start[phase];
        // What has to be done before it, the last of it first.
        int before = -1;
        long ready = Long.MIN_VALUE;
        if (phase > shop.first[task]) {
            before = phase - 1;
            ready = found.finish[before];
        } else {
            for (int link : shop.in[task]) {
                long done = found.finishOf(shop.from[link]) + shop.least[link];
                if (done > ready) {
                    ready = done;
                    before = shop.first[shop.from[link] + 1] - 1;
                }
            }
        }
        if (before >= 0 && axis.fit(phase, ready) >= start) {
            return new Step(phase, ChainLink.Reason.WORK_BEFORE, nameOf(shop, before, task), -1, before);
        }
        if (phase == shop.first[task]) {
            if (axis.fit(phase, Math.max(found.firstStart, Math.max(ready, shop.notBefore[task]))) >= start
                    && shop.notBefore[task] > found.firstStart) {
                return new Step(phase, ChainLink.Reason.NOT_BEFORE, "", -1, -1);
            }
            if (before < 0 && axis.fit(phase, found.firstStart) >= start) {
                return new Step(phase, ChainLink.Reason.BEGINNING, "", -1, -1);
            }
        }
        int holder = -1;
        int resource = -1;
        for (int other = 0; other < shop.phases.length; other++) {
            long free = found.finish[other];
            if (shop.taskOf[other] != task
                    && free <= start
                    && free > ready
                    && (holder < 0 || free > found.finish[holder])) {
                int shared = shared(shop, phase, other);
                if (shared >= 0 && axis.fit(phase, free) >= start) {
                    holder = other;
                    resource = shared;
                }
            }
        }
        if (holder >= 0) {
            return new Step(phase, ChainLink.Reason.RESOURCE, shop.resources[resource].name(), resource, holder);
        }
        return new Step(phase, ChainLink.Reason.KEPT_BACK, follower(shop, phase, task), -1, before);
    }

    private static String nameOf(Shop shop, int before, int task) {
        return shop.taskOf[before] == task ? shop.phases[before].name() : shop.tasks[shop.taskOf[before]].name();
    }

    /** What comes after it and must not wait too long. */
    private static String follower(Shop shop, int phase, int task) {
        if (phase + 1 < shop.first[task + 1] && shop.through[phase + 1].length > 0) {
            return shop.phases[phase + 1].name();
        }
        for (int link : shop.out[task]) {
            if (shop.most[link] < Minutes.NEVER) {
                return shop.tasks[shop.to[link]].name();
            }
        }
        return "what comes after it";
    }

    /** A resource that one phase gives back at its end and another holds; -1 if there is none. */
    private static int shared(Shop shop, int phase, int other) {
        int[] kept = other + 1 < shop.first[shop.taskOf[other] + 1] ? shop.through[other + 1] : new int[0];
        int found = -1;
        for (int i = 0; i < shop.held[phase].length; i += 2) {
            for (int j = 0; j < shop.held[other].length; j += 2) {
                int resource = shop.held[phase][i];
                if (resource == shop.held[other][j] && !holds(kept, resource, shop.held[other][j + 1])) {
                    // Of several the one that was held longest.
                    boolean longer = holds(shop.through[other], resource, 1);
                    found = found < 0 || longer ? resource : found;
                }
            }
        }
        return found;
    }

    private static boolean holds(int[] held, int resource, int count) {
        for (int i = 0; i < held.length; i += 2) {
            if (held[i] == resource && held[i + 1] >= count) {
                return true;
            }
        }
        return false;
    }
}
