/** A plan as a card to pin to the wall: the work in the order of the day, as text. */
@NullMarked
package org.papermath.card;

import org.jspecify.annotations.NullMarked;
