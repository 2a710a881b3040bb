package org.papermath.plan;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Mass;
import org.papermath.engine.PreparingStock;
import org.papermath.order.Recipe;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Share;

/**
 * Stuff that is beaten once for several recipes, for example white stuff for several colours. It is divided by weight as
 * it comes from the beater, and additives go into each part by itself.
 */
public final class SharedStuff {
    private record Values(
            String name,
            List<String> recipes,
            boolean beatenHere,
            FibreToWeigh fibre,
            SoakingPlan soak,
            Amount<Share> part,
            Amount<Mass> wet) {}

    private final Values values;

    private SharedStuff(Values values) {
        this.values = values;
    }

    static Optional<SharedStuff> of(PlainNumbers in, int b, Recipe recipe) {
        int[] together = in.engine().beatenWith(b);
        if (together.length == 1) {
            return Optional.empty();
        }
        PreparingStock.Setting set = in.settings().stock(b);
        PreparingStock.Setting whole = set.whole();
        double part = whole.ovenDry() > 0 ? set.ovenDry() / whole.ovenDry() : 0;
        return Optional.of(new SharedStuff(new Values(
                recipe.stuff().orElseThrow(),
                Arrays.stream(together).mapToObj(in::recipeName).toList(),
                in.beatenAt(b) == b,
                FibreToWeigh.of(in, b, recipe, whole),
                SoakingPlan.of(whole),
                Kinds.SHARE.ofSi(part, "%"),
                Kinds.MASS.ofSi(part * whole.beaten() / in.engine().stock(b).beaterConsistency(), "kg"))));
    }

    /** {@return what it is called} */
    public String name() {
        return values.name;
    }

    /** {@return the recipes it is divided among, in the order they stand in} */
    public List<String> recipes() {
        return values.recipes;
    }

    /** {@return whether this is the first of them it is beaten for, which tells the cooking and the loads} */
    public boolean isBeatenHere() {
        return values.beatenHere;
    }

    /** {@return the fibre to weigh for all of them} */
    public FibreToWeigh fibre() {
        return values.fibre;
    }

    /** {@return how to soak all of it} */
    public SoakingPlan soak() {
        return values.soak;
    }

    /** {@return what of it becomes this batch, by weight} */
    public Amount<Share> part() {
        return values.part;
    }

    /** {@return what that weighs at the consistency of the beater, with its water} */
    public Amount<Mass> wet() {
        return values.wet;
    }

    @Override
    public String toString() {
        return values.part + " of " + values.name + ", about " + values.wet + " with its water";
    }
}
