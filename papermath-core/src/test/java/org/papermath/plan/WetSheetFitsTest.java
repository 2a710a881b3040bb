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
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.card.MakingCard;
import org.papermath.drying.Dryer;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Estimate;
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
    private static final Recipe RAG =
            Recipe.of("rag", Furnish.of(Fibres.COTTON_RAG)).beating(hours(2)).build();

    private static Order order(double width, double height) {
        return Order.of("any")
                .recipe(RAG)
                .piece(Piece.of("sheet", 40, "rag")
                        .size(mm(width), mm(height))
                        .grammage(Grammage.gsm(150))
                        .build())
                .build();
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
        "300, 400, true",
        "400, 300, true",
        "310, 900, true",
        "900, 310, true",
        "299, 400, false",
        "300, 399, false",
        "399, 300, false",
        "400, 299, false",
        "200, 2000, false"
    })
    void feltsTakeASheetNoLargerThanTheyAre(double width, double length, boolean fits) {
        Studio.Builder studio =
                Studio.of("any").mould(Mould.of("m", mm(300), mm(400))).felts(felts(width, length));
        for (boolean pressed : new boolean[] {false, true}) {
            if (pressed) {
                studio.press(press(400, 500));
            }
            MakingPlan plan = MakingPlan.withoutBands(order(280, 380), studio.build());
            PiecePlan sheet = plan.piece("sheet");
            assertThat(sheet.postsStage().isDone()).isEqualTo(fits);
            assertThat(codes(plan).contains("felts.too-small")).isEqualTo(!fits);
            if (!fits) {
                assertThat(sheet.postsStage().code()).isEqualTo("felts.too-small");
                assertThat(sheet.postsStage().reason())
                        .contains("300 × 400 mm")
                        .contains(Math.round(Math.min(width, length)) + " × " + Math.round(Math.max(width, length)));
            }
            // Sheets that do not lie on the felts make no post, and what is in no post is not pressed.
            assertThat(codes(plan)).doesNotContain("felts.none");
            assertThat(sheet.pressStage().isDone()).isEqualTo(pressed && fits);
            assertThat(sheet.pressStage().code()).isEqualTo(!pressed ? "press.none" : fits ? "" : "press.no-post");
            assertThat(codes(plan).contains("press.none")).isEqualTo(!pressed || !fits);
        }
    }

    /** Sheets that make no post come out as those of a studio that has no press, and are accounted for like them. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void whatMakesNoPostComesOutUnpressed(boolean thick) {
        Piece.Builder card = Piece.of("card", 40, "rag").size(mm(280), mm(380));
        Order order = Order.of("any")
                .recipe(RAG)
                .piece((thick ? card.caliper(mm(0.4)) : card.grammage(Grammage.gsm(150)))
                        .folds(1)
                        .build())
                .piece(Piece.of("envelope", 20, "rag")
                        .grammage(Grammage.gsm(100))
                        .envelopeFor("card", EnvelopeStyle.WALLET)
                        .build())
                .build();
        Studio.Builder bare = Studio.of("any")
                .mould(Mould.of("m", mm(420), mm(600)))
                .vat(Vat.of("vat", litres(120)))
                .dryer(Dryer.boards("boards", 20));
        MakingPlan unpressed = MakingPlan.of(order, bare.build());
        MakingPlan small = MakingPlan.of(
                order, bare.felts(felts(200, 300)).press(press(700, 800)).build());
        for (PiecePlan one : unpressed.pieces()) {
            PiecePlan other = small.piece(one.name());
            assertThat(other.postsStage().code()).isEqualTo("felts.too-small");
            assertThat(other.pressStage().code()).isEqualTo("press.no-post");
            same(other.solids(), one.solids());
            same(other.finished().caliper(), one.finished().caliper());
            same(other.finished().grammage(), one.finished().grammage());
            same(other.counts().good(), one.counts().good());
            same(other.workingHours(), one.workingHours());
            same(other.drying().time(), one.drying().time());
            assertThat(other.counts().sheets()).isEqualTo(one.counts().sheets());
            assertThat(other.forming().solids()).isEqualTo(one.forming().solids());
        }
        assertThat(small.piece("envelope").envelope().blankWidth())
                .isEqualTo(unpressed.piece("envelope").envelope().blankWidth());
        same(small.workingHours(), unpressed.workingHours());
        assertThat(small.batch("rag").balances())
                .hasToString(unpressed.batch("rag").balances().toString());
        assertThat(small.batch("rag").balances().toString()).doesNotContain("rejected in pressing");
    }

    private static void same(Estimate<?> one, Estimate<?> other) {
        assertThat(one.likely().si()).isEqualTo(other.likely().si());
        assertThat(one.low().si()).isEqualTo(other.low().si());
        assertThat(one.high().si()).isEqualTo(other.high().si());
    }

    /** The blank of unpressed paper is larger, so that the deckle to be made for it is too. */
    @Test
    void anEnvelopeIsLaidOutForThePaperItIsMadeOf() {
        Order order = Order.of("any")
                .recipe(RAG)
                .piece(Piece.of("card", 40, "rag")
                        .size(mm(120), mm(170))
                        .grammage(Grammage.gsm(150))
                        .build())
                .piece(Piece.of("envelope", 20, "rag")
                        .grammage(Grammage.gsm(120))
                        .edge(Piece.Edge.DECKLE)
                        .envelopeFor("card", EnvelopeStyle.SIDE_SEAM)
                        .build())
                .build();
        PiecePlan small = MakingPlan.withoutBands(
                        order,
                        Studio.of("any")
                                .felts(felts(200, 300))
                                .press(press(700, 800))
                                .build())
                .piece("envelope");
        PiecePlan large = MakingPlan.withoutBands(
                        order,
                        Studio.of("any")
                                .felts(felts(500, 500))
                                .press(press(700, 800))
                                .build())
                .piece("envelope");
        assertThat(small.pressStage().isDone()).isFalse();
        assertThat(large.pressStage().isDone()).isTrue();
        double bulkier = small.finished().caliper().likely().si()
                - large.finished().caliper().likely().si();
        assertThat(bulkier).isGreaterThan(20e-6);
        assertThat(small.envelope().insideWidth().si())
                // The force on a card is set in steps, and two lie on the large felts.
                .isCloseTo(large.envelope().insideWidth().si(), within(1e-6));
        assertThat(small.envelope().blankWidth().si()
                        - large.envelope().blankWidth().si())
                .isCloseTo(bulkier, within(5e-6));
        assertThat(small.envelope().outsideWidth().si()
                        - large.envelope().outsideWidth().si())
                .isCloseTo(2 * bulkier, within(1e-5));
    }

    @Test
    void cardSaysOfEachPieceWhyItIsNotPressed() {
        Order.Builder order = Order.of("any")
                .recipe(RAG)
                .piece(Piece.of("sheet", 40, "rag")
                        .size(mm(280), mm(380))
                        .grammage(Grammage.gsm(150))
                        .build());
        Studio studio = Studio.of("any")
                .mould(Mould.of("m", mm(300), mm(400)))
                .mould(Mould.of("n", mm(600), mm(700)))
                .felts(felts(200, 300))
                .press(press(700, 800))
                .build();
        List<String> one = MakingCard.of(MakingPlan.of(order.build(), studio)).lines();
        assertThat(one)
                .filteredOn(line -> line.contains("posts: "))
                .singleElement()
                .asString()
                .contains("the wet sheet of 300 × 400 mm is larger");
        assertThat(one)
                .filteredOn(line -> line.contains("press load: "))
                .singleElement()
                .asString()
                .contains("the wet sheet does not lie on the felts");
        List<String> two = MakingCard.of(MakingPlan.of(
                        order.piece(Piece.of("plate", 10, "rag")
                                        .size(mm(560), mm(650))
                                        .grammage(Grammage.gsm(150))
                                        .build())
                                .build(),
                        studio))
                .lines();
        assertThat(String.join(" ", two).replaceAll(" +", " "))
                .contains("A posts: the wet sheet of 300 × 400 mm is larger")
                .contains("B posts: the wet sheet of 600 × 700 mm is larger");
        assertThat(two).filteredOn(line -> line.contains("press load: ")).hasSize(1);
        assertThat(two).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
    }

    @ParameterizedTest
    @CsvSource({
        "300, 400, true, 0.12",
        "400, 300, true, 0.12",
        "600, 900, true, 0.12",
        "299, 400, false, 0.1196",
        "400, 299, false, 0.1196",
        "300, 399, false, 0.1197",
        "300, 300, false, 0.09",
        "200, 2000, false, 0.08"
    })
    void platenPressesWhatLiesUnderIt(double width, double length, boolean covers, double loaded) {
        MakingPlan plan = MakingPlan.withoutBands(
                order(280, 380),
                Studio.of("any")
                        .mould(Mould.of("m", mm(300), mm(400)))
                        .felts(felts(500, 600))
                        .press(press(width, length))
                        .build());
        PressingPlan press = plan.piece("sheet").press();
        assertThat(press.force().si() / press.pressure().si()).isCloseTo(loaded, within(1e-9));
        assertThat(codes(plan).contains("press.platen-too-small")).isEqualTo(!covers);
    }

    @ParameterizedTest
    @CsvSource({"300, 400, true", "400, 300, true", "299, 900, false", "400, 299, false"})
    void mouldGoesIntoTheVatOrTheSheetIsPoured(double width, double length, boolean goes) {
        MakingPlan plan = MakingPlan.withoutBands(
                order(280, 380),
                Studio.of("any")
                        .mould(Mould.of("m", mm(300), mm(400)))
                        .vat(Vat.of("vat", litres(90)).inside(mm(width), mm(length)))
                        .build());
        PiecePlan sheet = plan.piece("sheet");
        assertThat(sheet.vatStage().isDone()).isEqualTo(goes);
        assertThat(sheet.pourStage().isDone()).isEqualTo(!goes);
        assertThat(codes(plan).contains("vat.too-narrow")).isEqualTo(!goes);
        assertThat(sheet.finished().grammage().likely().in("g/m2")).isCloseTo(150, within(2.0));
    }

    /** What once passed without a word: sheets of 540 × 760 mm on felts of 200 × 300 mm under a platen of 300 × 300. */
    @Test
    void largeSheetOnSmallFeltsIsTold() {
        MakingPlan plan = MakingPlan.of(
                order(540, 760),
                Studio.of("any")
                        .mould(Mould.of("m", mm(600), mm(850)))
                        .felts(felts(200, 300))
                        .press(press(300, 300))
                        .build());
        assertThat(codes(plan)).contains("felts.too-small", "press.platen-too-small");
        assertThat(plan.piece("sheet").postsStage().isDone()).isFalse();
    }

    @Test
    void mouldWhoseSheetsFitTheFeltsGoesBeforeOneThatSavesFibre() {
        Studio.Builder studio = Studio.of("any")
                .mould(Mould.of("two up", mm(298), mm(426)))
                .mould(Mould.of("one up", mm(245), mm(340)));
        Order order = order(197, 280);
        assertThat(MakingPlan.withoutBands(order, studio.build())
                        .piece("sheet")
                        .forming()
                        .mould()
                        .orElseThrow()
                        .name())
                .isEqualTo("two up");
        assertThat(MakingPlan.withoutBands(order, studio.felts(felts(260, 360)).build())
                        .piece("sheet")
                        .forming()
                        .mould()
                        .orElseThrow()
                        .name())
                .isEqualTo("one up");
    }
}
