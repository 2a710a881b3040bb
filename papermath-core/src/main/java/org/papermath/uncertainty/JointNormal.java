package org.papermath.uncertainty;

import org.apache.commons.statistics.distribution.NormalDistribution;

/** Two normal variables that go together. */
public final class JointNormal {
    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

    /** Steps of an integral, an even number. */
    private static final int STEPS = 200;

    private JointNormal() {}

    /**
     * How likely two normal variables of mean 0 and deviation 1 both lie below their limits.
     *
     * @param one the limit of one
     * @param other that of the other
     * @param correlation of the two, -1 to 1
     * @source the integral over the correlation, Plackett, Biometrika 41, 1954, recalled, not looked up; by Simpson's rule
     */
    public static double both(double one, double other, double correlation) {
        double apart = STANDARD.cumulativeProbability(one) * STANDARD.cumulativeProbability(other);
        if (correlation == 0 || apart == 0 || Double.isInfinite(one) || Double.isInfinite(other)) {
            return apart;
        }
        double end = Math.asin(correlation);
        double sum = 0;
        for (int i = 0; i <= STEPS; i++) {
            double angle = end * i / STEPS;
            int weight = i == 0 || i == STEPS ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * ridge(one, other, Math.sin(angle), Math.cos(angle));
        }
        return Math.min(1, Math.max(0, apart + end / STEPS / 3 * sum / (2 * Math.PI)));
    }

    private static double ridge(double one, double other, double sine, double cosine) {
        double off = one * one + other * other - 2 * one * other * sine;
        // At a full correlation only equal limits lie on the ridge.
        return cosine < 1e-12 ? (off < 1e-12 ? Math.exp(-one * one / 2) : 0) : Math.exp(-off / (2 * cosine * cosine));
    }
}
