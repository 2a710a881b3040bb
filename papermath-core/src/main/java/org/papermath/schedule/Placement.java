package org.papermath.schedule;

/** Where the phases lie: moments in minutes, and how good that is. */
final class Placement {
    private final Shop shop;
    /** Start and finish of each phase; not known where it is {@link Minutes#NEVER} or more. */
    final long[] start;

    final long[] finish;
    /** How far longest waits are passed, all of them. */
    final long passed;
    /** How far days asked for are passed, all of them. */
    final long late;
    /** How far what may not begin yet begins too early. */
    final long early;

    final long firstStart;
    final long lastFinish;
    /** All finishes together, to tell two apart that are done at the same time. */
    final long sum;
    /** How many phases lie nobody knows where. */
    final int unknown;

    Placement(Shop shop, Axis axis, long[] begin, long[] end) {
        this.shop = shop;
        int n = begin.length;
        start = new long[n];
        finish = new long[n];
        long first = Minutes.NEVER;
        long last = -Minutes.NEVER;
        int open = 0;
        for (int p = 0; p < n; p++) {
            long b = begin[p] >= Minutes.NEVER ? Minutes.NEVER : axis.turn(begin[p]);
            long e = end[p] >= Minutes.NEVER ? Minutes.NEVER : axis.turn(end[p]);
            start[p] = axis.isBack() ? e : b;
            finish[p] = axis.isBack() ? b : e;
            if (b < Minutes.NEVER && e < Minutes.NEVER) {
                first = Math.min(first, start[p]);
                last = Math.max(last, finish[p]);
            } else {
                open++;
            }
        }
        firstStart = first;
        lastFinish = last;
        unknown = open;
        long passedSum = 0;
        for (int link = 0; link < shop.to.length; link++) {
            passedSum += passed(link);
        }
        passed = passedSum;
        long lateSum = 0;
        long earlySum = 0;
        long finishes = 0;
        for (int task = 0; task < shop.tasks.length; task++) {
            if (isKnown(finishOf(task))) {
                lateSum += Math.max(0, finishOf(task) - shop.due[task]);
                finishes += finishOf(task) - first;
            }
            if (isKnown(startOf(task))) {
                earlySum += Math.max(0, shop.notBefore[task] - startOf(task));
            }
        }
        late = lateSum;
        early = earlySum;
        sum = finishes;
    }

    boolean isWhole() {
        return unknown == 0;
    }

    static boolean isKnown(long moment) {
        return moment < Minutes.NEVER;
    }

    long startOf(int task) {
        return start[shop.first[task]];
    }

    long finishOf(int task) {
        return finish[shop.first[task + 1] - 1];
    }

    /** By how much a longest wait is passed; 0 if it is kept, there is none, or that is not known. */
    long passed(int link) {
        if (shop.most[link] == Minutes.NEVER) {
            return 0;
        }
        long from = finishOf(shop.from[link]);
        long to = startOf(shop.to[link]);
        return isKnown(from) && isKnown(to) ? Math.max(0, to - from - shop.most[link]) : 0;
    }

    /** Whether it is better than another that begins at the same moment. */
    boolean isSoonerThan(Placement that) {
        int compared = Integer.compare(unknown, that.unknown);
        compared = compared != 0 ? compared : Long.compare(passed, that.passed);
        compared = compared != 0 ? compared : Long.compare(late, that.late);
        compared = compared != 0 ? compared : Long.compare(lastFinish, that.lastFinish);
        return (compared != 0 ? compared : Long.compare(sum, that.sum)) < 0;
    }

    /** Whether it is better than another that ends at the same moment. */
    boolean isLaterThan(Placement that) {
        int compared = Integer.compare(unknown, that.unknown);
        compared = compared != 0 ? compared : Long.compare(passed, that.passed);
        compared = compared != 0 ? compared : Long.compare(late + early, that.late + that.early);
        compared = compared != 0 ? compared : Long.compare(that.firstStart, firstStart);
        return (compared != 0 ? compared : Long.compare(-sum, -that.sum)) < 0;
    }
}
