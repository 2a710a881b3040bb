package org.papermath.card;

/**
 * A picture.
 *
 * @param svg its SVG text
 * @param words what it shows
 * @param isWhole whether it keeps its size and has a page of its own
 */
record Picture(String svg, String words, boolean isWhole) {}
