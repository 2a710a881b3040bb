package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.networknt.schema.InputFormat;
import org.junit.jupiter.api.Test;
import org.papermath.cost.Costing;
import org.papermath.cost.Markup;
import org.papermath.cost.Money;
import org.papermath.cost.PriceList;
import org.papermath.cost.Pricing;
import org.papermath.cost.Quotation;
import org.papermath.plan.MakingPlan;

class PricesDocumentTest {
    @Test
    void aListIsReadWrittenAndReadAgain() {
        Document<PriceList> read = PapermathDocuments.readPrices(Shop.PRICES);
        PriceList list = read.value();
        assertThat(list.overheads()).extracting(Object::toString).contains("office: 15 % on cost");
        assertThat(list.lines())
                .extracting(Object::toString)
                .contains("postage: 7.90 EUR per parcel of 50, programme only");
        assertThat(list.blotter()).get().hasToString("38 EUR per 100 pieces, lasts 30 uses");
        String written = PapermathDocuments.writePrices(read);
        assertThat(written).contains("\"x-shop\": \"the mill by the weir\"");
        assertThat(Judged.schema("prices").validate(written, InputFormat.JSON)).isEmpty();
        Document<PriceList> again = PapermathDocuments.readPrices(written);
        assertThat(again.value()).isEqualTo(list);
        assertThat(PapermathDocuments.writePrices(again)).isEqualTo(written);
        assertThat(PapermathDocuments.readPrices(PapermathDocuments.writePrices(Document.of(list)))
                        .value())
                .isEqualTo(list);
    }

    @Test
    void aQuotationIsReadWrittenAndReadAgain() {
        Document<Quotation> read = PapermathDocuments.readQuotation(Shop.QUOTATION);
        assertThat(read.value().toPay()).isEqualTo(Money.of("1406.82 EUR"));
        String written = PapermathDocuments.writeQuotation(read);
        assertThat(written).contains("\"x-shelf\": 3");
        assertThat(Judged.schema("quotation").validate(written, InputFormat.JSON))
                .isEmpty();
        Document<Quotation> again = PapermathDocuments.readQuotation(written);
        assertThat(again.value()).isEqualTo(read.value());
        assertThat(PapermathDocuments.writeQuotation(again)).isEqualTo(written);
        assertThat(again.value()).hasToString(read.value().toString());
    }

    /** A quotation of a plan, with all that is promised from its bands. */
    @Test
    void aQuotationOfAPlanIsReadAsItWasWritten() {
        OrderDocument concert = Concert.read().value();
        PriceList list = PapermathDocuments.readPrices(Shop.PRICES).value();
        Costing costing = Costing.of(MakingPlan.of(concert.order(), concert.studio()), list);
        assertThat(costing.isAtLeast()).isTrue();
        Quotation quotation = Quotation.of(
                        "spring concert",
                        concert.studio().name(),
                        list.date(),
                        list.date().plusDays(14),
                        list.currency())
                .line(
                        "programme",
                        70,
                        Pricing.of(costing, Markup.percent(30))
                                .piece("programme")
                                .price(),
                        java.util.List.of())
                .build();
        assertThat(PapermathDocuments.readQuotation(PapermathDocuments.writeQuotation(Document.of(quotation)))
                        .value())
                .isEqualTo(quotation);
    }

    @Test
    void allFaultsAreReportedAtOnce() {
        DocumentException refused = catchThrowableOfType(
                DocumentException.class,
                () -> PapermathDocuments.readPrices(Shop.PRICES
                        .replace("14 EUR per kg", "14 EUR/kg")
                        .replace("15 % on cost", "15 %")
                        .replace("\"7.90 EUR\"", "\"7,90 EUR\"")
                        .replace("\"uses\": 400", "\"uses\": 0")));
        assertThat(refused.faults())
                .extracting(Fault::code)
                .containsExactlyInAnyOrder("money.rate-text", "price.which-per-cent", "money.number", "number.range");
        assertThat(refused).hasMessageContaining("15 % on cost (price 115 at a cost of 100)");
    }
}
