/**
 * What papermakers ask, each question answered by a method of three statements at most, and the program that finds and
 * prints them.
 */
@NullMarked
package org.papermath.examples.questions;

import org.jspecify.annotations.NullMarked;
