/** The mappings of the library's own types: which members they have in documents, read and written side by side. */
@NullMarked
package org.papermath.json.mapping;

import org.jspecify.annotations.NullMarked;
