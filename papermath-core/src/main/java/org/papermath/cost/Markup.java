package org.papermath.cost;

import java.math.BigDecimal;
import java.util.Objects;
import org.papermath.quantity.Refused;

/**
 * A share on the cost: with 25 % something that cost 4 is sold for 5. The same is a {@link Margin} of 20 %. Immutable.
 *
 * <p>Equation: price = cost × (1 + markup).
 */
public final class Markup implements Profit {
    private static final BigDecimal MOST = BigDecimal.valueOf(100_000);

    private final Profits.Ratio ratio;

    Markup(Profits.Ratio ratio) {
        this.ratio = ratio;
    }

    /**
     * Makes a markup.
     *
     * @param percent per cent of the cost, 0 to 100 000
     * @return the markup
     * @throws Refused if it is out of range
     */
    public static Markup percent(BigDecimal percent) {
        Objects.requireNonNull(percent, "percent");
        if (percent.signum() < 0 || percent.compareTo(MOST) > 0) {
            throw Refused.of(
                    "price.markup",
                    "markup on cost: " + Decimals.plain(percent)
                            + " % given; must be from 0 to 100000 %. A price below the" + " cost is said as a price.",
                    "given",
                    Decimals.plain(percent),
                    "least",
                    0,
                    "most",
                    100_000);
        }
        return new Markup(new Profits.Ratio(percent, Decimals.HUNDRED));
    }

    /**
     * Makes a markup.
     *
     * @param percent per cent of the cost, 0 to 100 000, taken to twelve digits
     * @return the markup
     * @throws Refused if it is out of range
     */
    public static Markup percent(double percent) {
        return percent(Decimals.of(percent));
    }

    /**
     * Reads a markup.
     *
     * @param text for example {@code 20 % on cost}
     * @return the markup
     * @throws Refused if the text is none, is the other of the two, or is out of range
     * @throws org.papermath.quantity.Unclear if it is a bare per cent
     */
    public static Markup read(String text) {
        Profit read = Profit.read(text);
        if (read instanceof Markup markup) {
            return markup;
        }
        throw Profits.other(read, "on cost");
    }

    Profits.Ratio ratio() {
        return ratio;
    }

    @Override
    public Markup asMarkup() {
        return this;
    }

    @Override
    public Margin asMargin() {
        return new Margin(ratio);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Markup that && ratio.isSame(that.ratio);
    }

    @Override
    public int hashCode() {
        return ratio.hash();
    }

    /** Returns for example {@code 25 % on cost}: exactly to nine digits behind the point, else to four. */
    @Override
    public String toString() {
        return Profits.percent(ratio.profit(), ratio.cost()) + " on cost";
    }
}
