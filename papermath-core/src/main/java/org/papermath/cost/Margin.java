package org.papermath.cost;

import java.math.BigDecimal;
import java.util.Objects;
import org.papermath.quantity.Refused;

/**
 * A share of the price: with 20 % of a price of 5, 1 is profit and 4 is cost. The same is a {@link Markup} of 25 %. An agent's
 * share is one too. Immutable.
 *
 * <p>Equation: price = cost ÷ (1 − margin).
 */
public final class Margin implements Profit {
    private final Profits.Ratio ratio;

    Margin(Profits.Ratio ratio) {
        this.ratio = ratio;
    }

    /**
     * Makes a margin.
     *
     * @param percent per cent of the price, 0 or more and below 100
     * @return the margin
     * @throws Refused if it is out of range: of a price nothing would be left for the cost
     */
    public static Margin percent(BigDecimal percent) {
        Objects.requireNonNull(percent, "percent");
        if (percent.signum() < 0 || percent.compareTo(Decimals.HUNDRED) >= 0) {
            throw Refused.of(
                    "price.margin",
                    "margin of the price: " + Decimals.plain(percent)
                            + " % given; must be 0 % or more and below 100 %, or"
                            + " nothing of the price is left for the cost. A share on the cost is a markup.",
                    "given",
                    Decimals.plain(percent),
                    "least",
                    0,
                    "most",
                    100);
        }
        return new Margin(new Profits.Ratio(percent, Decimals.HUNDRED.subtract(percent)));
    }

    /**
     * Makes a margin.
     *
     * @param percent per cent of the price, 0 or more and below 100, taken to twelve digits
     * @return the margin
     * @throws Refused if it is out of range
     */
    public static Margin percent(double percent) {
        return percent(Decimals.of(percent));
    }

    /**
     * Reads a margin.
     *
     * @param text for example {@code 20 % of the price}
     * @return the margin
     * @throws Refused if the text is none, is the other of the two, or is out of range
     * @throws org.papermath.quantity.Unclear if it is a bare per cent
     */
    public static Margin read(String text) {
        Profit read = Profit.read(text);
        if (read instanceof Margin margin) {
            return margin;
        }
        throw Profits.other(read, "of the price");
    }

    Profits.Ratio ratio() {
        return ratio;
    }

    @Override
    public Markup asMarkup() {
        return new Markup(ratio);
    }

    @Override
    public Margin asMargin() {
        return this;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Margin that && ratio.isSame(that.ratio);
    }

    @Override
    public int hashCode() {
        return ratio.hash();
    }

    /** Returns for example {@code 20 % of the price}: exactly to nine digits behind the point, else to four. */
    @Override
    public String toString() {
        return Profits.percent(ratio.profit(), ratio.price()) + " of the price";
    }
}
