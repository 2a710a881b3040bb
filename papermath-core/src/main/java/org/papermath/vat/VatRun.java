package org.papermath.vat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.equation.VatBalance;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Bands;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * A run of sheets from one vat, sheet by sheet, by the exact balance of fibre, water and additives. Immutable.
 *
 * <p>Sheets are numbered from 1, as they are counted at the vat. The numbers are kept plain; an {@code Amount} is made
 * only when it is asked for.
 *
 * @source mass balance: a sheet takes R c q of fibre, and the water couched with it
 */
public final class VatRun {
    private final VatCharge charge;
    private final Recharge recharge;
    private final double[] sheets;
    private final double[] before;
    private final double[][] carried;
    private final double[] additivesLeft;
    private final VatBalance.Contents end;

    private VatRun(
            VatCharge charge,
            Recharge recharge,
            double[] sheets,
            double[] before,
            double[][] carried,
            double[] additivesLeft,
            VatBalance.Contents end) {
        this.charge = charge;
        this.recharge = recharge;
        this.sheets = sheets;
        this.before = before;
        this.carried = carried;
        this.additivesLeft = additivesLeft;
        this.end = end;
    }

    static VatRun of(VatCharge charge, int count, Recharge recharge) {
        Recharge.requireCount(count, "sheets");
        int kinds = charge.carried.size();
        double[] sheets = new double[count];
        double[] before = new double[count];
        double[] additives = new double[kinds];
        double[] retentions = new double[kinds];
        double[] perFibre = new double[kinds];
        double[][] carried = new double[kinds][count];
        additives(charge, additives, retentions, perFibre);
        VatBalance.Contents end = VatBalance.run(
                charge.contents,
                charge.lifted,
                charge.retention,
                charge.couchSolids,
                recharge.steps(),
                sheets,
                before,
                additives,
                retentions,
                perFibre,
                carried);
        VatRun run = new VatRun(charge, recharge, sheets, before, carried, additives, end);
        run.requireEnough();
        return run;
    }

    /** Fills the three arrays from what the charge carries beside the fibre. */
    static void additives(VatCharge charge, double[] masses, double[] retentions, double[] perFibre) {
        for (int a = 0; a < masses.length; a++) {
            VatCharge.Carried one = charge.carried.get(a);
            masses[a] = one.inVat().si();
            retentions[a] = one.retention().si();
            perFibre[a] = one.dose().dose().si();
        }
    }

    /** Fibre and stock must last; a vat run dry shows as a consistency that is none. */
    private void requireEnough() {
        for (int i = 0; i < sheets.length; i++) {
            if (!(before[i] >= 0) || !(before[i] <= 1) || !(sheets[i] >= 0)) {
                throw dry(i + 1);
            }
        }
        requireWet(end, sheets.length);
        int last = sheets.length - 1;
        if (end.stock() + solidsSi(last) / charge.couchSolids < charge.lifted) {
            throw dry(sheets.length);
        }
    }

    static void requireWet(VatBalance.Contents now, int sheet) {
        if (!(now.stock() > 0) || !(now.fibre() >= 0) || !(now.fibre() <= now.stock())) {
            throw dry(sheet);
        }
    }

    private static Refused dry(int sheet) {
        return Refused.of(
                "vat.runs-dry",
                "sheets: the vat runs dry at sheet " + sheet
                        + "; each sheet carries water away too. Pull fewer, or recharge.",
                "sheet",
                sheet);
    }

    /**
     * Returns the number of sheets.
     *
     * @return the number
     */
    public int count() {
        return sheets.length;
    }

    /**
     * Returns the charge the run started from.
     *
     * @return the charge
     */
    public VatCharge charge() {
        return charge;
    }

    /**
     * Returns the recharges of the run.
     *
     * @return the table
     */
    public Recharge recharge() {
        return recharge;
    }

    /**
     * Returns the oven-dry fibre of a sheet.
     *
     * @param sheet its number, from 1
     * @return the mass
     * @throws Refused if there is no such sheet
     */
    public Amount<Mass> fibre(int sheet) {
        return Kinds.MASS.ofSi(sheets[index(sheet)], "g");
    }

    /**
     * Returns the oven-dry fibre of all sheets in order, in kilograms as plain numbers, for those who go through many.
     *
     * @return a stream of as many numbers as there are sheets
     */
    public DoubleStream fibreKilograms() {
        return Arrays.stream(sheets);
    }

    /**
     * Returns an additive in a sheet.
     *
     * @param which its place in {@link VatCharge#carried}, from 0
     * @param sheet the number of the sheet, from 1
     * @return the mass of active matter
     * @throws Refused if there is no such sheet or additive
     */
    public Amount<Mass> additive(int which, int sheet) {
        return Kinds.MASS.ofSi(carried[additiveIndex(which)][index(sheet)], "g");
    }

    /**
     * Returns the oven-dry mass of a sheet, fibre and additives.
     *
     * @param sheet its number, from 1
     * @return the mass
     * @throws Refused if there is no such sheet
     */
    public Amount<Mass> solids(int sheet) {
        return Kinds.MASS.ofSi(solidsSi(index(sheet)), "g");
    }

    private double solidsSi(int i) {
        double solids = sheets[i];
        for (double[] additive : carried) {
            solids += additive[i];
        }
        return solids;
    }

    /**
     * Returns what a sheet weighs as it is couched, to check on the scale.
     *
     * @param sheet its number, from 1
     * @return solids and water together
     * @throws Refused if there is no such sheet
     */
    public Amount<Mass> couched(int sheet) {
        return Kinds.MASS.ofSi(solidsSi(index(sheet)) / charge.couchSolids, "g");
    }

    /**
     * Returns the consistency a sheet is dipped from.
     *
     * @param sheet its number, from 1
     * @return the consistency of the vat just before it
     * @throws Refused if there is no such sheet
     */
    public Amount<Consistency> consistency(int sheet) {
        return Kinds.CONSISTENCY.ofSi(before[index(sheet)], "%");
    }

    /**
     * Returns the oven-dry grammage of a sheet on a mould, fibre and additives.
     *
     * @param sheet its number, from 1
     * @param mould the area inside the deckle, above zero
     * @return the grammage before any shrinkage
     * @throws Refused if there is no such sheet, or the area is not above zero
     */
    public Amount<Grammage> grammage(int sheet, Quantity<Area> mould) {
        return Kinds.GRAMMAGE.ofSi(solidsSi(index(sheet)) / Kinds.AREA.siAboveZero(mould, "area of the mould"), "g/m2");
    }

    /**
     * Returns how much lighter or heavier a sheet is than the first.
     *
     * @param sheet its number, from 1
     * @return the difference over the first sheet, below zero for a lighter one
     * @throws Refused if there is no such sheet
     */
    public Amount<Dimensionless> change(int sheet) {
        return Kinds.NUMBER.ofSi(sheets[index(sheet)] / sheets[0] - 1, "%");
    }

    /**
     * Forecasts how much lighter or heavier a sheet is than the first, with the band of what the mould keeps and how wet
     * the sheets leave.
     *
     * <pre>{@code
     * Pulp pulp = Pulp.ofVolume(litres(45), Consistency.percent(0.6));
     * VatCharge vat = VatCharge.from(Assumptions.standard(), Scope.GENERAL, pulp, kilograms(1.2));
     * vat.pull(11).forecastChange(11); // -22.73 %, mean -23–-22.27
     * }</pre>
     *
     * @param sheet its number, from 1
     * @return the difference over the first sheet, below zero for a lighter one; without a band where the charge was made
     *     of settled figures ({@link VatCharge#of})
     * @throws Refused if there is no such sheet, or the vat runs dry before it at one end of what is assumed
     */
    public Estimate<Dimensionless> forecastChange(int sheet) {
        Amount<Dimensionless> likely = change(sheet);
        VatCharge.From from = charge.from;
        if (from == null) {
            return Estimate.of(likely, likely, likely, List.of());
        }
        return Bands.of(
                from.assumptions(),
                from.scope(),
                List.of("vat.retention", "web.solids-couched"),
                store -> of(charge.of(store, from.scope()), sheet, recharge).change(sheet));
    }

    /**
     * Counts the sheets until one first leaves a tolerance.
     *
     * @param wanted the oven-dry fibre a sheet should have, above zero
     * @param tolerance the greatest deviation
     * @return the number of the last sheet before that; 0 where the first is out of it
     * @throws Refused if a value is out of range
     */
    public int lastWithin(Quantity<Mass> wanted, Quantity<Share> tolerance) {
        double target = Kinds.MASS.siAboveZero(wanted, "fibre of a sheet");
        double band = Kinds.SHARE.si(tolerance, "tolerance of a sheet");
        int i = 0;
        while (i < sheets.length && Math.abs(sheets[i] - target) <= band * target * (1 + 1e-12)) {
            i++;
        }
        return i;
    }

    /**
     * Returns what stays in the vat after the last sheet: strain it and keep it as stock on hand.
     *
     * @return fibre and water; additives are counted separately
     * @throws Refused if there is no fibre left at all
     */
    public Pulp left() {
        double water = end.stock() - end.fibre() - Arrays.stream(additivesLeft).sum();
        return Pulp.ofOvenDry(Kinds.MASS.ofSi(end.fibre())).inWater(Kinds.MASS.ofSi(Math.max(0, water)));
    }

    /**
     * Returns what stays of an additive in the vat after the last sheet; with the water it goes to the next charge and
     * tints it.
     *
     * @param which its place in {@link VatCharge#carried}, from 0
     * @return the mass of active matter
     * @throws Refused if there is no such additive
     */
    public Amount<Mass> additiveLeft(int which) {
        return Kinds.MASS.ofSi(additivesLeft[additiveIndex(which)], "g");
    }

    /**
     * Returns how far the vat stands above where it started.
     *
     * @return litres above the start; empty litres where it fell: see {@link #levelFall}
     */
    public Amount<Volume> levelRise() {
        return VatCharge.litres(Math.max(0, end.stock() - charge.contents.stock()), left());
    }

    /**
     * Returns how far the vat stands below where it started.
     *
     * @return litres below the start; zero where it rose
     */
    public Amount<Volume> levelFall() {
        return VatCharge.litres(Math.max(0, charge.contents.stock() - end.stock()), left());
    }

    /**
     * Returns what the level does that a vatman should know before the first sheet.
     *
     * @param vat the vat the run is pulled from
     * @return a warning where it ends above the working volume of the vat, a note where it only rises; else empty
     */
    public List<Notice> notices(Vat vat) {
        double rise = levelRise().si();
        if (rise <= 0) {
            return List.of();
        }
        String why = "The vat stands " + levelRise() + " higher after " + count()
                + " sheets, since the stock given is thinner" + " than the sheets that leave at "
                + Kinds.SOLIDS.ofSi(charge.couchSolids, "%");
        double end = left().volume().si();
        if (end <= vat.workingVolume().si()) {
            return List.of(
                    Notice.note("vat.rises", why + ".", "rise", levelRise().toString(), "sheets", count()));
        }
        return List.of(Notice.warning(
                "vat.above-mark",
                why + ", above the " + vat.workingVolume() + " of " + vat.name()
                        + ". Bail before each recharge, or drain the stock" + " thicker.",
                "rise",
                levelRise().toString(),
                "end",
                left().volume().toString(),
                "vat",
                vat.name(),
                "volume",
                vat.workingVolume().toString()));
    }

    /**
     * Corrects a run that departs from the calculation, from one reading at the vat, by the shipped scatter of sheets.
     *
     * @param afterSheet the sheets pulled when the reading was taken, 1 or more; a weighed sheet is the last of them
     * @param reading what was weighed
     * @param sheetFibre the oven-dry fibre a sheet should have
     * @param tolerance the greatest deviation of a sheet
     * @param further the sheets still to pull, 1 or more
     * @param stock the consistency of the stock at hand
     * @param level what is done about the level
     * @return what to give now, and a new table for the sheets still to pull
     * @throws Refused if a value is out of range, or as {@link Recharge#within}
     */
    public VatCorrection correct(
            int afterSheet,
            VatReading reading,
            Quantity<Mass> sheetFibre,
            Quantity<Share> tolerance,
            int further,
            Quantity<Consistency> stock,
            Recharge.Level level) {
        return correct(
                Assumptions.standard(),
                Scope.GENERAL,
                afterSheet,
                reading,
                sheetFibre,
                tolerance,
                further,
                stock,
                level);
    }

    /**
     * Corrects a run that departs from the calculation, from one reading at the vat. A sheet that weighs too much or
     * too little says the vat is too thick or too thin; a sample of the vat says it outright; white water says how much
     * the mould lets through.
     *
     * @param assumptions where {@code sheet.scatter-grammage} is looked up
     * @param scope the recipe, for example {@code Scope.of(recipe.name())}
     * @param afterSheet the sheets pulled when the reading was taken, 1 or more; a weighed sheet is the last of them
     * @param reading what was weighed
     * @param sheetFibre the oven-dry fibre a sheet should have
     * @param tolerance the greatest deviation of a sheet
     * @param further the sheets still to pull, 1 or more
     * @param stock the consistency of the stock at hand
     * @param level what is done about the level
     * @return what to give now, and a new table for the sheets still to pull
     * @throws Refused if a value is out of range, or as {@link Recharge#within}
     */
    public VatCorrection correct(
            Assumptions assumptions,
            Scope scope,
            int afterSheet,
            VatReading reading,
            Quantity<Mass> sheetFibre,
            Quantity<Share> tolerance,
            int further,
            Quantity<Consistency> stock,
            Recharge.Level level) {
        index(afterSheet);
        VatRun soFar = of(charge, afterSheet, recharge);
        int last = afterSheet - 1;
        double ratio = 1;
        double retention = charge.retention;
        List<Notice> notices = List.of();
        if (reading instanceof VatReading.OfSheet sheet) {
            ratio = sheet.solids().si() / soFar.solidsSi(last);
            double scatter = assumptions.si("sheet.scatter-grammage", scope);
            if (Math.abs(ratio - 1) < scatter) {
                notices = List.of(Notice.note(
                        "vat.within-scatter",
                        "The sheet is " + Kinds.NUMBER.ofSi(Math.abs(ratio - 1), "%")
                                + " off the calculated weight; single sheets"
                                + " differ by " + Kinds.NUMBER.ofSi(scatter, "%")
                                + " from hand to hand. Weigh a few before"
                                + " changing the vat.",
                        "off",
                        Kinds.NUMBER.ofSi(Math.abs(ratio - 1), "%").toString(),
                        "scatter",
                        Kinds.NUMBER.ofSi(scatter, "%").toString()));
            }
        } else if (reading instanceof VatReading.OfVat vat) {
            ratio = Kinds.CONSISTENCY.siAboveZero(vat.consistency(), "consistency of the vat")
                    / soFar.end.consistency();
        } else if (reading instanceof VatReading.OfWhiteWater water) {
            retention = VatBalance.firstPassRetention(water.consistency().si(), soFar.end.consistency());
            if (!(retention > 0)) {
                throw Refused.of(
                        "vat.white-water-thicker",
                        "consistency of the white water: " + water.consistency()
                                + " given, not thinner than the vat at "
                                + Kinds.CONSISTENCY.ofSi(soFar.end.consistency(), "%")
                                + ". Let the stirred vat settle in no"
                                + " sample, and take what drips from the mould.",
                        "given",
                        water.consistency().toString(),
                        "most",
                        Kinds.CONSISTENCY.ofSi(soFar.end.consistency(), "%").toString());
            }
        }
        // Sheets that were lighter all along took less water with them.
        double carriedOff = 0;
        for (int i = 0; i < afterSheet; i++) {
            carriedOff += soFar.solidsSi(i) / charge.couchSolids;
        }
        // Every reading gives a consistency; the fibre is that times what stock there is.
        double there = soFar.end.stock() + (1 - ratio) * carriedOff;
        VatBalance.Contents now = new VatBalance.Contents(soFar.end.consistency() * ratio * there, there);
        requireWet(now, afterSheet);
        VatCharge stands = new VatCharge(now, charge.lifted, retention, charge.couchSolids, soFar.carriedNow(), null);
        Recharge table = Recharge.within(stands, sheetFibre, tolerance, further, stock, level);
        return new FoundCorrection(Kinds.NUMBER.ofSi(ratio, "%"), stands, table, notices);
    }

    private List<VatCharge.Carried> carriedNow() {
        VatCharge.Carried[] now = charge.carried.toArray(new VatCharge.Carried[0]);
        for (int a = 0; a < now.length; a++) {
            now[a] = new VatCharge.FoundCarried(
                    now[a].dose(), Kinds.MASS.ofSi(additivesLeft[a], "g"), now[a].retention());
        }
        return List.of(now);
    }

    private int index(int sheet) {
        if (sheet < 1 || sheet > sheets.length) {
            throw Refused.of(
                    "vat.no-such-sheet",
                    "sheet: number " + sheet + " given; the run has sheets 1 to " + sheets.length + ".",
                    "given",
                    sheet,
                    "most",
                    sheets.length);
        }
        return sheet - 1;
    }

    private int additiveIndex(int which) {
        if (which < 0 || which >= carried.length) {
            throw Refused.of(
                    "vat.no-such-additive",
                    "additive: number " + which + " given; the vat carries " + carried.length + ", counted from 0.",
                    "given",
                    which,
                    "count",
                    carried.length);
        }
        return which;
    }

    @Override
    public String toString() {
        return sheets.length + " sheets, " + fibre(1) + " to " + fibre(sheets.length) + " oven-dry fibre";
    }
}
