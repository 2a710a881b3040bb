/**
 * Documents in JSON, and quantities inside the JSON documents of others.
 *
 * <p>There are two doors. {@link org.papermath.json.PapermathDocuments} reads and writes orders, recipes, studios and
 * plans. Below it lie {@link org.papermath.json.DocumentReader}, which keeps the place of every value and reports all
 * faults at once, and {@link org.papermath.json.DocumentWriter}; they serve documents of one's own as well,
 * whose mappings are written with {@link org.papermath.json.kit}. {@link org.papermath.json.PapermathModule} teaches
 * Jackson the quantities of the library and fails at the first fault.
 */
@NullMarked
package org.papermath.json;

import org.jspecify.annotations.NullMarked;
