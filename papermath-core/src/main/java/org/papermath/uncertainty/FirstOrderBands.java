package org.papermath.uncertainty;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.papermath.engine.Engine;
import org.papermath.engine.Figure;
import org.papermath.engine.Figures;
import org.papermath.engine.Follows;
import org.papermath.engine.Known;
import org.papermath.engine.Scale;
import org.papermath.engine.Settings;
import org.papermath.engine.Slot;
import org.papermath.evidence.Assumption;
import org.papermath.quantity.Kind;

/**
 * First-order bands: every varied assumption is set to its 5 % and its 95 % point, one at a time, with the settings held
 * fixed; what a figure moves up and what it moves down is summed in squares, on the scale of the figure.
 *
 * <p>Where a figure cannot be calculated at one end of an assumption, the band is open on that side. The shift counted
 * is the one at the farthest point where the figure can still be calculated, so that the rest of the band does not
 * jump.
 */
public final class FirstOrderBands {
    /** How closely the farthest point of a figure is looked for, as a share of the way to the end. */
    private static final double CLOSE = 1e-3;

    private static final double SAME = 1e-12;

    /** So many times as far one way as the other is one way only. */
    private static final double ONE_WAY = 2.4;

    /** Less than so many times as far one way as the other is about even. */
    private static final double EVEN = 2;

    private final Engine engine;
    private final Settings settings;
    private final Engine.Shifts.InTurn shifts;
    private final List<Known.Varied> varied;
    private final Figures likely;
    private final int n;
    /** The places of the figures that can be calculated. */
    private final int[] counted;

    private final Scale[] scales;
    private final double[] most;
    private final double[] middle;
    private final double[] up;
    private final double[] down;
    private final boolean[] openAbove;
    private final boolean[] openBelow;
    private final Figures out;

    private FirstOrderBands(Engine engine, Settings settings) {
        this.engine = engine;
        this.settings = settings;
        Engine.Shifts of = engine.shifts(settings);
        varied = engine.varied();
        likely = of.base();
        n = likely.size();
        scales = new Scale[n];
        most = new double[n];
        middle = new double[n];
        up = new double[n];
        down = new double[n];
        openAbove = new boolean[n];
        openBelow = new boolean[n];
        out = engine.figures();
        shifts = of.new InTurn(out);
        for (int at = 0; at < n; at++) {
            Figure figure = likely.figure(at);
            double x = likely.at(at);
            most[at] = figure == null ? 1 : figure.most();
            Scale scale = figure == null ? Scale.FACTOR : figure.scale();
            // What is nothing, or all there can be, has no place on its scale.
            scales[at] = Double.isFinite(scale.of(x, most[at])) && x != 0 ? scale : Scale.DIFFERENCE;
            middle[at] = scales[at].of(x, most[at]);
        }
        counted = IntStream.range(0, n)
                .filter(at -> Double.isFinite(likely.at(at)))
                .toArray();
    }

    /** Works out the bands of a job with its settings. */
    public static FigureBands of(Engine engine, Settings settings) {
        return new FirstOrderBands(engine, settings).make();
    }

    private FigureBands make() {
        double[][] moves = new double[varied.size()][];
        double[] none = new double[n];
        double[] below = new double[n];
        double[] above = new double[n];
        double[] bend = new double[n];
        for (int at : counted) {
            bend[at] = engine.bend(settings, likely, at);
        }
        double[] squares = new double[n];
        double[] bent = new double[n];
        for (int i = 0; i < moves.length; i++) {
            Known.Varied one = varied.get(i);
            boolean isMoved = shift(one, one.lows(), below);
            isMoved |= shift(one, one.highs(), above);
            if (!isMoved) {
                moves[i] = none;
                continue;
            }
            double[] move = new double[n];
            moves[i] = move;
            for (int at : counted) {
                double to = above[at];
                double from = below[at];
                if (from == 0 && to == 0) {
                    continue;
                }
                double rise = Math.max(0, Math.max(from, to));
                double fall = Math.max(0, -Math.min(from, to));
                double far = Math.max(rise, fall);
                up[at] += rise * rise;
                down[at] += fall * fall;
                move[at] = to >= from ? far : -far;
                if (bend[at] <= 1) {
                    squares[at] += far * far;
                    bent[at] += far > ONE_WAY * Math.min(rise, fall) && isEven(one.row()) ? far * far : 0;
                }
            }
        }
        double[] low = new double[n];
        double[] high = new double[n];
        for (int at = 0; at < n; at++) {
            double x = likely.at(at);
            low[at] = down[at] == 0 ? x : scales[at].back(middle[at] - Math.sqrt(down[at]), most[at]);
            high[at] = up[at] == 0 ? x : scales[at].back(middle[at] + Math.sqrt(up[at]), most[at]);
            end(at, high);
        }
        for (Follows one : engine.follows(settings, likely)) {
            follow(one, low, high, moves);
        }
        boolean[] bends = new boolean[n];
        for (int at : counted) {
            bends[at] = bend[at] <= 1 && high[at] > low[at] && bent[at] >= bend[at] * squares[at];
        }
        return new FigureBands(likely, low, high, openBelow, openAbove, varied, moves, new double[0][], bends);
    }

    /** Each assumption moves it as far as it moves what it follows, the other way. */
    private void follow(Follows one, double[] low, double[] high, double[][] moved) {
        int at = one.place();
        int from = one.from();
        low[at] = one.law().applyAsDouble(high[from]);
        high[at] = one.law().applyAsDouble(low[from]);
        boolean moves = low[at] < high[at];
        openBelow[at] = moves && openAbove[from];
        openAbove[at] = moves && openBelow[from];
        for (double[] move : moved) {
            // What moves nothing at all shares one row.
            if (moves && move[from] != 0) {
                move[at] = -move[from];
            }
        }
    }

    /** Whether an assumption may itself be off about as far one way as the other, on its scale. */
    private static boolean isEven(Assumption row) {
        double middle = row.shape().scaled(row.likely());
        double below = middle - row.shape().scaled(row.low());
        double above = row.shape().scaled(row.high()) - middle;
        return Math.max(below, above) < EVEN * Math.min(below, above);
    }

    /** A band that reaches beyond what its kind can be has no end there that could be calculated. */
    private void end(int at, double[] high) {
        Figure figure = likely.figure(at);
        @Nullable Kind<?> kind = figure == null ? null : figure.kind();
        if (kind != null && high[at] > kind.highestSi() && likely.at(at) <= kind.highestSi()) {
            high[at] = kind.highestSi();
            openAbove[at] = true;
        }
    }

    /** How far each figure moves, on its scale, with one assumption at one end; whether any may. */
    private boolean shift(Known.Varied one, double[] ends, double[] moved) {
        if (!shifts.at(one.slots(), ends)) {
            Arrays.fill(moved, 0);
            return false;
        }
        boolean anyUnknown = false;
        for (int at : counted) {
            double x = out.at(at);
            double shift = x == likely.at(at) ? 0 : shift(at, x);
            moved[at] = shift;
            anyUnknown |= Double.isNaN(shift);
        }
        if (anyUnknown) {
            farthest(one.slots(), ends, moved);
        }
        return true;
    }

    private double[] middle(Slot[] slots) {
        return Arrays.stream(slots).mapToDouble(engine.likely()::of).toArray();
    }

    /** Not a number where the figure cannot be calculated. */
    private double shift(int at, double x) {
        // What moves by a last digit only does not move.
        if (Math.abs(x - likely.at(at)) <= SAME * Math.abs(likely.at(at))) {
            return 0;
        }
        double shift = scales[at].of(x, most[at]) - middle[at];
        return Double.isFinite(shift) ? shift : Double.NaN;
    }

    /** Puts in place of each unknown shift the one at the farthest point where it is known, and opens that side. */
    private void farthest(Slot[] slots, double[] ends, double[] moved) {
        double[] from = middle(slots);
        double[] there = new double[ends.length];
        double[] known = new double[n];
        double[] unknown = new double[n];
        double[] last = new double[n];
        boolean[] wanted = new boolean[n];
        for (int at = 0; at < n; at++) {
            wanted[at] = Double.isNaN(moved[at]);
            unknown[at] = 1;
        }
        for (int of = 0; of < n; of++) {
            while (wanted[of] && unknown[of] - known[of] > CLOSE) {
                double part = (known[of] + unknown[of]) / 2;
                for (int i = 0; i < ends.length; i++) {
                    there[i] = from[i] + part * (ends[i] - from[i]);
                }
                shifts.at(slots, there);
                for (int at = 0; at < n; at++) {
                    if (wanted[at] && part > known[at] && part < unknown[at]) {
                        double shift = shift(at, out.at(at));
                        if (Double.isNaN(shift)) {
                            unknown[at] = part;
                        } else {
                            known[at] = part;
                            last[at] = shift;
                        }
                    }
                }
            }
        }
        for (int at = 0; at < n; at++) {
            if (wanted[at]) {
                moved[at] = last[at];
                openAbove[at] |= last[at] >= 0;
                openBelow[at] |= last[at] <= 0;
            }
        }
    }
}
