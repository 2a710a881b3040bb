package org.papermath.json.mapping;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.papermath.json.tree.JsonValue;
import org.papermath.order.Order;
import org.papermath.order.Studio;

/**
 * A plan as its document says it.
 *
 * @param edition the edition of the assumptions
 * @param order the order
 * @param studio the studio
 * @param figures what was worked out, by the names of the members, in the order written
 */
public record WrittenPlan(String edition, Order order, Studio studio, Map<String, JsonValue> figures) {
    public WrittenPlan {
        figures = Collections.unmodifiableMap(new LinkedHashMap<>(figures));
    }
}
