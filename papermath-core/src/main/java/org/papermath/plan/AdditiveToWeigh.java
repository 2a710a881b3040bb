package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.grams;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.papermath.engine.PreparingStock;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Scope;
import org.papermath.order.Recipe;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Kinds;

/** An additive to weigh for one load. */
public final class AdditiveToWeigh {
    private record Values(
            Additive additive,
            Amount<Dose> dose,
            Amount<Mass> productEach,
            Amount<Mass> productInAll,
            Amount<Time> waitAfter) {}

    private final Values values;

    private AdditiveToWeigh(Values values) {
        this.values = values;
    }

    static List<AdditiveToWeigh> of(PlainNumbers in, int b, Recipe recipe) {
        PreparingStock.Setting set = in.settings().stock(b);
        List<AdditiveToWeigh> additives = new ArrayList<>();
        // What stands dosed is not dosed again.
        for (int a = 0; a < recipe.additives().size() && set.isBeaten(); a++) {
            AdditiveDose dose = recipe.additives().get(a);
            additives.add(new AdditiveToWeigh(new Values(
                    dose.additive(),
                    dose.dose(),
                    grams(set.product()[a]),
                    grams(set.product()[a] * set.additions()),
                    waitAfter(dose.additive(), in.asked()))));
        }
        return List.copyOf(additives);
    }

    private static Amount<Time> waitAfter(Additive additive, Asked asked) {
        Assumption wait = asked.get("additive.wait", Scope.of(additive.purpose().subject()));
        return Kinds.TIME.of(wait.likely(), wait.unit());
    }

    /** {@return the additive} */
    public Additive additive() {
        return values.additive;
    }

    /** {@return active matter over oven-dry fibre} */
    public Amount<Dose> dose() {
        return values.dose;
    }

    /** {@return product for one load, rounded to the fine scale} */
    public Amount<Mass> productEach() {
        return values.productEach;
    }

    /** {@return product for all loads} */
    public Amount<Mass> productInAll() {
        return values.productInAll;
    }

    /** {@return how long the beater turns before the next one goes in} */
    public Amount<Time> waitAfter() {
        return values.waitAfter;
    }

    @Override
    public String toString() {
        return values.productEach + " " + values.additive.name() + " a load";
    }
}
