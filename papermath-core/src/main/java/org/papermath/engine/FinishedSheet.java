package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.equation.CaliperLaw;
import org.papermath.equation.Density;
import org.papermath.equation.FillerLaw;
import org.papermath.equation.Moisture;
import org.papermath.evidence.Scope;
import org.papermath.notice.SheetNotices;
import org.papermath.order.Piece;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** The dry sheet: how dense, how thick, how heavy; and what it has to weigh to be what was ordered. */
public final class FinishedSheet {
    static final StageFigures FIGURES = new StageFigures();

    public static final PieceFigure GRAMMAGE = FIGURES.piece("grammage", Kinds.GRAMMAGE, "g/m2", Scale.FACTOR);
    public static final PieceFigure CALIPER = FIGURES.pieceIfKnown("caliper", Kinds.LENGTH, "um", Scale.FACTOR);
    public static final PieceFigure DENSITY = FIGURES.pieceIfKnown("density", null, "kg/m3", Scale.FACTOR);

    private final double grammage;
    private final double caliper;
    private final double sampleMass;
    private final double sampleArea;
    private final double densest;
    private final Slot thinnest;
    private final double leastCaliper;
    private final Slot standIn;
    private final Slot fillerVolume;
    private final @Nullable Slot measuredDensity;
    private final @Nullable Slot measuredMoisture;

    FinishedSheet(Known known, Piece piece, Scope dense, Scope measured) {
        grammage = piece.grammage().map(Amount::si).orElse(Double.NaN);
        caliper = piece.caliper().map(Amount::si).orElse(Double.NaN);
        sampleMass = piece.sample().map(one -> one.mass().si()).orElse(Double.NaN);
        sampleArea =
                piece.sample().map(one -> one.width().si() * one.height().si()).orElse(Double.NaN);
        piece.sample()
                .ifPresent(one -> SheetNotices.requirePaper(
                        sampleMass / sampleArea / one.caliper().si()));
        densest = known.fixed("sheet.density-most", dense);
        thinnest = known.slot("sheet.thinnest");
        leastCaliper = known.fixed("sheet.thinnest", Scope.GENERAL);
        standIn = known.slot("sheet.density-stand-in");
        fillerVolume = known.slot("sheet.filler-volume");
        measuredDensity = known.maybe("sheet.density-measured", measured);
        measuredMoisture = known.maybe("sheet.moisture-conditioned", measured);
    }

    /** Whether no sheet can be made as thin. */
    boolean isTooThin(double ordered) {
        return measuredDensity == null && ordered <= leastCaliper;
    }

    /** What no sheet is thinner than, m. */
    double thinnest() {
        return leastCaliper;
    }

    /** The density an envelope is laid out with where it is not known. */
    public Slot standIn() {
        return standIn;
    }

    /** Whether the density was measured on such sheets. */
    public boolean hasMeasuredDensity() {
        return measuredDensity != null;
    }

    /** How heavy, how thick and how dense the dry sheet is. */
    void forecast(Passage on) {
        Values v = on.v;
        double moist = conditioned(on.state, on.load, on.particles, v);
        double weight = on.run.solids() * (1 + on.gain) * moist / on.dryArea;
        double density = density(on.state, on.fillerShare(), Pressing.pressure(on.settings.press(on.piece)), v);
        double thick = Double.isNaN(density) ? Double.NaN : caliper(weight, density, v);
        on.lastRatio = lastRatio(on.endRatio, moist);
        on.set(GRAMMAGE, weight);
        on.set(CALIPER, thick);
        // What scale and micrometer would give, with what single fibres do in a thin sheet.
        on.set(DENSITY, Double.isNaN(density) ? Double.NaN : apparent(weight, density, thick));
    }

    /** Conditioned mass over oven-dry solids; minerals hold no water, a measured moisture is of the whole sheet. */
    double conditioned(PreparingStock.State state, double load, double particleLoad, Values v) {
        if (measuredMoisture != null) {
            return 1 + Moisture.ratioOfWetBasis(v.of(measuredMoisture));
        }
        return 1 + state.referenceRatio() * (1 + load - particleLoad) / (1 + load);
    }

    /** The moisture ratio sheets are dried to, or what was measured of them. */
    double lastRatio(double endRatio, double conditioned) {
        return measuredMoisture == null ? endRatio : conditioned - 1;
    }

    /** The same for the accounts. */
    double bookedRatio(double endRatio, Values v) {
        return measuredMoisture == null ? endRatio : Moisture.ratioOfWetBasis(v.of(measuredMoisture));
    }

    /** Density, kg/m³; not a number where it is not known. */
    double density(PreparingStock.State state, double fillerShare, double pressure, Values v) {
        if (measuredDensity != null) {
            return v.of(measuredDensity);
        }
        double unfilled = state.density().density(pressure, densest);
        return fillerShare > 0 ? new FillerLaw(fillerShare, v.of(fillerVolume)).density(unfilled) : unfilled;
    }

    /** Where the density of a fibre is not known an envelope still has to be laid out. */
    double known(double density, Values v) {
        return Double.isNaN(density) ? v.of(standIn) : density;
    }

    /** What was measured of these very sheets has what single fibres do in it. */
    double caliper(double grammage, double density, Values v) {
        return measuredDensity != null
                ? Density.caliper(grammage, density)
                : new CaliperLaw(v.of(thinnest)).caliper(grammage, density);
    }

    /** The density that scale and micrometer give. */
    double apparent(double grammage, double density, double caliper) {
        return measuredDensity != null ? density : Density.of(grammage, caliper);
    }

    /** The conditioned grammage that was ordered, or that a thickness or a sample asks for. */
    double target(PreparingStock.State state, PreparingStock.Kept kept, double density, Values v) {
        if (!Double.isNaN(grammage)) {
            return grammage;
        }
        if (!Double.isNaN(caliper)) {
            return (measuredDensity != null ? caliper : new CaliperLaw(v.of(thinnest)).solid(caliper)) * density;
        }
        // A sample is weighed in the air of the studio: back to oven-dry, then to the air of the order.
        double solids = sampleMass / (1 + state.roomRatio()) / sampleArea;
        return solids * conditioned(state, kept.load(), kept.particleLoad(), v);
    }
}
