package org.papermath.plan;

import org.papermath.equation.Beating;
import org.papermath.equation.Density;
import org.papermath.equation.Shrinkage;
import org.papermath.equation.Sorption;
import org.papermath.plan.Job.BatchJob;
import org.papermath.plan.Job.FibreJob;

/** The stuff of a batch after beating and dosing, worked out once from the values of the assumptions. */
final class Stuff {
    /** The temperature the sorption sets are stated at, °C. */
    private static final double SORPTION_CELSIUS = 23;

    /** The relative humidity at which the change of sorption with temperature is taken. */
    private static final double MIDDLE_HUMIDITY = 0.5;

    /** No sheet shrinks more than this along a side, whatever the straight line through water retention says. */
    private static final double MOST_SHRINKAGE = 0.35;

    /** °SR. */
    double drainability;
    double waterRetention;
    /** Linear, without restraint. */
    double freeShrinkage;
    /** Of the sheet before pressing is counted in, kg/m³; not a number where a fibre has none. */
    double density;
    /** Moisture ratio of the fibre in the air of the order. */
    double referenceRatio;
    /** Moisture ratio of the fibre in the air of the room. */
    double roomRatio;
    /** Share of the fibre the mould keeps back. */
    double retention;
    /** Additives that stay in the sheet, over fibre. */
    double load;
    /** Those of them that are mineral and hold no water. */
    double particleLoad;
    /** Dry size taken up, over oven-dry solids. */
    double sizeGain;
    final double[] additiveRetention;

    private Stuff(int additives) {
        this.additiveRetention = new double[additives];
    }

    static Stuff of(Job job, BatchJob batch, double[] v) {
        Stuff stuff = new Stuff(batch.dose.length);
        stuff.blend(job, batch, v);
        stuff.dose(batch, v);
        stuff.sizeGain = Double.isNaN(batch.sizeBath) ? 0
                : v[job.general.sizeTaken] * batch.sizeBath / job.waterDensity;
        return stuff;
    }

    /** Every property of a blend is the mean by mass of its fibres; of density it is the volumes that add up. */
    private void blend(Job job, BatchJob batch, double[] v) {
        double specific = 0;
        double middle = 0;
        double reference = 0;
        double room = 0;
        for (FibreJob fibre : batch.fibres) {
            double share = fibre.share;
            double own = drainability(job.general, batch, fibre, v);
            double held = waterRetention(job.general, fibre, own, v);
            drainability += share * own;
            waterRetention += share * held;
            freeShrinkage += share * freeShrinkage(batch, fibre, held, v);
            specific += share / density(batch, fibre, v);
            middle += share * moistureRatio(fibre, MIDDLE_HUMIDITY, v);
            reference += share * moistureRatio(fibre, job.referenceHumidity, v);
            room += share * moistureRatio(fibre, job.roomHumidity, v);
            retention += share * v[fibre.firstPass];
        }
        density = 1 / specific;
        double slope = v[job.general.sorptionSlope];
        referenceRatio = Sorption.atTemperatureInProportion(reference, middle, slope, job.referenceCelsius,
                SORPTION_CELSIUS);
        roomRatio = Sorption.atTemperatureInProportion(room, middle, slope, job.roomCelsius, SORPTION_CELSIUS);
    }

    private static double drainability(Slots.General general, BatchJob batch, FibreJob fibre, double[] v) {
        double start = v[general.drainabilityUnbeaten];
        if (!Double.isNaN(batch.drainability)) {
            return batch.drainability;
        }
        if (fibre.rate != Job.NONE) {
            return Beating.schopperRiegler(batch.beating, start, v[general.drainabilityLimit], v[fibre.rate],
                    v[fibre.exponent]);
        }
        return batch.beating == 0 ? start : start + v[general.progress] * (v[fibre.drainabilityWell] - start);
    }

    private static double waterRetention(Slots.General general, FibreJob fibre, double drainability, double[] v) {
        boolean longKnown = fibre.retentionLong != Job.NONE;
        return Beating.waterRetention(drainability, v[general.drainabilityUnbeaten], v[fibre.retentionUnbeaten],
                v[fibre.drainabilityWell], v[fibre.retentionWell],
                longKnown ? v[fibre.drainabilityLong] : Double.NaN, longKnown ? v[fibre.retentionLong] : Double.NaN);
    }

    /** By hours of beating where a trial is known for the fibre, else by the water it holds. */
    private static double freeShrinkage(BatchJob batch, FibreJob fibre, double held,
            double[] v) {
        if (fibre.shrinkInitial != Job.NONE) {
            return Shrinkage.freeByTime(v[fibre.shrinkInitial], v[fibre.shrinkLimit], v[fibre.shrinkTime],
                    batch.beating);
        }
        return Shrinkage.freeByRetention(held, v[batch.shrinkSlope], v[batch.shrinkIntercept], 0, MOST_SHRINKAGE);
    }

    private static double density(BatchJob batch, FibreJob fibre, double[] v) {
        if (fibre.hasBeatenDensity()) {
            return Density.ofBeating(v[fibre.densityUnbeaten], v[fibre.densityLong], batch.beating,
                    v[batch.densityTime]);
        }
        return fibre.densityLight != Job.NONE ? v[fibre.densityLight] : Double.NaN;
    }

    private static double moistureRatio(FibreJob fibre, double humidity, double[] v) {
        return Sorption.gab(humidity, v[fibre.monolayer], v[fibre.energy], v[fibre.bulk]);
    }

    /** An additive is dosed on the fibre weighed, and kept in the sheet on the fibre kept. */
    private void dose(BatchJob batch, double[] v) {
        for (int a = 0; a < additiveRetention.length; a++) {
            additiveRetention[a] = v[batch.additiveRetention[a]];
            double kept = batch.dose[a] * additiveRetention[a] / retention;
            load += kept;
            if (batch.particle[a]) {
                particleLoad += kept;
            }
        }
    }
}
