/**
 * The press: its weakest part, felts and posts, solids after pressing. Sheets feel a pressure, a press is set by a force; between
 * the two stand the area of the sheets and the rating of whatever breaks first.
 *
 * <pre>{@code
 * Press press = Press.of("the press", kilonewtons(120), mm(300), mm(400)).part("frame", kilonewtons(100));
 * press.weakestPart().name(); // "frame"
 * press.forceFor(SheetPressure.kilopascals(500), squareMetres(0.12)); // 60 kN on 0.12 m²: 500 kPa
 * CouchedSheet sheet = FormedSheet.of(grams(12), mm(300), mm(400)).couched(Solids.percent(15));
 * sheet.mass(); // 80 g
 * PressingModel.standard().press(sheet, WaterRetention.gramsPerGram(1.6), SheetPressure.kilopascals(400), minutes(15)).sheet().solids(); // 30.4 %
 * }</pre>
 *
 * <p>A setting is never more than 0.8 of the weakest part that was named. It knows only the parts it was told of.
 *
 * <p>Words of the trade that lead here: {@index altitude}, {@index area}, {@index atmosphere}, {@index back},
 * {@index crush}, {@index daylight}, {@index felts}, {@index force}, {@index frame}, {@index heavy}, {@index height},
 * {@index inches}, {@index jack}, {@index lift}, {@index mercury}, {@index of}, {@index part}, {@index post},
 * {@index pressure}, {@index psi}, {@index rating}, {@index sheet}, {@index small}, {@index table}, {@index ton},
 * {@index tonnage}, {@index trolley}, {@index vacuum}, {@index weakest}, {@index weight}.
 */
@NullMarked
package org.papermath.press;

import org.jspecify.annotations.NullMarked;
