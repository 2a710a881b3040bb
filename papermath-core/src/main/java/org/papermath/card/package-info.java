/**
 * A plan as a card to pin to the wall: a page to set up by, then the work in its order, as text or as a page to print.
 *
 * <pre>{@code
 * MakingCard card = MakingCard.of(MakingPlan.of(order, studio));
 * card.lines().get(0).startsWith("MAKING CARD  midwinter concert"); // true
 * card.lines().contains("[ ] felts damp, not dripping, before couching"); // true
 * card.page().startsWith("<!DOCTYPE html>"); // true
 * }</pre>
 *
 * <p>Each line is of one kind and says so by its mark: a setting, a forecast, a check, or a caution.
 */
@NullMarked
package org.papermath.card;

import org.jspecify.annotations.NullMarked;
