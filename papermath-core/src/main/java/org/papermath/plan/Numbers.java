package org.papermath.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import javax.measure.Quantity;

import org.papermath.evidence.Assumption;
import org.papermath.evidence.Estimate;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;

/** The likely results of a plan with their bands, and their reading as amounts and estimates. */
final class Numbers {
    /** Drivers weaker than this share of a band are left out. */
    private static final double LEAST_SHARE = 0.01;

    private final Job job;
    private final double[] likely;
    private final double[] low;
    private final double[] high;
    /** How far each varied assumption moves each result, at most; null without bands. */
    private final double[][] moves;

    private Numbers(Job job, double[] likely, double[] low, double[] high, double[][] moves) {
        this.job = job;
        this.likely = likely;
        this.low = low;
        this.high = high;
        this.moves = moves;
    }

    static Numbers withoutBands(Job job, double[] likely) {
        return new Numbers(job, likely, likely, likely, new double[0][]);
    }

    /**
     * First-order bands: every varied assumption is set to its 5 % and its 95 % point, one at a time, with the settings
     * held fixed; what the results move up and what they move down is summed in squares.
     */
    static Numbers withBands(Job job, Engine engine, Settings settings, double[] likely) {
        int n = likely.length;
        double[] up = new double[n];
        double[] down = new double[n];
        double[][] moves = new double[job.varied.length][n];
        double[] values = job.likely.clone();
        double[] result = new double[n];
        double[] other = new double[n];
        for (int i = 0; i < job.varied.length; i++) {
            int slot = job.varied[i];
            values[slot] = job.low[slot];
            engine.forecast(settings, values, result, null);
            values[slot] = job.high[slot];
            engine.forecast(settings, values, other, null);
            values[slot] = job.likely[slot];
            for (int j = 0; j < n; j++) {
                double a = finite(result[j] - likely[j]);
                double b = finite(other[j] - likely[j]);
                double rise = Math.max(0, Math.max(a, b));
                double fall = Math.min(0, Math.min(a, b));
                up[j] += rise * rise;
                down[j] += fall * fall;
                moves[i][j] = Math.max(rise, -fall);
            }
        }
        double[] low = new double[n];
        double[] high = new double[n];
        for (int j = 0; j < n; j++) {
            low[j] = likely[j] - Math.sqrt(down[j]);
            high[j] = likely[j] + Math.sqrt(up[j]);
        }
        return new Numbers(job, likely, low, high, moves);
    }

    private static double finite(double x) {
        return Double.isFinite(x) ? x : 0;
    }

    double likely(int at) {
        return likely[at];
    }

    double low(int at) {
        return low[at];
    }

    double high(int at) {
        return high[at];
    }

    /** How far a varied assumption moves a result; the first index counts {@link Job#varied}. */
    double move(int varied, int at) {
        return moves[varied][at];
    }

    boolean hasBands() {
        return moves.length > 0;
    }

    boolean isKnown(int at) {
        return Double.isFinite(likely[at]);
    }

    <Q extends Quantity<Q>> Estimate<Q> estimate(Kind<Q> kind, int at, String code) {
        return Estimate.of(amount(kind, likely[at], code), amount(kind, low[at], code), amount(kind, high[at], code),
                drivers(at));
    }

    private List<Estimate.Driver> drivers(int at) {
        double sum = 0;
        for (double[] move : moves) {
            sum += move[at] * move[at];
        }
        if (sum == 0) {
            return List.of();
        }
        List<Estimate.Driver> drivers = new ArrayList<>();
        for (int i = 0; i < moves.length; i++) {
            double share = moves[i][at] * moves[i][at] / sum;
            if (share >= LEAST_SHARE) {
                Assumption assumption = job.assumptions.get(job.varied[i]);
                drivers.add(new Estimate.Driver(assumption, share));
            }
        }
        drivers.sort(Comparator.comparingDouble(Estimate.Driver::share).reversed());
        return drivers;
    }

    /** A band of first order may pass the bounds of its kind, such as solids above one; what is printed does not. */
    private static <Q extends Quantity<Q>> Amount<Q> amount(Kind<Q> kind, double si, String code) {
        return kind.ofSi(Math.min(kind.highestSi(), Math.max(kind.lowestSi(), si)), code);
    }

    static <Q extends Quantity<Q>> Amount<Q> signed(Kind<Q> kind, double si, String code) {
        return si >= 0 ? kind.ofSi(si, code) : kind.ofSi(-si, code).negate();
    }

    <Q extends Quantity<Q>> Estimate<Q> signedEstimate(Kind<Q> kind, int at, String code) {
        return Estimate.of(signed(kind, likely[at], code), signed(kind, low[at], code), signed(kind, high[at], code),
                drivers(at));
    }
}
