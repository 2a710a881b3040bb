package org.papermath.json.schema;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.papermath.cost.OwnLine;
import org.papermath.cost.Postage;
import org.papermath.cost.Wear;
import org.papermath.fibre.Alkali;
import org.papermath.json.mapping.CommonMembers;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;

/** The schemas of lists of prices and of quotations. Money and prices are texts; what they say only the reader sees. */
public final class PriceSchemas {
    private static final OmittedMembers GAP =
            OmittedMembers.then("it has no price, which is told where a plan needs it");

    private PriceSchemas() {}

    public static SchemaObject prices() {
        SchemaObject prices = SchemaObject.object()
                .meaning("What a studio pays for fibre, additives, water, current and hands, on a day.")
                .required("name", SchemaWords.text(), "What the list is called.", "winter 2026")
                .required("date", SchemaWords.ref("day"), "The day its prices are of.", "2026-11-01")
                .required(
                        "currency",
                        SchemaWords.text(),
                        "The currency of all its prices, by its code of three letters.",
                        "EUR");
        stuff(prices);
        work(prices);
        return prices.optional(
                        "overheads",
                        SchemaWords.list(0, CommonMembers.MANY, overhead()),
                        "What the studio costs whether an order is made or not.",
                        OmittedMembers.then("there is none"))
                .optional(
                        "lines",
                        SchemaWords.list(0, CommonMembers.MANY, line()),
                        "Lines of your own.",
                        OmittedMembers.then("there is none"))
                .optional(
                        "postage",
                        postage(),
                        "What a carrier asks, as the studio has read it; in the currency of the list.",
                        OmittedMembers.then("nothing is posted"))
                .optional(
                        "posted",
                        SchemaWords.list(0, CommonMembers.MANY, posted()),
                        "How pieces are posted by that table, which must then be there.",
                        OmittedMembers.then("nothing is posted"));
    }

    private static SchemaObject postage() {
        String source = "Where it was read, so that it can be looked up again.";
        return SchemaObject.object()
                .meaning(
                        "Steps by mass of each service, and surcharges. Of a service those hold whose day is the last one not"
                                + " after the day of posting.")
                .required("carrier", SchemaWords.text(), "Who carries.", "the post")
                .required(
                        "rates",
                        SchemaWords.list(
                                1,
                                CommonMembers.MANY,
                                SchemaObject.object()
                                        .meaning("A step of a service. None twice.")
                                        .required(
                                                "from", SchemaWords.ref("day"), "The day it holds from.", "2027-01-01")
                                        .required("service", SchemaWords.text(), "The service.", "letter")
                                        .required(
                                                "upTo",
                                                SchemaWords.quantity(Kinds.MASS),
                                                "The most it holds for, with it, above zero.",
                                                "50 g")
                                        .required("price", SchemaWords.text(), "The price of one.", "1.40 EUR")
                                        .required("source", SchemaWords.text(), source, "leaflet of the counter")),
                        "The steps.")
                .optional(
                        "surcharges",
                        SchemaWords.list(
                                0,
                                CommonMembers.MANY,
                                SchemaObject.object()
                                        .meaning("What is asked besides. None twice.")
                                        .required(
                                                "from", SchemaWords.ref("day"), "The day it holds from.", "2027-01-01")
                                        .required("service", SchemaWords.text(), "The service.", "letter")
                                        .required("name", SchemaWords.text(), "What it is for.", "square")
                                        .required("price", SchemaWords.text(), "The price each time.", "0.70 EUR")
                                        .required("source", SchemaWords.text(), source, "leaflet of the counter")),
                        "Surcharges.",
                        OmittedMembers.then("there are none"));
    }

    private static Object posted() {
        Map<String, SchemaObject> bases = new LinkedHashMap<>();
        for (Postage.Basis basis : Postage.Basis.values()) {
            SchemaObject posted = SchemaObject.object().meaning("Postage " + basis.words() + ".");
            if (basis != Postage.Basis.MAILED) {
                posted.required("service", SchemaWords.text(), "The service, as the table has it.", "letter");
            }
            if (basis == Postage.Basis.PARCEL) {
                posted.required("pieces", SchemaWords.count(Limits.PIECES), "Pieces in a parcel.", 50)
                        .optional(
                                "wrapping",
                                SchemaWords.quantity(Kinds.MASS),
                                "The mass of box and wrapping, above zero.",
                                OmittedMembers.then("it weighs nothing"),
                                "350 g");
            }
            posted.optional(
                            "surcharges",
                            SchemaWords.list(0, CommonMembers.MANY, SchemaWords.text()),
                            "Surcharges that come with each, as the table has them.",
                            OmittedMembers.then("there are none"),
                            List.of("square"))
                    .optional(
                            "only",
                            SchemaWords.text(),
                            "The one piece of an order it is for.",
                            OmittedMembers.then("it is for all pieces"),
                            "programme");
            bases.put(CommonMembers.word(basis), posted);
        }
        return SchemaWords.byWord("per", "What is posted at a time.", bases);
    }

    private static void stuff(SchemaObject prices) {
        String price = "Money per mass as it is sold; with the word pack behind the amount, whole packs are paid for.";
        prices.optional(
                        "fibres",
                        SchemaWords.list(
                                0,
                                CommonMembers.MANY,
                                SchemaObject.object()
                                        .meaning("The price of a fibre.")
                                        .required(
                                                "fibre",
                                                SchemaWords.text(),
                                                "The name of the fibre, as on the list of what to buy; with its form in brackets"
                                                        + " where the price is of that form only. No name twice.",
                                                "cotton rag (half-stuff)")
                                        .required("price", SchemaWords.text(), price, "14 EUR per kg")),
                        "Fibre as it is bought, with its water.",
                        GAP)
                .optional(
                        "additives",
                        SchemaWords.list(
                                0,
                                CommonMembers.MANY,
                                SchemaObject.object()
                                        .meaning("The price of an additive.")
                                        .required(
                                                "additive",
                                                SchemaWords.text(),
                                                "The name of the additive, as recipes have it. No name twice.",
                                                "china clay")
                                        .required("price", SchemaWords.text(), price, "3.80 EUR per 1 kg pack")),
                        "Additives as they are sold.",
                        GAP)
                .optional(
                        "alkalis",
                        SchemaWords.list(
                                0,
                                CommonMembers.MANY,
                                SchemaObject.object()
                                        .meaning("The price of an alkali.")
                                        .required(
                                                "alkali",
                                                SchemaWords.words(List.of(Alkali.values()), CommonMembers::word),
                                                "The alkali, pure and dry. No one twice.",
                                                "soda ash")
                                        .required("price", SchemaWords.text(), price, "2.90 EUR per kg")),
                        "What raw fibre is cooked in.",
                        GAP)
                .optional("size", SchemaWords.text(), "The dry size of the bath.", GAP, "31 EUR per kg")
                .optional("water", SchemaWords.text(), "Water that comes in.", GAP, "2.10 EUR per m3")
                .optional("drain", SchemaWords.text(), "Water that goes down the drain.", GAP, "3.05 EUR per m3");
    }

    private static void work(SchemaObject prices) {
        OmittedMembers power = OmittedMembers.then("the current is not priced, which is told where a plan needs it");
        prices.optional("energy", SchemaWords.text(), "Current.", GAP, "0.314 EUR per kW.h")
                .optional(
                        "beaterPower",
                        SchemaWords.quantity(Kinds.POWER),
                        "The power the motor of the beater takes under load, above zero.",
                        power,
                        "750 W")
                .optional(
                        "dryerPower",
                        SchemaWords.quantity(Kinds.POWER),
                        "The power of the fan or heater of the dryer, above zero.",
                        power,
                        "60 W")
                .optional("hands", SchemaWords.text(), "An hour of hands on the work.", GAP, "24 EUR per h")
                .optional(
                        "machine",
                        SchemaWords.text(),
                        "An hour in which the beater runs and somebody is near. Waiting has no rate.",
                        GAP,
                        "3 EUR per h")
                .optional(
                        "cleaning",
                        SchemaWords.quantity(Kinds.TIME),
                        "Hours of hands a batch takes besides what the plan counts, above zero.",
                        OmittedMembers.then("there are none"),
                        "1.5 h")
                .optional("felt", wear(), "A felt, worn by each pressing.", GAP)
                .optional("blotter", wear(), "A blotter, worn each time it is laid.", GAP);
    }

    private static SchemaObject wear() {
        return SchemaObject.object()
                .meaning("Something that lasts for many uses.")
                .required("price", SchemaWords.text(), "The price of one, or of so many.", "4.20 EUR per piece")
                .required("uses", SchemaWords.count(1, Wear.MOST_USES), "How many uses one lasts.", 400);
    }

    private static SchemaObject overhead() {
        OmittedMembers other = OmittedMembers.then("one of the other two says how an order takes its part");
        return SchemaObject.object()
                .meaning("An overhead, by the hour, by the day or on cost.")
                .required("name", SchemaWords.text(), "What it is for.", "rent")
                .optional(
                        "perHour",
                        SchemaWords.text(),
                        "Money per hours of hands; that of a month over the hours worked in one.",
                        other,
                        "620 EUR per 120 h")
                .optional("perDay", SchemaWords.text(), "Money of a working day.", other, "40.00 EUR")
                .optional(
                        "onCost",
                        SchemaWords.text(),
                        "A share on all other lines. A bare per cent is asked back.",
                        other,
                        "15 % on cost")
                .rule(
                        "oneOf",
                        List.of(
                                Map.of("required", List.of("perHour")),
                                Map.of("required", List.of("perDay")),
                                Map.of("required", List.of("onCost"))));
    }

    private static Object line() {
        Map<String, SchemaObject> bases = new LinkedHashMap<>();
        for (OwnLine.Basis basis : OwnLine.Basis.values()) {
            SchemaObject line = SchemaObject.object()
                    .meaning("A line of your own that comes " + basis.words() + ".")
                    .required("name", SchemaWords.text(), "What it is for.", "postage")
                    .required("money", SchemaWords.text(), "The money each time.", "7.90 EUR");
            if (basis == OwnLine.Basis.PARCEL) {
                line.required("pieces", SchemaWords.count(Limits.PIECES), "Pieces in a parcel.", 50);
            }
            if (basis != OwnLine.Basis.ORDER && basis != OwnLine.Basis.BATCH) {
                line.optional(
                        "only",
                        SchemaWords.text(),
                        "The one piece of an order it comes with.",
                        OmittedMembers.then("it comes with all pieces"),
                        "programme");
            }
            bases.put(CommonMembers.word(basis), line);
        }
        return SchemaWords.byWord("per", "What it comes with.", bases);
    }

    public static SchemaObject quotation() {
        return SchemaObject.object()
                .meaning("What is offered to a customer, and how long it holds. Its sums follow from its lines.")
                .required("name", SchemaWords.text(), "What is offered.", "midwinter concert")
                .required("studio", SchemaWords.text(), "Who offers it.", "a one-room studio")
                .required("date", SchemaWords.ref("day"), "The day it was made.", "2026-11-28")
                .required(
                        "holdsUntil",
                        SchemaWords.ref("day"),
                        "The last day it holds, not before the day it was made.",
                        "2026-12-28")
                .required("currency", SchemaWords.text(), "The currency, by its code of three letters.", "EUR")
                .required(
                        "lines",
                        SchemaWords.list(1, CommonMembers.MANY, offered()),
                        "The pieces that are offered; no name twice.")
                .optional(
                        "leastOrder",
                        SchemaWords.text(),
                        "What is asked where the pieces come to less.",
                        OmittedMembers.then("the sum of the pieces is asked"),
                        "250.00 EUR")
                .optional(
                        "tax",
                        SchemaObject.object()
                                .meaning("A tax on the sum.")
                                .required("name", SchemaWords.text(), "What it is called.", "sales tax")
                                .required("share", SchemaWords.quantity(Kinds.SHARE), "Its share of the sum.", "19 %"),
                        "A tax on the sum, as the studio has to put it.",
                        OmittedMembers.then("no tax is put"))
                .optional(
                        "deposit",
                        SchemaWords.quantity(Kinds.SHARE),
                        "The part of what is to be paid that comes with the order.",
                        OmittedMembers.then("nothing is asked before"),
                        "40 %")
                .optional(
                        "restsOn",
                        SchemaWords.text(),
                        "What the promises rest on.",
                        OmittedMembers.then("nothing is said of it"),
                        "table of assumptions 2026-11")
                .optional(
                        "note",
                        SchemaWords.text(),
                        "A note to the customer, on one line.",
                        OmittedMembers.then("there is none"),
                        "No two sheets by hand are quite alike.");
    }

    private static SchemaObject offered() {
        return SchemaObject.object()
                .meaning("One piece that is offered.")
                .required("piece", SchemaWords.text(), "The name of the piece.", "programme")
                .required("count", SchemaWords.count(Limits.PIECES), "How many.", 70)
                .required("price", SchemaWords.text(), "The price of one.", "12.50 EUR")
                .optional(
                        "promised",
                        SchemaWords.list(0, CommonMembers.MANY, SchemaWords.text()),
                        "What is promised of it, a sentence each.",
                        OmittedMembers.then("nothing is promised"),
                        List.of("weight 130 g/m²"))
                .optional(
                        "seconds",
                        SchemaWords.text(),
                        "The price of one that is not of the first choice, not above the other.",
                        OmittedMembers.then("none are offered"),
                        "10.60 EUR");
    }
}
