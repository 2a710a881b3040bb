/** Formats of paper and envelopes by standard and trade: names, sides, what they are for. */
@NullMarked
package org.papermath.format;

import org.jspecify.annotations.NullMarked;
