/**
 * Where numbers come from: assumptions with their scope, role, band and source; estimates, readings and notices.
 */
@NullMarked
package org.papermath.evidence;

import org.jspecify.annotations.NullMarked;
