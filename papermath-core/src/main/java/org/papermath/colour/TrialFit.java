package org.papermath.colour;

import java.util.Arrays;
import org.papermath.equation.ColourDifference;
import org.papermath.numeric.LeastSquares;

/** Which factors of the pigments a trial swatch asks for, against what is expected of them, and what it leaves over. */
record TrialFit(double[] factors, double[] beyond) {
    static TrialFit of(PigmentedPulp pulp, double[] amounts, Reflectance read, double own) {
        Mixing mixing = pulp.mixing();
        double[][] weights = StandardObserver.weights(read.bands(), Illuminant.D65);
        double[] target = Mixing.lab(read.values(), weights, Illuminant.D65);
        double[][] axes = ColourDifference.axes(target);
        double noise = pulp.reckoned("colour.reading-error") / Math.sqrt(3);
        double common = pulp.commonError();
        int count = amounts.length;
        double[] scales = new double[count + 1];
        scales[0] = common;
        for (int p = 0; p < count; p++) {
            scales[1 + p] = amounts[p] > 0 ? own : 0;
        }
        LeastSquares found = LeastSquares.of(new double[count + 1], scales, logs -> {
            double[] lab = Mixing.lab(mixing.at(loads(amounts, logs)).values(), weights, Illuminant.D65);
            double[] off = new double[3 + count + 1];
            for (int i = 0; i < 3; i++) {
                for (int k = 0; k < 3; k++) {
                    off[i] += axes[i][k] * (lab[k] - target[k]) / noise;
                }
            }
            off[3] = logs[0] / common;
            for (int p = 0; p < count; p++) {
                off[4 + p] = logs[1 + p] / own;
            }
            return off;
        });
        double[] logs = found.parameters();
        double[] factors = new double[count];
        Arrays.setAll(factors, p -> Math.exp(logs[0] + logs[1 + p]));
        Mixing.Mixed mixed = mixing.at(loads(amounts, logs));
        Mixing.Surface surface = PigmentedPulp.surface(pulp.assumptions());
        double[] beyond = new double[read.values().length];
        Arrays.setAll(beyond, i -> (surface.ratio(read.value(i)) - mixed.ratios()[i]) * mixed.whole());
        return new TrialFit(factors, beyond);
    }

    private static double[] loads(double[] amounts, double[] logs) {
        double[] loads = new double[amounts.length];
        Arrays.setAll(loads, p -> amounts[p] * Math.exp(logs[0] + logs[1 + p]));
        return loads;
    }
}
