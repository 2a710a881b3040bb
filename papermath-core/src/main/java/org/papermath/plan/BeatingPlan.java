package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.grams;

import java.util.Arrays;
import java.util.List;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.engine.PreparingStock;
import org.papermath.numeric.Rounding;
import org.papermath.order.Recipe;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;

/** The beater loads. */
public final class BeatingPlan {
    private record Values(
            Beater beater,
            int loads,
            Amount<Mass> ovenDryEach,
            List<Amount<Mass>> kindsEach,
            Amount<Volume> waterEach,
            Amount<Consistency> consistency,
            Amount<Time> timeEach) {}

    private final Values values;

    private BeatingPlan(Values values) {
        this.values = values;
    }

    static Stage<BeatingPlan> of(PlainNumbers in, int b, Recipe recipe) {
        if (in.studio().beater().isEmpty()) {
            return Stage.notDone(
                    "beater.none",
                    recipe.beating().si() > 0
                            ? "the studio has no beater: get the stuff beaten as the recipe says, or beat it by hand"
                            : "the studio has no beater, and the recipe wants none");
        }
        PreparingStock.Setting set = in.settings().stock(b);
        return Stage.done(new BeatingPlan(new Values(
                in.studio().beater().get(),
                set.loads(),
                grams(set.loadOvenDry()),
                shared(set, in.engine().workshop().fibreScale()),
                Kinds.VOLUME.ofSi(set.loadWater(), "L"),
                Kinds.CONSISTENCY.ofSi(in.engine().stock(b).beaterConsistency(), "%"),
                recipe.beating())));
    }

    /** What comes out of a pot is wet, and is shared out among the loads as it lies. */
    private static List<Amount<Mass>> shared(PreparingStock.Setting set, double scale) {
        double[] each = set.asBought().clone();
        for (PreparingStock.Pot pot : set.pots()) {
            each[pot.fibre()] = Rounding.roundTo(pot.wet() / set.loads(), scale) * set.loads();
        }
        return Arrays.stream(each).mapToObj(mass -> grams(mass / set.loads())).toList();
    }

    /** {@return the beater} */
    public Beater beater() {
        return values.beater;
    }

    /** {@return how many, all alike} */
    public int loads() {
        return values.loads;
    }

    /** {@return oven-dry fibre of each load} */
    public Amount<Mass> ovenDryEach() {
        return values.ovenDryEach;
    }

    /** {@return fibre to weigh for each load, as bought or cooked and squeezed out, in the order of the furnish} */
    public List<Amount<Mass>> kindsEach() {
        return values.kindsEach;
    }

    /** {@return water to each load, what the fibre brings with it taken off} */
    public Amount<Volume> waterEach() {
        return values.waterEach;
    }

    /** {@return oven-dry fibre over stock in the beater} */
    public Amount<Consistency> consistency() {
        return values.consistency;
    }

    /** {@return beating time of each load} */
    public Amount<Time> timeEach() {
        return values.timeEach;
    }

    @Override
    public String toString() {
        return values.loads + " loads of " + values.ovenDryEach + " oven-dry in " + values.waterEach + ", "
                + values.timeEach + " each";
    }
}
