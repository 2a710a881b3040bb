package org.papermath.sheet;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.air.Air;
import org.papermath.equation.Moisture;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Scope;
import org.papermath.fibre.SorptionModel;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Solids;
import org.papermath.quantity.WaterRetention;
import org.papermath.shape.Shrinkage;

/** A sheet on the mould that has stopped dripping. Immutable. */
public final class FormedSheet extends Sheet {
    private FormedSheet(double fibre, double additives, double minerals, double water, double width, double height) {
        super(fibre, additives, minerals, water, width, height, 0);
    }

    /**
     * Makes a sheet at the usual solids on the mould, by the shipped assumptions.
     *
     * @param ovenDryFibre the oven-dry fibre in it, above zero
     * @param width the deckle opening across, above zero
     * @param height the deckle opening along, above zero
     * @return the sheet
     * @throws Refused if a value is out of range
     */
    public static FormedSheet of(Quantity<Mass> ovenDryFibre, Quantity<Length> width, Quantity<Length> height) {
        return of(Assumptions.standard(), Scope.GENERAL, ovenDryFibre, width, height);
    }

    /**
     * Makes a sheet at the usual solids on the mould ({@code web.solids-on-mould}).
     *
     * @param assumptions where the solids are looked up
     * @param scope what is formed, for example {@code Scope.at(vat.name())}
     * @param ovenDryFibre the oven-dry fibre in it, above zero
     * @param width the deckle opening across, above zero
     * @param height the deckle opening along, above zero
     * @return the sheet
     * @throws Refused if a value is out of range
     */
    public static FormedSheet of(
            Assumptions assumptions,
            Scope scope,
            Quantity<Mass> ovenDryFibre,
            Quantity<Length> width,
            Quantity<Length> height) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        double fibre = Kinds.MASS.siAboveZero(ovenDryFibre, "oven-dry fibre of the sheet");
        double solids = assumptions.si("web.solids-on-mould", scope);
        return new FormedSheet(
                fibre,
                0,
                0,
                fibre * Moisture.ratioOfSolids(solids),
                side(width, "width of the deckle"),
                side(height, "height of the deckle"));
    }

    /**
     * Makes a sheet from the oven-dry grammage on the mould, at the usual solids there, by the shipped assumptions.
     *
     * @param ovenDry the oven-dry fibre over the area of the deckle
     * @param width the deckle opening across, above zero
     * @param height the deckle opening along, above zero
     * @return the sheet
     * @throws Refused if a value is out of range
     */
    public static FormedSheet ofGrammage(Quantity<Grammage> ovenDry, Quantity<Length> width, Quantity<Length> height) {
        return ofGrammage(Assumptions.standard(), Scope.GENERAL, ovenDry, width, height);
    }

    /**
     * Makes a sheet from the oven-dry grammage on the mould, at the usual solids there.
     *
     * @param assumptions where {@code web.solids-on-mould} is looked up
     * @param scope what is formed, for example {@code Scope.at(vat.name())}
     * @param ovenDry the oven-dry fibre over the area of the deckle
     * @param width the deckle opening across, above zero
     * @param height the deckle opening along, above zero
     * @return the sheet
     * @throws Refused if a value is out of range
     */
    public static FormedSheet ofGrammage(
            Assumptions assumptions,
            Scope scope,
            Quantity<Grammage> ovenDry,
            Quantity<Length> width,
            Quantity<Length> height) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        double mass = Kinds.GRAMMAGE.si(ovenDry, "oven-dry grammage on the mould")
                * side(width, "width of the deckle")
                * side(height, "height of the deckle");
        return of(assumptions, scope, Kinds.MASS.ofSi(mass, "g"), width, height);
    }

    /**
     * Makes the sheet to form for a finished one, without additives, at the usual solids on the mould, by the shipped
     * assumptions.
     *
     * @param conditioned the grammage wanted, conditioned at 23 °C and 50 % relative humidity
     * @param width the finished width, across the mould, above zero
     * @param height the finished height, along the mould, above zero
     * @param shrinkage what the sheet shrinks in drying; a {@link ShrinkageModel} predicts it
     * @param sorption the moisture of its fibre in air
     * @return the sheet on the mould
     * @throws Refused if a value is out of range
     */
    public static FormedSheet toBecome(
            Quantity<Grammage> conditioned,
            Quantity<Length> width,
            Quantity<Length> height,
            Shrinkage shrinkage,
            SorptionModel sorption) {
        return toBecome(Assumptions.standard(), Scope.GENERAL, conditioned, width, height, shrinkage, sorption);
    }

    /**
     * Makes the sheet to form for a finished one, without additives, at the usual solids on the mould:
     * {@code deckle = finished/(1 - s)} in each direction, {@code W = W_c (1 - s_along)(1 - s_across)/(1 + M)} oven-dry.
     * Couching, pressing and drying it with the same shrinkage gives the finished sheet back.
     *
     * @param assumptions where {@code web.solids-on-mould} is looked up
     * @param scope what is formed, for example {@code Scope.at(vat.name())}
     * @param conditioned the grammage wanted, conditioned at 23 °C and 50 % relative humidity
     * @param width the finished width, across the mould, above zero
     * @param height the finished height, along the mould, above zero
     * @param shrinkage what the sheet shrinks in drying; a {@link ShrinkageModel} predicts it
     * @param sorption the moisture of its fibre in air
     * @return the sheet on the mould
     * @throws Refused if a value is out of range
     */
    public static FormedSheet toBecome(
            Assumptions assumptions,
            Scope scope,
            Quantity<Grammage> conditioned,
            Quantity<Length> width,
            Quantity<Length> height,
            Shrinkage shrinkage,
            SorptionModel sorption) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(shrinkage, "shrinkage");
        Objects.requireNonNull(sorption, "sorption");
        double grammage = org.papermath.equation.Shrinkage.formedGrammage(
                Kinds.GRAMMAGE.si(conditioned, "target grammage"),
                        sorption.ratio(Air.reference()).si(),
                shrinkage.alongFraction(), shrinkage.acrossFraction());
        return ofGrammage(
                assumptions,
                scope,
                Kinds.GRAMMAGE.ofSi(grammage, "g/m2"),
                ShrinkageModel.deckleFor(width, shrinkage.across()),
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
        return new FormedSheet(
                fibre,
                additives + more,
                minerals + ofMinerals,
                (ovenDrySi() + more) * (water / ovenDrySi()),
                width,
                height);
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
     * Couches the sheet at the usual solids, by the shipped assumptions.
     *
     * @return the couched sheet
     * @throws Refused as {@link #couched(Quantity)}
     */
    public CouchedSheet couched() {
        return couched(Assumptions.standard(), Scope.GENERAL);
    }

    /**
     * Couches the sheet at the usual solids ({@code web.solids-couched}), where nothing is known of its stuff.
     *
     * @param assumptions where the solids are looked up
     * @param scope where it is couched, for example {@code Scope.at(vat.name())}
     * @return the couched sheet
     * @throws Refused as {@link #couched(Quantity)}
     */
    public CouchedSheet couched(Assumptions assumptions, Scope scope) {
        return couched(assumptions.amount("web.solids-couched", scope, Kinds.SOLIDS));
    }

    /**
     * Couches the sheet at the solids its stuff leaves the vat with: {@code M = c WRV}, water over oven-dry mass. What
     * was measured at this vat, {@code web.solids-couched}, goes before it.
     *
     * @param assumptions where {@code web.couched-per-retention} is looked up
     * @param scope where it is couched, for example {@code Scope.at(vat.name())}
     * @param retention the water retention value of the stuff
     * @return the couched sheet
     * @throws Refused if the value is out of range
     * @source the law of pressing, carried down to the pressure of couching
     */
    public CouchedSheet couched(Assumptions assumptions, Scope scope, Quantity<WaterRetention> retention) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        double held = Kinds.WATER_RETENTION.siAboveZero(retention, "water retention value");
        Basis known = assumptions.get("web.solids-couched", scope).basis();
        if (known == Basis.MEASURED_HERE || known == Basis.GIVEN) {
            return couched(assumptions, scope);
        }
        double left = assumptions.si("web.couched-per-retention", scope) * held * ovenDrySi();
        return new CouchedSheet(fibre, additives, minerals, left, width, height, Math.max(0, water - left));
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
