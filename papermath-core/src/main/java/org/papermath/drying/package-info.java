/**
 * Drying: stacks with a fan, boards, lofts and blotters, and the room that bears the water. How long it takes goes by the water
 * there is and what carries it off; how a sheet is held meanwhile says how much it shrinks.
 *
 * <pre>{@code
 * Air room = Air.of(celsius(18), RelativeHumidity.percent(58));
 * DryingModel.Batch batch = DryingModel.Batch.of(grams(218), squareMetres(3), MoistureRatio.gramsPerGram(2), MoistureRatio.percent(10),
 *         SorptionModel.standard().ratio(room));
 * batch.water(); // 0.4142 kg
 * DryingModel.standard().time(Dryer.boards("the boards", 40), batch, room); // 4.016 h, mean 3.063–6.665
 * DryingModel.standard().time(Dryer.loft("the loft", 4, 120), batch, room); // 9.73 h, mean 7.065–16.66
 * }</pre>
 *
 * <p>The bands are wide until one drying has been timed and weighed ({@code calibrate}). The water goes into the room:
 * {@link org.papermath.drying.DryingRoom} says how damp that gets.
 *
 * <p>Words of the trade that lead here: {@index balance}, {@index blotters}, {@index boards}, {@index claim},
 * {@index drain}, {@index fan}, {@index half-dry}, {@index hours}, {@index kilogram}, {@index layers},
 * {@index litres}, {@index loft}, {@index loss}, {@index per}, {@index rest}, {@index sewer}, {@index stack},
 * {@index strain}, {@index water}, {@index white-water}.
 */
@NullMarked
package org.papermath.drying;

import org.jspecify.annotations.NullMarked;
