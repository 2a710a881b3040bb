package org.papermath.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import javax.measure.Quantity;

import org.papermath.evidence.Assumption;
import org.papermath.evidence.Estimate;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/** The likely results of a plan with their bands, and their reading as amounts and estimates. */
final class Numbers {
    /** Drivers weaker than this share of a band are left out. */
    private static final double LEAST_SHARE = 0.01;

    private final Job job;
    private final double[] likely;
    private final double[] low;
    private final double[] high;
    /** How far each varied assumption moves each result, at most, on the scale of the result; empty without bands. */
    private final double[][] moves;

    private final boolean[] openBelow;
    private final boolean[] openAbove;

    private Numbers(Job job, double[] likely, double[] low, double[] high, double[][] moves, boolean[] openBelow,
            boolean[] openAbove) {
        this.job = job;
        this.likely = likely;
        this.low = low;
        this.high = high;
        this.moves = moves;
        this.openBelow = openBelow;
        this.openAbove = openAbove;
    }

    static Numbers withoutBands(Job job, double[] likely) {
        boolean[] open = new boolean[likely.length];
        return new Numbers(job, likely, likely, likely, new double[0][], open, open);
    }

    /**
     * First-order bands: every varied assumption is set to its 5 % and its 95 % point, one at a time, with the settings
     * held fixed; what a result moves up and what it moves down is summed in squares, on the scale of the result.
     *
     * <p>Where a result cannot be made at one end of an assumption, the band is open on that side. The shift counted is
     * the one at the farthest point where the result still can be made, so that the rest of the band does not jump.
     */
    static Numbers withBands(Job job, Engine engine, Settings settings, double[] likely) {
        return new BandMaker(job, engine, settings, likely).make();
    }

    /** Works out the bands of one plan. */
    private static final class BandMaker {
        /** How closely the farthest point of a result is looked for, as a share of the way to the end. */
        private static final double CLOSE = 1e-3;

        private final Job job;
        private final Engine engine;
        private final Settings settings;
        private final double[] likely;
        private final Scale[] scales;
        private final double[] most;
        private final double[] middle;
        private final double[] up;
        private final double[] down;
        private final boolean[] openAbove;
        private final boolean[] openBelow;
        private final double[] values;

        BandMaker(Job job, Engine engine, Settings settings, double[] likely) {
            this.job = job;
            this.engine = engine;
            this.settings = settings;
            this.likely = likely;
            int n = likely.length;
            this.scales = new Scale[n];
            this.most = new double[n];
            this.middle = new double[n];
            this.up = new double[n];
            this.down = new double[n];
            this.openAbove = new boolean[n];
            this.openBelow = new boolean[n];
            this.values = job.likely.clone();
            for (int j = 0; j < n; j++) {
                most[j] = Out.most(job, j);
                Scale scale = Out.scale(job, j);
                // What is nothing, or all there can be, has no place on its scale.
                scales[j] = Double.isFinite(scale.of(likely[j], most[j])) && likely[j] != 0 ? scale : Scale.DIFFERENCE;
                middle[j] = scales[j].of(likely[j], most[j]);
            }
        }

        Numbers make() {
            int n = likely.length;
            double[][] moves = new double[job.varied.length][n];
            double[] low = new double[n];
            double[] high = new double[n];
            double[] result = new double[n];
            for (int i = 0; i < job.varied.length; i++) {
                int slot = job.varied[i];
                double[] a = shifts(slot, job.low[slot], result).clone();
                double[] b = shifts(slot, job.high[slot], result);
                for (int j = 0; j < n; j++) {
                    double rise = Math.max(0, Math.max(a[j], b[j]));
                    double fall = Math.min(0, Math.min(a[j], b[j]));
                    up[j] += rise * rise;
                    down[j] += fall * fall;
                    moves[i][j] = Math.max(rise, -fall);
                }
            }
            for (int j = 0; j < n; j++) {
                low[j] = down[j] == 0 ? likely[j] : scales[j].back(middle[j] - Math.sqrt(down[j]), most[j]);
                high[j] = up[j] == 0 ? likely[j] : scales[j].back(middle[j] + Math.sqrt(up[j]), most[j]);
                Kind<?> kind = Out.kind(job, j);
                if (kind != null && high[j] > kind.highestSi() && likely[j] <= kind.highestSi()) {
                    high[j] = kind.highestSi();
                    openAbove[j] = true;
                }
            }
            return new Numbers(job, likely, low, high, moves, openBelow, openAbove);
        }

        /** How far each result moves, on its scale, with one assumption at one end. */
        private double[] shifts(int slot, double end, double[] result) {
            forecast(slot, end, result);
            boolean anyUnknown = false;
            for (int j = 0; j < result.length; j++) {
                result[j] = shift(j, result[j]);
                anyUnknown |= Double.isNaN(result[j]) && isKnown(j);
            }
            if (anyUnknown) {
                farthest(slot, end, result);
            }
            for (int j = 0; j < result.length; j++) {
                result[j] = isKnown(j) ? result[j] : 0;
            }
            return result;
        }

        private void forecast(int slot, double value, double[] result) {
            values[slot] = value;
            engine.forecast(settings, values, result, null);
            values[slot] = job.likely[slot];
        }

        private boolean isKnown(int j) {
            return Double.isFinite(likely[j]);
        }

        /** Not a number where the result cannot be made. */
        private double shift(int j, double x) {
            if (x == likely[j]) {
                return 0;
            }
            double shift = scales[j].of(x, most[j]) - middle[j];
            return Double.isFinite(shift) ? shift : Double.NaN;
        }

        /** Puts in place of each unknown shift the one at the farthest point where it is known, and opens that side. */
        private void farthest(int slot, double end, double[] shifts) {
            int n = shifts.length;
            double[] known = new double[n];
            double[] unknown = new double[n];
            double[] last = new double[n];
            boolean[] wanted = new boolean[n];
            for (int j = 0; j < n; j++) {
                wanted[j] = Double.isNaN(shifts[j]) && isKnown(j);
                unknown[j] = 1;
            }
            double[] result = new double[n];
            for (int of = 0; of < n; of++) {
                while (wanted[of] && unknown[of] - known[of] > CLOSE) {
                    double part = (known[of] + unknown[of]) / 2;
                    forecast(slot, job.likely[slot] + part * (end - job.likely[slot]), result);
                    for (int j = 0; j < n; j++) {
                        if (wanted[j] && part > known[j] && part < unknown[j]) {
                            double shift = shift(j, result[j]);
                            if (Double.isNaN(shift)) {
                                unknown[j] = part;
                            } else {
                                known[j] = part;
                                last[j] = shift;
                            }
                        }
                    }
                }
            }
            for (int j = 0; j < n; j++) {
                if (wanted[j]) {
                    shifts[j] = last[j];
                    openAbove[j] |= last[j] >= 0;
                    openBelow[j] |= last[j] <= 0;
                }
            }
        }
    }

    /**
     * Refuses a plan with a figure that is nothing in nature, so that what is planned can be read to its last figure.
     * Values of a studio's own far from usual can make such figures, each by itself allowed.
     */
    Numbers require() {
        for (int at = 0; at < likely.length; at++) {
            Kind<?> kind = Out.kind(job, at);
            if (kind != null && (isKnown(at) || !Out.mayBeUnknown(job, at))) {
                require(at, kind, likely[at]);
                require(at, kind, low[at]);
                require(at, kind, high[at]);
            }
        }
        return this;
    }

    private void require(int at, Kind<?> kind, double si) {
        if (!kind.holds(si)) {
            throw Refused.of("plan.figure-beyond-nature", Out.owner(job, at) + ": " + (Double.isFinite(si) ? kind.name()
                    + " comes out as " + Units.fourDigits(si) + " " + kind.siUnit() + ", which no " + kind.name()
                    + " can be." : "nothing comes out that has a " + kind.name() + ".") + " Check the order, the"
                    + " recipe, the steps of scale and jug, and the values of the studio's own.",
                    "of", Out.owner(job, at), "quantity", kind.name(), "value",
                    String.valueOf(si));
        }
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

    boolean isOpenBelow(int at) {
        return openBelow[at];
    }

    boolean isOpenAbove(int at) {
        return openAbove[at];
    }

    <Q extends Quantity<Q>> Estimate<Q> estimate(Kind<Q> kind, int at, String code) {
        return Estimate.of(kind.ofSi(likely[at], code), kind.ofSi(low[at], code), kind.ofSi(high[at], code),
                drivers(at)).open(openBelow[at], openAbove[at]);
    }

    /** What is there of a surplus that may also be a shortage: nothing, where it is one. */
    <Q extends Quantity<Q>> Estimate<Q> surplus(Kind<Q> kind, int at, String code) {
        return Estimate.of(kind.ofSi(Math.max(0, likely[at]), code), kind.ofSi(Math.max(0, low[at]), code),
                kind.ofSi(Math.max(0, high[at]), code), drivers(at))
                .open(openBelow[at] || low[at] <= 0 && low[at] < high[at], openAbove[at]);
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

    static <Q extends Quantity<Q>> Amount<Q> signed(Kind<Q> kind, double si, String code) {
        return si >= 0 ? kind.ofSi(si, code) : kind.ofSi(-si, code).negate();
    }

    <Q extends Quantity<Q>> Estimate<Q> signedEstimate(Kind<Q> kind, int at, String code) {
        return Estimate.of(signed(kind, likely[at], code), signed(kind, low[at], code), signed(kind, high[at], code),
                drivers(at)).open(openBelow[at], openAbove[at]);
    }
}
