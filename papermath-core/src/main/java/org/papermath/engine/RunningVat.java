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
    private final double[] pailAdditive;
    /** Share of the fibre in what is bailed that comes back; what of an additive does is that share of what a mould keeps. */
    private final boolean strained;

    private double pailFibre;
    private double pail;
    private double fibre;
    private double mass;
    private double used;
    private double white;

    RunningVat(PreparingStock.Kept kept, double consistency, double[] inStock, boolean strained) {
        this.kept = kept;
        this.strained = strained;
        this.pailAdditive = new double[inStock.length];
        this.consistency = consistency;
        this.inStock = inStock;
        this.additive = new double[inStock.length];
    }

    /** A vat as it stands. */
    RunningVat(PreparingStock.Kept kept, double consistency, double[] inStock, boolean strained, VatStanding now) {
        this(kept, consistency, inStock, strained);
        fibre = now.fibre();
        mass = now.mass();
        pailFibre = now.pailFibre();
        pail = now.pail();
        used = now.used();
        System.arraycopy(now.additives(), 0, additive, 0, additive.length);
        System.arraycopy(now.pailAdditives(), 0, pailAdditive, 0, pailAdditive.length);
    }

    /** How it stands now. */
    VatStanding now() {
        return new VatStanding(fibre, mass, additive.clone(), pailFibre, pail, pailAdditive.clone(), used);
    }

    /** Stock to add so that the vat, back at its mark, holds so much fibre. */
    double stockFor(VatLaw law, double wantFibre) {
        return law.stockFor(new VatBalance.Contents(fibre, mass), wantFibre, consistency, sieve());
    }

    /**
     * Stock to add so that the vat is as thick as with so much fibre at its mark, where the level is left as it comes to
     * be.
     */
    double stockFor(double thickness) {
        return Math.max(0, (thickness * mass - fibre) / (consistency - thickness));
    }

    /** What of the pail to add for that, all of it at most. */
    double pailFor(VatLaw law, double wantFibre) {
        return pail > 0
                ? Math.min(
                        pail, law.stockFor(new VatBalance.Contents(fibre, mass), wantFibre, pailFibre / pail, sieve()))
                : 0;
    }

    private double sieve() {
        return strained ? kept.fibre() : 0;
    }

    /**
     * Takes some of what is in the vat out into a pail, and brings the level to the mark with water. Returns the water.
     */
    double letDown(double full, double taken, @Nullable Accounts accounts, int batch) {
        double share = taken / mass;
        pail += taken;
        pailFibre += fibre * share;
        fibre -= fibre * share;
        for (int a = 0; a < additive.length; a++) {
            pailAdditive[a] += additive[a] * share;
            additive[a] -= additive[a] * share;
        }
        double water = full - (mass - taken);
        if (accounts != null) {
            accounts.charge(batch, water, 0, 0, 0);
        }
        mass = full;
        return water;
    }

    /** Gives some of the pail back, before any stock; what is bailed for it is bailed as for stock. */
    double fromPail(double full, double given, @Nullable Accounts accounts, int batch) {
        double part = pail > 0 ? Math.min(1, given / pail) : 0;
        double bailed = bail(Math.max(0, mass + part * pail - full), accounts, batch);
        fibre += part * pailFibre;
        mass += part * pail - bailed;
        pailFibre -= part * pailFibre;
        for (int a = 0; a < additive.length; a++) {
            additive[a] += part * pailAdditive[a];
            pailAdditive[a] -= part * pailAdditive[a];
        }
        pail -= part * pail;
        return bailed;
    }

    /** Strains water out; the fibre the sieve holds goes back. There is a sieve for that in any case. */
    void strain(double taken, @Nullable Accounts accounts, int batch) {
        if (taken > 0) {
            bail(taken, kept.fibre(), true, accounts, batch);
            mass -= taken;
        }
    }

    /** Takes stirred liquor out, through the sieve where there is one; the fibre the sieve holds goes back. */
    private double bail(double taken, @Nullable Accounts accounts, int batch) {
        return bail(taken, sieve(), strained, accounts, batch);
    }

    private double bail(double taken, double held, boolean strains, @Nullable Accounts accounts, int batch) {
        if (taken <= 0 && accounts == null && !Double.isNaN(fibre)) {
            return taken;
        }
        double share = taken > 0 ? taken / mass : 0;
        double fibreOut = fibre * share * (1 - held);
        double solidsOut = fibreOut;
        fibre -= fibreOut;
        white += fibreOut;
        for (int a = 0; a < additive.length; a++) {
            double gone = additive[a] * share * (1 - (strains ? kept.additives()[a] : 0));
            additive[a] -= gone;
            solidsOut += gone;
            if (accounts != null) {
                accounts.bailedAdditive(batch, a, gone);
            }
        }
        if (accounts != null) {
            accounts.charge(batch, 0, taken, fibreOut, solidsOut);
        }
        return taken;
    }

    /**
     * Makes room by bailing, adds stock, and brings the level to the mark with water; or leaves the level as it comes to
     * be. Returns the water added, below zero where water was bailed.
     */
    double recharge(double full, double stock, boolean level, @Nullable Accounts accounts, int batch) {
        if (!level) {
            add(stock);
            used += stock;
            return 0;
        }
        double over = mass + stock - full;
        double bail = Math.max(0, over);
        // An empty vat has nothing to bail before the stock is in.
        boolean first = bail < mass;
        if (!first) {
            add(stock);
        }
        bail(bail, accounts, batch);
        if (accounts != null) {
            accounts.charge(batch, Math.max(0, -over), 0, 0, 0);
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
        VatBalance.Contents after = VatBalance.pull(
                new VatBalance.Contents(fibre, mass),
                lifted,
                kept.fibre(),
                couched,
                from,
                from + count,
                sheets,
                null,
                additive,
                kept.additives(),
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

    /** Fibre in the vat and in the pail. */
    double fibre() {
        return fibre + pailFibre;
    }

    /** What is in the vat and in the pail. */
    double mass() {
        return mass + pail;
    }

    /** The level, as what stands in the vat. */
    double standing() {
        return mass;
    }

    /** Fibre in the vat alone. */
    double fibreStanding() {
        return fibre;
    }

    double[] additive() {
        double[] all = additive.clone();
        for (int a = 0; a < all.length; a++) {
            all[a] += pailAdditive[a];
        }
        return all;
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
