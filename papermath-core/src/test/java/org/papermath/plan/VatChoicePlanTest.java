package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.card.MakingCard;
import org.papermath.drying.Dryer;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Deckle;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Refused;
import org.papermath.vat.Vat;

/** How thick the vat is made for a sheet, how it is worked from piece to piece, and how long that takes. */
class VatChoicePlanTest {
    private static final Vat TUB = Vat.of("tub", litres(70));
    private static final Mould FOLIO = Mould.of("folio", mm(320), mm(430));

    private static Studio studio(Vat vat, Mould mould, Assumptions store) {
        return Studio.of("bench")
                .beater(Beater.of("trough", litres(45), grams(900)))
                .vat(vat)
                .mould(mould)
                .dryer(Dryer.boards("boards", 24))
                .assumptions(store)
                .build();
    }

    private static Recipe recipe(Fibre fibre, double hours) {
        return Recipe.of("pulp", Furnish.of(fibre)).beating(hours(hours)).build();
    }

    private static Piece sheets(String name, int count, double gsm) {
        return Piece.of(name, count, "pulp")
                .size(mm(280), mm(380))
                .grammage(Grammage.gsm(gsm))
                .build();
    }

    private static MakingPlan plan(Recipe recipe, Studio studio, Piece... pieces) {
        Order.Builder order = Order.of("order").recipe(recipe);
        for (Piece piece : pieces) {
            order.piece(piece);
        }
        return MakingPlan.of(order.build(), studio);
    }

    private static MakingPlan plan(Fibre fibre, double hours, double gsm) {
        return plan(recipe(fibre, hours), studio(TUB, FOLIO, Assumptions.standard()), sheets("sheet", 40, gsm));
    }

    private static double percent(MakingPlan plan, String piece) {
        return plan.piece(piece).vat().consistency().in("%");
    }

    /** Common practice: heavy cards come from a thick vat, and long-beaten abaca will not be thickened as far. */
    @Test
    void aHeavyCardIsPulledFromAThickenedVat() {
        MakingPlan rag = plan(Fibres.COTTON_RAG, 2, 250);
        assertThat(percent(rag, "sheet")).isBetween(1.0, 1.5);
        assertThat(rag.piece("sheet").vat().dips()).isEqualTo(1);
        assertThat(rag.piece("sheet").vat().why()).contains("as deep as usual");
        MakingPlan abaca = plan(Fibres.ABACA, 5, 250);
        assertThat(percent(abaca, "sheet")).isBetween(0.7, 0.9);
        assertThat(abaca.piece("sheet").vat().why()).contains("stirs and forms");
        assertThat(abaca.piece("sheet").vat().dipDepth().si())
                .isGreaterThan(1.3 * rag.piece("sheet").vat().dipDepth().si());
    }

    /** Common practice: the thicker the vat, the heavier the sheet. */
    @ParameterizedTest
    @ValueSource(doubles = {60, 90, 120, 160, 200})
    void theDipStaysAsDeepAsUsual(double gsm) {
        VatPlan vat = plan(Fibres.COTTON_RAG, 2, gsm).piece("sheet").vat();
        assertThat(vat.dipDepth().in("mm")).isBetween(18.0, 22.0);
        // A little less than what that many grams ask of so much stock: air holds water that the vat does not count.
        assertThat(vat.consistency().si() * 1e6 * vat.dipDepth().si() * 0.97).isBetween(0.9 * gsm, gsm);
    }

    @Test
    void recipeAndHabitGoBefore() {
        Recipe thin = recipe(Fibres.COTTON_RAG, 2).toBuilder()
                .vatConsistency(Consistency.percent(0.4))
                .build();
        Studio studio = studio(TUB, FOLIO, Assumptions.standard());
        assertThat(percent(plan(thin, studio, sheets("sheet", 20, 200)), "sheet"))
                .isCloseTo(0.4, within(1e-9));
        Assumptions own = Assumptions.standard().given("vat.consistency", Scope.GENERAL, 0.006);
        MakingPlan kept = plan(recipe(Fibres.COTTON_RAG, 2), studio(TUB, FOLIO, own), sheets("sheet", 20, 200));
        assertThat(percent(kept, "sheet")).isCloseTo(0.6, within(1e-9));
        assertThat(kept.piece("sheet").vat().why()).isEqualTo("as this studio keeps its vat");
    }

    /** Heavy sheets first, whatever the order lists, and the vat is let down for the thin ones; nothing is lost. */
    @Test
    void theVatIsOnlyLetDown() {
        MakingPlan plan = plan(
                recipe(Fibres.COTTON_RAG, 2),
                studio(TUB, FOLIO, Assumptions.standard()),
                sheets("tissue", 40, 45),
                sheets("card", 40, 240),
                sheets("letter", 40, 170));
        VatPlan card = plan.piece("card").vat();
        VatPlan letter = plan.piece("letter").vat();
        VatPlan tissue = plan.piece("tissue").vat();
        assertThat(List.of(card.turn(), letter.turn(), tissue.turn())).containsExactly(1, 2, 3);
        // 170 g is dipped from the card's vat, a little shallower.
        assertThat(letter.consistency()).isEqualTo(card.consistency());
        assertThat(letter.letDown().si()).isZero();
        assertThat(letter.dipDepth().in("mm")).isBetween(12.0, 20.0);
        assertThat(tissue.consistency().si())
                .isLessThan(0.5 * card.consistency().si());
        double out = tissue.letDown().in("L");
        assertThat(out).isBetween(30.0, 60.0);
        double given = tissue.pail().in("L")
                + tissue.recharges().stream()
                        .mapToDouble(one -> one.pail().in("L"))
                        .sum();
        assertThat(given).isBetween(1.0, out + 0.5);
        // What was let down is used before fresh stock is.
        assertThat(tissue.recharges().get(0).pail().si()).isPositive();
        assertThat(tissue.recharges().get(0).stock().si()).isZero();
        for (String name : List.of("tissue", "card", "letter")) {
            double ordered = name.equals("tissue") ? 45 : name.equals("card") ? 240 : 170;
            assertThat(plan.piece(name).finished().grammage().likely().in("g/m2"))
                    .as(name)
                    .isCloseTo(ordered, within(0.02 * ordered));
            assertThat(plan.piece(name).vat().lightest().si()).isGreaterThan(0.94);
            assertThat(plan.piece(name).vat().heaviest().si()).isLessThan(1.06);
        }
        assertThat(plan.batch("pulp").balances())
                .allSatisfy(
                        one -> assertThat(one.totalIn().si() - one.totalOut().si())
                                .isCloseTo(0, within(1e-9 * one.totalIn().si())));
        assertThat(MakingCard.of(plan).toString())
                .contains("in the order of the vat")
                .contains("into pails")
                .contains("of the pails");
    }

    @Test
    void theOrderMayBeKept() {
        Order.Builder order = Order.of("order")
                .recipe(recipe(Fibres.COTTON_RAG, 2))
                .piece(sheets("thin", 10, 90))
                .piece(sheets("thick", 10, 160));
        Studio studio = studio(TUB, FOLIO, Assumptions.standard());
        assertThat(MakingPlan.of(order.build(), studio).piece("thick").vat().turn())
                .isEqualTo(1);
        MakingPlan listed = MakingPlan.of(order.build().toBuilder().asListed().build(), studio);
        assertThat(listed.piece("thin").vat().turn()).isEqualTo(1);
        assertThat(listed.piece("thick").finished().grammage().likely().in("g/m2"))
                .isCloseTo(160, within(3.0));
    }

    /** Depth limits only where a deckle has one; what drains meanwhile adds to it. */
    @Test
    void aShallowDeckleTakesSeveralDips() {
        Piece heavy = sheets("sheet", 20, 300);
        Studio open = studio(TUB, FOLIO, Assumptions.standard());
        MakingPlan one = plan(recipe(Fibres.ABACA, 5), open, heavy);
        assertThat(one.piece("sheet").vat().dips()).isEqualTo(1);
        Studio shallow =
                studio(TUB, Mould.of("folio", Deckle.of(mm(320), mm(430)).deep(mm(15))), Assumptions.standard());
        MakingPlan several = plan(recipe(Fibres.ABACA, 5), shallow, heavy);
        VatPlan vat = several.piece("sheet").vat();
        assertThat(vat.dips()).isBetween(2, 3);
        assertThat(vat.dips() * vat.lift().si())
                .isCloseTo(one.piece("sheet").vat().lift().si(), within(0.05));
        assertThat(several.piece("sheet").finished().grammage().likely().in("g/m2"))
                .isCloseTo(300, within(3.0));
        assertThat(several.notices())
                .filteredOn(notice -> notice.code().equals("vat.several-dips"))
                .singleElement()
                .extracting(Notice::text)
                .asString()
                .contains("it is built up of " + vat.dips() + " dips")
                .contains("a deckle that deep; or pour the sheet");
    }

    /** More dips than anybody makes are none: the sheet is poured, and the card says why. */
    @Test
    void aDeckleFarTooShallowIsPoured() {
        Studio flat = studio(TUB, Mould.of("folio", Deckle.of(mm(320), mm(430)).deep(mm(3))), Assumptions.standard());
        MakingPlan plan = plan(recipe(Fibres.ABACA, 5), flat, sheets("sheet", 10, 400));
        assertThat(plan.piece("sheet").vatStage().code()).isEqualTo("vat.deckle-too-shallow");
        assertThat(plan.piece("sheet").pourStage().isDone()).isTrue();
        assertThat(plan.notices()).extracting(Notice::code).contains("vat.deckle-too-shallow");
    }

    /** A jug without a strainer takes its fibre along. */
    @Test
    void bailingWithoutAStrainerIsPlannedAsLost() {
        Piece sheets = sheets("sheet", 120, 120);
        MakingPlan strained = plan(recipe(Fibres.COTTON_RAG, 2), studio(TUB, FOLIO, Assumptions.standard()), sheets);
        MakingPlan jug = plan(
                recipe(Fibres.COTTON_RAG, 2), studio(TUB.withoutStrainer(), FOLIO, Assumptions.standard()), sheets);
        double kept = strained.batch("pulp").whiteWaterFibre().likely().si();
        double lost = jug.batch("pulp").whiteWaterFibre().likely().si();
        assertThat(lost).isGreaterThan(10 * kept);
        assertThat(jug.batch("pulp").fibre().ovenDry().si()
                        - strained.batch("pulp").fibre().ovenDry().si())
                .isBetween(0.8 * (lost - kept), 1.2 * (lost - kept));
    }

    /** No step of the level below a per cent of the vat. */
    @Test
    void theLevelIsLeftWhereItStandsNearTheMark() {
        for (double gsm : new double[] {60, 120, 240}) {
            MakingPlan plan = plan(Fibres.COTTON_RAG, 2, gsm);
            assertThat(plan.piece("sheet").vat().recharges()).allSatisfy(one -> {
                double moved = one.water().in("L") + one.bail().in("L");
                assertThat(moved == 0 || moved >= 0.65).as(one.toString()).isTrue();
            });
            assertThat(plan.piece("sheet").finished().grammage().likely().in("g/m2"))
                    .isCloseTo(gsm, within(0.01 * gsm));
        }
    }

    /** Where drain rules, twice the drain is twice the wait and a second mould halves it; where hands rule, neither counts. */
    @Test
    void aSheetTakesTheLongerOfHandsAndMoulds() {
        Piece sheets = sheets("sheet", 40, 120);
        Recipe slow = recipe(Fibres.ABACA, 5);
        Assumptions twice = Assumptions.standard()
                .given("drainage.suction-factor", Scope.at("tub"), 2)
                .given("labour.dip-couch", Scope.GENERAL, 0.001);
        Assumptions once = twice.given("drainage.suction-factor", Scope.at("tub"), 1);
        double waits = atVat(slow, FOLIO, once, sheets);
        assertThat(atVat(slow, FOLIO, twice, sheets) / waits).isCloseTo(2, within(1e-4));
        assertThat(atVat(slow, FOLIO.inTurn(2), twice, sheets) / waits).isCloseTo(1, within(1e-4));
        MakingPlan plan = plan(slow, studio(TUB, FOLIO, Assumptions.standard()), sheets);
        assertThat(plan.notices())
                .filteredOn(notice -> notice.code().equals("vat.mould-waits"))
                .singleElement()
                .extracting(Notice::text)
                .asString()
                .contains("A second mould of the same size");

        Recipe quick = recipe(Fibres.COTTON_RAG, 0.5);
        double hands = atVat(quick, FOLIO, once, sheets);
        assertThat(atVat(quick, FOLIO, twice, sheets)).isCloseTo(hands, within(1e-9));
        assertThat(atVat(quick, FOLIO.inTurn(2), once, sheets)).isCloseTo(hands, within(1e-9));
    }

    /** The last sheets are pulled from what is in the vat, not from fresh stock. */
    @Test
    void theVatMayBeRunDown() {
        Piece sheets = sheets("sheet", 60, 120);
        MakingPlan kept = plan(recipe(Fibres.COTTON_RAG, 2), studio(TUB, FOLIO, Assumptions.standard()), sheets);
        MakingPlan down = plan(
                recipe(Fibres.COTTON_RAG, 2), studio(TUB.runDownTo(litres(30)), FOLIO, Assumptions.standard()), sheets);
        double before = left(kept);
        assertThat(left(down)).isBetween(0.35 * before, 0.6 * before);
        // Of the fibre of sixty sheets a quarter stayed in the vat, and less than 15 % does now.
        assertThat(before / kept.batch("pulp").fibre().ovenDry().si()).isGreaterThan(0.2);
        assertThat(left(down) / down.batch("pulp").fibre().ovenDry().si()).isLessThan(0.15);
        assertThat(down.batch("pulp").fibre().ovenDry().si())
                .isCloseTo(kept.batch("pulp").fibre().ovenDry().si() - before + left(down), within(0.05 * before));
        List<VatPlan.Recharge> strained = down.piece("sheet").vat().recharges().stream()
                .filter(one -> one.strained().si() > 0)
                .toList();
        assertThat(strained)
                .hasSizeGreaterThan(1)
                .allSatisfy(one -> assertThat(one.stock().si()).isZero());
        double out =
                strained.stream().mapToDouble(one -> one.strained().in("L")).sum();
        assertThat(out).isBetween(20.0, 40.5);
        assertThat(down.piece("sheet").finished().grammage().likely().in("g/m2"))
                .isCloseTo(120, within(2.0));
        assertThat(down.piece("sheet").vat().lightest().si()).isGreaterThan(0.94);
        assertThat(down.piece("sheet").vat().heaviest().si()).isLessThan(1.06);
        assertThat(down.batch("pulp").balances())
                .allSatisfy(
                        one -> assertThat(one.totalIn().si() - one.totalOut().si())
                                .isCloseTo(0, within(1e-9 * one.totalIn().si())));
        assertThat(MakingCard.of(down).toString()).contains("run the vat down");
        assertThatThrownBy(() -> TUB.runDownTo(litres(70)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Give the least the mould can still be dipped from");
    }

    /** Fibre that passes the strainer does not make the vat be filled up once more in the middle of running down. */
    @Test
    void aVatThatIsRunDownIsNotFilledAgain() {
        for (int count = 36; count <= 96; count += 4) {
            MakingPlan down = plan(
                    recipe(Fibres.COTTON_RAG, 2),
                    studio(TUB.runDownTo(litres(30)), FOLIO, Assumptions.standard()),
                    sheets("sheet", count, 100));
            VatPlan vat = down.piece("sheet").vat();
            List<VatPlan.Recharge> strained = vat.recharges().stream()
                    .dropWhile(one -> one.strained().si() == 0)
                    .toList();
            assertThat(strained).as("%d sheets", count).isNotEmpty().allSatisfy(one -> {
                assertThat(one.stock().si()).isZero();
                assertThat(one.water().si()).isZero();
            });
            assertThat(vat.lightest().si()).as("%d sheets", count).isGreaterThan(0.93);
            assertThat(left(down))
                    .as("%d sheets", count)
                    .isLessThan(1.25 * 30 * vat.consistency().si());
        }
    }

    private static double left(MakingPlan plan) {
        return plan.batch("pulp").keptInVat().likely().si();
    }

    /** A few thin sheets from a great vat: most of the fibre stays in it. */
    @Test
    void fibreLeftInTheVatIsNoticedWithWhatToDo() {
        MakingPlan plan =
                plan(recipe(Fibres.KOZO, 0.3), studio(TUB, FOLIO, Assumptions.standard()), sheets("sheet", 8, 30));
        assertThat(plan.notices())
                .filteredOn(notice -> notice.code().equals("vat.fibre-left"))
                .singleElement()
                .extracting(Notice::text)
                .asString()
                .contains("stays in the vat. A filling of ")
                .contains("pour the sheets, or strain it for the next batch");
    }

    /** Least time of hands; within a twentieth of that, least fibre; and the runner-up with what it would save. */
    @Test
    void theMouldIsTheOneThatSavesHands() {
        Piece cards = Piece.of("cards", 200, "pulp")
                .size(mm(100), mm(140))
                .grammage(Grammage.gsm(200))
                .build();
        Studio studio = Studio.of("bench")
                .beater(Beater.of("trough", litres(45), grams(900)))
                .vat(TUB)
                .mould(Mould.of("pair", mm(120), mm(320)))
                .mould(Mould.of("eight", mm(330), mm(450)))
                .mould(Mould.of("ten", mm(330), mm(800)))
                .dryer(Dryer.boards("boards", 24))
                .build();
        MakingPlan plan = plan(recipe(Fibres.COTTON_RAG, 2), studio, cards);
        // Eight at a time in 100 s beat two at a time in 100 s, and sixteen at a time in 300 s.
        assertThat(plan.piece("cards").forming().mould().orElseThrow().name()).isEqualTo("eight");
        assertThat(plan.piece("cards").forming().perSheet()).isBetween(8, 9);
        assertThat(plan.piece("cards").forming().otherMould().orElseThrow())
                .matches("(pair|ten): [0-9.]+ h more at the vat, [0-9.]+ % (more|less) fibre");
    }

    @Test
    void sheetsADayFollowFromTheTimeAtTheVat() {
        PiecePlan piece = plan(Fibres.COTTON_RAG, 2, 120).piece("sheet");
        double each = piece.timeAtVat().likely().in("h") / piece.counts().sheets();
        double day = Studio.of("usual").build().workingDay().in("h");
        assertThat(piece.sheetsADay().likely().si()).isCloseTo(day / each, within(1e-9));
        assertThat(piece.sheetsADay().low().si() * piece.timeAtVat().high().si())
                .isCloseTo(
                        piece.sheetsADay().likely().si()
                                * piece.timeAtVat().likely().si(),
                        within(1e-6));
    }

    /** What a piece is called does not make it quicker. */
    @Test
    void aPieceCalledCardIsNoCardForThat() {
        Studio studio = studio(TUB, FOLIO, Assumptions.standard());
        MakingPlan called = plan(recipe(Fibres.COTTON_RAG, 0.5), studio, sheets("card", 40, 120));
        MakingPlan other = plan(recipe(Fibres.COTTON_RAG, 0.5), studio, sheets("sheet", 40, 120));
        assertThat(called.piece("card").timeAtVat().likely())
                .isEqualTo(other.piece("sheet").timeAtVat().likely());
    }

    private static double atVat(Recipe recipe, Mould mould, Assumptions store, Piece piece) {
        return plan(recipe, studio(TUB, mould, store), piece)
                .piece(piece.name())
                .timeAtVat()
                .likely()
                .si();
    }
}
