/**
 * What an order costs the studio, and what to ask for it: money to the smallest coin, a list of prices, the costs of a plan
 * line by line, prices, and a quotation. It reads plans; nothing in a plan knows of it, and no price is the library's own.
 *
 * <pre>{@code
 * Currency euro = Currency.getInstance("EUR");
 * PriceList prices = PriceList.of("winter 2026", LocalDate.of(2026, 11, 1), euro)
 *         .fibre(Fibres.COTTON_RAG, MoneyRate.read(Kinds.MASS, "14 EUR per kg"))
 *         .hands(MoneyRate.read(Kinds.TIME, "24 EUR per h"))
 *         .build();
 * Costing costing = Costing.of(MakingPlan.of(order, studio), prices);
 * costing.isAtLeast(); // true
 * costing.gaps().get(0).what(); // "raw flax"
 * Profit.read("20 % on cost").priceOf(Money.of("4290 EUR")); // 5148.00 EUR
 * }</pre>
 *
 * <p>Every line of a costing is rounded to the smallest unit of the currency once; sums of lines are exact, and what is shared
 * out comes to the whole. Whatever a plan needs and the list has no price of is told, and the cost is then "at least".
 *
 * <p>Words of the trade that lead here: {@index charge}, {@index cost}, {@index hours}, {@index margin},
 * {@index overhead}, {@index price}, {@index quotation}, {@index sheet}.
 */
@NullMarked
package org.papermath.cost;

import org.jspecify.annotations.NullMarked;
