package org.papermath.whatif;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.papermath.numeric.Roots;

/**
 * Looks through a range for every place at which a function has a wanted value: it is worked out at evenly spaced points, and
 * each two of them with the want between them are narrowed down. No end of a bracket passes for an answer: what is found has
 * the wanted value, and a place at which the function leaps over it is a leap.
 */
final class Scan {
    /** How far from the want an answer may be, of the want. */
    private static final double CLOSE = 1e-9;

    /** Points a range is looked through at. */
    private static final int POINTS = 201;

    /** Steps in which a turning point is narrowed down. */
    private static final int GOLDEN_STEPS = 90;

    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    /** A place at which the function goes from one value to another without passing the want. */
    record Leap(double at, double before, double after) {}

    private final DoubleUnaryOperator function;
    private final double want;
    private double close;
    private final double[] x = new double[POINTS];
    private final double[] y = new double[POINTS];

    final List<Double> roots = new ArrayList<>();
    final List<Leap> leaps = new ArrayList<>();
    /** A place where the function is not known; not a number where it is known everywhere it was asked. */
    double unknownAt = Double.NaN;

    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    /** The first and the last known point. */
    double firstAt = Double.NaN;

    double first = Double.NaN;
    double lastAt = Double.NaN;
    double last = Double.NaN;

    /** Looks a function through that may be asked on several threads, and answers not a number where it is not known. */
    Scan(double from, double to, DoubleUnaryOperator function, double want) {
        this.function = function;
        this.want = want;
        for (int i = 0; i < POINTS; i++) {
            x[i] = i == POINTS - 1 ? to : from + (to - from) * i / (POINTS - 1);
        }
        IntStream.range(0, POINTS).parallel().forEach(i -> y[i] = function.applyAsDouble(x[i]));
        double size = Math.abs(want);
        for (int i = 0; i < POINTS; i++) {
            if (Double.isNaN(y[i])) {
                unknown(x[i]);
            } else {
                least = Math.min(least, y[i]);
                most = Math.max(most, y[i]);
                firstAt = Double.isNaN(firstAt) ? x[i] : firstAt;
                first = Double.isNaN(first) ? y[i] : first;
                lastAt = x[i];
                last = y[i];
                size = want == 0 ? Math.max(size, Math.abs(y[i])) : size;
            }
        }
        close = CLOSE * size;
        search();
    }

    private void unknown(double at) {
        if (Double.isNaN(unknownAt)) {
            unknownAt = at;
        }
    }

    private boolean isClose(double value) {
        return Math.abs(value - want) <= close;
    }

    private void search() {
        for (int i = 0; i < POINTS; i++) {
            if (isClose(y[i])) {
                // Where it stays at the want for a while that is one answer, and the middle of it is told.
                int to = i;
                while (to + 1 < POINTS && isClose(y[to + 1])) {
                    to++;
                }
                roots.add(x[(i + to) / 2]);
                i = to;
            } else if (i + 1 < POINTS && isBetween(y[i], y[i + 1])) {
                narrow(x[i], y[i], x[i + 1], y[i + 1]);
            } else if (i > 0 && i + 1 < POINTS && mayTouch(y[i - 1], y[i], y[i + 1])) {
                turn(i);
            }
        }
        roots.sort(null);
        for (int i = roots.size() - 1; i > 0; i--) {
            double before = roots.get(i - 1);
            if (roots.get(i) - before <= CLOSE * Math.abs(before)) {
                roots.remove(i);
            }
        }
    }

    private boolean isBetween(double one, double other) {
        return !isClose(one) && !isClose(other) && ((one < want && other > want) || (one > want && other < want));
    }

    /** Whether the function turns back here so near the want that it may reach it between the points. */
    private boolean mayTouch(double before, double here, double after) {
        double off = Math.abs(here - want);
        return ((before > here && after >= here && here > want) || (before < here && after <= here && here < want))
                && off < Math.max(Math.abs(before - here), Math.abs(after - here));
    }

    private void turn(int i) {
        double sign = y[i] > want ? 1 : -1;
        double low = x[i - 1];
        double high = x[i + 1];
        double best = x[i];
        double at = y[i];
        for (int step = 0; step < GOLDEN_STEPS && sign * (at - want) > close; step++) {
            double one = high - GOLDEN * (high - low);
            double other = low + GOLDEN * (high - low);
            double atOne = function.applyAsDouble(one);
            double atOther = function.applyAsDouble(other);
            if (Double.isNaN(atOne) || Double.isNaN(atOther)) {
                unknown(Double.isNaN(atOne) ? one : other);
                return;
            }
            if (sign * atOne <= sign * atOther) {
                high = other;
                best = one;
                at = atOne;
            } else {
                low = one;
                best = other;
                at = atOther;
            }
        }
        least = Math.min(least, at);
        most = Math.max(most, at);
        if (isClose(at)) {
            roots.add(best);
        } else if (sign * (at - want) < 0) {
            narrow(x[i - 1], y[i - 1], best, at);
            narrow(best, at, x[i + 1], y[i + 1]);
        }
    }

    private void narrow(double from, double atFrom, double to, double atTo) {
        if (!isBetween(atFrom, atTo)) {
            return;
        }
        try {
            double root = Roots.between(from, to, one -> function.applyAsDouble(one) - want);
            if (isClose(function.applyAsDouble(root))) {
                roots.add(root);
                return;
            }
        } catch (ArithmeticException unknown) {
            // Somewhere in between it is not known: halving tells where.
        }
        double low = from;
        double atLow = atFrom;
        double high = to;
        double atHigh = atTo;
        double middle = low + (high - low) / 2;
        while (middle > low && middle < high) {
            double at = function.applyAsDouble(middle);
            if (Double.isNaN(at)) {
                unknown(middle);
                return;
            }
            if (isClose(at)) {
                roots.add(middle);
                return;
            }
            if (at > want == atLow > want) {
                low = middle;
                atLow = at;
            } else {
                high = middle;
                atHigh = at;
            }
            middle = low + (high - low) / 2;
        }
        leaps.add(new Leap(high, atLow, atHigh));
    }
}
