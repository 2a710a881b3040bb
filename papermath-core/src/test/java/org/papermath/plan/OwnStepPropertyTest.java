package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.days;
import static org.papermath.quantity.Amounts.hours;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.papermath.order.Order;
import org.papermath.order.OwnStep;
import org.papermath.order.OwnStep.Stage;
import org.papermath.schedule.Checks;
import org.papermath.schedule.Timetable;

/** Whatever steps an order has, they can be placed, and each where it is put. */
class OwnStepPropertyTest {
    private record Drawn(int first, int other, int sort, double hands, double waits, boolean working) {
        OwnStep step(int number) {
            OwnStep.Builder step =
                    OwnStep.of("step " + number).hands(hours(hands)).waits(days(waits));
            List<Stage> stages = List.of(Stage.values());
            if (working) {
                step.inWorkingDays();
            }
            if (sort == 0 || first == other) {
                return step.after(stages.get(first)).build();
            }
            if (sort == 1) {
                return step.before(stages.get(first)).build();
            }
            return step.after(stages.get(Math.min(first, other)))
                    .before(stages.get(Math.max(first, other)))
                    .build();
        }
    }

    @Provide
    Arbitrary<List<Drawn>> drawn() {
        int last = Stage.values().length - 1;
        return Combinators.combine(
                        Arbitraries.integers().between(0, last),
                        Arbitraries.integers().between(0, last),
                        Arbitraries.integers().between(0, 2),
                        Arbitraries.doubles().between(0.1, 30),
                        Arbitraries.doubles().between(0, 12),
                        Arbitraries.of(true, false))
                .as(Drawn::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(5);
    }

    @Property(seed = "2027", tries = 40)
    void whateverIsPutInIsPlacedWhereItIsPut(@ForAll("drawn") List<Drawn> drawn) {
        Order.Builder order = Sample.order().toBuilder();
        for (int i = 0; i < drawn.size(); i++) {
            order.step(drawn.get(i).step(i));
        }
        Schedule schedule =
                MakingPlan.withoutBands(order.build(), Sample.studio()).schedule();
        Timetable timetable = schedule.timetable();
        Checks.check(timetable);
        assertThat(schedule.days()).isPresent();
        for (OwnStep step : order.build().steps()) {
            assertThat(schedule.steps())
                    .filteredOn(one -> one.name().equals(step.name()) && one.isOwn())
                    .hasSize(1);
            if (step.after().isPresent() && step.after().get() == Stage.FORM) {
                assertThat(timetable.task(step.name()).start().orElseThrow())
                        .isAfterOrEqualTo(timetable.tasks().stream()
                                .filter(one -> one.task().name().startsWith("form"))
                                .map(one -> one.finish().orElseThrow())
                                .max(java.time.LocalDateTime::compareTo)
                                .orElseThrow());
            }
        }
    }
}
