/** Formats of paper and envelopes by standard and trade, and what their weights are based on: reams, single sheets. */
@NullMarked
package org.papermath.format;

import org.jspecify.annotations.NullMarked;
