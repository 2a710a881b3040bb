package org.papermath.vat;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.equation.VatBalance;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.evidence.WithNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LiquorRatio;
import org.papermath.quantity.Share;

/**
 * What runs back through the mould: mostly fines, which gather in the vat until as many leave with the sheets as come
 * with fresh stock. Immutable.
 *
 * @source mass balance of fines and long fibre; the retention of fines by default common practice
 */
public final class WhiteWater {
    private final double longRetention;
    private final double finesRetention;

    private WhiteWater(double longRetention, double finesRetention) {
        this.longRetention = longRetention;
        this.finesRetention = finesRetention;
    }

    /**
     * Builds the model.
     *
     * @param assumptions where {@code vat.retention} and {@code vat.fines-retention} are looked up
     * @param scope the fibre, and {@code with aid} as the place where a retention aid is given
     * @return the model
     */
    public static WhiteWater from(Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        return new WhiteWater(assumptions.si("vat.retention", scope), assumptions.si("vat.fines-retention", scope));
    }

    /**
     * Builds the model from two known retentions.
     *
     * @param longFibre the share of long fibre on the mould that stays in the sheet, above zero
     * @param fines the share of the fines on the mould that stays in the sheet, above zero
     * @return the model
     * @throws org.papermath.quantity.Refused if a share is out of range
     */
    public static WhiteWater of(Quantity<Share> longFibre, Quantity<Share> fines) {
        return new WhiteWater(
                Kinds.SHARE.siAboveZero(longFibre, "retention of long fibre"),
                Kinds.SHARE.siAboveZero(fines, "retention of fines"));
    }

    /**
     * Builds the model from the shipped table.
     *
     * @return the model
     */
    public static WhiteWater standard() {
        return from(Assumptions.standard(), Scope.GENERAL);
    }

    /**
     * Returns the consistency of what drains off the mould: (1 − R) times that of the vat.
     *
     * @param vat the consistency of the vat
     * @param retention the first-pass retention of the fibre
     * @return the consistency
     * @throws org.papermath.quantity.Refused if a value is out of range
     */
    public static Amount<Consistency> consistency(Quantity<Consistency> vat, Quantity<Share> retention) {
        return Kinds.CONSISTENCY.ofSi(
                Kinds.CONSISTENCY.si(vat, "consistency of the vat")
                        * (1 - Kinds.SHARE.si(retention, "retention of the fibre")),
                "%");
    }

    /**
     * Returns the share of fines in the fibre of the vat once it is steady.
     *
     * @param inFreshStock the share of fines in the fibre of fresh stock, below 100 %
     * @return the share in the vat; greater than in the fresh stock, for fines slip through
     * @throws org.papermath.quantity.Refused if the share is out of range
     */
    public Amount<Share> steadyFines(Quantity<Share> inFreshStock) {
        double fed = Kinds.SHARE.siWithin(inFreshStock, "share of fines", 0, 0.99);
        return Kinds.SHARE.ofSi(
                VatBalance.shareOfRatio(VatBalance.steadyFinesRatio(fed, finesRetention, longRetention)), "%");
    }

    /**
     * Returns the sheets in which the fines come to within a third of their steady share: N = V/(R_f q). Until some
     * three times as many have been pulled the first sheets differ from the rest.
     *
     * @param vat the stock in the vat
     * @param lifted the stock of one dip, above zero
     * @return the number of sheets, with a note that the first are not to be judged by
     * @throws org.papermath.quantity.Refused if a value is out of range
     */
    public WithNotices<Amount<Dimensionless>> sheetsToSettle(Quantity<Mass> vat, Quantity<Mass> lifted) {
        double count = VatBalance.finesConstant(
                Kinds.MASS.si(vat, "stock in the vat"), finesRetention, Kinds.MASS.siAboveZero(lifted, "stock lifted"));
        String text = String.valueOf((long) Math.ceil(count));
        return WithNotices.of(
                Kinds.NUMBER.ofSi(count, "1"),
                Notice.note(
                        "vat.fines-settle",
                        "The first " + text
                                + " sheets or so drain faster and weigh less than the later ones, until the fines"
                                + " have gathered"
                                + " in the vat.",
                        "sheets",
                        text));
    }

    /**
     * Returns the sheets until white water that is all used again has come most of the way to its steady state.
     *
     * @param part how far, below 100 %
     * @return the number of sheets
     * @throws org.papermath.quantity.Refused if the share is out of range
     */
    public Amount<Dimensionless> sheetsTo(Quantity<Share> part) {
        double fraction = Kinds.SHARE.siWithin(part, "part of the way", 0, 0.9999);
        return Kinds.NUMBER.ofSi(finesRetention >= 1 ? 0 : VatBalance.sheetsToFraction(fraction, finesRetention), "1");
    }

    /**
     * Returns the fibre that goes down the drain with white water that is thrown away.
     *
     * @param thrownAway the volume
     * @param perLitre the dry matter in a litre of it
     * @return the mass; strain it first
     * @throws org.papermath.quantity.Refused if a value is out of range
     */
    public static Amount<Mass> lost(Quantity<Volume> thrownAway, Quantity<FibreConcentration> perLitre) {
        return Kinds.MASS.ofSi(
                Kinds.VOLUME.si(thrownAway, "white water thrown away")
                        * Kinds.FIBRE_CONCENTRATION.si(perLitre, "dry matter in white water"),
                "g");
    }

    /**
     * Returns the fresh water used over the paper made, and looks whether it can be.
     *
     * @param water the fresh water of a time
     * @param ovenDry the oven-dry fibre made into paper in that time, above zero
     * @return the ratio, with a warning where it is outside what hand work takes
     * @throws org.papermath.quantity.Refused if a value is out of range
     */
    public static WithNotices<Amount<LiquorRatio>> freshWater(Quantity<Volume> water, Quantity<Mass> ovenDry) {
        return freshWater(water, ovenDry, Assumptions.standard());
    }

    /**
     * Returns the fresh water used over the paper made, and looks whether it can be by one's own table.
     *
     * @param water the fresh water of a time
     * @param ovenDry the oven-dry fibre made into paper in that time, above zero
     * @param assumptions where {@code water.total} is looked up
     * @return the ratio, with a warning where it is outside what hand work takes
     * @throws org.papermath.quantity.Refused if a value is out of range
     */
    public static WithNotices<Amount<LiquorRatio>> freshWater(
            Quantity<Volume> water, Quantity<Mass> ovenDry, Assumptions assumptions) {
        Objects.requireNonNull(assumptions, "assumptions");
        Assumption usual = assumptions.get("water.total", Scope.GENERAL);
        double ratio = Kinds.VOLUME.si(water, "fresh water") / Kinds.MASS.siAboveZero(ovenDry, "oven-dry fibre");
        Amount<LiquorRatio> value = Kinds.LIQUOR_RATIO.ofSi(ratio, "L/kg");
        if (ratio >= usual.lowSi() && ratio <= usual.highSi()) {
            return WithNotices.of(value);
        }
        Amount<LiquorRatio> low = Kinds.LIQUOR_RATIO.ofSi(usual.lowSi(), "L/kg");
        Amount<LiquorRatio> high = Kinds.LIQUOR_RATIO.ofSi(usual.highSi(), "L/kg");
        return WithNotices.of(
                value,
                Notice.warning(
                        "vat.fresh-water",
                        "The fresh water comes to " + value + "; hand work takes " + low + " to " + high
                                + ". One of the two figures does not fit the other.",
                        "given",
                        value.toString(),
                        "least",
                        low.toString(),
                        "most",
                        high.toString()));
    }

    @Override
    public String toString() {
        return "white water, fines kept " + Kinds.SHARE.ofSi(finesRetention, "%");
    }
}
