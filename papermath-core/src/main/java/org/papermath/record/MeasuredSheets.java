package org.papermath.record;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.apache.commons.statistics.distribution.TDistribution;
import org.papermath.numeric.Moments;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/** Measured sheets as plain numbers in coherent SI, and the way back to amounts in the unit they came in. Immutable. */
final class MeasuredSheets<Q extends Quantity<Q>> {
    /** What chance brings less often than this is not taken for chance. */
    static final double CHANCE = 0.05;
    /** Below this share of the mean a scatter is that of rounding. */
    static final double ROUNDING = 1e-15;

    private final String what;
    private final Kind<Q> kind;
    private final Unit<Q> unit;
    private final double[] values;
    private final Moments moments;
    private final double coarseness;

    private MeasuredSheets(String what, Kind<Q> kind, Unit<Q> unit, double[] values, double coarseness) {
        this.what = what;
        this.kind = kind;
        this.unit = unit;
        this.values = values;
        this.moments = Moments.of(values);
        this.coarseness = coarseness;
    }

    /** Checks what was measured of some sheets, one or more. */
    static <Q extends Quantity<Q>> MeasuredSheets<Q> of(
            String what, Kind<Q> kind, List<? extends Quantity<Q>> measured) {
        Objects.requireNonNull(kind, "kind");
        String named = Name.check(what, "what was measured");
        if ((Kind<?>) kind == Kinds.TEMPERATURE) {
            throw Refused.of(
                    "series.temperature",
                    named
                            + ": a temperature is a point on a scale, and how it scatters is none. Give what was measured of"
                            + " the sheets.",
                    "quantity",
                    named);
        }
        double[] values = new double[measured.size()];
        double step = Double.POSITIVE_INFINITY;
        Amount<Q> first = null;
        for (int i = 0; i < values.length; i++) {
            Amount<Q> one = kind.checkAboveZero(measured.get(i), named + " of a sheet");
            // Far beyond anything measured; their squares are still numbers.
            values[i] = kind.siWithin(one, named + " of a sheet", 1e-100, 1e100);
            first = first == null ? one : first;
            int own = new BigDecimal(Double.toString(one.value()))
                    .stripTrailingZeros()
                    .scale();
            step = Math.min(step, one.si() / one.value() * Math.pow(10, -Math.max(0, own)));
        }
        Objects.requireNonNull(first, "first");
        return new MeasuredSheets<>(named, kind, first.getUnit(), values, step / Math.sqrt(12));
    }

    String what() {
        return what;
    }

    MeasuredWords words() {
        return MeasuredWords.of(what);
    }

    Kind<Q> kind() {
        return kind;
    }

    int count() {
        return values.length;
    }

    double value(int i) {
        return values[i];
    }

    Moments moments() {
        return moments;
    }

    double mean() {
        return moments.mean();
    }

    /** Whether the sheets differ by nothing but the rounding of their numbers. */
    boolean isEven() {
        return moments.deviation() <= ROUNDING * mean();
    }

    /**
     * The least standard deviation there can be: what is read to the last digit written is off by its rounding, however
     * well the readings agree.
     *
     * @source standard deviation of what is rounded, a step over the square root of 12, as in any book on statistics
     */
    double leastDeviation() {
        return Math.max(coarseness, ROUNDING * mean());
    }

    /** An amount, or a difference of amounts, in the unit of the first sheet. */
    Amount<Q> amount(double si) {
        Amount<Q> mean = kind.ofSi(mean()).to(unit);
        return si == mean() ? mean : mean.multiply(si / mean());
    }

    /**
     * Degrees of freedom of a difference of two means, from the squared standard error and the count of each.
     *
     * @source Welch's approximation, as in any book on statistics
     */
    static double freedom(double ofOne, int one, double ofOther, int other) {
        double sum = ofOne + ofOther;
        // Divided before they are squared, so that no square of a small error is nothing.
        return sum / (ofOne * (ofOne / sum) / (one - 1) + ofOther * (ofOther / sum) / (other - 1));
    }

    /** How often chance brings a t as far from zero, up or down. */
    static double chance(double t, double free) {
        return Math.min(1, 2 * TDistribution.of(free).survivalProbability(Math.abs(t)));
    }

    /**
     * Whether a sheet lies apart from what the others tell of it, by more than chance would bring to any of so many once
     * in twenty times.
     *
     * @param off how far it lies from what all tell of it
     * @param free the share of its scatter the fit leaves it
     * @param squares the sum of squares of all about the fit
     * @param degrees the degrees of freedom of these, 2 or more
     */
    boolean isApart(double off, double free, double squares, int degrees) {
        if (free < 1e-9 || off == 0) {
            return false;
        }
        double own = off * off / free;
        double others = Math.sqrt(Math.max(1e-12 * squares, squares - own) / (degrees - 1));
        double apart = Math.abs(off) / (Math.max(others, leastDeviation()) * Math.sqrt(free));
        return count() * chance(apart, degrees - 1) < CHANCE;
    }
}
