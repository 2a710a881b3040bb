package org.papermath.plan;

import java.util.List;
import java.util.stream.IntStream;
import javax.measure.quantity.Time;
import org.papermath.order.Recipe;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;

/** The work of the beater: one run of loads, or several where fibres are beaten apart and mixed afterwards. */
public final class BeatingPlan {
    private record Values(Beater beater, List<BeaterLoads> runs, Amount<Consistency> consistency) {}

    private final Values values;

    private BeatingPlan(Values values) {
        this.values = values;
    }

    static Stage<BeatingPlan> of(PlainNumbers in, int b, Recipe recipe) {
        if (in.studio().beater().isEmpty()) {
            return Stage.notDone(
                    "beater.none",
                    recipe.isBeaten()
                            ? "the studio has no beater: get the stuff beaten as the recipe says, or beat it by hand"
                            : "the studio has no beater, and the recipe needs none");
        }
        if (!in.settings().stock(b).isBeaten()) {
            return Stage.notDone(
                    "beating.stuff-on-hand", "all of it stands beaten and dosed: nothing is beaten for this batch");
        }
        int first = in.beatenAt(b);
        if (first != b) {
            return Stage.notDone(
                    "beating.with-other",
                    "beaten with " + in.recipeName(first) + ", as "
                            + recipe.stuff().orElseThrow());
        }
        return Stage.done(new BeatingPlan(new Values(
                in.studio().beater().get(),
                IntStream.range(0, in.settings().stock(b).runs().size())
                        .mapToObj(run -> BeaterLoads.of(in, b, run, recipe))
                        .toList(),
                Kinds.CONSISTENCY.ofSi(in.engine().stock(b).beaterConsistency(), "%"))));
    }

    /** {@return the beater} */
    public Beater beater() {
        return values.beater;
    }

    /** {@return the runs of loads, in the order of the furnish; one where all fibres are beaten together} */
    public List<BeaterLoads> runs() {
        return values.runs;
    }

    /** {@return whether fibres are beaten apart and mixed afterwards} */
    public boolean isApart() {
        return values.runs.size() > 1;
    }

    /** {@return loads of all runs} */
    public int loads() {
        return values.runs.stream().mapToInt(BeaterLoads::loads).sum();
    }

    /** {@return how long the roll runs for all loads} */
    public Amount<Time> rollTime() {
        return Kinds.TIME.ofSi(
                values.runs.stream()
                        .mapToDouble(run -> run.loads() * run.timeEach().si())
                        .sum(),
                "h");
    }

    /** {@return oven-dry fibre over stock in the beater} */
    public Amount<Consistency> consistency() {
        return values.consistency;
    }

    @Override
    public String toString() {
        return String.join("; ", values.runs.stream().map(BeaterLoads::toString).toList());
    }
}
