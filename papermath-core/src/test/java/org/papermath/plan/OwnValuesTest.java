package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.vat.Vat;

/** A studio's own values are used, or the plan says which of them are not. */
class OwnValuesTest {
    private static final Assumptions SHIPPED = Assumptions.standard();

    private static MakingPlan plan(Assumptions known) {
        Order order = Order.of("order")
                .recipe(Recipe.of("plain", Furnish.of(Fibres.KOZO))
                        .beating(hours(1))
                        .additive(Additive.of("slate", Additive.Purpose.PIGMENT), Dose.percent(2))
                        .additive(Additive.of("aid", Additive.Purpose.RETENTION_AID), Dose.percent(0.1))
                        .build())
                .piece(Piece.of("sheet", 20, "plain")
                        .size(mm(200), mm(280))
                        .grammage(Grammage.gsm(80))
                        .build())
                .build();
        return MakingPlan.of(
                order,
                Studio.of("bench")
                        .beater(Beater.of("beater", litres(40), grams(800)))
                        .vat(Vat.of("vat", litres(80)))
                        .press(Press.of("press", kilonewtons(60), mm(400), mm(500)))
                        .assumptions(known)
                        .build());
    }

    private static List<Notice> unused(Assumptions known) {
        return plan(known).notices().stream()
                .filter(notice -> notice.code().equals("assumption.unused"))
                .toList();
    }

    @Test
    void waitBetweenAdditionsIsTheStudios() {
        Assumptions own = SHIPPED.given("additive.wait", Scope.GENERAL, 10)
                .given("additive.wait", Scope.of(Additive.Purpose.RETENTION_AID.subject()), 7);
        BatchPlan batch = plan(own).batch("plain");
        assertThat(batch.additives())
                .extracting(AdditiveToWeigh::waitAfter)
                .containsExactlyInAnyOrder(minutes(10), minutes(7));
        assertThat(AdditiveDose.timetable(batch.recipe().additives(), own)
                        .get(1)
                        .at())
                .isEqualTo(batch.additives().get(0).waitAfter());
        assertThat(unused(own)).isEmpty();
    }

    @Test
    void valuesThatNothingAsksForAreNamedInOneNote() {
        // Kozo's density is not pressed again, and nothing hangs in a loft here.
        Assumptions own = SHIPPED.given("sheet.density-reference-pressure", Scope.GENERAL, 0.2)
                .given("drying.loft-tail", Scope.GENERAL, 1.6)
                .given("labour.sort", Scope.GENERAL, 20)
                .given("press.factor", Scope.at("press"), 1.2);
        assertThat(unused(own)).singleElement().satisfies(note -> {
            assertThat(note.text())
                    .contains("sheet.density-reference-pressure", "drying.loft-tail")
                    .doesNotContain("labour.sort", "press.factor");
            assertThat(note.arguments().get("keys"))
                    .isEqualTo(List.of("drying.loft-tail", "sheet.density-reference-pressure"));
        });
    }

    @Test
    void valueHiddenByANarrowerOneIsNamed() {
        assertThat(unused(SHIPPED.given("press.factor", Scope.GENERAL, 1.3)
                        .given("press.factor", Scope.at("press"), 1.2)))
                .singleElement()
                .satisfies(note -> assertThat(note.arguments().get("keys")).isEqualTo(List.of("press.factor")));
    }

    @Test
    void daysLimitsAndSettingsThatHaveNoBandCountAsUsed() {
        assertThat(unused(SHIPPED.given("schedule.delivery", Scope.GENERAL, 9)
                        .given("press.pressure-warning", Scope.GENERAL, 2e6)
                        .given("sheet.density-doubtful-high", Scope.GENERAL, 1200)
                        .given("vat.consistency", Scope.GENERAL, 0.01)
                        .given("order.spare-share", Scope.GENERAL, 0.2)
                        .given("sheet.density-most", Scope.GENERAL, 1450)
                        .given("stock.shortage-told", Scope.GENERAL, 0.2)))
                .isEmpty();
    }

    @Test
    void namesThatAreNotHereStayANoteOfTheirOwn() {
        MakingPlan plan = plan(SHIPPED.given("press.factor", Scope.at("pres"), 1.2));
        assertThat(plan.notices())
                .extracting(Notice::code)
                .contains("assumption.stranger")
                .doesNotContain("assumption.unused");
    }

    @Test
    void manyAreCountedAndAllAreAmongTheArguments() {
        Assumptions own = SHIPPED;
        for (String fibre : List.of(
                "abaca", "linter", "cotton-rag", "hemp", "flax", "jute", "sisal", "esparto", "softwood-kraft")) {
            own = own.given("sheet.density-unbeaten", Scope.of(fibre), 500);
        }
        assertThat(unused(own)).singleElement().satisfies(note -> {
            assertThat(note.text()).endsWith(" and 1 more.");
            assertThat((List<?>) note.arguments().get("keys")).hasSize(9);
        });
    }
}
