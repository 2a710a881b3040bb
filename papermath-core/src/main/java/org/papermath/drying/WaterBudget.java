package org.papermath.drying;

import java.util.ArrayList;
import java.util.List;

import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;

import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LiquorRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * The water a studio uses for its paper, and the fibre that goes down the drain with it.
 *
 * @param used the fresh water used
 * @param paper the oven-dry paper made with it
 */
public record WaterBudget(Amount<Volume> used, Amount<Mass> paper) {
    private static final double WORTH_STRAINING = 0.005;
    private static final double PRACTICALLY_IMPOSSIBLE = 0.002;

    /**
     * Checks the budget.
     *
     * @param used the fresh water used
     * @param paper the oven-dry paper made with it, above zero
     * @throws Refused if there is no paper
     */
    public WaterBudget {
        Kinds.MASS.siAboveZero(paper, "paper made");
    }

    /**
     * Makes a budget.
     *
     * @param used the fresh water used, from a meter or buckets
     * @param paper the oven-dry paper made with it, above zero
     * @return the budget
     * @throws Refused if a value is out of range
     */
    public static WaterBudget of(Quantity<Volume> used, Quantity<Mass> paper) {
        return new WaterBudget(Kinds.VOLUME.check(used, "water used"), Kinds.MASS.check(paper, "paper made"));
    }

    /**
     * Returns the water per paper.
     *
     * @return litres a kilogram
     */
    public Amount<LiquorRatio> perPaper() {
        return Kinds.LIQUOR_RATIO.ofSi(used.si() / paper.si(), "L/kg");
    }

    /**
     * What white water carries down the drain.
     *
     * @param solids the solids in it
     * @param ofPaper the same over the paper made
     * @param notices drain advice
     */
    public record Drained(Amount<Mass> solids, Amount<Share> ofPaper, List<Notice> notices) {
        @Override
        public String toString() {
            return solids + ", " + ofPaper + " of the paper";
        }
    }

    /**
     * Returns what white water carries off; a litre of it is taken for a kilogram.
     *
     * @param whiteWater the white water let go
     * @param consistency its consistency by mass
     * @return the solids and what to do
     * @throws Refused if a value is out of range, or more solids than paper would be lost
     */
    public Drained drained(Quantity<Volume> whiteWater, Quantity<Consistency> consistency) {
        double solids = 1000 * Kinds.VOLUME.si(whiteWater, "white water let go")
                * Kinds.CONSISTENCY.si(consistency, "consistency of the white water");
        double share = solids / paper.si();
        if (share > 1) {
            throw Refused.of("water.more-than-paper",
                    "white water: " + Kinds.MASS.ofSi(solids, "g") + " of solids let go from " + paper
                            + " of paper; check the consistency and its unit.",
                    "given", Kinds.MASS.ofSi(solids, "g").toString(), "limit", paper.toString());
        }
        List<Notice> notices = new ArrayList<>();
        if (share > WORTH_STRAINING) {
            notices.add(Notice.note("water.strain",
                    "Strain the white water before it goes: pulp blocks drains, and "
                            + Kinds.SHARE.ofSi(share, "%") + " of the paper goes with it.",
                    "share", Kinds.SHARE.ofSi(share, "%").toString()));
        }
        return new Drained(Kinds.MASS.ofSi(solids, "g"), Kinds.SHARE.ofSi(share, "%"), List.copyOf(notices));
    }

    /**
     * Returns what this budget gives cause for: a figure no hand mill reaches.
     *
     * @return an unmodifiable list; empty from 2 L a kilogram
     */
    public List<Notice> notices() {
        return used.si() / paper.si() >= PRACTICALLY_IMPOSSIBLE ? List.of() : List.of(Notice.warning("water.impossible",
                perPaper() + " of fresh water for the paper: the couched sheet alone carries off more. Check both"
                        + " figures.",
                "given", perPaper().toString()));
    }

    @Override
    public String toString() {
        return perPaper() + " of fresh water";
    }
}
