/**
 * Pulp and what is done to it: dilution, beating, drainability, additives. One measure leads from the beater to the sheet: how far
 * the fibre is beaten says how slowly stuff drains, how much water it holds, how dense and how small the sheet dries.
 *
 * <pre>{@code
 * Pulp stock = Pulp.ofOvenDry(kilograms(1.2)).at(Consistency.percent(3));
 * stock.dilutedTo(Consistency.percent(0.6)).volume(); // 200 L
 * Furnish rag = Furnish.of(Fibres.COTTON_RAG);
 * BeatingState.after(Assumptions.standard(), rag, "the big beater", hours(3)).drainability().get(); // 37.25 °SR
 * BeatingState.after(Assumptions.standard(), rag, "the big beater", hours(6)).drainability().get(); // 51.64 °SR
 * }</pre>
 *
 * <p>A tester's reading or a timed sheet is better than hours; {@link org.papermath.pulp.BeatingState#measured} takes it. Additives are
 * dosed on oven-dry fibre, and a retention says what of them stays.
 *
 * <p>Words of the trade that lead here: {@index aliquot}, {@index backwater}, {@index bale}, {@index beater},
 * {@index bone-dry}, {@index bound}, {@index bucket}, {@index bulk}, {@index card}, {@index cent}, {@index clean},
 * {@index colour}, {@index consistency}, {@index CSF}, {@index cup}, {@index density}, {@index dose}, {@index drain},
 * {@index extrapolate}, {@index freeness}, {@index grams}, {@index heel}, {@index hours}, {@index interpolate},
 * {@index jar}, {@index kit}, {@index label}, {@index litres}, {@index load}, {@index loads}, {@index m/m},
 * {@index mass}, {@index mucilage}, {@index neri}, {@index oven-dry}, {@index pail}, {@index pails}, {@index PEO},
 * {@index per}, {@index pour}, {@index powder}, {@index pulp}, {@index range}, {@index recipe}, {@index record},
 * {@index retention}, {@index sample}, {@index scale}, {@index solution}, {@index spoon}, {@index table},
 * {@index test}, {@index thick}, {@index tint}, {@index tororo-aoi}, {@index trough}, {@index tub}, {@index upper},
 * {@index vat}, {@index volume}, {@index w/v}, {@index weight}, {@index working}.
 */
@NullMarked
package org.papermath.pulp;

import org.jspecify.annotations.NullMarked;
