package org.papermath.colour;

import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.papermath.pulp.Additive;
import org.papermath.pulp.RetentionModel.Circumstance;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Kinds;

/**
 * What a pigment does to a pulp, as a {@linkplain SwatchLadder ladder of swatches} told it: its absorption by band and its
 * scattering, both over what the pulp scatters, by its load on the fibre. Immutable.
 */
public final class Pigment {
    private final Additive additive;
    private final PulpColour pulp;
    private final double[] absorption;
    private final double scattering;
    private final double greatest;
    private final Circumstance circumstance;
    private final double residual;
    private final double lackOfFit;
    private final List<Wrong> wrong;
    private final List<Wrong> wrongWithPulp;
    private final List<SwatchLadder.Rung> rungs;

    /** One standard deviation of an error of the readings, carried into the constants. */
    record Wrong(double[] absorption, double scattering) {}

    Pigment(
            Additive additive,
            PulpColour pulp,
            double[] absorption,
            double scattering,
            double greatest,
            Circumstance circumstance,
            double residual,
            double lackOfFit,
            List<Wrong> wrong,
            List<Wrong> wrongWithPulp,
            List<SwatchLadder.Rung> rungs) {
        this.additive = additive;
        this.pulp = pulp;
        this.absorption = absorption;
        this.scattering = scattering;
        this.greatest = greatest;
        this.circumstance = circumstance;
        this.residual = residual;
        this.lackOfFit = lackOfFit;
        this.wrong = wrong;
        this.wrongWithPulp = wrongWithPulp;
        this.rungs = List.copyOf(rungs);
    }

    /**
     * Returns what is weighed.
     *
     * @return the additive
     */
    public Additive additive() {
        return additive;
    }

    /**
     * Returns the pulp the swatches were of.
     *
     * @return its colour
     */
    public PulpColour pulp() {
        return pulp;
    }

    /**
     * Returns how the swatches were made.
     *
     * @return what helped to keep the pigment in them
     */
    public Circumstance circumstance() {
        return circumstance;
    }

    /**
     * Returns how much the pigment scatters.
     *
     * @return its scattering over that of the same mass of pulp
     */
    public Amount<Dimensionless> scattering() {
        return Kinds.NUMBER.ofSi(scattering, "1");
    }

    /**
     * Returns the most that was tried.
     *
     * @return the dose of the strongest swatch; no match goes beyond it
     */
    public Amount<Dose> strongest() {
        return rungs.get(rungs.size() - 1).dose();
    }

    /**
     * Returns how well the swatches agree with the law.
     *
     * @return root of the mean square of ΔE00 between the swatches and what the constants make of their doses
     */
    public double residual() {
        return residual;
    }

    /**
     * Returns the swatches.
     *
     * @return them by dose, each beside what the constants make of it
     */
    public List<SwatchLadder.Rung> rungs() {
        return rungs;
    }

    double[] absorption() {
        return absorption;
    }

    double scatteringRatio() {
        return scattering;
    }

    double greatest() {
        return greatest;
    }

    /** What is left of the residual when the error of readings is taken off, as ΔE00. */
    double lackOfFit() {
        return lackOfFit;
    }

    List<Wrong> wrong() {
        return wrong;
    }

    /** By the errors of the reading of the pulp, in the order of {@link ReadingNoise}. */
    List<Wrong> wrongWithPulp() {
        return wrongWithPulp;
    }

    @Override
    public String toString() {
        return additive.name() + ": " + rungs.size() + " swatches to " + strongest() + " on fibre, residual ΔE00 "
                + ColourRange.said(residual);
    }
}
