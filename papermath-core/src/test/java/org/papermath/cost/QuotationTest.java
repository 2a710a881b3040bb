package org.papermath.cost;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.cost.CostSample.EUR;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Refused;

class QuotationTest {
    private static final LocalDate DAY = LocalDate.of(2027, 1, 5);

    private static Quotation.Builder two() {
        return Quotation.of("menus", "the frame", DAY, DAY.plusDays(30), EUR)
                .line("menu", 60, Money.of("12.50 EUR"), List.of("size 148 mm by 210 mm", "weight 140 g/m²"))
                .line("card", 40, Money.of("3.20 EUR"), List.of());
    }

    @Test
    void sumsTaxAndDepositAreExact() {
        Quotation quotation = two().tax("sales tax", new BigDecimal("19"))
                .deposit(new BigDecimal("40"))
                .secondsLess(new BigDecimal("15"))
                .build();
        assertThat(quotation.sum()).isEqualTo(Money.of("878 EUR"));
        assertThat(quotation.tax()).isEqualTo(Money.of("166.82 EUR"));
        assertThat(quotation.toPay()).isEqualTo(Money.of("1044.82 EUR"));
        assertThat(quotation.deposit()).isEqualTo(Money.of("417.93 EUR"));
        assertThat(quotation.lines().get(0).seconds()).contains(Money.of("10.63 EUR"));
        assertThat(quotation.holdsOn(DAY.plusDays(30))).isTrue();
        assertThat(quotation.holdsOn(DAY.plusDays(31))).isFalse();
        assertThat(quotation.toBuilder().build()).isEqualTo(quotation);
        assertThat(two().leastOrder(Money.of("900 EUR")).build().sum()).isEqualTo(Money.of("900 EUR"));
    }

    @Test
    void theTextIsPlainAndFitsEightyColumns() {
        String text = two().tax("sales tax", new BigDecimal("19"))
                .deposit(new BigDecimal("40"))
                .seconds("menu", Money.of("10 EUR"))
                .restsOn("table of assumptions 2026-11")
                .note("Paper by hand: no two sheets are quite alike.")
                .build()
                .toString();
        assertThat(text.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        assertThat(text).isEqualTo("""
                        QUOTATION: menus
                        from the frame, 2027-01-05; holds until 2027-02-04; in EUR

                        piece                                         count         each             sum
                        --------------------------------------------------------------------------------
                        menu                                             60        12.50          750.00
                          size 148 mm by 210 mm
                          weight 140 g/m²
                          seconds, if there are any, at 10.00 each
                        card                                             40         3.20          128.00
                        --------------------------------------------------------------------------------
                        sum                                                                       878.00
                        sales tax 19 %                                                            166.82
                        to pay                                                                   1044.82
                        of it with the order, 40 %                                                417.93

                        Sizes, weights and thicknesses are those that nine makings in ten will give as
                        their mean; single pieces differ from it by what is said beside.
                        They rest on: table of assumptions 2026-11.
                        Paper by hand: no two sheets are quite alike.
                        """);
    }

    /** A long name and a long tax break over lines and lose nothing. */
    @Test
    void longWordsAreBroken() {
        String longName = "a folded programme for the winter evening with a deckle edge on all sides and a ribbon";
        String text = Quotation.of(longName, longName, DAY, DAY, EUR)
                .line(longName, 1, Money.of("999999999.99 EUR"), List.of(longName))
                .tax(longName, new BigDecimal("7.5"))
                .build()
                .toString();
        assertThat(text.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        assertThat(text.replaceAll("\\s+", " "))
                .contains("ribbon 1 999999999.99")
                .contains("ribbon 7.5 %");
    }

    @Test
    void whatIsPromisedComesFromThePlan() {
        Quotation quotation = Quotation.from(Pricing.of(CostSample.costing(), Margin.percent(30)), DAY, 30)
                .build();
        assertThat(quotation.name()).isEqualTo("supper of the guild");
        assertThat(quotation.studio()).isEqualTo("test studio");
        assertThat(quotation.lines()).extracting(Quotation.Line::piece).containsExactly("menu", "place card", "cover");
        assertThat(quotation.lines().get(0).promised()).hasSize(3);
        assertThat(quotation.lines().get(0).promised().get(1))
                .startsWith("weight ")
                .contains("g/m²", "single pieces ±");
        assertThat(quotation.restsOn()).contains("2026-11").contains("0 were measured in this studio");
    }

    @Test
    void whatCannotBeOfferedIsRefused() {
        assertThatThrownBy(() -> Quotation.of("a", "b", DAY, DAY.minusDays(1), EUR))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Quotation.of("a", "b", DAY, DAY, EUR).build()).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> two().seconds("menu", Money.of("12.51 EUR"))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> two().seconds("programme", Money.of("1 EUR"))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> two().deposit(new BigDecimal("101"))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> two().line("x", 1, Money.of("1 GBP"), List.of()))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> two().line("x", 0, Money.of("1 EUR"), List.of()))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> two().line("x", 1, Money.of("-1 EUR"), List.of()))
                .isInstanceOf(Refused.class);
    }
}
