/** Numeric tools: roots, least squares, polygons. They know nothing of paper. */
@NullMarked
package org.papermath.numeric;

import org.jspecify.annotations.NullMarked;
