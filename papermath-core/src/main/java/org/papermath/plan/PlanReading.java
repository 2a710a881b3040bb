package org.papermath.plan;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.papermath.engine.Engine;
import org.papermath.order.Recipe;
import org.papermath.press.Press;
import org.papermath.text.Digits;

/** The plan read out of its plain numbers: its batches, its pieces, and what comes of them together. */
final class PlanReading {
    private final PlainNumbers in;
    private final List<BatchPlan> batches;
    private final List<PiecePlan> pieces;
    private final Lazy<List<ToBuy>> toBuy;
    private final Lazy<TasksOfPlan> tasks;
    private final Lazy<Schedule> schedule;
    private final Lazy<List<StepCaution>> cautions;

    PlanReading(PlainNumbers in) {
        List<Recipe> recipes = Engine.usedRecipes(in.order());
        batches = IntStream.range(0, in.engine().batches())
                .mapToObj(b -> BatchPlan.of(in, b, recipes.get(b)))
                .toList();
        pieces = IntStream.range(0, in.engine().pieces())
                .mapToObj(p -> PiecePlan.of(in, p))
                .toList();
        toBuy = new Lazy<>(() -> PlannedToBuy.of(batches));
        this.in = in;
        tasks = new Lazy<>(() -> tasks("", 0, null, List.of(), Map.of()));
        schedule = new Lazy<>(() -> Schedule.of(in, batches, pieces, tasks.get()));
        cautions = new Lazy<>(() -> new PlanCautions(in.studio(), in.engine(), in.settings(), batches, pieces).all());
    }

    List<BatchPlan> batches() {
        return batches;
    }

    List<PiecePlan> pieces() {
        return pieces;
    }

    /** The sides of a sheet, the shorter first. */
    static String sides(double one, double other) {
        return Digits.four(1000 * Math.min(one, other)) + " × " + Digits.four(1000 * Math.max(one, other)) + " mm";
    }

    /** What a part that bears the load is called: the rated force of a press with a screw is that of the screw. */
    static String part(Press press, Press.Part part) {
        return press.lever().isPresent() && part.equals(press.parts().get(0)) ? "screw" : part.name();
    }

    List<ToBuy> toBuy() {
        return toBuy.get();
    }

    /** The work as one of several orders. */
    TasksOfPlan tasks(
            String prefix,
            int priority,
            @Nullable LocalDateTime due,
            List<String> before,
            Map<String, SharedLoads> shared) {
        return new TasksOfPlan(in, batches, pieces, prefix, priority, due, true, before, shared);
    }

    void askDays() {
        tasks.get();
    }

    Schedule schedule() {
        return schedule.get();
    }

    List<StepCaution> cautions() {
        return cautions.get();
    }
}
