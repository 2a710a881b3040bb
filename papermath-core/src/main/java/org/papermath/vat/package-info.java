/**
 * The vat: its charge, the run sheet by sheet, recharges, drainage on the mould. A sheet takes stock away and lets thinner water
 * drain back, so the vat thins from sheet to sheet; a recharge brings it back before that is felt.
 *
 * <pre>{@code
 * Pulp full = Pulp.ofVolume(litres(45), Consistency.percent(0.6));
 * VatCharge vat = VatCharge.from(Assumptions.standard(), Scope.GENERAL, full, kilograms(1.2));
 * vat.firstSheet(); // 7.092 g
 * vat.pull(6).change(6); // -12.04 %
 * vat.sheetsWithin(vat.firstSheet(), Share.percent(5)); // 3
 * VatRun kept = vat.pull(30, Recharge.within(vat, grams(6.8), Share.percent(5), 30, Consistency.percent(2.5), Recharge.Level.HELD));
 * kept.recharge().every(); // 4
 * }</pre>
 *
 * <p>Fibre, water and additives are balanced exactly, sheet by sheet; a vat that would run dry is refused, with the sheet. What a
 * weighed sheet says in mid-run is put right by {@link org.papermath.vat.VatRun#correct}.
 *
 * <p>Words of the trade that lead here: {@index bail}, {@index balance}, {@index bucket}, {@index charge},
 * {@index dip}, {@index drift}, {@index hose}, {@index jug}, {@index level}, {@index lift}, {@index litres},
 * {@index mark}, {@index mould}, {@index pail}, {@index recharge}, {@index scoop}, {@index size}, {@index thin},
 * {@index top-up}, {@index tub}, {@index vat}, {@index water}.
 */
@NullMarked
package org.papermath.vat;

import org.jspecify.annotations.NullMarked;
