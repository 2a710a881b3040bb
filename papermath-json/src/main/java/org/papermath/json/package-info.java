/**
 * Documents in JSON, and quantities inside the JSON documents of others.
 *
 * <p>There are two doors. {@link org.papermath.json.PapermathModule} teaches Jackson the quantities of the library and
 * fails at the first fault. {@link org.papermath.json.DocumentReader} reads whole documents, keeps the place of every
 * value and reports all faults at once. {@link org.papermath.json.DocumentWriter} writes them.
 */
@NullMarked
package org.papermath.json;

import org.jspecify.annotations.NullMarked;
