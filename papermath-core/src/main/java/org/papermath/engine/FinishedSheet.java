package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.equation.Density;
import org.papermath.equation.Moisture;
import org.papermath.evidence.Scope;
import org.papermath.order.Piece;
import org.papermath.quantity.Amount;

/** The dry sheet: how dense, how thick, how heavy; and what it has to weigh to be what was ordered. */
public final class FinishedSheet {
    /** Below this grammage, kg/m², the surfaces of the sheet count for its thickness. */
    private static final double THIN_SHEET = 0.010;

    private final double grammage;
    private final double caliper;
    private final double sampleMass;
    private final double sampleArea;
    private final Slot leastPressure;
    private final Slot reference;
    private final Slot saturation;
    private final Slot exponent;
    private final Slot thinOffset;
    private final Slot thinDensity;
    private final Slot standIn;
    private final @Nullable Slot measuredDensity;
    private final @Nullable Slot measuredMoisture;

    FinishedSheet(Known known, Workshop workshop, Piece piece, Scope measured) {
        grammage = piece.grammage().map(Amount::si).orElse(Double.NaN);
        caliper = piece.caliper().map(Amount::si).orElse(Double.NaN);
        sampleMass = piece.sample().map(one -> one.mass().si()).orElse(Double.NaN);
        sampleArea = piece.sample().map(one -> one.width().si() * one.height().si()).orElse(Double.NaN);
        leastPressure = known.slot("sheet.density-least-pressure");
        reference = known.slot("press.reference-pressure", workshop.press);
        saturation = known.slot("sheet.density-saturation-pressure", workshop.press);
        exponent = known.slot("sheet.density-exponent", workshop.press);
        thinOffset = known.slot("sheet.thin-offset");
        thinDensity = known.slot("sheet.density-lightly-pressed", Scope.of("kozo"));
        standIn = known.slot("sheet.density-stand-in");
        measuredDensity = known.maybe("sheet.density-measured", measured);
        measuredMoisture = known.maybe("sheet.moisture-conditioned", measured);
    }

    /** The least pressure the model of density is made for. */
    public Slot leastPressure() {
        return leastPressure;
    }

    /** The density an envelope is laid out with where nobody knows it. */
    public Slot standIn() {
        return standIn;
    }

    boolean hasMeasuredDensity() {
        return measuredDensity != null;
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

    /** Density, kg/m³; not a number where nobody knows it. */
    double density(PreparingStock.State state, double pressure, Values v) {
        if (measuredDensity != null) {
            return v.of(measuredDensity);
        }
        return Density.ofPressure(state.density(), Math.max(pressure, v.of(leastPressure)), v.of(reference),
                v.of(saturation), v.of(exponent));
    }

    /** Where the density of a fibre is not known an envelope still has to be laid out. */
    double known(double density, Values v) {
        return Double.isNaN(density) ? v.of(standIn) : density;
    }

    double caliper(double grammage, double density, Values v) {
        return grammage < THIN_SHEET ? Density.thinSheetCaliper(grammage, v.of(thinOffset), v.of(thinDensity))
                : Density.caliper(grammage, density);
    }

    /** The conditioned grammage that was ordered, or that a thickness or a sample asks for. */
    double target(PreparingStock.State state, PreparingStock.Kept kept, double density, Values v) {
        if (!Double.isNaN(grammage)) {
            return grammage;
        }
        if (!Double.isNaN(caliper)) {
            return caliper * density;
        }
        // A sample is weighed in the air of the studio: back to oven-dry, then to the air of the order.
        double solids = sampleMass / (1 + state.roomRatio()) / sampleArea;
        return solids * conditioned(state, kept.load(), kept.particleLoad(), v);
    }
}
