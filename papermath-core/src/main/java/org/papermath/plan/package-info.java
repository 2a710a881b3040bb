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
 *
 * <p>Words of the trade that lead here: {@index apart}, {@index at}, {@index batch}, {@index beater},
 * {@index beating}, {@index blend}, {@index broke}, {@index broken}, {@index calendar}, {@index change},
 * {@index client}, {@index compare}, {@index correct}, {@index couched}, {@index count}, {@index date},
 * {@index days}, {@index deadline}, {@index dip}, {@index enough}, {@index felts}, {@index few}, {@index grammage},
 * {@index guests}, {@index hand}, {@index hours}, {@index households}, {@index inside}, {@index invitation},
 * {@index kept}, {@index kilo}, {@index leftover}, {@index light}, {@index mid-run}, {@index mix}, {@index more},
 * {@index most}, {@index mould}, {@index off}, {@index on}, {@index once}, {@index orders}, {@index pail},
 * {@index parcel}, {@index pieces}, {@index pile}, {@index posts}, {@index press}, {@index recharge},
 * {@index recipe}, {@index record}, {@index remake}, {@index repeat}, {@index repulp}, {@index rest}, {@index reuse},
 * {@index same}, {@index schedule}, {@index several}, {@index share}, {@index shipping}, {@index slush},
 * {@index smaller}, {@index sour}, {@index start}, {@index stock}, {@index stuff}, {@index tolerance}, {@index trim},
 * {@index weight}.
 */
@NullMarked
package org.papermath.plan;

import org.jspecify.annotations.NullMarked;
