package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.papermath.order.Order;
import org.papermath.quantity.Refused;
import org.papermath.schedule.Checks;
import org.papermath.schedule.PlacedTask;

/** Several orders share one person, one beater, one vat and one press. */
class SeveralOrdersTest {
    private static final LocalDate FROM = LocalDate.of(2027, 1, 4);

    private static MakingPlan plan(String name, LocalDate due) {
        Order sample = Sample.order();
        Order.Builder order = Order.of(name).due(due);
        sample.recipes().forEach(order::recipe);
        sample.pieces().forEach(order::piece);
        return MakingPlan.withoutBands(order.build(), Sample.studio());
    }

    @Test
    void nothingIsHeldTwiceByTenOrdersOfAMonth() {
        List<MakingPlan> plans = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            plans.add(plan("order " + i, FROM.plusDays(30L + 3 * i)));
        }
        SeveralOrders all = SeveralOrders.of(plans, FROM);
        Checks.check(all.timetable());
        assertThat(all.orders()).hasSize(10);
        assertThat(all.timetable().start().orElseThrow()).isAfterOrEqualTo(FROM.atStartOfDay());
        // What is due first is done first.
        List<LocalDate> done =
                all.orders().stream().map(SeveralOrders.Placed::done).toList();
        assertThat(done).isSorted();
        assertThat(all.toString()).contains(" of 10 in time: ");
    }

    @Test
    void anOrderAmongOthersIsDoneNoSoonerThanAlone() {
        MakingPlan one = plan("one", FROM.plusDays(60));
        MakingPlan other = plan("other", FROM.plusDays(40));
        LocalDate alone = SeveralOrders.of(List.of(one), FROM).orders().get(0).done();
        assertThat(alone)
                .isEqualTo(one.schedule()
                        .beginning(FROM)
                        .timetable()
                        .soonest()
                        .orElseThrow()
                        .toLocalDate());
        SeveralOrders both = SeveralOrders.of(List.of(one, other), FROM);
        assertThat(both.orders().get(0).plan().order().name()).isEqualTo("other");
        assertThat(both.orders().get(1).done()).isAfterOrEqualTo(alone);
        // The vat is emptied of one before it is charged for the other.
        assertThat(formed(both, "one", true)).isAfterOrEqualTo(formed(both, "other", false));
    }

    private static java.time.LocalDateTime formed(SeveralOrders all, String order, boolean first) {
        List<PlacedTask> vat = all.timetable().tasks().stream()
                .filter(task -> task.task().name().startsWith(order + ": "))
                .filter(task -> task.task().phases().stream()
                        .anyMatch(phase -> phase.held().containsKey("vat")))
                .toList();
        return first
                ? vat.stream()
                        .map(task -> task.start().orElseThrow())
                        .min(java.time.LocalDateTime::compareTo)
                        .orElseThrow()
                : vat.stream()
                        .map(task -> task.finish().orElseThrow())
                        .max(java.time.LocalDateTime::compareTo)
                        .orElseThrow();
    }

    @Test
    void aDayThatCannotBeKeptIsSaid() {
        SeveralOrders all = SeveralOrders.of(
                IntStream.range(0, 3)
                        .mapToObj(i -> plan("order " + i, FROM.plusDays(20)))
                        .toList(),
                FROM);
        assertThat(all.orders().get(2).isLate()).isTrue();
        assertThat(all.orders().get(2).daysLate()).isPositive();
        assertThat(all.orders().get(2).toString()).contains(" days late, from ");
    }

    @Test
    void whatCannotBePlacedTogetherIsRefused() {
        MakingPlan one = plan("one", FROM);
        assertThatThrownBy(() -> SeveralOrders.of(List.of(), FROM)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> SeveralOrders.of(List.of(one, one), FROM))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("twice");
        MakingPlan elsewhere = MakingPlan.withoutBands(
                Order.of("two")
                        .recipe(Sample.order().recipes().get(0))
                        .piece(Sample.order().pieces().get(0))
                        .build(),
                Sample.bare().build());
        assertThatThrownBy(() -> SeveralOrders.of(List.of(one, elsewhere), FROM))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("same studio");
        assertThatThrownBy(() -> SeveralOrders.of(List.of(elsewhere), FROM))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not known how long");
    }
}
