package org.papermath.equation;

import org.jspecify.annotations.Nullable;

/**
 * What a vat holds while sheets are pulled from it: fibre, stock, and what is carried beside the fibre.
 *
 * <p>Masses in kg; consistency is oven-dry fibre over stock mass. The vat is well stirred and what drips from the
 * mould runs back into it, so a sheet takes away its solids and the water couched with them, nothing else.
 */
public final class VatBalance {
    private VatBalance() {}

    /**
     * Fibre and stock in a vat.
     *
     * @param fibre oven-dry fibre, kg
     * @param stock stock in all, kg
     */
    public record Contents(double fibre, double stock) {
        /** Oven-dry fibre over stock. */
        public double consistency() {
            return fibre / stock;
        }
    }

    /**
     * Pulls sheets one by one, with nothing given between them, from a vat that carries additives beside the fibre, each
     * with a retention of its own. The couched solids are fibre and additives together. A plan with bands pulls thousands,
     * so there is one division for each: the share of the vat that is on the mould.
     *
     * @param start what the vat holds before the first sheet; the stock counts the additives too
     * @param lifted stock held on the mould for each sheet, kg
     * @param retention share of the fibre on the mould that stays in the sheet
     * @param couchSolids solids of the sheet as it leaves the vat
     * @param from the place of the first sheet in the arrays
     * @param until the place after the last
     * @param sheets filled with the oven-dry fibre of each sheet, kg
     * @param before filled with the consistency each sheet is dipped from; null where nobody asks
     * @param additives mass of each additive in the vat, kg; holds what is left after the last sheet
     * @param retentions retention of each additive
     * @param carried filled with the mass of each additive (first index) in each sheet (second index), kg
     * @return what the vat holds after the last sheet
     */
    public static Contents pull(
            Contents start,
            double lifted,
            double retention,
            double couchSolids,
            int from,
            int until,
            double[] sheets,
            double @Nullable [] before,
            double[] additives,
            double[] retentions,
            double[][] carried) {
        double fibre = start.fibre;
        double stock = start.stock;
        double perSolids = 1 / couchSolids;
        for (int i = from; i < until; i++) {
            double share = lifted / stock;
            double kept = retention * fibre;
            double sheet = kept * share;
            for (int a = 0; a < carried.length; a++) {
                double ofAll = retentions[a] * additives[a];
                double taken = ofAll * share;
                carried[a][i] = taken;
                additives[a] -= taken;
                kept += ofAll;
            }
            if (before != null) {
                before[i] = fibre / stock;
            }
            sheets[i] = sheet;
            fibre -= sheet;
            stock -= kept * (share * perSolids);
        }
        return new Contents(fibre, stock);
    }

    /**
     * What is done to the vat between two sheets: stirred vat liquor bailed out, then fresh stock and water given.
     *
     * @param after sheets pulled when it is done; 0 for before the first
     * @param bailed vat liquor taken out, kg, less than the vat holds
     * @param stock fresh stock given, kg
     * @param consistency consistency of the fresh stock
     * @param water water given, kg
     */
    public record Step(int after, double bailed, double stock, double consistency, double water) {}

    /** What the vat holds after a step. */
    public static Contents after(Contents now, Step step) {
        double left = 1 - step.bailed / now.stock;
        return new Contents(
                now.fibre * left + step.stock * step.consistency, now.stock - step.bailed + step.stock + step.water);
    }

    /**
     * What the vat holds after a step.
     *
     * @param additives mass of each additive in the vat, kg; holds what there is of it after the step
     * @param perFibre mass of each additive over the fibre of the fresh stock
     */
    public static Contents after(Contents now, Step step, double[] additives, double[] perFibre) {
        double left = 1 - step.bailed / now.stock;
        double fresh = step.stock * step.consistency;
        for (int a = 0; a < additives.length; a++) {
            additives[a] = additives[a] * left + fresh * perFibre[a];
        }
        return after(now, step);
    }

    /**
     * Pulls sheets one by one with steps between them.
     *
     * @param start what the vat holds before the first sheet; the stock counts the additives too
     * @param lifted stock held on the mould for each sheet, kg
     * @param retention share of the fibre on the mould that stays in the sheet
     * @param couchSolids solids of the sheet as it leaves the vat
     * @param steps what is done between sheets, in order of {@code after}
     * @param sheets filled with the oven-dry fibre of each sheet, kg; its length is the number of sheets
     * @param before filled with the consistency each sheet is dipped from
     * @param additives mass of each additive in the vat, kg; holds what is left after the last sheet
     * @param retentions retention of each additive
     * @param perFibre mass of each additive over the fibre of the fresh stock
     * @param carried filled with the mass of each additive (first index) in each sheet (second index), kg
     * @return what the vat holds after the last sheet
     */
    public static Contents run(
            Contents start,
            double lifted,
            double retention,
            double couchSolids,
            Step[] steps,
            double[] sheets,
            double[] before,
            double[] additives,
            double[] retentions,
            double[] perFibre,
            double[][] carried) {
        Contents now = start;
        int next = 0;
        for (int i = 0; i < sheets.length; ) {
            while (next < steps.length && steps[next].after <= i) {
                now = after(now, steps[next++], additives, perFibre);
            }
            int until = next < steps.length ? Math.min(sheets.length, steps[next].after) : sheets.length;
            now = pull(now, lifted, retention, couchSolids, i, until, sheets, before, additives, retentions, carried);
            i = until;
        }
        return now;
    }

    /** Bailing that keeps level and fibre when fresh stock replaces what sheets carried off; negative: water to add. */
    public static double bailedToHold(
            double fibreTaken, double carriedOff, double freshConsistency, double vatConsistency) {
        return (fibreTaken - carriedOff * freshConsistency) / (freshConsistency - vatConsistency);
    }

    /** Part of the richer of two stocks in a mixture of a consistency. */
    public static double richerPart(double wanted, double richer, double poorer) {
        return (wanted - poorer) / (richer - poorer);
    }

    /** Least stock in a vat for which one lift does not fall through the whole band from 1 + band to 1 − band. */
    public static double leastStockForBand(double band, double retention, double lifted) {
        return retention * lifted * (1 + band) / (2 * band);
    }

    /** First-pass retention from the consistencies of what drained and of the vat. */
    public static double firstPassRetention(double whiteWaterConsistency, double vatConsistency) {
        return 1 - whiteWaterConsistency / vatConsistency;
    }

    /** Oven-dry mass of a sheet formed from the stock held on the mould. */
    public static double sheetMass(double retention, double consistency, double lifted) {
        return retention * consistency * lifted;
    }

    /** Stock held on the mould, from the oven-dry mass of a sheet. */
    public static double liftedOfSheet(double sheetMass, double retention, double consistency) {
        return sheetMass / (retention * consistency);
    }

    /** Consistency before the first sheet that gives a sheet a mass. */
    public static double consistencyForSheet(double sheetMass, double retention, double lifted) {
        return sheetMass / (retention * lifted);
    }

    /** Fresh stock that brings as much fibre as was taken. */
    public static double stockToReplace(double fibreTaken, double freshConsistency) {
        return fibreTaken / freshConsistency;
    }

    /** Fresh stock that brings a vat back to a consistency; negative when the vat is richer than that. */
    public static double stockToRestore(Contents now, double wanted, double freshConsistency) {
        return (wanted * now.stock - now.fibre) / (freshConsistency - wanted);
    }

    /** Fines over long fibre in the vat once it is steady, from the share of fines in what is fed. */
    public static double steadyFinesRatio(double fedShare, double finesRetention, double longRetention) {
        return fedShare / (1 - fedShare) * longRetention / finesRetention;
    }

    /** Share of a mixture from the ratio of one part to the rest. */
    public static double shareOfRatio(double ratio) {
        return ratio / (1 + ratio);
    }

    /** Sheets in which the distance of the fines from their steady level falls to 1/e. */
    public static double finesConstant(double stock, double finesRetention, double lifted) {
        return stock / (finesRetention * lifted);
    }

    /** Sheets until white water that is all used again has come a fraction of the way to its steady level. */
    public static double sheetsToFraction(double fraction, double finesRetention) {
        return Math.log1p(-fraction) / Math.log1p(-finesRetention);
    }

    /**
     * Crowding number of a stock, 5 C L² / w with C in per cent, L in mm and w in mg/m; here all in SI (consistency a
     * fraction, fibre length in m, coarseness in kg/m).
     */
    public static double crowdingNumber(double consistency, double fibreLength, double coarseness) {
        return 500 * consistency * fibreLength * fibreLength / coarseness;
    }

    /** Consistency at which a stock reaches a crowding number. */
    public static double consistencyForCrowding(double crowdingNumber, double fibreLength, double coarseness) {
        return crowdingNumber * coarseness / (500 * fibreLength * fibreLength);
    }
}
