package org.papermath.json;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.papermath.pulp.Additive;
import org.papermath.pulp.RetentionModel;
import org.papermath.pulp.WaterRetentionModel;

import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.record.Measurement;

/** The schema of a record. */
final class RecordSchemas {
    private RecordSchemas() {
    }

    static SchemaObject record() {
        return SchemaObject.object()
                .required("name", SchemaText.text())
                .required("date", SchemaText.ref("day"))
                .optional("recipe", SchemaObject.object().required("name", SchemaText.text())
                        .required("furnish", SchemaText.ref("furnish")))
                .optional("beater", SchemaText.text())
                .optional("vat", SchemaText.text())
                .optional("press", SchemaText.text())
                .optional("dryer", SchemaText.text())
                .optional("note", SchemaText.ref("note"))
                .optional("planned", SchemaText.list(0, Common.MANY, planned()))
                .optional("measured", SchemaText.list(0, Integer.MAX_VALUE,
                        SchemaText.byWord("what", measurements())));
    }

    private static Object planned() {
        Map<String, SchemaObject> kinds = new LinkedHashMap<>();
        for (Kind<?> kind : Kinds.all()) {
            kinds.put(kind.name(), SchemaObject.object().required("figure", SchemaText.text())
                    .required("value", SchemaText.quantity(kind)));
        }
        return SchemaText.byWord("kind", kinds);
    }

    private static Map<String, SchemaObject> measurements() {
        Map<String, SchemaObject> all = new LinkedHashMap<>();
        Object mass = SchemaText.reading(Kinds.MASS);
        Object length = SchemaText.reading(Kinds.LENGTH);
        Object time = SchemaText.reading(Kinds.TIME);
        Object litre = SchemaText.reading(Kinds.FIBRE_CONCENTRATION);
        Object many = SchemaText.count(0, MeasurementMapping.MOST);
        Object some = SchemaText.count(1, MeasurementMapping.MOST);
        all.put(MeasurementMapping.MOISTURE_SAMPLE, SchemaObject.object().required("fibre", SchemaText.ref("fibre"))
                .required("asBought", mass).required("dried", mass));
        all.put(MeasurementMapping.FIBRE_WEIGHED, SchemaObject.object().required("fibre", SchemaText.ref("fibre"))
                .required("asBought", mass));
        all.put(MeasurementMapping.LOAD, SchemaObject.object()
                .required("stock", SchemaText.reading(Kinds.VOLUME)).required("time", time));
        all.put(MeasurementMapping.NUMBER_READ, SchemaObject.object().required("beating", time)
                .required("number", SchemaText.reading(Kinds.SCHOPPER_RIEGLER)));
        all.put(MeasurementMapping.FREENESS_READ, SchemaObject.object().required("beating", time)
                .required("freeness", SchemaText.reading(Kinds.CANADIAN_FREENESS)));
        all.put(MeasurementMapping.TIMED_SHEET, SchemaObject.object().required("time", time).required("depth", length)
                .required("stock", litre).required("water", SchemaText.quantity(Kinds.TEMPERATURE)));
        all.put(MeasurementMapping.VAT_FILLED, SchemaObject.object()
                .required("volume", SchemaText.reading(Kinds.VOLUME)));
        all.put(MeasurementMapping.WATER_DRIED, SchemaObject.object().required("dripping", litre)
                .required("vat", litre));
        all.put(MeasurementMapping.WEIGHED_SHEET, SchemaObject.object().required("couched", mass)
                .optional("pressed", mass).required("ovenDry", mass).required("width", length)
                .required("height", length));
        all.put(MeasurementMapping.PRESSED, SchemaObject.object()
                .optional("force", SchemaText.reading(Kinds.FORCE))
                .required("pressure", SchemaText.reading(Kinds.SHEET_PRESSURE)).required("hold", time));
        all.put(MeasurementMapping.COUNT, SchemaObject.object()
                .required("step", SchemaText.words(List.of(Measurement.Step.values()), Measurement.Step::word))
                .required("handled", some).required("rejected", many));
        all.put(MeasurementMapping.DRIED, SchemaObject.object().required("before", mass).required("after", mass)
                .required("time", time).required("ovenDry", mass).required("faces", SchemaText.quantity(Kinds.AREA))
                .required("changes", many).required("air", SchemaText.ref("air")));
        all.put(MeasurementMapping.FINISHED, SchemaObject.object().required("width", length)
                .required("height", length).required("mass", mass).optional("thickness", length)
                .optional("ovenDry", mass).required("air", SchemaText.ref("air")));
        all.put(MeasurementMapping.MARKS, SchemaObject.object().required("restraint", restraint())
                .required("wetAlong", length).required("dryAlong", length).required("wetAcross", length)
                .required("dryAcross", length));
        all.put(MeasurementMapping.HOURS, SchemaObject.object()
                .required("work", SchemaText.words(List.of(Measurement.Work.values()), Measurement.Work::word))
                .required("time", time).required("count", some));
        Object number = SchemaText.reading(Kinds.SCHOPPER_RIEGLER);
        Object share = SchemaText.reading(Kinds.SHARE);
        all.put(MeasurementMapping.COOKED, SchemaObject.object().required("fibre", SchemaText.ref("fibre"))
                .required("asBought", mass).required("stuff", mass));
        all.put(MeasurementMapping.BOTH_TESTERS, SchemaObject.object().required("number", number)
                .required("freeness", SchemaText.reading(Kinds.CANADIAN_FREENESS)));
        all.put(MeasurementMapping.WATER_SPUN, SchemaObject.object().required("number", number)
                .required("retention", SchemaText.reading(Kinds.WATER_RETENTION))
                .required("spin", SchemaText.words(List.of(WaterRetentionModel.Spin.values()), Common::word)));
        all.put(MeasurementMapping.JAR_COMPARED, SchemaObject.object().required("additive", additive())
                .required("circumstance", circumstance()).required("given", mass)
                .required("volume", SchemaText.reading(Kinds.VOLUME))
                .required("jar", SchemaText.reading(Kinds.SOLUTION_STRENGTH)));
        all.put(MeasurementMapping.BURNT, SchemaObject.object().required("additive", additive())
                .required("circumstance", circumstance()).required("dose", SchemaText.reading(Kinds.DOSE))
                .required("sheetAsh", share).required("fibreAsh", share)
                .required("residue", SchemaText.quantity(Kinds.SHARE)));
        all.put(MeasurementMapping.TWO_AIRS, SchemaObject.object()
                .required("shrunk", SchemaText.quantity(Kinds.LINEAR_SHRINKAGE)).required("first", length)
                .required("firstAir", SchemaText.ref("air")).required("second", length)
                .required("secondAir", SchemaText.ref("air")));
        return all;
    }

    private static Object additive() {
        return SchemaObject.object().required("name", SchemaText.text())
                .required("purpose", SchemaText.words(List.of(Additive.Purpose.values()), Common::word))
                .optional("active", SchemaText.quantity(Kinds.SHARE));
    }

    private static Object circumstance() {
        return SchemaText.words(List.of(RetentionModel.Circumstance.values()), Common::word);
    }

    private static Object restraint() {
        return SchemaText.anyOf(SchemaText.text(), SchemaObject.object().required("name", SchemaText.text())
                .required("subject", SchemaText.text()).required("heldAlong", SchemaText.flag())
                .required("heldAcross", SchemaText.flag()));
    }
}
