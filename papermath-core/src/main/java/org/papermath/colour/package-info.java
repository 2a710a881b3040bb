/**
 * Colour: reflectance, what the eye makes of it, pigmented pulp, wet and dry, and the dose for a colour. It knows no pigment but
 * yours: swatches of more and more of it, dried and read, tell what it takes of the light and what it scatters.
 *
 * <pre>{@code
 * PulpColour white = PulpColour.of(Reflectance.of(Wavebands.THREE, 0.80, 0.78, 0.72));
 * Pigment ochre = SwatchLadder.of(Additive.of("ochre", Additive.Purpose.PIGMENT), white)
 *         .swatch(Dose.percent(1), Reflectance.of(Wavebands.THREE, 0.68, 0.56, 0.33))
 *         .swatch(Dose.percent(4), Reflectance.of(Wavebands.THREE, 0.56, 0.38, 0.14))
 *         .pigment(Assumptions.standard());
 * ochre.strongest(); // 4 %
 * }</pre>
 *
 * <p>{@link org.papermath.colour.PigmentedPulp} puts pulp and pigments together, tells the colour of doses and the doses for a colour, and
 * how far either may be off.
 *
 * <p>Words of the trade that lead here: {@index colour}, {@index dose}, {@index match}, {@index old},
 * {@index pigment}, {@index shade}, {@index sheet}.
 */
@NullMarked
package org.papermath.colour;

import org.jspecify.annotations.NullMarked;
