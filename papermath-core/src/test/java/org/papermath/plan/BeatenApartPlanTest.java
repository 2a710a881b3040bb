package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.seconds;

import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.card.MakingCard;
import org.papermath.drying.Dryer;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.pulp.TimedSheet;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.vat.Vat;

/** Fibres beaten apart and mixed, and stuff known by a stopwatch. */
class BeatenApartPlanTest {
    private static final Furnish HALVES =
            Furnish.of(Share.percent(50), Fibres.COTTON_RAG, Share.percent(50), Fibres.ABACA);

    private static Studio studio(Assumptions store) {
        return Studio.of("bench")
                .beater(Beater.of("trough", litres(45), grams(900)))
                .vat(Vat.of("tub", litres(70)))
                .mould(Mould.of("folio", mm(380), mm(560)))
                .dryer(Dryer.boards("boards", 24))
                .assumptions(store)
                .build();
    }

    private static MakingPlan plan(Furnish furnish, UnaryOperator<Recipe.Builder> as, Assumptions store) {
        Piece sheet = Piece.of("sheet", 120, "stuff")
                .size(mm(210), mm(297))
                .grammage(Grammage.gsm(90))
                .build();
        return MakingPlan.of(
                Order.of("order")
                        .recipe(as.apply(Recipe.of("stuff", furnish)).build())
                        .piece(sheet)
                        .build(),
                studio(store));
    }

    private static double number(MakingPlan plan) {
        return plan.batch("stuff").drainability().likely().in("SR");
    }

    /** Apart for the same time, in loads no larger, is together but for what part loads gain. */
    @Test
    void eachFibreIsBeatenInLoadsOfItsOwn() {
        // Without the gain of part loads only the times count.
        Assumptions even = Assumptions.standard().given("beater.load-range-low", Scope.GENERAL, 1);
        MakingPlan together = plan(HALVES, recipe -> recipe.beating(hours(3)), even);
        MakingPlan apart = plan(HALVES, recipe -> recipe.beating(hours(3)).beating(Fibres.ABACA, hours(3)), even);
        assertThat(number(apart)).isCloseTo(number(together), within(1e-9));
        MakingPlan longer =
                plan(HALVES, recipe -> recipe.beating(Fibres.ABACA, hours(6)).beating(hours(1)), even);
        double rag = number(plan(Furnish.of(Fibres.COTTON_RAG), recipe -> recipe.beating(hours(1)), even));
        double abaca = number(plan(Furnish.of(Fibres.ABACA), recipe -> recipe.beating(hours(6)), even));
        // The surfaces of the two add up, so the mix lies between them and above their mean.
        assertThat(number(longer)).isBetween((rag + abaca) / 2, abaca);

        BeatingPlan beating = longer.batch("stuff").beating();
        assertThat(beating.isApart()).isTrue();
        assertThat(beating.runs())
                .extracting(BeaterLoads::fibres)
                .containsExactly(List.of(Fibres.ABACA), List.of(Fibres.COTTON_RAG));
        assertThat(beating.runs().get(0).timeEach()).isEqualTo(hours(6));
        assertThat(beating.runs().get(1).timeEach()).isEqualTo(hours(1));
        double beaten = beating.runs().stream()
                .mapToDouble(run -> run.loads() * run.ovenDryEach().si())
                .sum();
        assertThat(beaten).isCloseTo(longer.batch("stuff").fibre().ovenDry().si(), within(0.01));
        assertThat(beating.rollTime().in("h"))
                .isCloseTo(
                        beating.runs().get(0).loads()
                                + 6.0 * beating.runs().get(1).loads(),
                        within(1e-9));
        assertThat(MakingCard.of(longer).toString())
                .contains("beaten apart: mix all the loads before anything is added")
                .contains(", 6 h on trough");
    }

    /** A fibre that is not beaten stays as it came, and no additive is weighed out by the load. */
    @Test
    void additivesGoOnceIntoTheMix() {
        UnaryOperator<Recipe.Builder> chalked =
                recipe -> recipe.additive(Additive.of("chalk", Additive.Purpose.CARBONATE), Dose.percent(5));
        MakingPlan apart = plan(
                HALVES,
                recipe -> chalked.apply(recipe.beating(hours(0)).beating(Fibres.ABACA, hours(4))),
                Assumptions.standard());
        AdditiveToWeigh chalk = apart.batch("stuff").additives().get(0);
        assertThat(chalk.productEach()).isEqualTo(chalk.productInAll());
        assertThat(chalk.productInAll().si())
                .isCloseTo(0.05 * apart.batch("stuff").fibre().ovenDry().si(), within(0.001));
        assertThat(MakingCard.of(apart).toString()).contains("Add to the mixed stock");
        assertThat(apart.batch("stuff").balances())
                .allSatisfy(one ->
                        assertThat(one.totalIn().si() - one.totalOut().si()).isCloseTo(0, within(1e-9)));
    }

    /** What was measured on the mix is kept; the doses are as the times. */
    @Test
    void aReadingOnTheMixIsBelieved() {
        MakingPlan plan = plan(
                HALVES,
                recipe -> recipe.beating(hours(1))
                        .beating(Fibres.ABACA, hours(5))
                        .drainability(SchopperRiegler.degrees(45)),
                Assumptions.standard());
        assertThat(number(plan)).isCloseTo(45, within(1e-6));
    }

    /** The plan's own drain time, timed at the vat, gives back its own drainability. */
    @ParameterizedTest
    @ValueSource(strings = {"abaca", "cotton-rag", "flax-raw"})
    void theStopwatchGivesTheStateBack(String id) {
        Fibre fibre = Fibres.find(id);
        MakingPlan known = plan(Furnish.of(fibre), recipe -> recipe.beating(hours(3)), Assumptions.standard());
        PiecePlan piece = known.piece("sheet");
        // The mean sheet of the run, its fibre on the area of the opening.
        double area = piece.forming().opening().area().si();
        double held = Assumptions.standard().si("web.couched-per-retention", Scope.GENERAL)
                * known.batch("stuff").waterRetention().likely().si();
        double fibreOnWire = piece.couchedMass().likely().si() / (1 + held) / area;
        TimedSheet timed =
                TimedSheet.of(piece.drainTime().likely(), Kinds.GRAMMAGE.ofSi(fibreOnWire), Consistency.percent(0.5));
        MakingPlan read = plan(Furnish.of(fibre), recipe -> recipe.timedSheet(timed), Assumptions.standard());
        assertThat(number(read)).isCloseTo(number(known), within(1e-6));
        assertThat(read.piece("sheet").drainTime().likely().in("s"))
                .isCloseTo(piece.drainTime().likely().in("s"), within(0.05));
        // Timed on this mould, the next sheet's time no longer hangs on what a tester's number means.
        double spread = piece.drainTime().high().si() / piece.drainTime().low().si();
        double now = read.piece("sheet").drainTime().high().si()
                / read.piece("sheet").drainTime().low().si();
        assertThat(now).isLessThan(1 + (spread - 1) / 3);
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatThrownBy(() -> plan(HALVES, recipe -> recipe.beating(Fibres.KOZO, hours(1)), Assumptions.standard()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("kozo is to be beaten apart, but the furnish has only");
        TimedSheet timed = TimedSheet.of(seconds(20), Grammage.gsm(90), Consistency.percent(0.5));
        assertThatThrownBy(() -> plan(
                        HALVES,
                        recipe -> recipe.timedSheet(timed).drainability(SchopperRiegler.degrees(40)),
                        Assumptions.standard()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Keep the one you trust more");
        assertThatThrownBy(() -> plan(
                        HALVES,
                        recipe -> recipe.timedSheet(
                                TimedSheet.of(seconds(0.1), Grammage.gsm(200), Consistency.percent(0.5))),
                        Assumptions.standard()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("the bare cover alone takes");
        // A recipe taken up again is set anew.
        Recipe recipe = Recipe.of("stuff", HALVES).timedSheet(timed).build();
        Recipe read =
                recipe.toBuilder().drainability(SchopperRiegler.degrees(40)).build();
        assertThat(read.timedSheet()).isEmpty();
        assertThat(read.toBuilder().timedSheet(timed).build()).isEqualTo(recipe);
    }
}
