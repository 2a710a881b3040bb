package org.papermath.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Studio;
import org.papermath.order.StuffOnHand;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * The rest of a making that was broken off: a vat that soured, a count that was changed, a day without the press. Made by
 * {@link MakingPlan#rest}. Immutable.
 *
 * <pre>{@code
 * MakingPlan first = MakingPlan.of(order, studio);
 * AtTheVat vat = first.atTheVat("programme").after(38);
 * MakingPlan rest = first.rest().good("programme", 40).stuff(vat.inThePails().orElseThrow()).plan();
 * rest.piece("programme").counts().ordered(); // 30
 * }</pre>
 */
public final class RestOfMaking {
    private RestOfMaking() {}

    /** What stands of a making. */
    public static final class Builder {
        private final Order order;
        private final Studio studio;
        private final Map<String, Integer> good = new LinkedHashMap<>();
        private final Map<String, Integer> counts = new LinkedHashMap<>();
        private final Map<String, StuffOnHand> stuff = new LinkedHashMap<>();

        Builder(Order order, Studio studio) {
            this.order = order;
            this.studio = studio;
        }

        /**
         * States how many good pieces stand: dry, or pressed and sure to become so.
         *
         * @param piece the name of the piece
         * @param pieces how many, 0 or more
         * @return this builder
         * @throws Refused if there is no such piece, or the number is below zero
         */
        public Builder good(String piece, int pieces) {
            good.put(known(piece), atLeast(pieces, 0, "good pieces of " + piece));
            return this;
        }

        /**
         * States that another count is wanted than was ordered.
         *
         * @param piece the name of the piece
         * @param ordered the count of all, those that stand with them, 1 or more
         * @return this builder
         * @throws Refused if there is no such piece, or the number is below one
         */
        public Builder wanted(String piece, int ordered) {
            counts.put(known(piece), atLeast(ordered, 1, "pieces of " + piece));
            return this;
        }

        /**
         * States stuff that stands beaten and dosed, such as what {@link AtTheVat#inTheVat()} and
         * {@link AtTheVat#inThePails()} give; that of one recipe is added up. What soured is left out.
         *
         * @param standing the stuff
         * @return this builder
         * @throws Refused if no piece is of its recipe
         */
        public Builder stuff(StuffOnHand standing) {
            Objects.requireNonNull(standing, "standing");
            if (order.recipes().stream().noneMatch(recipe -> recipe.name().equals(standing.recipe()))) {
                throw Refused.of(
                        "order.no-recipe",
                        "order " + order.name() + ": there is no recipe \"" + standing.recipe() + "\"; it has: "
                                + order.recipes().stream()
                                        .map(recipe -> recipe.name())
                                        .toList() + ".",
                        "order",
                        order.name(),
                        "given",
                        standing.recipe());
            }
            stuff.merge(standing.recipe(), standing, Builder::together);
            return this;
        }

        private static StuffOnHand together(StuffOnHand one, StuffOnHand other) {
            double fibre = one.ovenDry().si() + other.ovenDry().si();
            double mass = one.pulp().mass().si() + other.pulp().mass().si();
            return new StuffOnHand(
                    one.recipe(),
                    PlainNumbers.grams(fibre),
                    Kinds.CONSISTENCY.ofSi(fibre / mass, "%"),
                    one.made().isPresent() ? one.made() : other.made());
        }

        private String known(String piece) {
            Objects.requireNonNull(piece, "piece");
            if (order.pieces().stream().noneMatch(one -> one.name().equals(piece))) {
                throw Refused.of(
                        "order.no-piece",
                        "order " + order.name() + ": there is no piece \"" + piece + "\"; it has: "
                                + order.pieces().stream().map(Piece::name).toList() + ".",
                        "order",
                        order.name(),
                        "given",
                        piece);
            }
            return piece;
        }

        private static int atLeast(int given, int least, String what) {
            if (given < least) {
                throw Refused.of(
                        "rest.count",
                        what + ": " + given + " given; it must be " + least + " or more.",
                        "quantity",
                        what,
                        "given",
                        given,
                        "least",
                        least);
            }
            return given;
        }

        /**
         * Plans the rest in the same studio.
         *
         * @return the plan
         * @throws Refused if nothing is left to make
         */
        public MakingPlan plan() {
            return plan(studio);
        }

        /**
         * Plans the rest in a studio that has changed: other felts, another press, another day's air.
         *
         * @param now the studio; its stuff on hand of the recipes of the order is that stated here
         * @return the plan
         * @throws Refused if nothing is left to make
         */
        public MakingPlan plan(Studio now) {
            Objects.requireNonNull(now, "now");
            Order rest = order;
            for (Piece piece : order.pieces()) {
                int left = counts.getOrDefault(piece.name(), piece.count()) - good.getOrDefault(piece.name(), 0);
                if (left > 0) {
                    rest = rest.withPiece(piece.withCount(left));
                } else if (rest.pieces().size() == 1) {
                    throw Refused.of(
                            "rest.none",
                            "order " + order.name() + ": all that was ordered stands; there is nothing left to make.",
                            "order",
                            order.name());
                } else if (rest.pieces().stream()
                        .noneMatch(one ->
                                one.envelopeFor().filter(piece.name()::equals).isPresent())) {
                    rest = rest.withoutPiece(piece.name());
                } else {
                    // An envelope still has to know what goes into it: one more is formed.
                    rest = rest.withPiece(piece.withCount(1));
                }
            }
            List<StuffOnHand> standing = new ArrayList<>(stuff.values());
            now.stuffOnHand().stream()
                    .filter(one -> order.recipes().stream()
                            .noneMatch(recipe -> recipe.name().equals(one.recipe())))
                    .forEach(standing::add);
            return MakingPlan.of(
                    rest, now.toBuilder().holding(now.onHand(), standing).build());
        }

        @Override
        public String toString() {
            return "rest of " + order.name() + ", being put together: good so far " + good
                    + (counts.isEmpty() ? "" : ", now wanted " + counts)
                    + (stuff.isEmpty() ? "" : ", stuff left " + stuff.values());
        }
    }
}
