package org.papermath.cost;

import java.math.RoundingMode;
import java.util.Objects;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;

/**
 * What is asked over the cost: a {@link Markup}, a share on the cost, or a {@link Margin}, a share of the price. A bare per cent
 * is neither, and is asked back.
 *
 * <pre>{@code
 * Profit.read("20 % on cost").priceOf(Money.of("4290 EUR")); // 5148.00 EUR
 * Profit.read("20 % of the price").priceOf(Money.of("4290 EUR")); // 5362.50 EUR
 * }</pre>
 *
 * <p>Both are kept as profit over cost in whole numbers or decimals, so that turning one into the other and back loses
 * nothing.
 *
 * @source equations: price = cost × (1 + markup); price = cost ÷ (1 − margin); margin = markup ÷ (1 + markup). Common to
 *     textbooks of cost accounting
 */
public sealed interface Profit permits Markup, Margin {
    /**
     * Returns the price of something at a cost.
     *
     * @param cost the cost
     * @return the price, rounded once to the smallest unit, halves up
     */
    default Money priceOf(Money cost) {
        Objects.requireNonNull(cost, "cost");
        return Profits.price(cost, this, RoundingMode.HALF_UP);
    }

    /**
     * Returns the cost that a price leaves room for.
     *
     * @param price the price
     * @return the cost, rounded once to the smallest unit, halves up
     */
    default Money costAt(Money price) {
        Objects.requireNonNull(price, "price");
        return Profits.cost(price, this);
    }

    /**
     * Returns the same as a share on the cost.
     *
     * @return the markup
     */
    Markup asMarkup();

    /**
     * Returns the same as a share of the price.
     *
     * @return the margin
     */
    Margin asMargin();

    /**
     * Reads a per cent that says of what it is.
     *
     * @param text {@code 20 % on cost} or {@code 20 % of the price}
     * @return the markup or the margin
     * @throws Refused if the text is neither, or out of range
     * @throws Unclear if it is a bare per cent; what it may mean is given for a cost of 100
     */
    static Profit read(String text) {
        Objects.requireNonNull(text, "text");
        return Profits.read(text, null);
    }

    /**
     * Reads a per cent that says of what it is, for a cost that is known.
     *
     * @param text {@code 20 % on cost} or {@code 20 % of the price}
     * @param cost the cost, for the two answers if it has to be asked back
     * @return the markup or the margin
     * @throws Refused if the text is neither, or out of range
     * @throws Unclear if it is a bare per cent, with both prices
     */
    static Profit read(String text, Money cost) {
        Objects.requireNonNull(text, "text");
        return Profits.read(text, Objects.requireNonNull(cost, "cost"));
    }
}
