package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.days;
import static org.papermath.quantity.Amounts.hours;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Formats;
import org.papermath.order.Order;
import org.papermath.order.OwnStep;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Refused;
import org.papermath.schedule.Checks;
import org.papermath.schedule.PlacedTask;

/** Orders that name one stuff have it beaten together, if that is asked for. */
class OrdersShareStuffTest {
    private static final LocalDate FROM = LocalDate.of(2027, 1, 4);

    private static Recipe.Builder recipe(String name) {
        return Recipe.of(name, Furnish.of(Fibres.COTTON_RAG)).beating(hours(3)).stuff("white");
    }

    private static Recipe blue(String name) {
        return recipe(name)
                .additive(Additive.of("blue pigment", Additive.Purpose.PIGMENT), Dose.percent(2))
                .build();
    }

    private static Order.Builder order(String name, Recipe recipe, int count, LocalDate due) {
        return Order.of(name)
                .recipe(recipe)
                .piece(Piece.of("card", count, recipe.name())
                        .size(Formats.ISO_A5)
                        .grammage(Grammage.gsm(200))
                        .build())
                .due(due);
    }

    private static MakingPlan plan(String name, Recipe recipe, int count, LocalDate due) {
        return plan(order(name, recipe, count, due).build(), Sample.studio());
    }

    private static MakingPlan plan(Order order, Studio studio) {
        return MakingPlan.withoutBands(order, studio);
    }

    private static List<PlacedTask> beating(SeveralOrders all) {
        return all.timetable().tasks().stream()
                .filter(task -> task.task().name().contains(": beat "))
                .toList();
    }

    private static SeveralOrders shared(MakingPlan... plans) {
        SeveralOrders.Builder builder = SeveralOrders.from(FROM).sharingStuff();
        for (MakingPlan plan : plans) {
            builder.order(plan);
        }
        return builder.place();
    }

    private static void nothingIsStale(SeveralOrders all, Duration keeps) {
        for (PlacedTask task : all.timetable().tasks()) {
            if (task.task().name().contains(": form ")) {
                for (org.papermath.schedule.Task.Link link : task.task().links()) {
                    if (link.after().contains(": beat ")) {
                        LocalDateTime beaten =
                                all.timetable().task(link.after()).finish().orElseThrow();
                        assertThat(Duration.between(beaten, task.start().orElseThrow()))
                                .as(task.task().name() + " after " + link.after())
                                .isBetween(Duration.ZERO, keeps);
                    }
                }
            }
        }
    }

    @Test
    void theyTakeFewerLoadsAndNoneIsStale() {
        MakingPlan[] plans = new MakingPlan[3];
        // A load and a little more each.
        int count = IntStream.iterate(2, n -> n + 1)
                .filter(n -> beating(SeveralOrders.of(
                                        List.of(plan("one", recipe("plain").build(), n, FROM.plusDays(40))), FROM))
                                .size()
                        > 1)
                .findFirst()
                .orElseThrow();
        for (int i = 0; i < plans.length; i++) {
            plans[i] = plan("order " + i, recipe("plain").build(), count + i, FROM.plusDays(40 + i));
        }
        SeveralOrders apart = SeveralOrders.of(List.of(plans), FROM);
        SeveralOrders together = shared(plans);
        Checks.check(together.timetable());
        assertThat(together.shared()).hasSize(1);
        SeveralOrders.Shared white = together.shared().get(0);
        assertThat(white.isShared()).isTrue();
        assertThat(white.orders()).containsExactly("order 0", "order 1", "order 2");
        assertThat(white.loads()).isEqualTo(beating(together).size()).isLessThan(white.loadsApart());
        assertThat(white.loadsApart()).isEqualTo(beating(apart).size());
        assertThat(apart.shared()).isEmpty();
        nothingIsStale(together, Duration.ofDays(14));
        // Beaten before the first of them is formed; each order waits for what it takes of.
        LocalDateTime first = beating(together).stream()
                .map(task -> task.finish().orElseThrow())
                .min(LocalDateTime::compareTo)
                .orElseThrow();
        for (int i = 0; i < plans.length; i++) {
            String name = "order " + i + ": ";
            assertThat(together.timetable().tasks().stream()
                            .filter(task -> task.task().name().startsWith(name + "form")))
                    .isNotEmpty()
                    .allMatch(task -> !task.start().orElseThrow().isBefore(first));
            assertThat(together.orders().get(i).plan().order().name()).isEqualTo("order " + i);
        }
        assertThat(together.orders().get(2).done())
                .isBeforeOrEqualTo(apart.orders().get(2).done());
        assertThat(together.toString())
                .contains("white for order 0, order 1, order 2: " + white.loads() + " loads, " + white.loadsApart()
                        + " if each had its own");
    }

    @Property(seed = "2028", tries = 40)
    void partsAreTheWhole(@ForAll @Size(min = 2, max = 4) List<@IntRange(min = 1, max = 120) Integer> counts) {
        List<MakingPlan> plans = new ArrayList<>();
        for (int i = 0; i < counts.size(); i++) {
            Recipe recipe = i % 2 == 0 ? recipe("plain").build() : blue("blue");
            plans.add(plan("order " + i, recipe, counts.get(i), FROM.plusDays(60 + i)));
        }
        SeveralOrders all = shared(plans.toArray(MakingPlan[]::new));
        Checks.check(all.timetable());
        int named = 0;
        for (SeveralOrders.Shared one : all.shared()) {
            double parts = one.orders().stream()
                    .mapToDouble(order -> one.part(order).si())
                    .sum();
            assertThat(parts).isCloseTo(one.whole().si(), within(1e-9 * parts));
            // No order gets less than it wants, and no more than rounding up to the scale brings.
            for (String order : one.orders()) {
                double wanted = plans.stream()
                        .filter(plan -> plan.order().name().equals(order))
                        .mapToDouble(
                                plan -> plan.plain().settings().stock(0).whole().ovenDry())
                        .sum();
                assertThat(one.part(order).si()).isBetween(wanted * (1 - 1e-9), wanted + 0.1);
            }
            assertThat(one.loads()).isLessThanOrEqualTo(one.loadsApart());
            named += one.orders().size();
        }
        assertThat(named).isEqualTo(counts.size());
        assertThat(beating(all).stream()
                        .filter(task -> !task.task().name().contains("dose"))
                        .count())
                .isEqualTo(all.shared().stream()
                        .mapToLong(SeveralOrders.Shared::loads)
                        .sum());
        nothingIsStale(all, Duration.ofDays(14));
    }

    @Test
    void eachColourIsDosedIntoItsOwnPart() {
        SeveralOrders all = shared(
                plan("pale", recipe("plain").build(), 40, FROM.plusDays(40)),
                plan("blue", blue("blue"), 40, FROM.plusDays(45)));
        assertThat(all.shared().get(0).isShared()).isTrue();
        PlacedTask dose = all.timetable().task("blue: dose blue");
        assertThat(dose.task().links()).allMatch(link -> link.after().startsWith("pale: beat white, shared"));
        assertThatThrownBy(() -> all.shared().get(0).part("green"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not beaten for order \"green\"");
    }

    @Test
    void whatWouldGrowTooOldIsBeatenApart() {
        Studio studio = Sample.studio()
                .with(one -> one.assumptions(Assumptions.standard().given("stock.keeps", Scope.GENERAL, 2)));
        MakingPlan first = plan(
                order("first", recipe("plain").build(), 100, FROM.plusDays(30)).build(), studio);
        MakingPlan second = plan(
                order("second", recipe("plain").build(), 100, FROM.plusDays(60)).build(), studio);
        SeveralOrders all = shared(first, second);
        assertThat(all.shared()).hasSize(2).noneMatch(SeveralOrders.Shared::isShared);
        assertThat(all.shared().get(1).reason().orElseThrow()).contains("days after it is beaten, and it keeps 2");
        assertThat(beating(all)).hasSameSizeAs(beating(SeveralOrders.of(List.of(first, second), FROM)));
    }

    @Test
    void aStepBeforeBeatingKeepsAnOrderApart() {
        OwnStep colour = OwnStep.of("have the sample approved")
                .waits(days(20))
                .before(OwnStep.Stage.SOAK)
                .build();
        SeveralOrders all = shared(
                plan("one", recipe("plain").build(), 40, FROM.plusDays(40)),
                plan(
                        order("two", recipe("plain").build(), 40, FROM.plusDays(50))
                                .step(colour)
                                .build(),
                        Sample.studio()));
        assertThat(all.shared()).noneMatch(SeveralOrders.Shared::isShared);
        assertThat(all.shared().get(1).reason().orElseThrow()).contains("a step of its own");
    }

    @Test
    void recipesThatDifferAreRefused() {
        MakingPlan one = plan("one", recipe("plain").build(), 40, FROM.plusDays(40));
        MakingPlan longer =
                plan("two", recipe("plain").build().with(other -> other.beating(hours(4))), 40, FROM.plusDays(40));
        assertThatThrownBy(() -> shared(one, longer))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("order two, recipe plain")
                .hasMessageContaining("its beating time is another");
        // Nobody asked for it: each is beaten as it stands.
        assertThat(SeveralOrders.of(List.of(one, longer), FROM).orders()).hasSize(2);
    }

    @Test
    void aRankCountsMoreThanTheDay() {
        MakingPlan soon = plan("soon", recipe("plain").build(), 20, FROM.plusDays(30));
        MakingPlan late = plan("late", recipe("plain").build(), 20, FROM.plusDays(90));
        MakingPlan same = plan("same", recipe("plain").build(), 20, FROM.plusDays(90));
        MakingPlan never = plan(
                Order.of("never")
                        .recipe(recipe("plain").build())
                        .piece(soon.order().pieces().get(0))
                        .build(),
                Sample.studio());
        assertThat(names(SeveralOrders.of(List.of(never, same, late, soon), FROM)))
                .containsExactly("soon", "same", "late", "never");
        SeveralOrders ranked = SeveralOrders.from(FROM)
                .order(soon)
                .order(never, 2)
                .order(late, 1)
                .order(same, 1)
                .place();
        assertThat(names(ranked)).containsExactly("late", "same", "never", "soon");
        Checks.check(ranked.timetable());
        assertThat(ranked.orders().stream().map(SeveralOrders.Placed::done)).isSorted();
        assertThatThrownBy(() -> SeveralOrders.from(FROM).order(soon, 0))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("1 goes first");
    }

    private static List<String> names(SeveralOrders all) {
        return all.orders().stream().map(one -> one.plan().order().name()).toList();
    }
}
