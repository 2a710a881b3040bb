package org.papermath.colour;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.papermath.equation.ColourDifference;

/**
 * How far a colour may lie from the one that is told: the sum of errors that go their own ways, each a step in L, a and b, and
 * of such as are known only by their length. The square of the difference is spread about as a gamma whose mean and variance
 * are those of the sum.
 */
final class ColourError {
    private final double[][] axes;
    private final List<double[]> steps = new ArrayList<>();
    private double loose;
    private double looseSquare;

    ColourError(double[] lab) {
        axes = ColourDifference.axes(lab);
    }

    /** Adds an error of one standard deviation: a step of L, a, b. */
    void step(double[] lab) {
        double[] along = new double[3];
        for (int i = 0; i < 3; i++) {
            along[i] = axes[i][0] * lab[0] + axes[i][1] * lab[1] + axes[i][2] * lab[2];
        }
        steps.add(along);
    }

    /** Adds an error whose direction is not known, by its standard deviation as ΔE00 along one line. */
    void loose(double deviation) {
        loose += deviation * deviation;
        looseSquare += Math.pow(deviation, 4);
    }

    /** Mean of the square of the difference. */
    double meanSquare() {
        double sum = loose;
        for (double[] step : steps) {
            sum += step[0] * step[0] + step[1] * step[1] + step[2] * step[2];
        }
        return sum;
    }

    private double secondMoment() {
        double[][] spread = new double[3][3];
        for (double[] step : steps) {
            for (int i = 0; i < 3; i++) {
                for (int j = 0; j < 3; j++) {
                    spread[i][j] += step[i] * step[j];
                }
            }
        }
        double sum = looseSquare;
        for (double[] row : spread) {
            for (double cell : row) {
                sum += cell * cell;
            }
        }
        return sum;
    }

    /** The mean difference. */
    double mean() {
        double square = meanSquare();
        if (square == 0) {
            return 0;
        }
        double freedom = square * square / secondMoment();
        return Math.sqrt(square / freedom * (freedom - 0.5 + 1 / (8 * freedom)));
    }

    /** The difference that so great a share of colours keeps within. */
    double within(double share) {
        double square = meanSquare();
        if (square == 0) {
            return 0;
        }
        double freedom = square * square / secondMoment();
        return Math.sqrt(GammaDistribution.of(freedom / 2, 2 * square / freedom).inverseCumulativeProbability(share));
    }
}
