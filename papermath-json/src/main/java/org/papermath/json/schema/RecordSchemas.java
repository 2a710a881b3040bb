package org.papermath.json.schema;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.papermath.fibre.BoughtFibre;
import org.papermath.json.mapping.CommonMembers;
import org.papermath.json.mapping.MeasurementMapping;
import org.papermath.pulp.Additive;
import org.papermath.pulp.RetentionModel;
import org.papermath.pulp.WaterRetentionModel;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.record.Measurement;

/** The schema of a record. */
public final class RecordSchemas {
    private static final Object MASS = SchemaWords.reading(Kinds.MASS);
    private static final Object LENGTH = SchemaWords.reading(Kinds.LENGTH);
    private static final Object TIME = SchemaWords.reading(Kinds.TIME);
    private static final Object LITRE = SchemaWords.reading(Kinds.FIBRE_CONCENTRATION);
    private static final Object NUMBER = SchemaWords.reading(Kinds.SCHOPPER_RIEGLER);
    private static final Object FREENESS = SchemaWords.reading(Kinds.CANADIAN_FREENESS);
    private static final Object SHARE = SchemaWords.reading(Kinds.SHARE);
    private static final Object MANY = SchemaWords.count(0, MeasurementMapping.MOST);
    private static final Object SOME = SchemaWords.count(1, MeasurementMapping.MOST);

    private RecordSchemas() {}

    public static SchemaObject record() {
        return SchemaObject.object()
                .meaning("What was done and measured in one batch. What was planned and what was measured stand apart.")
                .required("name", SchemaWords.text(), "What the batch is called.", "tide grey, first")
                .required("date", SchemaWords.ref("day"), "The day of making.", "2027-01-05")
                .optional(
                        "recipe",
                        SchemaWords.ref("inline recipe"),
                        "The recipe as it was planned; its name and its fibres will do. With its doses and hours the same"
                                + " paper can be made again.",
                        OmittedMembers.then("no value can be learnt that belongs to a fibre or a recipe"))
                .optional(
                        "lots",
                        SchemaWords.list(0, CommonMembers.MANY, lot()),
                        "The lots the materials were taken from; no material twice.",
                        OmittedMembers.is(List.of(), "not known"))
                .optional(
                        "edition",
                        SchemaWords.text(),
                        "The edition of the table of assumptions the batch was planned with.",
                        OmittedMembers.then("what has changed since cannot be said"),
                        "2026-11")
                .optional(
                        "assumptions",
                        SchemaWords.list(0, CommonMembers.MANY, StudioSchemas.assumption()),
                        "What the studio knew better than the table when the batch was planned.",
                        OmittedMembers.then("the values of the table"))
                .optional(
                        "beater",
                        SchemaWords.text(),
                        "The name of the beater.",
                        OmittedMembers.then("what is learnt holds at every beater"),
                        "the big beater")
                .optional(
                        "vat",
                        SchemaWords.text(),
                        "The name of the vat.",
                        OmittedMembers.then("what is learnt holds at every vat"),
                        "the oak vat")
                .optional(
                        "press",
                        SchemaWords.text(),
                        "The name of the press.",
                        OmittedMembers.then("what is learnt holds at every press"),
                        "the long press")
                .optional(
                        "dryer",
                        SchemaWords.text(),
                        "The name of the dryer.",
                        OmittedMembers.then("what is learnt holds at every dryer"),
                        "the boards")
                .optional(
                        "colour",
                        ColourSchemas.read(),
                        "The colour of a dried sheet of the batch; a repeat is made to it.",
                        OmittedMembers.then("a repeat is made to the colour that was wanted"))
                .optional(
                        "note",
                        SchemaWords.ref("note"),
                        "Free words, on any number of lines.",
                        OmittedMembers.is("", "none"),
                        "Rain all day.\nThe felts were wet.")
                .optional(
                        "planned",
                        SchemaWords.list(0, CommonMembers.MANY, planned()),
                        "Figures of the plan, to lie beside what was measured; no name twice.",
                        OmittedMembers.is(List.of(), "none"))
                .optional(
                        "measured",
                        SchemaWords.list(
                                0,
                                Integer.MAX_VALUE,
                                SchemaWords.byWord(
                                        "what",
                                        "What was measured. The word says which members there are.",
                                        measurements())),
                        "What was measured, in the order it was.",
                        OmittedMembers.is(List.of(), "nothing"));
    }

    private static Object lot() {
        return SchemaObject.object()
                .meaning("The lot of one material, a fibre or an additive.")
                .optional(
                        "fibre",
                        SchemaWords.ref("fibre"),
                        "The fibre.",
                        OmittedMembers.then("it is the lot of an additive"),
                        "cotton-rag")
                .optional(
                        "additive",
                        SchemaWords.text(),
                        "The name of the additive.",
                        OmittedMembers.then("it is the lot of a fibre"),
                        "slate pigment")
                .required(
                        "lot",
                        SchemaWords.anyOf(SchemaWords.text(), SchemaWords.blank()),
                        "What stands on the bale or the jar. Blank in a form, where it is no lot.",
                        "bale 3")
                .rule("oneOf", List.of(Map.of("required", List.of("fibre")), Map.of("required", List.of("additive"))));
    }

    /** A count, or a blank that was not filled in. */
    private static Object orBlank(Object count) {
        return SchemaWords.anyOf(count, SchemaWords.blank());
    }

    private static Object planned() {
        Map<String, SchemaObject> kinds = new LinkedHashMap<>();
        for (Kind<?> kind : Kinds.all()) {
            String unit = kind.codes().get(0);
            kinds.put(
                    kind.name(),
                    SchemaObject.object()
                            .meaning("A figure of the kind " + kind.name() + ".")
                            .required("figure", SchemaWords.text(), "The name of the figure.", "sheet.oven-dry")
                            .required(
                                    "value",
                                    SchemaWords.quantity(kind),
                                    "What was planned.",
                                    unit.equals("1") ? "1" : "1 " + unit));
        }
        return SchemaWords.byWord("kind", "The kind of the figure, which says its units.", kinds);
    }

    private static Map<String, SchemaObject> measurements() {
        Map<String, SchemaObject> all = new LinkedHashMap<>();
        pulp(all);
        vat(all);
        sheets(all);
        work(all);
        trials(all);
        return all;
    }

    private static void pulp(Map<String, SchemaObject> all) {
        all.put(
                MeasurementMapping.MOISTURE_SAMPLE,
                SchemaObject.object()
                        .meaning(
                                "A sample of fibre, weighed, dried in an oven until it loses no more, and weighed again.")
                        .required("fibre", SchemaWords.ref("fibre"), "The fibre.", "cotton-rag")
                        .optional(
                                "form",
                                SchemaWords.words(List.of(BoughtFibre.Form.values()), CommonMembers::word),
                                "The form the fibre was bought in.",
                                OmittedMembers.then("the usual one of the fibre"),
                                "green")
                        .required("asBought", MASS, "Its mass as bought.", reading("50 g", "0.1 g"))
                        .required("dried", MASS, "Its mass out of the oven.", reading("46.4 g", "0.1 g")));
        all.put(
                MeasurementMapping.FIBRE_WEIGHED,
                SchemaObject.object()
                        .meaning("Fibre weighed for the batch.")
                        .required("fibre", SchemaWords.ref("fibre"), "The fibre.", "cotton-rag")
                        .required("asBought", MASS, "Its mass as bought.", reading("1182 g", "1 g")));
        all.put(
                MeasurementMapping.ADDITIVE_WEIGHED,
                SchemaObject.object()
                        .meaning("An additive as it was weighed, in the order in which they went in.")
                        .required("additive", additive(), "The additive.")
                        .required("product", MASS, "The mass of the product out of the jar.", reading("25 g", "0.1 g"))
                        .optional(
                                "ovenDryFibre",
                                MASS,
                                "The oven-dry fibre it went on.",
                                OmittedMembers.then("all that was planned"),
                                reading("500 g", "5 g")));
        all.put(
                MeasurementMapping.BEATEN,
                SchemaObject.object()
                        .meaning("The hours with the roll down, as they were done.")
                        .optional(
                                "fibre",
                                SchemaWords.ref("fibre"),
                                "The fibre, where it was beaten apart from the rest.",
                                OmittedMembers.then("all fibres together"),
                                "abaca")
                        .required("time", TIME, "The time of one load.", reading("3 h", "5 min")));
        all.put(
                MeasurementMapping.LOAD,
                SchemaObject.object()
                        .meaning("A load of the beater.")
                        .required(
                                "stock",
                                SchemaWords.reading(Kinds.VOLUME),
                                "Fibre and water together.",
                                reading("37 L", "0.5 L"))
                        .required("time", TIME, "How long it was beaten.", reading("3 h", "5 min"))
                        .optional(
                                "filled",
                                SchemaWords.quantity(Kinds.SHARE),
                                "Fibre in it over that of a full load.",
                                OmittedMembers.then("the load was a full one"),
                                "70 %"));
        all.put(
                MeasurementMapping.NUMBER_READ,
                SchemaObject.object()
                        .meaning("A Schopper-Riegler number.")
                        .required(
                                "beating",
                                TIME,
                                "How long the stock had been beaten; 0 h before.",
                                reading("3 h", "5 min"))
                        .required("number", NUMBER, "The number.", reading("38 SR", "2 SR")));
        all.put(
                MeasurementMapping.FREENESS_READ,
                SchemaObject.object()
                        .meaning("A Canadian Standard freeness. It is kept as it was measured.")
                        .required(
                                "beating",
                                TIME,
                                "How long the stock had been beaten; 0 h before.",
                                reading("0 h", "0 min"))
                        .required("freeness", FREENESS, "The freeness.", reading("560 mL_CSF", "20 mL_CSF")));
    }

    private static void vat(Map<String, SchemaObject> all) {
        all.put(
                MeasurementMapping.TIMED_SHEET,
                SchemaObject.object()
                        .meaning("A sheet timed on the mould until its sheen had gone.")
                        .required("time", TIME, "The time.", reading("28 s", "1 s"))
                        .required(
                                "depth",
                                LENGTH,
                                "The depth of stock on the mould when it began.",
                                reading("24 mm", "1 mm"))
                        .required(
                                "stock", LITRE, "Oven-dry fibre in a litre of that stock.", reading("5 g/L", "0.2 g/L"))
                        .required(
                                "water",
                                SchemaWords.quantity(Kinds.TEMPERATURE),
                                "The temperature of the vat.",
                                "18 Cel"));
        all.put(
                MeasurementMapping.VAT_FILLED,
                SchemaObject.object()
                        .meaning("What was in the vat.")
                        .required("volume", SchemaWords.reading(Kinds.VOLUME), "Its volume.", reading("68 L", "1 L")));
        all.put(
                MeasurementMapping.VAT_STOOD,
                SchemaObject.object()
                        .meaning("The consistency of the stirred vat, a sample of it strained and dried.")
                        .required(
                                "consistency",
                                SchemaWords.reading(Kinds.CONSISTENCY),
                                "Oven-dry fibre over stock.",
                                reading("0.5 %", "0.01 %")));
        all.put(
                MeasurementMapping.WATER_DRIED,
                SchemaObject.object()
                        .meaning("A litre that dripped off the mould and a litre of the stirred vat, both dried.")
                        .required(
                                "dripping",
                                LITRE,
                                "Oven-dry solids in a litre that dripped off.",
                                reading("0.2 g/L", "0.02 g/L"))
                        .required("vat", LITRE, "Oven-dry solids in a litre of the vat.", reading("5 g/L", "0.1 g/L")));
    }

    private static void sheets(Map<String, SchemaObject> all) {
        all.put(
                MeasurementMapping.WEIGHED_SHEET,
                SchemaObject.object()
                        .meaning("One sheet followed from the couch through the press to the oven.")
                        .required("couched", MASS, "Its mass as couched.", reading("60 g", "0.1 g"))
                        .optional(
                                "pressed",
                                MASS,
                                "Its mass out of the press.",
                                OmittedMembers.then("nothing is learnt of the press"),
                                reading("23.5 g", "0.1 g"))
                        .required("ovenDry", MASS, "Its mass out of the oven.", reading("9.1 g", "0.01 g"))
                        .required("width", LENGTH, "Its width as couched.", reading("240 mm", "1 mm"))
                        .required("height", LENGTH, "Its height as couched.", reading("310 mm", "1 mm")));
        all.put(
                MeasurementMapping.PRESSED,
                SchemaObject.object()
                        .meaning("How a post was pressed.")
                        .optional(
                                "force",
                                SchemaWords.reading(Kinds.FORCE),
                                "The load that was read.",
                                OmittedMembers.then("only the pressure is known"),
                                reading("29 kN", "1 kN"))
                        .required(
                                "pressure",
                                SchemaWords.reading(Kinds.SHEET_PRESSURE),
                                "The pressure on the sheets.",
                                reading("390 kPa", "20 kPa"))
                        .required("hold", TIME, "How long the load was held.", reading("15 min", "10 s")));
        all.put(
                MeasurementMapping.FORMED,
                SchemaObject.object()
                        .meaning("What was formed, and what came of it.")
                        .required("sheets", orBlank(SOME), "The sheets formed, trial sheets too.", 53)
                        .required("good", orBlank(MANY), "The good pieces in the end.", 94));
        all.put(
                MeasurementMapping.COUNT,
                SchemaObject.object()
                        .meaning("Sheets or pieces counted at one step.")
                        .required(
                                "step",
                                SchemaWords.words(List.of(Measurement.Step.values()), Measurement.Step::word),
                                "The step.",
                                "pressing")
                        .required(
                                "handled",
                                orBlank(SOME),
                                "How many went through it, those rejected there with them.",
                                53)
                        .required("rejected", orBlank(MANY), "How many of them were rejected.", 2));
        all.put(
                MeasurementMapping.DRIED,
                SchemaObject.object()
                        .meaning("Sheets weighed before and after a time in the dryer, all together.")
                        .required("before", MASS, "Their mass when it began.", reading("560 g", "1 g"))
                        .required("after", MASS, "Their mass when it ended.", reading("240 g", "1 g"))
                        .required("time", TIME, "The time between.", reading("5 h", "5 min"))
                        .required("ovenDry", MASS, "Their oven-dry mass.", reading("218 g", "0.5 g"))
                        .required(
                                "faces",
                                SchemaWords.quantity(Kinds.AREA),
                                "The area of one face of all of them.",
                                "1.78 m2")
                        .required("changes", MANY, "Changes of blotters in that time; 0 where there are none.", 0)
                        .required("air", SchemaWords.ref("air"), "The air of the room."));
        all.put(
                MeasurementMapping.FINISHED,
                SchemaObject.object()
                        .meaning("A finished sheet on scale and ruler.")
                        .required("width", LENGTH, "Its width, across the mould.", reading("148 mm", "0.5 mm"))
                        .required("height", LENGTH, "Its height, along the mould.", reading("210 mm", "0.5 mm"))
                        .required("mass", MASS, "Its mass in that air.", reading("4.06 g", "0.01 g"))
                        .optional(
                                "caliper",
                                LENGTH,
                                "Its thickness.",
                                OmittedMembers.then("nothing is learnt of the density"),
                                reading("240 um", "4 um"))
                        .optional(
                                "ovenDry",
                                MASS,
                                "Its mass out of the oven, if it was dried once more.",
                                OmittedMembers.then("its moisture is worked out from the air"),
                                reading("3.75 g", "0.01 g"))
                        .required("air", SchemaWords.ref("air"), "The air it had lain in."));
        all.put(
                MeasurementMapping.MARKS,
                SchemaObject.object()
                        .meaning("Two pairs of marks on a sheet, before and after drying.")
                        .required(
                                "restraint",
                                restraint(),
                                "What held it while it dried: a word the library knows, or one of your" + " own.",
                                "board")
                        .required("wetAlong", LENGTH, "The marks along the mould, wet.", reading("200 mm", "0.5 mm"))
                        .required("dryAlong", LENGTH, "The same, dry.", reading("198.5 mm", "0.5 mm"))
                        .required("wetAcross", LENGTH, "The marks across the mould, wet.", reading("200 mm", "0.5 mm"))
                        .required("dryAcross", LENGTH, "The same, dry.", reading("198 mm", "0.5 mm")));
    }

    private static void work(Map<String, SchemaObject> all) {
        all.put(
                MeasurementMapping.HOURS,
                SchemaObject.object()
                        .meaning("The time some work took.")
                        .required(
                                "work",
                                SchemaWords.words(List.of(Measurement.Work.values()), Measurement.Work::word),
                                "The work.",
                                "forming and couching")
                        .required("time", TIME, "The time of all of it.", reading("95 min", "5 min"))
                        .required("count", orBlank(SOME), "The sheets, pieces or loads it was for.", 53));
        all.put(
                MeasurementMapping.COOKED,
                SchemaObject.object()
                        .meaning("Raw fibre or rags weighed before cooking, and what was left of them.")
                        .required("fibre", SchemaWords.ref("fibre"), "The fibre.", "flax-raw")
                        .optional(
                                "form",
                                SchemaWords.words(List.of(BoughtFibre.Form.values()), CommonMembers::word),
                                "The form the fibre was bought in.",
                                OmittedMembers.then("the usual one of the fibre"),
                                "green")
                        .required("asBought", MASS, "What was sorted and cooked, as bought.", reading("2 kg", "5 g"))
                        .required(
                                "stuff",
                                MASS,
                                "The oven-dry mass that is left for the beater.",
                                reading("1.2 kg", "20 g")));
    }

    private static void trials(Map<String, SchemaObject> all) {
        all.put(
                MeasurementMapping.BOTH_TESTERS,
                SchemaObject.object()
                        .meaning("One pulp read on both testers.")
                        .required("number", NUMBER, "Its Schopper-Riegler number.", reading("40 SR", "1 SR"))
                        .required(
                                "freeness",
                                FREENESS,
                                "Its Canadian Standard freeness.",
                                reading("300 mL_CSF", "5 mL_CSF")));
        all.put(
                MeasurementMapping.WATER_SPUN,
                SchemaObject.object()
                        .meaning("The water retention value of a sample of the stock, from a laboratory.")
                        .required(
                                "number",
                                NUMBER,
                                "The Schopper-Riegler number of the sample.",
                                reading("40 SR", "1 SR"))
                        .required(
                                "retention",
                                SchemaWords.reading(Kinds.WATER_RETENTION),
                                "Water it kept, over oven-dry fibre.",
                                reading("1.6 g/g", "0.02 g/g"))
                        .required(
                                "spin",
                                SchemaWords.words(List.of(WaterRetentionModel.Spin.values()), CommonMembers::word),
                                "How it was spun: as ISO 23714 lays down (3000 g for 30 min), or at 900 g.",
                                "iso 23714"));
        all.put(
                MeasurementMapping.JAR_COMPARED,
                given().meaning("A jar of white water held beside a row of dilutions of an additive.")
                        .required("given", MASS, "What was given of it to the vat.", reading("18.6 g", "0.1 g"))
                        .required(
                                "volume",
                                SchemaWords.reading(Kinds.VOLUME),
                                "The volume of the vat.",
                                reading("70 L", "0.5 L"))
                        .required(
                                "jar",
                                SchemaWords.reading(Kinds.SOLUTION_STRENGTH),
                                "The strength of the dilution that looks the same.",
                                reading("0.02 g/L", "0.005 g/L")));
        all.put(
                MeasurementMapping.BURNT,
                given().meaning("A sheet burnt to ash.")
                        .required(
                                "dose",
                                SchemaWords.reading(Kinds.DOSE),
                                "Filler given, on oven-dry fibre.",
                                reading("10 %", "0.1 %"))
                        .required("sheetAsh", SHARE, "Ash over the oven-dry sheet.", reading("7 %", "0.1 %"))
                        .required(
                                "fibreAsh",
                                SHARE,
                                "Ash of the fibre alone, over oven-dry fibre.",
                                reading("0.5 %", "0.05 %"))
                        .required(
                                "residue",
                                SchemaWords.quantity(Kinds.SHARE),
                                "What the filler alone leaves, over itself.",
                                "86 %"));
        all.put(
                MeasurementMapping.TWO_AIRS,
                SchemaObject.object()
                        .meaning(
                                "A strip of the finished sheet measured in two airs, after it had come to rest in each.")
                        .required(
                                "shrunk",
                                SchemaWords.quantity(Kinds.LINEAR_SHRINKAGE),
                                "What it had shrunk that way when it was dried.",
                                "1 %")
                        .required("first", LENGTH, "Its length in the first air.", reading("400 mm", "0.05 mm"))
                        .required("firstAir", SchemaWords.ref("air"), "The first air.")
                        .required("second", LENGTH, "Its length in the second air.", reading("400.8 mm", "0.05 mm"))
                        .required("secondAir", SchemaWords.ref("air"), "The second air, damper or drier."));
    }

    private static Map<String, Object> reading(String read, String error) {
        Map<String, Object> reading = new LinkedHashMap<>();
        reading.put("read", read);
        reading.put("error", error);
        return reading;
    }

    private static Object additive() {
        return SchemaObject.object()
                .meaning("The additive.")
                .required("name", SchemaWords.text(), "What it is called.", "slate pigment")
                .required(
                        "purpose",
                        SchemaWords.words(List.of(Additive.Purpose.values()), CommonMembers::word),
                        "What it is for.",
                        "pigment")
                .optional(
                        "active",
                        SchemaWords.quantity(Kinds.SHARE),
                        "Active matter in the product as it is bought.",
                        OmittedMembers.then("all of it is active"),
                        "50 %");
    }

    /** A measurement of what became of an additive. */
    private static SchemaObject given() {
        return SchemaObject.object()
                .required("additive", additive(), "The additive.")
                .required(
                        "circumstance",
                        SchemaWords.words(List.of(RetentionModel.Circumstance.values()), CommonMembers::word),
                        "What helped to keep it in the sheet.",
                        "with aid");
    }

    private static Object restraint() {
        return SchemaWords.anyOf(
                SchemaWords.text(),
                SchemaObject.object()
                        .meaning("What holds a sheet, in your own words.")
                        .required("name", SchemaWords.text(), "What it is called.", "on a drum")
                        .required("subject", SchemaWords.text(), "The name values are kept under.", "drum")
                        .required("heldAlong", SchemaWords.flag(), "Whether it holds along the mould.", true)
                        .required("heldAcross", SchemaWords.flag(), "Whether it holds across the mould.", false));
    }
}
