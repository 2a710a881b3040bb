/**
 * Fibre: what it is, what is known of it, how it is bought and what a furnish is made of. The work begins at the scale, and what
 * the scale shows is fibre and water; every sum of the library is in oven-dry fibre.
 *
 * <pre>{@code
 * BoughtFibre rag = BoughtFibre.of(Fibres.COTTON_RAG, BoughtFibre.Form.HALF_STUFF).withSample(grams(50), grams(46.4));
 * rag.moisture().get(); // 7.2 %
 * rag.asBought(grams(900), Assumptions.standard()); // 969.8 g
 * rag.ovenDry(grams(970), Assumptions.standard()); // 900.2 g
 * }</pre>
 *
 * <p>Raw fibre is cooked first and loses by it. A fibre of which a value is not known takes that of its kin, then the general one, and
 * is refused where there is none.
 *
 * <p>Words of the trade that lead here: {@index alkali}, {@index bark}, {@index base}, {@index blend}, {@index buy},
 * {@index cent}, {@index consistency}, {@index convention}, {@index cook}, {@index cooking}, {@index dip},
 * {@index dose}, {@index dry}, {@index furnish}, {@index grammage}, {@index heel}, {@index hours}, {@index inverse},
 * {@index kozo}, {@index label}, {@index lift}, {@index liquor}, {@index lye}, {@index mix}, {@index moisture},
 * {@index oven-dry}, {@index per}, {@index pot}, {@index raw}, {@index shares}, {@index solution}, {@index stack},
 * {@index water}, {@index weighing}, {@index weight}, {@index wet}, {@index yield}.
 */
@NullMarked
package org.papermath.fibre;

import org.jspecify.annotations.NullMarked;
