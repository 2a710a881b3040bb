package org.papermath.plan;

import java.util.List;
import org.papermath.engine.Engine;
import org.papermath.engine.Settings;
import org.papermath.fibre.Fibre;
import org.papermath.numeric.Counts;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;

/** How many of a piece the fibre on hand is enough for. */
final class FibreForPieces {
    /** Counts above an answer that are tried. */
    private static final int LOOK_AHEAD = 24;

    private final Order order;
    private final Studio studio;
    private final String piece;
    private final String recipe;
    private final List<Fibre> ofRecipe;

    FibreForPieces(Order order, Studio studio, String piece) {
        this.order = order;
        this.studio = studio;
        this.piece = piece;
        // Refused here where there is no such piece.
        recipe = order.with(piece, one -> one).pieces().stream()
                .filter(one -> one.name().equals(piece))
                .map(Piece::recipe)
                .findFirst()
                .orElseThrow();
        ofRecipe = order.recipes().stream()
                .filter(one -> one.name().equals(recipe))
                .findFirst()
                .orElseThrow()
                .furnish()
                .fibres();
        ofRecipe.forEach(this::requireOnHand);
    }

    private void requireOnHand(Fibre fibre) {
        if (!studio.onHand().containsKey(fibre)
                && studio.stuffOnHand().stream().noneMatch(one -> one.recipe().equals(recipe))) {
            throw Refused.of(
                    "plan.none-on-hand",
                    "piece " + piece + ": nothing is on hand of " + fibre.name() + ", of which its recipe \"" + recipe
                            + "\" is made. Say in the studio how much there is.",
                    "piece",
                    piece,
                    "fibre",
                    fibre.id());
        }
    }

    int most() {
        int others = order.pieces().stream()
                .filter(one -> !one.name().equals(piece))
                .mapToInt(Piece::count)
                .sum();
        // Refused here where not even one can be made at all.
        Engine.of(with(1), studio);
        Counts counts = new Counts(this::isEnough);
        return counts.most(1, Math.max(1, Math.min(Limits.PIECES.most(), Limits.IN_ORDER.most() - others)), LOOK_AHEAD);
    }

    private Order with(int count) {
        return order.with(piece, one -> one.count(count));
    }

    /** Whether nothing has to be bought of a fibre of the recipe, nor for others that take of what is on hand of it. */
    private boolean isEnough(int count) {
        try {
            Order changed = with(count);
            Engine engine = Engine.of(changed, studio);
            Settings settings = engine.decide(engine.likely());
            List<Recipe> recipes = Engine.usedRecipes(changed);
            boolean enough = true;
            for (int b = 0; b < recipes.size(); b++) {
                boolean own = recipes.get(b).name().equals(recipe);
                List<Fibre> fibres = recipes.get(b).furnish().fibres();
                for (int f = 0; f < fibres.size(); f++) {
                    boolean same =
                            ofRecipe.contains(fibres.get(f)) && studio.onHand().containsKey(fibres.get(f));
                    enough &= settings.stock(b).asBought()[f] == 0 || !(own || same);
                }
            }
            return enough;
        } catch (Refused tooMany) {
            return false;
        }
    }
}
