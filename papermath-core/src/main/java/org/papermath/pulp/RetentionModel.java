package org.papermath.pulp;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.air.Water;
import org.papermath.equation.Additives;
import org.papermath.equation.VatBalance;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.evidence.WithNotices;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.notice.StockNotices;
import org.papermath.numeric.Normal;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.SolutionStrength;

/**
 * What the sheet keeps of the fibre and of each additive on the mould; the rest runs back with the white water.
 * Immutable.
 *
 * <p>The load of a sheet (additive over fibre in it) is L = d R_p/R_1, its share of the whole sheet x = L/(1 + L).
 *
 * @source mass balance; the retentions by default common practice, see the table of assumptions
 */
public final class RetentionModel {
    /** What one litre dried leaves, of retention. */
    private static final double LEFT_BY_WATER = 0.003;

    /** What one jar or one crucible leaves, of the retention of an additive. */
    private static final double LEFT_OF_ADDITIVE = 0.02;

    private final Assumptions assumptions;
    private final double fibre;

    /** What helps, or not, to keep an additive in the sheet. */
    public enum Circumstance {
        /** Clear water and nothing to fix the additive. */
        PLAIN(""),
        /** With a retention aid given after it. */
        WITH_AID("with aid"),
        /** The white water is used again for the next charge. */
        WHITE_WATER_REUSED("reused white water");

        private final String place;

        Circumstance(String place) {
            this.place = place;
        }
    }

    /** What the grammage of a sheet is made of. */
    public sealed interface MakeUp permits FoundMakeUp {
        /** {@return the grammage as weighed, with the moisture in it} */
        Amount<Grammage> conditioned();

        /** {@return the oven-dry fibre in it} */
        Amount<Grammage> fibre();

        /** {@return what is not fibre, oven-dry; empty where there is none} */
        Optional<Amount<Grammage>> additive();
    }

    private record FoundMakeUp(
            Amount<Grammage> conditioned, Amount<Grammage> fibre, Optional<Amount<Grammage>> additive)
            implements MakeUp {
        @Override
        public String toString() {
            return conditioned + " as weighed: " + fibre + " of fibre"
                    + additive.map(one -> " and " + one + " of what is not fibre, oven-dry")
                            .orElse(", oven-dry");
        }
    }

    private RetentionModel(Assumptions assumptions, double fibre) {
        this.assumptions = assumptions;
        this.fibre = fibre;
    }

    /**
     * Builds the model of a fibre.
     *
     * @param assumptions where the retentions are looked up
     * @param scope the fibre, and the vat or mould where it has values of its own
     * @return the model
     */
    public static RetentionModel from(Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        return new RetentionModel(assumptions, assumptions.si("vat.retention", scope));
    }

    /**
     * Builds the model of long clean fibre from the shipped table.
     *
     * @return the model
     */
    public static RetentionModel standard() {
        return from(Assumptions.standard(), Scope.GENERAL);
    }

    /**
     * Returns the share of the fibre on the mould that stays in the sheet.
     *
     * @return the first-pass retention of the fibre
     */
    public Amount<Share> fibre() {
        return Kinds.SHARE.ofSi(fibre, "%");
    }

    /**
     * Returns the share of an additive on the mould that stays in the sheet. A value kept under the additive's own name
     * comes before that of its purpose, and one for the circumstance before the plain one.
     *
     * @param additive the additive
     * @param circumstance what helps to keep it
     * @return the retention of it
     */
    public Amount<Share> additive(Additive additive, Circumstance circumstance) {
        return Kinds.SHARE.ofSi(assumption(additive, circumstance).likelySi(), "%");
    }

    private Assumption assumption(Additive additive, Circumstance circumstance) {
        return assumptions.get("additive.retention", scope(additive, circumstance));
    }

    /**
     * Returns the scope under which the retention of an additive is kept: its own name in small letters, then its
     * purpose.
     *
     * @param additive the additive
     * @param circumstance what helps to keep it
     * @return the scope
     */
    public static Scope scope(Additive additive, Circumstance circumstance) {
        Objects.requireNonNull(additive, "additive");
        Objects.requireNonNull(circumstance, "circumstance");
        String name = additive.name()
                .toLowerCase(Locale.ROOT)
                .replace('[', '-')
                .replace(']', '-')
                .replace('@', '-');
        Scope scope = Scope.of(name, additive.purpose().subject());
        return circumstance.place.isEmpty() ? scope : scope.on(circumstance.place);
    }

    /**
     * Returns the load a dose leaves in the sheet.
     *
     * @param dose the dose
     * @param circumstance what helps to keep it
     * @return additive over fibre in the sheet, with a warning above {@code additive.load-warning}
     * @throws Refused if the load comes out above the range of doses
     */
    public WithNotices<Amount<Dose>> load(AdditiveDose dose, Circumstance circumstance) {
        double load = Additives.load(
                dose.dose().si(), additive(dose.additive(), circumstance).si(), fibre);
        Amount<Dose> amount = Kinds.DOSE.ofSi(load, "%");
        double limit = assumptions.si(
                "additive.load-warning", Scope.of(dose.additive().purpose().subject()));
        return StockNotices.heavyLoad(load, limit)
                .map(notice -> WithNotices.of(amount, notice))
                .orElseGet(() -> WithNotices.of(amount));
    }

    /**
     * Returns the share of the oven-dry sheet that is additive.
     *
     * @param dose the dose
     * @param circumstance what helps to keep it
     * @return additive over fibre and additive together
     */
    public Amount<Share> shareOfSheet(AdditiveDose dose, Circumstance circumstance) {
        return Kinds.SHARE.ofSi(
                Additives.shareOfLoad(Additives.load(
                        dose.dose().si(),
                        additive(dose.additive(), circumstance).si(),
                        fibre)),
                "%");
    }

    /**
     * Returns the dose that leaves a share of the sheet, as the 2 % of carbonate that permanence standards ask for.
     *
     * @param additive the additive
     * @param share additive over fibre and additive together in the sheet, below 100 %
     * @param circumstance what helps to keep it
     * @return the dose
     * @throws Refused if the share is out of range, or the dose comes out above 50 %
     * @source d = x/(1 − x) R_1/R_p; compare ISO 9706 for the alkaline reserve
     */
    public AdditiveDose doseForShare(Additive additive, Quantity<Share> share, Circumstance circumstance) {
        double x = Kinds.SHARE.siWithin(share, "share of the sheet", 0, 0.99);
        return new AdditiveDose(
                additive,
                Kinds.DOSE.ofSi(
                        Additives.doseForShare(
                                x, additive(additive, circumstance).si(), fibre),
                        "%"));
    }

    /**
     * Returns the dose that leaves a load on the fibre.
     *
     * @param additive the additive
     * @param load additive over fibre in the sheet
     * @param circumstance what helps to keep it
     * @return the dose
     * @throws Refused if the load is out of range, or the dose comes out above 50 %
     */
    public AdditiveDose doseForLoad(Additive additive, Quantity<Dose> load, Circumstance circumstance) {
        return new AdditiveDose(
                additive,
                Kinds.DOSE.ofSi(
                        Additives.doseForLoad(
                                Kinds.DOSE.si(load, "load"),
                                additive(additive, circumstance).si(),
                                fibre),
                        "%"));
    }

    /**
     * Returns what is lost to the white water, of an amount given to the vat.
     *
     * @param given the additive given
     * @param additive the additive
     * @param circumstance what helps to keep it
     * @return what the first sheets leave behind; it tints the next charge made with this water
     * @throws Refused if the mass is out of range
     */
    public Amount<Mass> leftInWhiteWater(Quantity<Mass> given, Additive additive, Circumstance circumstance) {
        return Kinds.MASS.ofSi(
                Kinds.MASS.si(given, additive.name() + " given")
                        * (1 - additive(additive, circumstance).si()),
                "g");
    }

    /**
     * Reads the retention of a colour from a jar of white water held beside a dilution series: R = 1 − c V/dose.
     *
     * @param given the additive given to the vat, above zero
     * @param vat the volume of the vat
     * @param jar the strength of the white water, as the jar of the series that looks the same
     * @return the share that stayed with the fibre
     * @throws Refused if more would be in the water than was given
     */
    public static Amount<Share> fromJar(Quantity<Mass> given, Quantity<Volume> vat, Quantity<SolutionStrength> jar) {
        double dose = Kinds.MASS.siAboveZero(given, "additive given");
        double lost =
                Kinds.SOLUTION_STRENGTH.si(jar, "strength of the jar") * Kinds.VOLUME.si(vat, "volume of the vat");
        if (lost > dose) {
            Amount<Mass> lostAmount = Kinds.MASS.ofSi(lost, "g");
            Amount<Mass> doseAmount = Kinds.MASS.ofSi(dose, "g");
            throw Refused.of(
                    "additive.more-than-given",
                    "white water: the jar says " + lostAmount + " is in it, but only " + doseAmount
                            + " was given. See to the units of the dilution series.",
                    "found",
                    lostAmount.toString(),
                    "given",
                    doseAmount.toString());
        }
        return Kinds.SHARE.ofSi(1 - lost / dose, "%");
    }

    /**
     * Reads the share of filler in a sheet from its ash: x = (A − a_f)/(k_a − a_f).
     *
     * @param sheetAsh ash over the oven-dry sheet
     * @param fibreAsh ash over oven-dry fibre of the fibre alone
     * @param residue what the filler leaves on ignition over the filler, above the fibre's own ash
     * @return filler over fibre and filler together
     * @throws Refused if the sheet leaves less ash than its fibre alone, or more than the filler alone
     */
    public static Amount<Share> shareFromAsh(
            Quantity<Share> sheetAsh, Quantity<Share> fibreAsh, Quantity<Share> residue) {
        double own = Kinds.SHARE.si(fibreAsh, "ash of the fibre");
        double filler = Kinds.SHARE.si(residue, "residue of the filler");
        double sheet = Kinds.SHARE.si(sheetAsh, "ash of the sheet");
        if (!(own < filler) || sheet < own || sheet > filler) {
            throw Refused.of(
                    "additive.ash",
                    "ash of the sheet: " + Kinds.SHARE.ofSi(sheet, "%") + " given; it must lie between the fibre's own "
                            + Kinds.SHARE.ofSi(own, "%") + " and the filler's " + Kinds.SHARE.ofSi(filler, "%")
                            + ". Weigh the crucible again.",
                    "given",
                    Kinds.SHARE.ofSi(sheet, "%").toString(),
                    "least",
                    Kinds.SHARE.ofSi(own, "%").toString(),
                    "most",
                    Kinds.SHARE.ofSi(filler, "%").toString());
        }
        return Kinds.SHARE.ofSi(Additives.shareOfAsh(sheet, own, filler), "%");
    }

    /**
     * Returns the retention of an additive from its share of a sheet and the dose given.
     *
     * @param dose the dose
     * @param share its share of the sheet
     * @return the retention
     * @throws Refused if the sheet holds more than the dose could leave
     */
    public Amount<Share> retentionOfShare(AdditiveDose dose, Quantity<Share> share) {
        double load = Additives.loadOfShare(Kinds.SHARE.siWithin(share, "share of the sheet", 0, 0.99));
        double given =
                Kinds.DOSE.siAboveZero(dose.dose(), "dose of " + dose.additive().name());
        double retention = Additives.retentionOfLoad(load, given, fibre);
        if (retention > 1 + 1e-9) {
            throw Refused.of(
                    "additive.more-than-given",
                    "share of the sheet: it holds " + Kinds.NUMBER.ofSi(retention, "%") + " of what was given of "
                            + dose.additive().name() + ". Check the dose and the ash.",
                    "found",
                    Kinds.NUMBER.ofSi(retention, "%").toString(),
                    "given",
                    dose.toString());
        }
        return Kinds.SHARE.ofSi(Math.min(1, retention), "%");
    }

    /**
     * Returns the first-pass retention of the fibre from a litre of what drains and the stock in the vat.
     *
     * @param whiteWater the consistency of what drains off the mould
     * @param vat the consistency of the stock in the vat, above zero
     * @return the retention
     * @throws Refused if the white water is thicker than the vat
     */
    public static Amount<Share> firstPass(Quantity<Consistency> whiteWater, Quantity<Consistency> vat) {
        double there = Kinds.CONSISTENCY.siAboveZero(vat, "consistency of the vat");
        double water = Kinds.CONSISTENCY.si(whiteWater, "consistency of the white water");
        if (water > there) {
            throw Refused.of(
                    "vat.white-water-thicker",
                    "consistency of the white water: " + Kinds.CONSISTENCY.ofSi(water, "%")
                            + " given, thicker than the vat at "
                            + Kinds.CONSISTENCY.ofSi(there, "%") + ". See whether the two samples were changed over.",
                    "given",
                    Kinds.CONSISTENCY.ofSi(water, "%").toString(),
                    "most",
                    Kinds.CONSISTENCY.ofSi(there, "%").toString());
        }
        return Kinds.SHARE.ofSi(VatBalance.firstPassRetention(water, there), "%");
    }

    /**
     * Returns what a measured retention of an additive says.
     *
     * @param assumptions what is taken for the rest
     * @param additive the additive; the value is kept under its name
     * @param circumstance what helped to keep it
     * @param retention the retention with its error
     * @return the assumptions with {@code additive.retention} in that scope
     * @throws Refused if the retention is out of range
     */
    public static Assumptions calibrate(
            Assumptions assumptions, Additive additive, Circumstance circumstance, Reading<Share> retention) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(additive, "additive");
        Objects.requireNonNull(circumstance, "circumstance");
        Objects.requireNonNull(retention, "retention");
        Scope scope = scope(additive, circumstance);
        return assumptions.with(measured(assumptions.get("additive.retention", scope), scope, retention));
    }

    /**
     * Returns what a measured first-pass retention of the fibre says.
     *
     * @param assumptions what is taken for the rest
     * @param scope the fibre, and the mould
     * @param retention the retention with its error
     * @return the assumptions with {@code vat.retention} in that scope
     * @throws Refused if the retention is out of range
     */
    public static Assumptions calibrate(Assumptions assumptions, Scope scope, Reading<Share> retention) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(retention, "retention");
        return assumptions.with(measured(assumptions.get("vat.retention", scope), scope, retention));
    }

    /**
     * Calibrates the first-pass retention of the fibre by a litre of dripping water and one of the vat, both dried:
     * {@code R = 1 - c_w/c_v}.
     *
     * @param assumptions what is taken for the rest
     * @param scope the fibre, and the vat
     * @param dripping oven-dry solids in a litre that drips off
     * @param vat oven-dry solids in a litre of the stirred vat, above zero
     * @return the assumptions with {@code vat.retention} in that scope
     * @throws Refused if the dripping water is thicker than the vat, or a value is out of range
     */
    public static Assumptions calibrateByWater(
            Assumptions assumptions,
            Scope scope,
            Reading<FibreConcentration> dripping,
            Reading<FibreConcentration> vat) {
        return calibrate(assumptions, scope, retained(dripping, vat));
    }

    /**
     * Calibrates the first-pass retention of a furnish in a vat by the same two litres. What drips off a blend tells of
     * its fibres together: what each of them loses is taken as the same multiple of what it lost by the value known until
     * now, and its band as much wider as makes up for being taken one by one in a plan.
     *
     * @param assumptions what is taken for the rest
     * @param furnish the fibres
     * @param vatName the name of the vat
     * @param dripping oven-dry solids in a litre that drips off
     * @param vat oven-dry solids in a litre of the stirred vat, above zero
     * @return the assumptions with {@code vat.retention} of each fibre in that vat
     * @throws Refused if the dripping water is thicker than the vat, or a value is out of range
     */
    public static Assumptions calibrateByWater(
            Assumptions assumptions,
            Furnish furnish,
            String vatName,
            Reading<FibreConcentration> dripping,
            Reading<FibreConcentration> vat) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(furnish, "furnish");
        Objects.requireNonNull(vatName, "vatName");
        Reading<Share> whole = retained(dripping, vat);
        double lost = 0;
        for (Fibre fibre : furnish.fibres()) {
            lost += furnish.share(fibre).si() * (1 - assumptions.si("vat.retention", inVat(fibre, vatName)));
        }
        double factor = (1 - whole.value().si()) / lost;
        double wider = Math.sqrt(furnish.fibres().size());
        Assumptions result = assumptions;
        for (Fibre fibre : furnish.fibres()) {
            Scope scope = inVat(fibre, vatName);
            double loss = 1 - assumptions.si("vat.retention", scope);
            double error = whole.error().si() * loss / lost * wider;
            result = calibrate(
                    result,
                    scope,
                    Reading.of(Kinds.SHARE.ofSi(Math.max(0, 1 - factor * loss), "%"), Kinds.SHARE.ofSi(error, "%")));
        }
        return result;
    }

    private static Scope inVat(Fibre fibre, String vat) {
        return vat.isEmpty() ? fibre.scope() : fibre.scope().on(vat);
    }

    private static Reading<Share> retained(Reading<FibreConcentration> dripping, Reading<FibreConcentration> vat) {
        Objects.requireNonNull(vat, "vat");
        double density = Water.room().density().si();
        double there = Kinds.FIBRE_CONCENTRATION.siAboveZero(vat.value(), "solids in a litre of the vat");
        double water = dripping.value().si();
        // So thin that a litre of either weighs what a litre of water does.
        double retention = firstPass(
                        Kinds.CONSISTENCY.ofSi(water / density, "%"), Kinds.CONSISTENCY.ofSi(there / density, "%"))
                .si();
        double error = Math.hypot(
                Math.hypot(dripping.error().si(), vat.error().si() * water / there) / there,
                LEFT_BY_WATER / Normal.FIVE_PERCENT_POINT);
        return Reading.of(Kinds.SHARE.ofSi(retention, "%"), Kinds.SHARE.ofSi(error, "%"));
    }

    /**
     * Calibrates the retention of an additive by a jar of white water beside a row of dilutions:
     * {@code R = 1 - c V/given}.
     *
     * @param assumptions what is taken for the rest
     * @param additive the additive; the value is kept under its name
     * @param circumstance what helped to keep it
     * @param given what was given to the vat of it
     * @param vat the volume of the vat
     * @param jar the strength of the dilution that looks the same
     * @return the assumptions with {@code additive.retention} in that scope
     * @throws Refused as {@link #fromJar}
     */
    public static Assumptions calibrateByJar(
            Assumptions assumptions,
            Additive additive,
            Circumstance circumstance,
            Reading<Mass> given,
            Reading<Volume> vat,
            Reading<SolutionStrength> jar) {
        Objects.requireNonNull(given, "given");
        Objects.requireNonNull(vat, "vat");
        Objects.requireNonNull(jar, "jar");
        Amount<Share> found = fromJar(given.value(), vat.value(), jar.value());
        double lost = 1 - found.si();
        double error = Math.hypot(
                lost * given.relativeError(),
                Math.hypot(
                                jar.value().si() * vat.error().si(),
                                jar.error().si() * vat.value().si())
                        / given.value().si());
        return calibrate(assumptions, additive, circumstance, withWhatOneLeaves(found.si(), error));
    }

    /**
     * Calibrates the retention of a filler by a sheet burnt to ash: {@code x = (A - a_f)/(k_a - a_f)},
     * {@code R = R_1 x/((1 - x) d)}.
     *
     * @param assumptions what is taken for the rest, in which the retention of the fibre is looked up
     * @param scope the fibre, and the vat
     * @param additive the filler; the value is kept under its name
     * @param circumstance what helped to keep it
     * @param dose what was given of it on oven-dry fibre
     * @param sheetAsh ash over the oven-dry sheet
     * @param fibreAsh ash over the oven-dry fibre alone
     * @param residue what the filler itself leaves of ash
     * @return the assumptions with {@code additive.retention} measured for the filler
     * @throws Refused as {@link #shareFromAsh} and {@link #retentionOfShare}
     */
    public static Assumptions calibrateByAsh(
            Assumptions assumptions,
            Scope scope,
            Additive additive,
            Circumstance circumstance,
            Reading<Dose> dose,
            Reading<Share> sheetAsh,
            Reading<Share> fibreAsh,
            Quantity<Share> residue) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(dose, "dose");
        Objects.requireNonNull(sheetAsh, "sheetAsh");
        Objects.requireNonNull(fibreAsh, "fibreAsh");
        Assumption ofFibre = assumptions.get("vat.retention", scope);
        RetentionModel model = from(assumptions, scope);
        Amount<Share> sheet = sheetAsh.value();
        Amount<Share> bare = fibreAsh.value();
        double found = model.kept(additive, dose.value(), sheet, bare, residue);
        // All steps are towards less, so that none ends above everything.
        double byDose = model.kept(additive, dose.above(), sheet, bare, residue) - found;
        Amount<Share> lessAsh = Kinds.SHARE.ofSi(
                Math.max(bare.si(), sheet.si() - sheetAsh.error().si()), "%");
        double bySheet = model.kept(additive, dose.value(), lessAsh, bare, residue) - found;
        Amount<Share> moreBare = Kinds.SHARE.ofSi(
                Math.min(sheet.si(), bare.si() + fibreAsh.error().si()), "%");
        double byBare = model.kept(additive, dose.value(), sheet, moreBare, residue) - found;
        double byFibre =
                found * (ofFibre.highSi() - ofFibre.lowSi()) / (2 * Normal.FIVE_PERCENT_POINT * ofFibre.likelySi());
        double error = Math.hypot(Math.hypot(byDose, byFibre), Math.hypot(bySheet, byBare));
        return calibrate(assumptions, additive, circumstance, withWhatOneLeaves(found, error));
    }

    private double kept(
            Additive additive,
            Amount<Dose> dose,
            Quantity<Share> sheet,
            Quantity<Share> bare,
            Quantity<Share> residue) {
        return retentionOfShare(AdditiveDose.of(additive, dose), shareFromAsh(sheet, bare, residue))
                .si();
    }

    private static Reading<Share> withWhatOneLeaves(double found, double error) {
        return Reading.of(
                Kinds.SHARE.ofSi(found, "%"),
                Kinds.SHARE.ofSi(Math.hypot(error, LEFT_OF_ADDITIVE / Normal.FIVE_PERCENT_POINT), "%"));
    }

    private static Assumption measured(Assumption pattern, Scope scope, Reading<Share> retention) {
        // A share of exactly nothing or everything has no band on the scale of odds.
        double likely = Math.min(1 - 1e-6, Math.max(1e-6, Kinds.SHARE.siAboveZero(retention.value(), "retention")));
        double half = Normal.FIVE_PERCENT_POINT * retention.error().si();
        return pattern.with(
                scope,
                likely,
                Math.max(Math.min(likely, 1e-6), likely - half),
                Math.min(1 - 1e-9, likely + half),
                Basis.MEASURED_HERE,
                new Source("measured here"));
    }

    /**
     * Parts the grammage of a sheet into fibre, additive and moisture.
     *
     * @param conditioned the grammage as weighed
     * @param moisture the water in it, over the whole
     * @param shares the share of each additive in the oven-dry sheet, together below 100 %
     * @return the parts
     * @throws Refused if a value is out of range
     */
    public static MakeUp makeUp(
            Quantity<Grammage> conditioned, Quantity<Moisture> moisture, List<Amount<Share>> shares) {
        Amount<Grammage> whole = Kinds.GRAMMAGE.check(conditioned, "grammage");
        double dry = whole.si() * (1 - Kinds.MOISTURE.siWithin(moisture, "moisture", 0, 0.9));
        double sum = 0;
        for (Amount<Share> share : shares) {
            sum += Kinds.SHARE.si(share, "share of an additive");
        }
        if (!(sum < 1)) {
            throw Refused.of(
                    "additive.no-fibre",
                    "shares of additives: " + Kinds.NUMBER.ofSi(sum, "%")
                            + " together given; no fibre is left. Check the shares.",
                    "given",
                    Kinds.NUMBER.ofSi(sum, "%").toString());
        }
        return new FoundMakeUp(
                whole,
                Kinds.GRAMMAGE.ofSi(dry * (1 - sum), "g/m2"),
                sum > 0 ? Optional.of(Kinds.GRAMMAGE.ofSi(dry * sum, "g/m2")) : Optional.empty());
    }

    @Override
    public String toString() {
        return "retention of fibre " + fibre();
    }
}
