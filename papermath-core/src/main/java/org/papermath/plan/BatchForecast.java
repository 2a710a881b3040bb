package org.papermath.plan;

import org.jspecify.annotations.Nullable;
import org.papermath.equation.Moisture;
import org.papermath.equation.WaterProperties;
import org.papermath.plan.Job.BatchJob;
import org.papermath.plan.Job.PieceJob;
import org.papermath.plan.Settings.BatchSettings;
import org.papermath.plan.Settings.PieceSettings;

/** What comes out of a batch: the stuff, the stock, what the vat keeps, and through it every sheet of its pieces. */
final class BatchForecast {
    private final Job job;
    private final Slots.General general;
    private final PieceForecast pieces;
    private final WorkingHours hours;

    BatchForecast(Job job, PieceForecast pieces, WorkingHours hours) {
        this.job = job;
        this.general = job.general;
        this.pieces = pieces;
        this.hours = hours;
    }

    void forecast(int index, Settings settings, Stuff s, double[] v, double[] out,
            @Nullable Ledger ledger) {
        BatchJob batch = job.batches[index];
        BatchSettings set = settings.batches[index];
        int at = Out.batch(index);
        double weighed = 0;
        for (int f = 0; f < batch.fibres.length; f++) {
            weighed += set.fromHand[f] + Moisture.ovenDryOfWetBasis(set.asBought[f], v[batch.fibres[f].moisture]);
        }
        double c = weighed / set.stock;
        int n = batch.dose.length;
        double[] inStock = new double[n];
        for (int a = 0; a < n; a++) {
            inStock[a] = set.product[a] * set.loads * batch.active[a] / set.stock;
        }
        double handled = v[general.handling];
        out[at + Out.DRAINABILITY] = s.drainability;
        out[at + Out.WATER_RETENTION] = s.waterRetention;
        out[at + Out.FREE_SHRINKAGE] = s.freeShrinkage;
        out[at + Out.STOCK_CONSISTENCY] = c;
        out[at + Out.FIBRE_WEIGHED] = weighed;
        out[at + Out.HANDLING] = (1 - handled) * weighed;
        if (ledger != null) {
            ledger.open(index, weighed, set.stock, inStock, handled);
        }

        double full = job.vatVolume * WaterProperties.stockDensity(batch.vatConsistency, v[general.wall],
                job.waterDensity);
        RunningVat tank = new RunningVat(full, s, c, inStock);
        double couched = v[general.couched];
        for (int p : batch.pieces) {
            PieceJob piece = job.pieces[p];
            PieceSettings ps = settings.pieces[p];
            double[] sheets = new double[ps.sheets];
            double[][] carried = new double[n][ps.sheets];
            if (ps.dipped) {
                double lifted = ps.lift * v[general.lift];
                for (int e = 0; e <= ps.rechargeStock.length; e++) {
                    int from = e * ps.every;
                    tank.recharge(e == 0 ? ps.startStock : ps.rechargeStock[e - 1], ledger, index);
                    tank.pull(Math.min(ps.every, ps.sheets - from), lifted, couched, sheets, carried, from);
                }
            } else {
                tank.pour(ps.lift, couched, sheets, carried, ledger, index);
            }
            pieces.forecast(piece, ps, s, sheets, carried, v, out, ledger);
        }
        double left = set.stock * handled - tank.used();
        // What is weighed for exactly what is used leaves nothing, not a rounding error of it.
        if (Math.abs(left) < 1e-12 * tank.used()) {
            left = 0;
        }
        out[at + Out.BATCH_HOURS] = hours.ofBatch(index, settings, v);
        out[at + Out.STOCK_LEFT] = left;
        out[at + Out.VAT_FIBRE] = tank.fibre();
        out[at + Out.VAT_STOCK] = tank.mass();
        out[at + Out.WHITE_WATER] = tank.white();
        if (ledger != null) {
            ledger.close(index, tank.fibre(), tank.mass(), tank.additive(), left, c, inStock);
        }
    }
}
