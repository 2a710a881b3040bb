package org.papermath.cost;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Refused;

/**
 * Prices from costs: by a markup or a margin, with an agent's share, rounded up to price points, and never below a least order.
 * Immutable.
 *
 * <pre>{@code
 * Pricing pricing = Pricing.of(costing, Margin.percent(30)).at(PricePoint.every(Money.of("0.50 EUR")));
 * pricing.piece("programme").price();      // each, rounded up
 * pricing.piece("programme").rounding();   // by how much it was
 * Pricing.breakEven(Money.of("310 EUR"), Money.of("12.50 EUR"), Money.of("6.20 EUR")); // 50
 * }</pre>
 *
 * <p>Equation: price each = cost of the piece × (1 + markup) ÷ (1 − agent's share) ÷ pieces sold, worked out exactly and rounded
 * up once to the coin, then to the price point. Costs are the likely ones; where the costing is "at least", so are the prices.
 */
public final class Pricing {
    private final Costing costing;
    private final Profit profit;
    private final @Nullable PricePoint point;
    private final @Nullable Margin agent;
    private final @Nullable Money least;

    /** The price of one piece of the order. */
    public sealed interface Priced permits FoundPrice {
        /** {@return the name of the piece} */
        String name();

        /** {@return how many are sold} */
        int count();

        /** {@return what one costs, rounded} */
        Money cost();

        /** {@return the price of one as it was worked out, rounded up to the coin} */
        Money workedOut();

        /** {@return by how much it was rounded up to the price point} */
        Money rounding();

        /** {@return the price of one} */
        Money price();

        /** {@return the trade price: what comes to the studio of it when the agent has taken his share, which is rounded} */
        Money trade();

        /** {@return the price of all} */
        Money sum();
    }

    private record FoundPrice(
            String name, int count, Money cost, Money workedOut, Money rounding, Money price, Money trade, Money sum)
            implements Priced {
        @Override
        public String toString() {
            return name + ": " + count + " at " + price + " = " + sum;
        }
    }

    private Pricing(
            Costing costing, Profit profit, @Nullable PricePoint point, @Nullable Margin agent, @Nullable Money least) {
        this.costing = costing;
        this.profit = profit;
        this.point = point;
        this.agent = agent;
        this.least = least;
    }

    /**
     * Prices what a plan costs.
     *
     * @param costing the costs
     * @param profit a markup or a margin
     * @return the prices, rounded up to the coin
     */
    public static Pricing of(Costing costing, Profit profit) {
        Objects.requireNonNull(costing, "costing");
        Objects.requireNonNull(profit, "profit");
        return new Pricing(costing, profit, null, null, null);
    }

    /**
     * Returns the prices rounded up to price points.
     *
     * @param points where prices stand
     * @return the prices
     */
    public Pricing at(PricePoint points) {
        return new Pricing(costing, profit, Objects.requireNonNull(points, "points"), agent, least);
    }

    /**
     * Returns the prices at which an agent or a shop takes a share of the price.
     *
     * @param share the share of the price
     * @return the prices
     */
    public Pricing throughAgent(Margin share) {
        return new Pricing(costing, profit, point, Objects.requireNonNull(share, "share"), least);
    }

    /**
     * Returns the prices with a least order: {@link #total} is never below it.
     *
     * @param money the least order, zero or more
     * @return the prices
     * @throws Refused if it is below zero or of another currency than the costs
     */
    public Pricing leastOrder(Money money) {
        Objects.requireNonNull(money, "money");
        Money.zero(costing.prices().currency()).same(money);
        return new Pricing(costing, profit, point, agent, OwnLine.requireNotBelowZero(money, "least order"));
    }

    /**
     * Returns the prices of the pieces.
     *
     * @return an unmodifiable list, in the order of the order
     */
    public List<Priced> pieces() {
        return costing.pieces().stream().map(this::priced).toList();
    }

    /**
     * Returns the price of a piece.
     *
     * @param name the name of the piece
     * @return the price
     * @throws Refused if the order has no piece of that name
     */
    public Priced piece(String name) {
        return priced(costing.piece(name));
    }

    private Priced priced(Costing.OfPiece piece) {
        Profits.Ratio ratio = Profits.ratio(profit);
        Profits.Ratio taken = agent == null ? new Profits.Ratio(BigDecimal.ZERO, BigDecimal.ONE) : agent.ratio();
        // One over one less the share is price over cost of the share taken as a margin.
        Money worked = Profits.over(
                piece.cost().likely(),
                ratio.price().multiply(taken.price()),
                ratio.cost().multiply(taken.cost()).multiply(BigDecimal.valueOf(piece.sold())),
                RoundingMode.CEILING);
        Money price = point == null ? worked : point.roundUp(worked);
        Money trade = Profits.over(price, taken.cost(), taken.price(), RoundingMode.HALF_UP);
        return new FoundPrice(
                piece.name(),
                piece.sold(),
                piece.perPieceSold().likely(),
                worked,
                price.minus(worked),
                price,
                trade,
                price.times(piece.sold()));
    }

    /**
     * Returns what the order is sold for: the sum of its pieces, or the least order where that is more.
     *
     * @return the sum
     */
    public Money total() {
        Money sum = pieces().stream()
                .map(Priced::sum)
                .reduce(Money.zero(costing.prices().currency()), Money::plus);
        return least == null || least.compareTo(sum) < 0 ? sum : least;
    }

    /**
     * Returns what is left of the sum of the pieces for the studio when the agent and the costs are paid.
     *
     * @return the profit at the likely costs; below zero where they are not covered
     */
    public Money left() {
        Money trade = pieces().stream()
                .map(piece -> piece.trade().times(piece.count()))
                .reduce(Money.zero(costing.prices().currency()), Money::plus);
        return trade.minus(costing.cost().likely());
    }

    /**
     * Returns how many of a piece have to be sold at its price until its costs are covered.
     *
     * @param piece the name of the piece
     * @return the count; empty where the trade price does not even cover what goes with each piece
     * @throws Refused if the order has no piece of that name
     */
    public Optional<Integer> breakEven(String piece) {
        Costing.OfPiece costs = costing.piece(piece);
        return covered(costs, priced(costs).trade());
    }

    /**
     * Returns the smallest batch of a piece that gives the profit wanted at a price that is already set.
     *
     * @param piece the name of the piece
     * @param price the price of one
     * @return the count; empty where no count does
     * @throws Refused if the order has no piece of that name, or the price is of another currency
     */
    public Optional<Integer> leastBatch(String piece, Money price) {
        Objects.requireNonNull(price, "price");
        Costing.OfPiece costs = costing.piece(piece);
        costs.variablePerPiece().same(price);
        Money trade = agent == null ? price : agent.costAt(price);
        return covered(costs, profit.costAt(trade));
    }

    private static Optional<Integer> covered(Costing.OfPiece costs, Money each) {
        return each.compareTo(costs.variablePerPiece()) <= 0
                ? Optional.empty()
                : Optional.of(breakEven(costs.fixed().likely(), each, costs.variablePerPiece()));
    }

    /**
     * Returns how many have to be sold until fixed costs are covered.
     *
     * <p>Equation: the whole number not below fixed ÷ (price − variable).
     *
     * @param fixed the fixed costs, zero or more
     * @param price the price of one
     * @param variable what goes with each one
     * @return the count
     * @throws Refused if the price does not cover the variable cost, the fixed cost is below zero, or currencies differ
     */
    public static int breakEven(Money fixed, Money price, Money variable) {
        Objects.requireNonNull(fixed, "fixed");
        Objects.requireNonNull(price, "price");
        Objects.requireNonNull(variable, "variable");
        OwnLine.requireNotBelowZero(fixed, "fixed cost");
        Money over = fixed.same(price).minus(variable);
        if (over.sign() <= 0) {
            throw Refused.of(
                    "price.never-even",
                    "price: " + price + " given; it does not cover the variable cost of " + variable
                            + ", so no count covers the fixed cost. Ask more, or make it for less.",
                    "price",
                    price.toString(),
                    "variable",
                    variable.toString());
        }
        BigDecimal count = fixed.amount().divide(over.amount(), 0, RoundingMode.CEILING);
        if (count.compareTo(BigDecimal.valueOf(Integer.MAX_VALUE)) > 0) {
            throw Refused.of(
                    "price.never-even",
                    "price: " + price + " covers the variable cost of " + variable
                            + " by so little that more pieces would be needed than can be counted. Ask more.",
                    "price",
                    price.toString(),
                    "variable",
                    variable.toString());
        }
        return count.intValueExact();
    }

    Optional<Money> least() {
        return Optional.ofNullable(least);
    }

    /**
     * Returns the costs.
     *
     * @return the costing
     */
    public Costing costing() {
        return costing;
    }

    /**
     * Returns what is asked over the cost.
     *
     * @return the markup or the margin
     */
    public Profit profit() {
        return profit;
    }

    @Override
    public String toString() {
        return (costing.isAtLeast() ? "at least " : "") + total() + ", " + profit + ": " + pieces();
    }
}
