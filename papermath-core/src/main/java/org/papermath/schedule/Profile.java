package org.papermath.schedule;

import java.util.Arrays;

/** How much of a resource is held, over an axis: steps from place to place. */
final class Profile {
    private final int count;
    /** Where each step begins; the first lies before everything. */
    private long[] at = new long[16];

    private int[] used = new int[16];
    private int steps = 1;

    Profile(int count) {
        this.count = count;
        at[0] = -Minutes.NEVER * 2;
    }

    /** The last step that begins at a place or before it. */
    private int stepAt(long place) {
        int low = 0;
        int high = steps - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (at[middle] <= place) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    /** The place itself if so many are free from there to the end; else the first from which they are free next. */
    long freeFrom(long place, long end, int need) {
        if (end <= place) {
            return place;
        }
        int most = count - need;
        int i = stepAt(place);
        long blocked = place;
        boolean free = true;
        for (; i < steps && at[i] < end; i++) {
            if (used[i] > most) {
                // Whatever begins before this step runs into it.
                int over = i;
                while (over < steps && used[over] > most) {
                    over++;
                }
                blocked = over == steps ? Minutes.NEVER : at[over];
                free = false;
                break;
            }
        }
        return free ? place : blocked;
    }

    void hold(long from, long to, int held) {
        if (to <= from) {
            return;
        }
        int first = cut(from);
        int last = cut(to);
        for (int i = first; i < last; i++) {
            used[i] += held;
        }
    }

    /** Makes a step begin at a place. */
    private int cut(long place) {
        int i = stepAt(place);
        if (at[i] == place) {
            return i;
        }
        if (steps == at.length) {
            at = Arrays.copyOf(at, 2 * steps);
            used = Arrays.copyOf(used, 2 * steps);
        }
        System.arraycopy(at, i + 1, at, i + 2, steps - i - 1);
        System.arraycopy(used, i + 1, used, i + 2, steps - i - 1);
        at[i + 1] = place;
        used[i + 1] = used[i];
        steps++;
        return i + 1;
    }
}
