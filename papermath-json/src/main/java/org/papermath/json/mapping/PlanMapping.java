package org.papermath.json.mapping;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.papermath.evidence.Assumptions;
import org.papermath.json.DocumentFormat;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.WholeDocuments;
import org.papermath.json.tree.JsonValue;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Refused;

/** A plan: what it was made from, its settings and its forecasts. The figures are read as they are written. */
public final class PlanMapping {
    public static final DocumentFormat PLAN = new DocumentFormat("plan", 1, 0);

    private PlanMapping() {}

    /** Writes a plan as its document says it. */
    public static void write(ObjectWriter out, WrittenPlan plan) {
        out.member("edition").text(plan.edition());
        out.member("order").object(in -> OrderMapping.writeOrder(in, plan.order()));
        out.member("studio").reference(in -> StudioMapping.write(in, plan.studio()));
        plan.figures().forEach((name, figures) -> WholeDocuments.write(out.member(name), figures));
    }

    /** Returns the figures of a plan as its document would give them. */
    public static Map<String, JsonValue> figures(MakingPlan plan) {
        return PlanMembers.FIGURES.values(plan);
    }

    public static ReadResult<WrittenPlan> read(ObjectReader in) {
        if (!in.has("writtenBy")) {
            in.required("writtenBy");
        }
        ReadResult<String> edition = in.required("edition").text().check(Assumptions::edition);
        Map<String, ReadResult<JsonValue>> figures = new LinkedHashMap<>();
        Map<String, JsonValue.Type> types = PlanMembers.types();
        for (String name : in.names()) {
            JsonValue.Type type = types.get(name);
            if (type != null) {
                figures.put(name, WholeDocuments.tree(in.optional(name), type));
            }
        }
        types.keySet().forEach(in::optional);
        PieceMapping.Known known = OrderMapping.known();
        ReadResult<Studio> studio = OrderMapping.studio(in.required("studio"), known.dryers(), known.studio());
        ReadResult<Order> order = in.required("order")
                .object(object -> OrderMapping.order(object, OrderMapping.recipes(object, known), known));
        return in.make(() -> {
            String of = studio.get().assumptions().edition();
            if (!edition.get().equals(of)) {
                throw Refused.of(
                        "plan.edition",
                        "the plan says edition " + edition.get() + " and its studio edition " + of
                                + ". Write the one the figures were made with in both.",
                        "member",
                        "edition",
                        "found",
                        edition.get(),
                        "accepted",
                        List.of(of));
            }
            Map<String, JsonValue> tree = new LinkedHashMap<>();
            figures.forEach((name, figure) -> tree.put(name, figure.get()));
            return new WrittenPlan(edition.get(), order.get(), studio.get(), tree);
        });
    }

    public static void write(ObjectWriter out, MakingPlan plan) {
        String edition = plan.studio().assumptions().edition();
        write(out, new WrittenPlan(edition, plan.order(), plan.studio(), figures(plan)));
    }
}
