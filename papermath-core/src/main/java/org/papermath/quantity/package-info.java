/**
 * Quantities of a named kind: amounts, units, reading and printing, and the exceptions every door throws.
 *
 * <pre>{@code
 * Amount<Grammage> cover = Kinds.GRAMMAGE.read("250 g/m2");
 * cover; // 250 g/m²
 * Kinds.LENGTH.read("5 1/2 in").to("mm"); // 139.7 mm
 * Units.print(mm(148).to("in")); // "5.826771653543307 in"
 * }</pre>
 *
 * <p>Every per cent has the same dimension, so a {@linkplain org.papermath.quantity.Kind kind} keeps consistency,
 * moisture, dose and shrinkage apart: at compile time by the type parameter, at run time by the kind an
 * {@linkplain org.papermath.quantity.Amount amount} carries. What is out of range is {@linkplain org.papermath.quantity.Refused refused},
 * what may mean two things is {@linkplain org.papermath.quantity.Unclear asked back}; nothing is guessed.
 *
 * <p>Words of the trade that lead here: {@index basis}, {@index compare}, {@index convert}, {@index count},
 * {@index dry}, {@index force}, {@index fraction}, {@index helpers}, {@index inch}, {@index jack}, {@index least},
 * {@index moisture}, {@index most}, {@index ounce}, {@index overlap}, {@index pound}, {@index pounds},
 * {@index press}, {@index range}, {@index ratio}, {@index ream}, {@index solids}, {@index ton}, {@index weight},
 * {@index wet}.
 */
@NullMarked
package org.papermath.quantity;

import org.jspecify.annotations.NullMarked;
