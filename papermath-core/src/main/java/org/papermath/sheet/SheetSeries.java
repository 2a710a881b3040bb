package org.papermath.sheet;

import java.util.List;

import javax.measure.Quantity;
import javax.measure.quantity.Mass;

import org.apache.commons.statistics.distribution.TDistribution;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * Masses of sheets in the order of making: is it the vat that drifts, or the hand that scatters? Immutable.
 *
 * <p>Mean and standard deviation, and the straight line through the series by least squares. A slope that chance would
 * give less than once in twenty times is a drift, that of a vat not charged often enough; what is left about the line
 * is the hand.
 */
public final class SheetSeries {
    private static final double CHANCE = 0.05;

    private final double mean;
    private final double deviation;
    private final double slope;
    private final double residual;
    private final double t;
    private final boolean drifts;

    private SheetSeries(double mean, double deviation, double slope, double residual, double t, boolean drifts) {
        this.mean = mean;
        this.deviation = deviation;
        this.slope = slope;
        this.residual = residual;
        this.t = t;
        this.drifts = drifts;
    }

    /**
     * Reads a series.
     *
     * @param masses the masses in the order of making, 3 or more
     * @return the series
     * @throws Refused if there are fewer than three
     */
    public static SheetSeries of(List<? extends Quantity<Mass>> masses) {
        int n = masses.size();
        if (n < 3) {
            throw Refused.of("series.short", "series: " + n + " sheets given; 3 or more are wanted to see a drift.",
                    "given", n, "least", 3);
        }
        double[] y = masses.stream().mapToDouble(mass -> Kinds.MASS.si(mass, "mass of a sheet")).toArray();
        double middle = (n - 1) / 2.0;
        double sum = 0;
        for (double value : y) {
            sum += value;
        }
        double mean = sum / n;
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int i = 0; i < n; i++) {
            xx += (i - middle) * (i - middle);
            xy += (i - middle) * (y[i] - mean);
            yy += (y[i] - mean) * (y[i] - mean);
        }
        double slope = xy / xx;
        double left = Math.max(0, yy - slope * xy);
        double residual = Math.sqrt(left / (n - 2));
        double error = residual / Math.sqrt(xx);
        double t = error > 0 ? slope / error : slope == 0 ? 0 : Math.copySign(Double.MAX_VALUE, slope);
        double chance = 2 * TDistribution.of(n - 2).survivalProbability(Math.abs(t));
        return new SheetSeries(mean, Math.sqrt(yy / (n - 1)), slope, residual, t, chance < CHANCE);
    }

    /**
     * Returns the mean mass.
     *
     * @return the mean
     */
    public Amount<Mass> mean() {
        return Kinds.MASS.ofSi(mean, "g");
    }

    /**
     * Returns the standard deviation of single sheets.
     *
     * @return the deviation
     */
    public Amount<Mass> deviation() {
        return Kinds.MASS.ofSi(deviation, "g");
    }

    /**
     * Returns what a sheet differs from the one before on the line.
     *
     * @return grams a sheet, below zero when they become lighter
     */
    public double gramsPerSheet() {
        return 1000 * slope;
    }

    /**
     * Returns the standard deviation about the line: the hand.
     *
     * @return the deviation
     */
    public Amount<Mass> residual() {
        return Kinds.MASS.ofSi(residual, "g");
    }

    /**
     * Returns the slope over its standard error.
     *
     * @return Student's t
     */
    public double t() {
        return t;
    }

    /**
     * Tells whether the slope is more than chance.
     *
     * @return whether the series drifts
     */
    public boolean drifts() {
        return drifts;
    }

    @Override
    public String toString() {
        return "mean " + mean() + ", sd " + deviation() + (drifts ? ", drifting" : ", no drift");
    }
}
