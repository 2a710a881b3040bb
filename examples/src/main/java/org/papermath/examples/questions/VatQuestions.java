package org.papermath.examples.questions;

import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import javax.measure.quantity.Mass;
import org.papermath.drying.WaterBudget;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.examples.Embed;
import org.papermath.fibre.OvenDry;
import org.papermath.format.Substance;
import org.papermath.mould.Mould;
import org.papermath.plan.AtTheVat;
import org.papermath.plan.MakingPlan;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveSolution;
import org.papermath.pulp.Pulp;
import org.papermath.pulp.RetentionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Share;
import org.papermath.quantity.Solids;
import org.papermath.quantity.SolutionStrength;
import org.papermath.vat.Recharge;
import org.papermath.vat.VatCharge;
import org.papermath.vat.VatRun;

/** Questions at the vat: how it thins, what to add back, and what stays in the water. */
public final class VatQuestions {
    private VatQuestions() {}

    /** Why do sheets get thinner as the vat empties, and how many may be dipped before it is charged again? */
    @Question(number = "B1", words = "drift thin charge recharge top-up dip lift")
    public static String b01SheetsGetThinner() {
        VatCharge vat = VatCharge.from(
                Assumptions.standard(),
                Scope.GENERAL,
                Pulp.ofVolume(litres(45), Consistency.percent(0.6)),
                kilograms(1.2));
        VatRun run = vat.pull(11);
        return "charge after sheet " + vat.sheetsWithin(vat.firstSheet(), Share.percent(5))
                + " to stay within 5 %; sheet 6 is off by " + run.forecastChange(6) + ", sheet 11 by "
                + run.forecastChange(11);
    }

    /** How much stock goes back into the vat, and how often? */
    @Question(number = "B2", words = "recharge top-up scoop jug pail bucket charge")
    public static Recharge.Line b02HowMuchToAddBack() {
        Amount<Mass> fibre = OvenDry.of(Substance.sheetMass(Grammage.gsm(120), mm(210), mm(297)), Moisture.percent(7))
                .mass();
        return Recharge.every(5, Pulp.ofOvenDry(fibre.multiply(5)).at(Consistency.percent(2.4)), 10)
                .lines()
                .get(0);
    }

    /** If stock is added and the vat is kept at its mark, what has to be bailed? */
    @Question(number = "B3", words = "bail level mark hose water recharge balance")
    public static String b03LevelAndStrengthHeld() {
        Recharge.Taken ten = Recharge.replacing(grams(69.6), Solids.percent(15));
        return ten.from(Consistency.percent(2.4)).into(Consistency.percent(0.5)) + "; with drained stock: "
                + ten.from(Consistency.percent(15)).into(Consistency.percent(0.5));
    }

    /** Colour is left in the white water: how much of the pigment was kept? */
    @Question(number = "B14", words = "retention jar backwater tint colour")
    public static String b14PigmentInTheWhiteWater() {
        return RetentionModel.fromJar(grams(24), litres(55), SolutionStrength.gramsPerLitre(0.06))
                + " of the pigment is kept";
    }

    /** How much water does the paper take, and how much fibre goes down the drain with it? */
    @Question(number = "B38", words = "water drain white-water strain sewer loss")
    public static String b38WaterAndTheDrain() {
        WaterBudget day = WaterBudget.of(litres(620), kilograms(3.1));
        return day + "; strain first: " + day.drained(litres(300), Consistency.percent(0.02)) + " goes down the drain";
    }

    /** Is the formation aid too thick or too thin, and how much of it goes into the vat? */
    @Question(number = "B42", words = "PEO neri mucilage tororo-aoi spoon solution")
    public static String b42FormationAid() {
        AdditiveSolution made =
                AdditiveSolution.of(Additive.of("PEO", Additive.Purpose.FORMATION_AID), grams(3), litres(2.5));
        return "give " + made.toBring(SolutionStrength.gramsPerLitre(0.02), litres(60)) + " of it: " + made;
    }

    /** The twelfth sheet weighs 52 g couched, not what the plan says: what now? */
    @Question(number = "G1", words = "couched light correct recharge mid-run")
    public static AtTheVat g01LightSheetInMidRun() {
        MakingPlan plan = MakingPlan.of(Embed.order(), Embed.studio());
        return plan.atTheVat("programme").after(12).couched(grams(52));
    }

    /** Which consistency of the vat gives a sheet of 180 g/m² with my dip? */
    @Question(number = "G7", words = "consistency dip lift grammage inverse")
    public static String g07ConsistencyForMyDip() {
        Amount<Mass> fibre = OvenDry.of(Substance.sheetMass(Grammage.gsm(180), mm(210), mm(297)), Moisture.percent(7))
                .mass();
        return "make the vat " + VatCharge.consistencyFor(fibre, kilograms(2), Share.percent(97)) + " for a sheet of "
                + fibre + " oven-dry";
    }

    /** I change to another mould in mid-run: what does the vat want from there? */
    @Question(number = "G19", words = "mould change mid-run smaller dip")
    public static AtTheVat g19AnotherMould() {
        MakingPlan plan = MakingPlan.of(Embed.order(), Embed.studio());
        return plan.atTheVat("programme").after(20).on(Mould.of("octavo", mm(240), mm(310)), 1);
    }
}
