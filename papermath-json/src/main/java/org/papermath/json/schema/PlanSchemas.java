package org.papermath.json.schema;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;

/**
 * What the figures of a plan mean. The reader takes them as they are, so nothing is asked of them here: a schema with
 * descriptions only.
 */
final class PlanSchemas {
    private static final String FORECAST = "forecast";
    private static final String NOT_DONE = "not done";
    private static final String NOTICE = "notice";

    private PlanSchemas() {}

    /** Returns the definition of what several figures are made of; none if the name is none of theirs. */
    static @Nullable Object definition(String name) {
        return switch (name) {
            case "forecast" ->
                SchemaObject.figures()
                        .meaning("A forecast: in nine makings of ten it comes out between low and high.")
                        .figure("likely", any(), "The likely value.", "130.3 g/m2")
                        .figure("low", any(), "It is below this in one making of twenty.", "125.6 g/m2")
                        .figure("high", any(), "It is above this in one making of twenty.", "134.7 g/m2")
                        .figure(
                                "openBelow",
                                any(),
                                "Whether the band has no end below: at one end of what is assumed, the"
                                        + " result cannot be told. \"low\" is then the least that could be worked out.",
                                true)
                        .figure(
                                "openAbove",
                                any(),
                                "Whether the band has no end above: at one end of what is assumed, the"
                                        + " result cannot be told. \"high\" is then the most that could be worked out.",
                                true)
                        .figure(
                                "scatter",
                                any(),
                                "How far single pieces lie apart, up or down, where it is known.",
                                "8 %");
            case "not-done" ->
                SchemaObject.figures()
                        .meaning("A stage without a result.")
                        .figure(
                                "notDone",
                                SchemaObject.figures()
                                        .meaning("Why there is none.")
                                        .figure("code", any(), "A fixed word for programs.", "press.none")
                                        .figure(
                                                "reason",
                                                any(),
                                                "A sentence for people.",
                                                "the studio has no press: let the sheets drain, or press them between blotters"),
                                "Stands alone, in place of all other members of the stage.");
            case "notice" ->
                SchemaObject.figures()
                        .meaning("Something the plan should not be read without.")
                        .figure("level", any(), "\"note\" or \"warning\".", "warning")
                        .figure("code", any(), "A fixed word for programs.", "mail.old")
                        .figure(
                                "text",
                                any(),
                                "A sentence for people.",
                                "The limits of United States are of 2014, more"
                                        + " than a year before 2027-01-22. Ask the carrier before the pieces are made.");
            default -> null;
        };
    }

    /** Adds the figures to the schema of a plan. */
    static void figures(SchemaObject plan) {
        plan.figure("batches", items(batch()), "One batch for each recipe that is used.")
                .figure("pieces", items(piece()), "The pieces, as they stand in the order.")
                .figure(
                        "toBuy",
                        items(SchemaObject.figures()
                                .meaning("Something to buy.")
                                .figure("what", any(), "What.", "cotton rag")
                                .figure("mass", of(Kinds.MASS), "How much, as it is bought.", "1182 g")
                                .figure("why", any(), "For what.", "for tide grey")),
                        "What has to be bought.")
                .figure("schedule", typed("object", schedule()), "The days back from the day the parcel leaves.")
                .figure("workingHours", typed("object", forecast(Kinds.TIME)), "Hours of hands at work, in all.")
                .figure("notices", items(SchemaWords.ref(NOTICE)), "What the plan should not be read without.")
                .figure(
                        "cautions",
                        items(SchemaObject.figures()
                                .meaning("A caution.")
                                .figure("code", any(), "A fixed word for programs.", "beater roll")
                                .figure("step", any(), "The step of the work it stands beside.", "beat")
                                .figure(
                                        "text",
                                        any(),
                                        "A sentence for people.",
                                        "Beater: guard roll, belts and feed point; no hand,"
                                                + " hair or sleeve near it while it turns.")
                                .figure("basis", any(), "The rule it rests on.", "29 CFR 1910.212 (guards)")),
                        "Cautions that go with the steps of the work, each once. Local codes and licensed practice come"
                                + " first.")
                .figure("sensitivity", items(sensitivity()), "What widens the bands, the widest first.")
                .figure("assumptionsUsed", items(assumption()), "Every value of the table the plan rests on.");
    }

    private static Object typed(String type, Object schema) {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("type", type);
        Map<?, ?> plain = schema instanceof SchemaObject object ? object.schema() : (Map<?, ?>) schema;
        plain.forEach((key, value) -> all.put(key.toString(), value));
        return all;
    }

    private static Object items(Object item) {
        return typed("array", Map.of("items", item));
    }

    private static Object list(Object item) {
        return Map.of("items", item);
    }

    private static Map<String, Object> any() {
        return Map.of();
    }

    private static Map<String, Object> of(Kind<?> kind) {
        return Map.of("title", kind.name());
    }

    private static Map<String, Object> sides() {
        return Map.of("title", "two sides");
    }

    private static Map<String, Object> count() {
        return Map.of("title", "count");
    }

    private static Map<String, Object> flag() {
        return Map.of("title", "true or false");
    }

    private static Map<String, Object> forecast(Kind<?> kind) {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("title", "forecast of " + kind.name());
        all.putAll(SchemaWords.ref(FORECAST));
        return all;
    }

    /** A stage: its members, or why there are none. */
    private static Object stage(Object done) {
        return SchemaWords.anyOf(SchemaWords.ref(NOT_DONE), done);
    }

    private static SchemaObject batch() {
        SchemaObject batch = SchemaObject.figures()
                .meaning("All the stuff of one recipe.")
                .figure("recipe", any(), "The name of the recipe.", "tide grey")
                .figure(
                        "fibre",
                        SchemaObject.figures()
                                .meaning("The fibre to weigh.")
                                .figure(
                                        "ovenDry",
                                        of(Kinds.MASS),
                                        "Oven-dry fibre in all, what is in store with it.",
                                        "1556 g")
                                .figure(
                                        "asBought",
                                        of(Kinds.MASS),
                                        "What to weigh of it in all, as it lies there.",
                                        "1707 g")
                                .figure("kinds", list(fibre()), "Each fibre by itself."),
                        "The fibre to weigh.")
                .figure(
                        "soak",
                        SchemaObject.figures()
                                .meaning("How the fibre is soaked.")
                                .figure("water", of(Kinds.VOLUME), "Water for all of it.", "23.4 L")
                                .figure("time", of(Kinds.TIME), "How long.", "12 h"),
                        "How the fibre is soaked.")
                .figure("beating", stage(beating()), "The loads of the beater, or why there are none.")
                .figure("additives", list(additive()), "What goes into each load, in order.")
                .figure("stock", stock(), "The stock that is made.");
        return batch.figure(
                        "beatingState",
                        forecast(Kinds.SHARE),
                        "How far beating brings the fibre, from not beaten to as far as it goes.")
                .figure("drainability", forecast(Kinds.SCHOPPER_RIEGLER), "What the tester should read after beating.")
                .figure(
                        "waterRetention",
                        forecast(Kinds.WATER_RETENTION),
                        "Water that stays in the pulp when it is spun; the press has to work against it.")
                .figure(
                        "freeShrinkage",
                        forecast(Kinds.LINEAR_SHRINKAGE),
                        "How much a sheet shrinks along each side when nothing holds it.")
                .figure("keptInVat", forecast(Kinds.MASS), "Oven-dry fibre left in the vat at the end, to be strained.")
                .figure("stockPutBy", forecast(Kinds.MASS), "Stock left in the pails at the end.")
                .figure(
                        "shortage",
                        SchemaObject.figures()
                                .meaning("Stock that may be missing at the end.")
                                .figure(
                                        "chance",
                                        of(Kinds.SHARE),
                                        "How likely the last sheets come out thinner than the vat's"
                                                + " tolerance, or are left out.",
                                        "30 %")
                                .figure(
                                        "upTo",
                                        of(Kinds.MASS),
                                        "The stock missing in one making of twenty, or more.",
                                        "4.3 kg"),
                        "How much the stock may run short. Stands only where that is likely enough to act on.")
                .figure("whiteWaterFibre", forecast(Kinds.MASS), "Oven-dry fibre that leaves with bailed white water.")
                .figure("workingHours", forecast(Kinds.TIME), "Hours at the beater, the scale and the charging.")
                .figure("balances", list(balance()), "Where the fibre, the water and each additive went.");
    }

    private static SchemaObject fibre() {
        return SchemaObject.figures()
                .meaning("One fibre to weigh.")
                .figure(
                        "fibre",
                        own(),
                        "The fibre, as in a recipe: its id, or in full if it is one of your own.",
                        "cotton-rag")
                .figure("ovenDry", of(Kinds.MASS), "Oven-dry, what is in store with it.", "1089 g")
                .figure("fromHand", of(Kinds.MASS), "Oven-dry, taken from what is in store.", "0 g")
                .figure("asBought", of(Kinds.MASS), "What to weigh of bought fibre, for all loads.", "1182 g");
    }

    private static SchemaObject own() {
        return SchemaObject.figures()
                .meaning("A fibre of your own.")
                .figure("id", any(), "The id values of your own are kept under.", "garden-reed")
                .figure("name", any(), "What it is called.", "garden reed")
                .figure("class", any(), "The part of the plant it comes from.", "grass")
                .figure(
                        "kin",
                        Map.of("title", "texts"),
                        "Whose values may stand in for it, the nearest first.",
                        List.of("straw", "kraft"));
    }

    private static SchemaObject beating() {
        return SchemaObject.figures()
                .meaning("The loads of the beater, all alike.")
                .figure("beater", any(), "The name of the beater.", "the big beater")
                .figure("loads", count(), "How many.", 3)
                .figure("ovenDryEach", of(Kinds.MASS), "Oven-dry fibre of each.", "518.7 g")
                .figure(
                        "kindsEach",
                        Map.of("title", "masses"),
                        "What to weigh of each fibre for one load, in the order of the furnish.",
                        List.of("394 g", "175 g"))
                .figure("waterEach", of(Kinds.VOLUME), "Water for each, less what the fibre holds.", "36.6 L")
                .figure("consistency", of(Kinds.CONSISTENCY), "Oven-dry fibre over all that is in the beater.", "1.4 %")
                .figure("timeEach", of(Kinds.TIME), "How long each is beaten.", "3 h");
    }

    private static SchemaObject additive() {
        return SchemaObject.figures()
                .meaning("Something given to each load.")
                .figure("name", any(), "What it is called.", "ketene dimer size")
                .figure("dose", of(Kinds.DOSE), "Active matter on oven-dry fibre.", "0.3 %")
                .figure("productEach", of(Kinds.MASS), "Product to weigh for one load.", "13 g")
                .figure("productInAll", of(Kinds.MASS), "Product for all loads.", "39 g")
                .figure("waitAfter", of(Kinds.TIME), "How long the beater turns before the next one.", "5 min");
    }

    private static SchemaObject stock() {
        return SchemaObject.figures()
                .meaning("The stock of all loads together.")
                .figure("mass", of(Kinds.MASS), "What it weighs.", "111.1 kg")
                .figure("volume", of(Kinds.VOLUME), "How much it is.", "111 L")
                .figure("consistency", of(Kinds.CONSISTENCY), "Oven-dry fibre over all of it.", "1.4 %")
                .figure(
                        "dilutionEach",
                        of(Kinds.VOLUME),
                        "Water that thins each load after beating. Only if the stock is kept thinner.",
                        "10 L")
                .figure(
                        "realConsistency",
                        forecast(Kinds.CONSISTENCY),
                        "What the consistency may really be, since the moisture of the fibre is not sure.");
    }

    private static SchemaObject balance() {
        return SchemaObject.figures()
                .meaning("The accounts of one substance; both sides add up to the same.")
                .figure("substance", any(), "What it is.", "fibre")
                .figure(
                        "in",
                        Map.of("title", "accounts"),
                        "What went in: names of accounts, with amounts.",
                        Map.of("weighed", "1559 g"))
                .figure(
                        "out",
                        Map.of("title", "accounts"),
                        "Where it went: names of accounts, with amounts.",
                        Map.of("good", "537.8 g"));
    }

    private static SchemaObject schedule() {
        return SchemaObject.figures()
                .meaning("The days.")
                .figure("days", count(), "Days in all. Only if it is known how long the sheets dry.", 33)
                .figure(
                        "leastDays",
                        count(),
                        "Days of all but the drying, where nobody knows how long the sheets dry."
                                + " Stands in place of \"days\".",
                        30)
                .figure(
                        "steps",
                        list(SchemaObject.figures()
                                .meaning("A step.")
                                .figure("name", any(), "What is done.", "soak")
                                .figure(
                                        "days",
                                        count(),
                                        "How many days it takes. Only if it is known; drying may" + " not be.",
                                        1)
                                .figure(
                                        "start",
                                        any(),
                                        "Its first day. Only if the order says when it is due, and the days"
                                                + " from here on are known.",
                                        "2026-12-30")),
                        "The steps, one after the other.");
    }

    private static SchemaObject piece() {
        SchemaObject piece = SchemaObject.figures()
                .meaning("What is done for one piece, and what comes out.")
                .figure("name", any(), "The name of the piece.", "programme")
                .figure("batch", any(), "The recipe of its batch.", "tide grey")
                .figure("counts", counts(), "How many of what.")
                .figure("forming", forming(), "The mould and the sheet.")
                .figure("vat", stage(vat()), "How the vat is charged and recharged, or why there is none.")
                .figure(
                        "pour",
                        stage(SchemaObject.figures()
                                .meaning("What is poured.")
                                .figure("stock", of(Kinds.VOLUME), "Stock for one sheet.", "1.8 L")),
                        "What is poured for each sheet in a studio without a vat, or why nothing is.");
        piece.figure("drainTime", stage(forecast(Kinds.TIME)), "How long a sheet drains until its sheen is gone.")
                .figure("matThickness", forecast(Kinds.LENGTH), "How thick the wet sheet is.")
                .figure("couchedMass", forecast(Kinds.MASS), "What a couched sheet weighs: put one on the scale.")
                .figure("posts", stage(posts()), "How the posts are laid, or why there are none.")
                .figure("press", stage(press()), "How the press is set, or why there is none.")
                .figure("solids", forecast(Kinds.SOLIDS), "Oven-dry mass over wet mass of a sheet that goes to dry.")
                .figure("drying", stage(drying()), "How the sheets dry, or why that is not planned.")
                .figure("sizing", stage(sizing()), "The size bath, or why there is none.")
                .figure("finished", finished(), "What comes out.")
                .figure("envelope", stage(envelope()), "The blank and the fit, if the piece is an envelope.")
                .figure("mailed", stage(mailed()), "What is mailed, if it is.");
        return piece.figure("workingHours", forecast(Kinds.TIME), "Hours from forming to folding.");
    }

    private static SchemaObject counts() {
        return SchemaObject.figures()
                .meaning("How many of what.")
                .figure("ordered", count(), "Pieces ordered.", 70)
                .figure("wanted", count(), "Good pieces wanted, the spare and the kept ones with them.", 79)
                .figure("perSheet", count(), "Pieces on a sheet.", 2)
                .figure("sheets", count(), "Sheets to pull, the trials with them.", 53)
                .figure("trials", count(), "Trial sheets.", 5)
                .figure("good", forecast(Kinds.NUMBER), "Good pieces that come out.");
    }

    private static SchemaObject forming() {
        return SchemaObject.figures()
                .meaning("The mould and the sheet.")
                .figure("mould", any(), "The name of the mould. Left out if none of the studio will do.", "octavo")
                .figure("deckleToMake", flag(), "Whether a deckle with this opening has to be made.", false)
                .figure("opening", sides(), "The two sides inside the deckle.", List.of("240 mm", "310 mm"))
                .figure("perSheet", count(), "Pieces on a sheet.", 2)
                .figure("turned", flag(), "Whether the pieces lie turned on it.", true)
                .figure("fibre", of(Kinds.MASS), "Oven-dry fibre of a sheet.", "8.728 g")
                .figure("solids", of(Kinds.MASS), "Oven-dry fibre and all that stays with it.", "9.091 g");
    }

    private static SchemaObject vat() {
        return SchemaObject.figures()
                .meaning("How the vat is worked.")
                .figure("consistency", of(Kinds.CONSISTENCY), "What it is held at, on the mean.", "0.5 %")
                .figure("stock", of(Kinds.VOLUME), "Stock into the vat before the first sheet.", "25.88 L")
                .figure("water", of(Kinds.VOLUME), "Water into the vat before the first sheet.", "44.1 L")
                .figure("bail", of(Kinds.VOLUME), "White water to take out before that.", "0 L")
                .figure("lift", of(Kinds.MASS), "Stock lifted on the mould for each sheet.", "1.79 kg")
                .figure("every", count(), "Sheets from one recharge to the next.", 4)
                .figure(
                        "recharges",
                        list(SchemaObject.figures()
                                .meaning("A recharge.")
                                .figure("afterSheet", count(), "After which sheet.", 4)
                                .figure("stock", of(Kinds.VOLUME), "Stock to add.", "2.5 L")
                                .figure("water", of(Kinds.VOLUME), "Water to add.", "0 L")
                                .figure("bail", of(Kinds.VOLUME), "White water to take out through a sieve.", "2.3 L")),
                        "Each recharge.")
                .figure("lightest", of(Kinds.NUMBER), "The lightest sheet of the run over the mean one.", "96.2 %")
                .figure("heaviest", of(Kinds.NUMBER), "The heaviest sheet of the run over the mean one.", "103.7 %");
    }

    private static SchemaObject posts() {
        return SchemaObject.figures()
                .meaning("The posts.")
                .figure("sheetsInPost", count(), "Sheets in a post.", 10)
                .figure("posts", count(), "How many posts.", 6)
                .figure("felts", count(), "Felts in a post.", 11)
                .figure("mass", forecast(Kinds.MASS), "What a post weighs, with its wet felts.")
                .figure("height", forecast(Kinds.LENGTH), "How high it is before pressing.");
    }

    private static SchemaObject press() {
        return SchemaObject.figures()
                .meaning("The setting of the press.")
                .figure("press", any(), "The name of the press.", "the long press")
                .figure("force", of(Kinds.FORCE), "The load to set.", "29.5 kN")
                .figure("pressure", of(Kinds.SHEET_PRESSURE), "What that is on the sheet.", "396.5 kPa")
                .figure("time", of(Kinds.TIME), "How long it is held.", "15 min")
                .figure("weakestPart", any(), "The part that bears least.", "frame")
                .figure("limited", flag(), "Whether that part held the load down.", false);
    }

    private static SchemaObject drying() {
        return SchemaObject.figures()
                .meaning("The drying.")
                .figure("dryer", any(), "The name of the dryer.", "the boards")
                .figure("loads", count(), "How often it is filled.", 3)
                .figure("blotterChanges", count(), "Changes of blotters; 0 for other dryers.", 0)
                .figure("time", forecast(Kinds.TIME), "How long one filling takes.")
                .figure("water", forecast(Kinds.MASS), "Water that all the sheets give off.");
    }

    private static SchemaObject sizing() {
        return SchemaObject.figures()
                .meaning("The size bath.")
                .figure("bath", of(Kinds.VOLUME), "Bath to make.", "2.4 L")
                .figure("drySize", of(Kinds.MASS), "Dry size to weigh for it.", "72 g")
                .figure("taken", of(Kinds.VOLUME), "What the sheets take up of it.", "0.6 L")
                .figure("gained", forecast(Kinds.NUMBER), "Dry size over the oven-dry sheet.")
                .figure(
                        "dryAgain",
                        stage(forecast(Kinds.TIME)),
                        "How long one filling of the dryer takes after sizing.");
    }

    private static SchemaObject finished() {
        return SchemaObject.figures()
                .meaning("What comes out, in the air the order is weighed in.")
                .figure("width", forecast(Kinds.LENGTH), "One side of the flat piece.")
                .figure("height", forecast(Kinds.LENGTH), "Its other side.")
                .figure("folded", sides(), "The two sides after folding.", List.of("148 mm", "105 mm"))
                .figure("grammage", forecast(Kinds.GRAMMAGE), "Its grammage.")
                .figure("caliper", stage(forecast(Kinds.LENGTH)), "The thickness of one layer.")
                .figure("mass", forecast(Kinds.MASS), "What one piece weighs.")
                .figure("pile", stage(forecast(Kinds.LENGTH)), "How high all the pieces stack, folded.")
                .figure("shrinkageAlong", forecast(Kinds.LINEAR_SHRINKAGE), "Shrinkage along the mould.")
                .figure("shrinkageAcross", forecast(Kinds.LINEAR_SHRINKAGE), "Shrinkage across the mould.")
                .figure("load", of(Kinds.NUMBER), "Additives that stayed, over fibre.", "4.28 %");
    }

    private static SchemaObject envelope() {
        return SchemaObject.figures()
                .meaning("The envelope.")
                .figure("style", any(), "How it is folded.", "side seam")
                .figure("blank", sides(), "The two sides of the flat blank.", List.of("189 mm", "274.4 mm"))
                .figure("inside", sides(), "Its two sides inside.", List.of("154.8 mm", "111.8 mm"))
                .figure("outside", sides(), "Its two sides outside.", List.of("155.2 mm", "112.2 mm"))
                .figure("seam", of(Kinds.LENGTH), "The overlap that is glued.", "17 mm")
                .figure(
                        "playAlong",
                        forecast(Kinds.LENGTH),
                        "How much longer it is inside than what goes in; below zero that does not go in.")
                .figure("playAcross", forecast(Kinds.LENGTH), "The same the other way.")
                .figure(
                        "sharePairsFit",
                        of(Kinds.NUMBER),
                        "Of single pieces and envelopes taken at random, how many pairs fit.",
                        "100 %");
    }

    private static SchemaObject mailed() {
        return SchemaObject.figures()
                .meaning("What is mailed.")
                .figure("country", any(), "The country.", "United States")
                .figure("mass", forecast(Kinds.MASS), "What it weighs.")
                .figure("thickness", forecast(Kinds.LENGTH), "How thick it is.")
                .figure("service", any(), "The service that takes it. Left out if none does.", "letter")
                .figure("step", count(), "The weight step of that service. Left out if none takes it.", 1)
                .figure(
                        "failures",
                        Map.of("title", "texts"),
                        "Limits that are broken, in words.",
                        List.of("postcard: thickness 1.029 mm is 0.622 mm over the limit of 0.406 mm"))
                .figure("notices", list(SchemaWords.ref(NOTICE)), "What to mind.");
    }

    private static SchemaObject sensitivity() {
        return SchemaObject.figures()
                .meaning("A value that widens a band.")
                .figure("key", any(), "The id of the value, with what it holds for.", "sheet.density-beating-time")
                .figure("widens", any(), "The forecast it widens most.", "thickness of envelope")
                .figure("share", of(Kinds.NUMBER), "Its share of that band, as squares add up.", "71 %")
                .figure("weight", of(Kinds.NUMBER), "Its share of all bands together.", "17.5 %")
                .figure(
                        "measurement",
                        any(),
                        "What to measure to narrow it.",
                        "weigh one dry sheet and measure its thickness");
    }

    private static SchemaObject assumption() {
        return SchemaObject.figures()
                .meaning("A value the plan rests on.")
                .figure("key", any(), "The id of the value, with what it holds for.", "vat.retention[cotton-rag]")
                .figure("value", any(), "The likely value, in the unit of the table.", "0.97")
                .figure("low", any(), "The value it is below in one case of twenty.", "0.95")
                .figure("high", any(), "The value it is above in one case of twenty.", "0.99")
                .figure("basis", any(), "How it is known.", "common practice")
                .figure("source", any(), "Where it comes from.", "common practice, no source");
    }
}
