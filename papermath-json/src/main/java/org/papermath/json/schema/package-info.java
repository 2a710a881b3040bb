/** The schemas of the documents, written as the mappings read, and their text. */
@NullMarked
package org.papermath.json.schema;

import org.jspecify.annotations.NullMarked;
