package org.papermath.numeric;

import java.util.Arrays;

/**
 * The least squares of residuals that need not be linear in their parameters, by steps of Gauss and Newton, damped where
 * they do not help and bent along the course of the residuals. It says whether it came to an end: what did not must not be
 * taken for an answer. A least that is one of several is an end too, so a start far off is tried from more than one place.
 *
 * @source Marquardt, Journal of the Society for Industrial and Applied Mathematics 11, 1963, with the damping of each
 *     parameter by the steepest it was yet (Moré, in Numerical Analysis, 1978) and the second order of a step (Transtrum and
 *     Sethna, arXiv:1201.5885, 2012); recalled, not looked up
 */
public final class LeastSquares {
    private static final int MOST_STEPS = 500;
    private static final double DAMPING = 1;
    private static final double MORE_DAMPING = 2;
    private static final double LESS_DAMPING = 0.1;
    private static final double LEAST_DAMPING = 1e-15;
    private static final double MOST_DAMPING = 1e15;
    /** A step is looked along for so much of it, to see how the residuals bend. */
    private static final double LOOK_ALONG = 0.1;
    /** A step whose second order is a larger part of it is too long. */
    private static final double MOST_BEND = 0.5;
    /** A step of no parameter longer than this, over its scale, is straight but for rounding. */
    private static final double STRAIGHT = 1e-6;
    /** The same below which it is none. */
    private static final double SHORTEST = 1e-15;
    /** What a whole step would take off the squares, as a part of them, below which whole steps are safe. */
    private static final double NEAR = 1e-8;
    /** The same below which nothing is left to be found. */
    private static final double NOTHING = 1e-18;
    /** Whole steps go on while each leaves at most this part of what the one before left to be gained. */
    private static final double STILL_FALLING = 0.95;
    /** By how much squares may seem to grow from rounding alone. */
    private static final double ROUNDING = 1e-12;
    /** Where rounding leaves only noise, a whole step over the scales that is as good as none. */
    private static final double AS_GOOD_AS_NONE = 1e-8;
    /** A parameter that the others imitate to this part of what it does is not told. */
    private static final double IMITATED = 1e-9;

    private final double[] parameters;
    private final double[][] covariance;
    private final double[] residuals;
    private final double[] leverages;
    private final boolean told;
    private final boolean converged;
    private final double leftToGain;
    private final int evaluations;

    private LeastSquares(Search search) {
        parameters = search.at;
        residuals = search.off;
        covariance = search.covariance();
        leverages = search.leverages();
        told = search.isTold();
        converged = search.converged && told;
        leftToGain = search.triangle.gain();
        evaluations = search.evaluations;
    }

    /** Distances of a model from what was read, each over its error. */
    public interface Residuals {
        /** The distances, always as many; not finite where the model has no answer. */
        double[] at(double[] parameters);
    }

    /**
     * Finds them.
     *
     * @param start where the search begins; the residuals are finite there
     * @param scales by about how much each parameter may move; a parameter of scale zero stays where it is
     * @param residuals the distances
     */
    public static LeastSquares of(double[] start, double[] scales, Residuals residuals) {
        Search search = new Search(start, scales, residuals);
        search.run();
        return new LeastSquares(search);
    }

    /** Where the squares are least, if {@link #isConverged()}; else where the search was left. */
    public double[] parameters() {
        return parameters.clone();
    }

    /**
     * Whether the squares are least here: no step would take off more than 1e-8 of them, or none is left but of rounding,
     * and every parameter that may move is told by the residuals.
     */
    public boolean isConverged() {
        return converged;
    }

    /** Whether every parameter that may move does something to the residuals that the others do not. */
    public boolean isTold() {
        return told;
    }

    /**
     * What a whole step would take off the squares, if the residuals were straight. Where they have a corner, the search can
     * stop in it with something left, and does not count as converged.
     */
    public double leftToGain() {
        return leftToGain;
    }

    /** How the parameters vary together, where the residuals have errors of one; nothing of those that stay. */
    public double covariance(int one, int other) {
        return covariance[one][other];
    }

    /** The same over the errors of both, from -1 to 1; zero for those that stay. */
    public double correlation(int one, int other) {
        double both = Math.sqrt(covariance[one][one] * covariance[other][other]);
        return both > 0 ? covariance[one][other] / both : 0;
    }

    /** The least sum of squares. */
    public double squares() {
        return sum(residuals);
    }

    /** The residuals that are left. */
    public double[] residuals() {
        return residuals.clone();
    }

    /** How much each residual has a say in what is found, from 0 to 1; they add up to the number of parameters told. */
    public double[] leverages() {
        return leverages.clone();
    }

    /**
     * Each residual over what it would scatter by, where errors are one: what has much of a say draws the curve to itself
     * and shows little. One that has all of the say is zero and tells nothing.
     */
    public double[] standardised() {
        double[] result = new double[residuals.length];
        for (int i = 0; i < result.length; i++) {
            double left = 1 - leverages[i];
            result[i] = left > IMITATED ? residuals[i] / Math.sqrt(left) : 0;
        }
        return result;
    }

    /** How often the residuals were worked out. */
    public int evaluations() {
        return evaluations;
    }

    static double sum(double[] off) {
        double sum = 0;
        for (double one : off) {
            sum += one * one;
        }
        return sum;
    }

    /** One search on its way. */
    private static final class Search {
        private final double[] scales;
        private final int[] free;
        private final Residuals residuals;
        private final Slopes slopes;
        /** The most that one scale of each free parameter did to the residuals yet. */
        private final double[] steepest;

        private double[] at;
        private double[] off;
        private double least;
        private double[][] columns;
        private Triangle triangle;
        private double damping = DAMPING;
        private boolean converged;
        private int evaluations;

        Search(double[] start, double[] scales, Residuals residuals) {
            this.scales = scales.clone();
            this.residuals = residuals;
            int[] some = new int[scales.length];
            int count = 0;
            for (int i = 0; i < scales.length; i++) {
                if (scales[i] > 0) {
                    some[count++] = i;
                }
            }
            free = Arrays.copyOf(some, count);
            steepest = new double[count];
            slopes = new Slopes(this.scales, free, this::work);
            at = start.clone();
            off = work(at);
            least = sum(off);
            columns = slopes.at(at, off);
            triangle = turned();
        }

        private double[] work(double[] parameters) {
            evaluations++;
            return residuals.at(parameters);
        }

        private Triangle turned() {
            for (int j = 0; j < free.length; j++) {
                steepest[j] = Math.max(steepest[j], Math.sqrt(sum(columns[j])));
            }
            return new Triangle(columns, off);
        }

        void run() {
            double before = Double.POSITIVE_INFINITY;
            for (int step = 0; step < MOST_STEPS; step++) {
                // What a whole step would take off, if the residuals were straight.
                double gain = triangle.gain();
                boolean near = gain <= NEAR * least;
                if (near && (gain <= NOTHING * least || gain > STILL_FALLING * before || !whole())) {
                    converged = true;
                    return;
                }
                if (!near && !damped()) {
                    converged = longest(triangle.step(steepest, 0)) < AS_GOOD_AS_NONE;
                    return;
                }
                before = gain;
            }
            converged = triangle.gain() <= NEAR * least;
        }

        /** Takes the whole step if the squares do not grow. */
        private boolean whole() {
            double[] move = triangle.step(steepest, 0);
            return take(move, least * (1 + ROUNDING)) && longest(move) >= SHORTEST;
        }

        /** Takes the longest step that makes the squares less; false if there is none. */
        private boolean damped() {
            while (damping < MOST_DAMPING) {
                double[] move = triangle.step(steepest, damping);
                double longest = longest(move);
                if (!(longest >= SHORTEST)) {
                    return false;
                }
                if ((longest < STRAIGHT || bend(move)) && take(move, Math.nextDown(least))) {
                    damping = Math.max(LEAST_DAMPING, damping * LESS_DAMPING);
                    return true;
                }
                damping *= MORE_DAMPING;
            }
            return false;
        }

        private boolean take(double[] move, double most) {
            double[] next = moved(move, 1);
            double[] there = work(next);
            double value = sum(there);
            if (!(value <= most)) {
                return false;
            }
            at = next;
            off = there;
            least = value;
            columns = slopes.at(at, off);
            triangle = turned();
            return true;
        }

        /** Bends the step as the residuals bend along it; false if they bend too much for its length. */
        private boolean bend(double[] move) {
            double[] along = work(moved(move, LOOK_ALONG));
            double[] second = new double[along.length];
            for (int i = 0; i < second.length; i++) {
                double straight = 0;
                for (int j = 0; j < move.length; j++) {
                    straight += columns[j][i] * move[j];
                }
                second[i] = 2 / LOOK_ALONG * ((along[i] - off[i]) / LOOK_ALONG - straight);
            }
            double[] bent = triangle.step(second, steepest, damping);
            double first = 0;
            double then = 0;
            for (int j = 0; j < move.length; j++) {
                first += steepest[j] * steepest[j] * move[j] * move[j];
                then += steepest[j] * steepest[j] * bent[j] * bent[j];
            }
            if (!(2 * Math.sqrt(then) <= MOST_BEND * Math.sqrt(first))) {
                return false;
            }
            for (int j = 0; j < move.length; j++) {
                move[j] += bent[j] / 2;
            }
            return true;
        }

        private double[] moved(double[] move, double part) {
            double[] next = at.clone();
            for (int j = 0; j < free.length; j++) {
                next[free[j]] += part * move[j] * scales[free[j]];
            }
            return next;
        }

        private static double longest(double[] move) {
            double longest = 0;
            for (double one : move) {
                longest = Math.max(longest, Math.abs(one));
            }
            return longest;
        }

        boolean isTold() {
            for (int j = 0; j < free.length; j++) {
                if (!(triangle.own(j) > IMITATED * steepest[j])) {
                    return false;
                }
            }
            return true;
        }

        double[][] covariance() {
            double[][] inverse = triangle.inverse();
            double[][] covariance = new double[at.length][at.length];
            for (int a = 0; a < free.length; a++) {
                for (int b = 0; b < free.length; b++) {
                    double sum = 0;
                    for (int k = Math.max(a, b); k < free.length; k++) {
                        sum += inverse[a][k] * inverse[b][k];
                    }
                    covariance[free[a]][free[b]] = sum * scales[free[a]] * scales[free[b]];
                }
            }
            return covariance;
        }

        double[] leverages() {
            double[] leverages = new double[off.length];
            for (int i = 0; i < leverages.length; i++) {
                double[] row = new double[free.length];
                for (int j = 0; j < row.length; j++) {
                    row[j] = columns[j][i];
                }
                leverages[i] = Math.min(1, sum(triangle.across(row)));
            }
            return leverages;
        }
    }

    /** What each free parameter does to the residuals, by central differences no wider than the residuals are straight. */
    private static final class Slopes {
        /** A step of a parameter, over its scale, to see what it does; central, so that the next error is of its square. */
        private static final double LOOK = 1e-5;
        /** By how much what a step does on its two sides may differ, as a part of it. */
        private static final double EVEN = 1e-4;

        private static final double NARROWEST = 1e-8;

        private final double[] scales;
        private final int[] free;
        private final Residuals residuals;
        private final double[] look;

        Slopes(double[] scales, int[] free, Residuals residuals) {
            this.scales = scales;
            this.free = free;
            this.residuals = residuals;
            look = new double[free.length];
            Arrays.fill(look, LOOK);
        }

        /** What one scale of each free parameter does to each residual. */
        double[][] at(double[] at, double[] off) {
            double[][] slopes = new double[free.length][];
            for (int j = 0; j < free.length; j++) {
                double step = look[j] * scales[free[j]];
                double[] above = at.clone();
                above[free[j]] += step;
                double[] below = at.clone();
                below[free[j]] -= step;
                double[] up = residuals.at(above);
                double[] down = residuals.at(below);
                double[] slope = new double[up.length];
                double rise = 0;
                double bend = 0;
                for (int i = 0; i < slope.length; i++) {
                    slope[i] = (up[i] - down[i]) / (2 * look[j]);
                    rise += (up[i] - down[i]) * (up[i] - down[i]) / 4;
                    double two = up[i] - 2 * off[i] + down[i];
                    bend += two * two;
                }
                slopes[j] = slope;
                narrow(j, Math.sqrt(bend / rise));
            }
            return slopes;
        }

        /**
         * The width for the next time. What no width within reason makes even is a corner, or rounding, and is looked at as
         * usual; where the parameter does nothing, its unevenness is not a number, and the width stays.
         */
        private void narrow(int j, double uneven) {
            if (uneven > EVEN) {
                double narrower = look[j] * EVEN / 10 / uneven;
                look[j] = narrower >= NARROWEST ? narrower : LOOK;
            } else if (uneven < EVEN / 100 && look[j] < LOOK) {
                look[j] = Math.min(LOOK, look[j] * 10);
            }
        }
    }

    /** Columns turned by reflections until they are an upper triangle, and the right side turned with them. */
    private static final class Triangle {
        private final double[][] columns;
        private final double[][] mirrors;
        private final double[] right;

        Triangle(double[][] slopes, double[] off) {
            int rows = Math.max(off.length, slopes.length);
            columns = new double[slopes.length][];
            for (int j = 0; j < columns.length; j++) {
                columns[j] = Arrays.copyOf(slopes[j], rows);
            }
            mirrors = reflect(columns);
            right = turned(off);
        }

        private double[] turned(double[] off) {
            double[] turned = Arrays.copyOf(off, Math.max(off.length, columns.length));
            for (int j = 0; j < mirrors.length; j++) {
                mirror(mirrors[j], j, turned);
            }
            return turned;
        }

        /** What the whole step takes off the squares. */
        double gain() {
            return sum(Arrays.copyOf(right, columns.length));
        }

        /** How much a parameter does that those before it do not. */
        double own(int j) {
            return Math.abs(columns[j][j]);
        }

        /** The step that takes the residuals nearest to nothing, with a damping on its length. */
        double[] step(double[] weights, double damping) {
            return solve(right, weights, damping);
        }

        /** The same for other residuals. */
        double[] step(double[] off, double[] weights, double damping) {
            return solve(turned(off), weights, damping);
        }

        private double[] solve(double[] turned, double[] weights, double damping) {
            int n = columns.length;
            double[][] both = new double[n][];
            double[] sides = Arrays.copyOf(Arrays.copyOf(turned, n), 2 * n);
            for (int j = 0; j < n; j++) {
                both[j] = Arrays.copyOf(Arrays.copyOf(columns[j], j + 1), 2 * n);
                both[j][n + j] = Math.sqrt(damping) * weights[j];
            }
            if (damping > 0) {
                double[][] again = reflect(both);
                for (int j = 0; j < n; j++) {
                    mirror(again[j], j, sides);
                }
            }
            double[] move = new double[n];
            for (int j = n - 1; j >= 0; j--) {
                double rest = -sides[j];
                for (int k = j + 1; k < n; k++) {
                    rest -= both[k][j] * move[k];
                }
                move[j] = both[j][j] == 0 ? 0 : rest / both[j][j];
            }
            return move;
        }

        /** The inverse; a parameter that moves nothing is not told at all. */
        double[][] inverse() {
            int n = columns.length;
            double[][] inverse = new double[n][n];
            for (int c = 0; c < n; c++) {
                for (int j = c; j >= 0; j--) {
                    double rest = j == c ? 1 : 0;
                    for (int k = j + 1; k <= c; k++) {
                        rest -= columns[k][j] * inverse[k][c];
                    }
                    inverse[j][c] = rest / columns[j][j];
                }
            }
            return inverse;
        }

        /** A row of the columns by the inverse. */
        double[] across(double[] row) {
            double[] result = row.clone();
            for (int j = 0; j < result.length; j++) {
                for (int k = 0; k < j; k++) {
                    result[j] -= columns[j][k] * result[k];
                }
                result[j] = columns[j][j] == 0 ? 0 : result[j] / columns[j][j];
            }
            return result;
        }

        /** Makes the columns an upper triangle, and returns the mirrors that do it, an empty one for a column of nothing. */
        private static double[][] reflect(double[][] columns) {
            double[][] mirrors = new double[columns.length][];
            for (int j = 0; j < columns.length; j++) {
                double[] column = columns[j];
                double length = 0;
                for (int i = j; i < column.length; i++) {
                    length = Math.hypot(length, column[i]);
                }
                double[] mirror = column.clone();
                mirror[j] += column[j] > 0 ? length : -length;
                mirrors[j] = length == 0 ? new double[0] : mirror;
                for (int k = j; k < columns.length; k++) {
                    mirror(mirrors[j], j, columns[k]);
                }
            }
            return mirrors;
        }

        private static void mirror(double[] mirror, int from, double[] turned) {
            double square = 0;
            double part = 0;
            for (int i = from; i < mirror.length; i++) {
                square += mirror[i] * mirror[i];
                part += mirror[i] * turned[i];
            }
            if (square == 0) {
                return;
            }
            part *= 2 / square;
            for (int i = from; i < mirror.length; i++) {
                turned[i] -= part * mirror[i];
            }
        }
    }
}
