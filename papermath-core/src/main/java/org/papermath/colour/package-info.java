/** Colour: reflectance, what the eye makes of it, pigmented pulp, wet and dry, and the dose for a colour. */
@NullMarked
package org.papermath.colour;

import org.jspecify.annotations.NullMarked;
