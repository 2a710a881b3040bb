/** True-scale drawings of blanks, layouts and decklings to print. */
@NullMarked
package org.papermath.drawing;

import org.jspecify.annotations.NullMarked;
