/**
 * Where numbers come from: assumptions with their scope, role, band and source; estimates, readings and notices. No model has a
 * constant of its own; each asks the table, and says with its answer how well it was known.
 *
 * <pre>{@code
 * Assumption kept = Assumptions.standard().get("vat.retention", Fibres.ABACA.scope());
 * kept.likely(); // 0.97
 * kept.basis().word(); // "common practice"
 * Assumptions own = Assumptions.standard().given("vat.retention", Fibres.ABACA.scope().on("tub"), 0.95);
 * own.get("vat.retention", Fibres.ABACA.scope().on("tub")).likely(); // 0.95
 * own.get("vat.retention", Fibres.KOZO.scope().on("tub")).likely(); // 0.985
 * }</pre>
 *
 * <p>The narrowest scope that fits is taken: a fibre in a vessel, then the fibre, then the general row. A physical value is varied in
 * bands and can be measured; a habit is a default setting; a limit is neither.
 *
 * <p>Words of the trade that lead here: {@index caliper}, {@index gram}, {@index kilograms}, {@index label},
 * {@index list}, {@index micrometre}, {@index mil}, {@index misprint}, {@index odd}, {@index ounce}, {@index pound},
 * {@index pounds}, {@index rounded}, {@index stated}, {@index table}, {@index thickness}, {@index twice}.
 */
@NullMarked
package org.papermath.evidence;

import org.jspecify.annotations.NullMarked;
