package org.papermath.drying;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.equation.Pressing;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LiquorRatio;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Solids;

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
        Objects.requireNonNull(used, "used");
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

    /** Water of one step, over the oven-dry paper. */
    public sealed interface Step permits FoundStep {
        /** {@return the step} */
        String name();

        /** {@return the water in it, with its usual range} */
        Estimate<LiquorRatio> water();

        /** {@return whether it is used again rather than let go} */
        boolean comesBack();
    }

    private record FoundStep(String name, Estimate<LiquorRatio> water, boolean comesBack) implements Step {
        @Override
        public String toString() {
            return name + ": " + water + (comesBack ? ", comes back" : "");
        }
    }

    /**
     * Returns where the water of a kilogram of paper goes: rinsing, the vat, the couched sheet, press, air, felts and
     * cleaning up, and all the fresh water of a small studio. Steps that follow from what is given have no range.
     *
     * @param assumptions the store
     * @param vat the consistency of the vat
     * @param couched the solids after couching
     * @param pressed the solids after pressing, at least those after couching
     * @param dry the moisture ratio of the dry paper
     * @return an unmodifiable list, in the order of the work
     * @throws Refused if a value is out of range
     */
    public static List<Step> steps(
            Assumptions assumptions,
            Quantity<Consistency> vat,
            Quantity<Solids> couched,
            Quantity<Solids> pressed,
            Quantity<MoistureRatio> dry) {
        double c = Kinds.CONSISTENCY.siAboveZero(vat, "consistency of the vat");
        double wet = Pressing.ratioOfSolids(Kinds.SOLIDS.si(couched, "solids after couching"));
        double out = Pressing.ratioOfSolids(Kinds.SOLIDS.siWithin(
                pressed, "solids after pressing", Kinds.SOLIDS.si(couched, "solids after couching"), 1));
        double last = Kinds.MOISTURE_RATIO.siWithin(dry, "moisture ratio of the dry paper", 0, out);
        return List.of(
                usual(assumptions, "rinsing cooked or retted fibre", "water.rinse"),
                worked("in the vat", 1 / c, true),
                worked("leaves with the couched sheet", wet, false),
                worked("of it, out in the press", wet - out, false),
                worked("of it, into the air of the room", out - last, false),
                usual(assumptions, "felts and cleaning up", "water.clean-up"),
                usual(assumptions, "all fresh water of a small studio", "water.total"));
    }

    private static Step usual(Assumptions assumptions, String name, String id) {
        Assumption one = assumptions.get(id, Scope.GENERAL);
        return new FoundStep(
                name,
                Estimate.of(
                        litres(one.likelySi()),
                        litres(one.lowSi()),
                        litres(one.highSi()),
                        List.of(new Estimate.Driver(one, 1))),
                false);
    }

    /** A step of some water over dry mass, kg/kg; a litre of water is taken for a kilogram. */
    private static Step worked(String name, double ratio, boolean comesBack) {
        Amount<LiquorRatio> water = litres(ratio / 1000);
        return new FoundStep(name, Estimate.of(water, water, water, List.of()), comesBack);
    }

    private static Amount<LiquorRatio> litres(double si) {
        return Kinds.LIQUOR_RATIO.ofSi(si, "L/kg");
    }

    /**
     * Returns the water per paper.
     *
     * @return litres a kilogram
     */
    public Amount<LiquorRatio> perPaper() {
        return Kinds.LIQUOR_RATIO.ofSi(used.si() / paper.si(), "L/kg");
    }

    /** What white water carries down the drain. */
    public sealed interface Drained permits FoundDrained {
        /** {@return the solids in it} */
        Amount<Mass> solids();

        /** {@return the same over the paper made} */
        Amount<Share> ofPaper();

        /** {@return drain advice} */
        List<Notice> notices();
    }

    private record FoundDrained(Amount<Mass> solids, Amount<Share> ofPaper, List<Notice> notices) implements Drained {
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
        double solids = 1000
                * Kinds.VOLUME.si(whiteWater, "white water let go")
                * Kinds.CONSISTENCY.si(consistency, "consistency of the white water");
        double share = solids / paper.si();
        if (share > 1) {
            throw Refused.of(
                    "water.more-than-paper",
                    "white water: " + Kinds.MASS.ofSi(solids, "g") + " of solids let go from " + paper
                            + " of paper; check the consistency and its unit.",
                    "given",
                    Kinds.MASS.ofSi(solids, "g").toString(),
                    "limit",
                    paper.toString());
        }
        List<Notice> notices = new ArrayList<>();
        if (share > WORTH_STRAINING) {
            notices.add(Notice.note(
                    "water.strain",
                    "Strain the white water before it goes: pulp blocks drains, and " + Kinds.SHARE.ofSi(share, "%")
                            + " of the paper goes with it.",
                    "share",
                    Kinds.SHARE.ofSi(share, "%").toString()));
        }
        return new FoundDrained(Kinds.MASS.ofSi(solids, "g"), Kinds.SHARE.ofSi(share, "%"), List.copyOf(notices));
    }

    /**
     * Returns what this budget gives cause for: a figure no hand mill reaches.
     *
     * @return an unmodifiable list; empty from 2 L a kilogram
     */
    public List<Notice> notices() {
        return used.si() / paper.si() >= PRACTICALLY_IMPOSSIBLE
                ? List.of()
                : List.of(Notice.warning(
                        "water.impossible",
                        perPaper()
                                + " of fresh water for the paper: the couched sheet alone carries off more. Check both"
                                + " figures.",
                        "given",
                        perPaper().toString()));
    }

    @Override
    public String toString() {
        return perPaper() + " of fresh water";
    }
}
