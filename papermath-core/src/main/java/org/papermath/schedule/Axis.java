package org.papermath.schedule;

/**
 * Time as a pass through the work sees it: onward, or back from the end with the sign turned, so that one way of placing
 * serves both. On the axis everything is placed as early as can be.
 */
final class Axis {
    private final Shop shop;
    private final Clock clock;
    private final boolean back;
    private final long[] minutes;
    private long end;

    Axis(Shop shop, Clock clock, boolean back, long[] minutes) {
        this.shop = shop;
        this.clock = clock;
        this.back = back;
        this.minutes = minutes;
    }

    boolean isBack() {
        return back;
    }

    /** From a place on the axis to the moment, and back. */
    long turn(long place) {
        return back ? -place : place;
    }

    int firstPhase(int task) {
        return back ? shop.first[task + 1] - 1 : shop.first[task];
    }

    int step() {
        return back ? -1 : 1;
    }

    int phasesOf(int task) {
        return shop.first[task + 1] - shop.first[task];
    }

    /** What stays held between a phase and the one before it on the axis. */
    int[] through(int phase) {
        return back ? shop.through[phase + 1] : shop.through[phase];
    }

    int[] linksIn(int task) {
        return back ? shop.out[task] : shop.in[task];
    }

    int[] linksOut(int task) {
        return back ? shop.in[task] : shop.out[task];
    }

    int before(int link) {
        return back ? shop.to[link] : shop.from[link];
    }

    int after(int link) {
        return back ? shop.from[link] : shop.to[link];
    }

    /** The first place from there on where working time lets a phase begin; {@link #end()} then tells its end. */
    long fit(int phase, long place) {
        long takes = minutes[phase];
        Phase what = shop.phases[phase];
        if (place >= Minutes.NEVER) {
            end = Minutes.NEVER;
            return Minutes.NEVER;
        }
        boolean unknown = takes < 0;
        if (takes == 0 || (what.kind() == Phase.Kind.WAITING && !what.isInWorkingTime())) {
            end = unknown ? Minutes.NEVER : place + takes;
            return place;
        }
        if (what.isInWorkingTime()) {
            boolean whole = !what.isBreakable() && takes <= shop.longestStretch;
            if (unknown) {
                end = Minutes.NEVER;
                return back ? place : clock.next(place);
            }
            if (!back) {
                long begin = whole ? clock.nextWithin(place, takes) : clock.next(place);
                end = clock.after(begin, takes);
                return begin;
            }
            long finish = whole ? clock.lastWithin(-place, takes) : -place;
            long start = clock.before(finish, takes);
            end = -start;
            return -clock.after(start, takes);
        }
        // A machine that somebody starts and leaves.
        if (unknown) {
            end = Minutes.NEVER;
            return back ? place : clock.next(place);
        }
        if (!back) {
            long begin = clock.next(place);
            end = begin + takes;
            return begin;
        }
        long start = clock.last(-place - takes);
        end = -start;
        return -(start + takes);
    }

    /** Where the phase that was fitted last ends. */
    long end() {
        return end;
    }
}
