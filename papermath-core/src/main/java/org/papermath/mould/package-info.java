/**
 * The mould, its deckle, and how many pieces are formed on it at a time. Paper is made larger than it is wanted: the opening of the
 * deckle is the finished size, with what is trimmed, over what is left after shrinking.
 *
 * <pre>{@code
 * Shrinkage dries = Shrinkage.across(percent(4)).along(percent(6));
 * Mould.openingFor(Formats.ISO_A5, dries); // 154.2 mm × 223.4 mm
 * FormingLayout layout = FormingLayout.on(Mould.of("half imperial", mm(380), mm(560)), mm(148), mm(210), dries, mm(6), mm(0));
 * layout.count(); // 4
 * }</pre>
 *
 * <p>A deckle may be split by strips, or cut to the outline of the piece; moulds alike are worked in turn.
 *
 * <p>Words of the trade that lead here: {@index deckle}, {@index mould}, {@index opening}, {@index shrinkage},
 * {@index trim}.
 */
@NullMarked
package org.papermath.mould;

import org.jspecify.annotations.NullMarked;
