package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import org.junit.jupiter.api.Test;
import org.papermath.card.MakingCard;
import org.papermath.drying.Dryer;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.VolumeFlow;
import org.papermath.vat.Vat;

/** Facts of the trade, all common practice without a source; each order is invented, and no test holds more than two. */
class TradePracticeTest {
    private static MakingPlan plan(Recipe recipe, Piece piece, Studio studio) {
        return MakingPlan.withoutBands(
                Order.of("invented").recipe(recipe).piece(piece).build(), studio);
    }

    private static Recipe abaca(double hours) {
        return Recipe.of("leaf", Furnish.of(Fibres.ABACA)).beating(hours(hours)).build();
    }

    private static Studio.Builder studio(String name) {
        return Studio.of(name)
                .beater(Beater.of("tub beater", litres(50), grams(1000)))
                .vat(Vat.of("long vat", litres(90)))
                .press(Press.of("bottle press", kilonewtons(120), mm(480), mm(640)))
                .felts(Felts.of(mm(480), mm(640), Grammage.gsm(520), 30));
    }

    /** Abaca half-stuff beaten an hour and a half drains in 20 to 90 s; its couched mat is 4 to 12 times the dry sheet. */
    @Test
    void abacaOfAnHourAndAHalf() {
        MakingPlan plan = plan(
                abaca(1.5),
                Piece.of("lining", 60, "leaf")
                        .size(mm(230), mm(310))
                        .grammage(Grammage.gsm(140))
                        .build(),
                studio("lining papers")
                        .mould(Mould.of("crown", mm(260), mm(340)))
                        .dryer(Dryer.boards("boards", 20))
                        .build());
        PiecePlan lining = plan.piece("lining");
        assertThat(lining.drainTime().likely().in("s")).isBetween(20.0, 90.0);
        assertThat(lining.matThickness().likely().si()
                        / lining.finished().caliper().likely().si())
                .isBetween(4.0, 12.0);
    }

    /** A post is of about ten felts. */
    @Test
    void postsOfAboutTenFelts() {
        MakingPlan plan = plan(
                abaca(2),
                Piece.of("endpapers", 80, "leaf")
                        .size(mm(400), mm(540))
                        .grammage(Grammage.gsm(110))
                        .build(),
                studio("endpapers")
                        .mould(Mould.of("royal", mm(440), mm(600)))
                        .dryer(Dryer.loft("loft", 1, 100))
                        .build());
        assertThat(plan.piece("endpapers").posts().felts()).isBetween(9, 12);
    }

    /** Felts are damp before the first sheet is couched. */
    @Test
    void feltsAreDampBeforeCouching() {
        MakingPlan plan = plan(
                abaca(2),
                Piece.of("wrappers", 20, "leaf")
                        .size(mm(300), mm(420))
                        .grammage(Grammage.gsm(60))
                        .build(),
                studio("wrappers")
                        .mould(Mould.of("medium", mm(330), mm(460)))
                        .dryer(Dryer.boards("boards", 20))
                        .build());
        assertThat(MakingCard.of(plan).toString()).containsPattern("(?i)felts.{0,40}damp|damp.{0,40}felts");
    }

    /** Stock is added between sheets, and the vat is stirred before the next dip. */
    @Test
    void stockIsAddedBetweenSheetsAndStirred() {
        MakingPlan plan = plan(
                abaca(3),
                Piece.of("lamp panels", 90, "leaf")
                        .size(mm(300), mm(420))
                        .grammage(Grammage.gsm(90))
                        .build(),
                studio("lamp panels")
                        .mould(Mould.of("medium", mm(340), mm(470)))
                        .dryer(Dryer.boards("boards", 20))
                        .build());
        assertThat(plan.piece("lamp panels").vat().recharges()).isNotEmpty();
        assertThat(MakingCard.of(plan).toString())
                .contains("stock goes in between two sheets; stir well before the next dip");
    }

    /** A thicker vat gives heavier sheets from the same hand. */
    @Test
    void aThickerVatGivesHeavierSheets() {
        double thin = lift(0.5);
        double thick = lift(0.8);
        // As heavy a sheet takes less stock the thicker the vat is; the same lift would give a heavier one.
        assertThat(thin / thick).isBetween(1.55, 1.65);
    }

    private static double lift(double percent) {
        MakingPlan plan = plan(
                Recipe.of("rag", Furnish.of(Fibres.COTTON_RAG))
                        .beating(hours(2))
                        .vatConsistency(Consistency.percent(percent))
                        .build(),
                Piece.of("broadside", 30, "rag")
                        .size(mm(380), mm(520))
                        .grammage(Grammage.gsm(160))
                        .build(),
                studio("broadsides")
                        .mould(Mould.of("royal", mm(420), mm(570)))
                        .dryer(Dryer.loft("loft", 1, 60))
                        .build());
        return plan.piece("broadside").vat().lift().si();
    }

    /** Weight on a stack keeps the size of what dries in it. */
    @Test
    void weightOnAStackKeepsTheSize() {
        double heavy = shrinkage(80);
        double light = shrinkage(1);
        assertThat(light).isGreaterThan(1.5 * heavy);
    }

    private static double shrinkage(double kilograms) {
        MakingPlan plan = plan(
                abaca(4),
                Piece.of("vellum", 30, "leaf")
                        .size(mm(200), mm(280))
                        .grammage(Grammage.gsm(80))
                        .build(),
                studio("vellum-like")
                        .mould(Mould.of("demy", mm(240), mm(330)))
                        .dryer(Dryer.fanStack("stack", VolumeFlow.cubicMetresPerHour(900), 30)
                                .under(kilograms(kilograms)))
                        .build());
        return plan.piece("vellum").finished().shrinkageAlong().likely().si();
    }

    /** Sheets are left in a stack for days, longer than they take to dry. */
    @Test
    void theStackIsLeftForDays() {
        MakingPlan plan = plan(
                abaca(1),
                Piece.of("notepaper", 40, "leaf")
                        .size(mm(150), mm(210))
                        .grammage(Grammage.gsm(70))
                        .build(),
                studio("notepaper")
                        .mould(Mould.of("demy", mm(240), mm(330)))
                        .dryer(Dryer.fanStack("stack", VolumeFlow.cubicMetresPerHour(1200), 40))
                        .build());
        DryingPlan drying = plan.piece("notepaper").drying();
        assertThat(drying.left().in("h")).isGreaterThanOrEqualTo(24);
        assertThat(drying.time().likely().in("h")).isLessThan(drying.left().in("h"));
    }
}
