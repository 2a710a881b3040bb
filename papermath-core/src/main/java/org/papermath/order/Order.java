package org.papermath.order;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.papermath.air.Air;
import org.papermath.numeric.Rounding;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * What a customer orders: pieces, from recipes, by a date. Immutable.
 *
 * <pre>{@code
 * Order cards = Order.of("spring cards")
 *         .recipe(Recipe.of("oat", Furnish.of(Fibres.LINTER_SECOND_CUT)).beating(hours(1)).build())
 *         .piece(Piece.of("card", 60, "oat").size(Formats.ISO_A6).grammage(Grammage.gsm(250)).build())
 *         .due(LocalDate.of(2027, 4, 2))
 *         .build();
 * cards.pieces().get(0).count(); // 60
 * }</pre>
 */
public final class Order {
    private final String name;
    private final List<Recipe> recipes;
    private final List<Piece> pieces;
    private final List<OwnStep> steps;
    private final @Nullable LocalDate due;
    private final Air weighedIn;
    private final boolean asListed;

    private Order(Builder b) {
        this.name = b.name;
        this.recipes = List.copyOf(b.recipes);
        this.pieces = List.copyOf(b.pieces);
        this.steps = List.copyOf(b.steps);
        this.due = b.due;
        this.weighedIn = b.weighedIn == null ? Air.reference() : b.weighedIn;
        this.asListed = b.asListed;
    }

    /**
     * Begins an order.
     *
     * @param name its name, not empty
     * @return a builder
     * @throws Refused if the name is empty
     */
    public static Builder of(String name) {
        return new Builder(CheckedName.require("order", name));
    }

    /** Gathers an order; refuses what is set twice and what does not hang together. */
    public static final class Builder {
        private final String name;
        private final List<Recipe> recipes = new ArrayList<>();
        private final List<Piece> pieces = new ArrayList<>();
        private final List<OwnStep> steps = new ArrayList<>();
        private final SetOnce given;
        private @Nullable LocalDate due;
        private @Nullable Air weighedIn;
        private boolean asListed;

        private Builder(String name) {
            this.name = name;
            this.given = new SetOnce("order " + name);
        }

        /**
         * Adds a recipe.
         *
         * @param recipe the recipe
         * @return this builder
         * @throws Refused if one of that name was added before
         */
        public Builder recipe(Recipe recipe) {
            Objects.requireNonNull(recipe, "recipe");
            given.once("the recipe " + recipe.name(), recipes, recipe, Recipe::name);
            return this;
        }

        /**
         * Adds a piece.
         *
         * @param piece the piece
         * @return this builder
         * @throws Refused if one of that name was added before
         */
        public Builder piece(Piece piece) {
            Objects.requireNonNull(piece, "piece");
            given.once("the piece " + piece.name(), pieces, piece, Piece::name);
            return this;
        }

        /**
         * Adds a step of one's own to the days of the order. Steps of one place follow one another as they are added.
         *
         * @param step the step
         * @return this builder
         * @throws Refused if one of that name was added before
         */
        public Builder step(OwnStep step) {
            Objects.requireNonNull(step, "step");
            given.once("the step " + step.name(), steps, step, OwnStep::name);
            return this;
        }

        /**
         * Sets the day by which the parcel leaves; steps of one's own that come after packing are done by then too.
         *
         * @param date the day, of the years 1800 to 2999
         * @return this builder
         * @throws Refused if it is out of range or was set before
         */
        public Builder due(LocalDate date) {
            Objects.requireNonNull(date, "date");
            given.once("the date");
            due = Limits.day(date, "date of the order");
            return this;
        }

        /**
         * Has the pieces of a recipe formed in the order they stand in, instead of the heaviest sheet first.
         *
         * @return this builder
         */
        public Builder asListed() {
            asListed = true;
            return this;
        }

        /**
         * Sets the air in which the grammage of the order is meant; the reference atmosphere without it.
         *
         * @param air the air
         * @return this builder
         * @throws Refused if it was set before
         */
        public Builder weighedIn(Air air) {
            Objects.requireNonNull(air, "air");
            given.once("the air of weighing");
            weighedIn = air;
            return this;
        }

        /**
         * Ends the order.
         *
         * @return the order
         * @throws Refused if there is no piece, a piece names a recipe or a piece that is not there, an envelope is
         *     made for an envelope, all pieces and trial sheets together are more than {@link Limits#IN_ORDER}, or there are
         *     more steps of one's own than {@link Limits#STEPS}
         */
        public Order build() {
            if (pieces.isEmpty()) {
                throw Refused.of(
                        "order.empty", "order " + name + ": there is no piece in it. Add at least one.", "order", name);
            }
            for (Piece piece : pieces) {
                if (recipes.stream().noneMatch(recipe -> recipe.name().equals(piece.recipe()))) {
                    throw Refused.of(
                            "order.no-recipe",
                            "piece " + piece.name() + ": the recipe \"" + piece.recipe()
                                    + "\" is not in the order, which has: "
                                    + recipes.stream().map(Recipe::name).toList() + ".",
                            "piece",
                            piece.name(),
                            "recipe",
                            piece.recipe());
                }
                piece.envelopeFor().ifPresent(inside -> {
                    Piece held = pieces.stream()
                            .filter(other -> other.name().equals(inside))
                            .findFirst()
                            .orElseThrow(() -> Refused.of(
                                    "order.no-piece",
                                    "piece " + piece.name() + ": the piece \"" + inside
                                            + "\" it is an envelope for is not in the"
                                            + " order, which has: "
                                            + pieces.stream().map(Piece::name).toList() + ".",
                                    "piece",
                                    piece.name(),
                                    "given",
                                    inside));
                    if (held.envelopeFor().isPresent()) {
                        throw Refused.of(
                                "order.envelope-in-envelope",
                                "piece " + piece.name() + ": " + inside
                                        + " is an envelope itself; an envelope for an envelope is"
                                        + " not planned. Give the outer one a size of its own.",
                                "piece",
                                piece.name(),
                                "inside",
                                inside);
                    }
                });
            }
            requireSameStuff();
            requireFew();
            Limits.STEPS.check(steps.size(), "steps of one's own in an order");
            return new Order(this);
        }

        /** Checks that what is beaten together can be. */
        private void requireSameStuff() {
            for (Recipe recipe : recipes) {
                Recipe first = recipes.stream()
                        .filter(one -> one.stuff().isPresent() && one.stuff().equals(recipe.stuff()))
                        .findFirst()
                        .orElse(recipe);
                String differs = first.differsAsStuff(recipe);
                if (!differs.isEmpty()) {
                    throw Refused.of(
                            "order.stuff-differs",
                            "recipe " + recipe.name() + ": it is to be beaten together with " + first.name() + ", as "
                                    + recipe.stuff().orElseThrow() + ", but its " + differs
                                    + " is another. Give both the same, or take the stuff out of one of them.",
                            "recipe",
                            recipe.name(),
                            "other",
                            first.name(),
                            "stuff",
                            recipe.stuff().orElseThrow(),
                            "member",
                            "recipes");
                }
            }
        }

        /** Checks how many there are in all; the spare pieces of the studio's habit are none of the order. */
        private void requireFew() {
            double all = 0;
            for (Piece piece : pieces) {
                double spare = piece.spare().isPresent() ? piece.spare().get().si() : 0;
                all += Rounding.ceil(piece.count() * (1 + spare))
                        + piece.kept()
                        + piece.trials().orElse(0);
            }
            if (all > Limits.IN_ORDER.most()) {
                throw Refused.of(
                        "order.too-many-pieces",
                        "pieces and trial sheets of order " + name + ": "
                                + Units.number(all) + " given, with those kept and spare; at most "
                                + Limits.IN_ORDER.most()
                                + " are possible. Check the counts, or make several orders of it.",
                        "quantity",
                        "pieces and trial sheets",
                        "order",
                        name,
                        "given",
                        all,
                        "most",
                        Limits.IN_ORDER.most(),
                        "member",
                        "pieces");
            }
        }

        @Override
        public String toString() {
            return "order " + name + ", being put together: " + pieces.size()
                    + (pieces.size() == 1 ? " piece " : " pieces ")
                    + pieces.stream().map(Piece::name).toList() + ", recipes "
                    + recipes.stream().map(Recipe::name).toList() + (due == null ? "" : ", due " + due);
        }
    }

    /**
     * Returns the name.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns the recipes.
     *
     * @return an unmodifiable list
     */
    public List<Recipe> recipes() {
        return recipes;
    }

    /**
     * Returns the pieces.
     *
     * @return an unmodifiable list
     */
    public List<Piece> pieces() {
        return pieces;
    }

    /**
     * Returns the steps of one's own.
     *
     * @return an unmodifiable list, as they were added
     */
    public List<OwnStep> steps() {
        return steps;
    }

    /**
     * Returns the day by which the parcel leaves, and by which steps of one's own that come after packing are done, if it was
     * given.
     *
     * @return the day
     */
    public Optional<LocalDate> due() {
        return Optional.ofNullable(due);
    }

    /**
     * Returns whether the pieces of a recipe are formed in the order they stand in. Otherwise the heaviest sheet comes
     * first, so that the vat is only ever let down between pieces.
     *
     * @return whether the order is kept
     */
    public boolean isAsListed() {
        return asListed;
    }

    /**
     * Returns the air in which the grammage of the order is meant.
     *
     * @return the air
     */
    public Air weighedIn() {
        return weighedIn;
    }

    /**
     * Returns a builder that begins with all this order holds; what it is given then replaces that of the same name.
     *
     * @return a builder
     */
    public Builder toBuilder() {
        Builder b = new Builder(name);
        b.recipes.addAll(recipes);
        b.pieces.addAll(pieces);
        b.steps.addAll(steps);
        b.due = due;
        b.weighedIn = weighedIn;
        b.asListed = asListed;
        return b;
    }

    /**
     * Returns the same order with a piece in the place of that of its name, or beside the others.
     *
     * @param piece the piece
     * @return the order
     * @throws Refused if the order does not hang together with it
     */
    public Order withPiece(Piece piece) {
        return toBuilder().piece(piece).build();
    }

    /**
     * Returns the same order without a piece.
     *
     * @param piece the name of the piece
     * @return the order
     * @throws Refused if there is no such piece, or the order does not hang together without it
     */
    public Order withoutPiece(String piece) {
        Builder b = toBuilder();
        if (!b.pieces.removeIf(one -> one.name().equals(piece))) {
            throw noPiece(piece);
        }
        return b.build();
    }

    /**
     * Returns the same order with one piece otherwise.
     *
     * @param piece the name of the piece
     * @param change what is said of it anew, for example {@code one -> one.count(110)}
     * @return the order
     * @throws Refused if there is no such piece, or as the builder of the piece
     */
    public Order with(String piece, UnaryOperator<Piece.Builder> change) {
        Objects.requireNonNull(piece, "piece");
        Objects.requireNonNull(change, "change");
        Piece found = pieces.stream()
                .filter(one -> one.name().equals(piece))
                .findFirst()
                .orElseThrow(() -> noPiece(piece));
        return withPiece(found.with(change));
    }

    private Refused noPiece(String piece) {
        return Refused.of(
                "order.no-piece",
                "order " + name + ": there is no piece \"" + piece + "\"; it has: "
                        + pieces.stream().map(Piece::name).toList() + ".",
                "order",
                name,
                "given",
                piece);
    }

    /**
     * Returns the same order with one recipe otherwise.
     *
     * @param recipe the name of the recipe
     * @param change what is said of it anew, for example {@code one -> one.beating(hours(4))}
     * @return the order
     * @throws Refused if there is no such recipe, or as the builder of the recipe
     */
    public Order withRecipe(String recipe, UnaryOperator<Recipe.Builder> change) {
        Objects.requireNonNull(recipe, "recipe");
        Objects.requireNonNull(change, "change");
        Recipe found = recipes.stream()
                .filter(one -> one.name().equals(recipe))
                .findFirst()
                .orElseThrow(() -> Refused.of(
                        "order.no-recipe",
                        "order " + name + ": there is no recipe \"" + recipe + "\"; it has: "
                                + recipes.stream().map(Recipe::name).toList() + ".",
                        "order",
                        name,
                        "given",
                        recipe));
        return withRecipe(found.with(change));
    }

    /**
     * Returns the same order with a recipe in the place of that of its name, or beside the others.
     *
     * @param recipe the recipe
     * @return the order
     */
    public Order withRecipe(Recipe recipe) {
        return toBuilder().recipe(recipe).build();
    }

    /**
     * Returns the same order with a step of one's own in the place of that of its name, or after the others.
     *
     * @param step the step
     * @return the order
     * @throws Refused if there are too many of them
     */
    public Order withStep(OwnStep step) {
        return toBuilder().step(step).build();
    }

    /**
     * Returns the same order for another day.
     *
     * @param date the day
     * @return the order
     * @throws Refused if the day is out of range
     */
    public Order withDue(LocalDate date) {
        return toBuilder().due(date).build();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Order that
                && name.equals(that.name)
                && recipes.equals(that.recipes)
                && pieces.equals(that.pieces)
                && steps.equals(that.steps)
                && Objects.equals(due, that.due)
                && weighedIn.equals(that.weighedIn)
                && asListed == that.asListed;
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, recipes, pieces, steps, due);
    }

    @Override
    public String toString() {
        return "order " + name + ": "
                + String.join("; ", pieces.stream().map(Piece::toString).toList())
                + (steps.isEmpty() ? "" : "; steps: " + steps);
    }
}
