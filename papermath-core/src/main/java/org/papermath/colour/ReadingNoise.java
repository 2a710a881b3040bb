package org.papermath.colour;

import org.papermath.equation.ColourDifference;

/** What a reading of a reflectance may be off: three errors that go their own ways, in the blue, the green and the red. */
final class ReadingNoise {
    static final int WAYS = 3;

    private static final double LOOK = 1e-4;
    private static final double[] CENTRES = {430, 540, 630};

    private ReadingNoise() {}

    /** Errors of one standard deviation each, by band, that make the mean square of the difference that of an error. */
    static double[][] of(Reflectance reading, double difference) {
        double[] values = reading.values();
        double[][] weights = StandardObserver.weights(reading.bands(), Illuminant.D65);
        double[] lab = Mixing.lab(values, weights, Illuminant.D65);
        double[][] axes = ColourDifference.axes(lab);
        double[][] ways = new double[WAYS][values.length];
        for (int way = 0; way < WAYS; way++) {
            double[] moved = values.clone();
            for (int i = 0; i < values.length; i++) {
                ways[way][i] = values[i] * share(reading.bands(), way, i);
                moved[i] += LOOK * ways[way][i];
            }
            double[] there = Mixing.lab(moved, weights, Illuminant.D65);
            double square = 0;
            for (double[] axis : axes) {
                double part = 0;
                for (int k = 0; k < 3; k++) {
                    part += axis[k] * (there[k] - lab[k]);
                }
                square += part * part;
            }
            double scale = difference / Math.sqrt(WAYS) * LOOK / Math.sqrt(square);
            for (int i = 0; i < values.length; i++) {
                ways[way][i] *= scale;
            }
        }
        return ways;
    }

    private static double share(Wavebands bands, int way, int band) {
        if (bands == Wavebands.THREE) {
            return way == band ? 1 : 0;
        }
        double at = 400 + band * bands.step();
        double below = way == 0 ? Double.NEGATIVE_INFINITY : CENTRES[way - 1];
        double above = way == WAYS - 1 ? Double.POSITIVE_INFINITY : CENTRES[way + 1];
        double centre = CENTRES[way];
        if (at < centre) {
            return way == 0 ? 1 : Math.max(0, (at - below) / (centre - below));
        }
        return way == WAYS - 1 ? 1 : Math.max(0, (above - at) / (above - centre));
    }
}
