/** Tools for text: wrapping, nearest words, escaping. */
@NullMarked
package org.papermath.text;

import org.jspecify.annotations.NullMarked;
