package org.papermath.sheet;

import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;

import org.papermath.air.Air;
import org.papermath.equation.Moisture;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.SorptionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Solids;
import org.papermath.shape.Shrinkage;

/** A sheet on the mould that has stopped dripping. Immutable. */
public final class FormedSheet extends Sheet {
    private FormedSheet(double fibre, double additives, double minerals, double water, double width, double height) {
        super(fibre, additives, minerals, water, width, height, 0);
    }

    /**
     * Makes a sheet at the usual solids on the mould ({@code web.solids-on-mould}).
     *
     * @param ovenDryFibre the oven-dry fibre in it, above zero
     * @param width the deckle opening across, above zero
     * @param height the deckle opening along, above zero
     * @return the sheet
     * @throws Refused if a value is out of range
     */
    public static FormedSheet of(Quantity<Mass> ovenDryFibre, Quantity<Length> width, Quantity<Length> height) {
        double fibre = Kinds.MASS.siAboveZero(ovenDryFibre, "oven-dry fibre of the sheet");
        double solids = Assumptions.standard().si("web.solids-on-mould", Scope.GENERAL);
        return new FormedSheet(fibre, 0, 0, fibre * Moisture.ratioOfSolids(solids), side(width, "width of the deckle"),
                side(height, "height of the deckle"));
    }

    /**
     * Makes a sheet from the oven-dry grammage on the mould, at the usual solids there.
     *
     * @param ovenDry the oven-dry fibre over the area of the deckle
     * @param width the deckle opening across, above zero
     * @param height the deckle opening along, above zero
     * @return the sheet
     * @throws Refused if a value is out of range
     */
    public static FormedSheet ofGrammage(Quantity<Grammage> ovenDry, Quantity<Length> width, Quantity<Length> height) {
        double mass = Kinds.GRAMMAGE.si(ovenDry, "oven-dry grammage on the mould") * side(width, "width of the deckle")
                * side(height, "height of the deckle");
        return of(Kinds.MASS.ofSi(mass, "g"), width, height);
    }

    /**
     * Makes the sheet to form for a finished one, without additives, at the usual solids on the mould:
     * {@code deckle = finished/(1 - s)} in each direction, {@code W = W_c (1 - s_along)(1 - s_across)/(1 + M)} oven-dry.
     * Couching, pressing and drying it with the same shrinkage gives the finished sheet back.
     *
     * @param conditioned the grammage wanted, conditioned at 23 °C and 50 % relative humidity
     * @param width the finished width, across the mould, above zero
     * @param height the finished height, along the mould, above zero
     * @param shrinkage what the sheet shrinks in drying; a {@link ShrinkageModel} foretells it
     * @param sorption the moisture of its fibre in air
     * @return the sheet on the mould
     * @throws Refused if a value is out of range
     */
    public static FormedSheet toBecome(Quantity<Grammage> conditioned, Quantity<Length> width, Quantity<Length> height,
            Shrinkage shrinkage, SorptionModel sorption) {
        double grammage = org.papermath.equation.Shrinkage.formedGrammage(
                Kinds.GRAMMAGE.si(conditioned, "grammage wanted"), sorption.ratio(Air.reference()).si(),
                shrinkage.alongFraction(), shrinkage.acrossFraction());
        return ofGrammage(Kinds.GRAMMAGE.ofSi(grammage, "g/m2"), ShrinkageModel.deckleFor(width, shrinkage.across()),
                ShrinkageModel.deckleFor(height, shrinkage.along()));
    }

    /**
     * Returns the sheet with further oven-dry additives that take up moisture like fibre, at the same solids.
     *
     * @param ovenDry internal size, starch and the like that stay in the sheet
     * @return the sheet
     * @throws Refused if the mass is out of range
     */
    public FormedSheet withAdditives(Quantity<Mass> ovenDry) {
        return with(Kinds.MASS.si(ovenDry, "additives of the sheet"), 0);
    }

    /**
     * Returns the sheet with further minerals, which take up no moisture from the air, at the same solids.
     *
     * @param ovenDry fillers and mineral pigments that stay in the sheet
     * @return the sheet
     * @throws Refused if the mass is out of range
     */
    public FormedSheet withMinerals(Quantity<Mass> ovenDry) {
        double more = Kinds.MASS.si(ovenDry, "minerals of the sheet");
        return with(more, more);
    }

    private FormedSheet with(double more, double ofMinerals) {
        return new FormedSheet(fibre, additives + more, minerals + ofMinerals,
                (ovenDrySi() + more) * (water / ovenDrySi()), width, height);
    }

    /**
     * Returns the sheet at other solids on the mould.
     *
     * @param solids the solids, above zero
     * @return the sheet
     * @throws Refused if the solids are out of range
     */
    public FormedSheet at(Quantity<Solids> solids) {
        double s = Kinds.SOLIDS.si(solids, "solids on the mould");
        return new FormedSheet(fibre, additives, minerals, ovenDrySi() * Moisture.ratioOfSolids(s), width, height);
    }

    /**
     * Couches the sheet at the usual solids ({@code web.solids-couched}).
     *
     * @return the couched sheet
     * @throws Refused as {@link #couched(Quantity)}
     */
    public CouchedSheet couched() {
        Amount<Solids> usual = Assumptions.standard().amount("web.solids-couched", Scope.GENERAL, Kinds.SOLIDS);
        return couched(usual);
    }

    /**
     * Couches the sheet.
     *
     * @param solids the solids after couching
     * @return the couched sheet
     * @throws Refused if the solids are below those on the mould
     */
    public CouchedSheet couched(Quantity<Solids> solids) {
        double left = waterAt(Kinds.SOLIDS.si(solids, "solids of the couched sheet"), "solids of the couched sheet");
        return new CouchedSheet(fibre, additives, minerals, left, width, height, water - left);
    }

    @Override
    public String toString() {
        return text("formed");
    }
}
