package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.air.Air;
import org.papermath.card.MakingCard;
import org.papermath.drying.Dryer;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Deckle;
import org.papermath.mould.Mould;
import org.papermath.mould.Opening;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.vat.Vat;

/** Sheets with deckle edges, several at a dip in a deckle that is split. */
class SplitDeckleTest {
    private static final Piece CARDS = Piece.of("card", 60, "rag")
            .size(mm(105), mm(148))
            .grammage(Grammage.gsm(240))
            .edge(Piece.Edge.DECKLE)
            .spare(Share.percent(0))
            .trials(2)
            .build();

    private static Studio with(double difference, Mould... moulds) {
        Studio.Builder studio = Studio.of("by the weir")
                .room(Air.of(celsius(20), RelativeHumidity.percent(50)))
                .vat(Vat.of("vat", litres(60)))
                .press(Press.of("press", kilonewtons(80), mm(400), mm(500)))
                .felts(Felts.of(mm(380), mm(480), Grammage.gsm(500), 40))
                .dryer(Dryer.loft("loft", 2, 200))
                .assumptions(Assumptions.standard().given("shrinkage.direction-difference", Scope.GENERAL, difference));
        for (Mould mould : moulds) {
            studio.mould(mould);
        }
        return studio.build();
    }

    private static MakingPlan plan(Studio studio, Piece... pieces) {
        Order.Builder order = Order.of("any")
                .recipe(Recipe.of("rag", Furnish.of(Fibres.COTTON_RAG))
                        .beating(hours(3))
                        .build());
        for (Piece piece : pieces) {
            order.piece(piece);
        }
        return MakingPlan.of(order.build(), studio);
    }

    /** The opening one card needs, its short side across. */
    private static Opening needed(double difference) {
        return plan(with(difference), CARDS).piece("card").forming().opening();
    }

    private static Deckle split(double width, double height, int across, int along) {
        return Deckle.of(mm(across * width + (across - 1) * 12), mm(along * height + (along - 1) * 12))
                .split(across, along, mm(12));
    }

    private static double atVat(MakingPlan plan) {
        return plan.piece("card").timeAtVat().likely().si();
    }

    @Test
    void severalSheetsComeOfOneDip() {
        Opening one = needed(0.003);
        double width = one.width().in("mm");
        double height = one.height().in("mm");
        MakingPlan single = plan(with(0.003, Mould.of("one", mm(width), mm(height))), CARDS);
        MakingPlan several = plan(with(0.003, Mould.of("two", split(width, height, 1, 2))), CARDS);
        FormingPlan forming = several.piece("card").forming();
        assertThat(forming.mould().orElseThrow().name()).isEqualTo("two");
        assertThat(forming.deckleToMake()).isFalse();
        assertThat(forming.perSheet()).isEqualTo(2);
        assertThat(forming.fibre().si())
                .isCloseTo(2 * single.piece("card").forming().fibre().si(), within(1e-9));
        assertThat(forming.opening().height().in("mm")).isCloseTo(2 * height + 12, within(1e-9));
        ShapedDeckle deckle = forming.shapedDeckle().orElseThrow();
        assertThat(List.of(deckle.across(), deckle.along())).containsExactly(1, 2);
        assertThat(deckle.outline().corners()).hasSize(4);
        assertThat(deckle.outline().width().in("mm")).isCloseTo(width, within(1e-9));
        assertThat(deckle.area().si()).isCloseTo(2 * width * height * 1e-6, within(1e-12));

        // As many good cards of half the dips, and each dip at the pace of a sheet of twice the area.
        int dips = several.piece("card").counts().sheets() - 2;
        assertThat(dips)
                .isEqualTo((single.piece("card").counts().sheets() - 2 + 1) / 2)
                .isLessThan(40);
        assertThat(several.piece("card").counts().good().likely().si()).isGreaterThanOrEqualTo(60 - 1e-9);
        assertThat(atVat(several)).isLessThan(atVat(single));
        assertThat(several.piece("card").couchedMass().likely().si()
                        / single.piece("card").couchedMass().likely().si())
                .isCloseTo(2, within(0.05));
        // Off the felts, cards are as many as they were.
        double away = several.piece("card").workingHours().likely().si() - atVat(several);
        double awaySingle = single.piece("card").workingHours().likely().si() - atVat(single);
        assertThat(away).isCloseTo(awaySingle, within(0.1 * awaySingle));
        assertThat(several.piece("card").finished().mass().likely().si())
                .isCloseTo(single.piece("card").finished().mass().likely().si(), within(1e-5));
        for (Balance balance : several.batches().get(0).balances()) {
            double in = balance.totalIn().si();
            assertThat(balance.totalOut().si()).isCloseTo(in, within(1e-9 * in));
        }
        assertThat(MakingCard.of(several).toString())
                .containsPattern("openings +1 by 2 of " + (int) width)
                .doesNotContain("cut to its drawing");
    }

    /** A deckle whose openings lie across the mould gives cards that shrink as sheets lie that way. */
    @Test
    void openingsMayLieAcrossTheMould() {
        Opening one = needed(0.03);
        // Two cards side by side, their long sides across a mould that is longer still.
        Deckle flat = Deckle.of(mm(231), mm(152)).split(2, 1, mm(12));
        MakingPlan unfit = plan(with(0.03, Mould.of("flat", flat)), CARDS);
        assertThat(unfit.piece("card").forming().deckleToMake()).isTrue();

        double longSide = one.height().in("mm");
        double shortSide = one.width().in("mm");
        double alongShare = 148 / longSide;
        double acrossShare = 105 / shortSide;
        double turnedAcross = 148 / acrossShare;
        double turnedAlong = 105 / alongShare;
        MakingPlan fit = plan(with(0.03, Mould.of("turned", split(turnedAcross, turnedAlong, 1, 2))), CARDS);
        FormingPlan forming = fit.piece("card").forming();
        assertThat(forming.deckleToMake()).isFalse();
        assertThat(forming.turned()).isTrue();
        assertThat(forming.perSheet()).isEqualTo(2);
        assertThat(fit.piece("card").finished().width().likely().in("mm")).isCloseTo(105, within(0.05));
        assertThat(fit.piece("card").finished().height().likely().in("mm")).isCloseTo(148, within(0.05));
    }

    @Test
    void anOpeningThatIsOffIsNotUsed() {
        Opening one = needed(0.003);
        double width = one.width().in("mm");
        double height = one.height().in("mm");
        assertThat(plan(with(0.003, Mould.of("two", split(width * 1.004, height * 0.996, 1, 2))), CARDS)
                        .piece("card")
                        .forming()
                        .perSheet())
                .isEqualTo(2);
        assertThat(plan(with(0.003, Mould.of("two", split(width * 1.006, height, 1, 2))), CARDS)
                        .piece("card")
                        .forming()
                        .perSheet())
                .isEqualTo(1);
    }

    /** As among other deckles: least time of hands, then least fibre, and the runner-up with what it would take. */
    @Test
    void theDeckleIsTheOneThatSavesHands() {
        Opening one = needed(0.003);
        double width = one.width().in("mm");
        double height = one.height().in("mm");
        Mould single = Mould.of("one", mm(width), mm(height));
        Mould four = Mould.of("four", split(width, height, 2, 2));
        Mould two = Mould.of("two", split(width, height, 2, 1));
        FormingPlan forming =
                plan(with(0.003, single, two, four), CARDS).piece("card").forming();
        assertThat(forming.mould().orElseThrow().name()).isEqualTo("four");
        assertThat(forming.perSheet()).isEqualTo(4);
        assertThat(forming.otherMould().orElseThrow())
                .matches("two with 2 openings: [0-9.]+ h more at the vat, [0-9.]+ % (more|less) fibre");
        // Three in turn do not keep hands waiting, and then one at a time at the pace of a card beats two.
        assertThat(plan(with(0.003, single.inTurn(3), two.inTurn(3)), CARDS)
                        .piece("card")
                        .forming()
                        .otherMould()
                        .orElseThrow())
                .startsWith("two with 2 openings: ");
    }

    /** The blank of an envelope with rims is cut out of its sheet, so its mass is that of the blank. */
    @Test
    void blanksOfEnvelopesAreCutOutOfTheirSheets() {
        Piece sleeve = Piece.of("sleeve", 20, "rag")
                .grammage(Grammage.gsm(90))
                .envelopeFor("card", EnvelopeStyle.SIDE_SEAM)
                .edge(Piece.Edge.DECKLE)
                .build();
        Opening blank =
                plan(with(0.003), CARDS, sleeve).piece("sleeve").forming().opening();
        double width = blank.width().in("mm");
        double height = blank.height().in("mm");
        PiecePlan single = plan(with(0.003, Mould.of("blank", mm(width), mm(height))), CARDS, sleeve)
                .piece("sleeve");
        PiecePlan pair = plan(with(0.003, Mould.of("blanks", split(width, height, 2, 1))), CARDS, sleeve)
                .piece("sleeve");
        assertThat(single.forming().deckleToMake()).isFalse();
        assertThat(pair.forming().perSheet()).isEqualTo(2);
        assertThat(pair.finished().mass().likely().si())
                .isCloseTo(single.finished().mass().likely().si(), within(1e-5));
    }
}
