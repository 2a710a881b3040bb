/** Texts in JSON as values that know their places, the faults found in them, and what they hold for others. */
@NullMarked
package org.papermath.json.tree;

import org.jspecify.annotations.NullMarked;
