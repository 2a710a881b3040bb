package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.air.Air;
import org.papermath.envelope.EnvelopeFit;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.shape.MeasuredSize;
import org.papermath.sheet.HygroexpansionModel;

/** The play in a planned envelope, and the share of pairs that fit, are those of its card laid the way the pocket is. */
class EnvelopeFitsPlanTest {
    /** The deviation that nine in ten lie within 1.645 times. */
    private static final double DEVIATION =
            1000 * Assumptions.standard().si("sheet.scatter-size", Scope.of("envelope", "rag")) / 1.6448536269514722;

    static Stream<Arguments> cases() {
        return Arrays.stream(EnvelopeStyle.values())
                .flatMap(style -> Stream.of(0.2, 1.5, 3.0, 6.0)
                        .flatMap(clearance ->
                                Stream.of(false, true).map(deckle -> Arguments.of(style, clearance, deckle))));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void playAndShareAreThoseOfTheCardInThePocket(EnvelopeStyle style, double clearance, boolean deckle) {
        Piece.Builder card = Piece.of("card", 40, "rag").size(mm(105), mm(148)).grammage(Grammage.gsm(240));
        MakingPlan plan = MakingPlan.withoutBands(
                Order.of("any")
                        .recipe(Recipe.of("rag", Furnish.of(Fibres.COTTON_RAG))
                                .beating(hours(2))
                                .build())
                        .piece((deckle ? card.edge(Piece.Edge.DECKLE) : card).build())
                        .piece(Piece.of("envelope", 30, "rag")
                                .grammage(Grammage.gsm(100))
                                .envelopeFor("card", style)
                                .inserts(2)
                                .clearance(mm(clearance))
                                .build())
                        .build(),
                Studio.of("any").mould(Mould.of("mould", mm(420), mm(600))).build());
        FinishedPiece made = plan.piece("card").finished();
        EnvelopePlan envelope = plan.piece("envelope").envelope();
        boolean upright = style == EnvelopeStyle.OPEN_END;
        MeasuredSize lies = (upright
                        ? MeasuredSize.of(made.width().likely(), made.height().likely())
                        : MeasuredSize.of(made.height().likely(), made.width().likely()))
                .withDeviation(mm(DEVIATION), mm(DEVIATION));
        MeasuredSize inside = MeasuredSize.of(envelope.insideWidth(), envelope.insideHeight())
                .withDeviation(mm(DEVIATION), mm(DEVIATION));
        assertThat(envelope.insideWidth().si() < envelope.insideHeight().si()).isEqualTo(upright);
        EnvelopeFit fit =
                EnvelopeFit.of(lies, mm(2 * made.caliper().likely().in("mm"))).into(inside);
        close(envelope.playAlong().likely(), fit.playAcross());
        close(envelope.playAcross().likely(), fit.playAlong());
        assertThat(envelope.sharePairsFit().si()).isCloseTo(fit.share().si(), within(1e-9));
        // Out of air of 75 % the card is larger by what its strain says; the room is at 50 %.
        Air damp = Air.of(celsius(23), RelativeHumidity.percent(75));
        double strain = HygroexpansionModel.standard()
                        .between(
                                mm(148),
                                made.shrinkageAcross().likely(),
                                SorptionModel.standard(Furnish.of(Fibres.COTTON_RAG)),
                                Air.of(celsius(23), RelativeHumidity.percent(50)),
                                damp)
                        .change()
                        .in("mm")
                / 148;
        assertThat(
                        upright
                                ? envelope.dampGrowthAcross().orElseThrow().in("mm")
                                : envelope.dampGrowthAlong().orElseThrow().in("mm"))
                .isCloseTo(strain * 148, within(0.02))
                .isGreaterThan(0.1);
        assertThat(envelope.sharePairsFitDamp().orElseThrow().si())
                .isLessThan(envelope.sharePairsFit().si());
        assertThat(envelope.playAlong().likely().in("mm")).isCloseTo(clearance, within(0.15));
        assertThat(envelope.playAcross().likely().in("mm")).isCloseTo(clearance, within(0.15));
        assertThat(plan.notices()).noneMatch(notice -> notice.code().equals("envelope.too-small"));
        assertThat(plan.notices().stream().anyMatch(notice -> notice.code().equals("envelope.tight")))
                .isEqualTo(fit.share().si() < 0.99);
    }

    private static void close(Amount<?> planned, Amount<?> modelled) {
        assertThat(planned.si()).isCloseTo(modelled.si(), within(1e-12));
    }
}
