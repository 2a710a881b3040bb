package org.papermath.sheet;

import java.util.ArrayList;
import java.util.List;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;

import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * Surface sizing in a bath: dry sheets are dipped, pressed and dried again. Immutable.
 *
 * <p>Strength is dry size over bath by mass; pick-up is bath taken up over the dry sheet as weighed, after the pressing
 * that follows. Size on paper = pick-up × strength.
 *
 * @param strength dry size over bath
 * @param pickUp bath over dry sheet, above zero
 */
public record SurfaceSize(Amount<Share> strength, Amount<Dimensionless> pickUp) {
    /** Gelatine in old writing papers, dry size over paper. */
    private static final double OLD_LOW = 0.026;
    private static final double OLD_HIGH = 0.058;

    /**
     * Checks bath and pick-up.
     *
     * @param strength dry size over bath, above zero
     * @param pickUp bath over dry sheet, above zero and at most 5
     * @throws Refused if a value is out of range
     */
    public SurfaceSize {
        Kinds.SHARE.siAboveZero(strength, "strength of the size bath");
        Kinds.NUMBER.siAboveZero(pickUp, "pick-up of the sheet");
        Kinds.NUMBER.siWithin(pickUp, "pick-up of the sheet", 0, 5);
    }

    /**
     * Makes the sizing from bath and pick-up.
     *
     * @param strength dry size over bath, above zero
     * @param pickUp bath over dry sheet, above zero and at most 5
     * @return the sizing
     * @throws Refused if a value is out of range
     */
    public static SurfaceSize of(Quantity<Share> strength, Quantity<Dimensionless> pickUp) {
        return new SurfaceSize(Kinds.SHARE.check(strength, "strength of the size bath"),
                Kinds.NUMBER.check(pickUp, "pick-up of the sheet"));
    }

    /**
     * Makes the sizing from one sheet weighed before the bath and out of the press after it:
     * {@code pick-up = (wet - dry)/dry}.
     *
     * @param strength dry size over bath, above zero
     * @param dry the sheet before, above zero
     * @param wet the sheet out of the press, more than before
     * @return the sizing
     * @throws Refused if a value is out of range
     */
    public static SurfaceSize weighed(Quantity<Share> strength, Quantity<Mass> dry, Quantity<Mass> wet) {
        double before = Kinds.MASS.siAboveZero(dry, "sheet before the bath");
        double after = Kinds.MASS.si(wet, "sheet after the bath");
        if (!(after > before)) {
            throw Refused.of("size.no-pick-up",
                    "size: " + dry + " before and " + wet + " after the bath given; the sheet must come out heavier.",
                    "before", dry.toString(), "after", wet.toString());
        }
        return of(strength, Kinds.NUMBER.ofSi((after - before) / before, "%"));
    }

    /**
     * Makes the usual gelatine sizing of the table: its bath, and the pick-up that leaves the usual size on paper. A
     * litre of the bath is taken for a kilogram.
     *
     * @return the sizing
     */
    public static SurfaceSize gelatine() {
        Assumptions standard = Assumptions.standard();
        double strength = standard.si("size.bath-strength", Scope.GENERAL) / 1000;
        double onPaper = standard.si("size.pick-up", Scope.GENERAL);
        return of(Kinds.SHARE.ofSi(strength, "%"), Kinds.NUMBER.ofSi(onPaper / strength, "%"));
    }

    /**
     * Returns the dry size on the paper, over the dry sheet.
     *
     * @return the dose
     */
    public Amount<Dose> onPaper() {
        return Kinds.DOSE.ofSi(strength.si() * pickUp.si(), "%");
    }

    /**
     * Returns the pick-up that would leave a wanted amount of size.
     *
     * @param wanted dry size over dry sheet, above zero
     * @return bath over dry sheet
     * @throws Refused if the value is out of range
     */
    public Amount<Dimensionless> pickUpFor(Quantity<Dose> wanted) {
        return Kinds.NUMBER.ofSi(Kinds.DOSE.siAboveZero(wanted, "size on paper") / strength.si(), "%");
    }

    /**
     * A bath for a batch.
     *
     * @param prepared the bath to prepare
     * @param drySize the dry size in it
     * @param taken the bath the sheets take up
     * @param kept what must stay in the tub; it is left over at the end
     */
    public record Bath(Amount<Mass> prepared, Amount<Mass> drySize, Amount<Mass> taken, Amount<Mass> kept) {
        @Override
        public String toString() {
            return prepared + " of bath with " + drySize + " of size, of which " + kept + " stays in the tub";
        }
    }

    /**
     * Returns the bath to prepare and what stays in the tub.
     *
     * @param sheets the sheets, 1 or more
     * @param drySheet the mass of one dry sheet, above zero
     * @param kept what the tub must hold at the end so that the last sheet can be dipped
     * @return the bath
     * @throws Refused if a value is out of range
     */
    public Bath bath(int sheets, Quantity<Mass> drySheet, Quantity<Mass> kept) {
        if (sheets < 1) {
            throw Refused.of("count.below-one", "sheets to size: " + sheets + " given; 1 or more is wanted.",
                    "given", sheets, "least", 1);
        }
        double taken = sheets * Kinds.MASS.siAboveZero(drySheet, "mass of the dry sheet") * pickUp.si();
        double heel = Kinds.MASS.si(kept, "bath kept in the tub");
        return new Bath(Kinds.MASS.ofSi(taken + heel, "kg"), Kinds.MASS.ofSi((taken + heel) * strength.si(), "g"),
                Kinds.MASS.ofSi(taken, "kg"), Kinds.MASS.ofSi(heel, "kg"));
    }

    /**
     * Sizes a dry sheet: it takes up bath over its mass as weighed, of which the dry size stays and the water is dried
     * off again.
     *
     * @param sheet the dry sheet
     * @return the sheet out of the second press, to be dried like a pressed sheet
     */
    public PressedSheet size(DrySheet sheet) {
        double bath = sheet.mass().si() * pickUp.si();
        double dry = bath * strength.si();
        return new PressedSheet(sheet.fibre, sheet.additives + dry, sheet.minerals, sheet.water + (bath - dry),
                sheet.width, sheet.height, 0);
    }

    /**
     * Returns the sheets to size so that some come out good.
     *
     * @param good the sheets wanted, 1 or more
     * @param loss the share lost in bath, press and loft, below 100 %
     * @return the sheets to start with
     * @throws Refused if a value is out of range
     */
    public static int sheetsFor(int good, Quantity<Share> loss) {
        if (good < 1) {
            throw Refused.of("count.below-one", "good sheets: " + good + " given; 1 or more is wanted.",
                    "given", good, "least", 1);
        }
        double share = Kinds.SHARE.siWithin(loss, "loss in sizing", 0, 0.95);
        // A small guard, so that rounding does not ask for one sheet more than the arithmetic.
        return (int) Math.ceil(good / (1 - share) - 1e-9);
    }

    /**
     * Returns what sizing should not be planned without: how the size on paper compares with old writing papers, and
     * that size has to cure.
     *
     * @return an unmodifiable list
     * @source National Bureau of Standards tests of 1943, as quoted, for 2.6 to 5.8 % gelatine in old writing papers
     */
    public List<Notice> notices() {
        List<Notice> notices = new ArrayList<>();
        double there = onPaper().si();
        if (there < OLD_LOW || there > OLD_HIGH) {
            notices.add(Notice.note("size.unusual",
                    "The paper would hold " + onPaper() + " of size; old writing papers hold 2.6 to 5.8 % gelatine.",
                    "given", onPaper().toString(), "least", "2.6 %", "most", "5.8 %"));
        }
        notices.add(Notice.note("size.curing",
                "Size hardens for some days after drying, and no published figure says how many: test with ink before"
                + " the"
                        + " batch is used, and plan the days from your own records."));
        return List.copyOf(notices);
    }

    @Override
    public String toString() {
        return "bath of " + strength + ", pick-up " + pickUp + ": " + onPaper() + " on paper";
    }
}
