/** What is asked, and of what: orders of pieces, recipes, and the studio. */
@NullMarked
package org.papermath.order;

import org.jspecify.annotations.NullMarked;
