package org.papermath.record;

import java.util.Arrays;
import org.papermath.numeric.Normal;

/**
 * What several makings say of one constant of a studio: its mean over makings, how sure that is, and how far one making lies
 * from the next. On the scale on which the constant is normal.
 *
 * <p>A making j gives {@code y_j} with an error {@code s_j}, about a value of its own that lies about the mean with the
 * deviation τ: {@code y_j ~ N(mean, s_j² + τ²)}. Of τ something is known beforehand, as a log-normal distribution; it is
 * weighed by what the readings make likely, on a grid, so that one making tells nothing of τ and ten nearly all. From three
 * makings on, one in twenty is expected to be a slip that scatters ten times as far, so that a slip draws neither the mean
 * nor τ to itself.
 *
 * @source random effects with a prior on their scatter, as in any book on the synthesis of measurements; the share of slips
 *     and their scatter are set here
 */
final class Makings {
    private static final int STEPS = 41;
    /** Standard deviations of the logarithm of τ that the grid reaches to either side. */
    private static final double REACH = 3;

    private static final double SLIPS = 0.05;
    private static final double SLIP_SQUARED = 100;
    private static final int LEAST_FOR_SLIPS = 3;
    private static final int MOST_PASSES = 60;

    /** How far off the prior the scatter may be, at least, so that no reading is divided by nothing. */
    private static final double LEAST_SPREAD = 1e-3;

    private final double mean;
    private final double error;
    private final double scatter;
    private final double scatterLow;
    private final double scatterHigh;
    private final double[] sound;

    private Makings(double mean, double error, double scatter, double scatterLow, double scatterHigh, double[] sound) {
        this.mean = mean;
        this.error = error;
        this.scatter = scatter;
        this.scatterLow = scatterLow;
        this.scatterHigh = scatterHigh;
        this.sound = sound;
    }

    /** What was known beforehand of the scatter from making to making: its likely value and its 5 % and 95 % points. */
    record Prior(double likely, double low, double high) {}

    /**
     * What one making says.
     *
     * @param value the value
     * @param error its standard error, above zero
     * @param makings how many makings it is the mean of
     */
    record Said(double value, double error, int makings) {
        double variance(double tau) {
            return error * error + tau * tau / makings;
        }
    }

    static Makings of(Said[] said, Prior prior) {
        double slips = said.length < LEAST_FOR_SLIPS ? 0 : SLIPS;
        double spread = Math.max(LEAST_SPREAD, Math.log(prior.high / prior.low) / (2 * Normal.FIVE_PERCENT_POINT));
        At[] grid = new At[STEPS];
        double[] weights = new double[STEPS];
        double best = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < STEPS; i++) {
            double z = REACH * (2.0 * i / (STEPS - 1) - 1);
            grid[i] = At.of(said, prior.likely * Math.exp(z * spread), slips);
            weights[i] = grid[i].likelihood - z * z / 2;
            best = Math.max(best, weights[i]);
        }
        double sum = 0;
        for (int i = 0; i < STEPS; i++) {
            weights[i] = Math.exp(weights[i] - best);
            sum += weights[i];
        }
        double mean = 0;
        double square = 0;
        double inside = 0;
        double[] sound = new double[said.length];
        for (int i = 0; i < STEPS; i++) {
            double w = weights[i] / sum;
            mean += w * grid[i].mean;
            square += w * grid[i].tau * grid[i].tau;
            inside += w * grid[i].variance;
            for (int j = 0; j < sound.length; j++) {
                sound[j] += w * grid[i].sound[j];
            }
        }
        double between = 0;
        for (int i = 0; i < STEPS; i++) {
            between += weights[i] / sum * (grid[i].mean - mean) * (grid[i].mean - mean);
        }
        double scatter = Math.sqrt(square);
        return new Makings(
                said.length == 1 ? said[0].value : mean,
                Math.sqrt(inside + between),
                scatter,
                Math.min(scatter, percentile(grid, weights, sum, 0.05)),
                Math.max(scatter, percentile(grid, weights, sum, 0.95)),
                sound);
    }

    private static double percentile(At[] grid, double[] weights, double sum, double share) {
        double so = 0;
        for (int i = 0; i < STEPS; i++) {
            so += weights[i] / sum;
            if (so >= share) {
                return grid[i].tau;
            }
        }
        return grid[STEPS - 1].tau;
    }

    /** The mean over makings. */
    double mean() {
        return mean;
    }

    /** Its standard error. */
    double error() {
        return error;
    }

    /** The standard deviation from making to making. */
    double scatter() {
        return scatter;
    }

    /** Its 5 % point. */
    double scatterLow() {
        return scatterLow;
    }

    /** Its 95 % point. */
    double scatterHigh() {
        return scatterHigh;
    }

    /** How likely a making is no slip. */
    double sound(int making) {
        return sound[making];
    }

    /** What the readings say at one scatter from making to making. */
    private record At(double tau, double mean, double variance, double likelihood, double[] sound) {
        static At of(Said[] said, double tau, double slips) {
            double[] variances =
                    Arrays.stream(said).mapToDouble(one -> one.variance(tau)).toArray();
            double[] sound = new double[said.length];
            double mean = median(said);
            for (int pass = 0; pass < MOST_PASSES; pass++) {
                double sum = 0;
                double weights = 0;
                for (int j = 0; j < said.length; j++) {
                    sound[j] = sound(said[j].value - mean, variances[j], slips);
                    double weight = weight(sound[j], variances[j]);
                    sum += weight * said[j].value;
                    weights += weight;
                }
                double next = sum / weights;
                boolean still = slips == 0 || Math.abs(next - mean) < 1e-9 / Math.sqrt(weights);
                mean = next;
                if (still) {
                    break;
                }
            }
            double weights = 0;
            double likelihood = 0;
            for (int j = 0; j < said.length; j++) {
                weights += weight(sound[j], variances[j]);
                likelihood += Math.log(density(said[j].value - mean, variances[j], slips));
            }
            return new At(tau, mean, 1 / weights, likelihood - Math.log(weights) / 2, sound);
        }

        private static double median(Said[] said) {
            double[] values =
                    Arrays.stream(said).mapToDouble(Said::value).sorted().toArray();
            int half = values.length / 2;
            return values.length % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
        }

        private static double weight(double sound, double variance) {
            return (sound + (1 - sound) / SLIP_SQUARED) / variance;
        }

        private static double sound(double off, double variance, double slips) {
            if (slips == 0) {
                return 1;
            }
            // The odds, so that nothing is divided by a density that is no longer a number.
            double square = off * off / variance;
            double odds = slips
                    / (1 - slips)
                    / Math.sqrt(SLIP_SQUARED)
                    * Math.exp(Math.min(700, square / 2 * (1 - 1 / SLIP_SQUARED)));
            return 1 / (1 + odds);
        }

        private static double density(double off, double variance, double slips) {
            double square = off * off / variance;
            double sharp = (1 - slips) * Math.exp(-square / 2);
            double wide = slips / Math.sqrt(SLIP_SQUARED) * Math.exp(-square / (2 * SLIP_SQUARED));
            return Math.max(Double.MIN_NORMAL, (sharp + wide) / Math.sqrt(variance));
        }
    }
}
