package org.papermath.uncertainty;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.papermath.engine.Engine;
import org.papermath.engine.Figures;
import org.papermath.engine.Known;
import org.papermath.engine.Settings;
import org.papermath.engine.Slot;
import org.papermath.numeric.Percentiles;
import org.papermath.quantity.Refused;

/**
 * Bands by draws: all varied assumptions are drawn at once, the job is forecast with the settings held fixed, again and
 * again; a band is what lies between the 5 % and the 95 % point. What drives a band is still told by moving one assumption
 * at a time.
 *
 * <p>Each draw has random numbers of its own, from the seed and its number, so the result is the same however many threads
 * share the work.
 */
public final class MonteCarloBands {
    /** Figures times draws that are kept at most. */
    private static final long MOST = 60_000_000;

    /** Draws a band may lose before its end is not known. */
    private static final double UNKNOWN = 0.05;

    /** Draws that the band of a forecast that is not smooth is taken from; its ends hold two hundredths more or less. */
    private static final int DRAWS_OF_BENT = 300;

    private static final long SEED_OF_BENT = 2026;

    private MonteCarloBands() {}

    /** Works out the bands of a job with its settings. */
    public static FigureBands of(Engine engine, Settings settings, int draws, long seed) {
        return of(engine, settings, FirstOrderBands.of(engine, settings), draws, seed, true);
    }

    /**
     * The bands of figures that are not smooth, from so few draws that other threads are not to be asked to help.
     *
     * @param moves the bands of the same job to first order
     */
    public static FigureBands ofBent(Engine engine, Settings settings, FigureBands moves) {
        return of(engine, settings, moves, DRAWS_OF_BENT, SEED_OF_BENT, false);
    }

    private static FigureBands of(
            Engine engine, Settings settings, FigureBands moves, int draws, long seed, boolean shared) {
        Figures likely = moves.likely();
        int n = likely.size();
        if ((long) n * draws > MOST) {
            throw Refused.of(
                    "draws.too-many",
                    "draws: " + draws + " given for " + n + " forecasts; for that many at most " + MOST / n
                            + ". Ask for fewer, or plan part of the order.",
                    "given",
                    draws,
                    "most",
                    MOST / n);
        }
        double[][] drawn = draw(engine, settings, n, draws, seed, shared);
        double[] low = new double[n];
        double[] high = new double[n];
        boolean[] openBelow = new boolean[n];
        boolean[] openAbove = new boolean[n];
        shared(n, shared).forEach(at -> {
            double x = likely.at(at);
            double[] known =
                    Arrays.stream(drawn[at]).filter(Double::isFinite).sorted().toArray();
            if (known.length == 0 || !Double.isFinite(x)) {
                low[at] = x;
                high[at] = x;
                return;
            }
            // The forecast at the likely values is no draw; where all but a few lie to one side, it still is in the
            // band.
            low[at] = Math.min(x, Percentiles.at(known, 0.05));
            high[at] = Math.max(x, Percentiles.at(known, 0.95));
            boolean lost = known.length < (1 - UNKNOWN) * draws;
            openBelow[at] = lost && moves.isOpenBelow(at);
            openAbove[at] = lost && (moves.isOpenAbove(at) || !moves.isOpenBelow(at));
        });
        return moves.drawn(low, high, openBelow, openAbove, drawn);
    }

    private static double[][] draw(Engine engine, Settings settings, int n, int draws, long seed, boolean shared) {
        List<Known.Drawn> all = engine.drawn();
        Slot[] slots = all.stream().map(Known.Drawn::slot).toArray(Slot[]::new);
        Draw[] shapes = all.stream().map(Draw::new).toArray(Draw[]::new);
        double[][] drawn = new double[n][draws];
        shared(draws, shared).forEach(i -> {
            SplittableRandom random = new SplittableRandom(mixed(seed, i));
            double[] off = new double[shapes.length];
            for (int k = 0; k < off.length; k++) {
                off[k] = shapes[k].next(random);
            }
            double[] values = new double[shapes.length];
            for (int k = 0; k < values.length; k++) {
                values[k] = shapes[k].value(off, random);
            }
            Figures out = engine.forecast(settings, engine.likely().with(slots, values));
            for (int at = 0; at < n; at++) {
                drawn[at][i] = out.at(at);
            }
        });
        return drawn;
    }

    private static IntStream shared(int count, boolean shared) {
        IntStream numbers = IntStream.range(0, count);
        return shared ? numbers.parallel() : numbers;
    }

    /** A seed for each draw, so far from its neighbours that their random numbers have nothing in common. */
    private static long mixed(long seed, long draw) {
        long z = seed + 0x9e3779b97f4a7c15L * (draw + 1);
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }
}
