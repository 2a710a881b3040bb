package org.papermath.json;

import java.util.Objects;
import org.papermath.order.Order;
import org.papermath.order.Studio;

/**
 * What an order document holds: everything a plan is made from.
 *
 * @param order the order with its recipes
 * @param studio the studio that makes it
 */
public record OrderDocument(Order order, Studio studio) {
    /**
     * Checks that nothing is missing.
     *
     * @param order the order with its recipes
     * @param studio the studio that makes it
     */
    public OrderDocument {
        Objects.requireNonNull(order, "order");
        Objects.requireNonNull(studio, "studio");
    }

    @Override
    public String toString() {
        return order + "; in " + studio;
    }
}
