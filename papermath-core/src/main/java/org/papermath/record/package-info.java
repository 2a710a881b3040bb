/** What was measured while making, what it shows about the assumptions, and how even the sheets are, within what was agreed. */
@NullMarked
package org.papermath.record;

import org.jspecify.annotations.NullMarked;
