package org.papermath.sheet;

import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.equation.Moisture;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.numeric.Normal;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Solids;

/**
 * One sheet in one of its states: formed on the mould, couched, pressed, dry. Immutable.
 *
 * <p>Fibre, additives and water are kept as masses and conserved from state to state: what a step takes out of the
 * sheet is its {@link #released()} water, what surface sizing brings in is added to additives and water. Oven-dry mass
 * is fibre and additives together. In every state area × grammage × (1 − moisture) is the oven-dry mass.
 */
public abstract sealed class Sheet permits FormedSheet, CouchedSheet, PressedSheet, DrySheet {
    /** Oven-dry fibre, kg. */
    final double fibre;

    /** Oven-dry additives and size, kg. */
    final double additives;

    /** The part of the additives that takes up no moisture, kg. */
    final double minerals;

    /** Water, kg. */
    final double water;

    /** Width and height, m. */
    final double width;

    /** Height, m. */
    final double height;

    /** Water given up in the step to this state, kg. */
    final double released;

    Sheet(double fibre, double additives, double minerals, double water, double width, double height, double released) {
        this.fibre = fibre;
        this.additives = additives;
        this.minerals = minerals;
        this.water = water;
        this.width = width;
        this.height = height;
        this.released = released;
    }

    /** Returns the water at some solids, refusing solids below those of this state. */
    final double waterAt(double solids, String what) {
        double there = ovenDrySi() * Moisture.ratioOfSolids(solids);
        if (there > water * (1 + 1e-12)) {
            throw Refused.of(
                    "sheet.wetter",
                    what + ": " + Kinds.SOLIDS.ofSi(solids, "%") + " given, but the sheet before is at " + solids()
                            + "; this step takes water out and cannot put it in. Check which of the two was meant.",
                    "given",
                    Kinds.SOLIDS.ofSi(solids, "%").toString(),
                    "limit",
                    solids().toString());
        }
        return Math.min(water, there);
    }

    final double ovenDrySi() {
        return fibre + additives;
    }

    /** Oven-dry mass that takes up moisture from the air, kg. */
    final double sorbing() {
        return ovenDrySi() - minerals;
    }

    /**
     * Returns the oven-dry fibre.
     *
     * @return the mass
     */
    public final Amount<Mass> fibre() {
        return Kinds.MASS.ofSi(fibre, "g");
    }

    /**
     * Returns the oven-dry additives in the sheet: fillers, pigments, size.
     *
     * @return the mass
     */
    public final Amount<Mass> additives() {
        return Kinds.MASS.ofSi(additives, "g");
    }

    /**
     * Returns the part of the additives that takes up no moisture: fillers and mineral pigments.
     *
     * @return the mass
     */
    public final Amount<Mass> minerals() {
        return Kinds.MASS.ofSi(minerals, "g");
    }

    /**
     * Returns fibre and additives together.
     *
     * @return the oven-dry mass
     */
    public final Amount<Mass> ovenDry() {
        return Kinds.MASS.ofSi(ovenDrySi(), "g");
    }

    /**
     * Returns the water.
     *
     * @return the mass
     */
    public final Amount<Mass> water() {
        return Kinds.MASS.ofSi(water, "g");
    }

    /**
     * Returns what the scale shows: fibre, additives and water.
     *
     * @return the mass
     */
    public final Amount<Mass> mass() {
        return Kinds.MASS.ofSi(ovenDrySi() + water, "g");
    }

    /**
     * Returns the water given up in the step to this state; it drains, goes into felts or into the air.
     *
     * @return the mass
     */
    public final Amount<Mass> released() {
        return Kinds.MASS.ofSi(released, "g");
    }

    /**
     * Returns the oven-dry mass over the whole.
     *
     * @return the solids
     */
    public final Amount<Solids> solids() {
        return Kinds.SOLIDS.ofSi(ovenDrySi() / (ovenDrySi() + water), "%");
    }

    /**
     * Returns the water over the whole, wet basis.
     *
     * @return the moisture
     */
    public final Amount<org.papermath.quantity.Moisture> moisture() {
        return Kinds.MOISTURE.ofSi(water / (ovenDrySi() + water), "%");
    }

    /**
     * Returns the water over the oven-dry mass, dry basis.
     *
     * @return the moisture ratio
     */
    public final Amount<MoistureRatio> ratio() {
        return Kinds.MOISTURE_RATIO.ofSi(water / ovenDrySi(), "g/g");
    }

    /**
     * Returns the size across the mould.
     *
     * @return the width
     */
    public final Amount<Length> width() {
        return Kinds.LENGTH.ofSi(width, "mm");
    }

    /**
     * Returns the size along the mould.
     *
     * @return the height
     */
    public final Amount<Length> height() {
        return Kinds.LENGTH.ofSi(height, "mm");
    }

    /**
     * Returns the area of one face.
     *
     * @return the area
     */
    public final Amount<Area> area() {
        return Kinds.AREA.ofSi(width * height, "m2");
    }

    /**
     * Returns the mass over the area in this state, wet as it is.
     *
     * @return the grammage
     */
    public final Amount<Grammage> grammage() {
        return Kinds.GRAMMAGE.ofSi((ovenDrySi() + water) / (width * height), "g/m2");
    }

    /**
     * Returns the oven-dry mass over the area in this state.
     *
     * @return the grammage
     */
    public final Amount<Grammage> ovenDryGrammage() {
        return Kinds.GRAMMAGE.ofSi(ovenDrySi() / (width * height), "g/m2");
    }

    static double side(Quantity<Length> length, String what) {
        return Kinds.LENGTH.siAboveZero(length, what);
    }

    /** Returns a wet state with size, mass and solids, and mass and grammage of what is dry in it, for people. */
    final String text(String state) {
        return state + " sheet " + width() + " × " + height() + ", " + mass() + " at " + solids() + " solids; oven-dry "
                + ovenDry() + ", " + ovenDryGrammage();
    }

    /** Returns state, size, mass and solids, and the oven-dry mass and grammage, to four digits. */
    @Override
    public abstract String toString();

    /** What is dry of a sheet weighed twice, or what is water, as a value measured here. */
    static Assumptions dryMatter(
            Assumptions assumptions,
            String id,
            Scope scope,
            Reading<Mass> whole,
            Reading<Mass> dry,
            double left,
            boolean wantsWater) {
        double all = Kinds.MASS.siAboveZero(whole.value(), "mass before drying");
        double rest = Kinds.MASS.siWithin(dry.value(), "mass after drying", 0, all);
        double half = Math.hypot(
                Normal.halfBandOfRatio(
                        rest, dry.error().si(), all, whole.error().si()),
                left);
        return assumptions.measuredShare(id, scope, wantsWater ? 1 - rest / all : rest / all, half);
    }
}
