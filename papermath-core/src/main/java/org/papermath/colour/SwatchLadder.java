package org.papermath.colour;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import org.papermath.equation.KubelkaMunk;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.numeric.Golden;
import org.papermath.numeric.Normal;
import org.papermath.pulp.Additive;
import org.papermath.pulp.RetentionModel.Circumstance;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;

/**
 * Swatches of one pulp with more and more of one pigment, dried and read: they characterise the pigment. Two are needed, at
 * least three are better, from the palest to the deepest that will be asked for. Immutable.
 *
 * <p>Absorption is found band by band and one scattering over all bands, each swatch weighed by how well its reading tells
 * them: dark swatches say more of the absorption, and an error of a reading counts the same for the eye wherever it falls.
 *
 * <pre>{@code
 * PulpColour white = PulpColour.of(Reflectance.of(Wavebands.THREE, 0.80, 0.78, 0.72));
 * Pigment ochre = SwatchLadder.of(Additive.of("ochre", Additive.Purpose.PIGMENT), white)
 *         .swatch(Dose.percent(1), Reflectance.of(Wavebands.THREE, 0.68, 0.56, 0.33))
 *         .swatch(Dose.percent(4), Reflectance.of(Wavebands.THREE, 0.56, 0.38, 0.14))
 *         .pigment(Assumptions.standard());
 * ochre.strongest(); // 4 %
 * }</pre>
 *
 * @source weighted least squares on the law of {@link PigmentedPulp}
 */
public final class SwatchLadder {
    /** More than a pigment can scatter over the same mass of pulp. */
    private static final double MOST_SCATTERING = 60;

    /** So much above what is expected the squares of a residual come out by chance, one time in twenty. */
    private static final double BY_CHANCE = 1.75;

    private final Additive additive;
    private final PulpColour pulp;
    private final Circumstance circumstance;
    private final List<Swatch> swatches;

    private record Swatch(Amount<Dose> dose, Reflectance dried) {}

    /** A swatch beside what the constants make of its dose. */
    public sealed interface Rung permits FoundRung {
        /** {@return the dose on the fibre} */
        Amount<Dose> dose();

        /** {@return what was read} */
        Reflectance read();

        /** {@return what the constants make of the dose} */
        Reflectance fitted();

        /** {@return ΔE00 between the two} */
        double difference();
    }

    private record FoundRung(Amount<Dose> dose, Reflectance read, Reflectance fitted, double difference)
            implements Rung {
        @Override
        public String toString() {
            return dose + ": " + read.lab() + ", fitted within ΔE00 " + ColourRange.said(difference);
        }
    }

    private SwatchLadder(Additive additive, PulpColour pulp, Circumstance circumstance, List<Swatch> swatches) {
        this.additive = additive;
        this.pulp = pulp;
        this.circumstance = circumstance;
        this.swatches = List.copyOf(swatches);
    }

    /**
     * Begins a ladder.
     *
     * @param pigment what is weighed
     * @param pulp the pulp without it, read in the same way as the swatches
     * @return a ladder without swatches, made with a retention aid
     */
    public static SwatchLadder of(Additive pigment, PulpColour pulp) {
        Objects.requireNonNull(pigment, "pigment");
        Objects.requireNonNull(pulp, "pulp");
        return new SwatchLadder(pigment, pulp, Circumstance.WITH_AID, List.of());
    }

    /**
     * Says how the swatches were made.
     *
     * @param how what helped to keep the pigment in them
     * @return this so made
     */
    public SwatchLadder made(Circumstance how) {
        return new SwatchLadder(additive, pulp, Objects.requireNonNull(how, "how"), swatches);
    }

    /**
     * Adds a swatch.
     *
     * @param dose what of the pigment was given, active matter on oven-dry fibre, above zero
     * @param dried what the dried swatch sends back, over more of the same or so thick that nothing shines through
     * @return this with the swatch
     * @throws Refused if the dose is out of range or was given before, or the reading has fewer bands than that of the pulp
     */
    public SwatchLadder swatch(Quantity<Dose> dose, Reflectance dried) {
        Objects.requireNonNull(dried, "dried");
        Amount<Dose> given = Limits.DOSE.check(dose, "dose of ", additive.name());
        if (given.si() == 0) {
            throw Refused.of(
                    "colour.swatch-dose",
                    "swatch: a dose of 0 is the pulp itself; give a dose above 0.",
                    "pigment",
                    additive.name());
        }
        if (swatches.stream().anyMatch(one -> one.dose.si() == given.si())) {
            throw Refused.of(
                    "colour.swatch-twice",
                    "swatch: " + given + " of " + additive.name()
                            + " is there twice; give the mean of the two readings.",
                    "pigment",
                    additive.name(),
                    "dose",
                    given.toString());
        }
        List<Swatch> more = new ArrayList<>(swatches);
        more.add(new Swatch(given, dried.in(pulp.reflectance().bands())));
        more.sort(Comparator.comparingDouble(one -> one.dose.si()));
        return new SwatchLadder(additive, pulp, circumstance, more);
    }

    /**
     * Characterises the pigment.
     *
     * @param assumptions where the retention, the error of a reading ({@code colour.reading-error}) and the scattering
     *     expected of a pigment ({@code colour.pigment-scattering}) are looked up
     * @return the pigment
     * @throws Refused if there are fewer than two swatches, or the strongest cannot be told from the pulp
     */
    public Pigment pigment(Assumptions assumptions) {
        Objects.requireNonNull(assumptions, "assumptions");
        if (swatches.size() < 2) {
            throw Refused.of(
                    "colour.ladder-short",
                    "swatches of " + additive.name() + ": " + swatches.size()
                            + " given; two are needed, and three to five tell more.",
                    "pigment",
                    additive.name(),
                    "given",
                    swatches.size());
        }
        double error = assumptions.si("colour.reading-error", Scope.GENERAL);
        Swatch deepest = swatches.get(swatches.size() - 1);
        double told = deepest.dried.lab().difference(pulp.reflectance().lab());
        if (told < 2 * error) {
            throw Refused.of(
                    "colour.ladder-pale",
                    "swatches of " + additive.name() + ": the strongest differs from the pulp by ΔE00 "
                            + ColourRange.said(told) + ", no more than two readings of one sheet; make stronger ones.",
                    "pigment",
                    additive.name(),
                    "difference",
                    told);
        }
        Fit fit = new Fit(assumptions, error);
        return fit.pigment();
    }

    /** The constants and their errors. */
    private final class Fit {
        private final Mixing.Surface surface;
        private final double perDose;
        private final double error;
        private final double expected;
        private final double expectedDeviation;
        private final double[] loads;
        private final double[][] readings;

        Fit(Assumptions assumptions, double error) {
            this.error = error;
            surface = PigmentedPulp.surface(assumptions);
            perDose = PigmentedPulp.perDose(assumptions, additive, circumstance);
            Assumption row = assumptions.get("colour.pigment-scattering", Scope.GENERAL);
            expected = row.likelySi();
            expectedDeviation = (row.highSi() - row.lowSi()) / (2 * Normal.FIVE_PERCENT_POINT);
            loads = swatches.stream()
                    .mapToDouble(one -> one.dose.si() * perDose)
                    .toArray();
            readings = swatches.stream().map(one -> one.dried.values()).toArray(double[][]::new);
        }

        private record Constants(double[] absorption, double scattering) {}

        private Constants of(double[] ofPulp, double[][] ofSwatches) {
            double best = Golden.least(
                    scattering -> misfit(ofPulp, ofSwatches, scattering), 0, MOST_SCATTERING, 1e-6 * MOST_SCATTERING);
            return new Constants(absorption(ofPulp, ofSwatches, best), best);
        }

        private double[] absorption(double[] ofPulp, double[][] ofSwatches, double scattering) {
            double[] absorption = new double[ofPulp.length];
            for (int band = 0; band < absorption.length; band++) {
                double of = surface.ratio(ofPulp[band]);
                double above = 0;
                double below = 0;
                for (int i = 0; i < loads.length; i++) {
                    double weight = weight(ofSwatches[i][band], loads[i], scattering);
                    above +=
                            weight * loads[i] * (surface.ratio(ofSwatches[i][band]) * (1 + loads[i] * scattering) - of);
                    below += weight * loads[i] * loads[i];
                }
                absorption[band] = Math.max(0, above / below);
            }
            return absorption;
        }

        /** One over the square of what an error of the reading does to the absorption at the swatch. */
        private double weight(double reading, double load, double scattering) {
            double off = KubelkaMunk.ratioSlope(surface.under(reading)) * reading * (1 + load * scattering);
            return 1 / (off * off);
        }

        private double misfit(double[] ofPulp, double[][] ofSwatches, double scattering) {
            double[] absorption = absorption(ofPulp, ofSwatches, scattering);
            double sum = 0;
            for (int band = 0; band < absorption.length; band++) {
                double of = surface.ratio(ofPulp[band]);
                for (int i = 0; i < loads.length; i++) {
                    double off = surface.ratio(ofSwatches[i][band]) * (1 + loads[i] * scattering)
                            - of
                            - loads[i] * absorption[band];
                    sum += weight(ofSwatches[i][band], loads[i], scattering) * off * off;
                }
            }
            double relative = relativeError();
            double away = (scattering - expected) / expectedDeviation;
            return sum * ReadingNoise.WAYS / ofPulp.length / (relative * relative) + away * away;
        }

        /** What an error of a reading is of the reflectance: a third of it in lightness by the cube root. */
        private double relativeError() {
            return 3 * error / 100;
        }

        Pigment pigment() {
            double[] ofPulp = pulp.reflectance().values();
            Constants found = of(ofPulp, readings);
            List<Rung> rungs = new ArrayList<>();
            Mixing mixing =
                    new Mixing(ratios(ofPulp), List.of(found.absorption), new double[] {found.scattering}, surface);
            double square = 0;
            for (int i = 0; i < loads.length; i++) {
                Reflectance fitted = Reflectance.unchecked(
                        pulp.reflectance().bands(),
                        mixing.at(new double[] {loads[i]}).values());
                double off = fitted.lab().difference(swatches.get(i).dried.lab());
                square += off * off;
                rungs.add(new FoundRung(swatches.get(i).dose, swatches.get(i).dried, fitted, off));
            }
            double residual = Math.sqrt(square / loads.length);
            double free = Math.max(1, loads.length - 1) / (double) loads.length;
            double beyondNoise = residual * residual / free / (error * error) / BY_CHANCE;
            double lack = error * Math.sqrt(BY_CHANCE * Math.max(0, beyondNoise - 1));
            double more = Math.sqrt(Math.max(1, Math.min(16, beyondNoise)));
            List<Pigment.Wrong> wrong = new ArrayList<>();
            for (int i = 0; i < loads.length; i++) {
                for (double[] way : ReadingNoise.of(swatches.get(i).dried, error * more)) {
                    double[][] moved = readings.clone();
                    moved[i] = moved(readings[i], way);
                    wrong.add(off(found, of(ofPulp, moved)));
                }
            }
            List<Pigment.Wrong> withPulp = new ArrayList<>();
            for (double[] way : ReadingNoise.of(pulp.reflectance(), error)) {
                withPulp.add(off(found, of(moved(ofPulp, way), readings)));
            }
            return new Pigment(
                    additive,
                    pulp,
                    found.absorption,
                    found.scattering,
                    loads[loads.length - 1],
                    circumstance,
                    residual,
                    lack,
                    wrong,
                    withPulp,
                    rungs);
        }

        private double[] ratios(double[] values) {
            double[] ratios = new double[values.length];
            for (int i = 0; i < values.length; i++) {
                ratios[i] = surface.ratio(values[i]);
            }
            return ratios;
        }

        /** A reading moved by an error, kept above zero and below a perfect white. */
        private double[] moved(double[] values, double[] way) {
            double[] moved = new double[values.length];
            for (int i = 0; i < values.length; i++) {
                moved[i] = Math.min(1, Math.max(values[i] / 2, values[i] + way[i]));
            }
            return moved;
        }

        private Pigment.Wrong off(Constants found, Constants moved) {
            double[] absorption = new double[found.absorption.length];
            for (int i = 0; i < absorption.length; i++) {
                absorption[i] = moved.absorption[i] - found.absorption[i];
            }
            return new Pigment.Wrong(absorption, moved.scattering - found.scattering);
        }
    }

    @Override
    public String toString() {
        return additive.name() + ": " + swatches.size() + " swatches";
    }
}
