/** Programs that show the library at work. */
@NullMarked
package org.papermath.examples;

import org.jspecify.annotations.NullMarked;
