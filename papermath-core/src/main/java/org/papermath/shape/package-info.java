/**
 * Sizes, outlines and what is made of them: named formats, shrinkage, envelopes, cutting layouts, limits of the mail
 * and drawings at true scale.
 *
 * <p>Across is the width of a thing, along its height, as it lies in front of one; shrinkage keeps to these directions.
 */
@NullMarked
package org.papermath.shape;

import org.jspecify.annotations.NullMarked;
