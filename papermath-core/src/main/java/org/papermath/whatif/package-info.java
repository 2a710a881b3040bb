/**
 * What if: tables of forecasts over values of an input, and the input that gives a wanted forecast. Reads and forecasts jobs
 * again and again; every number in it is one that a plan of the same job has.
 *
 * <pre>{@code
 * WhatIf.decidedAnew(order, studio)
 *         .mostThatFits(Input.count("programme"), 1, 1000, Outcome.timeAtVat("programme"), hours(6)).one(); // 312
 * WhatIf.settingsHeld(order, studio)
 *         .solve(Input.lift(), percent(80), percent(130), Outcome.grammage("programme"), Grammage.gsm(135)).one(); // 113.7 %
 * }</pre>
 *
 * <p>{@code decidedAnew} asks what the plan would be, {@code settingsHeld} what comes out when the work is done as planned and something
 * turns out otherwise.
 */
@NullMarked
package org.papermath.whatif;

import org.jspecify.annotations.NullMarked;
