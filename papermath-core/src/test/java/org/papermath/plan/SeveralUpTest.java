package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.mm;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.quantity.Grammage;

/**
 * What pieces several up measure when the sheet shrinks more than was thought. The sheet shrinks otherwise along the
 * mould than across it, so it counts which way a piece lies; a gap shrinks with the sheet.
 */
class SeveralUpTest {
    private static final double ALONG = 0.06;
    private static final double ACROSS = 0.09;

    private static Studio studio(double mouldWidth, double mouldHeight) {
        Source source = new Source("a test");
        Assumptions known = Assumptions.standard()
                .given("making.shrinkage.measured-along", Scope.GENERAL, 1e-12)
                .given("making.shrinkage.measured-across", Scope.GENERAL, 1e-12)
                .given("shrinkage.measured-along", Scope.of("rag"), 0.02, 0.01, ALONG, Basis.MEASURED_HERE, source)
                .given("shrinkage.measured-across", Scope.of("rag"), 0.03, 0.01, ACROSS, Basis.MEASURED_HERE, source);
        return Studio.of("any")
                .mould(Mould.of("mould", mm(mouldWidth), mm(mouldHeight)))
                .assumptions(known)
                .build();
    }

    private static PiecePlan plan(Piece.Builder piece, Studio studio) {
        Order order = Order.of("any")
                .recipe(Recipe.of("rag", Furnish.of(Fibres.COTTON_RAG)).build())
                .piece(piece.grammage(Grammage.gsm(160)).build())
                .build();
        return MakingPlan.of(order, studio).piece("card");
    }

    /** Of 100 × 140 mm, two by two in 212 × 292 mm with the long side along it, two by three in 294 × 316 mm turned. */
    @ParameterizedTest
    @CsvSource({
        "212, 292, false, 2, 2, 0, 140, 100",
        "212, 292, false, 2, 2, 4, 140, 100",
        "212, 292, false, 2, 2, 0, 100, 140",
        "212, 292, false, 2, 2, 4, 100, 140",
        "292, 212, false, 2, 2, 4, 100, 140",
        "294, 316, true, 2, 3, 0, 140, 100",
        "294, 316, true, 2, 3, 4, 140, 100",
        "294, 316, true, 2, 3, 0, 100, 140",
        "294, 316, true, 2, 3, 4, 100, 140"
    })
    void eachGetsItsPartOfWhatTheSheetShrinksTo(
            double mouldWidth,
            double mouldHeight,
            boolean turned,
            int across,
            int along,
            double gap,
            double width,
            double height) {
        PiecePlan card = plan(
                Piece.of("card", 40, "rag")
                        .size(mm(width), mm(height))
                        .trim(mm(0))
                        .gap(mm(gap)),
                studio(mouldWidth, mouldHeight));
        assertThat(card.forming().perSheet()).isEqualTo(across * along);
        assertThat(card.forming().turned()).isEqualTo(turned);
        assertThat(card.finished().width().likely().in("mm")).isCloseTo(width, within(1e-9));
        assertThat(card.finished().height().likely().in("mm")).isCloseTo(height, within(1e-9));
        assertThat(card.finished().width().high().in("mm")).isCloseTo(width, within(1e-9));

        double dryAlong = Math.max(mouldWidth, mouldHeight) * (1 - ALONG);
        double dryAcross = Math.min(mouldWidth, mouldHeight) * (1 - ACROSS);
        double partAlong = (dryAlong - (along - 1) * gap * (1 - ALONG)) / along;
        double partAcross = (dryAcross - (across - 1) * gap * (1 - ACROSS)) / across;
        double leastLong = turned ? partAcross : partAlong;
        double leastShort = turned ? partAlong : partAcross;
        assertThat(leastLong).isLessThan(140);
        assertThat(leastShort).isLessThan(100);
        assertThat(card.finished().width().low().in("mm"))
                .isCloseTo(width > height ? leastLong : leastShort, within(1e-9));
        assertThat(card.finished().height().low().in("mm"))
                .isCloseTo(width > height ? leastShort : leastLong, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aRimShrinksWithItsSheet(boolean upright) {
        PiecePlan card = plan(
                Piece.of("card", 40, "rag")
                        .size(mm(upright ? 100 : 140), mm(upright ? 140 : 100))
                        .edge(Piece.Edge.DECKLE),
                studio(200, 300));
        double longSide = card.forming().opening().height().in("mm");
        double shortSide = card.forming().opening().width().in("mm");
        assertThat(longSide).isCloseTo(140 / 0.98, within(0.051));
        assertThat(shortSide).isCloseTo(100 / 0.97, within(0.051));
        FinishedPiece finished = card.finished();
        assertThat((upright ? finished.height() : finished.width()).likely().in("mm"))
                .isCloseTo(longSide * 0.98, within(1e-9));
        assertThat((upright ? finished.width() : finished.height()).likely().in("mm"))
                .isCloseTo(shortSide * 0.97, within(1e-9));
        assertThat((upright ? finished.height() : finished.width()).low().in("mm"))
                .isCloseTo(longSide * (1 - ALONG), within(1e-9));
        assertThat((upright ? finished.width() : finished.height()).low().in("mm"))
                .isCloseTo(shortSide * (1 - ACROSS), within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void onePieceWeighsItsOwnArea(boolean deckle) {
        Piece.Builder piece = Piece.of("card", 40, "rag").size(mm(100), mm(140));
        FinishedPiece finished = plan(deckle ? piece.edge(Piece.Edge.DECKLE) : piece.trim(mm(3)), studio(294, 316))
                .finished();
        assertThat(finished.mass().likely().si())
                .isCloseTo(
                        finished.grammage().likely().si()
                                * finished.width().likely().si()
                                * finished.height().likely().si(),
                        within(1e-12));
    }
}
