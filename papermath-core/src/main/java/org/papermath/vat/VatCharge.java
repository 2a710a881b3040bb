package org.papermath.vat;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.jspecify.annotations.Nullable;
import org.papermath.equation.VatBalance;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Solids;

/**
 * A vat ready to pull sheets from: what is in it, what one dip takes up, how much of that stays in the sheet and how
 * wet the sheet leaves. Immutable.
 *
 * <p>The vat is kept stirred and what drips from the mould runs back, so a sheet takes away its solids and the water
 * couched with them, and nothing else.
 */
public final class VatCharge {
    final VatBalance.Contents contents;
    final double lifted;
    final double retention;
    final double couchSolids;
    final List<Carried> carried;
    final @Nullable From from;

    /** Where retention and couched solids were looked up, for the bands of what follows from them. */
    record From(Assumptions assumptions, Scope scope) {}

    /** An additive beside the fibre. */
    public sealed interface Carried permits FoundCarried {
        /** {@return what was given, and comes with fresh stock too} */
        AdditiveDose dose();

        /** {@return the mass of it in the vat, active matter} */
        Amount<Mass> inVat();

        /** {@return the share of what is on the mould that stays in the sheet} */
        Amount<Share> retention();
    }

    record FoundCarried(AdditiveDose dose, Amount<Mass> inVat, Amount<Share> retention) implements Carried {
        @Override
        public String toString() {
            return dose + ": " + inVat + " in the vat, " + retention + " stays in the sheet";
        }
    }

    /** What to put into an empty vat. */
    public sealed interface Mix permits FoundMix {
        /** {@return the stock} */
        Pulp stock();

        /** {@return the water} */
        Amount<Volume> water();

        /** {@return both, stirred} */
        Pulp together();
    }

    private record FoundMix(Pulp stock, Amount<Volume> water, Pulp together) implements Mix {
        @Override
        public String toString() {
            return stock + ", with " + water + " of water: " + together;
        }
    }

    VatCharge(
            VatBalance.Contents contents,
            double lifted,
            double retention,
            double couchSolids,
            List<Carried> carried,
            @Nullable From from) {
        this.contents = contents;
        this.lifted = lifted;
        this.retention = retention;
        this.couchSolids = couchSolids;
        this.carried = carried;
        this.from = from;
    }

    /**
     * Makes a charge from what one dip takes up.
     *
     * @param pulp what is in the vat
     * @param lifted the stock held on the mould in one dip, above zero, less than is in the vat
     * @param retention the share of the fibre on the mould that stays in the sheet, above zero
     * @param couchedAt the solids of the sheet as it leaves the vat
     * @return the charge
     * @throws Refused if a value is out of range, or a dip would take more than the vat holds
     */
    public static VatCharge of(
            Pulp pulp, Quantity<Mass> lifted, Quantity<Share> retention, Quantity<Solids> couchedAt) {
        Objects.requireNonNull(pulp, "pulp");
        VatBalance.Contents contents = contents(pulp);
        double lift = Kinds.MASS.siAboveZero(lifted, "stock lifted");
        double kept = Kinds.SHARE.siAboveZero(retention, "retention of the fibre");
        double solids = Kinds.SOLIDS.si(couchedAt, "solids of the couched sheet");
        requireLift(contents, lift);
        requireDrier(contents, solids, kept);
        return new VatCharge(contents, lift, kept, solids, List.of(), null);
    }

    /**
     * Makes a charge from what one dip takes up, with retention and couched solids from the assumptions.
     *
     * @param assumptions where {@code vat.retention} and {@code web.solids-couched} are looked up
     * @param scope the fibre and the vat
     * @param pulp what is in the vat
     * @param lifted the stock held on the mould in one dip, above zero, less than is in the vat
     * @return the charge
     * @throws Refused as {@link #of}
     */
    public static VatCharge from(Assumptions assumptions, Scope scope, Pulp pulp, Quantity<Mass> lifted) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(pulp, "pulp");
        VatCharge charge = of(
                pulp,
                lifted,
                assumptions.amount("vat.retention", scope, Kinds.SHARE),
                assumptions.amount("web.solids-couched", scope, Kinds.SOLIDS));
        return new VatCharge(
                charge.contents,
                charge.lifted,
                charge.retention,
                charge.couchSolids,
                charge.carried,
                new From(assumptions, scope));
    }

    /** Returns the charge with retention and couched solids of another store. */
    VatCharge of(Assumptions store, Scope scope) {
        double kept = store.si("vat.retention", scope);
        double solids = store.si("web.solids-couched", scope);
        requireDrier(contents, solids, kept);
        return new VatCharge(contents, lifted, kept, solids, carried, from);
    }

    /**
     * Makes a charge from the sheet to be made: the dip takes up what the first sheet needs, q = m/(R c).
     *
     * @param pulp what is in the vat
     * @param sheetFibre the oven-dry fibre of a sheet, above zero
     * @param retention the share of the fibre on the mould that stays in the sheet, above zero
     * @param couchedAt the solids of the sheet as it leaves the vat
     * @return the charge
     * @throws Refused as {@link #of}
     */
    public static VatCharge forSheet(
            Pulp pulp, Quantity<Mass> sheetFibre, Quantity<Share> retention, Quantity<Solids> couchedAt) {
        Objects.requireNonNull(pulp, "pulp");
        double sheet = Kinds.MASS.siAboveZero(sheetFibre, "fibre of a sheet");
        double kept = Kinds.SHARE.siAboveZero(retention, "retention of the fibre");
        double lift = VatBalance.liftedOfSheet(sheet, kept, pulp.consistency().si());
        return of(pulp, Kinds.MASS.ofSi(lift, "kg"), retention, couchedAt);
    }

    /**
     * Returns the consistency the vat must have for a sheet, with a hand that lifts as it does: c = m/(R q).
     *
     * <pre>{@code
     * VatCharge.consistencyFor(grams(25), kilograms(4), Share.percent(97)); // 0.6443 %
     * }</pre>
     *
     * @param sheetFibre the oven-dry fibre of a sheet
     * @param lifted the stock held on the mould in one dip, above zero
     * @param retention the share of the fibre on the mould that stays in the sheet, above zero
     * @return the consistency
     * @throws Refused if a value is out of range, or the sheet is to have more fibre than is lifted of stock
     */
    public static Amount<Consistency> consistencyFor(
            Quantity<Mass> sheetFibre, Quantity<Mass> lifted, Quantity<Share> retention) {
        return FormingMethod.dipped().consistencyFor(sheetFibre, lifted, retention);
    }

    /**
     * Reckons what to fill a vat with.
     *
     * @param vat the vat, filled to its mark
     * @param wanted the consistency wanted in it, above zero, at most that of the stock
     * @param stock the consistency of the stock at hand
     * @return stock and water
     * @throws Refused if the stock is thinner than the vat is to be
     */
    public static Mix filling(Vat vat, Quantity<Consistency> wanted, Quantity<Consistency> stock) {
        Objects.requireNonNull(vat, "vat");
        Pulp together = Pulp.ofVolume(vat.workingVolume(), wanted);
        double c = Kinds.CONSISTENCY.siAboveZero(stock, "consistency of the stock");
        if (c < together.consistency().si()) {
            throw Refused.of(
                    "vat.stock-too-thin",
                    "consistency of the stock: " + Kinds.CONSISTENCY.ofSi(c, "%") + " given, thinner than the "
                            + together.consistency() + " needed in the vat. Drain the stock first.",
                    "given",
                    Kinds.CONSISTENCY.ofSi(c, "%").toString(),
                    "least",
                    together.consistency().toString());
        }
        Pulp fresh = Pulp.ofOvenDry(together.ovenDry()).at(Kinds.CONSISTENCY.ofSi(c));
        double water = Math.max(0, together.mass().si() - fresh.mass().si());
        return new FoundMix(fresh, litres(water, together), together);
    }

    private static VatBalance.Contents contents(Pulp pulp) {
        return new VatBalance.Contents(pulp.ovenDry().si(), pulp.mass().si());
    }

    private static void requireLift(VatBalance.Contents contents, double lift) {
        if (lift >= contents.stock()) {
            throw Refused.of(
                    "vat.lift-above-vat",
                    "stock lifted: " + Kinds.MASS.ofSi(lift, "kg") + " a dip, but the vat holds only "
                            + Kinds.MASS.ofSi(contents.stock(), "kg")
                            + ". Fill it, or thicken it so that less is lifted.",
                    "given",
                    Kinds.MASS.ofSi(lift, "kg").toString(),
                    "most",
                    Kinds.MASS.ofSi(contents.stock(), "kg").toString());
        }
    }

    private static void requireDrier(VatBalance.Contents contents, double solids, double kept) {
        if (solids < kept * contents.consistency()) {
            throw Refused.of(
                    "vat.sheet-wetter-than-vat",
                    "solids of the couched sheet: " + Kinds.SOLIDS.ofSi(solids, "%")
                            + " given, less than is lifted from the vat at "
                            + Kinds.CONSISTENCY.ofSi(contents.consistency(), "%")
                            + ". A sheet drains; check the two figures.",
                    "given",
                    Kinds.SOLIDS.ofSi(solids, "%").toString(),
                    "least",
                    Kinds.CONSISTENCY.ofSi(contents.consistency(), "%").toString());
        }
    }

    /**
     * Returns the charge with an additive in it, dosed on all the fibre in the vat and on that of fresh stock.
     *
     * @param dose the dose
     * @param kept the share of what is on the mould that stays in the sheet
     * @return the charge
     * @throws Refused if the retention is out of range
     */
    public VatCharge carrying(AdditiveDose dose, Quantity<Share> kept) {
        return carrying(dose, dose.activeMatter(Kinds.MASS.ofSi(contents.fibre(), "kg")), kept);
    }

    /**
     * Returns the charge with an additive in it of which more, or less, is in the vat than the dose: what white water
     * of the last charge brought along, for example.
     *
     * @param dose the dose, which comes with fresh stock
     * @param inVat the active matter in the vat, all of it
     * @param kept the share of what is on the mould that stays in the sheet
     * @return the charge
     * @throws Refused if a value is out of range
     */
    public VatCharge carrying(AdditiveDose dose, Quantity<Mass> inVat, Quantity<Share> kept) {
        List<Carried> more = new ArrayList<>(carried);
        Amount<Mass> mass = Kinds.MASS.check(inVat, dose.additive().name() + " in the vat");
        more.add(new FoundCarried(
                dose,
                mass,
                Kinds.SHARE.check(kept, "retention of " + dose.additive().name())));
        return new VatCharge(
                new VatBalance.Contents(contents.fibre(), contents.stock() + mass.si()),
                lifted,
                retention,
                couchSolids,
                List.copyOf(more),
                from);
    }

    /**
     * Returns the charge with another dip, as after changing the depth of the mould.
     *
     * @param stock the stock held on the mould in one dip, above zero, less than is in the vat
     * @return the charge
     * @throws Refused if the mass is out of range
     */
    public VatCharge lifting(Quantity<Mass> stock) {
        double lift = Kinds.MASS.siAboveZero(stock, "stock lifted");
        requireLift(contents, lift);
        return new VatCharge(contents, lift, retention, couchSolids, carried, from);
    }

    /**
     * Pulls sheets without giving anything to the vat.
     *
     * @param sheets how many, 1 to 100 000
     * @return the run
     * @throws Refused if the number is out of range, or the vat runs dry on the way
     */
    public VatRun pull(int sheets) {
        return pull(sheets, Recharge.none());
    }

    /**
     * Pulls sheets and recharges the vat between them.
     *
     * @param sheets how many, 1 to 100 000
     * @param recharge what is given to the vat, and when
     * @return the run
     * @throws Refused if the number is out of range, or the vat runs dry on the way
     */
    public VatRun pull(int sheets, Recharge recharge) {
        return VatRun.of(this, sheets, recharge);
    }

    /**
     * Counts the sheets that can be pulled from this vat, with nothing given to it, until one is out of a tolerance or too
     * little is left for a dip.
     *
     * <pre>{@code
     * Pulp thin = Pulp.ofVolume(litres(60), Consistency.percent(0.6));
     * VatCharge vat = VatCharge.of(thin, kilograms(3), Share.percent(97), Solids.percent(12));
     * vat.sheetsWithin(vat.firstSheet(), Share.percent(10)); // 3
     * }</pre>
     *
     * @param wanted the oven-dry fibre a sheet should have, above zero
     * @param tolerance the greatest deviation either way
     * @return how many; 0 where the first is out of it
     * @throws Refused if a value is out of range, or a million sheets do not bring it out
     */
    public int sheetsWithin(Quantity<Mass> wanted, Quantity<Share> tolerance) {
        double target = Kinds.MASS.siAboveZero(wanted, "fibre of a sheet");
        double band = Kinds.SHARE.si(tolerance, "tolerance of a sheet") * target * (1 + 1e-12);
        int kinds = carried.size();
        double[] additives = new double[kinds];
        double[] retentions = new double[kinds];
        double[][] taken = new double[kinds][1];
        VatRun.additives(this, additives, retentions, new double[kinds]);
        double[] sheet = new double[1];
        VatBalance.Contents now = contents;
        for (int count = 0; count < Limits.PULLED.most(); count++) {
            if (now.stock() < lifted || !(now.fibre() > 0)) {
                return count;
            }
            now = VatBalance.pull(now, lifted, retention, couchSolids, 0, 1, sheet, null, additives, retentions, taken);
            if (!(Math.abs(sheet[0] - target) <= band)) {
                return count;
            }
        }
        throw Refused.of(
                "vat.never-out",
                "tolerance of a sheet: " + tolerance
                        + " given; a million sheets do not bring this vat out of it. Check the" + " lift and the vat.",
                "given",
                tolerance.toString());
    }

    /**
     * Returns the stock in the vat, additives counted with it.
     *
     * @return the mass
     */
    public Amount<Mass> stock() {
        return Kinds.MASS.ofSi(contents.stock(), "kg");
    }

    /**
     * Returns the fibre in the vat.
     *
     * @return the oven-dry mass
     */
    public Amount<Mass> fibre() {
        return Kinds.MASS.ofSi(contents.fibre(), "g");
    }

    /**
     * Returns the consistency in the vat.
     *
     * @return fibre over stock
     */
    public Amount<Consistency> consistency() {
        return Kinds.CONSISTENCY.ofSi(contents.consistency(), "%");
    }

    /**
     * Returns the stock one dip takes up.
     *
     * @return the mass
     */
    public Amount<Mass> lifted() {
        return Kinds.MASS.ofSi(lifted, "kg");
    }

    /**
     * Returns the oven-dry fibre of the first sheet: m = R c q.
     *
     * @return the mass
     */
    public Amount<Mass> firstSheet() {
        return Kinds.MASS.ofSi(VatBalance.sheetMass(retention, contents.consistency(), lifted), "g");
    }

    /**
     * Returns the additives in the vat.
     *
     * @return an unmodifiable list, in the order they were given
     */
    public List<Carried> carried() {
        return carried;
    }

    /** Litres of thin stock or water of a mass, at the density of a pulp of the shipped table. */
    static Amount<Volume> litres(double mass, Pulp like) {
        return Kinds.VOLUME.ofSi(mass / like.density().si(), "L");
    }

    @Override
    public String toString() {
        return stock() + " of stock at " + consistency() + ", " + lifted() + " a dip";
    }
}
