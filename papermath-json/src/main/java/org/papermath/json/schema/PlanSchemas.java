package org.papermath.json.schema;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.papermath.json.mapping.PlanFigures;
import org.papermath.json.mapping.PlanMembers;

/**
 * What the figures of a plan mean. The reader takes them as they are, so nothing is asked of them here: a schema with
 * descriptions only.
 */
final class PlanSchemas {
    private PlanSchemas() {}

    /** Returns the definition of what several figures are made of; none if the name is none of theirs. */
    static @Nullable Object definition(String name) {
        return switch (name) {
            case "forecast" -> PlanFigures.FORECAST.schema();
            case "not-done" -> PlanFigures.NOT_DONE.schema();
            case "notice" -> PlanFigures.NOTICE.schema();
            default -> null;
        };
    }

    /** Adds the figures to the schema of a plan. */
    static void figures(SchemaObject plan) {
        PlanMembers.FIGURES.all().forEach(one -> {
            Map<String, Object> schema = new LinkedHashMap<>();
            schema.put("type", one.isList() ? "array" : "object");
            schema.putAll(one.sort().schema());
            plan.figure(one.name(), schema, one.meaning());
        });
    }
}
