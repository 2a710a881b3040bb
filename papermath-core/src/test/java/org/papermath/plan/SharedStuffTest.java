package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.card.MakingCard;
import org.papermath.fibre.BoughtFibre.Form;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Formats;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.StuffOnHand;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/** One white stuff for several colours. */
class SharedStuffTest {
    private static final List<String> COLOURS = List.of("oat", "rust", "slate");

    private static Recipe.Builder colour(String name, boolean together) {
        Recipe.Builder recipe = Recipe.of(
                        name,
                        Furnish.of(Share.percent(70), Fibres.COTTON_RAG, Share.percent(30), Fibres.FLAX_RAW)
                                .bought(Fibres.FLAX_RAW, Form.RAW))
                .beating(hours(2))
                .additive(Additive.of(name + " pigment", Additive.Purpose.PIGMENT), Dose.percent(2));
        return together ? recipe.stuff("white") : recipe;
    }

    private static Order order(boolean together) {
        Order.Builder order = Order.of("three colours");
        int count = 20;
        for (String name : COLOURS) {
            order.recipe(colour(name, together).build())
                    .piece(Piece.of(name + " card", count, name)
                            .size(Formats.ISO_A6)
                            .grammage(Grammage.gsm(240))
                            .build());
            count += 10;
        }
        return order.build();
    }

    private static final MakingPlan TOGETHER = MakingPlan.of(order(true), Sample.studio());
    private static final MakingPlan APART = MakingPlan.of(order(false), Sample.studio());

    @Test
    void theLoadsAreThoseOfAllTheColours() {
        double each = APART.batches().stream()
                .mapToDouble(batch -> batch.fibre().ovenDry().si())
                .sum();
        SharedStuff white = TOGETHER.batch("oat").sharedStuff().orElseThrow();
        // Fuller loads are beaten a little less far, which changes what sheets take by little.
        assertThat(white.fibre().ovenDry().si()).isCloseTo(each, within(0.03 * each));
        BeatingPlan beating = TOGETHER.batch("oat").beating();
        assertThat(beating.loads())
                .isLessThan(APART.batches().stream()
                        .mapToInt(batch -> batch.beating().loads())
                        .sum());
        for (String name : COLOURS.subList(1, 3)) {
            assertThat(TOGETHER.batch(name).beatingStage().isDone()).isFalse();
            assertThat(TOGETHER.batch(name).beatingStage().reason()).contains("oat", "white");
            assertThat(TOGETHER.batch(name).cooking()).isEmpty();
        }
        assertThat(white.recipes()).containsExactlyElementsOf(COLOURS);
    }

    @Test
    void thePartsAreTheWhole() {
        double parts = 0;
        double asBought = 0;
        double wet = 0;
        for (BatchPlan batch : TOGETHER.batches()) {
            SharedStuff stuff = batch.sharedStuff().orElseThrow();
            parts += stuff.part().si();
            asBought += batch.fibre().asBought().si();
            wet += stuff.wet().si();
            for (Balance balance : batch.balances()) {
                assertThat(balance.totalOut().si())
                        .isCloseTo(
                                balance.totalIn().si(),
                                within(1e-9 * balance.totalIn().si()));
            }
        }
        SharedStuff white = TOGETHER.batch("oat").sharedStuff().orElseThrow();
        assertThat(parts).isCloseTo(1, within(1e-12));
        assertThat(asBought).isCloseTo(white.fibre().asBought().si(), within(1e-9));
        BeaterLoads run = TOGETHER.batch("oat").beating().runs().get(0);
        assertThat(wet * TOGETHER.batch("oat").beating().consistency().si())
                .isCloseTo(run.loads() * run.ovenDryEach().si(), within(1e-9));
    }

    @Test
    void fibreIsBoughtForAllOfThemAndBeatenOnce() {
        double bought = TOGETHER.toBuy().stream()
                .filter(one -> one.what().contains("cotton") || one.what().contains("flax"))
                .mapToDouble(one -> one.mass().si())
                .sum();
        double weighed = TOGETHER.batch("oat")
                .sharedStuff()
                .orElseThrow()
                .fibre()
                .asBought()
                .si();
        assertThat(bought).isCloseTo(weighed, within(1e-6));
        double together = TOGETHER.batches().stream()
                .mapToDouble(batch -> batch.workingHours().likely().si())
                .sum();
        double apart = APART.batches().stream()
                .mapToDouble(batch -> batch.workingHours().likely().si())
                .sum();
        BeatingPlan beating = TOGETHER.batch("oat").beating();
        double saved = APART.batches().stream()
                        .mapToDouble(batch -> batch.beating().rollTime().si())
                        .sum()
                - beating.rollTime().si();
        assertThat(saved).isPositive();
        assertThat(apart - together).isGreaterThan(saved);
    }

    @Test
    void eachPartIsDosedForItself() {
        for (BatchPlan batch : TOGETHER.batches()) {
            AdditiveToWeigh pigment = batch.additives().get(0);
            assertThat(pigment.productEach().si())
                    .isEqualTo(pigment.productInAll().si());
            assertThat(pigment.productInAll().si())
                    .isCloseTo(0.02 * batch.fibre().ovenDry().si(), within(0.02 * 0.02));
        }
    }

    @Test
    void theCardWeighsOnceAndDividesIntoAll() {
        String card = MakingCard.of(TOGETHER).toString();
        assertThat(card).contains("white for oat, rust, slate together:");
        assertThat(card.split("weighed as it comes from the beater", -1)).hasSize(4);
        assertThat(card.split("its part of white, weighed above", -1)).hasSize(3);
        assertThat(card).contains("Add to this part").doesNotContain("Add to each load");
    }

    @Test
    void whatIsTheSameIsAskedOf() {
        Order order = order(true);
        assertThatThrownBy(() -> order.withRecipe("rust", one -> one.beating(hours(3))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("rust")
                .hasMessageContaining("oat")
                .hasMessageContaining("beating time");
        assertThatThrownBy(() -> order.withRecipe("slate", one -> one.stockConsistency(Consistency.percent(2))))
                .hasMessageContaining("consistency");
        assertThatThrownBy(() -> order.withRecipe(order.recipes().get(1).withFurnish(Furnish.of(Fibres.ABACA))))
                .hasMessageContaining("furnish");
        assertThat(order.withRecipe("slate", one -> one.vatConsistency(Consistency.percent(0.3)))
                        .recipes())
                .hasSize(3);
    }

    @Test
    void aColourThatStandsMadeTakesNoneOfTheWhite() {
        MakingPlan plan = MakingPlan.of(
                order(true),
                Sample.studio().toBuilder()
                        .stuffOnHand(StuffOnHand.of(
                                "oat", Pulp.ofOvenDry(grams(5000)).at(Consistency.percent(1))))
                        .build());
        assertThat(plan.batch("oat").sharedStuff().orElseThrow().part().si()).isZero();
        assertThat(plan.batch("oat").fibre().asBought().si()).isZero();
        double parts = plan.batch("rust").sharedStuff().orElseThrow().part().si()
                + plan.batch("slate").sharedStuff().orElseThrow().part().si();
        assertThat(parts).isCloseTo(1, within(1e-12));
        assertThat(plan.batch("rust").beatingStage().isDone()).isTrue();
    }

    @Test
    void fibreOnHandIsTakenOnce() {
        MakingPlan plan = MakingPlan.of(
                order(false),
                Sample.studio().toBuilder()
                        .onHand(Fibres.COTTON_RAG, grams(600))
                        .build());
        double taken = plan.batches().stream()
                .flatMap(batch -> batch.fibre().kinds().stream())
                .mapToDouble(line -> line.fromHand().si())
                .sum();
        assertThat(taken).isCloseTo(0.6, within(1e-9));
    }
}
