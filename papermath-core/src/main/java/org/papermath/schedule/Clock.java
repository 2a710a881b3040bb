package org.papermath.schedule;

import java.time.LocalDate;
import java.util.Arrays;
import org.papermath.quantity.Refused;

/**
 * Working time laid out span by span, for quick questions in minutes. It grows as it is asked and is for one thread.
 *
 * <p>Spans of one day, and spans that touch, make a stretch: work that may not be broken overnight stays within one.
 */
final class Clock {
    private static final int DAY = 24 * 60;
    /** Days laid out around the first question. */
    private static final int FIRST = 40;
    /** Two hundred years are farther than any work goes. */
    private static final long FARTHEST = 73_000;

    private final WorkingTime time;
    private long firstDay;
    private long lastDay;
    private long reach = FIRST;
    private long[] from = new long[0];
    private long[] to = new long[0];
    /** Work before each span, from the first that is laid out. */
    private long[] done = new long[0];
    /** The number of the stretch of each span. */
    private int[] stretch = new int[0];

    private int spans;

    Clock(WorkingTime time) {
        this.time = time;
    }

    /** The most work of one stretch in a usual week; two weeks and more of it are endless. */
    static long longestStretch(WorkingTime time) {
        long most = 0;
        long run = 0;
        int end = -1;
        for (int day = 0; day < 21; day++) {
            int[] hours = time.usualSpansOf(LocalDate.ofEpochDay(day));
            if (hours.length > 0 && !(end == DAY && hours[0] == 0)) {
                run = 0;
            }
            for (int i = 0; i < hours.length; i += 2) {
                run += hours[i + 1] - hours[i];
            }
            end = hours.length > 0 ? hours[hours.length - 1] : -1;
            most = Math.max(most, run);
        }
        return most >= 14L * DAY ? Minutes.NEVER : most;
    }

    private void cover(long moment) {
        long day = Math.floorDiv(moment, (long) DAY);
        if (spans == 0) {
            firstDay = day - reach;
            lastDay = day + reach;
            lay();
        }
        while (day < firstDay + 2 || day > lastDay - 2) {
            grow(day < firstDay + 2);
        }
    }

    private void grow(boolean back) {
        reach *= 2;
        if (reach > FARTHEST) {
            throw Refused.of(
                    "schedule.too-far",
                    "working time: the work goes on for more than 200 years at " + time
                            + ". Give more hours or less work.");
        }
        if (back) {
            firstDay -= reach;
        } else {
            lastDay += reach;
        }
        lay();
    }

    private void lay() {
        int room = 64;
        from = new long[room];
        to = new long[room];
        spans = 0;
        for (long day = firstDay; day <= lastDay; day++) {
            int[] hours = time.spansOf(LocalDate.ofEpochDay(day));
            for (int i = 0; i < hours.length; i += 2) {
                if (spans == from.length) {
                    from = Arrays.copyOf(from, 2 * spans);
                    to = Arrays.copyOf(to, 2 * spans);
                }
                from[spans] = day * DAY + hours[i];
                to[spans++] = day * DAY + hours[i + 1];
            }
        }
        done = new long[spans + 1];
        stretch = new int[spans];
        for (int i = 0; i < spans; i++) {
            done[i + 1] = done[i] + to[i] - from[i];
            boolean same = i > 0
                    && (from[i] == to[i - 1]
                            || Math.floorDiv(from[i], (long) DAY) == Math.floorDiv(from[i - 1], (long) DAY));
            stretch[i] = i == 0 ? 0 : stretch[i - 1] + (same ? 0 : 1);
        }
    }

    /** The first span that ends after a moment; grows until there is one. */
    private int spanAfter(long moment) {
        cover(moment);
        while (spans == 0 || to[spans - 1] <= moment) {
            grow(false);
        }
        int low = 0;
        int high = spans - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (to[middle] > moment) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    private long doneBy(long moment) {
        int i = spanAfter(moment);
        return done[i] + Math.max(0, moment - from[i]);
    }

    /** The first worked moment from there on. */
    long next(long moment) {
        int i = spanAfter(moment);
        return Math.max(moment, from[i]);
    }

    /**
     * When work stopped before the last time up to there that a day and more went without any; the moment itself where
     * that was before another, or never.
     */
    long beforeDaysOff(long moment, long notBefore) {
        for (int i = spanAfter(moment - 1); i > 0 && to[i - 1] > notBefore; i--) {
            if (from[i] - to[i - 1] >= DAY) {
                return to[i - 1];
            }
        }
        return moment;
    }

    /** The last worked moment up to there, itself if it is worked. */
    long last(long moment) {
        int i = spanAfter(moment);
        if (from[i] <= moment) {
            return moment;
        }
        while (i == 0) {
            grow(true);
            i = spanAfter(moment);
        }
        return to[i - 1] - 1;
    }

    /** Work between two moments. */
    long work(long first, long last) {
        cover(first);
        cover(last);
        return doneBy(last) - doneBy(first);
    }

    /** When so much is done, above zero, that begins there. */
    long after(long moment, long work) {
        long wanted = doneBy(moment) + work;
        while (done[spans] < wanted) {
            grow(false);
            wanted = doneBy(moment) + work;
        }
        int i = spanOfDone(wanted - 1);
        return from[i] + wanted - done[i];
    }

    /** When so much, above zero, has to begin, to be done by then. */
    long before(long moment, long work) {
        long wanted = doneBy(moment) - work;
        while (wanted < 0) {
            grow(true);
            wanted = doneBy(moment) - work;
        }
        int i = spanOfDone(wanted);
        return from[i] + wanted - done[i];
    }

    /** The span in which work goes on when so much is done. */
    private int spanOfDone(long work) {
        int low = 0;
        int high = spans - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (done[middle + 1] > work) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    /** The first worked moment from there on with so much left of its stretch. */
    long nextWithin(long moment, long work) {
        long at = next(moment);
        while (true) {
            int i = spanAfter(at);
            int end = i;
            while (stretch[end] == stretch[i]) {
                if (++end == spans) {
                    grow(false);
                    i = spanAfter(at);
                    end = i;
                }
                if (done[end] - done[i] - (at - from[i]) >= work) {
                    return at;
                }
            }
            at = from[end];
        }
    }

    /** The last moment up to there by which so much was done within its stretch. */
    long lastWithin(long moment, long work) {
        long at = moment;
        while (true) {
            int i = spanAfter(at);
            // The span with the last work done by then.
            while (i == 0) {
                grow(true);
                i = spanAfter(at);
            }
            if (from[i] >= at) {
                i--;
            }
            long end = Math.min(at, to[i]);
            int begin = i;
            while (stretch[begin] == stretch[i]) {
                if (done[i] + end - from[i] - done[begin] >= work) {
                    return end;
                }
                if (--begin < 0) {
                    grow(true);
                    i = spanAfter(end - 1);
                    begin = i;
                }
            }
            at = to[begin];
        }
    }

    /** The spans of work between two moments: from and to in turn. */
    long[] spansBetween(long first, long last) {
        cover(first);
        cover(last);
        long[] found = new long[8];
        int n = 0;
        for (int i = spanAfter(first); i < spans && from[i] < last; i++) {
            if (n == found.length) {
                found = Arrays.copyOf(found, 2 * n);
            }
            found[n++] = Math.max(first, from[i]);
            found[n++] = Math.min(last, to[i]);
        }
        return Arrays.copyOf(found, n);
    }
}
