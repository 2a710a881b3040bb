package org.papermath.numeric;

import java.util.Arrays;

/**
 * Least squares in which a reading far off all others has no say. Each reading that may be doubted is weighed by how far it
 * lies off, over its error and over the scatter of all: first by Huber's weights, which no single one can turn round, then
 * by Tukey's, which end at nothing.
 *
 * @source weights of Huber and of Tukey with 95 % of the surety of least squares where nothing is off, and the scatter by
 *     the median distance: Holland and Welsch, Communications in Statistics A6, 1977, recalled, not looked up
 */
public final class RobustFit {
    private static final double HUBER = 1.345;
    private static final double TUKEY = 4.685;
    /** The median distance of a normal scatter, over its standard deviation. */
    private static final double MEDIAN = 0.674489750196082;

    private static final int MOST_ROUNDS = 50;
    private static final double SETTLED = 1e-6;

    private final LeastSquares fit;
    private final double[] weights;
    private final double scatter;
    private final boolean settled;

    private RobustFit(LeastSquares fit, double[] weights, double scatter, boolean settled) {
        this.fit = fit;
        this.weights = weights;
        this.scatter = scatter;
        this.settled = settled;
    }

    /**
     * Finds it.
     *
     * @param start where the search begins
     * @param scales by about how much each parameter may move; a parameter of scale zero stays where it is
     * @param doubted which of the residuals are readings that may be off; the others keep all their say
     * @param least the least scatter there can be, over the errors: one where readings are as good as they are said to be
     * @param residuals the distances
     */
    public static RobustFit of(
            double[] start, double[] scales, boolean[] doubted, double least, LeastSquares.Residuals residuals) {
        double[] weights = new double[doubted.length];
        Arrays.fill(weights, 1);
        LeastSquares fit = LeastSquares.of(start, scales, residuals);
        double scatter = least;
        boolean settled = false;
        for (boolean ends : new boolean[] {false, true}) {
            settled = false;
            for (int round = 0; round < MOST_ROUNDS && !settled; round++) {
                double[] distances = distances(residuals.at(fit.parameters()), fit.leverages());
                // The scatter settles with the first weights, and those that end at nothing go by it.
                scatter = ends ? scatter : Math.max(least, scatter(distances, doubted));
                double[] next = weights.clone();
                double moved = 0;
                for (int i = 0; i < next.length; i++) {
                    if (doubted[i]) {
                        next[i] = weight(distances[i] / scatter, ends);
                        moved = Math.max(moved, Math.abs(next[i] - weights[i]));
                    }
                }
                weights = next;
                settled = moved < SETTLED;
                double[] weighed = weights;
                fit = LeastSquares.of(fit.parameters(), scales, at -> weighed(residuals.at(at), weighed));
            }
        }
        return new RobustFit(fit, weights, scatter, settled);
    }

    private static double[] weighed(double[] off, double[] weights) {
        double[] result = off.clone();
        for (int i = 0; i < result.length; i++) {
            result[i] *= Math.sqrt(weights[i]);
        }
        return result;
    }

    /** How far each reading lies off, larger where it draws the curve to itself. */
    private static double[] distances(double[] off, double[] leverages) {
        double[] distances = new double[off.length];
        for (int i = 0; i < distances.length; i++) {
            distances[i] = Math.abs(off[i]) / Math.sqrt(Math.max(SETTLED, 1 - leverages[i]));
        }
        return distances;
    }

    private static double scatter(double[] distances, boolean[] doubted) {
        double[] some = new double[distances.length];
        int count = 0;
        for (int i = 0; i < distances.length; i++) {
            if (doubted[i]) {
                some[count++] = distances[i];
            }
        }
        if (count == 0) {
            return 0;
        }
        Arrays.sort(some, 0, count);
        return (some[(count - 1) / 2] + some[count / 2]) / 2 / MEDIAN;
    }

    private static double weight(double distance, boolean ends) {
        if (!ends) {
            return distance <= HUBER ? 1 : HUBER / distance;
        }
        double rest = 1 - distance * distance / (TUKEY * TUKEY);
        return rest > 0 ? rest * rest : 0;
    }

    /** The fit, with the weights in its residuals. */
    public LeastSquares fit() {
        return fit;
    }

    /** What each residual counts for, from 0 to 1. */
    public double[] weights() {
        return weights.clone();
    }

    /** Whether a residual lies so far off the others, 4.685 times their scatter or more, that it has no say. */
    public boolean isOff(int residual) {
        return weights[residual] == 0;
    }

    /** The scatter of the readings, over their errors. */
    public double scatter() {
        return scatter;
    }

    /** Whether weights and fit came to an end. */
    public boolean isConverged() {
        return settled && fit.isConverged();
    }
}
