package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.equation.VatBalance;
import org.papermath.equation.VatLaw;

/** What the vat holds while a run goes on, kg; and what has gone into it and out of it. */
final class RunningVat {
    private final PreparingStock.Kept kept;
    /** Fibre over stock, and each additive over stock, of what the vat is charged with. */
    private final double consistency;

    private final double[] inStock;
    private final double[] additive;
    private double fibre;
    private double mass;
    private double used;
    private double white;

    RunningVat(PreparingStock.Kept kept, double consistency, double[] inStock) {
        this.kept = kept;
        this.consistency = consistency;
        this.inStock = inStock;
        this.additive = new double[inStock.length];
    }

    /** Stock to add so that the vat, back at its mark, holds so much fibre. */
    double stockFor(VatLaw law, double wantFibre) {
        return law.stockFor(new VatBalance.Contents(fibre, mass), wantFibre, consistency, kept.fibre());
    }

    /**
     * Makes room by bailing through the sieve, which keeps back what the mould keeps back, adds stock, and brings the
     * level to the mark with water. Returns the water added, below zero where water was bailed.
     */
    double recharge(double full, double stock, @Nullable Accounts accounts, int batch) {
        double over = mass + stock - full;
        double bail = Math.max(0, over);
        // An empty vat has nothing to bail before the stock is in.
        boolean first = bail < mass;
        if (!first) {
            add(stock);
        }
        double share = bail > 0 ? bail / mass : 0;
        double fibreOut = fibre * share * (1 - kept.fibre());
        double solidsOut = fibreOut;
        fibre -= fibreOut;
        white += fibreOut;
        for (int a = 0; a < additive.length; a++) {
            double gone = additive[a] * share * (1 - kept.additives()[a]);
            additive[a] -= gone;
            solidsOut += gone;
            if (accounts != null) {
                accounts.bailedAdditive(batch, a, gone);
            }
        }
        if (accounts != null) {
            accounts.charge(batch, Math.max(0, -over), bail, fibreOut, solidsOut);
        }
        if (first) {
            add(stock);
        }
        mass = full;
        used += stock;
        return -over;
    }

    private void add(double stock) {
        fibre += stock * consistency;
        for (int a = 0; a < additive.length; a++) {
            additive[a] += stock * inStock[a];
        }
        mass += stock;
    }

    /**
     * Pulls some sheets; the fibre and the additives of each go to the arrays from the place given. A vat that runs dry
     * under a dip gives sheets that are not a number.
     */
    void pull(int count, double lifted, double couched, double[] sheets, double[][] carried, int from) {
        if (!(lifted < mass)) {
            mass = Double.NaN;
        }
        VatBalance.Contents after = VatBalance.run(
                new VatBalance.Contents(fibre, mass),
                lifted,
                kept.fibre(),
                couched,
                VatBalance.Recharge.NONE,
                from,
                count,
                sheets,
                additive,
                kept.additives(),
                inStock,
                carried);
        fibre = after.fibre();
        mass = after.stock() > 0 ? after.stock() : Double.NaN;
    }

    /** Pours every sheet by itself, where there is no vat; what the wire does not hold is white water. */
    void pour(
            double poured,
            double couched,
            double[] sheets,
            double[][] carried,
            @Nullable Accounts accounts,
            int batch) {
        for (int i = 0; i < sheets.length; i++) {
            double fibreOut = poured * consistency * (1 - kept.fibre());
            sheets[i] = poured * consistency * kept.fibre();
            white += fibreOut;
            double solids = sheets[i];
            double solidsOut = fibreOut;
            for (int a = 0; a < inStock.length; a++) {
                carried[a][i] = poured * inStock[a] * kept.additives()[a];
                double gone = poured * inStock[a] - carried[a][i];
                solids += carried[a][i];
                solidsOut += gone;
                if (accounts != null) {
                    accounts.bailedAdditive(batch, a, gone);
                }
            }
            if (accounts != null) {
                // The clear water of the box comes and goes; only the water of the stock is on account.
                accounts.charge(batch, 0, poured - solids / couched, fibreOut, solidsOut);
            }
        }
        used += poured * sheets.length;
    }

    double fibre() {
        return fibre;
    }

    double mass() {
        return mass;
    }

    double[] additive() {
        return additive;
    }

    /** Stock that has gone into the vat or the pours so far. */
    double used() {
        return used;
    }

    /** Fibre that has left with the white water so far. */
    double white() {
        return white;
    }
}
