package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.card.MakingCard;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.BoughtFibre.Form;
import org.papermath.fibre.Cook;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Unclear;
import org.papermath.record.BatchRecord;
import org.papermath.record.Calibration;
import org.papermath.record.Measurement;

/** Fibre that is cooked before it is beaten: what to buy, what comes out of the pot, and what follows from it. */
class RawFibreTest {
    private static final Assumptions TABLE = Assumptions.standard();

    private static MakingPlan plan(Recipe recipe, Studio studio) {
        return MakingPlan.of(
                Order.of("raw")
                        .recipe(recipe)
                        .piece(Piece.of("sheet", 60, recipe.name())
                                .size(mm(210), mm(297))
                                .grammage(Grammage.gsm(60))
                                .build())
                        .build(),
                studio);
    }

    private static Recipe.Builder recipe(Furnish furnish) {
        return Recipe.of("paper", furnish).beating(hours(1));
    }

    private static BatchPlan batch(Furnish furnish) {
        return plan(recipe(furnish).build(), Sample.studio()).batches().get(0);
    }

    private static FibreToWeigh.Line line(BatchPlan batch) {
        return batch.fibre().kinds().get(0);
    }

    /** Grams to weigh for the oven-dry fibre of the plan: never less, and at most a gram more than is wanted. */
    private static void weighs(BatchPlan batch, double yield, double moisture) {
        double wanted = line(batch).ovenDry().in("g") / (yield * (1 - moisture));
        assertThat(line(batch).asBought().in("g")).isBetween(wanted, wanted + 1.000001);
    }

    /** 619 g wanted in the beater are 845 g of raw flax at a yield of 0.82 and 867 g at 0.80, not 694 g. */
    @Test
    void rawFlaxIsBoughtForWhatCookingLeavesOfIt() {
        BatchPlan batch = batch(Furnish.of(Fibres.FLAX_RAW));
        assertThat(line(batch).form()).isEqualTo(Form.RAW);
        weighs(batch, 0.8, 0.107);
        assertThat(BoughtFibre.of(Fibres.FLAX_RAW, Form.RAW)
                        .asBought(grams(619), TABLE)
                        .in("g"))
                .isCloseTo(866.5, within(0.1));
        BoughtFibre read = BoughtFibre.of(Fibres.FLAX_RAW, Form.RAW).withYield(Share.percent(82));
        assertThat(read.asBought(grams(619), TABLE).in("g")).isCloseTo(845.3, within(0.1));
    }

    @Test
    void whiteBarkLosesNearlyHalfAndGreenBarkFarMore() {
        BatchPlan white = batch(Furnish.of(Fibres.KOZO));
        weighs(white, 0.58, 0.11);
        assertThat(line(white).asBought().in("g") / line(white).ovenDry().in("g"))
                .isCloseTo(1.94, within(0.01));
        BatchPlan green = batch(Furnish.of(Fibres.KOZO).bought(Fibres.KOZO, Form.GREEN));
        weighs(green, 0.29, 0.65);
        assertThat(line(green).ovenDry().in("g"))
                .isCloseTo(line(white).ovenDry().in("g"), within(1e-9));
    }

    @Test
    void halfStuffIsNotCooked() {
        Furnish furnish = Furnish.of(Fibres.FLAX_RAW).bought(Fibres.FLAX_RAW, Form.HALF_STUFF);
        MakingPlan plan = plan(recipe(furnish).build(), Sample.studio());
        BatchPlan batch = plan.batches().get(0);
        assertThat(batch.cooking()).isEmpty();
        double wanted = line(batch).ovenDry().in("g") / (1 - 0.107);
        assertThat(line(batch).asBought().in("g"))
                .isBetween(wanted, wanted + batch.beating().loads());
        assertThat(plan.cautions()).extracting(StepCaution::step).doesNotContain(WorkStep.COOK);
        assertThat(plan.schedule().steps()).extracting(Schedule.Step::name).doesNotContain("cook and rinse");
        assertThat(plan.toBuy().get(0).what()).isEqualTo("raw flax (half-stuff)");
        assertThat(batch(Furnish.of(Fibres.COTTON_RAG)).cooking()).isEmpty();
        assertThat(batch(Furnish.of(Fibres.COTTON_RAG).bought(Fibres.COTTON_RAG, Form.RAG))
                        .cooking())
                .get()
                .satisfies(cooking ->
                        assertThat(cooking.pots().get(0).dose().in("%")).isEqualTo(5));
    }

    @Test
    void potSaysWhatGoesInAndWhatShouldComeOut() {
        Furnish furnish = Furnish.of(Share.percent(70), Fibres.ABACA, Share.percent(30), Fibres.FLAX_RAW);
        MakingPlan plan = plan(recipe(furnish).build(), Sample.studio());
        BatchPlan batch = plan.batches().get(0);
        CookingPlan cooking = batch.cooking().orElseThrow();
        assertThat(cooking.pots()).hasSize(1);
        CookingPlan.Pot pot = cooking.pots().get(0);
        double raw = batch.fibre().kinds().get(1).asBought().in("g") * (1 - 0.107);
        assertThat(pot.fibre()).isEqualTo(Fibres.FLAX_RAW);
        assertThat(pot.ovenDry().in("g")).isCloseTo(raw, within(1e-9));
        assertThat(pot.alkali()).isEqualTo(Alkali.SODA_ASH);
        assertThat(pot.pureAlkali().in("g")).isCloseTo(0.2 * raw, within(0.5));
        assertThat(pot.liquor().in("L")).isCloseTo(15 * raw / 1000, within(0.051));
        assertThat(pot.stuff().in("g")).isCloseTo(0.8 * raw, within(1e-9));
        assertThat(pot.wet().in("g")).isCloseTo(0.8 * raw / 0.22, within(1e-9));
        Cook model = Cook.usual(
                BoughtFibre.of(Fibres.FLAX_RAW, Form.RAW), pot.ovenDry(), Alkali.SODA_ASH, pot.liquor(), TABLE);
        assertThat(pot.stuff().in("g")).isCloseTo(model.stuff(TABLE).in("g"), within(1e-9));
        assertThat(pot.dose()).isEqualTo(model.dose());
        assertThat(pot.pureAlkali().in("g")).isCloseTo(model.pureAlkali().in("g"), within(0.051));
        assertThat(cooking.stuff().likely().in("g")).isCloseTo(pot.stuff().in("g"), within(1e-9));
        // 0.68 to 0.90 of it by the yield alone
        assertThat(cooking.stuff().low().in("g")).isBetween(0.66 * raw, 0.69 * raw);
        assertThat(cooking.stuff().high().in("g")).isBetween(0.89 * raw, 0.93 * raw);
        double wetEach = pot.wet().in("g") / batch.beating().loads();
        assertThat(batch.beating().runs().get(0).kindsEach().get(1).in("g")).isCloseTo(wetEach, within(0.51));
        double brought =
                batch.fibre().kinds().get(0).asBought().in("g") + pot.wet().in("g");
        double load = batch.beating().runs().get(0).ovenDryEach().in("g");
        assertThat(batch.beating().runs().get(0).waterEach().in("L"))
                .isCloseTo(
                        (load / batch.beating().consistency().si()
                                        - brought / batch.beating().loads())
                                / 998.2,
                        within(0.06));
        assertThat(plan.toBuy()).extracting(ToBuy::what).contains("raw flax", "soda ash (to cook in)");
        Balance fibre = batch.balances().get(0);
        assertThat(fibre.out().get("sorted and cooked out").in("g")).isCloseTo(0.2 * raw, within(1e-6));
        assertThat(fibre.totalIn().in("g")).isCloseTo(fibre.totalOut().in("g"), within(1e-6));
        assertThat(plan.schedule().steps())
                .extracting(Schedule.Step::name)
                .containsSubsequence("soak", "cook and rinse", "beat and dose");
        assertThat(plan.cautions())
                .filteredOn(one -> one.step() == WorkStep.COOK)
                .singleElement()
                .satisfies(one -> assertThat(one.text()).startsWith("Alkali: raw flax has to be cooked"));
        assertThat(MakingCard.of(plan).toString().replaceAll("\\s+", " "))
                .contains(" raw flax as it lies, to be cooked")
                .contains(" of soda ash (20 % on the dry fibre), about 3 h at the boil")
                .contains(" raw flax, cooked and squeezed out; in ");
    }

    /** What comes out of the pot is weighed before it is beaten: a poor cook leaves less stock, not thinner sheets. */
    @Test
    void poorCookLeavesLessStockAndSheetsAsHeavy() {
        BatchPlan sure = batch(Furnish.of(Fibres.KOZO).bought(Fibres.KOZO, Form.BALE));
        MakingPlan raw = plan(recipe(Furnish.of(Fibres.KOZO)).build(), Sample.studio());
        MakingPlan baled = plan(
                recipe(Furnish.of(Fibres.KOZO).bought(Fibres.KOZO, Form.BALE)).build(), Sample.studio());
        BatchPlan unsure = raw.batches().get(0);
        assertThat(unsure.shortage()).isPresent();
        assertThat(unsure.shortage().orElseThrow().upTo().si())
                .isGreaterThan(sure.shortage().map(one -> 3 * one.upTo().si()).orElse(0.0))
                .isGreaterThan(0.15 * unsure.stock().mass().si());
        assertThat(band(unsure.stock().realConsistency()))
                .isLessThanOrEqualTo(band(sure.stock().realConsistency()));
        assertThat(band(raw.piece("sheet").finished().grammage()))
                .isLessThanOrEqualTo(
                        1.001 * band(baled.piece("sheet").finished().grammage()));
        assertThat(raw.notices())
                .filteredOn(one -> one.code().equals("stock.may-run-short"))
                .extracting(Notice::text)
                .singleElement()
                .satisfies(text -> assertThat(text).contains("cooking leaves less"));
    }

    private static double band(org.papermath.evidence.Estimate<?> estimate) {
        return (estimate.high().si() - estimate.low().si()) / estimate.likely().si();
    }

    @Test
    void yieldOfOnesOwnComesBackInTheNextPlan() {
        BatchRecord record = BatchRecord.builder("first", LocalDate.of(2026, 3, 14))
                .recipe("paper", Furnish.of(Fibres.FLAX_RAW))
                .add(new Measurement.Cooked(
                        Fibres.FLAX_RAW, Reading.of(grams(1000), grams(1)), Reading.of(grams(893 * 0.7), grams(1))))
                .build();
        Assumptions own = Calibration.of(TABLE, List.of(record), List.of()).assumptions();
        Studio studio = Sample.studio().withAssumptions(own);
        BatchPlan batch = plan(recipe(Furnish.of(Fibres.FLAX_RAW)).build(), studio)
                .batches()
                .get(0);
        weighs(batch, 0.7, 0.107);
        // It belongs to the dose it was found with, whatever that was.
        BatchPlan strong = plan(
                        recipe(Furnish.of(Fibres.FLAX_RAW))
                                .cooking(Alkali.CAUSTIC_SODA, Dose.percent(20))
                                .build(),
                        studio)
                .batches()
                .get(0);
        weighs(strong, 0.7, 0.107);
    }

    @Test
    void eachPerCentOfCausticSodaTakesMoreAndSodaAshIsNotKnownTo() {
        for (double dose : new double[] {8, 10, 15, 20, 25}) {
            BatchPlan batch = plan(
                            recipe(Furnish.of(Fibres.ESPARTO))
                                    .cooking(Alkali.CAUSTIC_SODA, Dose.percent(dose))
                                    .build(),
                            Sample.studio())
                    .batches()
                    .get(0);
            weighs(batch, 0.45 - 0.0134 * (dose - 15), 0.09);
            BatchPlan ash = plan(
                            recipe(Furnish.of(Fibres.ESPARTO))
                                    .cooking(Alkali.SODA_ASH, Dose.percent(dose))
                                    .build(),
                            Sample.studio())
                    .batches()
                    .get(0);
            weighs(ash, 0.45, 0.09);
        }
        MakingPlan beyond = plan(
                recipe(Furnish.of(Fibres.ESPARTO))
                        .cooking(Alkali.CAUSTIC_SODA, Dose.percent(30))
                        .build(),
                Sample.studio());
        weighs(beyond.batches().get(0), 0.45 - 0.134, 0.09);
        assertThat(beyond.notices()).extracting(Notice::code).contains("cook.dose-beyond");
    }

    @Test
    void fibreOfUnknownYieldAsks() {
        Fibre milkweed = Fibre.of("milkweed", "milkweed bast", Fibre.SourceClass.BAST, "linen");
        assertThatThrownBy(() -> batch(Furnish.of(milkweed)))
                .isInstanceOf(Unclear.class)
                .hasMessageContaining("fibre.yield[milkweed]")
                .hasMessageContaining("half-stuff")
                .extracting(e -> ((PapermathException) e).code())
                .isEqualTo("cook.no-yield");
        assertThatThrownBy(() -> batch(Furnish.of(Fibres.GAMPI).bought(Fibres.GAMPI, Form.GREEN)))
                .isInstanceOf(Unclear.class)
                .hasMessageContaining("fibre.yield[gampi-green]");
        Studio knows = Sample.studio().withAssumptions(TABLE.given("fibre.yield", Scope.of("gampi-green"), 0.2));
        MakingPlan plan = plan(
                recipe(Furnish.of(Fibres.GAMPI).bought(Fibres.GAMPI, Form.GREEN))
                        .build(),
                knows);
        weighs(plan.batches().get(0), 0.2, 0.65);
        assertThat(plan.notices()).extracting(Notice::code).doesNotContain("assumption.stranger", "assumption.unused");
        assertThatThrownBy(() -> batch(Furnish.of(Fibres.ABACA).bought(Fibres.ABACA, Form.WET_PULP)))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("moisture as bought of abaca as wet pulp: no default: measure.");
    }

    @Test
    void whatLiesOnTheShelfIsRawToo() {
        Studio shelf =
                Sample.studio().toBuilder().onHand(Fibres.FLAX_RAW, grams(100)).build();
        BatchPlan with = plan(recipe(Furnish.of(Fibres.FLAX_RAW)).build(), shelf)
                .batches()
                .get(0);
        BatchPlan without = batch(Furnish.of(Fibres.FLAX_RAW));
        assertThat(line(without).asBought().in("g") - line(with).asBought().in("g"))
                .isCloseTo(100 / (1 - 0.107), within(1.0));
        assertThat(line(with).fromHand().in("g")).isEqualTo(100);
    }

    @Test
    void furnishSaysTheFormOfItsOwnFibresOnly() {
        Furnish flax = Furnish.of(Fibres.FLAX_RAW);
        assertThat(flax.bought(Fibres.FLAX_RAW, Form.RAW)).isEqualTo(flax);
        assertThat(flax.bought(Fibres.FLAX_RAW, Form.SHEET)).isNotEqualTo(flax);
        assertThatThrownBy(() -> flax.bought(Fibres.ABACA, Form.RAW))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("is not one of its fibres");
        assertThat(List.of(Fibres.FLAX_RAW, Fibres.KOZO, Fibres.ESPARTO))
                .allSatisfy(fibre -> assertThat(Form.usual(fibre)).isEqualTo(Form.RAW));
        assertThat(List.of(
                        Fibres.ABACA, Fibres.LINTER_FIRST_CUT, Fibres.COTTON_RAG, Fibres.JUTE, Fibres.SOFTWOOD_KRAFT))
                .allSatisfy(fibre -> assertThat(Form.usual(fibre).losesFibre()).isFalse());
    }
}
