/**
 * Sizes, outlines and what is made of them: shrinkage, outlines of any shape, cutting layouts, calipers, squareness.
 *
 * <pre>{@code
 * Shrinkage dries = Shrinkage.across(percent(4)).along(percent(6));
 * dries.grammage(Grammage.gsm(115)); // 127.4 g/m²
 * Shrinkage.measured(mm(250), mm(350), mm(231), mm(318)); // 9.143 % along, 7.6 % across; grammage × 1.191
 * CutLayout.best(mm(300), mm(420), mm(95), mm(135), mm(0), mm(0), EnumSet.allOf(CutLayout.Edge.class)).count(); // 9
 * }</pre>
 *
 * <p>Across is the width of a thing, along its height, as it lies in front of one; shrinkage keeps to these directions.
 *
 * <p>Words of the trade that lead here: {@index area}, {@index bulk}, {@index caliper}, {@index clearance},
 * {@index cut}, {@index deckle}, {@index density}, {@index edges}, {@index envelope}, {@index free},
 * {@index grammage}, {@index layout}, {@index linear}, {@index loft}, {@index nature}, {@index parent},
 * {@index rack}, {@index restrained}, {@index shelf}, {@index shrinkage}, {@index side}, {@index size},
 * {@index stack}, {@index thickness}, {@index tight}, {@index trim}, {@index turned}.
 */
@NullMarked
package org.papermath.shape;

import org.jspecify.annotations.NullMarked;
