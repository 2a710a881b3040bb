package org.papermath.cost;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;

/**
 * A sum of money: a whole number of the smallest units of its currency, as many digits behind the point as the currency has in
 * the Java runtime ({@link Currency#getDefaultFractionDigits()}). Immutable; never rounded in silence. It may be below zero.
 *
 * <pre>{@code
 * Money sum = Money.of("12.30 EUR").plus(Money.of("0.70 EUR")); // 13.00 EUR
 * sum.split(3); // [4.34 EUR, 4.33 EUR, 4.33 EUR]
 * Money.of("10 EUR").dividedBy(3, java.math.RoundingMode.HALF_UP); // 3.33 EUR
 * }</pre>
 *
 * <p>There is no arithmetic across currencies: rates of exchange are of a day and of a bank.
 *
 * @source codes of currencies and their smallest units: ISO 4217, as the Java runtime has it
 */
public final class Money implements Comparable<Money> {
    private static final int MOST_DIGITS = 15;

    private final BigDecimal amount;
    private final Currency currency;

    private Money(BigDecimal amount, Currency currency) {
        this.amount = amount;
        this.currency = currency;
    }

    /**
     * Makes a sum of money.
     *
     * @param amount how much, with no more digits behind the point than the currency has
     * @param currency the currency
     * @return the money
     * @throws Refused if there are more digits, more than 15 before the point, or the currency has no smallest unit
     */
    public static Money of(BigDecimal amount, Currency currency) {
        Objects.requireNonNull(amount, "amount");
        Objects.requireNonNull(currency, "currency");
        int digits = digits(currency);
        BigDecimal checked = checkSize(amount, currency);
        if (checked.stripTrailingZeros().scale() > digits) {
            throw Refused.of(
                    "money.finer-than-coin",
                    "money: " + Decimals.plain(checked) + " " + currency.getCurrencyCode()
                            + " is finer than the smallest" + " unit, " + smallest(currency)
                            + ". Round it, and say how: Money.rounded(...).",
                    "given",
                    Decimals.plain(checked),
                    "currency",
                    currency.getCurrencyCode(),
                    "smallest",
                    smallest(currency).toString());
        }
        return new Money(checked.setScale(digits, RoundingMode.UNNECESSARY), currency);
    }

    /**
     * Reads a sum of money: a number with a decimal point, a space and the code of a currency.
     *
     * @param text for example {@code 12.30 EUR}
     * @return the money
     * @throws Refused if the text is none, or finer than the smallest unit
     * @throws Unclear if it has a sign that is the sign of several currencies
     */
    public static Money of(String text) {
        Objects.requireNonNull(text, "text");
        String bare = text.strip();
        int blank = bare.lastIndexOf(' ');
        String number = blank < 0 ? bare : bare.substring(0, blank).strip();
        String code = blank < 0 ? "" : bare.substring(blank + 1);
        askSign(bare);
        if (code.isEmpty()) {
            throw Refused.of(
                    "money.no-currency",
                    "money: \"" + Name.shown(bare) + "\" names no currency. Write a number, a space and the code of the"
                            + " currency, such as \"12.30 EUR\".",
                    "found",
                    Name.shown(bare));
        }
        return of(Decimals.read(number, "money"), currency(code));
    }

    /** Asks back where a sign stands for the money of several countries. */
    private static void askSign(String text) {
        String several = text.contains("$")
                ? "USD CAD AUD"
                : text.contains("¥") ? "JPY CNY" : text.contains("£") ? "GBP GIP" : "";
        if (!several.isEmpty()) {
            String number = text.replaceAll("[^0-9.]", "");
            throw new Unclear(
                    "money.which-currency",
                    "money: \"" + Name.shown(text) + "\" has a sign that several currencies share. Write the code.",
                    List.of(several.split(" ")).stream()
                            .map(code -> new Unclear.Candidate(code, number + " " + code))
                            .toList(),
                    "found",
                    Name.shown(text));
        }
    }

    /**
     * Finds a currency.
     *
     * @param code its code of three letters, for example {@code EUR}
     * @return the currency
     * @throws Refused if the runtime knows none of that code, or it has no smallest unit
     */
    public static Currency currency(String code) {
        Objects.requireNonNull(code, "code");
        Currency found;
        try {
            found = Currency.getInstance(code.strip());
        } catch (IllegalArgumentException unknown) {
            throw Refused.of(
                    "money.currency",
                    "currency: \"" + Name.shown(code)
                            + "\" is not the code of one. Write its three capital letters, such"
                            + " as EUR, GBP or USD.",
                    "given",
                    Name.shown(code));
        }
        digits(found);
        return found;
    }

    /**
     * Makes a sum of money from a number that may be finer than a coin.
     *
     * @param amount how much
     * @param currency the currency
     * @param rounding how to come to the smallest unit
     * @return the money
     * @throws Refused if it is more than 15 digits, or the currency has no smallest unit
     */
    public static Money rounded(BigDecimal amount, Currency currency, RoundingMode rounding) {
        Objects.requireNonNull(amount, "amount");
        Objects.requireNonNull(currency, "currency");
        Objects.requireNonNull(rounding, "rounding");
        int digits = digits(currency);
        return new Money(checkSize(amount, currency).setScale(digits, rounding), currency);
    }

    /**
     * Returns no money.
     *
     * @param currency the currency
     * @return zero of it
     * @throws Refused if the currency has no smallest unit
     */
    public static Money zero(Currency currency) {
        return of(BigDecimal.ZERO, currency);
    }

    private static int digits(Currency currency) {
        int digits = currency.getDefaultFractionDigits();
        if (digits < 0) {
            throw Refused.of(
                    "money.no-coin",
                    "currency: " + currency.getCurrencyCode()
                            + " has no smallest unit, so nothing is paid in it. Name the" + " currency of a country.",
                    "given",
                    currency.getCurrencyCode());
        }
        return digits;
    }

    private static BigDecimal checkSize(BigDecimal amount, Currency currency) {
        if ((long) amount.precision() - amount.scale() > MOST_DIGITS || Math.abs((long) amount.scale()) > 1000) {
            throw Refused.of(
                    "money.too-large",
                    "money: more than " + MOST_DIGITS + " digits of " + currency.getCurrencyCode()
                            + " before the point. Check the number.",
                    "currency",
                    currency.getCurrencyCode(),
                    "most",
                    MOST_DIGITS);
        }
        return amount;
    }

    private static Money smallest(Currency currency) {
        int digits = currency.getDefaultFractionDigits();
        return new Money(BigDecimal.ONE.movePointLeft(digits).setScale(digits), currency);
    }

    /**
     * Returns the number.
     *
     * @return with as many digits behind the point as the currency has
     */
    public BigDecimal amount() {
        return amount;
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
     * Returns the smallest unit of the currency.
     *
     * @return for example {@code 0.01 EUR}
     */
    public Money smallest() {
        return smallest(currency);
    }

    /**
     * Adds.
     *
     * @param other money of the same currency
     * @return the sum, exact
     * @throws Refused if it is of another currency
     */
    public Money plus(Money other) {
        return new Money(checkSize(amount.add(same(other).amount), currency), currency);
    }

    /**
     * Takes away.
     *
     * @param other money of the same currency
     * @return the difference, exact; below zero where there is less
     * @throws Refused if it is of another currency
     */
    public Money minus(Money other) {
        return new Money(checkSize(amount.subtract(same(other).amount), currency), currency);
    }

    /**
     * Multiplies by a count.
     *
     * @param count how many
     * @return the sum of so many, exact
     * @throws Refused if it comes to more than 15 digits
     */
    public Money times(int count) {
        return new Money(checkSize(amount.multiply(BigDecimal.valueOf(count)), currency), currency);
    }

    /**
     * Multiplies by a number.
     *
     * @param factor the number
     * @param rounding how to come to the smallest unit
     * @return the product, rounded once
     * @throws Refused if it comes to more than 15 digits
     */
    public Money times(BigDecimal factor, RoundingMode rounding) {
        Objects.requireNonNull(factor, "factor");
        return rounded(amount.multiply(factor), currency, rounding);
    }

    /**
     * Divides by a count: what one comes to. What the parts of a sum come to without loss, {@link #split} says.
     *
     * @param count how many, 1 or more
     * @param rounding how to come to the smallest unit
     * @return the quotient, rounded once
     * @throws Refused if the count is below 1
     */
    public Money dividedBy(int count, RoundingMode rounding) {
        Objects.requireNonNull(rounding, "rounding");
        requireCount(count);
        return new Money(amount.divide(BigDecimal.valueOf(count), amount.scale(), rounding), currency);
    }

    private static void requireCount(int count) {
        if (count < 1) {
            throw Refused.of(
                    "money.count",
                    "money over " + count + ": the count must be 1 or more.",
                    "given",
                    count,
                    "least",
                    1);
        }
    }

    /**
     * Splits into parts as alike as coins allow; the first ones are a coin larger.
     *
     * @param count how many parts, 1 to 1 000 000
     * @return the parts, which come to the whole
     * @throws Refused if the count is out of range
     */
    public List<Money> split(int count) {
        requireCount(count);
        if (count > 1_000_000) {
            throw Refused.of(
                    "money.count", "money over " + count + ": at most 1000000 parts.", "given", count, "least", 1);
        }
        return allocate(IntStream.range(0, count).mapToObj(i -> BigDecimal.ONE).toList());
    }

    /**
     * Shares out by weights, to the coin: each part is rounded down, and the coins that are left go to the parts that were
     * rounded down by most, the first of equals first (the method of largest remainders). Of money below zero the parts are
     * those of as much above zero, turned round.
     *
     * @param weights the weights, none below zero and not all zero
     * @return as many parts, which come to the whole
     * @throws Refused if there are no weights, one is below zero, or all are zero
     */
    public List<Money> allocate(List<BigDecimal> weights) {
        Objects.requireNonNull(weights, "weights");
        BigDecimal sum = weights.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
        if (sum.signum() <= 0 || weights.stream().anyMatch(one -> one.signum() < 0)) {
            throw Refused.of(
                    "money.weights",
                    "sharing out " + this + ": the weights " + weights + " must be 0 or more, and one of them above 0.",
                    "given",
                    weights.toString());
        }
        BigInteger coins = amount.unscaledValue().abs();
        List<BigInteger> parts = new ArrayList<>();
        List<BigDecimal> rests = new ArrayList<>();
        BigInteger left = coins;
        for (BigDecimal weight : weights) {
            BigDecimal[] part = new BigDecimal(coins).multiply(weight).divideAndRemainder(sum);
            parts.add(part[0].toBigInteger());
            rests.add(part[1]);
            left = left.subtract(part[0].toBigInteger());
        }
        List<Integer> byRest =
                new ArrayList<>(IntStream.range(0, parts.size()).boxed().toList());
        byRest.sort(Comparator.comparing((Integer i) -> rests.get(i)).reversed());
        for (int i = 0; i < left.intValueExact(); i++) {
            int at = byRest.get(i);
            parts.set(at, parts.get(at).add(BigInteger.ONE));
        }
        boolean below = amount.signum() < 0;
        return parts.stream()
                .map(part -> new Money(new BigDecimal(below ? part.negate() : part, amount.scale()), currency))
                .toList();
    }

    /**
     * Returns the same money on the other side of zero.
     *
     * @return the money
     */
    public Money negated() {
        return new Money(amount.negate(), currency);
    }

    /**
     * Returns on which side of zero it is.
     *
     * @return -1, 0 or 1
     */
    public int sign() {
        return amount.signum();
    }

    /** Returns the other, if it is of the same currency. */
    Money same(Money other) {
        Objects.requireNonNull(other, "other");
        if (!currency.equals(other.currency)) {
            throw Refused.of(
                    "money.other-currency",
                    "money: " + this + " and " + other
                            + " are of two currencies. Change one of them first, at a rate of"
                            + " your own, and say so on the list.",
                    "first",
                    toString(),
                    "second",
                    other.toString());
        }
        return other;
    }

    /**
     * Compares with money of the same currency.
     *
     * @throws Refused if it is of another currency
     */
    @Override
    public int compareTo(Money other) {
        return amount.compareTo(same(other).amount);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Money that && amount.equals(that.amount) && currency.equals(that.currency);
    }

    @Override
    public int hashCode() {
        return Objects.hash(amount, currency);
    }

    /** Returns for example {@code 12.30 EUR}, which {@link #of(String)} reads again. */
    @Override
    public String toString() {
        return amount.toPlainString() + " " + currency.getCurrencyCode();
    }
}
