package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import javax.measure.quantity.Time;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.card.MakingCard;
import org.papermath.engine.Scale;
import org.papermath.evidence.Estimate;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;

/** A band says where it has no end, and does not jump where it loses one. */
class OpenBandTest {
    private static MakingPlan plan(Fibre fibre, double hours) {
        return MakingPlan.of(
                Order.of("any")
                        .recipe(Recipe.of("any", Furnish.of(fibre))
                                .vatConsistency(Consistency.percent(0.5))
                                .beating(hours(hours))
                                .build())
                        .piece(Piece.of("sheet", 50, "any")
                                .size(mm(210), mm(297))
                                .grammage(Grammage.gsm(40))
                                .build())
                        .build(),
                Sample.studio());
    }

    private static Estimate<Time> drain(Fibre fibre, double hours) {
        return plan(fibre, hours).piece("sheet").drainTime();
    }

    @Test
    void bandOfTheDrainTimeDoesNotJumpWhereItsUpperEndIsLost() {
        Estimate<Time> before = drain(Fibres.FLAX_RAW, 3.7);
        Estimate<Time> after = drain(Fibres.FLAX_RAW, 3.9);
        assertThat(before.isOpenAbove()).isFalse();
        assertThat(after.isOpenAbove()).isTrue();
        assertThat(after.isOpenBelow()).isFalse();
        assertThat(after.low().si())
                .isCloseTo(before.low().si(), within(0.15 * before.low().si()));
        assertThat(after.high().si())
                .isCloseTo(before.high().si(), within(0.15 * before.high().si()));
        assertThat(after).hasToString("32.92 s, mean 7.953 or more");
    }

    /** The band once narrowed where the stuff may not drain at all. */
    @ParameterizedTest
    @ValueSource(doubles = {3.5, 4.4, 6})
    void slowStuffHasAWideBand(double hours) {
        Estimate<Time> drain = drain(Fibres.FLAX_RAW, hours);
        assertThat(drain.low().si()).isGreaterThan(drain.likely().si() / 10);
        assertThat(drain.high().si()).isGreaterThan(2 * drain.likely().si());
        MakingPlan plan = plan(Fibres.FLAX_RAW, hours);
        assertThat(plan.notices().stream()
                        .anyMatch(one -> one.code().equals("forecast.open-band")
                                && one.arguments().get("forecast").equals("time to drain")))
                .isEqualTo(drain.isOpenAbove());
        assertThat(drain.isOpenAbove()).isEqualTo(hours > 3.95);
        if (drain.isOpenAbove()) {
            assertThat(MakingCard.of(plan).toString()).contains("or more) s");
        }
    }

    @ParameterizedTest
    @EnumSource(Scale.class)
    void scalesComeBack(Scale scale) {
        for (double x : new double[] {1e-6, 0.2, 0.5, 0.97}) {
            assertThat(scale.back(scale.of(x, 1), 1)).isCloseTo(x, within(1e-12));
        }
    }

    @Test
    void shiftsOfASteadyFactorAddUpAsFactors() {
        assertThat(Scale.FACTOR.back(Scale.FACTOR.of(10, 1) + Math.log(2), 1)).isCloseTo(20, within(1e-12));
        assertThat(Scale.SHARE.back(1e3, 100)).isEqualTo(100);
        assertThat(Scale.SHARE.back(-1e3, 100)).isZero();
        assertThat(Scale.ROOT.back(-0.1, 1)).isZero();
        assertThat(Scale.DIFFERENCE.back(-3, 1)).isEqualTo(-3);
    }

    @Test
    void stockThatMayBeMissingIsAFigureOfItsOwn() {
        BatchPlan batch =
                MakingPlan.of(Sample.order(), Sample.studio()).batches().get(0);
        assertThat(batch.stockPutBy().low().si()).isNotNegative();
        assertThat(batch.shortage()).isPresent();
        StockShortage shortage = batch.shortage().get();
        assertThat(shortage.chance().si()).isBetween(0.25, 0.5);
        assertThat(shortage.upTo().si()).isPositive();
        // Much stays in the vat of this order: what is missing hardly shows.
        MakingPlan few = MakingPlan.of(
                Order.of("few")
                        .recipe(Sample.order().recipes().get(0))
                        .piece(Piece.of(
                                        "card",
                                        6,
                                        Sample.order().recipes().get(0).name())
                                .size(mm(105), mm(148))
                                .grammage(Grammage.gsm(120))
                                .build())
                        .build(),
                Sample.studio());
        assertThat(few.batches().get(0).shortage()).isEmpty();
        assertThat(few.notices()).noneMatch(one -> one.code().equals("stock.may-run-short"));
    }
}
