/**
 * What was measured while making, what it shows about the assumptions, and how even the sheets are, within what was agreed. A
 * record holds readings as they were read; nothing in it is worked out, so it stays true when a model changes.
 *
 * <pre>{@code
 * BatchRecord sheet = BatchRecord.builder("one sheet weighed wet and dry", LocalDate.of(2026, 3, 14))
 *         .vat("tub")
 *         .add(new Measurement.WeighedSheet(
 *                 Reading.of(grams(62), grams(0.5)), Optional.empty(), Reading.of(grams(8.1), grams(0.1)),
 *                 Reading.of(mm(310), mm(1)), Reading.of(mm(240), mm(1))))
 *         .build();
 * Assumptions known = Calibration.of(Assumptions.standard(), List.of(sheet), List.of()).assumptions();
 * Assumptions.standard().amount("web.solids-couched", Scope.at("tub"), Kinds.SOLIDS); // 0.15
 * known.amount("web.solids-couched", Scope.at("tub"), Kinds.SOLIDS); // 0.1306
 * }</pre>
 *
 * <p>What a calibration finds goes into a studio, and the next plan is that much surer. {@link org.papermath.record.CalibratingDay} finds
 * what a fibre does from one day at the beater.
 *
 * <p>Words of the trade that lead here: {@index batch}, {@index drift}, {@index grammage}, {@index hand},
 * {@index lighter}, {@index match}, {@index misprint}, {@index outlier}, {@index place}, {@index post},
 * {@index ream}, {@index repeat}, {@index scatter}, {@index series}, {@index vat}, {@index weigh}.
 */
@NullMarked
package org.papermath.record;

import org.jspecify.annotations.NullMarked;
