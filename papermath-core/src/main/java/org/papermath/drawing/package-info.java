/** True-scale drawings of blanks, layouts and decklings to print, and days of work as bars. */
@NullMarked
package org.papermath.drawing;

import org.jspecify.annotations.NullMarked;
