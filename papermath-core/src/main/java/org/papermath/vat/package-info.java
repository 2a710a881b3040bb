/** The vat: its charge, the run sheet by sheet, recharges, drainage on the mould. */
@NullMarked
package org.papermath.vat;

import org.jspecify.annotations.NullMarked;
