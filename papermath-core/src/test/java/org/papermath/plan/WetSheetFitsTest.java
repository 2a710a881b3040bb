package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.quantity.Grammage;
import org.papermath.vat.Vat;

/** Whether the wet sheet lies on the felts and under the platen, and its mould goes into the vat. */
class WetSheetFitsTest {
    private static final Recipe RAG = Recipe.of("rag", Furnish.of(Fibres.COTTON_RAG)).beaten(hours(2)).build();

    private static Order order(double width, double height) {
        return Order.of("any").recipe(RAG).piece(Piece.of("sheet", 40, "rag").sized(mm(width), mm(height))
                .weighing(Grammage.gsm(150)).build()).build();
    }

    private static Felts felts(double width, double length) {
        return Felts.of(mm(width), mm(length), Grammage.gsm(500), 21);
    }

    private static Press press(double width, double length) {
        return Press.of("press", kilonewtons(60), mm(width), mm(length));
    }

    private static List<String> codes(MakingPlan plan) {
        return plan.notices().stream().map(notice -> notice.code()).toList();
    }

    /** The wet sheet is 300 × 400 mm, from a mould of that opening. */
    @ParameterizedTest
    @CsvSource({
            "300, 400, true", "400, 300, true", "310, 900, true", "900, 310, true",
            "299, 400, false", "300, 399, false", "399, 300, false", "400, 299, false", "200, 2000, false"})
    void feltsTakeASheetNoLargerThanTheyAre(double width, double length, boolean fits) {
        Studio.Builder studio = Studio.of("any").mould(Mould.of("m", mm(300), mm(400))).felts(felts(width, length));
        for (boolean pressed : new boolean[] {false, true}) {
            if (pressed) {
                studio.press(press(400, 500));
            }
            MakingPlan plan = MakingPlan.withoutBands(order(280, 380), studio.build());
            PiecePlan sheet = plan.piece("sheet");
            assertThat(sheet.postsStage().isDone()).isEqualTo(fits);
            assertThat(codes(plan).contains("felts.too-small")).isEqualTo(!fits);
            if (!fits) {
                assertThat(sheet.postsStage().code()).isEqualTo("felts-too-small");
                assertThat(sheet.postsStage().reason()).contains("300 × 400 mm")
                        .contains(Math.round(Math.min(width, length)) + " × " + Math.round(Math.max(width, length)));
            }
            // A press without felts that fit is a press without felts.
            assertThat(codes(plan).contains("felts.none")).isEqualTo(pressed && !fits);
            assertThat(sheet.pressStage().isDone()).isEqualTo(pressed);
        }
    }

    @ParameterizedTest
    @CsvSource({
            "300, 400, true, 0.12", "400, 300, true, 0.12", "600, 900, true, 0.12",
            "299, 400, false, 0.1196", "400, 299, false, 0.1196", "300, 399, false, 0.1197", "300, 300, false, 0.09",
            "200, 2000, false, 0.08"})
    void platenPressesWhatLiesUnderIt(double width, double length, boolean covers, double loaded) {
        MakingPlan plan = MakingPlan.withoutBands(order(280, 380), Studio.of("any")
                .mould(Mould.of("m", mm(300), mm(400))).felts(felts(500, 600)).press(press(width, length)).build());
        PiecePlan.Pressing press = plan.piece("sheet").press();
        assertThat(press.force().si() / press.pressure().si()).isCloseTo(loaded, within(1e-9));
        assertThat(codes(plan).contains("press.platen-too-small")).isEqualTo(!covers);
    }

    @ParameterizedTest
    @CsvSource({"300, 400, true", "400, 300, true", "299, 900, false", "400, 299, false"})
    void mouldGoesIntoTheVatOrTheSheetIsPoured(double width, double length, boolean goes) {
        MakingPlan plan = MakingPlan.withoutBands(order(280, 380), Studio.of("any")
                .mould(Mould.of("m", mm(300), mm(400)))
                .vat(Vat.of("vat", litres(90)).inside(mm(width), mm(length))).build());
        PiecePlan sheet = plan.piece("sheet");
        assertThat(sheet.vatStage().isDone()).isEqualTo(goes);
        assertThat(sheet.pourStage().isDone()).isEqualTo(!goes);
        assertThat(codes(plan).contains("vat.too-narrow")).isEqualTo(!goes);
        assertThat(sheet.finished().grammage().likely().in("g/m2")).isCloseTo(150, within(2.0));
    }

    /** What once passed without a word: sheets of 540 × 760 mm on felts of 200 × 300 mm under a platen of 300 × 300. */
    @Test
    void largeSheetOnSmallFeltsIsTold() {
        MakingPlan plan = MakingPlan.of(order(540, 760), Studio.of("any").mould(Mould.of("m", mm(600), mm(850)))
                .felts(felts(200, 300)).press(press(300, 300)).build());
        assertThat(codes(plan)).contains("felts.too-small", "press.platen-too-small");
        assertThat(plan.piece("sheet").postsStage().isDone()).isFalse();
    }

    @Test
    void mouldWhoseSheetsFitTheFeltsGoesBeforeOneThatSavesFibre() {
        Studio.Builder studio = Studio.of("any").mould(Mould.of("two up", mm(298), mm(426)))
                .mould(Mould.of("one up", mm(245), mm(340)));
        Order order = order(197, 280);
        assertThat(MakingPlan.withoutBands(order, studio.build()).piece("sheet").forming().mould().orElseThrow().name())
                .isEqualTo("two up");
        assertThat(MakingPlan.withoutBands(order, studio.felts(felts(260, 360)).build()).piece("sheet").forming()
                .mould().orElseThrow().name()).isEqualTo("one up");
    }
}
