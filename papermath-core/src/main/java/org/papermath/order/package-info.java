/**
 * What is asked, and of what: orders of pieces, recipes, and the studio. They are what a person gives; nothing in them is worked
 * out. Each is built once, checked as it is built, and can be changed into another.
 *
 * <pre>{@code
 * Recipe oat = Recipe.of("oat", Furnish.of(Fibres.LINTER_SECOND_CUT)).beating(hours(1)).build();
 * Order cards = Order.of("spring cards")
 *         .recipe(oat)
 *         .piece(Piece.of("card", 60, "oat").size(Formats.ISO_A6).grammage(Grammage.gsm(250)).build())
 *         .build();
 * Order more = cards.with("card", piece -> piece.count(80));
 * more.pieces().get(0).count(); // 80
 * cards.pieces().get(0).count(); // 60
 * }</pre>
 *
 * <p>What a studio lacks is left out; the plan goes as far as it can and says which stages it could not do. Own values, measured
 * there, come with {@code Studio.withAssumptions}.
 *
 * <p>Words of the trade that lead here: {@index colours}, {@index curing}, {@index days}, {@index divide},
 * {@index dryer}, {@index drying}, {@index pails}, {@index schedule}, {@index share}, {@index stuff}, {@index white}.
 */
@NullMarked
package org.papermath.order;

import org.jspecify.annotations.NullMarked;
