/**
 * What documents of one's own are read and written with, value by value.
 *
 * <p>{@link org.papermath.json.DocumentReader} hands an {@link org.papermath.json.kit.ObjectReader} to the mapping of a
 * document, {@link org.papermath.json.DocumentWriter} an {@link org.papermath.json.kit.ObjectWriter}.
 */
@NullMarked
package org.papermath.json.kit;

import org.jspecify.annotations.NullMarked;
