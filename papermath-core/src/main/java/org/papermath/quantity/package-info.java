/**
 * Quantities of a named kind: amounts, units, reading and printing, and the exceptions every door throws.
 *
 * <p>Every per cent has the same dimension, so a {@linkplain org.papermath.quantity.Kind kind} keeps consistency,
 * moisture, dose and shrinkage apart: at compile time by the type parameter, at run time by the kind an
 * {@linkplain org.papermath.quantity.Amount amount} carries.
 */
@NullMarked
package org.papermath.quantity;

import org.jspecify.annotations.NullMarked;
