package org.papermath.whatif;

import java.util.Objects;
import java.util.function.UnaryOperator;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.quantity.Refused;

/**
 * What a plan is made from: what is ordered, and where it is made. Immutable.
 *
 * <pre>{@code
 * Job job = new Job(order, studio);
 * job.withPiece("programme", one -> one.folds(2)).order().pieces().get(0).folds(); // 2
 * }</pre>
 *
 * @param order the order
 * @param studio the studio
 */
public record Job(Order order, Studio studio) {
    /**
     * Makes a job.
     *
     * @param order the order
     * @param studio the studio
     */
    public Job {
        Objects.requireNonNull(order, "order");
        Objects.requireNonNull(studio, "studio");
    }

    /**
     * Returns the same job with one piece otherwise.
     *
     * @param piece the name of the piece
     * @param change what is said of it anew
     * @return the job
     * @throws Refused if there is no such piece, or as its builder
     */
    public Job withPiece(String piece, UnaryOperator<Piece.Builder> change) {
        return new Job(order.with(piece, change), studio);
    }

    /**
     * Returns the same job with one recipe otherwise.
     *
     * @param recipe the name of the recipe
     * @param change what is said of it anew
     * @return the job
     * @throws Refused if there is no such recipe, or as its builder
     */
    public Job withRecipe(String recipe, UnaryOperator<Recipe.Builder> change) {
        return new Job(order.withRecipe(recipe, change), studio);
    }

    /**
     * Returns the same job in a studio that is otherwise in something.
     *
     * @param change what is said of it anew
     * @return the job
     * @throws Refused as the builder of the studio
     */
    public Job withStudio(UnaryOperator<Studio.Builder> change) {
        return new Job(order, studio.with(change));
    }

    @Override
    public String toString() {
        return order + ", in " + studio;
    }
}
