package org.papermath.cost;

import java.util.Objects;
import javax.measure.quantity.Dimensionless;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * Something that lasts for many uses and is worn by each, a felt or a blotter. Immutable.
 *
 * <p>Equation: cost = price of one × times used ÷ uses it lasts, rounded once.
 */
public final class Wear {
    /** The most uses something lasts. */
    public static final int MOST_USES = 1_000_000;

    private final MoneyRate<Dimensionless> price;
    private final int uses;

    private Wear(MoneyRate<Dimensionless> price, int uses) {
        this.price = price;
        this.uses = uses;
    }

    /**
     * Makes what wears.
     *
     * @param price the price of one, such as {@code 4.20 EUR per piece}
     * @param uses how many uses it lasts, 1 to {@link #MOST_USES}
     * @return the wear
     * @throws Refused if the uses are out of range, or the price is one of whole packs
     */
    public static Wear of(MoneyRate<Dimensionless> price, int uses) {
        Objects.requireNonNull(price, "price");
        if (uses < 1 || uses > MOST_USES || price.isInWholePacks()) {
            throw Refused.of(
                    "price.uses",
                    "wear: " + uses + " uses at " + price + " given; must be from 1 to " + MOST_USES
                            + " uses, at a price that is not one of whole packs.",
                    "given",
                    uses,
                    "least",
                    1,
                    "most",
                    MOST_USES);
        }
        return new Wear(price, uses);
    }

    /** What so many uses cost. */
    Money costOf(int times) {
        return price.costOf(Kinds.NUMBER.of(times, "1"), uses);
    }

    /**
     * Returns the price of one.
     *
     * @return the price
     */
    public MoneyRate<Dimensionless> price() {
        return price;
    }

    /**
     * Returns how many uses it lasts.
     *
     * @return 1 or more
     */
    public int uses() {
        return uses;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Wear that && price.equals(that.price) && uses == that.uses;
    }

    @Override
    public int hashCode() {
        return Objects.hash(price, uses);
    }

    @Override
    public String toString() {
        return price + ", lasts " + uses + " uses";
    }
}
