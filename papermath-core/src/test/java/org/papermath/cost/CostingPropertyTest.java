package org.papermath.cost;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Kinds;

class CostingPropertyTest {
    private static Costing costing(int menus, int cards, PriceList prices) {
        return Costing.of(MakingPlan.withoutBands(CostSample.order(menus, cards), CostSample.studio()), prices);
    }

    private static PriceList prices(int hands, int cotton) {
        return CostSample.prices()
                .hands(MoneyRate.of(BigDecimal.valueOf(hands, 2), CostSample.EUR, Kinds.TIME.of(1, "h")))
                .fibre(
                        "cotton rag",
                        MoneyRate.of(BigDecimal.valueOf(cotton, 2), CostSample.EUR, Kinds.MASS.of(1, "kg")))
                .build();
    }

    @Property(seed = "2026", tries = 60)
    void piecesAndLinesComeToTheWhole(
            @ForAll @IntRange(min = 1, max = 400) int menus,
            @ForAll @IntRange(min = 1, max = 400) int cards,
            @ForAll @IntRange(max = 9999) int hands,
            @ForAll @IntRange(max = 9999) int cotton) {
        Costing costing = costing(menus, cards, prices(hands, cotton));
        Money whole = costing.cost().likely();
        Money zero = Money.zero(CostSample.EUR);
        assertThat(costing.lines().stream().map(Costing.Line::cost).reduce(zero, Money::plus))
                .isEqualTo(whole);
        assertThat(costing.pieces().stream().map(piece -> piece.cost().likely()).reduce(zero, Money::plus))
                .isEqualTo(whole);
        for (Costing.OfPiece piece : costing.pieces()) {
            assertThat(piece.fixed().likely().plus(piece.variable().likely()))
                    .isEqualTo(piece.cost().likely());
            assertThat(piece.inSold().plus(piece.inSpares()).plus(piece.inRejects()))
                    .isEqualTo(piece.variable().likely());
        }
    }

    @Property(seed = "2026", tries = 40)
    void aDearerRateNeverMakesItCheaper(
            @ForAll @IntRange(min = 1, max = 200) int menus,
            @ForAll @IntRange(max = 5000) int hands,
            @ForAll @IntRange(max = 5000) int more) {
        MakingPlan plan = MakingPlan.withoutBands(CostSample.order(menus, 20), CostSample.studio());
        Money cheap = Costing.of(plan, prices(hands, 1400)).cost().likely();
        assertThat(Costing.of(plan, prices(hands + more, 1400)).cost().likely()).isGreaterThanOrEqualTo(cheap);
        assertThat(Costing.of(plan, prices(hands, 1400 + more)).cost().likely()).isGreaterThanOrEqualTo(cheap);
    }

    @Property(seed = "2026", tries = 40)
    void morePiecesNeverCostLess(
            @ForAll @IntRange(min = 1, max = 300) int menus, @ForAll @IntRange(min = 1, max = 60) int more) {
        PriceList prices = CostSample.prices().build();
        assertThat(costing(menus + more, 20, prices).cost().likely())
                .isGreaterThanOrEqualTo(costing(menus, 20, prices).cost().likely());
    }
}
