package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Spread;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/** Bands from draws of all assumptions at once. */
class SimulatedPlanTest {
    private static final int DRAWS = 4000;

    private static MakingPlan simulated(int draws, long seed) {
        return MakingPlan.simulated(Sample.order(), Sample.studio(), draws, seed);
    }

    private static Estimate<Grammage> grammage(MakingPlan plan) {
        return plan.pieces().get(0).finished().grammage();
    }

    /** The same seed gives the same plan on one thread and on all. */
    @Test
    void aSeedGivesOnePlanHoweverManyThreads() throws ExecutionException, InterruptedException {
        MakingPlan all = simulated(500, 7);
        ForkJoinPool alone = new ForkJoinPool(1);
        MakingPlan one = alone.submit(() -> simulated(500, 7)).get();
        alone.shutdown();
        assertThat(grammage(one)).isEqualTo(grammage(all));
        assertThat(one.workingHours()).isEqualTo(all.workingHours());
        assertThat(grammage(simulated(500, 8)).low()).isNotEqualTo(grammage(all).low());
    }

    /** Settings, likely values and drivers are those of the plan without draws; the band is nearly. */
    @Test
    void onlyTheBandsAreOthers() {
        MakingPlan first = MakingPlan.of(Sample.order(), Sample.studio());
        MakingPlan drawn = simulated(DRAWS, 11);
        assertThat(drawn.batches().get(0).fibre().asBought())
                .isEqualTo(first.batches().get(0).fibre().asBought());
        assertThat(grammage(drawn).likely()).isEqualTo(grammage(first).likely());
        assertThat(grammage(drawn).drivers()).isEqualTo(grammage(first).drivers());
        double width = grammage(first).high().si() - grammage(first).low().si();
        assertThat(grammage(drawn).high().si()).isCloseTo(grammage(first).high().si(), within(0.1 * width));
        assertThat(grammage(drawn).low().si()).isCloseTo(grammage(first).low().si(), within(0.1 * width));
        assertThat(grammage(first).spread()).isEmpty();
    }

    @Test
    void theDrawsCanBeAsked() {
        Estimate<Grammage> grammage = grammage(simulated(DRAWS, 3));
        Spread<Grammage> spread = grammage.spread().orElseThrow();
        assertThat(spread.draws()).isEqualTo(DRAWS);
        assertThat(spread.unknown().si()).isZero();
        assertThat(spread.percentile(Share.percent(5)).si())
                .isEqualTo(grammage.low().si());
        assertThat(spread.percentile(Share.percent(95)).si())
                .isEqualTo(grammage.high().si());
        assertThat(spread.between(grammage.low(), grammage.high()).in("%")).isCloseTo(90, within(0.1));
        List<Spread.Column<Grammage>> columns = spread.histogram(9);
        assertThat(columns).hasSize(9);
        assertThat(columns.stream().mapToInt(Spread.Column::count).sum()).isEqualTo(DRAWS);
        // Most of it stands in the middle.
        assertThat(columns.get(4).count()).isGreaterThan(3 * columns.get(0).count());
        assertThat(columns.get(0).high()).isEqualTo(columns.get(1).low());
    }

    /** What cannot be calculated in some draws is told with its share. */
    @Test
    void drawsThatCannotBeCalculatedAreCounted() {
        Order order = Order.of("slow")
                .recipe(Recipe.of("slow", Furnish.of(Fibres.ABACA))
                        .beating(hours(4.5))
                        .build())
                .piece(Piece.of("sheet", 20, "slow")
                        .size(mm(150), mm(210))
                        .grammage(Grammage.gsm(90))
                        .build())
                .build();
        MakingPlan plan = MakingPlan.simulated(order, Sample.studio(), 2000, 5);
        var drain = plan.pieces().get(0).drainTime();
        assertThat(drain.spread().orElseThrow().unknown().in("%")).isBetween(5.0, 60.0);
        assertThat(drain.isOpenAbove()).isTrue();
    }

    @Test
    void whatCannotBeDrawnIsRefused() {
        assertThatThrownBy(() -> simulated(10, 1)).isInstanceOf(Refused.class).hasMessageContaining("draws");
        assertThatThrownBy(() -> simulated(1_000_000, 1))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Ask for fewer, or plan part of the order");
        assertThatThrownBy(() -> Spread.of(Kinds.GRAMMAGE, "g/m2", new double[] {Double.NaN}))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("none of 1 draws could be calculated");
    }
}
