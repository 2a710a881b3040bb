/**
 * The mould, its deckle, and how many pieces are formed on it at a time.
 */
@NullMarked
package org.papermath.mould;

import org.jspecify.annotations.NullMarked;
