package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.seconds;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Notice;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;

/**
 * A run goes wrong in a vat that is reckoned here by itself, sheet by sheet; the door of the plan is told only what a scale, a
 * jug or a stopwatch shows of it, and what it says is done to that vat.
 */
class AtTheVatTest {
    private static final MakingPlan PLAN = MakingPlan.of(
            Order.of("even sheets")
                    .recipe(Recipe.of("plain", Furnish.of(Fibres.COTTON_RAG))
                            .beating(hours(3))
                            .build())
                    .piece(Piece.of("sheet", 50, "plain")
                            .size(mm(210), mm(297))
                            .grammage(Grammage.gsm(110))
                            .build())
                    .build(),
            Sample.studio());
    private static final int SHEETS = PLAN.piece("sheet").counts().sheets();
    private static final AtTheVat VAT = PLAN.atTheVat("sheet");
    private static final double RETENTION = Sample.studio()
            .assumptions()
            .si("vat.retention", Fibres.COTTON_RAG.scope().on("tub"));
    private static final double WATER = 998.4;

    /** A vat in plain balances: fibre and all there is, kg. */
    private static final class Tub {
        double fibre;
        double mass;
        double stock;
        double lift = PLAN.piece("sheet").vat().lift().si();
        double couched = couchedSolids();

        static Tub charged() {
            Tub tub = new Tub();
            double c = PLAN.piece("sheet").vat().consistency().si();
            tub.stock = PLAN.batch("plain").stock().consistency().si();
            tub.mass = 80e-3 * WATER * 1.0017;
            double first = PLAN.piece("sheet").vat().stock().si() * 1001 * tub.stock;
            tub.fibre = first;
            assertThat(first / tub.mass).isCloseTo(c, within(0.1 * c));
            return tub;
        }

        double couchedSolids() {
            PiecePlan piece = PLAN.piece("sheet");
            return piece.forming().solids().si() / piece.couchedMass().likely().si();
        }

        /** Pulls a sheet and returns the fibre in it. */
        double pull() {
            double sheet = RETENTION * lift * fibre / mass;
            fibre -= sheet;
            mass -= sheet / couched;
            return sheet;
        }

        void give(VatPlan.Recharge one) {
            fibre -= fibre * one.strained().si() * WATER / mass * (1 - RETENTION);
            mass -= one.strained().si() * WATER;
            double bailed = one.bail().si() * WATER;
            fibre -= fibre * bailed / mass * (1 - RETENTION);
            mass += one.stock().si() * 1001 + one.water().si() * WATER - bailed;
            fibre += one.stock().si() * 1001 * stock;
            assertThat(one.pail().si()).isLessThan(1e-4);
        }

        void takeOut(Amount<?> volume) {
            double out = volume.si() * 1001;
            fibre -= fibre * out / mass;
            mass -= out;
        }

        List<Double> plan(int from, int to) {
            List<Double> sheets = new ArrayList<>();
            for (int sheet = from; sheet <= to; sheet++) {
                sheets.add(pull());
                int done = sheet;
                PLAN.piece("sheet").vat().recharges().stream()
                        .filter(one -> one.afterSheet() == done && done < to)
                        .forEach(this::give);
            }
            return sheets;
        }

        /** Follows what the door says for the rest. */
        List<Double> follow(AtTheVat vat) {
            takeOut(vat.takeOut());
            give(vat.now());
            List<Double> sheets = new ArrayList<>();
            for (int sheet = vat.done() + 1; sheet <= vat.done() + vat.left(); sheet++) {
                sheets.add(pull());
                int done = sheet;
                vat.recharges().stream().filter(one -> one.afterSheet() == done).forEach(this::give);
            }
            return sheets;
        }
    }

    private static void areWithin(List<Double> sheets, double wanted, double tolerance) {
        assertThat(sheets).isNotEmpty();
        for (double sheet : sheets) {
            assertThat(sheet).isCloseTo(wanted, within(tolerance * wanted));
        }
    }

    private static double wanted() {
        return PLAN.piece("sheet").forming().fibre().si();
    }

    @Test
    void theTubOfTheTestIsThatOfThePlan() {
        List<Double> sheets = Tub.charged().plan(1, SHEETS);
        areWithin(sheets, wanted(), 0.06);
        for (int done : new int[] {1, 7, 20, SHEETS}) {
            assertThat(VAT.after(done).lastSheet().orElseThrow().si())
                    .isCloseTo(sheets.get(done - 1), within(0.01 * wanted()));
        }
    }

    @Test
    void withoutAReadingThePlanGoesOn() {
        AtTheVat vat = VAT.after(12);
        List<VatPlan.Recharge> planned = PLAN.piece("sheet").vat().recharges();
        assertThat(vat.recharges().stream().map(Object::toString))
                .containsExactlyElementsOf(planned.stream()
                        .filter(one -> one.afterSheet() > 12)
                        .map(Object::toString)
                        .toList());
        assertThat(vat.found().si()).isEqualTo(1);
        assertThat(VAT.now()).hasToString("before the first sheet: nothing");
        assertThat(vat.sheets()).hasSize(SHEETS - 12);
        assertThat(vat.notices()).isEmpty();
    }

    @Test
    void aLevelThatFellIsBroughtBack() {
        Tub tub = Tub.charged();
        tub.plan(1, 14);
        double spilt = 0.05 * tub.mass;
        tub.fibre -= tub.fibre * spilt / tub.mass;
        tub.mass -= spilt;
        double below = (80e-3 * WATER * 1.0017 - tub.mass) / WATER;
        AtTheVat vat = VAT.after(14).standsBelowTheMark(Kinds.VOLUME.ofSi(below));
        assertThat(vat.belowTheMark().si()).isCloseTo(below, within(1e-4));
        areWithin(tub.follow(vat), wanted(), 0.06);
    }

    @Test
    void thinStockIsFoundByADriedSheetAndMadeUp() {
        Tub tub = Tub.charged();
        tub.fibre *= 0.8;
        double real = 0.8 * tub.stock;
        tub.stock = real;
        List<Double> sheets = tub.plan(1, 8);
        assertThat(sheets.get(7)).isLessThan(0.85 * wanted());
        AtTheVat vat = VAT.after(8)
                .dried(Kinds.MASS.ofSi(sheets.get(7)), Moisture.percent(0))
                .stock(Consistency.percent(100 * real));
        assertThat(vat.found().si()).isCloseTo(0.8, within(0.01));
        areWithin(tub.follow(vat), wanted(), 0.06);
        assertThat(vat.notices()).extracting(Notice::code).contains("vat.stock-runs-short");
    }

    @Test
    void aForgottenRechargeIsMadeUpBothByTellingAndByWeighing() {
        int every = PLAN.piece("sheet").vat().every();
        Tub tub = Tub.charged();
        tub.plan(1, 2 * every);
        List<Double> thin = new ArrayList<>();
        for (int i = 0; i < every; i++) {
            thin.add(tub.pull());
        }
        double last = thin.get(every - 1);
        assertThat(last).isLessThan(0.95 * wanted());
        AtTheVat told = VAT.after(2 * every).givingNothing(every);
        assertThat(told.lastSheet().orElseThrow().si()).isCloseTo(last, within(0.01 * wanted()));
        AtTheVat weighed = VAT.after(3 * every).dried(Kinds.MASS.ofSi(last), Moisture.percent(0));
        assertThat(weighed.consistency().si())
                .isCloseTo(
                        told.consistency().si(),
                        within(0.01 * told.consistency().si()));
        areWithin(tub.follow(weighed), wanted(), 0.06);
    }

    @Test
    void aSheetDippedTwiceTookAsMuchAgain() {
        Tub tub = Tub.charged();
        tub.plan(1, 9);
        tub.pull();
        AtTheVat vat = VAT.after(9).spoiledSheet();
        assertThat(vat.done()).isEqualTo(9);
        assertThat(vat.left()).isEqualTo(SHEETS - 9);
        assertThat(vat.consistency().si()).isCloseTo(tub.fibre / tub.mass, within(0.01 * tub.fibre / tub.mass));
        areWithin(tub.follow(vat), wanted(), 0.06);
    }

    @Test
    void aVatThatStoodADayIsSampled() {
        Tub tub = Tub.charged();
        tub.plan(1, 20);
        // A crust was taken off, and clear water dried away.
        tub.fibre *= 0.9;
        tub.mass -= 1.5;
        AtTheVat vat = VAT.after(20)
                .standsBelowTheMark(Kinds.VOLUME.ofSi((80e-3 * WATER * 1.0017 - tub.mass) / WATER))
                .sample(grams(500), Kinds.MASS.ofSi(0.5 * tub.fibre / tub.mass));
        areWithin(tub.follow(vat), wanted(), 0.06);
    }

    @Test
    void aTooThickVatIsTakenOutOfAndWatered() {
        Tub tub = Tub.charged();
        List<Double> before = tub.plan(1, 10);
        tub.fibre *= 1.25;
        AtTheVat vat = VAT.after(10).dried(Kinds.MASS.ofSi(1.25 * before.get(9)), Moisture.percent(0));
        assertThat(vat.takeOut().si()).isPositive();
        assertThat(vat.now().stock().si()).isLessThan(1e-4);
        tub.takeOut(vat.takeOut());
        tub.give(vat.now());
        // What was taken out is given back first; until then each is as it should be.
        for (int i = 0; i < PLAN.piece("sheet").vat().every(); i++) {
            assertThat(tub.pull()).isCloseTo(wanted(), within(0.06 * wanted()));
        }
        assertThat(vat.recharges().get(0).pail().si()).isPositive();
    }

    @Test
    void anotherMouldGivesTheSamePaper() {
        Tub tub = Tub.charged();
        tub.plan(1, 25);
        AtTheVat vat = VAT.after(25).on(Mould.of("small", mm(200), mm(280)), 20);
        double area = PLAN.piece("sheet").forming().opening().area().si();
        double share = 0.2 * 0.28 / area;
        assertThat(vat.wanted().si())
                .isCloseTo(share * PLAN.piece("sheet").forming().solids().si(), within(1e-9));
        tub.lift *= share;
        areWithin(tub.follow(vat), share * wanted(), 0.06);
        assertThat(vat.left()).isEqualTo(20);
    }

    @Test
    void anotherDipIsGivenAnotherVat() {
        AtTheVat vat = VAT.after(25).lifting(PLAN.piece("sheet").vat().lift().multiply(0.8));
        assertThat(vat.toString())
                .contains(" for "
                        + Kinds.CONSISTENCY.ofSi(
                                PLAN.piece("sheet").vat().consistency().si() / 0.8, "%"));
        Tub tub = Tub.charged();
        tub.plan(1, 25);
        tub.lift *= 0.8;
        areWithin(tub.follow(vat), wanted(), 0.06);
    }

    @Test
    void aSlowerSheetIsAThickerVat() {
        AtTheVat vat = VAT.after(20).drains(seconds(20), seconds(24));
        assertThat(vat.consistency().si())
                .isGreaterThan(1.1 * PLAN.piece("sheet").vat().consistency().si())
                .isLessThan(1.25 * PLAN.piece("sheet").vat().consistency().si());
        AtTheVat same = VAT.after(20).drains(seconds(20), seconds(20));
        assertThat(same.consistency().si())
                .isCloseTo(PLAN.piece("sheet").vat().consistency().si(), within(1e-9));
    }

    @Test
    void aReadingWithinTheScatterOfHandsIsSaidToBe() {
        AtTheVat at = VAT.after(12);
        AtTheVat vat = at.dried(at.lastSheet().orElseThrow().multiply(1.03), Moisture.percent(0));
        assertThat(vat.notices()).extracting(Notice::code).containsExactly("vat.within-scatter");
        assertThat(vat.toString())
                .startsWith("sheet, after sheet 12: it holds 103 % of what was reckoned; the vat stands at ");
    }

    @Test
    void theWetSheetSaysTheSameByTheSolidsOfThePlan() {
        AtTheVat at = VAT.after(12);
        double wet = at.lastSheet().orElseThrow().si() / new Tub().couchedSolids();
        assertThat(at.couched(Kinds.MASS.ofSi(0.85 * wet)).found().si()).isCloseTo(0.85, within(0.01));
    }

    @Test
    void goingOnIsFormingWhatWasSaid() {
        AtTheVat at =
                VAT.after(12).dried(VAT.after(12).lastSheet().orElseThrow().multiply(0.85), Moisture.percent(0));
        AtTheVat later = at.goingOn(5);
        assertThat(later.done()).isEqualTo(17);
        assertThat(later.left()).isEqualTo(SHEETS - 17);
        assertThat(later.lastSheet().orElseThrow().si())
                .isEqualTo(at.sheets().get(4).si());
    }

    @Test
    void afterTheLastSheetNothingIsLeft() {
        AtTheVat vat = VAT.after(SHEETS);
        assertThat(vat.left()).isZero();
        assertThat(vat.sheets()).isEmpty();
        assertThat(vat.recharges()).isEmpty();
        AtTheVat read = vat.dried(vat.lastSheet().orElseThrow().multiply(0.8), Moisture.percent(0));
        assertThat(read.now().stock().si()).isZero();
        assertThat(read.further(10).sheets()).hasSize(10);
        assertThatThrownBy(() -> vat.goingOn(1))
                .isInstanceOf(Refused.class)
                .hasMessage("sheet: all sheets of sheet are pulled. Say with further(…) how many more are wanted.");
        assertThatThrownBy(() -> vat.lifting(kilograms(1))).isInstanceOf(Refused.class);
    }

    @Test
    void slipsAreRefusedWithWhatToDo() {
        assertThatThrownBy(() -> VAT.couched(grams(50)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no sheet is pulled yet");
        assertThatThrownBy(() -> VAT.after(3).couched(kilograms(5)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Look for a slip in the unit");
        assertThatThrownBy(() -> VAT.after(SHEETS + 1)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> VAT.after(3).standsBelowTheMark(litres(90)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("it holds ");
        assertThatThrownBy(() -> VAT.after(3).stock(Consistency.percent(0.2)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Drain the stock first");
        assertThatThrownBy(() -> VAT.after(3).lifting(grams(10)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("even of undiluted stock. Lift more");
        assertThatThrownBy(
                        () -> MakingPlan.of(PLAN.order(), Sample.bare().build()).atTheVat("sheet"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("the studio has no vat");
    }
}
