package org.papermath.cost;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.papermath.plan.ClassDay;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * The price of a seat in a class at the vat: what its stuff, its current and its wear cost, the hours of whoever leads it, over
 * the people. Immutable.
 *
 * <pre>{@code
 * ClassDay day = ClassDay.of(studio, order.recipes().get(0)).people(8).sheetsEach(3)
 *         .size(mm(148), mm(210)).grammage(Grammage.gsm(120)).within(hours(3)).plan();
 * SeatPrice.of(day, prices, hours(5), Margin.percent(30)).price();
 * }</pre>
 *
 * <p>The people form the sheets themselves, so the hours of hands on the pieces are not counted; those on the batch before are.
 * Overheads that go by hours of hands go with the hours of whoever leads too.
 */
public final class SeatPrice {
    private static final int MOST_HOURS = 100 * 3600;

    private final Costing costing;
    private final int people;
    private final Money teaching;
    private final Money cost;
    private final Money price;

    private SeatPrice(Costing costing, int people, Money teaching, Money cost, Money price) {
        this.costing = costing;
        this.people = people;
        this.teaching = teaching;
        this.cost = cost;
        this.price = price;
    }

    /**
     * Prices a seat.
     *
     * @param day the class
     * @param prices the list of prices, which must have a rate of hands
     * @param leading the hours of whoever leads it, setting up and clearing up with them, above zero, at most 100 h
     * @param profit a markup or a margin
     * @return the price
     * @throws Refused if the list has no rate of hands, or the hours are out of range
     */
    public static SeatPrice of(ClassDay day, PriceList prices, Quantity<Time> leading, Profit profit) {
        Objects.requireNonNull(day, "day");
        Objects.requireNonNull(prices, "prices");
        Objects.requireNonNull(profit, "profit");
        Amount<Time> hours = Kinds.TIME.checkWithin(leading, "hours of whoever leads the class", 1, MOST_HOURS);
        MoneyRate<Time> rate = prices.hands()
                .orElseThrow(() -> Refused.of(
                        "price.no-hands",
                        "class: the list " + prices.name()
                                + " has no rate of hands, and somebody leads the class. Add it,"
                                + " also where it is 0.",
                        "list",
                        prices.name()));
        Costing costing = Costing.withoutPieceHours(day.plan(), prices);
        Money teaching = rate.costOf(hours);
        for (Overhead one : prices.overheads()) {
            Money more = one.hourly(day.plan().studio().workingDay())
                    .map(hourly -> hourly.costOf(hours))
                    .orElse(Money.zero(prices.currency()));
            teaching = teaching.plus(more);
        }
        Money bare = teaching;
        for (Overhead one : prices.overheads()) {
            teaching = teaching.plus(
                    one.share().map(share -> share.priceOf(bare).minus(bare)).orElse(Money.zero(prices.currency())));
        }
        Money cost = costing.cost().likely().plus(teaching);
        Profits.Ratio ratio = Profits.ratio(profit);
        Money price = Profits.over(
                cost, ratio.price(), ratio.cost().multiply(BigDecimal.valueOf(day.people())), RoundingMode.CEILING);
        return new SeatPrice(costing, day.people(), teaching, cost, price);
    }

    /**
     * Returns what the stuff and the things cost, with the hours on the batch before.
     *
     * @return the costing
     */
    public Costing costing() {
        return costing;
    }

    /**
     * Returns how many people are in it, as the class was planned.
     *
     * @return the count
     */
    public int people() {
        return people;
    }

    /**
     * Returns what whoever leads it costs, the overhead of those hours with it.
     *
     * @return the money
     */
    public Money teaching() {
        return teaching;
    }

    /**
     * Returns what the class costs in all.
     *
     * @return at least so much, where the costing has gaps
     */
    public Money cost() {
        return cost;
    }

    /**
     * Returns the price of a seat.
     *
     * @return the price, rounded up to the coin
     */
    public Money price() {
        return price;
    }

    @Override
    public String toString() {
        return (costing.isAtLeast() ? "at least " : "") + price + " a seat of " + people + "; the class costs " + cost;
    }
}
