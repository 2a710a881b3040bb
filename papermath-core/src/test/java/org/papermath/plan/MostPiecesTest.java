package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import org.junit.jupiter.api.Test;
import org.papermath.drying.Dryer;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Formats;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.order.StuffOnHand;
import org.papermath.pulp.Beater;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.vat.Vat;

/** "How many cards from the kilo I have." */
class MostPiecesTest {
    private final Studio studio = Studio.of("garden")
            .beater(Beater.of("small beater", litres(18), grams(400)))
            .vat(Vat.of("tub", litres(50)))
            .mould(Mould.of("quarto", mm(260), mm(330)))
            .dryer(Dryer.boards("boards", 12))
            .build();

    private static Recipe recipe(String name) {
        return Recipe.of(name, Furnish.of(Fibres.LINTER_SECOND_CUT))
                .beating(hours(1))
                .build();
    }

    private static Piece.Builder card(String name, int count, String recipe) {
        return Piece.of(name, count, recipe).size(Formats.ISO_A6).grammage(Grammage.gsm(250));
    }

    private final Order cards = Order.of("cards")
            .recipe(recipe("white"))
            .piece(card("card", 1, "white").build())
            .build();

    private Studio with(double kilos) {
        return studio.with(one -> one.onHand(Fibres.LINTER_SECOND_CUT, kilograms(kilos)));
    }

    /** Every count is planned, one after another, until fibre has to be bought. */
    private static int counted(Order order, Studio studio, String piece) {
        int most = 0;
        for (int count = 1; count < 400; count++) {
            int tried = count;
            MakingPlan plan = MakingPlan.withoutBands(order.with(piece, one -> one.count(tried)), studio);
            most = plan.toBuy().stream().allMatch(one -> one.what().contains("to cook")) ? count : most;
        }
        return most;
    }

    @Test
    void isWhatCountingGives() {
        for (double kilos : new double[] {0.3, 0.5, 1}) {
            int most = MakingPlan.mostPieces(cards, with(kilos), "card");
            assertThat(most).isEqualTo(counted(cards, with(kilos), "card"));
        }
        // A card of 250 g/m² and A6 has 3.9 g, and a kilo would be 250 of them; but half of it stays in a tub of 50 L.
        // With one
        // that is run down to 25 L there is more to make cards of.
        int kept = MakingPlan.mostPieces(cards, with(1), "card");
        int runDown = MakingPlan.mostPieces(
                cards, with(1).with(one -> one.vat(Vat.of("tub", litres(50)).runDownTo(litres(25)))), "card");
        assertThat(kept).isBetween(30, 125);
        assertThat(runDown).isBetween(kept + 20, 200);
    }

    @Test
    void sparesAndTrialsTakeTheirPart() {
        int plain = MakingPlan.mostPieces(cards, with(1), "card");
        assertThat(MakingPlan.mostPieces(cards.with("card", one -> one.spare(Share.percent(50))), with(1), "card"))
                .isLessThan(plain);
        assertThat(MakingPlan.mostPieces(cards.with("card", one -> one.trials(20)), with(1), "card"))
                .isLessThan(plain);
        // How many were ordered does not matter.
        assertThat(MakingPlan.mostPieces(cards.with("card", one -> one.count(9000)), with(1), "card"))
                .isEqualTo(plain);
    }

    @Test
    void theOtherPiecesTakeTheirPartOfTheSameFibreOnce() {
        Order both = Order.of("both")
                .recipe(recipe("white"))
                .recipe(recipe("ivory"))
                .piece(card("card", 1, "white").build())
                .piece(card("menu", 40, "ivory").build())
                .build();
        int alone = MakingPlan.mostPieces(cards, with(3), "card");
        int beside = MakingPlan.mostPieces(both, with(3), "card");
        assertThat(beside).isPositive().isLessThan(alone - 40);
        MakingPlan plan = MakingPlan.withoutBands(both.with("card", one -> one.count(beside)), with(3));
        double taken = plan.batches().stream()
                .mapToDouble(batch -> batch.fibre().ovenDry().si())
                .sum();
        assertThat(taken).isLessThanOrEqualTo(3).isGreaterThan(2.9);
    }

    @Test
    void stuffThatStandsBeatenIsUsedToo() {
        StuffOnHand stuff = StuffOnHand.of("white", Pulp.ofOvenDry(kilograms(1)).at(Consistency.percent(3)));
        Studio pail = studio.with(one -> one.stuffOnHand(stuff));
        int alone = MakingPlan.mostPieces(cards, pail, "card");
        assertThat(alone).isEqualTo(counted(cards, pail, "card")).isPositive();
        assertThat(MakingPlan.mostPieces(
                        cards, pail.with(one -> one.onHand(Fibres.LINTER_SECOND_CUT, kilograms(1))), "card"))
                .isGreaterThan(alone);
    }

    @Test
    void tooLittleForOneIsNoneAndNothingOnHandIsRefused() {
        assertThat(MakingPlan.mostPieces(cards, with(0.001), "card")).isZero();
        assertThatThrownBy(() -> MakingPlan.mostPieces(cards, studio, "card"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("nothing is on hand of");
        assertThatThrownBy(() -> MakingPlan.mostPieces(cards, with(1), "poster"))
                .isInstanceOf(Refused.class);
        assertThat(MakingPlan.mostPieces(cards, with(99_000), "card")).isEqualTo(100_000);
    }
}
