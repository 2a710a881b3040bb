package org.papermath.engine;

import org.papermath.equation.WaterProperties;
import org.papermath.evidence.Scope;
import org.papermath.numeric.Rounding;

/**
 * How thick a vat is made for a sheet. What a sheet weighs is set by the consistency and the depth of the dip together; the
 * dip is kept about as deep as a hand can hold even, and the vat is thickened or let down for it.
 */
public final class VatConsistency {
    /** The step in which a consistency is chosen. */
    private static final double STEP = 0.0005;

    /** What settled it. */
    public enum Why {
        /** The recipe gives it. */
        RECIPE,
        /** The studio keeps its vat so, whatever the sheet. */
        HABIT,
        /** It makes the dip of the sheet as deep as usual. */
        DIP,
        /** The dip would be shallow, but no vat is made thinner. */
        LEAST,
        /** The dip is deep, but thicker pulp no longer stirs and forms. */
        MOST,
        /** The dip is deep, but the stock leaves no room for more. */
        STOCK,
        /** It is good enough for this sheet too. */
        AS_BEFORE;

        /** Whether a bound settled it, and the dip is not as deep as usual. */
        public boolean isBound() {
            return this == LEAST || this == MOST || this == STOCK;
        }
    }

    /**
     * A choice.
     *
     * @param consistency fibre over stock
     * @param why what settled it
     */
    public record Chosen(double consistency, Why why) {}

    private final double given;
    private final Why whyGiven;
    private final double stock;
    private final double usualDip;
    private final double leastDip;
    private final double least;
    private final double mostFree;
    private final double mostSlow;
    private final double free;
    private final double slow;
    private final double shareOfStock;

    /**
     * Reads what a vat may be.
     *
     * @param given by the recipe or by habit of the studio; not a number where the plan chooses
     * @param recipe whether it is the recipe that gives it
     * @param stock consistency of the stock
     */
    VatConsistency(Known known, Scope vat, double given, boolean recipe, double stock) {
        this.given = given;
        this.stock = stock;
        whyGiven = recipe ? Why.RECIPE : Why.HABIT;
        usualDip = known.fixed("vat.dip-depth", vat);
        leastDip = Math.min(usualDip, known.fixed("vat.dip-least", vat));
        least = known.fixed("vat.consistency-least", vat);
        mostFree = known.fixed("vat.consistency-most", Scope.of("free"));
        mostSlow = known.fixed("vat.consistency-most", Scope.of("slow"));
        free = known.fixed("vat.drainability", Scope.of("free"));
        slow = known.fixed("vat.drainability", Scope.of("slow"));
        shareOfStock = known.fixed("vat.share-of-stock", vat);
    }

    /** The most that pulp of a drainability, °SR, still stirs and forms at. */
    double most(double drainability) {
        double part = Math.max(0, Math.min(1, (drainability - free) / (slow - free)));
        return mostFree + (mostSlow - mostFree) * part;
    }

    /** The thickest vat the stock can be let down to. */
    double mostOfStock() {
        return shareOfStock * stock;
    }

    /**
     * Chooses.
     *
     * @param fibre on the area of the wire, kg/m²
     * @param retention share of it that stays in the sheet
     * @param drainability °SR
     * @param before the consistency of the vat as the piece before leaves it; not a number where there is none
     * @param wall density of the fibre wall
     * @param water density of the water
     */
    Chosen choose(double fibre, double retention, double drainability, double before, double wall, double water) {
        if (!Double.isNaN(given)) {
            return new Chosen(given, whyGiven);
        }
        double most = Math.min(most(drainability), mostOfStock());
        if (!Double.isNaN(before)) {
            double depth = depth(fibre, retention, before, wall, water);
            if (depth >= leastDip && (depth <= usualDip * (1 + Rounding.GUARD) || before >= most)) {
                return new Chosen(before, Why.AS_BEFORE);
            }
        }
        double perVolume = fibre / (retention * usualDip);
        double exact = 1 / ((1 / perVolume - 1 / wall) * water + 1);
        double step = Math.min(STEP, most / 4);
        double chosen = Rounding.roundTo(exact, step);
        if (chosen >= most) {
            double kept = Math.floor(most / step + Rounding.GUARD) * step;
            return new Chosen(kept, most < most(drainability) ? Why.STOCK : Why.MOST);
        }
        if (chosen < least) {
            return new Chosen(Math.min(least, most), Why.LEAST);
        }
        return new Chosen(chosen, Why.DIP);
    }

    /** How deep a dip has to be, m. */
    static double depth(double fibre, double retention, double consistency, double wall, double water) {
        return fibre / (retention * consistency * WaterProperties.stockDensity(consistency, wall, water));
    }
}
