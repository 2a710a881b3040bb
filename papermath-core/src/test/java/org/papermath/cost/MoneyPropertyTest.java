package org.papermath.cost;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.papermath.quantity.Kinds;

class MoneyPropertyTest {
    private static final long MANY = 99_999_999_999L;

    private static Money money(Currency currency, long coins) {
        return Money.of(BigDecimal.valueOf(coins, currency.getDefaultFractionDigits()), currency);
    }

    /** Of two digits, of none and of three. */
    @Provide
    Arbitrary<Currency> currency() {
        return Arbitraries.of("EUR", "JPY", "KWD").map(Currency::getInstance);
    }

    @Property(seed = "2026")
    void sumsAreThoseOfCoins(
            @ForAll("currency") Currency currency,
            @ForAll @LongRange(min = -MANY, max = MANY) long one,
            @ForAll @LongRange(min = -MANY, max = MANY) long other) {
        assertThat(money(currency, one).plus(money(currency, other))).isEqualTo(money(currency, one + other));
        assertThat(money(currency, one).minus(money(currency, other))).isEqualTo(money(currency, one - other));
        assertThat(Money.of(money(currency, one).toString())).isEqualTo(money(currency, one));
        assertThat(money(currency, one).compareTo(money(currency, other))).isEqualTo(Long.compare(one, other));
    }

    @Property(seed = "2026")
    void partsComeToTheWhole(
            @ForAll("currency") Currency currency,
            @ForAll @LongRange(min = -MANY, max = MANY) long coins,
            @ForAll @Size(min = 1, max = 12) List<@IntRange(min = 0, max = 1000) Integer> weights) {
        List<BigDecimal> given = weights.stream().map(BigDecimal::valueOf).toList();
        BigDecimal all = given.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
        if (all.signum() == 0) {
            return;
        }
        Money whole = money(currency, coins);
        List<Money> parts = whole.allocate(given);
        assertThat(parts.stream().reduce(Money.zero(currency), Money::plus)).isEqualTo(whole);
        for (int i = 0; i < parts.size(); i++) {
            BigDecimal exact = whole.amount().multiply(given.get(i)).divide(all, 20, RoundingMode.HALF_UP);
            assertThat(parts.get(i).amount().subtract(exact).abs())
                    .as("within a coin of its share")
                    .isLessThan(whole.smallest().amount());
        }
    }

    @Property(seed = "2026")
    void splittingIsFair(
            @ForAll @LongRange(max = MANY, min = 0) long coins, @ForAll @IntRange(min = 1, max = 500) int count) {
        Money whole = money(Currency.getInstance("EUR"), coins);
        List<Money> parts = whole.split(count);
        assertThat(parts).hasSize(count);
        assertThat(parts.get(0).minus(parts.get(count - 1)).compareTo(whole.smallest()))
                .isLessThanOrEqualTo(0);
        assertThat(parts.stream().reduce(Money.zero(whole.currency()), Money::plus))
                .isEqualTo(whole);
    }

    @Property(seed = "2026")
    void markupAndMarginComeBack(
            @ForAll @IntRange(min = 0, max = 99_999) int thousandths,
            @ForAll @LongRange(min = 0, max = MANY) long coins) {
        Margin margin = Margin.percent(BigDecimal.valueOf(thousandths, 3));
        Markup markup = Markup.percent(BigDecimal.valueOf(thousandths, 3));
        assertThat(margin.asMarkup().asMargin()).isEqualTo(margin).hasSameHashCodeAs(margin);
        assertThat(markup.asMargin().asMarkup()).isEqualTo(markup);
        Money cost = money(Currency.getInstance("EUR"), coins);
        assertThat(margin.asMarkup().priceOf(cost)).isEqualTo(margin.priceOf(cost));
        assertThat(margin.priceOf(cost)).isGreaterThanOrEqualTo(markup.priceOf(cost));
        assertThat(markup.costAt(markup.priceOf(cost)).minus(cost).amount().abs())
                .as("the price is rounded to a coin, so the cost comes back within one")
                .isLessThanOrEqualTo(cost.smallest().amount());
    }

    @Property(seed = "2026")
    void aDearerRateNeverCostsLess(
            @ForAll @LongRange(min = 0, max = 1_000_000) long rate,
            @ForAll @LongRange(min = 0, max = 1_000_000) long more,
            @ForAll @DoubleRange(min = 0, max = 1e6) double amount,
            @ForAll boolean packs) {
        MoneyRate<javax.measure.quantity.Mass> cheap = rate(rate, packs);
        MoneyRate<javax.measure.quantity.Mass> dear = rate(rate + more, packs);
        var mass = Kinds.MASS.of(amount, "g");
        assertThat(dear.costOf(mass)).isGreaterThanOrEqualTo(cheap.costOf(mass));
        assertThat(cheap.costOf(Kinds.MASS.of(amount * 1.01, "g"))).isGreaterThanOrEqualTo(cheap.costOf(mass));
        assertThat(cheap.inWholePacks().costOf(mass)).isGreaterThanOrEqualTo(cheap.costOf(mass));
    }

    private static MoneyRate<javax.measure.quantity.Mass> rate(long thousandths, boolean packs) {
        var rate =
                MoneyRate.of(BigDecimal.valueOf(thousandths, 3), Currency.getInstance("EUR"), Kinds.MASS.of(250, "g"));
        return packs ? rate.inWholePacks() : rate;
    }

    @Property(seed = "2026")
    void ratesAreReadAsTheyArePrinted(
            @ForAll @LongRange(min = 0, max = 1_000_000_000) long millionths,
            @ForAll @DoubleRange(min = 0.01, max = 1000) double per,
            @ForAll boolean packs) {
        var rate =
                MoneyRate.of(BigDecimal.valueOf(millionths, 6), Currency.getInstance("EUR"), Kinds.VOLUME.of(per, "L"));
        var given = packs ? rate.inWholePacks() : rate;
        assertThat(MoneyRate.read(Kinds.VOLUME, given.toString())).isEqualTo(given);
    }

    @Property(seed = "2026")
    void aPriceIsRoundedUpByLessThanAStep(
            @ForAll @LongRange(min = 0, max = 10_000_000) long coins, @ForAll @IntRange(min = 1, max = 5000) int step) {
        Currency euro = Currency.getInstance("EUR");
        PricePoint points = PricePoint.every(money(euro, step)).less(money(euro, step / 3));
        Money price = money(euro, coins);
        Money up = points.roundUp(price);
        assertThat(up).isGreaterThanOrEqualTo(price);
        assertThat(points.roundUp(up)).isEqualTo(up);
        if (coins > step) {
            assertThat(up.minus(price).compareTo(money(euro, step))).isNegative();
        }
    }
}
