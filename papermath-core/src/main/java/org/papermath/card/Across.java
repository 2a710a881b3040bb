package org.papermath.card;

import java.util.List;

/**
 * A row with a cell for each piece.
 *
 * @param mark what it is
 * @param label the words before it
 * @param cells the cells, one for each piece
 */
record Across(Mark mark, String label, List<String> cells) {}
