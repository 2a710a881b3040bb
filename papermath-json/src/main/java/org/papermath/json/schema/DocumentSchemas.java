package org.papermath.json.schema;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.Fibre;
import org.papermath.format.Format;
import org.papermath.format.FormatSystem;
import org.papermath.json.mapping.CommonMembers;
import org.papermath.json.mapping.OwnStepMapping;
import org.papermath.order.OwnStep;
import org.papermath.order.Piece;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;

/** The schemas of orders, recipes and plans. */
public final class DocumentSchemas {
    private DocumentSchemas() {}

    /** Returns what a reference in any of the schemas leads to. */
    public static Object definition(String name) {
        return switch (name) {
            case "air" -> air();
            case "fibre" -> fibre();
            case "furnish" -> furnish();
            case "outline" -> outline();
            case "inline-recipe" -> recipe();
            case "inline-studio" -> StudioSchemas.studio();
            default -> Optional.ofNullable(PlanSchemas.definition(name)).orElseGet(() -> SchemaWords.definition(name));
        };
    }

    public static SchemaObject order() {
        return whatIsOrdered(SchemaObject.object().meaning("What is ordered, of which papers, and where it is made."))
                .required(
                        "studio",
                        SchemaWords.referenceOr(SchemaWords.ref("inline studio")),
                        "The studio it is made in, or where that stands.");
    }

    private static SchemaObject whatIsOrdered(SchemaObject order) {
        return order.required(
                        "name",
                        SchemaWords.text(),
                        "What the order is called, on the making card too.",
                        "midwinter concert")
                .optional(
                        "due",
                        SchemaWords.ref("day"),
                        "The day the parcel leaves the studio.",
                        OmittedMembers.then("the steps have their lengths and no days of the calendar"),
                        "2027-01-22")
                .optional(
                        "weighedIn",
                        SchemaWords.ref("air"),
                        "The air in which grammage, size and thickness are meant.",
                        OmittedMembers.is(
                                ordered("temperature", "23 Cel", "humidity", "50 %"),
                                "the usual air of paper testing, 23 °C and 50 %"))
                .optional(
                        "asListed",
                        SchemaWords.flag(),
                        "Whether the pieces of a recipe are formed in the order they stand in.",
                        OmittedMembers.is(false, "the heaviest sheet comes first"),
                        true)
                .required(
                        "recipes",
                        SchemaWords.list(
                                1, CommonMembers.MANY, SchemaWords.referenceOr(SchemaWords.ref("inline recipe"))),
                        "The recipes of its papers, or where they stand; no name twice.")
                .required(
                        "pieces",
                        SchemaWords.list(1, CommonMembers.MANY, piece()),
                        "What is ordered; no name twice. They are made in this order.")
                .optional(
                        "steps",
                        SchemaWords.list(0, Limits.STEPS.most(), step()),
                        "Steps of your own in the days of the work: printing elsewhere, a proof to be approved, the"
                                + " way to the customer; no name twice. Those of one place follow one another.",
                        OmittedMembers.is(List.of(), "the days are those of the work alone"));
    }

    private static SchemaObject step() {
        OmittedMembers certain = OmittedMembers.then("the waiting is certain at this end");
        return SchemaObject.object()
                .meaning("A step of your own: hands, then waiting, at a place between the stages of the work.")
                .required(
                        "name",
                        SchemaWords.text(),
                        "What is done; without the signs [ ] and @.",
                        "print the programmes")
                .optional(
                        "hands",
                        SchemaWords.quantity(Kinds.TIME),
                        "How long hands are on it, in working time; " + Limits.STEP_HANDS + ".",
                        OmittedMembers.is("0 h", "it takes no hands"),
                        "2 h")
                .optional(
                        "waits",
                        SchemaWords.quantity(Kinds.TIME),
                        "How long is waited after that, likely; " + Limits.STEP_WAITS + ".",
                        OmittedMembers.is("0 d", "nothing is waited for"),
                        "4 d")
                .optional(
                        "waitsAtLeast",
                        SchemaWords.quantity(Kinds.TIME),
                        "The waiting is shorter than this in one case of twenty; above 0, at most \"waits\".",
                        certain,
                        "2 d")
                .optional(
                        "waitsAtMost",
                        SchemaWords.quantity(Kinds.TIME),
                        "The waiting is longer than this in one case of twenty; at least \"waits\".",
                        certain,
                        "7 d")
                .optional(
                        "inWorkingDays",
                        SchemaWords.flag(),
                        "Whether the waiting goes on in the working time of the studio only; it is then told in"
                                + " days, each as long as the longest working day.",
                        OmittedMembers.is(false, "the waiting goes on day and night"),
                        true)
                .optional(
                        "after",
                        SchemaWords.words(OwnStepMapping.STAGES, OwnStep.Stage::words),
                        "The stage the whole order is through before the step begins.",
                        OmittedMembers.then("it begins when all that comes earlier than \"before\" is done"),
                        "finish")
                .optional(
                        "before",
                        SchemaWords.words(OwnStepMapping.STAGES, OwnStep.Stage::words),
                        "The stage that waits for the step; later than \"after\".",
                        OmittedMembers.then("all that comes later than \"after\" waits for it"),
                        "pack")
                .rule("if", Map.of("not", has("after")))
                .rule("then", has("before"));
    }

    public static SchemaObject plan() {
        SchemaObject plan = SchemaObject.object()
                .meaning("A plan as it was made: what it was made from, and every figure it gave.")
                .required("writtenBy", SchemaWords.writtenBy(), "The program that wrote the plan.")
                .required(
                        "edition",
                        SchemaWords.text(),
                        "The edition of the table of assumptions the figures were made with; the studio says the same.",
                        "2026-11")
                .required(
                        "order",
                        whatIsOrdered(SchemaObject.object()
                                .meaning("The order, with its recipes in full and without its head and its studio.")),
                        "The order the plan was made for.")
                .required(
                        "studio",
                        SchemaWords.referenceOr(SchemaWords.ref("inline studio")),
                        "The studio it was planned in, with its own values.");
        PlanSchemas.figures(plan);
        return plan;
    }

    private static Map<String, Object> ordered(Object... namesAndValues) {
        Map<String, Object> all = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            all.put((String) namesAndValues[i], namesAndValues[i + 1]);
        }
        return all;
    }

    private static SchemaObject piece() {
        SchemaObject piece = SchemaObject.object().meaning("Sheets, cards or envelopes that are alike.");
        wanted(piece);
        making(piece);
        envelope(piece);
        return piece.rule("oneOf", List.of(has("grammage"), has("caliper"), has("sample")))
                .rule("if", has("envelopeFor"))
                .rule("then", Map.of("required", List.of("style"), "properties", Map.of("outline", false)))
                .rule(
                        "else",
                        Map.of(
                                "oneOf",
                                List.of(has("size"), has("outline")),
                                "properties",
                                Map.of("style", false, "inserts", false, "clearance", false)));
    }

    private static void wanted(SchemaObject piece) {
        OmittedMembers another = OmittedMembers.then("one of the other two says what to meet");
        piece.required("name", SchemaWords.text(), "What it is called; without the signs [ ] and @.", "programme")
                .required("count", SchemaWords.count(Limits.PIECES), "How many are ordered.", 70)
                .required("recipe", SchemaWords.text(), "The name of its recipe.", "tide grey")
                .optional(
                        "size",
                        SchemaWords.anyOf(SchemaWords.text(), SchemaWords.sides(), format()),
                        "The finished flat size, before folding: the full name of a format, two sides of "
                                + Limits.PIECE_SIDE + ","
                                + " or a format of your own. Of envelopes only a diamond may have one: the side of"
                                + " its square.",
                        OmittedMembers.then(
                                "an envelope takes its size from what goes in; every other piece needs it or"
                                        + " an outline"),
                        "ISO A5",
                        List.of("55 mm", "90 mm"))
                .optional(
                        "outline",
                        SchemaWords.ref("outline"),
                        "The finished flat outline of a piece that is formed to its shape, in place of a size: its edge"
                                + " is the rim of a deckle cut to that shape, with the shrinkage taken in. Not of"
                                + " envelopes, whose outline follows from their style; they need the edge shaped only.",
                        OmittedMembers.then("the piece has four sides"),
                        ordered("round", "80 mm"))
                .optional(
                        "grammage",
                        SchemaWords.quantity(Kinds.GRAMMAGE),
                        "The target grammage, " + Limits.PIECE_GRAMMAGE
                                + ". Give exactly one of grammage, caliper and sample.",
                        another,
                        "130 g/m2",
                        ordered("weight", "60 lb", "sheet", List.of("25 in", "38 in"), "count", 500))
                .optional(
                        "caliper",
                        SchemaWords.quantity(Kinds.LENGTH),
                        "The target thickness of one layer, " + Limits.PIECE_CALIPER + ".",
                        another,
                        "0.25 mm",
                        "250 um")
                .optional(
                        "sample",
                        SchemaObject.object()
                                .meaning("A sheet to be matched, weighed in the air of the room.")
                                .required(
                                        "size",
                                        SchemaWords.sides(),
                                        "Its two sides, each " + Limits.SAMPLE_SIDE + ".",
                                        List.of("100 mm", "100 mm"))
                                .required(
                                        "mass",
                                        SchemaWords.quantity(Kinds.MASS),
                                        "What it weighs, " + Limits.SAMPLE_MASS + ".",
                                        "1.3 g")
                                .required(
                                        "caliper",
                                        SchemaWords.quantity(Kinds.LENGTH),
                                        "How thick it is, " + Limits.SAMPLE_CALIPER + ".",
                                        "0.25 mm"),
                        "A sheet to be matched instead.",
                        another);
    }

    private static void making(SchemaObject piece) {
        Object length = SchemaWords.quantity(Kinds.LENGTH);
        piece.optional(
                        "spare",
                        SchemaWords.quantity(Kinds.SHARE),
                        "How many more than ordered are to come out good, as a share of those ordered, " + Limits.SPARE
                                + ". An order has " + Limits.IN_ORDER + " pieces, with those kept, the spare ones and"
                                + " the trial sheets.",
                        OmittedMembers.then("the habit of the studio, order.spare-share of the assumptions"),
                        "12 %")
                .optional(
                        "kept",
                        SchemaWords.count(Limits.KEPT),
                        "How many more the studio keeps for itself.",
                        OmittedMembers.is(0, "none"),
                        2)
                .optional(
                        "trials",
                        SchemaWords.count(Limits.TRIALS),
                        "How many trial sheets are pulled before the run.",
                        OmittedMembers.then("the habit of the studio, order.trial-sheets of the assumptions"),
                        3)
                .optional(
                        "folds",
                        SchemaWords.count(Limits.FOLDS),
                        "How often it is folded in half, each time across its longer side. Not of envelopes.",
                        OmittedMembers.is(0, "it stays flat"),
                        1)
                .optional(
                        "edge",
                        SchemaWords.words(List.of(Piece.Edge.values()), CommonMembers::word),
                        "Whether the rim of the deckle stays on all sides, one piece to a sheet, or it is cut or torn"
                                + " from a larger sheet, or the deckle is cut to the outline of the piece or of the"
                                + " blank of an envelope, several openings to a mould.",
                        OmittedMembers.is("cut", "cut, or shaped where an outline is given"),
                        "deckle")
                .optional(
                        "trim",
                        length,
                        "What is cut off each edge of the sheet, " + Limits.TRIM + ". Not with a deckle edge.",
                        OmittedMembers.then("the habit of the studio, order.trim of the assumptions"),
                        "4 mm")
                .optional(
                        "gap",
                        length,
                        "How far pieces lie apart on one sheet, or the openings of a deckle cut to their outline, "
                                + Limits.GAP + ".",
                        OmittedMembers.then(
                                "pieces touch, and openings lie order.deckle-strip of the assumptions apart"),
                        "3 mm")
                .optional(
                        "dryer",
                        SchemaWords.text(),
                        "The name of the dryer of the studio it dries in.",
                        OmittedMembers.then("the first dryer of the studio"),
                        "the boards")
                .optional(
                        "mailedIn",
                        SchemaWords.text(),
                        "The country it is mailed in, whose mail limits are looked at."
                                + " An envelope is mailed with what goes in.",
                        OmittedMembers.then("no mail limits are checked"),
                        "United States");
    }

    private static void envelope(SchemaObject piece) {
        piece.optional(
                        "envelopeFor",
                        SchemaWords.text(),
                        "The name of the piece that goes in, if this is an envelope.",
                        OmittedMembers.then("it is no envelope"),
                        "programme")
                .optional(
                        "style",
                        SchemaWords.words(List.of(EnvelopeStyle.values()), EnvelopeStyle::words),
                        "How the envelope is folded. Required for an envelope, not allowed for another piece.",
                        OmittedMembers.then("it is no envelope"),
                        "side seam")
                .optional(
                        "inserts",
                        SchemaWords.count(Limits.INSERTS),
                        "How many go into one envelope. Of envelopes only.",
                        OmittedMembers.is(1, "one"),
                        2)
                .optional(
                        "clearance",
                        SchemaWords.quantity(Kinds.LENGTH),
                        "How much longer and wider the envelope is inside" + " than what goes in, both edges together, "
                                + Limits.CLEARANCE + ". Of envelopes only.",
                        OmittedMembers.then("the habit of the studio, envelope.clearance of the assumptions"),
                        "6 mm");
    }

    /** An outline: a round, an oval, or corners. */
    private static SchemaObject outline() {
        OmittedMembers another = OmittedMembers.then("one of the other two says what the outline is");
        return SchemaObject.object()
                .meaning("An outline. Give exactly one of round, oval and corners.")
                .optional(
                        "round",
                        SchemaWords.quantity(Kinds.LENGTH),
                        "The diameter of a round, " + Limits.PIECE_SIDE + ".",
                        another,
                        "80 mm")
                .optional(
                        "oval",
                        SchemaWords.sides(),
                        "The two sides of an oval over all, each " + Limits.PIECE_SIDE + ".",
                        another,
                        List.of("60 mm", "90 mm"))
                .optional(
                        "corners",
                        SchemaWords.list(
                                Limits.OUTLINE_CORNERS.least(),
                                Limits.OUTLINE_CORNERS.most(),
                                SchemaObject.object()
                                        .meaning("A corner.")
                                        .required(
                                                "across",
                                                SchemaWords.quantity(Kinds.LENGTH),
                                                "How far it is from the left.",
                                                "12 mm")
                                        .required(
                                                "along",
                                                SchemaWords.quantity(Kinds.LENGTH),
                                                "How far it is from below.",
                                                "90 mm")),
                        "The corners of any other outline in order, either way round, each once; it measures over all "
                                + Limits.PIECE_SIDE + " each way.",
                        another,
                        List.of(
                                ordered("across", "0 mm", "along", "0 mm"),
                                ordered("across", "60 mm", "along", "0 mm"),
                                ordered("across", "30 mm", "along", "80 mm")))
                .rule("oneOf", List.of(has("round"), has("oval"), has("corners")));
    }

    private static SchemaObject format() {
        return SchemaObject.object()
                .meaning("A format of your own.")
                .required("name", SchemaWords.text(), "What it is called.", "bookplate")
                .required(
                        "system",
                        SchemaWords.words(List.of(FormatSystem.values()), FormatSystem::words),
                        "The standard or custom it belongs to.",
                        FormatSystem.TRADITIONAL.words())
                .required(
                        "use",
                        SchemaWords.words(List.of(Format.Use.values()), CommonMembers::word),
                        "What it is for.",
                        "card")
                .required(
                        "sides",
                        SchemaWords.sides(),
                        "Its two sides, each " + Limits.FORMAT_SIDE + ".",
                        List.of("80 mm", "110 mm"));
    }

    private static Object has(String member) {
        return Map.of("required", List.of(member));
    }

    public static SchemaObject recipe() {
        return SchemaObject.object()
                .meaning("One paper: its fibres, how they are beaten, and what is given to them.")
                .required(
                        "name",
                        SchemaWords.text(),
                        "What the paper is called; without the signs [ ] and @.",
                        "tide grey")
                .required("furnish", SchemaWords.ref("furnish"), "The fibres and their shares, which add up to 100 %.")
                .optional(
                        "beating",
                        SchemaWords.quantity(Kinds.TIME),
                        "How long the fibre is beaten on the beater of the studio, " + Limits.BEATING + ".",
                        OmittedMembers.is("0 h", "not at all"),
                        "3 h")
                .optional(
                        "beatenApart",
                        SchemaWords.list(
                                0,
                                100,
                                SchemaObject.object()
                                        .meaning("One fibre that is beaten by itself.")
                                        .required("fibre", SchemaWords.ref("fibre"), "A fibre of the furnish.", "abaca")
                                        .required(
                                                "time",
                                                SchemaWords.quantity(Kinds.TIME),
                                                "How long each load of it is beaten, " + Limits.BEATING + ".",
                                                "5 h")),
                        "Fibres that are beaten in loads of their own and mixed with the rest afterwards; the additives"
                                + " then go once into the mixed stock. No fibre twice.",
                        OmittedMembers.is(List.of(), "all are beaten together"))
                .optional(
                        "timedSheet",
                        SchemaObject.object()
                                .meaning("A sheet timed with a stopwatch at the vat of the studio.")
                                .required(
                                        "time",
                                        SchemaWords.quantity(Kinds.TIME),
                                        "From lifting the mould until the sheen has gone, 0.1 s to 1 h.",
                                        "24 s")
                                .required(
                                        "fibre",
                                        SchemaWords.quantity(Kinds.GRAMMAGE),
                                        "The oven-dry fibre of the sheet on the area of the wire, "
                                                + Limits.PIECE_GRAMMAGE + ".",
                                        "95 g/m2")
                                .required(
                                        "consistency",
                                        SchemaWords.quantity(Kinds.CONSISTENCY),
                                        "The consistency of the vat it was lifted from, " + Limits.VAT_CONSISTENCY
                                                + ".",
                                        "0.5 %"),
                        "A sheet of the beaten stuff that was timed, before colour, filler or formation aid went in; in"
                                + " place of a drainability.",
                        OmittedMembers.then("the state follows from the beating or the drainability"))
                .optional(
                        "drainability",
                        SchemaWords.quantity(Kinds.SCHOPPER_RIEGLER),
                        "What the tester read after that beating, " + Limits.DRAINABILITY + ", where it was measured.",
                        OmittedMembers.then("it is worked out from the beating"),
                        "38 SR")
                .optional(
                        "cooking",
                        SchemaObject.object()
                                .meaning("What raw fibre is cooked in.")
                                .required(
                                        "alkali",
                                        SchemaWords.words(List.of(Alkali.values()), CommonMembers::word),
                                        "The alkali.",
                                        "caustic soda")
                                .required(
                                        "dose",
                                        SchemaWords.quantity(Kinds.DOSE),
                                        "Pure alkali on the oven-dry fibre before it is cooked, " + Limits.DOSE + ".",
                                        "15 %"),
                        "What fibre bought raw, green or as rag is cooked in.",
                        OmittedMembers.then("soda ash at its usual dose, additive.dose of the assumptions"))
                .optional(
                        "additives",
                        SchemaWords.list(0, CommonMembers.MANY, additive()),
                        "What is given to the pulp, in the order in which it goes in; no name twice.",
                        OmittedMembers.is(List.of(), "nothing"))
                .optional(
                        "beaterConsistency",
                        SchemaWords.quantity(Kinds.CONSISTENCY),
                        "Oven-dry fibre over all that is in the beater, " + Limits.BEATER_CONSISTENCY + ".",
                        OmittedMembers.then("the habit of the studio, beater.consistency of the assumptions"),
                        "1.8 %")
                .optional(
                        "stockConsistency",
                        SchemaWords.quantity(Kinds.CONSISTENCY),
                        "The consistency at which the beaten stock is kept in pails, " + Limits.STOCK_CONSISTENCY + ".",
                        OmittedMembers.then("as it leaves the beater"),
                        "1.6 %")
                .optional(
                        "vatConsistency",
                        SchemaWords.quantity(Kinds.CONSISTENCY),
                        "The consistency the vat is held at, " + Limits.VAT_CONSISTENCY + ".",
                        OmittedMembers.then("the habit of the studio, vat.consistency of the assumptions"),
                        "0.5 %")
                .optional(
                        "sizeBath",
                        SchemaWords.quantity(Kinds.FIBRE_CONCENTRATION),
                        "Dry size in a litre of the bath the dry sheets are drawn through, " + Limits.SIZE_BATH + ".",
                        OmittedMembers.then("the sheets are not surface sized"),
                        "30 g/L")
                .optional(
                        "stuff",
                        SchemaWords.text(),
                        "What the stuff is called that is beaten for this and every other recipe of the order that names"
                                + " it, and then divided by weight; additives go into each part. All of them agree in"
                                + " furnish, cooking, beating and the consistencies of beater and stock. Without the"
                                + " signs [ ] and @.",
                        OmittedMembers.then("the stuff is beaten for this recipe alone"),
                        "white")
                .optional(
                        "colour",
                        ColourSchemas.wanted(),
                        "The colour of the dried sheets. Its pigments stand among the additives; trial swatches are judged"
                                + " by it.",
                        OmittedMembers.then("the paper is as its pulp and additives make it"));
    }

    private static SchemaObject additive() {
        return SchemaObject.object()
                .meaning("Something given to the pulp.")
                .required(
                        "name",
                        SchemaWords.text(),
                        "What it is called; without the signs [ ] and @.",
                        "ketene dimer size")
                .required(
                        "purpose",
                        SchemaWords.words(List.of(Additive.Purpose.values()), CommonMembers::word),
                        "What it is for.",
                        "internal size")
                .required(
                        "dose",
                        SchemaWords.quantity(Kinds.DOSE),
                        "Active matter on oven-dry fibre, " + Limits.DOSE
                                + "; all doses of a recipe come to 100 % at most.",
                        "0.3 %",
                        "3 g/kg")
                .optional(
                        "active",
                        SchemaWords.quantity(Kinds.SHARE),
                        "Active matter in the product as it is bought.",
                        OmittedMembers.then("the product is taken as it is, all of it active"),
                        "12 %");
    }

    static Object furnish() {
        return SchemaWords.list(
                1,
                100,
                SchemaObject.object()
                        .meaning("One fibre of the furnish.")
                        .required("fibre", SchemaWords.ref("fibre"), "The fibre, each once.", "cotton-rag")
                        .required(
                                "share",
                                SchemaWords.quantity(Kinds.SHARE),
                                "Its share of all oven-dry fibre in the beater. The shares add up to 100 %.",
                                "70 %")
                        .optional(
                                "form",
                                SchemaWords.words(List.of(BoughtFibre.Form.values()), CommonMembers::word),
                                "The form it is bought in. What is raw, green or rag is cooked first, and more of it"
                                        + " is weighed out.",
                                OmittedMembers.then(
                                        "pulp of wood, linter, abaca, sisal, jute and straw, half-stuff of rag, and"
                                                + " raw fibre of all else"),
                                "raw"));
    }

    static Object fibre() {
        return SchemaWords.anyOf(
                SchemaWords.text(),
                SchemaObject.object()
                        .meaning("A fibre of your own.")
                        .required(
                                "id",
                                SchemaWords.text(),
                                "The id values of your own are kept under; without [ ] and @.",
                                "garden-reed")
                        .required("name", SchemaWords.text(), "What it is called.", "garden reed")
                        .required(
                                "class",
                                SchemaWords.words(List.of(Fibre.SourceClass.values()), CommonMembers::word),
                                "The part of the plant it comes from.",
                                "grass")
                        .optional(
                                "kin",
                                SchemaWords.list(0, CommonMembers.MANY, SchemaWords.text()),
                                "Ids of fibres and groups of fibres whose values may stand in for it, the nearest first.",
                                OmittedMembers.is(List.of(), "values for all fibres stand in"),
                                List.of("straw", "kraft")));
    }

    static Object air() {
        return SchemaObject.object()
                .meaning("Air, by its temperature and its humidity.")
                .required(
                        "temperature",
                        SchemaWords.quantity(Kinds.TEMPERATURE),
                        "Its temperature, " + Limits.AIR_TEMPERATURE + ".",
                        "18 Cel",
                        "64 degF")
                .required(
                        "humidity",
                        SchemaWords.quantity(Kinds.RELATIVE_HUMIDITY),
                        "Its relative humidity, " + Limits.AIR_HUMIDITY + ".",
                        "58 %")
                .optional(
                        "pressure",
                        SchemaWords.quantity(Kinds.AIR_PRESSURE),
                        "Its pressure, " + Limits.AIR_PRESSURE + ".",
                        OmittedMembers.is("101.325 kPa", "that of the standard atmosphere, 101.325 kPa"),
                        "98 kPa");
    }
}
