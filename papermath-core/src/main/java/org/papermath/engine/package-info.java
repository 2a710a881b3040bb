/**
 * The way from what is asked to figures, in plain numbers of coherent SI: one file for each stage of the work. A stage
 * looks up the assumptions it needs, decides what to do (a setting) and works out what comes of it (figures).
 *
 * <p>Not exported. Nothing here knows how a plan is read, printed or written.
 */
@NullMarked
package org.papermath.engine;

import org.jspecify.annotations.NullMarked;
