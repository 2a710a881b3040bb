package org.papermath.plan;

import org.papermath.equation.Moisture;
import org.papermath.equation.VatBalance;
import org.papermath.equation.WaterProperties;
import org.papermath.plan.Job.BatchJob;
import org.papermath.plan.Job.FibreJob;
import org.papermath.plan.Settings.BatchSettings;
import org.papermath.plan.Settings.PieceSettings;

/** Settings of a batch: fibre, beater loads, doses, stock, and the run at the vat or the pours that use it. */
final class FurnishSettings {
    /** The steps in which a lift is told, kg. */
    private static final double LIFT_STEP = 0.01;

    /** The step in which water is measured in, m³. */
    private static final double WATER_STEP = 1e-4;

    private final Job job;
    private final Slots.General general;

    FurnishSettings(Job job) {
        this.job = job;
        this.general = job.general;
    }

    /** Fibre, loads, doses, stock, vat charge, lifts and recharges of a batch. */
    void furnish(int index, Settings settings, Stuff s, double[] v) {
        BatchJob batch = job.batches[index];
        BatchSettings set = settings.batches[index];
        double c = batch.stockConsistency;
        set.stockDensity = WaterProperties.stockDensity(c, v[general.wall], job.waterDensity);
        double used = job.hasVat ? planVat(batch, set, settings, s, c, v) : planPours(batch, set, settings, s, c);
        set.ovenDry = used * c / v[general.handling];

        double capacity = job.hasBeater ? Math.min(job.ratedLoad,
                batch.beaterConsistency * job.trough * WaterProperties.stockDensity(batch.beaterConsistency,
                v[general.wall],
                        job.waterDensity)) : Double.POSITIVE_INFINITY;
        set.loads = Math.max(1, (int) Rounding.ceil(set.ovenDry / capacity));
        int n = batch.fibres.length;
        set.fromHand = new double[n];
        set.asBought = new double[n];
        double weighed = 0;
        double bought = 0;
        for (int f = 0; f < n; f++) {
            FibreJob fibre = batch.fibres[f];
            double need = fibre.share * set.ovenDry;
            set.fromHand[f] = Math.min(fibre.onHand, need);
            double rest = Moisture.massAtWetBasis(need - set.fromHand[f], v[fibre.moisture]);
            // Weighed load by load, each rounded up to the scale.
            set.asBought[f] = set.loads * Rounding.ceilTo(rest / set.loads, job.scale);
            weighed += set.fromHand[f] + Moisture.ovenDryOfWetBasis(set.asBought[f], v[fibre.moisture]);
            bought += set.fromHand[f] + set.asBought[f];
        }
        set.loadOvenDry = weighed / set.loads;
        set.loadWater = Math.max(0,
                Rounding.roundTo((weighed / batch.beaterConsistency - bought) / set.loads / job.waterDensity,
                WATER_STEP));
        set.soakWater = Rounding.roundTo(v[general.soakRatio] * weighed, WATER_STEP);
        set.product = new double[batch.dose.length];
        double additives = 0;
        for (int a = 0; a < batch.dose.length; a++) {
            double product = batch.dose[a] * set.loadOvenDry / batch.active[a];
            double step = product < 20 * job.fineScale ? job.fineScale / 10 : job.fineScale;
            set.product[a] = Math.max(step, Rounding.roundTo(product, step));
            additives += set.product[a] * set.loads;
        }
        // The water that makes up the stock is measured in, so its mass is a setting; what the fibre really holds is
        // not.
        set.stock = Math.max(weighed / c, bought + additives);
    }

    /** Plans the run at the vat and returns the stock it takes. */
    private double planVat(BatchJob batch, BatchSettings set, Settings settings, Stuff s, double c, double[] v) {
        double full = job.vatVolume * WaterProperties.stockDensity(batch.vatConsistency, v[general.wall],
                job.waterDensity);
        double[] inStock = new double[batch.dose.length];
        for (int a = 0; a < inStock.length; a++) {
            inStock[a] = c * batch.dose[a];
        }
        RunningVat tank = new RunningVat(full, job.jug, s, c, inStock);
        for (int p : batch.pieces) {
            PieceSettings ps = settings.pieces[p];
            double lifted = Rounding.roundTo(VatBalance.liftedOfSheet(ps.fibre, s.retention,
                    batch.vatConsistency) / v[general.lift], LIFT_STEP);
            ps.lift = Math.max(LIFT_STEP, lifted);
            double actual = ps.lift * v[general.lift];
            double part = s.retention * actual / full;
            double inBand = VatBalance.sheetsInBand(v[general.vatTolerance], full, s.retention, actual);
            if (inBand < 1) {
                set.vatTooSmall = true;
                set.leastVatVolume = Math.max(set.leastVatVolume, job.vatVolume / inBand);
            }
            ps.every = (int) Math.max(1, Math.floor(inBand + Rounding.GUARD));
            // The mean of a run of sheets that thin out by the same factor each is to be the target.
            double thinned = 1 - Math.pow(Math.max(0, 1 - part), ps.every);
            double wantFibre = batch.vatConsistency * full * part * ps.every / thinned;
            ps.startStock = tank.stockFor(wantFibre, set.stockDensity);
            level(tank.recharge(ps.startStock, null, 0), ps, -1);

            int events = Math.max(0, (ps.sheets - 1) / ps.every);
            ps.rechargeStock = new double[events];
            ps.rechargeWater = new double[events];
            ps.rechargeBail = new double[events];
            double[] sheets = new double[ps.sheets];
            double[][] carried = new double[inStock.length][ps.sheets];
            for (int e = 0; e <= events; e++) {
                int from = e * ps.every;
                tank.pull(Math.min(ps.every, ps.sheets - from), actual, v[general.couched], sheets, carried, from);
                if (e < events) {
                    ps.rechargeStock[e] = tank.stockFor(wantFibre, set.stockDensity);
                    level(tank.recharge(ps.rechargeStock[e], null, 0), ps, e);
                }
            }
        }
        return tank.used();
    }

    /** Writes down about how much water brings the level to the mark; the mark itself is the setting. */
    private void level(double water, PieceSettings ps, int event) {
        double step = Math.max(job.jug, WATER_STEP) * job.waterDensity;
        double add = Rounding.roundTo(Math.max(0, water), step);
        double bail = Rounding.roundTo(Math.max(0, -water), step);
        if (event < 0) {
            ps.startWater = add;
            ps.startBail = bail;
        } else {
            ps.rechargeWater[event] = add;
            ps.rechargeBail[event] = bail;
        }
    }

    /** Without a vat each sheet is poured by itself; what the wire does not hold runs away. */
    private double planPours(BatchJob batch, BatchSettings set, Settings settings, Stuff s, double c) {
        double used = 0;
        for (int p : batch.pieces) {
            PieceSettings ps = settings.pieces[p];
            ps.lift = Math.max(job.jug, Rounding.roundTo(ps.fibre / s.retention / c / set.stockDensity, job.jug))
                    * set.stockDensity;
            used += ps.lift * ps.sheets;
        }
        return used;
    }
}
