package org.papermath.json.mapping;

import static org.papermath.json.mapping.PlanFigures.COUNT;
import static org.papermath.json.mapping.PlanFigures.FIBRE;
import static org.papermath.json.mapping.PlanFigures.TEXT;
import static org.papermath.json.mapping.PlanFigures.band;
import static org.papermath.json.mapping.PlanFigures.list;
import static org.papermath.json.mapping.PlanFigures.named;
import static org.papermath.json.mapping.PlanFigures.set;
import static org.papermath.json.mapping.PlanFigures.several;
import static org.papermath.json.mapping.PlanFigures.stage;

import java.util.List;
import java.util.Map;
import org.papermath.fibre.Fibre;
import org.papermath.plan.AdditiveToWeigh;
import org.papermath.plan.Balance;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.BeaterLoads;
import org.papermath.plan.BeatingPlan;
import org.papermath.plan.ColourPlan;
import org.papermath.plan.CookingPlan;
import org.papermath.plan.FibreToWeigh;
import org.papermath.plan.SharedStuff;
import org.papermath.plan.SoakingPlan;
import org.papermath.plan.StockPlan;
import org.papermath.plan.StockShortage;
import org.papermath.quantity.Kinds;

/** What a plan states of a batch. */
final class PlanBatchMembers {
    private static final Members<FibreToWeigh.Line> FIBRE_LINE = Members.<FibreToWeigh.Line>of("One fibre to weigh.")
            .has("fibre", FIBRE, FibreToWeigh.Line::fibre)
            .says("The fibre, as in a recipe: its id, or in full if it is one of your own.", "cotton-rag")
            .has("form", TEXT, one -> CommonMembers.word(one.form()))
            .says("The form it is bought in.", "half stuff")
            .has("ovenDry", set(Kinds.MASS), FibreToWeigh.Line::ovenDry)
            .says("Oven-dry in the beater, what is in store with it.", "1089 g")
            .has("fromHand", set(Kinds.MASS), FibreToWeigh.Line::fromHand)
            .says("Oven-dry, taken from what is in store, in the form it is bought in.", "0 g")
            .has("asBought", set(Kinds.MASS), FibreToWeigh.Line::asBought)
            .says("What to weigh of bought fibre, for all loads.", "1182 g");

    private static final Members<FibreToWeigh> TO_WEIGH = Members.<FibreToWeigh>of("The fibre to weigh.")
            .has("ovenDry", set(Kinds.MASS), FibreToWeigh::ovenDry)
            .says("Oven-dry fibre in all, what is in store with it.", "1556 g")
            .has("asBought", set(Kinds.MASS), FibreToWeigh::asBought)
            .says("What to weigh of it in all, as it lies there.", "1707 g")
            .has("kinds", list(FIBRE_LINE), FibreToWeigh::kinds)
            .says("Each fibre by itself.");

    private static final Members<SoakingPlan> SOAK = Members.<SoakingPlan>of("How the fibre is soaked.")
            .has("water", set(Kinds.VOLUME), SoakingPlan::water)
            .says("Water for all of it.", "23.4 L")
            .has("time", set(Kinds.TIME), SoakingPlan::time)
            .says("How long.", "12 h");

    private static final Members<CookingPlan.Pot> POT = Members.<CookingPlan.Pot>of("One fibre to cook.")
            .has("fibre", FIBRE, CookingPlan.Pot::fibre)
            .says("The fibre, as in a recipe.", "flax-raw")
            .has("ovenDry", set(Kinds.MASS), CookingPlan.Pot::ovenDry)
            .says("The oven-dry fibre that goes in.", "585.6 g")
            .has("alkali", TEXT, pot -> CommonMembers.word(pot.alkali()))
            .says("What it is cooked in.", "soda ash")
            .has("dose", set(Kinds.DOSE), CookingPlan.Pot::dose)
            .says("Pure alkali on the oven-dry fibre that goes in.", "20 %")
            .has("pureAlkali", set(Kinds.MASS), CookingPlan.Pot::pureAlkali)
            .says("Pure alkali to weigh.", "117 g")
            .has("liquor", set(Kinds.VOLUME), CookingPlan.Pot::liquor)
            .says("Water to cook in.", "8.8 L")
            .has("stuff", set(Kinds.MASS), CookingPlan.Pot::stuff)
            .says("The oven-dry stuff it should leave.", "468.5 g")
            .has("wet", set(Kinds.MASS), CookingPlan.Pot::wet)
            .says("What that weighs, rinsed and squeezed out by hand.", "2130 g");

    private static final Members<CookingPlan> COOKING = Members.<CookingPlan>of("What is cooked before it is beaten.")
            .has("pots", list(POT), CookingPlan::pots)
            .says("Each fibre, in a pot of its own.")
            .has("time", set(Kinds.TIME), CookingPlan::time)
            .says("How long each is at the boil; a strand that comes apart ends it.", "3 h")
            .has("stuff", band(Kinds.MASS), CookingPlan::stuff)
            .says("The oven-dry stuff that should come out of all pots.");

    private static final Members<BeaterLoads> LOADS = Members.<BeaterLoads>of("Loads of the beater, all alike.")
            .has(
                    "fibres",
                    several("fibres", TEXT),
                    run -> run.fibres().stream().map(Fibre::name).toList())
            .says("The fibres that are beaten together.", List.of("cotton rag", "raw flax"))
            .has("loads", COUNT, BeaterLoads::loads)
            .says("How many.", 3)
            .has("ovenDryEach", set(Kinds.MASS), BeaterLoads::ovenDryEach)
            .says("Oven-dry fibre of each.", "518.7 g")
            .has("kindsEach", several("masses", set(Kinds.MASS)), BeaterLoads::kindsEach)
            .says(
                    "What to weigh of each fibre for one load, as bought or cooked and squeezed out, in the order of the"
                            + " fibres.",
                    List.of("394 g", "175 g"))
            .has("waterEach", set(Kinds.VOLUME), BeaterLoads::waterEach)
            .says("Water for each, less what the fibre brings with it.", "36.6 L")
            .has("timeEach", set(Kinds.TIME), BeaterLoads::timeEach)
            .says("How long each is beaten.", "3 h");

    private static final Members<BeatingPlan> BEATING = Members.<BeatingPlan>of("The work of the beater.")
            .has("beater", TEXT, beating -> beating.beater().name())
            .says("The name of the beater.", "the big beater")
            .has("consistency", set(Kinds.CONSISTENCY), BeatingPlan::consistency)
            .says("Oven-dry fibre over all that is in the beater.", "1.4 %")
            .has("runs", list(LOADS), BeatingPlan::runs)
            .says("The loads; several runs where fibres are beaten apart and mixed afterwards.");

    private static final Members<AdditiveToWeigh> ADDITIVE = Members.<AdditiveToWeigh>of(
                    "Something given to each load, or once to what was beaten apart and mixed.")
            .has("name", TEXT, one -> one.additive().name())
            .says("What it is called.", "ketene dimer size")
            .has("dose", set(Kinds.DOSE), AdditiveToWeigh::dose)
            .says("Active matter on oven-dry fibre.", "0.3 %")
            .has("productEach", set(Kinds.MASS), AdditiveToWeigh::productEach)
            .says("Product to weigh each time.", "13 g")
            .has("productInAll", set(Kinds.MASS), AdditiveToWeigh::productInAll)
            .says("Product for all loads.", "39 g")
            .has("waitAfter", set(Kinds.TIME), AdditiveToWeigh::waitAfter)
            .says("How long the beater turns before the next one.", "5 min");

    private static final Members<ColourPlan.Pigment> PIGMENT = Members.<ColourPlan.Pigment>of(
                    "A pigment on the scale, for each load.")
            .has("name", TEXT, one -> one.additive().name())
            .says("What it is called.", "ochre")
            .has("first", set(Kinds.MASS), ColourPlan.Pigment::first)
            .says("Product before the first trial swatch.", "18.3 g")
            .has("keptBack", set(Kinds.MASS), ColourPlan.Pigment::keptBack)
            .says("Product of the dose kept back until the swatch is judged.", "6.1 g");

    private static final Members<ColourPlan> COLOUR = Members.<ColourPlan>of(
                    "A part of the pigment first, a trial swatch dried and judged, then the rest.")
            .has("wanted", TEXT, plan -> plan.wanted().lab().toString())
            .says("The colour of the dried sheets.", "L* 62.4 a* 14.1 b* 48 (D65, 2°)")
            .has("pigments", list(PIGMENT), ColourPlan::pigments)
            .says("The pigments, as they are added.")
            .has("trials", COUNT, ColourPlan::trials)
            .says("Trial swatches reckoned with for each load that is coloured.", 2)
            .has("drying", set(Kinds.TIME), ColourPlan::drying)
            .says("How long a swatch dries before it is judged.", "15 min")
            .mayHave("before", TEXT, ColourPlan::before)
            .says("The coloured batch made just before this one, the lighter first.", "oat")
            .has("leftOfBefore", set(Kinds.NUMBER), plan -> Kinds.NUMBER.ofSi(plan.leftOfBefore(), "1"))
            .says("By how much, as a difference by CIEDE2000, what a wash leaves of it moves this one.", "0.2");

    private static final Members<StockPlan> STOCK = Members.<StockPlan>of("The stock of all loads together.")
            .has("mass", set(Kinds.MASS), StockPlan::mass)
            .says("What it weighs.", "111.1 kg")
            .has("volume", set(Kinds.VOLUME), StockPlan::volume)
            .says("How much it is.", "111 L")
            .has("consistency", set(Kinds.CONSISTENCY), StockPlan::consistency)
            .says("Oven-dry fibre over all of it.", "1.4 %")
            .mayHave("dilutionEach", set(Kinds.VOLUME), StockPlan::dilutionEach)
            .says(
                    "Water that thins each load, or the mixed stock, after beating. Only if the stock is kept thinner.",
                    "10 L")
            .has("realConsistency", band(Kinds.CONSISTENCY), StockPlan::realConsistency)
            .says("What the consistency may really be, since the moisture of the fibre is not sure.");

    private static final Members<StockShortage> SHORTAGE = Members.<StockShortage>of(
                    "Stock that may be missing at the end.")
            .has("chance", set(Kinds.SHARE), StockShortage::chance)
            .says("How likely the last sheets come out thinner than the vat's tolerance, or are left out.", "30 %")
            .has("upTo", set(Kinds.MASS), StockShortage::upTo)
            .says("The stock missing in one making of twenty, or more.", "4.3 kg");

    private static final Members<Balance> BALANCE = Members.<Balance>of(
                    "The accounts of one substance; both sides add up to the same.")
            .has("substance", TEXT, Balance::substance)
            .says("What it is.", "fibre")
            .has("in", named("accounts", set(Kinds.MASS)), Balance::in)
            .says("What went in: names of accounts, with amounts.", Map.of("weighed", "1559 g"))
            .has("out", named("accounts", set(Kinds.MASS)), Balance::out)
            .says("Where it went: names of accounts, with amounts.", Map.of("good", "537.8 g"));

    private static final Members<SharedStuff> SHARED = Members.<SharedStuff>of(
                    "Stuff that is beaten once for several recipes and divided by weight.")
            .has("name", TEXT, SharedStuff::name)
            .says("What it is called.", "white")
            .has("recipes", several("recipes", TEXT), SharedStuff::recipes)
            .says("The recipes it is divided among; the first has its loads.", List.of("tide grey", "rust"))
            .has("fibre", TO_WEIGH, SharedStuff::fibre)
            .says("The fibre to weigh for all of them.")
            .has("soak", SOAK, SharedStuff::soak)
            .says("How all of it is soaked.")
            .has("part", set(Kinds.SHARE), SharedStuff::part)
            .says("What of it becomes this batch, by weight.", "38 %")
            .has("wet", set(Kinds.MASS), SharedStuff::wet)
            .says("What that weighs as it comes from the beater, with its water.", "22.4 kg");

    static final Members<BatchPlan> BATCH = Members.<BatchPlan>of("All the stuff of one recipe.")
            .has("recipe", TEXT, BatchPlan::name)
            .says("The name of the recipe.", "tide grey")
            .has("fibre", TO_WEIGH, BatchPlan::fibre)
            .says("The fibre to weigh.")
            .has("stuffOnHand", set(Kinds.MASS), BatchPlan::stuffOnHand)
            .says("Oven-dry fibre of the stuff on hand that is used.", "0 g")
            .mayHave("sharedStuff", SHARED, BatchPlan::sharedStuff)
            .says("Stuff that is beaten for this and other recipes, then divided.")
            .has("soak", SOAK, BatchPlan::soak)
            .says("How the fibre is soaked.")
            .has("beating", stage(BEATING), BatchPlan::beatingStage)
            .says("The loads of the beater, or why there are none.")
            .has("additives", list(ADDITIVE), BatchPlan::additives)
            .says("What goes into each load, in order.")
            .mayHave("colour", COLOUR, BatchPlan::colour)
            .says("How the batch comes to its colour. Only where the recipe asks for one.")
            .mayHave("cooking", COOKING, BatchPlan::cooking)
            .says("What is cooked first. Only where fibre is bought raw, green or as rag.")
            .has("stock", STOCK, BatchPlan::stock)
            .says("The stock that is made.")
            .has("beatingState", band(Kinds.SHARE), BatchPlan::beatingState)
            .says("How far beating brings the fibre, from not beaten to as far as it goes.")
            .has("drainability", band(Kinds.SCHOPPER_RIEGLER), BatchPlan::drainability)
            .says("What the tester should read after beating.")
            .has("waterRetention", band(Kinds.WATER_RETENTION), BatchPlan::waterRetention)
            .says("Water that stays in the pulp when it is spun; the press has to work against it.")
            .has("freeShrinkage", band(Kinds.LINEAR_SHRINKAGE), BatchPlan::freeShrinkage)
            .says("How much a sheet shrinks along each side when nothing holds it.")
            .has("keptInVat", band(Kinds.MASS), BatchPlan::keptInVat)
            .says("Oven-dry fibre left in the vat at the end, to be strained.")
            .has("stockPutBy", band(Kinds.MASS), BatchPlan::stockPutBy)
            .says("Stock left in the pails at the end.")
            .mayHave("shortage", SHORTAGE, BatchPlan::shortage)
            .says("How much the stock may run short. Stands only where that is likely enough to act on.")
            .has("whiteWaterFibre", band(Kinds.MASS), BatchPlan::whiteWaterFibre)
            .says("Oven-dry fibre that leaves with bailed white water.")
            .has("workingHours", band(Kinds.TIME), BatchPlan::workingHours)
            .says("Hours of hands at the pots, the beater, the scale and the charging.")
            .has("machineHours", set(Kinds.TIME), BatchPlan::machineHours)
            .says("How long the roll runs and pots boil, with the hands free.", "9 h")
            .has("balances", list(BALANCE), BatchPlan::balances)
            .says("Where the fibre, the water and each additive went.");

    private PlanBatchMembers() {}
}
