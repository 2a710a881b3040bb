package org.papermath.equation;

import org.papermath.numeric.Rounding;

/**
 * Drying between blotters changed by hand: {@code X = Xe + (X0 - Xe) k^n}. Blotters lie in the same air as the sheets
 * and hold its water already, so they take the less the damper it is.
 *
 * @param kept share of its removable water a sheet keeps through one change of bone-dry blotters
 * @param between time from one change to the next, s
 * @param capacity water a blotter takes up over its dry mass
 */
public record BlotterDrying(double kept, double between, double capacity) {
    /** The share kept through one change in air that leaves a moisture ratio in paper. */
    public double keptAt(double equilibrium) {
        return 1 - (1 - kept) * Math.max(0, 1 - equilibrium / capacity);
    }

    /** Whole changes from one moisture ratio to another; infinite where the blotters never bring it there. */
    public double changes(double start, double end, double equilibrium) {
        double changes = Drying.blotterChanges(start - equilibrium, end - equilibrium, 1 - keptAt(equilibrium));
        return Double.isInfinite(changes) ? changes : Rounding.ceil(changes);
    }

    /** Time (s) of so many changes. */
    public double time(double changes) {
        return Double.isInfinite(changes) ? changes : changes * between;
    }

    /** The share kept behind the moisture ratios before and after some changes of blotters of a capacity. */
    public static double keptOf(double before, double after, double equilibrium, double capacity, double changes) {
        double taken = Drying.blotterShare(before - equilibrium, after - equilibrium, changes);
        return 1 - taken / (1 - equilibrium / capacity);
    }
}
