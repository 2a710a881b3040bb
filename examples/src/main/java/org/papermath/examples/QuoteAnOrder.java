package org.papermath.examples;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.papermath.cost.Costing;
import org.papermath.cost.Margin;
import org.papermath.cost.Money;
import org.papermath.cost.PriceList;
import org.papermath.cost.PricePoint;
import org.papermath.cost.Pricing;
import org.papermath.cost.Quotation;
import org.papermath.json.PapermathDocuments;
import org.papermath.plan.MakingPlan;

/** Costs the sample order by an invented list of prices, and prints the costs for the studio and a quotation for the customer. */
public final class QuoteAnOrder {
    private static final String PRICES = "midwinter-concert/prices.json";

    private QuoteAnOrder() {}

    /**
     * Prints the costs and the quotation.
     *
     * @param args none
     */
    public static void main(String[] args) {
        PrintStream out = Output.utf8();
        print(out);
    }

    static void print(PrintStream out) {
        Costing costing = Costing.of(MakingPlan.of(Embed.order(), Embed.studio()), prices());
        costing.lines().forEach(out::println);
        out.println(costing);
        out.println("of it fixed " + costing.fixed() + "; the rejects cost " + costing.rejects());
        costing.pieces().forEach(out::println);
        out.println();
        out.print(quotation(costing));
    }

    /**
     * Returns the invented list of prices that comes with the sample order.
     *
     * @return the list
     */
    public static PriceList prices() {
        try (InputStream in = QuoteAnOrder.class.getResourceAsStream(PRICES)) {
            if (in == null) {
                throw new IllegalStateException("the sample is incomplete: " + PRICES + " is missing");
            }
            return PapermathDocuments.readPrices(in.readAllBytes(), PRICES).value();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Quotation quotation(Costing costing) {
        Pricing pricing = Pricing.of(costing, Margin.percent(30)).at(PricePoint.every(Money.of("0.10 EUR")));
        return Quotation.from(pricing, LocalDate.of(2026, 11, 28), 30)
                .secondsLess(new BigDecimal("15"))
                .deposit(new BigDecimal("40"))
                .build();
    }
}
