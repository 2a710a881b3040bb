package org.papermath.engine;

/**
 * Hands on the stuff of a batch, s.
 *
 * @param pot at one pot, its boiling apart
 * @param load at one load of the beater
 * @param additives at all the additives, each time they are weighed out
 */
public record StageHours(double pot, double load, double additives) {}
