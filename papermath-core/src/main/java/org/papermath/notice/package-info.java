/**
 * Notices that a model and the plan both give, each worded once: one code for one matter. Not exported; the limits are
 * rows of the table of assumptions.
 */
@NullMarked
package org.papermath.notice;

import org.jspecify.annotations.NullMarked;
