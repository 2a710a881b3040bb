package org.papermath.examples.questions;

import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.pounds;
import static org.papermath.quantity.Amounts.squareMetres;

import java.util.List;
import javax.measure.quantity.Mass;
import org.papermath.evidence.Assumptions;
import org.papermath.examples.Embed;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.Cook;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.OvenDry;
import org.papermath.format.Substance;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.order.StuffOnHand;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PlanComparison;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.Beater;
import org.papermath.pulp.BeaterLoad;
import org.papermath.pulp.BeatingRecord;
import org.papermath.pulp.Pulp;
import org.papermath.pulp.RetentionModel;
import org.papermath.pulp.SpoonMeasure;
import org.papermath.quantity.Amount;
import org.papermath.quantity.CanadianFreeness;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Share;
import org.papermath.sheet.Extra;
import org.papermath.sheet.SheetCounts;
import org.papermath.sheet.Yield;

/** Questions of fibre and beating: what to weigh, what is in the pail, how long to beat, how to cook. */
public final class FibreQuestions {
    private FibreQuestions() {}

    /** How much pulp does an edition of eighty take, with its spares, its rejects and what stays in the vat? */
    @Question(number = "B4", words = "edition overs extras spare reject trials heel fibre weigh")
    public static String b04PulpForAnEdition() {
        int sheets = SheetCounts.toForm(80, Extra.pieces(10), Yield.ofReject(Share.percent(18)), 5);
        Amount<Mass> fibre = RetentionModel.makeUp(Grammage.gsm(180), Moisture.percent(7), List.of(Share.percent(4)))
                .fibre()
                .times(squareMetres(0.126), Kinds.MASS);
        return "weigh "
                + BoughtFibre.of(Fibres.COTTON_RAG, BoughtFibre.Form.HALF_STUFF)
                        .withMoisture(Moisture.percent(7))
                        .asBoughtForSheets(
                                sheets,
                                fibre,
                                Pulp.ofVolume(litres(50), Consistency.percent(0.5))
                                        .ovenDry(),
                                Assumptions.standard())
                + " air-dry, for " + sheets + " sheets of " + fibre;
    }

    /** How many sheets are in this bucket of wet pulp? */
    @Question(number = "B5", words = "bucket pail kit bale heel upper bound")
    public static String b05SheetsInTheBucket() {
        Pulp bucket = Pulp.ofWet(kilograms(14.2), Consistency.percent(6.08));
        Amount<Mass> sheet = OvenDry.of(Substance.sheetMass(Grammage.gsm(110), mm(148), mm(210)), Moisture.percent(7))
                .mass();
        return "at most " + bucket.sheetsAtMost(sheet, grams(150)) + " sheets of " + sheet + ", and "
                + bucket.sheetsAtMost(sheet, grams(0)) + " if nothing stayed in the vat: " + bucket;
    }

    /** Pulp is stored wet: how much dry fibre is in it? */
    @Question(number = "B6", words = "sample oven-dry bone-dry consistency pail")
    public static String b06FibreInWetPulp() {
        Pulp pulp = Pulp.ofWet(kilograms(14.2), Pulp.consistencyOfSample(grams(120), grams(7.85), Moisture.percent(7)));
        return pulp.ovenDry() + " of oven-dry fibre in " + pulp.mass() + " of pulp at " + pulp.consistency();
    }

    /** The pail says four per cent: how many litres of it make a sheet? */
    @Question(number = "B7", words = "consistency w/v m/m label pail litres")
    public static String b07LitresOfThePail() {
        Pulp.OvenDryFibre sheet = Pulp.ofOvenDry(grams(8.4));
        return "pour " + sheet.at(Consistency.percent(4)).volume().to("mL") + " if 4 % is of the stock's weight, "
                + sheet.perLitreOfWater(FibreConcentration.gramsPerLitre(40))
                        .volume()
                        .to("mL")
                + " if it is 40 g to a litre of water";
    }

    /** Is that an air-dry or a bone-dry pound? */
    @Question(number = "B8", words = "oven-dry moisture convention label")
    public static String b08AirDryOrBoneDry() {
        return OvenDry.of(pounds(5).to("g"), Moisture.percent(7)) + " at the 7 % measured, "
                + OvenDry.of(pounds(5).to("g"), Moisture.percent(10)) + " by the convention of 10 %";
    }

    /** How much pigment gives this tint on another weight of fibre? */
    @Question(number = "B15", words = "colour tint dose recipe scale")
    public static String b15SameTint() {
        AdditiveDose tint =
                AdditiveDose.ofProduct(Additive.of("ochre", Additive.Purpose.PIGMENT), grams(6.5), grams(400));
        return "weigh " + tint.product(kilograms(1.15)) + ": " + tint;
    }

    /** What do two level teaspoons of this powder weigh? */
    @Question(number = "B16", words = "spoon powder bulk density grams")
    public static String b16SpoonsOrGrams() {
        SpoonMeasure powder = SpoonMeasure.weighed("methylcellulose", Kinds.VOLUME.of(1, "tsp_us"), 10, grams(30.6));
        return "two spoons are " + powder.mass(Kinds.VOLUME.of(2, "tsp_us")) + ": " + powder;
    }

    /** Two fibres are mixed by their dry weights: what do I take wet from each pail? */
    @Question(number = "B22", words = "blend mix furnish shares wet weight")
    public static String b22WetWeightsOfABlend() {
        Furnish blend = Furnish.of(Share.percent(65), Fibres.COTTON_RAG, Share.percent(35), Fibres.ABACA);
        Pulp cotton = Pulp.ofOvenDry(grams(600).times(blend.share(Fibres.COTTON_RAG), Kinds.MASS))
                .at(Consistency.percent(5.2));
        return "take " + cotton.mass() + " of wet cotton rag and "
                + Pulp.ofOvenDry(grams(600).times(blend.share(Fibres.ABACA), Kinds.MASS))
                        .at(Consistency.percent(2.1))
                        .mass()
                + " of wet abaca";
    }

    /** How much fibre goes into how much water of the beater? */
    @Question(number = "B23", words = "load tub trough working range w/v")
    public static String b23BeaterLoad() {
        Pulp load = Pulp.ofOvenDry(grams(650)).inWaterOf(litres(28));
        return "between "
                + Pulp.ofVolumePerLitre(litres(28), FibreConcentration.gramsPerLitre(20))
                        .ovenDry() + " and "
                + Pulp.ofVolumePerLitre(litres(28), FibreConcentration.gramsPerLitre(28))
                        .ovenDry()
                + "; 650 g stand at " + load.fibrePerLitreOfWater() + " of water, " + load.consistency() + " by mass";
    }

    /** How long do I beat on my own machine to come to this freeness? */
    @Question(number = "B24", words = "freeness CSF hours table interpolate drain test")
    public static String b24HowLongToBeat() {
        BeatingRecord<CanadianFreeness> own = BeatingRecord.of(
                "linter in the small beater",
                Kinds.CANADIAN_FREENESS,
                List.of(
                        BeatingRecord.Point.read(minutes(30), CanadianFreeness.millilitres(610)),
                        BeatingRecord.Point.read(minutes(60), CanadianFreeness.millilitres(520)),
                        BeatingRecord.Point.read(minutes(90), CanadianFreeness.millilitres(440)),
                        BeatingRecord.Point.read(minutes(120), CanadianFreeness.millilitres(375))));
        return "beat " + own.timeTo(CanadianFreeness.millilitres(470)) + ", by the " + own;
    }

    /** How many loads and how many hours does this job take at the beater? */
    @Question(number = "B25", words = "loads hours beater clean")
    public static String b25LoadsAndHours() {
        List<BeaterLoad> loads = BeaterLoad.equal(kilograms(3.4), Beater.of("the beater", litres(28), grams(650)));
        return loads.size() + " loads in "
                + BeaterLoad.hours(loads.size(), minutes(20), minutes(150), minutes(15)) + ", each "
                + loads.get(0);
    }

    /** How much soda ash does this bark take? */
    @Question(number = "B26", words = "cook alkali lye pot liquor kozo bark")
    public static String b26SodaAshForBark() {
        BoughtFibre bark = BoughtFibre.of(Fibres.KOZO, BoughtFibre.Form.RAW);
        Cook cook = Cook.of(bark, grams(640), Alkali.SODA_ASH, Dose.percent(15), litres(9));
        return "weigh " + cook.pureAlkali() + " of soda ash: " + cook;
    }

    /** How much bark do I buy for sixty sheets? */
    @Question(number = "B27", words = "yield cooking bark buy heel raw")
    public static String b27BarkToBuy() {
        BoughtFibre bark = BoughtFibre.of(Fibres.KOZO, BoughtFibre.Form.RAW)
                .withYield(Share.percent(42))
                .withMoisture(Moisture.percent(0));
        return "buy " + bark.asBoughtForSheets(60, grams(5.2), grams(80), Assumptions.standard()) + " of dry bark";
    }

    /** How do I use up pulp that stands beaten and coloured? */
    @Question(number = "G8", words = "leftover stuff on hand pail kept stock")
    public static PlanComparison g08PulpThatStandsBeaten() {
        Studio with = Embed.studio()
                .with(studio -> studio.stuffOnHand(
                        StuffOnHand.of("tide grey", Pulp.ofVolume(litres(9), Consistency.percent(1.4)))));
        return MakingPlan.of(Embed.order(), with).comparedWith(MakingPlan.of(Embed.order(), Embed.studio()));
    }

    /** Cotton wants three hours and flax five: can they be beaten apart and mixed? */
    @Question(number = "G12", words = "blend beating apart hours mix")
    public static String g12BeatenApart() {
        Order order = Embed.order().withRecipe("tide grey", recipe -> recipe.beating(Fibres.FLAX_RAW, hours(5)));
        return "yes: " + MakingPlan.of(order, Embed.studio()).batch("tide grey").beating();
    }

    /** How does broke and trim go back into the next batch? */
    @Question(number = "G18", words = "broke trim slush repulp reuse")
    public static PlanComparison g18BrokeIntoTheNextBatch() {
        Studio with = Embed.studio()
                .with(studio ->
                        studio.stuffOnHand(StuffOnHand.ofBroke("tide grey", grams(216), Consistency.percent(1.4))));
        return MakingPlan.of(Embed.order(), with).comparedWith(MakingPlan.of(Embed.order(), Embed.studio()));
    }
}
