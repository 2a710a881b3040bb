package org.papermath.cost;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Objects;
import org.papermath.quantity.Refused;

/**
 * Where prices stand: at every so much, or so much less than that. What is worked out is rounded up to the next one. Immutable.
 *
 * <pre>{@code
 * PricePoint.every(Money.of("0.50 EUR")).roundUp(Money.of("12.13 EUR")); // 12.50 EUR
 * PricePoint.every(Money.of("1 EUR")).less(Money.of("0.10 EUR")).roundUp(Money.of("12.13 EUR")); // 12.90 EUR
 * }</pre>
 */
public final class PricePoint {
    private final Money step;
    private final Money less;

    private PricePoint(Money step, Money less) {
        this.step = step;
        this.less = less;
    }

    /**
     * Makes price points a step apart.
     *
     * @param step the step, above zero
     * @return the price points
     * @throws Refused if the step is not above zero
     */
    public static PricePoint every(Money step) {
        Objects.requireNonNull(step, "step");
        return checked(step, Money.zero(step.currency()));
    }

    private static PricePoint checked(Money step, Money less) {
        if (step.sign() <= 0 || less.sign() < 0 || less.compareTo(step) >= 0) {
            throw Refused.of(
                    "price.point",
                    "price points: every " + step + ", less " + less + " given; the step must be above 0, and what is"
                            + " taken off it less than the step.",
                    "step",
                    step.toString(),
                    "less",
                    less.toString());
        }
        return new PricePoint(step, less);
    }

    /**
     * Returns price points that stand lower than those of whole steps.
     *
     * @param money by how much, less than a step
     * @return the price points
     * @throws Refused if it is below zero, a step or more, or of another currency
     */
    public PricePoint less(Money money) {
        return checked(step, step.same(money));
    }

    /**
     * Rounds a price up to the next price point; one that stands on a point stays.
     *
     * @param price the price, zero or more
     * @return the price point, never below the price
     * @throws Refused if the price is below zero or of another currency
     */
    public Money roundUp(Money price) {
        OwnLine.requireNotBelowZero(step.same(price), "price");
        BigDecimal steps = price.plus(less).amount().divide(step.amount(), 0, RoundingMode.CEILING);
        return step.times(steps.max(BigDecimal.ONE), RoundingMode.UNNECESSARY).minus(less);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PricePoint that && step.equals(that.step) && less.equals(that.less);
    }

    @Override
    public int hashCode() {
        return Objects.hash(step, less);
    }

    @Override
    public String toString() {
        return "every " + step + (less.sign() > 0 ? ", less " + less : "");
    }
}
