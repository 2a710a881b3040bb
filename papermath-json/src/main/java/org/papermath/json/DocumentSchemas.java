package org.papermath.json;

import java.util.List;
import java.util.Map;

import org.papermath.fibre.Fibre;
import org.papermath.plan.Piece;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Kinds;
import org.papermath.shape.EnvelopeStyle;
import org.papermath.shape.Format;
import org.papermath.shape.FormatSystem;

/** The schemas of orders, recipes and plans. */
final class DocumentSchemas {
    private DocumentSchemas() {
    }

    static SchemaObject order() {
        return whatIsOrdered(SchemaObject.object()).required("studio",
                SchemaText.referenceOr(SchemaText.ref("inline studio")));
    }

    private static SchemaObject whatIsOrdered(SchemaObject order) {
        return order.required("name", SchemaText.text())
                .optional("due", SchemaText.ref("day"))
                .optional("weighedIn", SchemaText.ref("air"))
                .required("recipes", SchemaText.list(1, Common.MANY,
                        SchemaText.referenceOr(SchemaText.ref("inline recipe"))))
                .required("pieces", SchemaText.list(1, Common.MANY, piece()));
    }

    static SchemaObject plan() {
        SchemaObject plan = SchemaObject.object()
                .required("writtenBy", SchemaText.writtenBy())
                .required("edition", SchemaText.text())
                .required("order", whatIsOrdered(SchemaObject.object()))
                .required("studio", SchemaText.referenceOr(SchemaText.ref("inline studio")));
        PlanMapping.LISTS.forEach(name -> plan.optional(name, Map.of("type", "array")));
        PlanMapping.OBJECTS.forEach(name -> plan.optional(name, Map.of("type", "object")));
        return plan;
    }

    private static SchemaObject piece() {
        Object length = SchemaText.quantity(Kinds.LENGTH);
        SchemaObject piece = SchemaObject.object()
                .required("name", SchemaText.text())
                .required("count", SchemaText.count(1, 100_000))
                .required("recipe", SchemaText.text())
                .optional("size", SchemaText.anyOf(SchemaText.text(), SchemaText.sides(), format()))
                .optional("grammage", SchemaText.quantity(Kinds.GRAMMAGE))
                .optional("caliper", length)
                .optional("sample", SchemaObject.object().required("size", SchemaText.sides())
                        .required("mass", SchemaText.quantity(Kinds.MASS)).required("thickness", length))
                .optional("spare", SchemaText.quantity(Kinds.SHARE))
                .optional("kept", SchemaText.count(0, Integer.MAX_VALUE))
                .optional("trials", SchemaText.count(0, Integer.MAX_VALUE))
                .optional("folds", SchemaText.count(0, 4))
                .optional("edge", SchemaText.words(List.of(Piece.Edge.values()), Common::word))
                .optional("trim", length)
                .optional("gap", length)
                .optional("dryer", SchemaText.text())
                .optional("envelopeFor", SchemaText.text())
                .optional("style", SchemaText.words(List.of(EnvelopeStyle.values()), EnvelopeStyle::words))
                .optional("inserts", SchemaText.count(1, 50))
                .optional("clearance", length)
                .optional("mailedIn", SchemaText.text());
        return piece.rule("oneOf", List.of(has("grammage"), has("caliper"), has("sample")))
                .rule("if", has("envelopeFor")).rule("then", has("style"))
                .rule("else", Map.of("required", List.of("size"), "properties",
                        Map.of("style", false, "inserts", false, "clearance", false)));
    }

    private static SchemaObject format() {
        return SchemaObject.object().required("name", SchemaText.text())
                .required("system", SchemaText.words(List.of(FormatSystem.values()), FormatSystem::words))
                .required("use", SchemaText.words(List.of(Format.Use.values()), Common::word))
                .required("sides", SchemaText.sides());
    }

    private static Object has(String member) {
        return Map.of("required", List.of(member));
    }

    static SchemaObject recipe() {
        return SchemaObject.object()
                .required("name", SchemaText.text())
                .required("furnish", SchemaText.ref("furnish"))
                .optional("beating", SchemaText.quantity(Kinds.TIME))
                .optional("drainability", SchemaText.quantity(Kinds.SCHOPPER_RIEGLER))
                .optional("additives", SchemaText.list(0, Common.MANY, additive()))
                .optional("beaterConsistency", SchemaText.quantity(Kinds.CONSISTENCY))
                .optional("stockConsistency", SchemaText.quantity(Kinds.CONSISTENCY))
                .optional("vatConsistency", SchemaText.quantity(Kinds.CONSISTENCY))
                .optional("sizeBath", SchemaText.quantity(Kinds.FIBRE_CONCENTRATION));
    }

    private static SchemaObject additive() {
        return SchemaObject.object()
                .required("name", SchemaText.text())
                .required("purpose", SchemaText.words(List.of(Additive.Purpose.values()), Common::word))
                .required("dose", SchemaText.quantity(Kinds.DOSE))
                .optional("active", SchemaText.quantity(Kinds.SHARE));
    }

    static Object furnish() {
        return SchemaText.list(1, 100, SchemaObject.object().required("fibre", SchemaText.ref("fibre"))
                .required("share", SchemaText.quantity(Kinds.SHARE)));
    }

    static Object fibre() {
        return SchemaText.anyOf(SchemaText.text(), SchemaObject.object()
                .required("id", SchemaText.text())
                .required("name", SchemaText.text())
                .required("class", SchemaText.words(List.of(Fibre.SourceClass.values()), Common::word))
                .optional("kin", SchemaText.list(0, Common.MANY, SchemaText.text())));
    }

    static Object air() {
        return SchemaObject.object()
                .required("temperature", SchemaText.quantity(Kinds.TEMPERATURE))
                .required("humidity", SchemaText.quantity(Kinds.RELATIVE_HUMIDITY))
                .optional("pressure", SchemaText.quantity(Kinds.AIR_PRESSURE));
    }
}
