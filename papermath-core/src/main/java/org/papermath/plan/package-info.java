/**
 * From an order and a studio to the plan of the making: settings, forecasts, card. A setting is what to do and has no band; a
 * forecast is what will come out, as far as it is known.
 *
 * <pre>{@code
 * MakingPlan plan = MakingPlan.of(order, studio);
 * plan.batch("tide grey").fibre().ovenDry(); // 1602 g
 * plan.piece("programme").counts().sheets(); // 53
 * plan.piece("programme").vat().every(); // 5
 * plan.piece("programme").finished().grammage().likely(); // 130.5 g/m²
 * plan.piece("programme").sizingStage().isDone(); // false
 * plan.sensitivity().get(0).measurement(); // "weigh one sheet couched, pressed and dry"
 * }</pre>
 *
 * <p>Each stage that may be missing has two accessors: {@code vat()} gives its content or throws, {@code vatStage()} can be asked.
 * {@code notices()} says what a plan should not be read without, {@code balances()} where everything goes, {@code sensitivity()} what
 * to measure first. {@link org.papermath.plan.AtTheVat} takes a plan on in mid-run, {@link org.papermath.plan.Schedule} into the days.
 */
@NullMarked
package org.papermath.plan;

import org.jspecify.annotations.NullMarked;
