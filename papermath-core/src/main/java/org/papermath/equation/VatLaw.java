package org.papermath.equation;

import org.papermath.equation.VatBalance.Contents;

/**
 * A vat kept at its mark: how the sheets thin out between two recharges, and what brings it back.
 *
 * <p>Each sheet takes the same part of the fibre there is, so each is thinner than the one before by one factor. The
 * little water that leaves with a couched sheet is not counted here; it makes the sheets fall a trifle less.
 *
 * @param full stock in the vat at its mark, kg
 * @param retention share of the fibre on the mould that stays in the sheet
 * @param lifted stock held on the mould for each sheet, kg
 */
public record VatLaw(double full, double retention, double lifted) {
    private static final double GUARD = 1e-9;

    /** Part of the vat's fibre that a sheet takes. */
    public double fall() {
        return retention * lifted / full;
    }

    /** The first of so many sheets over their mean. */
    public double firstOverMean(int count) {
        return count * fall() / -Math.expm1(count * Math.log1p(-fall()));
    }

    /** The last of so many sheets over their mean. */
    private double lastOverMean(int count) {
        return firstOverMean(count) * Math.exp((count - 1) * Math.log1p(-fall()));
    }

    /** The most sheets that stay within a band about their mean, the first above and the last below it; 1 or more. */
    public int sheetsInBand(double band, int most) {
        if (!(band > 0)) {
            return 1;
        }
        double ends = 1 + Math.log((1 - band) / (1 + band)) / Math.log1p(-fall());
        int count = (int) Math.max(1, Math.min(most, Math.floor(ends + GUARD)));
        while (count > 1 && (firstOverMean(count) > 1 + band + GUARD || lastOverMean(count) < 1 - band - GUARD)) {
            count--;
        }
        return count;
    }

    /** The least stock in a vat in which two sheets stay within a band about their mean, kg. */
    public double leastFull(double band) {
        return VatBalance.leastStockForBand(band, retention, lifted);
    }

    /**
     * Fresh stock that makes the vat hold so much fibre at its mark, kg; zero where it is rich enough. What is bailed to
     * come to the mark is taken out of the vat before the stock is given, and takes some fibre with it.
     *
     * @param now what the vat holds
     * @param wanted oven-dry fibre it is to hold at the mark, kg
     * @param fresh consistency of the fresh stock
     * @param kept share of the fibre in what is bailed that comes back to the vat: 0 without a sieve
     */
    public double stockFor(Contents now, double wanted, double fresh, double kept) {
        double plain = Math.max(0, (wanted - now.fibre()) / fresh);
        if (now.stock() + plain <= full) {
            return plain;
        }
        double lost = now.stock() > 0 ? (1 - kept) * now.consistency() : 0;
        return Math.max(0, (wanted - now.fibre() + lost * (now.stock() - full)) / (fresh - lost));
    }
}
