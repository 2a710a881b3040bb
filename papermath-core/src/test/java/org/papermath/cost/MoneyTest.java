package org.papermath.cost;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;

class MoneyTest {
    private static final Money TEN = Money.of("10 EUR");

    @Test
    void theSmallestUnitIsThatOfTheCurrency() {
        assertThat(Money.of("3 EUR")).hasToString("3.00 EUR");
        assertThat(Money.of("3 JPY")).hasToString("3 JPY");
        assertThat(Money.of("3 KWD").smallest()).hasToString("0.001 KWD");
        assertThat(Money.of("3.10 EUR")).isEqualTo(Money.of("3.1 EUR"));
        assertThat(Money.of("-0.05 EUR").sign()).isNegative();
        assertThatThrownBy(() -> Money.of("3.5 JPY"))
                .isInstanceOf(Refused.class)
                .hasMessage("money: 3.5 JPY is finer than the smallest unit, 1 JPY. Round it, and say how:"
                        + " Money.rounded(...).");
        assertThat(Money.rounded(new BigDecimal("3.5"), Currency.getInstance("JPY"), RoundingMode.HALF_UP))
                .hasToString("4 JPY");
    }

    @ParameterizedTest
    @CsvSource({
        "12.30,money.no-currency",
        "twelve EUR,money.number",
        "'12,30 EUR',money.number",
        "1e9 EUR,money.number",
        "12.30 EUROS,money.currency",
        "12.30 XAU,money.no-coin",
        "12.301 EUR,money.finer-than-coin",
        "1234567890123456 EUR,money.number"
    })
    void whatIsNoMoneyIsRefused(String text, String code) {
        assertThatThrownBy(() -> Money.of(text))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo(code));
    }

    @Test
    void aSignOfSeveralCurrenciesIsAskedBack() {
        Unclear asked = catchThrowableOfType(Unclear.class, () -> Money.of("$ 12.50"));
        assertThat(asked.code()).isEqualTo("money.which-currency");
        assertThat(asked.candidates()).extracting(Unclear.Candidate::meaning).contains("USD", "CAD");
    }

    @Test
    void currenciesDoNotMix() {
        assertThatThrownBy(() -> TEN.plus(Money.of("1 GBP")))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("money: 10.00 EUR and 1.00 GBP are of two currencies.");
        assertThatThrownBy(() -> TEN.compareTo(Money.of("1 GBP"))).isInstanceOf(Refused.class);
    }

    @Test
    void partsComeToTheWholeAndTheLargestRestsComeFirst() {
        assertThat(TEN.split(3)).extracting(Money::toString).containsExactly("3.34 EUR", "3.33 EUR", "3.33 EUR");
        assertThat(Money.of("0.05 EUR").allocate(List.of(BigDecimal.ONE, BigDecimal.valueOf(3), BigDecimal.valueOf(3))))
                .extracting(Money::toString)
                .containsExactly("0.01 EUR", "0.02 EUR", "0.02 EUR");
        assertThatThrownBy(() -> TEN.allocate(List.of(BigDecimal.ZERO))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> TEN.allocate(List.of(BigDecimal.ONE, BigDecimal.valueOf(-1))))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> TEN.dividedBy(0, RoundingMode.HALF_UP)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Money.of("999999999999999 EUR").times(2))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo("money.too-large"));
    }

    @Test
    void aRateIsMultipliedOnceAndRoundedOnce() {
        assertThat(MoneyRate.read(Kinds.MASS, "18 EUR per kg").costOf(kilograms(2.77)))
                .hasToString("49.86 EUR");
        // A tenth and two tenths are three tenths here.
        assertThat(MoneyRate.read(Kinds.MASS, "0.05 EUR per 0.3 kg").costOf(kilograms(0.1 + 0.2)))
                .hasToString("0.05 EUR");
        assertThat(MoneyRate.read(Kinds.MASS, "12 EUR per lb").costOf(grams(453.59237)))
                .hasToString("12.00 EUR");
        assertThat(MoneyRate.read(Kinds.ENERGY, "0.314 EUR per kW.h").costOf(Kinds.ENERGY.of(36, "MJ")))
                .hasToString("3.14 EUR");
        assertThat(MoneyRate.read(Kinds.NUMBER, "3.40 EUR per 100 pieces").costOf(Kinds.NUMBER.of(50, "1")))
                .hasToString("1.70 EUR");
        assertThat(MoneyRate.each(Money.of("0.12 EUR"))).hasToString("0.12 EUR per piece");
    }

    @Test
    void packsAreRoundedUp() {
        MoneyRate<javax.measure.quantity.Mass> pack = MoneyRate.read(Kinds.MASS, "6.40 EUR per 500 g pack");
        assertThat(pack.costOf(grams(812))).hasToString("12.80 EUR");
        assertThat(pack.costOf(grams(500))).hasToString("6.40 EUR");
        assertThat(pack.costOf(kilograms(0.1).add(kilograms(0.4)))).hasToString("6.40 EUR");
        assertThat(pack.packs(grams(0))).isZero();
        assertThat(pack)
                .hasToString("6.4 EUR per 500 g pack")
                .isNotEqualTo(MoneyRate.read(Kinds.MASS, "6.40 EUR per 500 g"));
        assertThat(MoneyRate.read(Kinds.MASS, "4.20 EUR per 1 kg pack").packs(grams(1001)))
                .isEqualTo(2);
    }

    @ParameterizedTest
    @CsvSource({
        "18 EUR/kg,money.rate-text",
        "18 per kg,money.rate-text",
        "18 EUR per litre,money.rate-text",
        "-1 EUR per kg,money.rate-text",
        "18 EUR per 0 kg,money.rate-text"
    })
    void whatIsNoRateIsRefused(String text, String code) {
        assertThatThrownBy(() -> MoneyRate.read(Kinds.MASS, text))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo(code));
    }

    @Test
    void markupIsNotMargin() {
        Money cost = Money.of("4290 EUR");
        assertThat(Markup.percent(20).priceOf(cost)).hasToString("5148.00 EUR");
        assertThat(Margin.percent(20).priceOf(cost)).hasToString("5362.50 EUR");
        assertThat(Markup.percent(25).asMargin()).isEqualTo(Margin.percent(20)).hasToString("20 % of the price");
        assertThat(Margin.percent(20).asMarkup()).isEqualTo(Markup.percent(25)).hasToString("25 % on cost");
        assertThat(Markup.percent(100).asMargin()).hasToString("50 % of the price");
        assertThat(Profit.read("20 % on cost")).isEqualTo(Markup.percent(20));
        assertThat(Profit.read("20% of the price")).isEqualTo(Margin.percent(20));
        assertThat(Margin.percent(20).costAt(Money.of("5362.50 EUR"))).isEqualTo(cost);
        assertThatThrownBy(() -> Margin.percent(100))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("must be 0 % or more and below 100 %");
        assertThatThrownBy(() -> Markup.percent(-1)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Profit.read("a fifth")).isInstanceOf(Refused.class);
    }

    @Test
    void aBarePerCentIsAskedBackWithBothPrices() {
        Unclear asked = catchThrowableOfType(Unclear.class, () -> Profit.read("20 %", Money.of("4290 EUR")));
        assertThat(asked.code()).isEqualTo("price.which-per-cent");
        assertThat(asked.candidates())
                .extracting(Unclear.Candidate::toString)
                .containsExactly("20 % on cost (price 5148.00 EUR)", "20 % of the price (price 5362.50 EUR)");
        assertThat(catchThrowableOfType(Unclear.class, () -> Profit.read("20 %"))
                        .candidates())
                .extracting(Unclear.Candidate::gives)
                .containsExactly("price 120 at a cost of 100", "price 125 at a cost of 100");
        assertThat(catchThrowableOfType(Unclear.class, () -> Profit.read("150 %"))
                        .candidates()
                        .get(1)
                        .gives())
                .startsWith("cannot be");
    }

    @Test
    void pricePointsRoundUp() {
        assertThat(PricePoint.every(Money.of("0.50 EUR")).roundUp(Money.of("12.13 EUR")))
                .hasToString("12.50 EUR");
        PricePoint ninety = PricePoint.every(Money.of("1 EUR")).less(Money.of("0.10 EUR"));
        assertThat(ninety.roundUp(Money.of("12.13 EUR"))).hasToString("12.90 EUR");
        assertThat(ninety.roundUp(Money.of("12.90 EUR"))).hasToString("12.90 EUR");
        assertThat(ninety.roundUp(Money.of("12.91 EUR"))).hasToString("13.90 EUR");
        assertThatThrownBy(() -> PricePoint.every(Money.of("0 EUR"))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> ninety.less(Money.of("1 EUR"))).isInstanceOf(Refused.class);
    }

    @Test
    void overheadsSayHowAnOrderTakesItsPart() {
        assertThat(Overhead.perMonth("rent", Money.of("620 EUR"), hours(120))).hasToString("rent: 620 EUR per 120 h");
        assertThat(Overhead.perDay("stall", Money.of("40 EUR"))).hasToString("stall: 40.00 EUR per working day");
        assertThatThrownBy(() -> Overhead.perDay(" ", Money.of("40 EUR"))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> OwnLine.perOrder("proofs", Money.of("5 EUR")).only("menu"))
                .isInstanceOf(Refused.class);
        assertThat(OwnLine.perParcel("postage", Money.of("7.90 EUR"), 50).only("menu"))
                .hasToString("postage: 7.90 EUR per parcel of 50, menu only");
        assertThatThrownBy(() -> Wear.of(MoneyRate.each(Money.of("4 EUR")), 0)).isInstanceOf(Refused.class);
    }
}
