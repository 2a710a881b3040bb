/**
 * The sheet from the mould to the finished paper: its states, density, shrinkage, movement with humidity, surface size.
 */
@NullMarked
package org.papermath.sheet;

import org.jspecify.annotations.NullMarked;
