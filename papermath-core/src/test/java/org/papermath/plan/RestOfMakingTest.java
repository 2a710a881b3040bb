package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import org.junit.jupiter.api.Test;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.StuffOnHand;
import org.papermath.press.Felts;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Refused;

class RestOfMakingTest {
    private static final MakingPlan FIRST = MakingPlan.of(
            Order.of("broken off")
                    .recipe(Recipe.of("plain", Furnish.of(Fibres.COTTON_RAG))
                            .beating(hours(3))
                            .build())
                    .piece(Piece.of("sheet", 60, "plain")
                            .size(mm(210), mm(297))
                            .grammage(Grammage.gsm(110))
                            .build())
                    .build(),
            Sample.studio());

    @Test
    void nothingIsLostBetweenVatAndPails() {
        double made = FIRST.batch("plain").balances().get(0).totalIn().si()
                - FIRST.batch("plain").balances().get(0).out().get("handling").si();
        for (int done : new int[] {5, 30, 60}) {
            AtTheVat vat = FIRST.atTheVat("sheet").after(done);
            double there = vat.inTheVat().orElseThrow().ovenDry().si()
                    + vat.inThePails().map(stuff -> stuff.ovenDry().si()).orElse(0.0);
            double sheets = done * FIRST.piece("sheet").forming().fibre().si();
            assertThat(there + sheets).isCloseTo(made, within(0.02 * made));
        }
    }

    @Test
    void aVatThatSouredIsBeatenForAnewOnlyAsFarAsThePailsDoNotReach() {
        AtTheVat vat = FIRST.atTheVat("sheet").after(38);
        StuffOnHand pails = vat.inThePails().orElseThrow();
        MakingPlan soured = FIRST.rest().good("sheet", 30).stuff(pails).plan();
        assertThat(soured.piece("sheet").counts().ordered()).isEqualTo(30);
        assertThat(soured.batch("plain").stuffOnHand().si())
                .isCloseTo(pails.ovenDry().si(), within(1e-9));
        MakingPlan sound = FIRST.rest()
                .good("sheet", 30)
                .stuff(pails)
                .stuff(vat.inTheVat().orElseThrow())
                .plan();
        assertThat(sound.batch("plain").fibre().ovenDry().si())
                .isLessThan(soured.batch("plain").fibre().ovenDry().si());
        MakingPlan fresh = FIRST.rest().good("sheet", 30).plan();
        assertThat(soured.batch("plain").fibre().ovenDry().si())
                .isCloseTo(
                        fresh.batch("plain").fibre().ovenDry().si()
                                - pails.ovenDry().si(),
                        within(0.01));
    }

    @Test
    void anotherCountAndOtherFeltsInMidRun() {
        MakingPlan more = FIRST.rest().good("sheet", 30).wanted("sheet", 90).plan();
        assertThat(more.piece("sheet").counts().ordered()).isEqualTo(60);
        MakingPlan felts = FIRST.rest()
                .good("sheet", 30)
                .plan(Sample.studio().with(studio -> studio.felts(Felts.of(mm(380), mm(480), Grammage.gsm(450), 7))));
        assertThat(felts.piece("sheet").posts().felts()).isLessThanOrEqualTo(7);
    }

    @Test
    void whatStandsIsTakenOffEachPiece() {
        MakingPlan sample = MakingPlan.of(Sample.order(), Sample.studio());
        MakingPlan rest = sample.rest()
                .good("leaflet", 60)
                .good("place card", 40)
                .good("cover", 10)
                .plan();
        // The cover is measured by what goes into it.
        assertThat(rest.pieces()).extracting(PiecePlan::name).containsExactly("leaflet", "cover");
        assertThat(rest.piece("cover").counts().ordered()).isEqualTo(20);
        assertThat(rest.piece("leaflet").counts().ordered()).isEqualTo(1);
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatThrownBy(() -> FIRST.rest().good("sheet", 60).plan())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("nothing left to make");
        assertThatThrownBy(() -> FIRST.rest().good("sheets", 1)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> FIRST.rest().good("sheet", -1)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> FIRST.rest()
                        .stuff(StuffOnHand.of("plane", Pulp.ofOvenDry(grams(5)).at(Consistency.percent(1)))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("there is no recipe \"plane\"");
    }
}
