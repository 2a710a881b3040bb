package org.papermath.plan;

import org.papermath.equation.Moisture;
import org.papermath.equation.VatBalance;
import org.papermath.equation.WaterProperties;
import org.papermath.numeric.Rounding;
import org.papermath.plan.Job.BatchJob;
import org.papermath.plan.Job.FibreJob;
import org.papermath.plan.Settings.BatchSettings;
import org.papermath.plan.Settings.PieceSettings;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/** Settings of a batch: fibre, beater loads, doses, stock, and the run at the vat or the pours that use it. */
final class FurnishSettings {
    /** The steps in which a lift is told where they are fine enough, kg. */
    private static final double LIFT_STEP = 0.01;

    /** A step is fine enough up to this share of what is measured with it. */
    private static final double FINE = 0.01;

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
        set.ovenDry = form(batch, set, settings, s, c, v) * c / v[general.handling];

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

    /** Plans the run at the vat and the pours, and returns the stock they take. */
    private double form(BatchJob batch, BatchSettings set, Settings settings, Stuff s, double c, double[] v) {
        double[] inStock = new double[batch.dose.length];
        for (int a = 0; a < inStock.length; a++) {
            inStock[a] = c * batch.dose[a];
        }
        RunningVat tank = new RunningVat(fullVat(batch, v), s, c, inStock);
        for (int p : batch.pieces) {
            PieceSettings ps = settings.pieces[p];
            double[] sheets = new double[ps.sheets];
            double[][] carried = new double[inStock.length][ps.sheets];
            if (job.hasVat) {
                lift(batch, ps, s, v);
            }
            requireDrier(batch, ps, s, c, v);
            if (ps.dipped) {
                dip(batch, set, ps, tank, sheets, carried, v);
            } else {
                pour(set, ps, s, c);
                tank.pour(ps.lift, v[general.couched], sheets, carried, null, 0);
            }
            double all = 0;
            for (double sheet : sheets) {
                all += sheet;
            }
            ps.stepShift = all / sheets.length / ps.fibre - 1;
            steps(batch, set, ps, c);
        }
        return tank.used();
    }

    /** What the vat holds at its mark, kg. */
    private double fullVat(BatchJob batch, double[] v) {
        return job.vatVolume
                * WaterProperties.stockDensity(batch.vatConsistency, v[general.wall], job.waterDensity);
    }

    /** Chooses the lift of a dip, and whether the vat can give it. */
    private void lift(BatchJob batch, PieceSettings ps, Stuff s, double[] v) {
        double full = fullVat(batch, v);
        ps.wantedLift = VatBalance.liftedOfSheet(ps.fibre, s.retention, batch.vatConsistency) / v[general.lift];
        double step = liftStep(ps.wantedLift);
        ps.lift = Math.max(step, Rounding.roundTo(ps.wantedLift, step));
        double inBand = VatBalance.sheetsInBand(v[general.vatTolerance], full, s.retention, ps.lift * v[general.lift]);
        ps.leastVatVolume = inBand < 1 ? job.vatVolume / inBand : 0;
        ps.every = (int) Math.max(1, Math.floor(inBand + Rounding.GUARD));
        // A mould that does not go in, or a dip that may take more than there is, cannot be dipped.
        ps.tooWide = !Double.isNaN(job.vatWidth)
                && !Fit.within(ps.openingWidth, ps.openingHeight, job.vatWidth, job.vatLength);
        ps.dipped = !ps.tooWide && ps.lift * Math.max(v[general.lift], job.high[general.lift]) < full;
    }

    /** A lift is told in round figures where they are fine enough, else as finely as the scale can weigh it. */
    private double liftStep(double lift) {
        return LIFT_STEP <= FINE * lift ? Math.max(LIFT_STEP, job.scale) : job.scale;
    }

    /** A sheet that leaves the vat wetter than what was lifted would take more water away than there is. */
    private void requireDrier(BatchJob batch, PieceSettings ps, Stuff s, double c, double[] v) {
        double lifted = (ps.dipped ? batch.vatConsistency : c) * s.retention * (1 + s.load);
        if (v[general.couched] <= lifted) {
            throw Refused.of("vat.sheet-wetter-than-vat",
                    "recipe " + batch.name + ": solids of the couched sheet: " + percent(v[general.couched])
                            + ", no more than the " + percent(lifted) + " that is lifted with the mould. A sheet drains;"
                            + " check the value of web.solids-couched and the consistency of the recipe.",
                    "recipe", batch.name, "given", v[general.couched], "least", lifted);
        }
    }

    /** Plans the charge of the vat, the dips and the recharges between them. */
    private void dip(BatchJob batch, BatchSettings set, PieceSettings ps, RunningVat tank, double[] sheets,
            double[][] carried, double[] v) {
        double full = fullVat(batch, v);
        double actual = ps.lift * v[general.lift];
        double part = tank.retention() * actual / full;
        int events = Math.max(0, (ps.sheets - 1) / ps.every);
        ps.rechargeStock = new double[events];
        ps.rechargeWater = new double[events];
        ps.rechargeBail = new double[events];
        for (int e = 0; e <= events; e++) {
            int from = e * ps.every;
            int count = Math.min(ps.every, ps.sheets - from);
            // The mean of so many sheets, each thinner than the one before by the same factor, is to be the target.
            double thinned = 1 - Math.pow(1 - part, count);
            double wanted = tank.stockFor(batch.vatConsistency * full * part * count / thinned);
            double stock = Rounding.roundTo(wanted / set.stockDensity, job.jug) * set.stockDensity;
            level(tank.recharge(stock, null, 0), ps, e - 1);
            ps.wantedStock = Math.max(ps.wantedStock, wanted);
            if (e == 0) {
                ps.startStock = stock;
            } else {
                ps.rechargeStock[e - 1] = stock;
            }
            tank.pull(count, actual, v[general.couched], sheets, carried, from);
        }
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

    /** Where sheets are not dipped each is poured by itself; what the wire does not hold runs away. */
    private void pour(BatchSettings set, PieceSettings ps, Stuff s, double c) {
        ps.wantedStock = ps.fibre / s.retention / c;
        ps.lift = Math.max(job.jug, Rounding.roundTo(ps.wantedStock / set.stockDensity, job.jug)) * set.stockDensity;
    }

    /** Works out what would help where a step of the scale or the jug moves the weight. */
    private void steps(BatchJob batch, BatchSettings set, PieceSettings ps, double c) {
        ps.jugStep = !ps.dipped || Math.abs(ps.lift / ps.wantedLift - 1) < Math.abs(ps.stepShift) / 2;
        // A vat that is rich enough from the piece before takes no stock; what moved its weight is the filling.
        double stock = ps.wantedStock > 0 ? ps.wantedStock : job.vatVolume * set.stockDensity * batch.vatConsistency / c;
        double measured = ps.jugStep ? stock / set.stockDensity : ps.wantedLift;
        double step = ps.jugStep ? job.jug : liftStep(measured);
        ps.finerStep = Rounding.niceBelow(2 * FINE * measured);
        ps.evenConsistency = (ps.jugStep ? c : batch.vatConsistency) * measured
                / (Rounding.ceil(measured / step) * step);
    }

    private static String percent(double fraction) {
        return Units.fourDigits(100 * fraction) + " %";
    }
}
