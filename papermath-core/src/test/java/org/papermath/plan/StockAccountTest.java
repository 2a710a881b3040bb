package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.mm;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Notice;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.order.StuffOnHand;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Refused;

/** Stuff, broke and fibre go from one making into the next, and nothing is made or lost on the way. */
class StockAccountTest {
    private static final LocalDate NEW_YEAR = LocalDate.of(2027, 1, 1);
    private static final Studio STUDIO = Sample.studio();

    private static Recipe recipe(String name, Fibre fibre) {
        return Recipe.of(name, Furnish.of(fibre))
                .beating(hours(3))
                .additive(Additive.of(name + " pigment", Additive.Purpose.PIGMENT), Dose.percent(2))
                .build();
    }

    private static Order order(Recipe recipe, int count, double grammage) {
        return Order.of("order of " + count)
                .recipe(recipe)
                .piece(Piece.of("sheet", count, recipe.name())
                        .size(mm(150), mm(210))
                        .grammage(Grammage.gsm(grammage))
                        .build())
                .build();
    }

    private static double total(Balance balance, String... accounts) {
        double sum = 0;
        for (String account : accounts) {
            sum += balance.out().containsKey(account)
                    ? balance.out().get(account).si()
                    : 0;
        }
        return sum;
    }

    @Test
    void stuffOnHandIsBeatenNoMore() {
        Recipe grey = recipe("grey", Fibres.ABACA);
        MakingPlan without = MakingPlan.of(order(grey, 60, 120), STUDIO);
        Studio holding = STUDIO.with(studio -> studio.stuffOnHand(
                StuffOnHand.of("grey", Pulp.ofOvenDry(grams(300)).at(Consistency.percent(0.6)))));
        BatchPlan with = MakingPlan.of(order(grey, 60, 120), holding).batch("grey");
        assertThat(with.stuffOnHand()).isEqualTo(grams(300));
        assertThat(with.fibre().ovenDry().si())
                .isCloseTo(without.batch("grey").fibre().ovenDry().si() - 0.3, within(0.02));
        double dosed = with.additives().get(0).productInAll().si()
                / without.batch("grey").additives().get(0).productInAll().si();
        assertThat(dosed)
                .isCloseTo(
                        with.fibre().ovenDry().si()
                                / without.batch("grey").fibre().ovenDry().si(),
                        within(0.01));
        Balance fibre = with.balances().get(0);
        assertThat(fibre.in()).containsKey("stuff on hand");
        assertThat(fibre.totalOut().si()).isCloseTo(fibre.totalIn().si(), within(1e-12));
    }

    @Test
    void enoughStuffNeedsNoBeater() {
        Recipe grey = recipe("grey", Fibres.ABACA);
        Studio holding = STUDIO.with(studio -> studio.stuffOnHand(
                StuffOnHand.of("grey", Pulp.ofOvenDry(kilograms(8)).at(Consistency.percent(0.6)))
                        .made(LocalDate.of(2027, 1, 3))));
        MakingPlan plan = MakingPlan.of(order(grey, 60, 120).withDue(LocalDate.of(2027, 3, 5)), holding);
        BatchPlan batch = plan.batch("grey");
        assertThat(batch.beatingStage().code()).isEqualTo("beating.stuff-on-hand");
        assertThat(batch.fibre().asBought().si()).isZero();
        assertThat(batch.additives()).isEmpty();
        assertThat(plan.toBuy()).isEmpty();
        assertThat(plan.schedule().steps()).extracting(Schedule.Step::name).doesNotContain("soak", "beat and dose");
        assertThat(plan.notices()).extracting(Notice::code).contains("stuff.old");
        assertThat(plan.cautions()).noneMatch(caution -> caution.step() == WorkStep.BEAT);
        MakingPlan beaten = MakingPlan.of(order(grey, 60, 120), STUDIO);
        assertThat(plan.piece("sheet").finished().grammage().likely().si())
                .isCloseTo(beaten.piece("sheet").finished().grammage().likely().si(), within(1e-3));
        double left = plan.leaves(NEW_YEAR).stuff().get(0).ovenDry().si();
        assertThat(left)
                .isCloseTo(
                        8
                                - batch.stuffOnHand().si()
                                + batch.keptInVat().likely().si(),
                        within(1e-9));
    }

    @Test
    void aYearOfMakingsBalances() {
        Random chance = new Random(2027);
        List<Recipe> recipes = List.of(
                recipe("grey", Fibres.ABACA), recipe("white", Fibres.COTTON_RAG), recipe("straw", Fibres.FLAX_RAW));
        Studio opening = STUDIO.with(
                studio -> studio.onHand(Fibres.ABACA, kilograms(20)).onHand(Fibres.COTTON_RAG, kilograms(3)));
        StockAccount account = StockAccount.opening(opening, NEW_YEAR);
        Map<String, Double> spent = new LinkedHashMap<>();
        Map<String, Double> fibres = new LinkedHashMap<>();
        double fromStuff = 0;
        for (int i = 0; i < 60; i++) {
            LocalDate day = NEW_YEAR.plusDays(6L * i);
            Recipe recipe = recipes.get(chance.nextInt(3));
            Order order = order(recipe, 20 + chance.nextInt(80), 80 + chance.nextInt(150));
            MakingPlan first = MakingPlan.withoutBands(order, STUDIO);
            Studio now = account.studio(STUDIO, day, first);
            MakingPlan plan = MakingPlan.withoutBands(order, now);
            for (FibreToWeigh.Line line : plan.batches().get(0).fibre().kinds()) {
                if (line.asBought().si() > 0 && i % 2 == 0) {
                    account = account.bought(line.fibre(), line.asBought(), day);
                }
            }
            Balance fibre = plan.batches().get(0).balances().get(0);
            spent.merge(
                    recipe.name(),
                    total(fibre, "sorted and cooked out", "handling", "white water", "good", "spare", "wet rejects"),
                    Double::sum);
            fibres.put(recipe.name(), 0.0);
            fromStuff += plan.batches().get(0).stuffOnHand().si();
            account = account.made(plan, day);
            if (i % 7 == 3) {
                Map<String, org.papermath.quantity.Amount<javax.measure.quantity.Mass>> there = account.on(day);
                if (there.containsKey("broke of " + recipe.name())) {
                    account = account.slushed(recipe.name(), there.get("broke of " + recipe.name()), day.plusDays(1));
                }
            }
        }
        assertThat(fromStuff).isPositive();
        // Of each recipe of one fibre: what came is what was spent and what lies there.
        for (Recipe recipe : recipes) {
            String fibre = recipe.furnish().fibres().get(0).name();
            double came = 0;
            double there = 0;
            for (StockAccount.Entry entry : account.entries()) {
                double in = entry.in().si() - entry.out().si();
                if (entry.what().equals(fibre)) {
                    came += entry.in().si();
                    there += in;
                } else if (entry.what().endsWith(" of " + recipe.name())) {
                    there += in;
                }
            }
            assertThat(came - there).as(recipe.name()).isCloseTo(spent.get(recipe.name()), within(1e-9));
        }
        // Every shelf that goes below nothing is told.
        Map<String, Double> sums = new LinkedHashMap<>();
        Map<String, Double> least = new LinkedHashMap<>();
        for (StockAccount.Entry entry : account.entries()) {
            double sum = sums.merge(entry.what(), entry.in().si() - entry.out().si(), Double::sum);
            least.merge(entry.what(), sum, Math::min);
        }
        least.values().removeIf(sum -> sum >= -1e-9);
        assertThat(account.shortages().stream().map(StockAccount.Shortage::what))
                .containsExactlyInAnyOrderElementsOf(least.keySet());
        account.shortages()
                .forEach(one -> assertThat(one.missing().si()).isCloseTo(-least.get(one.what()), within(1e-9)));
    }

    @Test
    void whatIsShortIsToldWithItsDayAndPacks() {
        MakingPlan plan = MakingPlan.of(order(recipe("grey", Fibres.ABACA), 60, 120), STUDIO);
        LocalDate day = LocalDate.of(2027, 2, 1);
        StockAccount account = StockAccount.opening(STUDIO, NEW_YEAR).made(plan, day);
        StockAccount.Shortage pigment = account.shortages().stream()
                .filter(one -> one.what().equals("grey pigment"))
                .findFirst()
                .orElseThrow();
        assertThat(pigment.by()).isEqualTo(day);
        assertThat(pigment.missing())
                .isEqualTo(plan.batch("grey").additives().get(0).productInAll());
        assertThat(pigment.packs(grams(10)))
                .isEqualTo((int) Math.ceil(pigment.missing().in("g") / 10));
        assertThat(account.bought("grey pigment", kilograms(1), NEW_YEAR).shortages())
                .noneMatch(one -> one.what().equals("grey pigment"));
        // Bought the day after is too late.
        assertThat(account.bought("grey pigment", kilograms(1), day.plusDays(1)).shortages())
                .anyMatch(one -> one.what().equals("grey pigment"));
        assertThat(account.toString()).startsWith("short: [abaca: ");
        assertThatThrownBy(() -> account.gone("gray pigment", grams(1), day, "spilt"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("nothing was ever entered of \"gray pigment\"");
    }

    @Test
    void theNextMakingTakesWhatTheLastOneLeft() {
        Recipe grey = recipe("grey", Fibres.ABACA);
        MakingPlan first = MakingPlan.of(order(grey, 60, 120), STUDIO);
        LeftOver left = first.leaves(NEW_YEAR);
        assertThat(left.stuff()).singleElement().satisfies(stuff -> {
            assertThat(stuff.recipe()).isEqualTo("grey");
            assertThat(stuff.made()).contains(NEW_YEAR);
        });
        assertThat(left.broke().get("grey").si()).isPositive();
        assertThat(left.pieces().get("sheet")).isPositive();
        MakingPlan second = MakingPlan.of(order(grey, 60, 120), left.studio());
        assertThat(second.batch("grey").stuffOnHand().si())
                .isCloseTo(left.stuff().get(0).ovenDry().si(), within(1e-12));
        assertThat(second.batch("grey").fibre().ovenDry().si())
                .isLessThan(first.batch("grey").fibre().ovenDry().si());
    }
}
