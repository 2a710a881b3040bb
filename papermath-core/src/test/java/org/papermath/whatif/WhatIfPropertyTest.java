package org.papermath.whatif;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.hours;

import java.util.List;
import java.util.function.Function;
import javax.measure.Quantity;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.SheetPressure;

/** Solved, then planned: the plan has what was wanted, or the answer says why it cannot. */
class WhatIfPropertyTest {
    private static final String SEED = "4711";
    private static final Order ORDER = Bench.order();
    private static final Studio STUDIO = Bench.studio();

    /** An input with its range, an outcome, and where the plan has it. */
    private record Ask<Q extends Quantity<Q>, R extends Quantity<R>>(
            Input<Q> input, Amount<Q> from, Amount<Q> to, Outcome<R> outcome, Function<MakingPlan, Amount<R>> inPlan) {
        private Amount<R> planned(Quantity<Q> at) {
            Job job = input.applied(new Job(ORDER, STUDIO), at);
            return inPlan.apply(MakingPlan.withoutBands(job.order(), job.studio()));
        }

        void check(double share) {
            double first = planned(from).si();
            double last = planned(to).si();
            // A tenth of the wants lie out of the range of the ends, some of them out of reach.
            Amount<R> want = outcome.kind().ofSi(Math.max(1e-9, first + (share * 1.2 - 0.1) * (last - first)));
            Answer<Q, R> answer = WhatIf.decidedAnew(ORDER, STUDIO).solve(input, from, to, outcome, want);
            for (Amount<Q> found : answer.found()) {
                assertThat(found.si()).isBetween(from.si(), to.si());
                assertThat(planned(found).si() / want.si() - 1)
                        .as("%s at %s", want, found)
                        .isBetween(-1e-9, 1e-9);
            }
            for (Answer.Jump<Q, R> jump : answer.jumps()) {
                assertThat((jump.before().si() - want.si()) * (jump.after().si() - want.si()))
                        .isNegative();
                assertThat(planned(jump.at()).si()).isEqualTo(jump.after().si());
            }
            if (!answer.isReached() && answer.jumps().isEmpty()) {
                assertThat(want.si())
                        .matches(
                                si -> si > answer.most().orElseThrow().si()
                                        || si < answer.least().orElseThrow().si(),
                                "out of reach");
                assertThat(answer.toString()).endsWith("is not reached");
                assertThat(answer.notices()).isNotEmpty();
            }
        }
    }

    private static final List<Ask<?, ?>> ASKED = List.of(
            new Ask<>(
                    Input.beating("grey"),
                    hours(0.5),
                    hours(9),
                    Outcome.caliper("programme"),
                    plan -> plan.piece("programme").finished().caliper().likely()),
            new Ask<>(
                    Input.beating("grey"),
                    hours(0.5),
                    hours(9),
                    Outcome.drainTime("seat card"),
                    plan -> plan.piece("seat card").drainTime().likely()),
            new Ask<>(
                    Input.beating("grey"),
                    hours(0),
                    hours(9),
                    Outcome.drainability("grey"),
                    plan -> plan.batch("grey").drainability().likely()),
            new Ask<>(
                    Input.roomHumidity(),
                    RelativeHumidity.percent(30),
                    RelativeHumidity.percent(80),
                    Outcome.dryingTime("programme"),
                    plan -> plan.piece("programme").drying().time().likely()),
            new Ask<>(
                    Input.vatConsistency("grey"),
                    Consistency.percent(0.3),
                    Consistency.percent(1),
                    Outcome.lift("programme"),
                    plan -> plan.piece("programme").vat().lift()),
            new Ask<>(
                    Input.pressure(),
                    SheetPressure.kilopascals(100),
                    SheetPressure.kilopascals(900),
                    Outcome.caliper("programme"),
                    plan -> plan.piece("programme").finished().caliper().likely()),
            new Ask<>(
                    Input.grammage("programme"),
                    Grammage.gsm(90),
                    Grammage.gsm(200),
                    Outcome.mass("programme"),
                    plan -> plan.piece("programme").finished().mass().likely()));

    @Property(tries = 60, seed = SEED)
    void thePlanAtWhatIsFoundHasTheWant(
            @ForAll @IntRange(min = 0, max = 6) int which, @ForAll @DoubleRange(min = 0, max = 1) double share) {
        ASKED.get(which).check(share);
    }
}
