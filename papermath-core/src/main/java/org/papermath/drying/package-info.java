/** Drying: stacks with a fan, boards, lofts and blotters, and the room that bears the water. */
@NullMarked
package org.papermath.drying;

import org.jspecify.annotations.NullMarked;
