/** What is asked, and of what: orders of pieces, recipes, the studio, and the tolerances agreed for an order. */
@NullMarked
package org.papermath.order;

import org.jspecify.annotations.NullMarked;
