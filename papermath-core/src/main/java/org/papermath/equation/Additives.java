package org.papermath.equation;

/**
 * Doses of what is added to the stock, what the sheet keeps of it, and gelatine size.
 *
 * <p>A dose d is additive over oven-dry fibre charged; a load L is additive over fibre in the sheet; a share x is
 * additive over sheet, fibre and additive together. Retentions are fractions of what a sheet is formed from.
 */
public final class Additives {
    private Additives() {}

    /** Mass of product to weigh for a dose, given the active fraction of the product. */
    public static double productMass(double dose, double ovenDry, double active) {
        return dose * ovenDry / active;
    }

    /** Dose that a mass of product gives. */
    public static double doseOfProduct(double product, double active, double ovenDry) {
        return product * active / ovenDry;
    }

    /** Volume of a solution to measure for a dose, given the additive in it, kg/m³. */
    public static double solutionVolume(double dose, double ovenDry, double solutionStrength) {
        return dose * ovenDry / solutionStrength;
    }

    /** Strength of a solution, kg/m³: dry mass over volume. */
    public static double solutionStrength(double mass, double volume) {
        return mass / volume;
    }

    /** Load on the fibre of the sheet that a dose gives, from the retentions of additive and fibre. */
    public static double load(double dose, double additiveRetention, double fibreRetention) {
        return dose * additiveRetention / fibreRetention;
    }

    /** Dose that gives a load. */
    public static double doseForLoad(double load, double additiveRetention, double fibreRetention) {
        return load * fibreRetention / additiveRetention;
    }

    /** Share of the sheet that is additive at a load. */
    public static double shareOfLoad(double load) {
        return load / (1 + load);
    }

    /** Load on the fibre at a share of the sheet. */
    public static double loadOfShare(double share) {
        return share / (1 - share);
    }

    /** Dose that gives a share of the sheet. */
    public static double doseForShare(double share, double additiveRetention, double fibreRetention) {
        return doseForLoad(loadOfShare(share), additiveRetention, fibreRetention);
    }

    /** Retention of an additive from the load found in a sheet. */
    public static double retentionOfLoad(double load, double dose, double fibreRetention) {
        return load * fibreRetention / dose;
    }

    /** Share of filler in an oven-dry sheet from its ash, the fibre's own ash and the residue the filler leaves. */
    public static double shareOfAsh(double sheetAsh, double fibreAsh, double fillerResidue) {
        return (sheetAsh - fibreAsh) / (fillerResidue - fibreAsh);
    }

    /**
     * Gelatine a sheet takes from the bath over the sheet's mass: falls in a straight line with beating time, between
     * the bounds inside which it was seen. The fall is one over the unit of the time.
     */
    public static double gelatinePickUp(
            double beatingTime, double unbeaten, double fall, double lowest, double highest) {
        return Math.min(highest, Math.max(lowest, unbeaten - fall * beatingTime));
    }

    /**
     * Strength of the sized over the unsized sheet by gelatine over sheet: a straight line through the middle of what
     * was seen. Size weakens no sheet, so it is never below one.
     */
    public static double gelatineStrength(double onPaper, double middle, double atMiddle, double slope) {
        return Math.max(1, atMiddle + slope * (onPaper - middle));
    }
}
