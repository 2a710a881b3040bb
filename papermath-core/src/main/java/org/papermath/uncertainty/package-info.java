/** How far figures may be off: bands over the engine's forecasts. Not exported. */
@NullMarked
package org.papermath.uncertainty;

import org.jspecify.annotations.NullMarked;
