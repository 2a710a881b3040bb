package org.papermath.evidence;

/** A row and its place among all rows of a store, which it hands on to the row that takes its place. */
record PlacedRow(Assumption row, int place) {}
