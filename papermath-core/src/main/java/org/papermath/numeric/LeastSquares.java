package org.papermath.numeric;

import java.util.Arrays;

/**
 * The least squares of residuals that need not be linear in their parameters, by steps of Gauss and Newton, shortened
 * where they do not help.
 *
 * @source Marquardt, Journal of the Society for Industrial and Applied Mathematics 11, 1963, recalled, not looked up
 */
public final class LeastSquares {
    private static final int MOST_STEPS = 300;
    private static final double SHORTEST = 1e-14;
    /** A step that makes the squares less by a smaller part than this finds nothing any more. */
    private static final double LEAST_GAIN = 1e-13;
    /** A step of a parameter, over its scale, to see what it does; central, so that the next error is of its square. */
    private static final double LOOK = 1e-5;

    private final double[] parameters;
    private final double[][] covariance;
    private final double squares;

    private LeastSquares(double[] parameters, double[][] covariance, double squares) {
        this.parameters = parameters;
        this.covariance = covariance;
        this.squares = squares;
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
        int[] free = free(scales);
        double[] at = start.clone();
        double[] off = residuals.at(at);
        double least = sum(off);
        double damping = 1e-3;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[][] slopes = slopes(at, scales, free, residuals);
            boolean better = false;
            boolean still = false;
            while (!better && !still && damping < 1e12) {
                double[] move = solve(slopes, off, damping);
                double[] next = at.clone();
                double longest = 0;
                for (int j = 0; j < free.length; j++) {
                    next[free[j]] += move[j] * scales[free[j]];
                    longest = Math.max(longest, Math.abs(move[j]));
                }
                double[] there = residuals.at(next);
                double value = sum(there);
                if (value < least) {
                    better = true;
                    still = least - value < LEAST_GAIN * least;
                    at = next;
                    off = there;
                    least = value;
                    damping = Math.max(1e-15, damping / 10);
                } else {
                    damping *= 4;
                }
                still |= longest < SHORTEST;
            }
            if (!better || still) {
                break;
            }
        }
        return new LeastSquares(at, covariance(at, scales, free, residuals), least);
    }

    /** Where the squares are least. */
    public double[] parameters() {
        return parameters.clone();
    }

    /** How the parameters vary together, where the residuals have errors of one; nothing of those that stay. */
    public double covariance(int one, int other) {
        return covariance[one][other];
    }

    /** The least sum of squares. */
    public double squares() {
        return squares;
    }

    private static int[] free(double[] scales) {
        int[] free = new int[scales.length];
        int count = 0;
        for (int i = 0; i < scales.length; i++) {
            if (scales[i] > 0) {
                free[count++] = i;
            }
        }
        return Arrays.copyOf(free, count);
    }

    private static double sum(double[] off) {
        double sum = 0;
        for (double one : off) {
            sum += one * one;
        }
        return sum;
    }

    /** What one scale of each free parameter does to each residual. */
    private static double[][] slopes(double[] at, double[] scales, int[] free, Residuals residuals) {
        double[][] slopes = new double[free.length][];
        for (int j = 0; j < free.length; j++) {
            double[] above = at.clone();
            above[free[j]] += LOOK * scales[free[j]];
            double[] below = at.clone();
            below[free[j]] -= LOOK * scales[free[j]];
            double[] up = residuals.at(above);
            double[] down = residuals.at(below);
            double[] slope = new double[up.length];
            for (int i = 0; i < slope.length; i++) {
                slope[i] = (up[i] - down[i]) / (2 * LOOK);
            }
            slopes[j] = slope;
        }
        return slopes;
    }

    /** The step that takes the residuals nearest to nothing, with a damping on its length; by reflections. */
    private static double[] solve(double[][] slopes, double[] off, double damping) {
        int n = slopes.length;
        int m = off.length;
        double[][] columns = new double[n][];
        double[] right = Arrays.copyOf(off, m + n);
        for (int j = 0; j < n; j++) {
            columns[j] = Arrays.copyOf(slopes[j], m + n);
            columns[j][m + j] = Math.sqrt(damping) * Math.sqrt(sum(slopes[j]));
        }
        for (int i = 0; i < m; i++) {
            right[i] = -right[i];
        }
        reflect(columns, right);
        double[] move = new double[n];
        for (int j = n - 1; j >= 0; j--) {
            double rest = right[j];
            for (int k = j + 1; k < n; k++) {
                rest -= columns[k][j] * move[k];
            }
            move[j] = columns[j][j] == 0 ? 0 : rest / columns[j][j];
        }
        return move;
    }

    /** Makes the columns an upper triangle, and turns the right side with them. */
    private static void reflect(double[][] columns, double[] right) {
        int n = columns.length;
        for (int j = 0; j < n; j++) {
            double[] column = columns[j];
            double length = 0;
            for (int i = j; i < column.length; i++) {
                length = Math.hypot(length, column[i]);
            }
            if (length == 0) {
                continue;
            }
            double[] mirror = column.clone();
            mirror[j] += column[j] > 0 ? length : -length;
            double square = 0;
            for (int i = j; i < mirror.length; i++) {
                square += mirror[i] * mirror[i];
            }
            for (int k = j; k <= n; k++) {
                double[] turned = k < n ? columns[k] : right;
                double part = 0;
                for (int i = j; i < mirror.length; i++) {
                    part += mirror[i] * turned[i];
                }
                part *= 2 / square;
                for (int i = j; i < mirror.length; i++) {
                    turned[i] -= part * mirror[i];
                }
            }
        }
    }

    private static double[][] covariance(double[] at, double[] scales, int[] free, Residuals residuals) {
        int n = free.length;
        double[][] columns = slopes(at, scales, free, residuals);
        int m = n == 0 ? 0 : columns[0].length;
        for (int j = 0; j < n; j++) {
            columns[j] = Arrays.copyOf(columns[j], Math.max(m, n));
        }
        reflect(columns, new double[Math.max(m, n)]);
        // The inverse of the triangle; a parameter that moves nothing is not told at all.
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
        double[][] covariance = new double[at.length][at.length];
        for (int a = 0; a < n; a++) {
            for (int b = 0; b < n; b++) {
                double sum = 0;
                for (int k = Math.max(a, b); k < n; k++) {
                    sum += inverse[a][k] * inverse[b][k];
                }
                covariance[free[a]][free[b]] = sum * scales[free[a]] * scales[free[b]];
            }
        }
        return covariance;
    }
}
