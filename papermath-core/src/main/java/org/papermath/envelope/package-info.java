/** Envelopes: blank, folds, pocket, and whether a card fits. */
@NullMarked
package org.papermath.envelope;

import org.jspecify.annotations.NullMarked;
