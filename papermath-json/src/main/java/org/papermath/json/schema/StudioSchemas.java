package org.papermath.json.schema;

import java.time.DayOfWeek;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.papermath.evidence.Basis;
import org.papermath.json.mapping.CommonMembers;
import org.papermath.json.mapping.EquipmentMapping;
import org.papermath.json.mapping.WorkingTimeMapping;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;

/** The schema of a studio. */
public final class StudioSchemas {
    private StudioSchemas() {}

    public static SchemaObject studio() {
        SchemaObject studio = SchemaObject.object()
                .meaning("A studio: what it has, and what it knows. What it lacks is left out.")
                .required("name", SchemaWords.text(), "What the studio is called.", "a one-room studio");
        equipment(studio);
        habits(studio);
        return studio;
    }

    private static void equipment(SchemaObject studio) {
        studio.optional(
                        "beater",
                                named("the big beater")
                                        .meaning("The beater.")
                                        .required(
                                                "trough",
                                                SchemaWords.quantity(Kinds.VOLUME),
                                                "What its trough holds, " + Limits.TROUGH + ".",
                                                "45 L")
                                        .required(
                                                "ratedLoad",
                                                SchemaWords.quantity(Kinds.MASS),
                                                "The oven-dry fibre it is built for, " + Limits.RATED_LOAD + ".",
                                                "900 g"),
                        "The beater, with a trough its stock turns over in.",
                                OmittedMembers.then("a recipe with a beating time has that stage not done"))
                .optional(
                        "vat",
                        named("the oak vat")
                                .meaning("The vat.")
                                .required(
                                        "volume",
                                        SchemaWords.quantity(Kinds.VOLUME),
                                        "What is in it when it is worked, " + Limits.VAT_VOLUME + ".",
                                        "70 L")
                                .optional(
                                        "temperature",
                                        SchemaWords.quantity(Kinds.TEMPERATURE),
                                        "The temperature of the stock, " + Limits.VAT_TEMPERATURE + ".",
                                        OmittedMembers.is("20 Cel", "20 °C"),
                                        "24 Cel")
                                .optional(
                                        "inside",
                                        SchemaWords.sides(),
                                        "Its two sides inside, at the mark, each "
                                                + Limits.VAT_SIDE + "; they decide whether a"
                                                + " mould goes in.",
                                        OmittedMembers.then("every mould is taken to go in"),
                                        List.of("500 mm", "700 mm"))
                                .optional(
                                        "strainer",
                                        SchemaWords.flag(),
                                        "Whether what is bailed is strained and its fibre given back.",
                                        OmittedMembers.is(true, "it is"),
                                        false)
                                .optional(
                                        "runDownTo",
                                        SchemaWords.quantity(Kinds.VOLUME),
                                        "The level the vat is run down to at the end of a batch, below its volume; "
                                                + Limits.VAT_VOLUME + ".",
                                        OmittedMembers.then("it is kept at its mark to the end"),
                                        "30 L"),
                        "The vat the sheets are dipped from.",
                        OmittedMembers.then("each sheet is poured, with its own measure of stock"))
                .optional(
                        "moulds",
                        many(mould()),
                        "The moulds, each with its deckle; no name twice.",
                        OmittedMembers.is(List.of(), "for every piece a deckle to make is planned"))
                .optional(
                        "press",
                        press(),
                        "The press the posts are pressed in.",
                        OmittedMembers.then("no load is planned, and the plan says how to do without"))
                .optional(
                        "felts",
                        SchemaObject.object()
                                .meaning("The felts, all alike.")
                                .required(
                                        "size",
                                        SchemaWords.sides(),
                                        "The two sides of a felt, each " + Limits.FELT_SIDE + ".",
                                        List.of("450 mm", "620 mm"))
                                .required(
                                        "grammage",
                                        SchemaWords.quantity(Kinds.GRAMMAGE),
                                        "What a dry felt weighs on its area, " + Limits.FELT_GRAMMAGE + ".",
                                        "500 g/m2")
                                .optional(
                                        "thickness",
                                        SchemaWords.quantity(Kinds.LENGTH),
                                        "The thickness of a dry felt under no more than its own weight, "
                                                + Limits.FELT_THICKNESS
                                                + "; it tells how high a post is and how much water a felt holds.",
                                        OmittedMembers.then("both are those of pressed wool of that grammage"),
                                        "2 mm")
                                .required("count", SchemaWords.count(Limits.FELTS), "How many there are.", 25),
                        "The felts sheets are couched on, all alike.",
                        OmittedMembers.then("posts are not planned"))
                .optional(
                        "dryers",
                        many(dryer()),
                        "What it dries with, the usual one first; no name twice.",
                        OmittedMembers.is(List.of(), "drying is not planned"))
                .optional(
                        "room",
                        SchemaWords.ref("air"),
                        "The air of the room.",
                        OmittedMembers.is(air(), "20 °C and 55 %"))
                .optional(
                        "ventilation",
                        SchemaObject.object()
                                .meaning("The air that passes through the room. It comes in as the air of the room is.")
                                .required(
                                        "volume",
                                        SchemaWords.quantity(Kinds.VOLUME),
                                        "The volume of the room, " + Limits.ROOM_VOLUME + ".",
                                        "60 m3")
                                .required(
                                        "airChanges",
                                        SchemaWords.quantity(Kinds.RATE),
                                        "How often its air is exchanged, " + Limits.AIR_CHANGES + ".",
                                        "2 1/h"),
                        "How much air passes through the room.",
                        OmittedMembers.then("the air of the room stays as it is, however much dries in it"))
                .optional(
                        "onHand",
                        many(SchemaObject.object()
                                .meaning("Fibre in store.")
                                .required("fibre", SchemaWords.ref("fibre"), "The fibre, each once.", "abaca")
                                .required(
                                        "ovenDry",
                                        SchemaWords.quantity(Kinds.MASS),
                                        "How much there is, oven-dry, " + Limits.ON_HAND + ".",
                                        "400 g")),
                        "Fibre in store, in the form in which the recipe has it bought, which is used before any is bought.",
                        OmittedMembers.is(List.of(), "none"))
                .optional(
                        "stuffOnHand",
                        many(SchemaObject.object()
                                .meaning("Stuff that stands beaten and dosed.")
                                .required(
                                        "recipe",
                                        SchemaWords.text(),
                                        "The recipe it is of, by its name, each once.",
                                        "tide grey")
                                .required(
                                        "ovenDry",
                                        SchemaWords.quantity(Kinds.MASS),
                                        "How much fibre there is in it, oven-dry, " + Limits.ON_HAND + ".",
                                        "395 g")
                                .required(
                                        "consistency",
                                        SchemaWords.quantity(Kinds.CONSISTENCY),
                                        "How thick it stands.",
                                        "0.6 %")
                                .optional(
                                        "made",
                                        SchemaWords.ref("day"),
                                        "The day it was beaten.",
                                        OmittedMembers.then("nothing is said of its age"),
                                        "2026-12-01")),
                        "Stuff that stands beaten and dosed as a recipe has it, which is used before any is beaten.",
                        OmittedMembers.is(List.of(), "none"));
    }

    private static SchemaObject workingTime() {
        return SchemaObject.object()
                .meaning("Hours of the week and days off.")
                .required(
                        "hours",
                        SchemaWords.list(
                                1,
                                WorkingTimeMapping.MANY,
                                SchemaObject.object()
                                        .meaning("A span of work on some days of the week.")
                                        .required(
                                                "on",
                                                SchemaWords.list(
                                                        1,
                                                        7,
                                                        SchemaWords.words(
                                                                List.of(DayOfWeek.values()), CommonMembers::word)),
                                                "The days of the week.",
                                                List.of("monday", "tuesday"))
                                        .required("from", SchemaWords.clock(), "When it begins.", "09:00")
                                        .required(
                                                "to",
                                                SchemaWords.clock(),
                                                "When it ends; 00:00 is the end of the day.",
                                                "12:30")),
                        "The spans of work; those of one day do not overlap.")
                .optional(
                        "off",
                        SchemaWords.list(
                                0,
                                WorkingTimeMapping.MANY,
                                SchemaObject.object()
                                        .meaning("Days off.")
                                        .required("from", SchemaWords.ref("day"), "The first day off.", "2026-12-24")
                                        .optional(
                                                "to",
                                                SchemaWords.ref("day"),
                                                "The last day off.",
                                                OmittedMembers.then("one day"),
                                                "2027-01-02")),
                        "Days off; the library knows no holidays.",
                        OmittedMembers.is(List.of(), "none"));
    }

    private static Map<String, Object> air() {
        Map<String, Object> air = new LinkedHashMap<>();
        air.put("temperature", "20 Cel");
        air.put("humidity", "55 %");
        return air;
    }

    private static void habits(SchemaObject studio) {
        studio.optional(
                        "scaleStep",
                        SchemaWords.quantity(Kinds.MASS),
                        "The step of the scale for fibre, " + Limits.SCALE_STEP + ".",
                        OmittedMembers.is("1 g", "1 g"),
                        "5 g")
                .optional(
                        "fineScaleStep",
                        SchemaWords.quantity(Kinds.MASS),
                        "The step of the scale for additives, " + Limits.SCALE_STEP + ".",
                        OmittedMembers.is("0.1 g", "0.1 g"),
                        "0.01 g")
                .optional(
                        "jugStep",
                        SchemaWords.quantity(Kinds.VOLUME),
                        "The step of the measuring jug, " + Limits.JUG_STEP + ".",
                        OmittedMembers.is("10 mL", "10 mL"),
                        "50 mL")
                .optional(
                        "workingDay",
                        SchemaWords.quantity(Kinds.TIME),
                        "The working hours of a day, " + Limits.WORKING_DAY + ".",
                        OmittedMembers.is("6 h", "6 h"),
                        "7 h")
                .optional(
                        "workingTime",
                        workingTime(),
                        "When people work, in place of \"workingDay\" from Monday to Friday.",
                        OmittedMembers.then("the working day from Monday to Friday, from nine o'clock on"))
                .optional(
                        "people",
                        SchemaWords.count(Limits.PEOPLE),
                        "How many people work at the same time.",
                        OmittedMembers.is(1, "one"),
                        2)
                .optional(
                        "customaryUnits",
                        SchemaWords.flag(),
                        "Whether the making card shows US customary units beside the metric ones.",
                        OmittedMembers.is(false, "metric units only"),
                        true)
                .optional(
                        "edition",
                        SchemaWords.text(),
                        "The edition of the table of assumptions it plans with.",
                        OmittedMembers.then("the newest the library has"),
                        "2026-11")
                .optional(
                        "assumptions",
                        many(assumption()),
                        "What the studio knows better than the table.",
                        OmittedMembers.is(List.of(), "the values of the table"));
    }

    private static SchemaObject named(String example) {
        return SchemaObject.object()
                .required(
                        "name",
                        SchemaWords.text(),
                        "What it is called; values of your own can be kept for it. Without the signs [ ] and @.",
                        example);
    }

    private static Object many(Object item) {
        return SchemaWords.list(0, CommonMembers.MANY, item);
    }

    private static SchemaObject mould() {
        return SchemaObject.object()
                .meaning("A mould with its deckle.")
                .required("name", SchemaWords.text(), "What it is called.", "octavo")
                .optional(
                        "opening",
                        SchemaWords.sides(),
                        "The two sides inside the deckle, each " + Limits.MOULD_SIDE
                                + ". Give exactly one of opening and outline.",
                        OmittedMembers.then("an outline says what the opening is"),
                        List.of("240 mm", "310 mm"))
                .optional(
                        "outline",
                        SchemaWords.ref("outline"),
                        "The outline of the opening, wet, of a deckle that forms pieces to their shape; split by"
                                + " strips, of each of its openings.",
                        OmittedMembers.then("the opening has four sides"),
                        Map.of("round", "82.5 mm"))
                .rule("oneOf", List.of(Map.of("required", List.of("opening")), Map.of("required", List.of("outline"))))
                .optional(
                        "split",
                        SchemaObject.object()
                                .meaning("How strips split the deckle into several openings.")
                                .required(
                                        "across",
                                        SchemaWords.count(Limits.DECKLE_SPLIT),
                                        "How many openings lie side by side.",
                                        1)
                                .required(
                                        "along",
                                        SchemaWords.count(Limits.DECKLE_SPLIT),
                                        "How many lie one behind the other.",
                                        2)
                                .required("strip", SchemaWords.quantity(Kinds.LENGTH), "How wide a strip is.", "12 mm"),
                        "How the deckle is split, for several sheets at one dip.",
                        OmittedMembers.then("one opening"))
                .optional(
                        "depth",
                        SchemaWords.quantity(Kinds.LENGTH),
                        "The depth of stock the deckle holds above the mould, " + Limits.DECKLE_DEPTH + ".",
                        OmittedMembers.then("depth limits nothing"),
                        "18 mm")
                .optional(
                        "inTurn",
                        SchemaWords.count(Limits.MOULDS_IN_TURN),
                        "How many such moulds are worked in turn, so that one drains while another is dipped.",
                        OmittedMembers.is(1, "one"),
                        2);
    }

    private static SchemaObject press() {
        return named("the long press")
                .meaning("The press.")
                .required(
                        "jack",
                        SchemaWords.quantity(Kinds.FORCE),
                        "The rated force of its jack or screw, " + Limits.PRESS_RATING + ".",
                        "20 tonf_us",
                        "180 kN")
                .required(
                        "platen",
                        SchemaWords.sides(),
                        "The two sides of the platen, each " + Limits.PLATEN_SIDE + ".",
                        List.of("450 mm", "600 mm"))
                .optional(
                        "parts",
                        many(SchemaObject.object()
                                .meaning("A part that bears the load.")
                                .required("name", SchemaWords.text(), "What it is called; \"jack\" is taken.", "frame")
                                .required(
                                        "rating",
                                        SchemaWords.quantity(Kinds.FORCE),
                                        "The force it is rated for, " + Limits.PRESS_RATING + ".",
                                        "15 tonf_us")),
                        "Other parts with a rating; the weakest one sets the limit.",
                        OmittedMembers.is(List.of(), "the jack alone sets the limit"))
                .optional(
                        "daylight",
                        SchemaWords.quantity(Kinds.LENGTH),
                        "The height a post may have, " + Limits.DAYLIGHT + ".",
                        OmittedMembers.then("the height of a post is not looked at"),
                        "300 mm")
                .optional(
                        "pressings",
                        SchemaWords.count(Limits.PRESSINGS),
                        "How often a post is pressed, its felts exchanged for drier ones in between.",
                        OmittedMembers.is(1, "once"),
                        2)
                .optional(
                        "ram",
                        SchemaObject.object()
                                .meaning("The ram of its jack, and what does not reach the post.")
                                .required(
                                        "diameter",
                                        SchemaWords.quantity(Kinds.LENGTH),
                                        "Its diameter, " + Limits.RAM_DIAMETER + ".",
                                        "60 mm")
                                .optional(
                                        "takenUp",
                                        SchemaWords.quantity(Kinds.FORCE),
                                        "The force that lifts the platen and stretches the springs.",
                                        OmittedMembers.then("all the force reaches the post"),
                                        "500 N"),
                        "The ram the gauge of the press belongs to; the plan then says what the gauge is to show.",
                        OmittedMembers.then("the load is given as a force only"))
                .optional(
                        "screw",
                        SchemaObject.object()
                                .meaning("A screw with a square thread.")
                                .required(
                                        "lead",
                                        SchemaWords.quantity(Kinds.LENGTH),
                                        "What it advances in one turn, above zero.",
                                        "10 mm")
                                .required(
                                        "meanDiameter",
                                        SchemaWords.quantity(Kinds.LENGTH),
                                        "Half way between the outside and the ground of its thread, above zero.",
                                        "40 mm")
                                .optional(
                                        "friction",
                                        SchemaWords.quantity(Kinds.SHARE),
                                        "The coefficient of friction; of wood on wood about 20 %.",
                                        OmittedMembers.then("that of steel, 9 %"),
                                        "20 %")
                                .optional(
                                        "collar",
                                        SchemaWords.quantity(Kinds.LENGTH),
                                        "The mean diameter of the collar that rubs under its head, above zero.",
                                        OmittedMembers.then("nothing rubs there"),
                                        "50 mm")
                                .required(
                                        "lever",
                                        SchemaWords.quantity(Kinds.LENGTH),
                                        "The lever, from the axis of the screw to the hands, above zero.",
                                        "1.2 m")
                                .optional(
                                        "people",
                                        SchemaWords.count(Limits.AT_THE_LEVER),
                                        "How many pull it.",
                                        OmittedMembers.is(1, "one"),
                                        2)
                                .optional(
                                        "handForce",
                                        SchemaWords.quantity(Kinds.FORCE),
                                        "What each can pull with, above zero.",
                                        OmittedMembers.then("250 N"),
                                        "200 N"),
                        "The screw of the press and the lever on it; the plan then says what to pull.",
                        OmittedMembers.then("the load is given as a force only"));
    }

    private static Object dryer() {
        Map<String, SchemaObject> kinds = new LinkedHashMap<>();
        kinds.put(
                EquipmentMapping.FAN_STACK,
                layered("drying box", "blotter")
                        .meaning(
                                "Sheets between blotters and fluted boards, with a fan that blows through or without one.")
                        .required(
                                "freeAirFlow",
                                SchemaWords.quantity(Kinds.VOLUME_FLOW),
                                "The air the fan moves with no stack before it, " + Limits.FREE_AIR_FLOW
                                        + "; 0 without a fan.",
                                "400 m3/h")
                        .optional(
                                "weight",
                                SchemaWords.quantity(Kinds.MASS),
                                "What lies on it, or what its straps pull, as a mass, " + Limits.STACK_WEIGHT + ".",
                                OmittedMembers.then("the stack is taken to hold its sheets"),
                                "30 kg"));
        kinds.put(
                EquipmentMapping.BOARDS,
                layered("the boards", "board").meaning("Boards, panes or walls the wet sheets are brushed on."));
        kinds.put(
                EquipmentMapping.LOFT,
                holding("the loft")
                        .meaning("Lines or ropes the sheets hang on.")
                        .required(
                                "sheetsInSpur",
                                SchemaWords.count(Limits.SPUR),
                                "How many sheets hang together, as one spur.",
                                4));
        kinds.put(
                EquipmentMapping.BLOTTERS,
                layered("the blotters", "blotter").meaning("Sheets between blotters that are changed by hand."));
        return SchemaWords.byWord("kind", "How it dries. The word says which members there are.", kinds);
    }

    private static SchemaObject layered(String example, String layer) {
        return holding(example)
                .optional(
                        "layer",
                        SchemaWords.sides(),
                        "The two sides of a " + layer + ", each " + Limits.DRYER_SIDE
                                + "; the capacity then counts them, and small sheets lie side by side.",
                        OmittedMembers.then("a " + layer + " takes one sheet"),
                        List.of("460 mm", "640 mm"));
    }

    private static SchemaObject holding(String example) {
        return named(example)
                .required(
                        "capacity", SchemaWords.count(Limits.DRYER_CAPACITY), "How many sheets it takes at once.", 24);
    }

    static Object assumption() {
        Object value = SchemaWords.anyOf(Map.of("type", "number"), SchemaWords.text());
        return SchemaObject.object()
                .meaning("A value of the studio's own.")
                .required("id", SchemaWords.text(), "The id it has in the table of assumptions.", "beating.rate")
                .optional(
                        "fibre",
                        SchemaWords.text(),
                        "The fibre it holds for. Not together with subject.",
                        OmittedMembers.then("it holds for every fibre"),
                        "cotton-rag")
                .optional(
                        "subject",
                        SchemaWords.text(),
                        "What else it holds for: a recipe, a group of fibres, an additive.",
                        OmittedMembers.then("it holds for all"),
                        "tide grey")
                .optional(
                        "at",
                        SchemaWords.text(),
                        "The beater, vat, press or dryer it holds at, by its name.",
                        OmittedMembers.then("it holds at all"),
                        "the big beater")
                .required(
                        "value",
                        value,
                        "The likely value: a text with a unit, or a number in the unit of the table.",
                        "0.12 1/h",
                        0.12)
                .optional(
                        "low",
                        value,
                        "The value it is below in one case of twenty. Together with high.",
                        OmittedMembers.then("the value has no band"),
                        "0.1 1/h")
                .optional(
                        "high",
                        value,
                        "The value it is above in one case of twenty. Together with low.",
                        OmittedMembers.then("the value has no band"),
                        "0.15 1/h")
                .optional(
                        "unit",
                        SchemaWords.text(),
                        "The unit of the table, repeated; any other is refused.",
                        OmittedMembers.then("the unit of the table"),
                        "1/h")
                .optional(
                        "basis",
                        SchemaWords.words(List.of(Basis.values()), Basis::word),
                        "How it is known.",
                        OmittedMembers.is("given", "given"),
                        "measured here")
                .optional(
                        "source",
                        SchemaWords.text(),
                        "Where it comes from, in words.",
                        OmittedMembers.is("given by the user", "\"given by the user\""),
                        "five loads of May, read on the tester")
                .optional(
                        "goesWith",
                        many(SchemaObject.object()
                                .meaning("An assumption a measured value goes with.")
                                .required(
                                        "id",
                                        SchemaWords.text(),
                                        "The id of the other in the table of assumptions.",
                                        "drainage.suction-factor")
                                .optional(
                                        "subject",
                                        SchemaWords.text(),
                                        "What the other holds for: a fibre, a recipe, an additive.",
                                        OmittedMembers.then("it holds for all"),
                                        "abaca")
                                .optional(
                                        "at",
                                        SchemaWords.text(),
                                        "The beater, vat, press or dryer the other holds at, by its name.",
                                        OmittedMembers.then("it holds at all"),
                                        "the tub")
                                .required(
                                        "below",
                                        Map.of("type", "number"),
                                        "So much lower the value would have come out, were the other lower by one, each on"
                                                + " the scale of its distribution.",
                                        0.4)
                                .required(
                                        "above",
                                        Map.of("type", "number"),
                                        "So much higher the value would have come out, were the other higher by one.",
                                        0.5)),
                        "What the measurement had to take as it stands, or tells as well; a plan moves the value with it.",
                        OmittedMembers.is(List.of(), "it goes with nothing"))
                .rule("dependentRequired", Map.of("low", List.of("high"), "high", List.of("low")))
                .rule("not", Map.of("required", List.of("fibre", "subject")));
    }
}
