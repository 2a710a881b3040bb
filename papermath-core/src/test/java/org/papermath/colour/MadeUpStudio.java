package org.papermath.colour;

import java.util.List;
import java.util.Random;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.RetentionModel.Circumstance;
import org.papermath.quantity.Dose;

/**
 * A studio whose pigments are known to the last digit: six absorptions by band of round shapes, invented here, and what its
 * sheets keep, which it does not know.
 */
final class MadeUpStudio {
    static final List<String> NAMES = List.of("ochre", "red oxide", "blue", "black", "magenta", "green");

    private static final int BANDS = 31;
    private static final double[] SCATTERING = {3, 6, 1.5, 1, 0.8, 2};
    /** The black is given in thirds of the doses of the others. */
    private static final double[] PART = {1, 1, 1, 0.3, 1, 1};

    private static final double[] RUNGS = {0.003, 0.01, 0.03, 0.08};
    private static final double[] PULP = new double[BANDS];
    private static final double[][] ABSORPTION = new double[NAMES.size()][BANDS];

    static {
        for (int i = 0; i < BANDS; i++) {
            double at = 400 + 10 * i;
            PULP[i] = 0.02 + 0.06 * Math.exp(-(at - 400) / 60);
            ABSORPTION[0][i] = 8 + bump(at, 90, 430, 45) + 50 / (1 + Math.exp((at - 540) / 18));
            ABSORPTION[1][i] = 15 + 130 / (1 + Math.exp((at - 580) / 12));
            ABSORPTION[2][i] = 4 + bump(at, 160, 600, 55) + bump(at, 30, 700, 60);
            ABSORPTION[3][i] = 140 + 20 * (700 - at) / 300;
            ABSORPTION[4][i] = 3 + bump(at, 110, 540, 40) + bump(at, 10, 430, 30);
            ABSORPTION[5][i] = 3 + bump(at, 120, 420, 35) + bump(at, 140, 660, 45);
        }
    }

    private final double kept;
    private final double error;
    private final Random random;
    private final Assumptions assumptions;
    private final double[] ownStrength = new double[NAMES.size()];

    /**
     * Opens a studio.
     *
     * @param error of its readings, as the root of the mean square of ΔE00
     * @param departure of a pigment's strength in mixtures, as a logarithm; 0 where the law holds
     */
    MadeUpStudio(Random random, double error, double departure) {
        this.random = random;
        this.error = error;
        kept = 0.3 + 0.68 * random.nextDouble();
        for (int p = 0; p < ownStrength.length; p++) {
            ownStrength[p] = Math.exp(departure * random.nextGaussian());
        }
        Assumptions known = Assumptions.standard().given("colour.reading-error", Scope.GENERAL, error);
        assumptions = departure > 0
                ? known
                : known.given("colour.mixture-departure", Scope.GENERAL, 0)
                        .given("colour.mixture-departure-by-distance", Scope.GENERAL, 0);
    }

    private static double bump(double at, double high, double centre, double width) {
        return high * Math.exp(-(at - centre) * (at - centre) / (2 * width * width));
    }

    static Additive additive(int pigment) {
        return Additive.of(NAMES.get(pigment), Additive.Purpose.PIGMENT);
    }

    double making() {
        return 1 + 0.03 * random.nextGaussian();
    }

    /** What sheets of doses send back in truth; strengths of one's own show only where two pigments are together. */
    Reflectance made(double[] doses, double making) {
        int used = 0;
        for (double dose : doses) {
            used += dose > 0 ? 1 : 0;
        }
        double[] values = new double[BANDS];
        for (int i = 0; i < BANDS; i++) {
            double absorbed = PULP[i];
            double scattered = 1;
            for (int p = 0; p < doses.length; p++) {
                double load = doses[p] * kept / 0.97 * making * (used > 1 ? ownStrength[p] : 1);
                absorbed += load * ABSORPTION[p][i];
                scattered += load * SCATTERING[p];
            }
            double ratio = absorbed / scattered;
            values[i] = 1 + ratio - Math.sqrt(ratio * ratio + 2 * ratio);
        }
        return Reflectance.of(Wavebands.THIRTY_ONE, values);
    }

    /** A reading of it: a smooth error over the bands, lighter or darker, tilted and bent. */
    Reflectance read(Reflectance truth) {
        double[] way = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
        double length = Math.sqrt(way[0] * way[0] + way[1] * way[1] + way[2] * way[2]);
        double wanted = error * length / Math.sqrt(3);
        double scale = 0.01;
        Reflectance read = truth;
        for (int turn = 0; turn < 30 && error > 0; turn++) {
            double[] values = new double[BANDS];
            for (int i = 0; i < BANDS; i++) {
                double at = (i - 15) / 15.0;
                double off = (way[0] + 1.2 * way[1] * at + 1.2 * way[2] * (1 - 2 * at * at)) / length;
                values[i] = Math.min(1, truth.value(i) * (1 + scale * off));
            }
            read = Reflectance.of(Wavebands.THIRTY_ONE, values);
            scale *= wanted / Math.max(1e-9, read.lab().difference(truth.lab()));
        }
        return read;
    }

    /** The palette as ladders of one making tell it. */
    PigmentedPulp palette(Wavebands bands, Circumstance circumstance) {
        PulpColour pulp = PulpColour.of(read(made(new double[NAMES.size()], 1)).in(bands));
        double lost = circumstance == Circumstance.PLAIN ? 0.55 : 0.05;
        PigmentedPulp palette = PigmentedPulp.of(
                pulp, assumptions.given("making.additive.retention", Scope.GENERAL, 1.645 * 0.03 / lost), circumstance);
        double making = making();
        for (int p = 0; p < NAMES.size(); p++) {
            SwatchLadder ladder = SwatchLadder.of(additive(p), pulp);
            for (double rung : RUNGS) {
                double[] doses = new double[NAMES.size()];
                doses[p] = rung * PART[p];
                ladder = ladder.swatch(
                        Dose.percent(100 * doses[p]), read(made(doses, making)).in(bands));
            }
            palette = palette.with(ladder.pigment(assumptions));
        }
        return palette;
    }

    /** Doses of one to three pigments, well within the ladders. */
    double[] someDoses() {
        double[] doses = new double[NAMES.size()];
        int count = 1 + random.nextInt(3);
        for (int k = 0; k < count; k++) {
            int p = random.nextInt(NAMES.size());
            doses[p] = (0.002 + 0.057 * Math.pow(random.nextDouble(), 2)) * PART[p];
        }
        return doses;
    }

    static double[] doses(List<AdditiveDose> given) {
        double[] doses = new double[NAMES.size()];
        for (AdditiveDose one : given) {
            doses[NAMES.indexOf(one.additive().name())] += one.dose().si();
        }
        return doses;
    }
}
