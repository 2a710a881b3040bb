/** Air and water: the state of room air, the properties of water. */
@NullMarked
package org.papermath.air;

import org.jspecify.annotations.NullMarked;
