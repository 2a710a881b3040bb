/**
 * The sheet from the mould to the finished paper: its states, density, shrinkage, movement with humidity, surface size,
 * and what the standards for {@linkplain org.papermath.sheet.Permanence permanent paper} ask of it. A sheet keeps its oven-dry mass and
 * its sides through all its states; only what a state is asked about it knows.
 *
 * <pre>{@code
 * FormedSheet wet = FormedSheet.ofGrammage(Grammage.gsm(120), mm(240), mm(310));
 * wet.couched(Solids.percent(14)).mass(); // 63.77 g
 * PressedSheet pressed = wet.couched(Solids.percent(14)).pressed(Solids.percent(32));
 * pressed.water(); // 18.97 g
 * Shrinkage held = Shrinkage.across(percent(1)).along(percent(1));
 * DrySheet dry = pressed.dried(held, SorptionModel.standard(), Air.of(celsius(18), RelativeHumidity.percent(58)));
 * dry.width(); // 237.6 mm
 * dry.conditioned().grammage(); // 130.3 g/m²
 * }</pre>
 *
 * <p>What shrinks gets heavier to the square metre, and {@link org.papermath.sheet.DensityModel} says how thick it comes out.
 *
 * <p>Words of the trade that lead here: {@index bath}, {@index caliper}, {@index ceiling}, {@index cockle},
 * {@index counts}, {@index curing}, {@index curl}, {@index edition}, {@index extras}, {@index fibre}, {@index flat},
 * {@index gelatine}, {@index heel}, {@index ink}, {@index loft}, {@index losses}, {@index match}, {@index overs},
 * {@index pick-up}, {@index press}, {@index reject}, {@index restraint}, {@index rounding}, {@index sample},
 * {@index size}, {@index spare}, {@index thickness}, {@index trials}, {@index tub}, {@index waterleaf},
 * {@index weigh}, {@index yield}.
 */
@NullMarked
package org.papermath.sheet;

import org.jspecify.annotations.NullMarked;
