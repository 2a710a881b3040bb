package org.papermath.json;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.papermath.evidence.Basis;
import org.papermath.quantity.Kinds;

/** The schema of a studio. */
final class StudioSchemas {
    private StudioSchemas() {
    }

    static SchemaObject studio() {
        return SchemaObject.object()
                .required("name", SchemaText.text())
                .optional("beater", named().required("trough", SchemaText.quantity(Kinds.VOLUME))
                        .required("ratedLoad", SchemaText.quantity(Kinds.MASS)))
                .optional("vat", named().required("volume", SchemaText.quantity(Kinds.VOLUME))
                        .optional("temperature", SchemaText.quantity(Kinds.TEMPERATURE)))
                .optional("moulds", many(mould()))
                .optional("press", press())
                .optional("felts", SchemaObject.object().required("size", SchemaText.sides())
                        .required("grammage", SchemaText.quantity(Kinds.GRAMMAGE))
                        .required("count", SchemaText.count(2, EquipmentMapping.MANY)))
                .optional("dryers", many(dryer()))
                .optional("room", SchemaText.ref("air"))
                .optional("onHand", many(SchemaObject.object().required("fibre", SchemaText.ref("fibre"))
                        .required("ovenDry", SchemaText.quantity(Kinds.MASS))))
                .optional("scaleStep", SchemaText.quantity(Kinds.MASS))
                .optional("fineScaleStep", SchemaText.quantity(Kinds.MASS))
                .optional("jugStep", SchemaText.quantity(Kinds.VOLUME))
                .optional("workingDay", SchemaText.quantity(Kinds.TIME))
                .optional("customaryUnits", SchemaText.flag())
                .optional("edition", SchemaText.text())
                .optional("assumptions", many(assumption()));
    }

    private static SchemaObject named() {
        return SchemaObject.object().required("name", SchemaText.text());
    }

    private static Object many(Object item) {
        return SchemaText.list(0, Common.MANY, item);
    }

    private static SchemaObject mould() {
        return named().required("opening", SchemaText.sides()).optional("split", SchemaObject.object()
                .required("across", SchemaText.count(1, 100))
                .required("along", SchemaText.count(1, 100))
                .required("strip", SchemaText.quantity(Kinds.LENGTH)));
    }

    private static SchemaObject press() {
        return named().required("jack", SchemaText.quantity(Kinds.FORCE))
                .required("platen", SchemaText.sides())
                .optional("parts", many(named().required("rating", SchemaText.quantity(Kinds.FORCE))))
                .optional("daylight", SchemaText.quantity(Kinds.LENGTH));
    }

    private static Object dryer() {
        Object many = SchemaText.count(1, EquipmentMapping.MANY);
        Map<String, SchemaObject> kinds = new LinkedHashMap<>();
        kinds.put(EquipmentMapping.FAN_STACK, named().required("capacity", many)
                .required("freeAirFlow", SchemaText.quantity(Kinds.VOLUME_FLOW)));
        kinds.put(EquipmentMapping.BOARDS, named().required("capacity", many));
        kinds.put(EquipmentMapping.LOFT, named().required("capacity", many).required("sheetsInSpur", many));
        kinds.put(EquipmentMapping.BLOTTERS, named().required("capacity", many));
        return SchemaText.byWord("kind", kinds);
    }

    private static Object assumption() {
        Object value = SchemaText.anyOf(Map.of("type", "number"), SchemaText.text());
        return SchemaObject.object()
                .required("id", SchemaText.text())
                .optional("fibre", SchemaText.text())
                .optional("subject", SchemaText.text())
                .optional("at", SchemaText.text())
                .required("value", value)
                .optional("low", value)
                .optional("high", value)
                .optional("unit", SchemaText.text())
                .optional("basis", SchemaText.words(List.of(Basis.values()), Basis::word))
                .optional("source", SchemaText.text())
                .rule("dependentRequired", Map.of("low", List.of("high"), "high", List.of("low")))
                .rule("not", Map.of("required", List.of("fibre", "subject")));
    }
}
