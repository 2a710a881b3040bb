package org.papermath.json;

import org.papermath.order.Order;
import org.papermath.order.Studio;

/**
 * What an order document holds: everything a plan is made from.
 *
 * @param order the order with its recipes
 * @param studio the studio that makes it
 */
public record OrderDocument(Order order, Studio studio) {}
