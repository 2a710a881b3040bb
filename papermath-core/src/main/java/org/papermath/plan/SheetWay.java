package org.papermath.plan;

import org.papermath.equation.Density;
import org.papermath.equation.Drainage;
import org.papermath.equation.Drying;
import org.papermath.equation.Freeness;
import org.papermath.equation.Moisture;
import org.papermath.equation.Pressing;
import org.papermath.equation.Shrinkage;
import org.papermath.equation.WaterProperties;
import org.papermath.equation.WetWeb;
import org.papermath.plan.Job.BatchJob;
import org.papermath.plan.Job.PieceJob;
import org.papermath.plan.Settings.PieceSettings;

/**
 * The way of a sheet from the mould to the dry paper: how it drains, presses, shrinks, dries, and how thick and heavy
 * it is in the end.
 */
final class SheetWay {
    /** Below this grammage, kg/m², the surfaces of the sheet count for its thickness. */
    private static final double THIN_SHEET = 0.010;

    private final Job job;
    private final Slots.General general;

    SheetWay(Job job) {
        this.job = job;
        this.general = job.general;
    }

    /** Conditioned mass over oven-dry solids; minerals hold no water, a measured moisture is of the whole sheet. */
    double conditioned(PieceJob piece, Stuff s, double[] v) {
        if (piece.measuredMoisture != Job.NONE) {
            return 1 + Moisture.ratioOfWetBasis(v[piece.measuredMoisture]);
        }
        return 1 + s.referenceRatio * (1 + s.load - s.particleLoad) / (1 + s.load);
    }

    /** Fills along and across. */
    void shrinkage(PieceJob piece, Stuff s, double pressedRatio, double endRatio, double[] v, double[] both) {
        double restraint = piece.restraint == Job.NONE ? 0 : v[piece.restraint];
        double onset = v[job.batches[piece.batch].shrinkOnset];
        double start = Math.max(pressedRatio, onset);
        double half = Shrinkage.halfDifference(s.freeShrinkage, v[job.batches[piece.batch].direction]);
        double along = s.freeShrinkage - half;
        double across = s.freeShrinkage + half;
        double step = (Shrinkage.share(endRatio, onset) - Shrinkage.share(start, onset)) * (1 - restraint);
        both[0] = measured(piece.measuredAlong, along * step, v);
        both[1] = measured(piece.measuredAcross, across * step, v);
    }

    double pressedRatio(PieceJob piece, Stuff s, double grammage, double pressure, double time, double[] v) {
        if (piece.measuredSolids != Job.NONE) {
            return Moisture.ratioOfSolids(v[piece.measuredSolids]);
        }
        double couched = Moisture.ratioOfSolids(v[general.couched]);
        if (pressure > 0) {
            double equilibrium = Pressing.equilibriumRatio(s.waterRetention, pressure, v[general.pressFactor],
                    v[general.pressReference],
                    v[general.pressExponent], v[general.pressFloor]);
            return Pressing.ratioAfter(couched, equilibrium,
                    Pressing.timeConstant(v[general.pressTimeConstant], grammage, s.waterRetention), time);
        }
        return piece.dryerKind == Job.BLOTTERS ? Math.min(couched, Moisture.ratioOfSolids(v[general.blotterSolids]))
                : couched;
    }

    double sheetDensity(PieceJob piece, Stuff s, double pressure, double[] v) {
        if (piece.measuredDensity != Job.NONE) {
            return v[piece.measuredDensity];
        }
        return Density.ofPressure(s.density, Math.max(pressure, v[general.leastDensityPressure]),
                v[general.pressReference],
                v[general.densitySaturation], v[general.densityExponent]);
    }

    /** Where the density of a fibre is not known an envelope still has to be laid out. */
    double known(double density, double[] v) {
        return Double.isNaN(density) ? v[general.standInDensity] : density;
    }

    double caliper(double grammage, double density, double[] v) {
        return grammage < THIN_SHEET ? Density.thinSheetCaliper(grammage, v[general.thinOffset],
                v[general.thinDensity]) : Density.caliper(grammage, density);
    }

    double drainTime(PieceJob piece, PieceSettings ps, Stuff s, double fibreGrammage, double[] v) {
        double sr = s.drainability;
        if (!(sr <= v[general.tellingLimit])) {
            return Double.NaN;
        }
        BatchJob batch = job.batches[piece.batch];
        double c = ps.dipped ? batch.vatConsistency : Math.min(batch.stockConsistency, v[general.pouredConsistency]);
        double perVolume = c * WaterProperties.stockDensity(c, v[general.wall], job.waterDensity);
        double depth = Drainage.depth(fibreGrammage, s.retention, perVolume);
        double alpha = Freeness.alphaOfSchopperRiegler(Math.max(sr, v[general.waterReading]),
                v[general.resistanceFactor], v[general.waterReading],
                v[general.resistanceExponent]);
        return v[general.suction] * Drainage.time(v[general.endShare] * depth, depth, alpha, v[general.matRetention],
                perVolume,
                v[general.wireResistance], job.waterViscosity, job.waterDensity);
    }

    double dryingTime(PieceJob piece, PieceSettings ps, double load, double grammage, double from, double end,
            double equilibrium, double[] v) {
        double margin = end - equilibrium;
        return switch (piece.dryerKind) {
            case Job.FAN_STACK -> {
                double air = Drying.dryAirFlow(piece.freeAir * v[piece.deliveredShare], job.roomVolume);
                double rate = Drying.stackEvaporation(v[piece.fanEfficiency], air, job.roomSaturated, job.roomRatio);
                yield Drying.twoPeriodTime(load, rate, from, v[piece.criticalRatio], equilibrium,
                        equilibrium + margin);
            }
            case Job.LOFT -> Drying.hungTime(grammage, from, end, piece.spur, 2, flux(piece, v), v[piece.loftTail]);
            case Job.BOARDS -> Drying.hungTime(grammage, from, end, 1, 1, flux(piece, v), v[piece.loftTail]);
            case Job.BLOTTERS -> ps.blotterChanges == Integer.MAX_VALUE ? Double.POSITIVE_INFINITY
                    : ps.blotterChanges * v[piece.blotterHours];
            default -> Double.NaN;
        };
    }

    private double flux(PieceJob piece, double[] v) {
        return Drying.surfaceFlux(job.roomCelsius, job.roomHumidity, v[piece.filmStill], v[piece.radiative],
                v[piece.lewis], 0);
    }

    /** A measured moisture of the finished sheet is taken as what it is dried to. */
    double evaporated(PieceJob piece, double solids, double pressed, double end, double moist) {
        double last = piece.measuredMoisture == Job.NONE ? end : moist - 1;
        return Math.max(0, WetWeb.waterOut(solids, pressed, last));
    }

    private static double measured(int slot, double otherwise, double[] v) {
        return slot == Job.NONE ? otherwise : v[slot];
    }
}
