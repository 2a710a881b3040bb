package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.pulp.Beater;
import org.papermath.pulp.BeatingState;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.vat.Vat;

/** One state of beating, from hours or from what was measured, and all the rest from it. */
class BeatingStatePlanTest {
    private static final Assumptions TABLE = Assumptions.standard();

    private static Studio studio(double litres, double rated) {
        return Studio.of("bench")
                .beater(Beater.of("trough", litres(litres), grams(rated)))
                .vat(Vat.of("tub", litres(70)))
                .mould(Mould.of("folio", mm(320), mm(420)))
                .build();
    }

    private static MakingPlan plan(Studio studio, int count, Recipe recipe) {
        return MakingPlan.of(
                Order.of("order")
                        .recipe(recipe)
                        .piece(Piece.of("sheet", count, recipe.name())
                                .size(mm(210), mm(297))
                                .grammage(Grammage.gsm(80))
                                .build())
                        .build(),
                studio);
    }

    private static Recipe timed(Fibre fibre, double hours) {
        return Recipe.of("stuff", Furnish.of(fibre)).beating(hours(hours)).build();
    }

    private static Recipe measured(Fibre fibre, double number) {
        return Recipe.of("stuff", Furnish.of(fibre))
                .beating(hours(5))
                .drainability(SchopperRiegler.degrees(number))
                .build();
    }

    private static double caliper(MakingPlan plan) {
        return plan.piece("sheet").finished().caliper().likely().in("um");
    }

    /** The maker measured, so the hours say nothing any more: wetter stuff is thinner, shrinks more, holds more water. */
    @Test
    void whatWasMeasuredMovesThicknessAndShrinkage() {
        double caliper = Double.POSITIVE_INFINITY;
        double shrinkage = 0;
        double held = 0;
        for (double number : new double[] {20, 40, 60, 80}) {
            MakingPlan plan = plan(studio(40, 900), 60, measured(Fibres.ABACA, number));
            BatchPlan batch = plan.batch("stuff");
            assertThat(caliper(plan)).isLessThan(0.97 * caliper);
            assertThat(batch.freeShrinkage().likely().si()).isGreaterThan(shrinkage + 0.03);
            assertThat(batch.waterRetention().likely().si()).isGreaterThan(held + 0.1);
            assertThat(batch.beatingState().likely().si()).isCloseTo((number - 14) / 81, within(1e-12));
            caliper = caliper(plan);
            shrinkage = batch.freeShrinkage().likely().si();
            held = batch.waterRetention().likely().si();
        }
    }

    static Iterable<Fibre> fibres() {
        return Fibres.all();
    }

    /** No fibre jumps at the first minute of beating. */
    @ParameterizedTest
    @MethodSource("fibres")
    void noStepAtTheFirstMinute(Fibre fibre) {
        Studio studio = studio(40, 900);
        BatchPlan unbeaten = plan(studio, 60, timed(fibre, 0)).batch("stuff");
        BatchPlan begun = plan(studio, 60, timed(fibre, 0.01)).batch("stuff");
        assertThat(begun.drainability().likely().si()
                        - unbeaten.drainability().likely().si())
                .isBetween(0.0, 2.0);
        assertThat(begun.waterRetention().likely().si()
                        - unbeaten.waterRetention().likely().si())
                .isBetween(0.0, 0.05);
    }

    @Test
    void linterHoldsNoMoreWaterThanRagAfterTheSameHours() {
        Studio studio = studio(40, 900);
        double[] held = new double[3];
        Fibre[] order = {Fibres.LINTER_SECOND_CUT, Fibres.LINTER_FIRST_CUT, Fibres.COTTON_RAG};
        for (double hours : new double[] {1, 2, 3, 5}) {
            for (int i = 0; i < 3; i++) {
                held[i] = plan(studio, 60, timed(order[i], hours))
                        .batch("stuff")
                        .waterRetention()
                        .likely()
                        .si();
            }
            assertThat(held[0]).as("second cut after %s h", hours).isLessThanOrEqualTo(held[1]);
            if (hours >= 2) {
                assertThat(held[1]).as("first cut after %s h", hours).isLessThanOrEqualTo(held[2]);
            }
        }
        assertThat(plan(studio, 60, timed(Fibres.LINTER_SECOND_CUT, 40))
                        .batch("stuff")
                        .drainability()
                        .likely()
                        .in("SR"))
                .isLessThanOrEqualTo(35);
    }

    @Test
    void kraftAfterTwoHoursIsAsDenseAsLaboratorySheets() {
        for (Fibre kraft : new Fibre[] {Fibres.SOFTWOOD_KRAFT, Fibres.HARDWOOD_KRAFT}) {
            MakingPlan plan = plan(studio(40, 900), 60, timed(kraft, 2));
            double density = plan.piece("sheet").finished().grammage().likely().si()
                    / plan.piece("sheet").finished().caliper().likely().si();
            // Unpressed here: 0.05 MPa for the table's 0.4 takes a fifth.
            assertThat(density * Math.pow(8, 0.1)).isGreaterThan(700);
        }
    }

    /** Half and half by surface: 18 and 75 °SR drain as 55.2, not as their mean of 46.5. */
    @Test
    void blendsDrainByTheSurfaceOfTheirFibres() {
        assertThat(org.papermath.equation.Freeness.mixed(new double[] {0.5, 0.5}, new double[] {18, 75}, 4.86, 1.11))
                .isCloseTo(55.2, within(0.1));
        Furnish blend = Furnish.of(Share.percent(60), Fibres.LINTER_FIRST_CUT, Share.percent(40), Fibres.ABACA);
        BatchPlan batch = plan(
                        studio(40, 900),
                        60,
                        Recipe.of("stuff", blend).beating(hours(3)).build())
                .batch("stuff");
        double number = batch.drainability().likely().si();
        // Measured as it was forecast, every fibre is in the state it was forecast in.
        BatchPlan again = plan(
                        studio(40, 900),
                        60,
                        Recipe.of("stuff", blend)
                                .drainability(SchopperRiegler.degrees(number))
                                .build())
                .batch("stuff");
        assertThat(again.beatingState().likely().si())
                .isCloseTo(batch.beatingState().likely().si(), within(1e-9));
        assertThat(again.waterRetention().likely().si())
                .isCloseTo(batch.waterRetention().likely().si(), within(1e-9));
        assertThat(again.freeShrinkage().likely().si())
                .isCloseTo(batch.freeShrinkage().likely().si(), within(1e-9));
        BeatingState read = BeatingState.measured(TABLE, blend, "", SchopperRiegler.degrees(number));
        assertThat(read.of(blend.scope()).si())
                .isCloseTo(batch.beatingState().likely().si(), within(1e-9));
    }

    /** A load of raw bast is full where the trough is full of what turns, long before the rated mass. */
    @Test
    void smallLoadsAreBeatenFurtherDownToHalfALoad() {
        double full = state(studio(40, 559), Fibres.FLAX_RAW);
        assertThat(state(studio(40, 5000), Fibres.FLAX_RAW)).isCloseTo(full, within(0.002));
        double rag = state(studio(60, 1150), Fibres.COTTON_RAG);
        double half = state(studio(90, 1900), Fibres.COTTON_RAG);
        double tenth = state(studio(400, 9000), Fibres.COTTON_RAG);
        assertThat(half).isGreaterThan(rag);
        double dose = -Math.log1p(-tenth);
        // Twice what a full load gets, and no more.
        assertThat(dose).isCloseTo(2 * 3 * 0.16, within(1e-9));
        assertThat(plan(studio(400, 9000), 60, timed(Fibres.COTTON_RAG, 3)).notices())
                .extracting(Notice::code)
                .contains("beater.small-load");
        assertThat(plan(studio(60, 900), 60, timed(Fibres.COTTON_RAG, 3)).notices())
                .extracting(Notice::code)
                .doesNotContain("beater.small-load");
    }

    private static double state(Studio studio, Fibre fibre) {
        return plan(studio, 60, timed(fibre, 3))
                .batch("stuff")
                .beatingState()
                .likely()
                .si();
    }

    /** More beating never thickens a sheet, makes it drain faster, shrink less or hold less water. */
    @Property(tries = 120, seed = "2027")
    void moreBeatingMovesAllOneWay(
            @ForAll @IntRange(min = 0, max = 16) int index,
            @ForAll @DoubleRange(min = 0, max = 9) double time,
            @ForAll @DoubleRange(min = 0.05, max = 3) double more) {
        Furnish furnish = Furnish.of(Fibres.all().get(index));
        BeatingState low = BeatingState.after(TABLE, furnish, "", hours(time));
        BeatingState high = BeatingState.after(TABLE, furnish, "", hours(time + more));
        assertThat(high.of(furnish.scope()).si())
                .isGreaterThan(low.of(furnish.scope()).si() - 1e-15);
        assertThat(high.drainability().orElseThrow().si())
                .isGreaterThanOrEqualTo(low.drainability().orElseThrow().si());
    }
}
