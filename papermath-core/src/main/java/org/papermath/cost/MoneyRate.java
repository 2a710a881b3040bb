package org.papermath.cost;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Name;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * A price for so much of something: money per kilogram, per 500 g, per litre, cubic metre, hour, kilowatt-hour or piece.
 * Immutable.
 *
 * <pre>{@code
 * MoneyRate.read(Kinds.MASS, "18 EUR per kg").costOf(kilograms(2.77)); // 49.86 EUR
 * MoneyRate.read(Kinds.MASS, "6.40 EUR per 500 g pack").costOf(grams(812)); // 12.80 EUR
 * MoneyRate.read(Kinds.TIME, "748000 EUR per 44000 h").costOf(hours(2)); // 34.00 EUR
 * }</pre>
 *
 * <p>Equation: cost = money × amount ÷ per. The amount is converted to the unit of the rate and enters as a decimal number of
 * twelve digits, more than any scale shows and fewer than a double holds; from there on all is exact, and the cost is
 * rounded once, to the smallest unit of the currency, halves up. Of whole packs, amount ÷ per is rounded up first: what is
 * left of the last pack has been paid for. The money of a rate may be finer than a coin, such as 0.2834 EUR per kWh.
 *
 * @param <Q> the quantity type
 */
public final class MoneyRate<Q extends Quantity<Q>> {
    private static final Pattern TEXT = Pattern.compile("(\\S+) (\\S+) per (.+)");
    private static final String PACK = " pack";

    private final BigDecimal money;
    private final Currency currency;
    private final Amount<Q> per;
    private final boolean packs;

    private MoneyRate(BigDecimal money, Currency currency, Amount<Q> per, boolean packs) {
        this.money = money;
        this.currency = currency;
        this.per = per;
        this.packs = packs;
    }

    /**
     * Makes a rate.
     *
     * @param <Q> the quantity type
     * @param money the money, zero or more; it may be finer than a coin, to nine digits behind the point
     * @param currency the currency
     * @param per for how much, above zero
     * @return the rate, pro rata
     * @throws Refused if the money is below zero or too fine, or the amount is not above zero
     */
    public static <Q extends Quantity<Q>> MoneyRate<Q> of(BigDecimal money, Currency currency, Amount<Q> per) {
        Objects.requireNonNull(money, "money");
        Objects.requireNonNull(currency, "currency");
        Objects.requireNonNull(per, "per");
        Money.rounded(money, currency, RoundingMode.HALF_UP);
        if (money.signum() < 0 || money.stripTrailingZeros().scale() > 9) {
            throw Refused.of(
                    "money.rate",
                    "price per " + per + ": " + Decimals.plain(money) + " " + currency.getCurrencyCode()
                            + " given; must be 0 or more, with at most 9 digits behind the point.",
                    "given",
                    Decimals.plain(money));
        }
        per.kind().siAboveZero(per, "amount of a price");
        return new MoneyRate<>(money, currency, per, false);
    }

    /**
     * Makes a rate.
     *
     * @param <Q> the quantity type
     * @param money the money, zero or more
     * @param per for how much, above zero
     * @return the rate, pro rata
     * @throws Refused if the money is below zero, or the amount is not above zero
     */
    public static <Q extends Quantity<Q>> MoneyRate<Q> of(Money money, Amount<Q> per) {
        Objects.requireNonNull(money, "money");
        return of(money.amount(), money.currency(), per);
    }

    /**
     * Makes a price a piece.
     *
     * @param money the money, zero or more
     * @return the rate
     * @throws Refused if the money is below zero
     */
    public static MoneyRate<Dimensionless> each(Money money) {
        return of(money, Kinds.NUMBER.of(1, "1"));
    }

    /**
     * Reads a rate: money, the word per, and a unit or an amount; behind an amount the word pack, if whole packs are sold. Of
     * counts {@code per piece} and {@code per 100 pieces}.
     *
     * @param <Q> the quantity type
     * @param kind the kind it is a price of
     * @param text for example {@code 18 EUR per kg} or {@code 6.40 EUR per 500 g pack}
     * @return the rate
     * @throws Refused if the text is none, or the unit is not of the kind
     */
    public static <Q extends Quantity<Q>> MoneyRate<Q> read(Kind<Q> kind, String text) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(text, "text");
        String bare = text.strip();
        Matcher parts = TEXT.matcher(bare);
        if (!parts.matches()) {
            throw Refused.of(
                    "money.rate-text",
                    "price: \"" + Name.shown(bare) + "\" is not one. Write money, the word per and a unit of "
                            + kind.name() + ", such as \"" + example(kind) + "\".",
                    "found",
                    Name.shown(bare),
                    "quantity",
                    kind.name());
        }
        BigDecimal money = Decimals.read(parts.group(1), "price");
        Currency currency = Money.currency(parts.group(2));
        String amount = parts.group(3).strip();
        boolean packs = amount.endsWith(PACK);
        if (packs) {
            amount = amount.substring(0, amount.length() - PACK.length()).strip();
        }
        if (kind.codes().contains("1")) {
            amount = amount.replaceFirst("(^| )pieces?$", "");
        }
        boolean counted = !amount.isEmpty() && Character.isDigit(amount.charAt(0));
        MoneyRate<Q> rate;
        try {
            rate = of(money, currency, Units.read(kind, counted ? amount : ("1 " + amount).strip()));
        } catch (PapermathException e) {
            throw Refused.of(
                    "money.rate-text",
                    "price: \"" + Name.shown(bare) + "\" is not one. " + e.getMessage(),
                    "found",
                    Name.shown(bare),
                    "quantity",
                    kind.name());
        }
        return packs ? rate.inWholePacks() : rate;
    }

    private static String example(Kind<?> kind) {
        return "18 EUR per "
                + (kind.codes().get(0).equals("1") ? "piece" : kind.codes().get(0));
    }

    /**
     * Returns the same price of whole packs: what is bought is rounded up to packs of the amount it is for.
     *
     * @return the rate
     */
    public MoneyRate<Q> inWholePacks() {
        return new MoneyRate<>(money, currency, per, true);
    }

    /**
     * Returns what an amount costs.
     *
     * @param amount the amount, zero or more
     * @return the cost, rounded once to the smallest unit, halves up
     * @throws Refused if the amount is of another kind or below zero
     */
    public Money costOf(Quantity<Q> amount) {
        return costOf(amount, RoundingMode.HALF_UP);
    }

    /**
     * Returns what an amount costs.
     *
     * @param amount the amount, zero or more
     * @param rounding how to come to the smallest unit
     * @return the cost, rounded once
     * @throws Refused if the amount is of another kind or below zero
     */
    public Money costOf(Quantity<Q> amount, RoundingMode rounding) {
        return over(amount, BigDecimal.ONE, rounding);
    }

    /** What an amount costs of something that lasts for so many uses. */
    Money costOf(Quantity<Q> amount, int uses) {
        return over(amount, BigDecimal.valueOf(uses), RoundingMode.HALF_UP);
    }

    private Money over(Quantity<Q> amount, BigDecimal divisor, RoundingMode rounding) {
        Objects.requireNonNull(rounding, "rounding");
        if (packs) {
            return Money.rounded(money.multiply(BigDecimal.valueOf(packs(amount))), currency, rounding);
        }
        BigDecimal product = money.multiply(decimal(amount));
        int digits = Money.zero(currency).amount().scale();
        return Money.of(product.divide(exactPer().multiply(divisor), digits, rounding), currency);
    }

    /**
     * Returns how many packs an amount takes.
     *
     * @param amount the amount, zero or more
     * @return the packs, whole
     * @throws Refused if the amount is of another kind or below zero, or takes more packs than can be counted
     */
    public long packs(Quantity<Q> amount) {
        BigDecimal count = decimal(amount).divide(exactPer(), 0, RoundingMode.CEILING);
        if (count.precision() - count.scale() > 15) {
            throw Refused.of(
                    "money.packs",
                    "packs of " + per + ": too many of them for " + amount + ".",
                    "given",
                    String.valueOf(amount));
        }
        return count.longValueExact();
    }

    private BigDecimal exactPer() {
        return Decimals.of(per.value());
    }

    private BigDecimal decimal(Quantity<Q> amount) {
        Amount<Q> checked = per.kind().check(Objects.requireNonNull(amount, "amount"), "amount to be paid for");
        if (checked.si() < 0) {
            throw Refused.of(
                    "money.amount-below-zero",
                    "amount to be paid for: " + checked + " given; must be 0 or more.",
                    "given",
                    checked.toString());
        }
        return Decimals.of(checked.in(per.getUnit()));
    }

    /**
     * Returns the money.
     *
     * @return zero or more; perhaps finer than a coin
     */
    public BigDecimal money() {
        return money;
    }

    /**
     * Returns the currency.
     *
     * @return the currency
     */
    public Currency currency() {
        return currency;
    }

    /**
     * Returns for how much the money is.
     *
     * @return the amount, in the unit it was given in
     */
    public Amount<Q> per() {
        return per;
    }

    /**
     * Returns whether whole packs are paid for.
     *
     * @return false where the price is pro rata
     */
    public boolean isInWholePacks() {
        return packs;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MoneyRate<?> that
                && money.compareTo(that.money) == 0
                && currency.equals(that.currency)
                && per.kind() == that.per.kind()
                && per.equals(that.per)
                && packs == that.packs;
    }

    @Override
    public int hashCode() {
        return Objects.hash(money.stripTrailingZeros(), currency, per, packs);
    }

    /** Returns for example {@code 18 EUR per kg}, which {@link #read} reads again. */
    @Override
    public String toString() {
        String amount = Units.print(per);
        boolean plain = per.kind().codes().contains("1");
        if (plain) {
            amount = per.value() == 1 ? "piece" : amount + " pieces";
        } else if (per.value() == 1 && amount.startsWith("1 ")) {
            amount = packs ? amount : amount.substring(2);
        }
        return Decimals.plain(money) + " " + currency.getCurrencyCode() + " per " + amount + (packs ? PACK : "");
    }
}
