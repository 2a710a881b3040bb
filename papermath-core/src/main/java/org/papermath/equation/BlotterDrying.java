package org.papermath.equation;

import org.papermath.numeric.Rounding;

/**
 * Drying between blotters changed by hand.
 *
 * @param kept share of its water a sheet keeps through one change
 * @param between time from one change to the next, s
 */
public record BlotterDrying(double kept, double between) {
    /** Whole changes from one moisture ratio to another; infinite where the blotters never bring it there. */
    public double changes(double start, double end) {
        double changes = Drying.blotterChanges(start, end, 1 - kept);
        return Double.isInfinite(changes) ? changes : Rounding.ceil(changes);
    }

    /** Time (s) of so many changes. */
    public double time(double changes) {
        return Double.isInfinite(changes) ? changes : changes * between;
    }

    /** The share kept behind the moisture ratios before and after some changes. */
    public static double keptOf(double before, double after, int changes) {
        return 1 - Drying.blotterShare(before, after, changes);
    }
}
