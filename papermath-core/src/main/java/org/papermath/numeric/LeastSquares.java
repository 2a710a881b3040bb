package org.papermath.numeric;

import java.util.Arrays;

/** Non-linear least squares by the method of Levenberg and Marquardt, with an end to the search. */
public final class LeastSquares {
    private static final int MOST_STEPS = 400;
    private static final double SMALLEST_CHANGE = 1e-14;
    private static final double DIFFERENCE = Math.cbrt(Math.ulp(1.0));
    private static final double LEAST_DAMPING = 1e-12;
    private static final double MOST_DAMPING = 1e16;

    private LeastSquares() {}

    /** The differences between model and readings at some parameters. */
    @FunctionalInterface
    public interface Residuals {
        /** Writes the residual of each reading into an array of their number. */
        void at(double[] parameters, double[] into);
    }

    /**
     * What was found.
     *
     * @param parameters at the least sum of squares
     * @param standardErrors of the parameters, from the residual scatter; NaN when there are no more readings than
     *     parameters or the readings do not tell the parameters apart
     * @param sumOfSquares of the residuals
     * @param steps taken
     * @param converged whether the search came to rest before its end
     */
    public record Fit(double[] parameters, double[] standardErrors, double sumOfSquares, int steps, boolean converged) {
        /** Root of the mean square of the residuals. */
        public double rms(int readings) {
            return Math.sqrt(sumOfSquares / readings);
        }
    }

    /**
     * Finds the parameters with the least sum of squares, from a start.
     *
     * @throws ArithmeticException when the residuals at the start are not finite
     */
    public static Fit fit(Residuals residuals, int readings, double... start) {
        int p = start.length;
        double[] x = start.clone();
        double[] r = new double[readings];
        double sum = sum(residuals, x, r);
        if (!Double.isFinite(sum)) {
            throw new ArithmeticException("the start " + Arrays.toString(start) + " gives no finite residuals");
        }
        double[][] normal = new double[p][p];
        double[] gradient = new double[p];
        double damping = 1e-3;
        boolean converged = false;
        int steps = 0;
        while (steps < MOST_STEPS && !converged) {
            steps++;
            linearise(residuals, x, r, normal, gradient);
            boolean better = false;
            while (!better && damping <= MOST_DAMPING) {
                double[] step = solve(normal, gradient, damping);
                double[] trial = new double[p];
                double moved = 0;
                for (int k = 0; k < p; k++) {
                    trial[k] = x[k] - step[k];
                    moved = Math.max(moved, Math.abs(step[k]) / (Math.abs(x[k]) + 1e-300));
                }
                double[] there = new double[readings];
                double next = sum(residuals, trial, there);
                if (next < sum) {
                    better = true;
                    converged = moved <= SMALLEST_CHANGE;
                    x = trial;
                    r = there;
                    sum = next;
                    damping = Math.max(LEAST_DAMPING, damping / 10);
                } else if (moved <= SMALLEST_CHANGE) {
                    converged = true;
                    break;
                } else {
                    damping *= 10;
                }
            }
            if (!better) {
                converged = true;
            }
        }
        linearise(residuals, x, r, normal, gradient);
        return new Fit(x, errors(normal, sum, readings, p), sum, steps, converged);
    }

    private static double sum(Residuals residuals, double[] x, double[] into) {
        residuals.at(x, into);
        double sum = 0;
        for (int i = 0; i < into.length; i++) {
            sum += into[i] * into[i];
        }
        return Double.isNaN(sum) ? Double.POSITIVE_INFINITY : sum;
    }

    /** Fills the normal matrix and the gradient from central differences. */
    private static void linearise(Residuals residuals, double[] x, double[] r, double[][] normal, double[] gradient) {
        int n = r.length;
        int p = x.length;
        double[][] slopes = new double[p][n];
        double[] below = new double[n];
        for (int k = 0; k < p; k++) {
            double h = DIFFERENCE * (x[k] == 0 ? 1 : Math.abs(x[k]));
            double[] moved = x.clone();
            moved[k] = x[k] + h;
            double up = moved[k];
            residuals.at(moved, slopes[k]);
            moved[k] = x[k] - h;
            residuals.at(moved, below);
            for (int i = 0; i < n; i++) {
                slopes[k][i] = (slopes[k][i] - below[i]) / (up - moved[k]);
            }
        }
        for (int k = 0; k < p; k++) {
            gradient[k] = 0;
            for (int i = 0; i < n; i++) {
                gradient[k] += slopes[k][i] * r[i];
            }
            for (int l = 0; l <= k; l++) {
                double product = 0;
                for (int i = 0; i < n; i++) {
                    product += slopes[k][i] * slopes[l][i];
                }
                normal[k][l] = product;
                normal[l][k] = product;
            }
        }
    }

    /** Solves the damped normal equations with columns scaled to one; a step of zero when they have no solution. */
    private static double[] solve(double[][] normal, double[] right, double damping) {
        int p = right.length;
        double[] scale = scale(normal);
        double[][] a = new double[p][p];
        double[] b = new double[p];
        for (int k = 0; k < p; k++) {
            b[k] = right[k] / scale[k];
            for (int l = 0; l < p; l++) {
                a[k][l] = normal[k][l] / (scale[k] * scale[l]);
            }
            a[k][k] += damping;
        }
        double[] z = eliminate(a, b);
        for (int k = 0; k < p; k++) {
            z[k] = Double.isFinite(z[k]) ? z[k] / scale[k] : 0;
        }
        return z;
    }

    private static double[] scale(double[][] normal) {
        double[] scale = new double[normal.length];
        for (int k = 0; k < scale.length; k++) {
            double root = Math.sqrt(normal[k][k]);
            scale[k] = root > 0 && Double.isFinite(root) ? root : 1;
        }
        return scale;
    }

    /** Gauss elimination with pivots; NaN when the matrix is singular. */
    private static double[] eliminate(double[][] a, double[] b) {
        int p = b.length;
        for (int k = 0; k < p; k++) {
            int pivot = k;
            for (int i = k + 1; i < p; i++) {
                if (Math.abs(a[i][k]) > Math.abs(a[pivot][k])) {
                    pivot = i;
                }
            }
            double[] row = a[k];
            a[k] = a[pivot];
            a[pivot] = row;
            double value = b[k];
            b[k] = b[pivot];
            b[pivot] = value;
            if (!(Math.abs(a[k][k]) > 1e-14)) {
                double[] none = new double[p];
                Arrays.fill(none, Double.NaN);
                return none;
            }
            for (int i = k + 1; i < p; i++) {
                double factor = a[i][k] / a[k][k];
                for (int j = k; j < p; j++) {
                    a[i][j] -= factor * a[k][j];
                }
                b[i] -= factor * b[k];
            }
        }
        for (int k = p - 1; k >= 0; k--) {
            for (int j = k + 1; j < p; j++) {
                b[k] -= a[k][j] * b[j];
            }
            b[k] /= a[k][k];
        }
        return b;
    }

    private static double[] errors(double[][] normal, double sum, int n, int p) {
        double[] errors = new double[p];
        double[] scale = scale(normal);
        for (int k = 0; k < p; k++) {
            double[][] a = new double[p][p];
            for (int i = 0; i < p; i++) {
                for (int j = 0; j < p; j++) {
                    a[i][j] = normal[i][j] / (scale[i] * scale[j]);
                }
            }
            double[] unit = new double[p];
            unit[k] = 1;
            double variance = eliminate(a, unit)[k] / (scale[k] * scale[k]);
            errors[k] = n > p ? Math.sqrt(variance * sum / (n - p)) : Double.NaN;
        }
        return errors;
    }
}
