package org.papermath.engine;

import java.util.function.DoubleUnaryOperator;

/**
 * A forecast that follows from one other alone and falls, or stays, where that rises: so does its band, however sharply
 * the law bends.
 *
 * @param place its place among the figures
 * @param from the place of the other
 * @param law what it is for each value of the other
 */
public record Follows(int place, int from, DoubleUnaryOperator law) {}
