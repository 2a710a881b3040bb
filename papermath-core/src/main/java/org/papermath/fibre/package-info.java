/** Fibre: what it is, what is known of it, how it is bought and what a furnish is made of. */
@NullMarked
package org.papermath.fibre;

import org.jspecify.annotations.NullMarked;
