/** From an order and a studio to the plan of the making: settings, forecasts, card. */
@NullMarked
package org.papermath.plan;

import org.jspecify.annotations.NullMarked;
