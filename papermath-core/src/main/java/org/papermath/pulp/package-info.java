/** Pulp and what is done to it: dilution, beating, drainability, additives. */
@NullMarked
package org.papermath.pulp;

import org.jspecify.annotations.NullMarked;
