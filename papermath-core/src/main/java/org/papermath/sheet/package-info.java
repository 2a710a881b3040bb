/**
 * The sheet from the mould to the finished paper: its states, density, shrinkage, movement with humidity, surface size,
 * and what the standards for {@linkplain org.papermath.sheet.Permanence permanent paper} ask of it.
 */
@NullMarked
package org.papermath.sheet;

import org.jspecify.annotations.NullMarked;
