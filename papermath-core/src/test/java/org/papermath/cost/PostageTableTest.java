package org.papermath.cost;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.grams;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.mail.MailLimits;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Refused;

/** Postage by the studio's own table; every rate is invented. */
class PostageTableTest {
    private static final LocalDate OLD = LocalDate.of(2025, 1, 1);
    private static final LocalDate NEW = LocalDate.of(2027, 1, 1);
    private static final LocalDate DAY = LocalDate.of(2027, 3, 5);
    private static final String READ = "leaflet, invented";

    private static PostageTable.Builder table() {
        return PostageTable.of("a carrier", CostSample.EUR)
                .rate(OLD, "letter", grams(20), Money.of("0.90 EUR"), READ)
                .rate(OLD, "letter", grams(50), Money.of("1.00 EUR"), READ)
                .rate(NEW, "letter", grams(50), Money.of("1.40 EUR"), READ)
                .rate(NEW, "letter", grams(20), Money.of("1.10 EUR"), READ)
                .rate(OLD, "parcel", grams(2000), Money.of("5.00 EUR"), READ)
                .rate(OLD, "parcel", grams(5000), Money.of("7.50 EUR"), READ)
                .surcharge(OLD, "letter", "square", Money.of("0.50 EUR"), READ)
                .surcharge(NEW, "letter", "square", Money.of("0.70 EUR"), READ);
    }

    @Test
    void theStepIsTheFirstThatHolds() {
        PostageTable table = table().build();
        assertThat(table.price("letter", grams(20), DAY)).isEqualTo(Money.of("1.10 EUR"));
        assertThat(table.price("letter", grams(20.1), DAY)).isEqualTo(Money.of("1.40 EUR"));
        assertThat(table.price("letter", grams(12), LocalDate.of(2026, 12, 31))).isEqualTo(Money.of("0.90 EUR"));
        assertThat(table.price("letter", grams(12), NEW, List.of("square"))).isEqualTo(Money.of("1.80 EUR"));
        assertThat(table.services()).containsExactly("letter", "parcel");
        assertThat(table).hasToString("postage of a carrier, in EUR: letter, parcel");
        assertThat(table).isEqualTo(table().build()).hasSameHashCodeAs(table().build());
    }

    @Test
    void whatTheTableDoesNotHoldIsRefusedWithAWayOut() {
        PostageTable table = table().build();
        assertThatThrownBy(() -> table.price("letter", grams(50.2), DAY))
                .isInstanceOf(Refused.class)
                .hasMessage(
                        "postage, letter: 50.2 g given; the last step of a carrier ends at 50 g. Put fewer pieces together,"
                                + " take another of its services (letter, parcel), or add the step.");
        assertThatThrownBy(() -> table.price("card", grams(5), DAY))
                .hasMessage(
                        "postage: a carrier has no service \"card\" in the table; it has letter, parcel. Take one of these,"
                                + " or add its steps.");
        assertThatThrownBy(() -> table.price("letter", grams(5), LocalDate.of(2024, 12, 31)))
                .hasMessage(
                        "postage, letter: posted on 2024-12-31, and its first rates hold from 2025-01-01. Add those that"
                                + " held on that day.");
        assertThatThrownBy(() -> table.price("letter", grams(5), DAY, List.of("round")))
                .hasMessage(
                        "postage, letter: there is no surcharge \"round\" in the table; there is square. Take one that is"
                                + " there, or add it.");
        assertThatThrownBy(() -> table.price("letter", grams(0), DAY)).isInstanceOf(Refused.class);
    }

    @Test
    void eachRowSaysWhereItWasReadAndStandsOnce() {
        assertThatThrownBy(() -> table().rate(NEW, "letter", grams(100), Money.of("1.60 EUR"), " "))
                .hasMessageStartingWith("postage, letter: it is not said where it was read.");
        assertThatThrownBy(() -> table().rate(NEW, "letter", grams(50), Money.of("1.60 EUR"), READ))
                .hasMessage(
                        "postage: letter up to 50 g from 2027-01-01 is given twice. Give each step once, or another day it"
                                + " holds from.");
        assertThatThrownBy(() -> table().rate(NEW, "letter", grams(100), Money.of("1.60 GBP"), READ))
                .hasMessageContaining("of another currency than the table, EUR");
        assertThatThrownBy(() -> table().rate(NEW, "letter", grams(100), Money.of("-1.60 EUR"), READ))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> PostageTable.of("a carrier", CostSample.EUR).build())
                .hasMessageStartingWith("postage of a carrier: there is no rate in it.");
    }

    @Test
    void anOldTableIsNoticed() {
        PostageTable table = table().build();
        assertThat(table.age("letter", DAY)).isEmpty();
        assertThat(table.age("letter", NEW.plusYears(1))).isEmpty();
        assertThat(table.age("letter", NEW.plusYears(1).plusDays(1))).isPresent();
        assertThat(table.age("parcel", DAY).orElseThrow().text())
                .isEqualTo(
                        "The postage of parcel is of 2025-01-01, more than a year before 2027-03-05. Ask a carrier whether it"
                                + " still holds.");
    }

    private static MakingPlan plan(double gsm) {
        Order given = CostSample.order(60, 40);
        return MakingPlan.of(
                Order.of("letters")
                        .recipe(given.recipes().get(0))
                        .piece(Piece.of("card", 7, "bone white")
                                .size(org.papermath.format.Formats.ISO_A6)
                                .grammage(Grammage.gsm(gsm))
                                .mailedIn("Germany")
                                .build())
                        .due(DAY)
                        .build(),
                CostSample.studio());
    }

    @Test
    void aCostingPostsByTheTable() {
        MakingPlan plan = plan(200);
        PiecePlan card = plan.piece("card");
        String service = card.mail().verdict().service().orElseThrow();
        PostageTable table = table().rate(NEW, service, grams(1000), Money.of("1.25 EUR"), READ)
                .build();
        PriceList.Builder prices = CostSample.prices().postage(table);
        Money before = Costing.of(plan, prices.build()).cost().likely();

        Costing mailed = Costing.of(
                plan, prices.build().toBuilder().post(Postage.asMailed()).build());
        assertThat(mailed.of(Costing.Group.POSTAGE)).isEqualTo(Money.of("8.75 EUR"));
        assertThat(mailed.notices()).isEmpty();
        assertThat(mailed.cost().likely().minus(before)).isGreaterThanOrEqualTo(Money.of("8.75 EUR"));
        assertThat(mailed.piece("card").inSold())
                .isGreaterThan(Costing.of(plan, prices.build()).piece("card").inSold());

        // Seven in parcels of three: two full ones over 2 kg, and one of a single card below it.
        Costing parcels = Costing.of(
                plan,
                prices.build().toBuilder()
                        .post(Postage.parcels("parcel", 3, grams(1995)))
                        .build());
        double one = card.mail().mass().likely().in("g");
        assertThat(one).isBetween(1.7, 4.9);
        assertThat(parcels.of(Costing.Group.POSTAGE)).isEqualTo(Money.of("20.00 EUR"));
        assertThat(parcels.notices()).hasSize(1);
        assertThatThrownBy(() -> Costing.of(
                        plan,
                        prices.build().toBuilder()
                                .post(Postage.parcels("parcel", 3, grams(5000)))
                                .build()))
                .hasMessageStartingWith("postage, parcel: ");
        assertThatThrownBy(() -> Costing.of(
                        plan,
                        prices.build().toBuilder()
                                .post(Postage.each("letter").only("menu"))
                                .build()))
                .hasMessageContaining("the order has no piece of that name");
    }

    @Test
    void pricesHoldTableAndPostage() {
        assertThatThrownBy(() -> CostSample.prices().post(Postage.asMailed()).build())
                .hasMessageStartingWith(
                        "list of prices: pieces are posted (as mailed), and it has no table of postage.");
        assertThatThrownBy(() -> CostSample.prices()
                        .postage(PostageTable.of("a carrier", Money.currency("GBP"))
                                .rate(NEW, "letter", grams(20), Money.of("1 GBP"), READ)
                                .build()))
                .isInstanceOf(Refused.class);
        PriceList list = CostSample.prices()
                .postage(table().build())
                .post(Postage.each("letter").with("square").only("menu"))
                .build();
        assertThat(list.toBuilder().build()).isEqualTo(list).hasSameHashCodeAs(list);
        assertThat(list.posted().get(0)).hasToString("letter, with square, menu only");
        assertThat(Postage.parcels("parcel", 50, grams(300))).hasToString("parcel, 50 in a parcel, wrapping of 300 g");
    }

    /** The rates of 2025 as the notices gave them, each read in the source it names. */
    @Test
    void theLibraryShipsWhatCouldBeRead() {
        assertThat(PostageTable.countries()).containsExactly("Germany", "United Kingdom");
        PostageTable german = PostageTable.ofCountry(" germany ");
        LocalDate day = LocalDate.of(2025, 6, 2);
        assertThat(german.price("standard", grams(20), day)).isEqualTo(Money.of("0.95 EUR"));
        assertThat(german.price("compact", grams(34), day)).isEqualTo(Money.of("1.10 EUR"));
        assertThat(german.price("maxi", grams(501), day)).isEqualTo(Money.of("2.90 EUR"));
        assertThat(german.price("parcel", grams(2001), day)).isEqualTo(Money.of("7.69 EUR"));
        assertThat(PostageTable.ofCountry("United Kingdom").price("letter", grams(100), day))
                .isEqualTo(Money.of("1.70 GBP"));
        assertThatThrownBy(() -> german.price("standard", grams(20), LocalDate.of(2024, 12, 31)))
                .isInstanceOf(Refused.class);
        assertThat(german.age("standard", day)).isEmpty();
        assertThat(german.age("standard", LocalDate.of(2026, 11, 28))).isPresent();
        assertThatThrownBy(() -> PostageTable.ofCountry("Atlantis"))
                .hasMessage(
                        "postage: no rates for \"Atlantis\". There are rates for Germany, United Kingdom. Use one of these,"
                                + " or make a table of what the counter asks.");
    }

    /** Letters posted as mailed go by the service the limits of the mail name. */
    @Test
    void shippedLettersAreAmongTheServicesOfTheLimits() {
        for (String country : PostageTable.countries()) {
            assertThat(PostageTable.ofCountry(country).services().stream()
                            .filter(service -> !service.equals("parcel") && !service.contains(",")))
                    .isNotEmpty()
                    .isSubsetOf(MailLimits.of(country).services());
        }
    }
}
