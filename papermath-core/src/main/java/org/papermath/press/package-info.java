/** The press: its weakest part, felts and posts, solids after pressing. */
@NullMarked
package org.papermath.press;

import org.jspecify.annotations.NullMarked;
