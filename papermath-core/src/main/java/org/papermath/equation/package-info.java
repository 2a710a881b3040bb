/** Every equation once, as functions of plain numbers in coherent SI. */
@NullMarked
package org.papermath.equation;

import org.jspecify.annotations.NullMarked;
