/**
 * Air and water: the state of room air, the properties of water. Drying asks how much water the air takes, draining how thick the
 * water is; both are told by what a thermometer and a hygrometer show.
 *
 * <pre>{@code
 * Air room = Air.of(celsius(18), RelativeHumidity.percent(58));
 * room.dewPoint(); // 9.623 °C
 * room.humidityRatio(); // 7.437 g/kg
 * room.condensesOn(celsius(8)); // true
 * }</pre>
 *
 * <p>Paper comes to rest with the air it lies in ({@link org.papermath.fibre.SorptionModel}); what a grammage is told for is
 * {@linkplain org.papermath.air.Air#reference() 23 °C and 50 %}, unless an order names other air.
 *
 * <p>Words of the trade that lead here: {@index air-dry}, {@index conditioned}, {@index humidity},
 * {@index hygrometer}, {@index moisture}.
 */
@NullMarked
package org.papermath.air;

import org.jspecify.annotations.NullMarked;
