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
        for (FibreJob fibre : batch.fibres) {
            double share = fibre.share;
            double own = drainability(job.general, batch, fibre, v);
            double held = waterRetention(job.general, fibre, own, v);
            drainability += share * own;
            waterRetention += share * held;
            freeShrinkage += share * freeShrinkage(job.general, batch, fibre, held, v);
            specific += share / density(job.general, batch, fibre, v);
            referenceRatio += share * moistureRatio(job, fibre, job.referenceHumidity, job.referenceCelsius, v);
            roomRatio += share * moistureRatio(job, fibre, job.roomHumidity, job.roomCelsius, v);
            retention += share * v[fibre.firstPass];
        }
        density = 1 / specific;
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
    private static double freeShrinkage(Slots.General general, BatchJob batch, FibreJob fibre, double held,
            double[] v) {
        if (fibre.shrinkInitial != Job.NONE) {
            return Shrinkage.freeByTime(v[fibre.shrinkInitial], v[fibre.shrinkLimit], v[fibre.shrinkTime],
                    batch.beating);
        }
        return Shrinkage.freeByRetention(held, v[general.shrinkSlope], v[general.shrinkIntercept], 0, MOST_SHRINKAGE);
    }

    private static double density(Slots.General general, BatchJob batch, FibreJob fibre, double[] v) {
        if (fibre.densityUnbeaten != Job.NONE && fibre.densityLong != Job.NONE) {
            return Density.ofBeating(v[fibre.densityUnbeaten], v[fibre.densityLong], batch.beating,
                    v[general.densityTime]);
        }
        return fibre.densityLight != Job.NONE ? v[fibre.densityLight] : Double.NaN;
    }

    private static double moistureRatio(Job job, FibreJob fibre, double humidity, double celsius, double[] v) {
        double m0 = v[fibre.monolayer];
        double c = v[fibre.energy];
        double k = v[fibre.bulk];
        return Sorption.atTemperatureInProportion(Sorption.gab(humidity, m0, c, k),
                Sorption.gab(MIDDLE_HUMIDITY, m0, c, k), v[job.general.sorptionSlope], celsius, SORPTION_CELSIUS);
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
