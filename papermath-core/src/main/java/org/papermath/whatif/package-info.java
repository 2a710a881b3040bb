/**
 * What if: tables of forecasts over values of an input, and the input that gives a wanted forecast. Reads and forecasts jobs
 * again and again; every number in it is one that a plan of the same job has.
 */
@NullMarked
package org.papermath.whatif;

import org.jspecify.annotations.NullMarked;
