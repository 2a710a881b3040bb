package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.papermath.drying.Dryer;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Role;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Shape;
import org.papermath.evidence.Source;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Share;
import org.papermath.quantity.VolumeFlow;
import org.papermath.vat.Vat;

/**
 * Eighty sets of a card and a diamond envelope, worked by hand with every input said: the plan has to give the same
 * counts and, within 1 %, the same masses. The inputs are invented, the arithmetic is plain.
 */
class WorkedOrderTest {
    private static MakingPlan plan;

    private static Assumption measured(String id, String subject, double value) {
        return new Assumption(
                id,
                Scope.of(subject),
                id,
                value,
                value,
                value,
                Shape.NORMAL,
                0,
                10_000,
                id.startsWith("sheet.density") ? "kg/m3" : "1",
                Role.PHYSICAL,
                Basis.GIVEN,
                new Source("given"));
    }

    @BeforeAll
    static void work() {
        plan = workedPlan();
    }

    static MakingPlan workedPlan() {
        Assumptions known = Assumptions.standard()
                .given("vat.retention", Scope.of("cotton-rag"), 1)
                .given("additive.retention", Scope.of("calcium-carbonate"), 1)
                .given("order.handling-share", Scope.GENERAL, 0.97)
                .given("fibre.moisture-as-bought", Scope.of("cotton-rag"), 0.07)
                .given("reject.forming", Scope.GENERAL, 0)
                .given("reject.pressing", Scope.GENERAL, 0)
                .given("reject.drying", Scope.of("card"), 0.15)
                .given("reject.drying", Scope.of("envelope"), 0.22)
                .given("reject.cutting", Scope.GENERAL, 0)
                .given("reject.folding", Scope.of("envelope"), 0)
                .given("labour.post-sheets", Scope.GENERAL, 20)
                .with(measured("shrinkage.measured-along", "grey", 0.025))
                .with(measured("shrinkage.measured-across", "grey", 0.025))
                .with(measured("web.solids-pressed", "grey", 0.35))
                .with(measured("sheet.moisture-conditioned", "grey", 0.07))
                .with(measured("sheet.density-measured", "card", 550))
                .with(measured("sheet.density-measured", "envelope", 600));
        Recipe grey = Recipe.of("grey", Furnish.of(Fibres.COTTON_RAG))
                .beating(hours(3))
                .beaterConsistency(Consistency.percent(2.2))
                .vatConsistency(Consistency.percent(0.6))
                .additive(Additive.of("carbonate", Additive.Purpose.CARBONATE), Dose.percent(100 * 0.04 / 0.96))
                .build();
        Order order = Order.of("eighty sets")
                .recipe(grey)
                .piece(Piece.of("card", 80, "grey")
                        .size(mm(120), mm(170))
                        .grammage(Grammage.gsm(250))
                        .spare(Share.percent(12))
                        .kept(3)
                        .trials(5)
                        .edge(Piece.Edge.DECKLE)
                        .build())
                .piece(Piece.of("envelope", 93, "grey")
                        .size(mm(230), mm(230))
                        .grammage(Grammage.gsm(105))
                        .envelopeFor("card", EnvelopeStyle.DIAMOND)
                        .spare(Share.percent(12))
                        .trials(5)
                        .edge(Piece.Edge.DECKLE)
                        .build())
                .build();
        Studio studio = Studio.of("worked by hand")
                .beater(Beater.of("small beater", litres(45), grams(900)))
                .vat(Vat.of("vat", litres(50)))
                .press(Press.of("press", kilonewtons(100), mm(400), mm(400)))
                .felts(Felts.of(mm(240), mm(240), Grammage.gsm(500), 30))
                .dryer(Dryer.fanStack("stack", VolumeFlow.cubicMetresPerHour(3000), 60))
                .assumptions(known)
                .build();
        return MakingPlan.of(order, studio);
    }

    @Test
    void countsAreThoseWorkedByHand() {
        assertThat(plan.piece("card").counts().wanted()).isEqualTo(93);
        assertThat(plan.piece("envelope").counts().wanted()).isEqualTo(105);
        assertThat(plan.piece("card").counts().sheets()).isEqualTo(115);
        assertThat(plan.piece("envelope").counts().sheets()).isEqualTo(140);
        assertThat(plan.batch("grey").beating().loads()).isEqualTo(2);
        assertThat(plan.piece("card").posts().posts()).isEqualTo(6);
        assertThat(plan.piece("envelope").posts().posts()).isEqualTo(7);
    }

    @Test
    void openingsMassesAndLiftsAreThoseWorkedByHand() {
        assertThat(plan.piece("card").forming().opening().width().in("mm")).isCloseTo(123.1, within(0.05));
        assertThat(plan.piece("card").forming().opening().height().in("mm")).isCloseTo(174.4, within(0.05));
        assertThat(plan.piece("envelope").forming().opening().height().in("mm")).isCloseTo(235.9, within(0.05));
        assertThat(plan.piece("card").forming().solids().in("g")).isCloseTo(4.743, within(0.005));
        assertThat(plan.piece("card").forming().fibre().in("g")).isCloseTo(4.553, within(0.005));
        assertThat(plan.piece("envelope").forming().fibre().in("g")).isCloseTo(4.959, within(0.005));
        assertThat(plan.piece("card").vat().lift().in("kg")).isCloseTo(0.76, within(0.0076));
        assertThat(plan.piece("envelope").vat().lift().in("kg")).isCloseTo(0.83, within(0.0083));
        assertThat(plan.batch("grey").fibre().ovenDry().in("g")).isCloseTo(1565, within(15.65));
        assertThat(plan.batch("grey").fibre().asBought().in("g")).isCloseTo(1683, within(16.83));
        double water = plan.piece("card").drying().water().likely().in("kg")
                + plan.piece("envelope").drying().water().likely().in("kg");
        assertThat(water).isCloseTo(2.26, within(0.0226));
    }

    @Test
    void suiteWeighsAndMeasuresWhatWasWorkedByHand() {
        // 10.7 g and 0.98 mm by hand; the forecast follows the rounded settings.
        PiecePlan envelope = plan.piece("envelope");
        assertThat(envelope.finished().mass().likely().in("g")
                        + plan.piece("card").finished().mass().likely().in("g"))
                .isCloseTo(10.7, within(0.15));
        assertThat(plan.piece("card").finished().caliper().likely().in("mm")).isCloseTo(0.455, within(0.01));
        assertThat(envelope.finished().caliper().likely().in("mm")).isCloseTo(0.175, within(0.004));
    }
}
