package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.grams;

import java.util.Arrays;
import java.util.List;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.engine.BeaterRun;
import org.papermath.engine.PreparingStock;
import org.papermath.fibre.Fibre;
import org.papermath.numeric.Rounding;
import org.papermath.order.Recipe;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** Loads of the beater that are all alike. */
public final class BeaterLoads {
    private record Values(
            List<Fibre> fibres,
            int loads,
            Amount<Mass> ovenDryEach,
            List<Amount<Mass>> kindsEach,
            Amount<Volume> waterEach,
            Amount<Time> timeEach) {}

    private final Values values;

    private BeaterLoads(Values values) {
        this.values = values;
    }

    static BeaterLoads of(PlainNumbers in, int b, int run, Recipe recipe) {
        PreparingStock.Setting set = in.settings().stock(b).whole();
        BeaterRun loads = set.runs().get(run);
        List<Fibre> fibres = Arrays.stream(loads.fibres())
                .mapToObj(f -> recipe.furnish().fibres().get(f))
                .toList();
        return new BeaterLoads(new Values(
                fibres,
                loads.loads(),
                grams(loads.ovenDry()),
                shared(set, loads, in.engine().workshop().fibreScale()),
                Kinds.VOLUME.ofSi(loads.water(), "L"),
                recipe.beating(fibres.get(0))));
    }

    /** What comes out of a pot is wet, and is shared out among the loads as it lies. */
    private static List<Amount<Mass>> shared(PreparingStock.Setting set, BeaterRun run, double scale) {
        double[] each = set.asBought().clone();
        for (PreparingStock.Pot pot : set.pots()) {
            each[pot.fibre()] = Rounding.roundTo(pot.wet() / run.loads(), scale) * run.loads();
        }
        return Arrays.stream(run.fibres())
                .mapToObj(f -> grams(each[f] / run.loads()))
                .toList();
    }

    /** {@return the fibres that are beaten together, in the order of the furnish} */
    public List<Fibre> fibres() {
        return values.fibres;
    }

    /** {@return how many loads} */
    public int loads() {
        return values.loads;
    }

    /** {@return oven-dry fibre of each load} */
    public Amount<Mass> ovenDryEach() {
        return values.ovenDryEach;
    }

    /** {@return fibre to weigh for each load, as bought or cooked and squeezed out, in the order of {@link #fibres}} */
    public List<Amount<Mass>> kindsEach() {
        return values.kindsEach;
    }

    /** {@return water to each load, what the fibre brings with it taken off} */
    public Amount<Volume> waterEach() {
        return values.waterEach;
    }

    /** {@return beating time of each load} */
    public Amount<Time> timeEach() {
        return values.timeEach;
    }

    @Override
    public String toString() {
        return values.loads + (values.loads == 1 ? " load of " : " loads of ") + values.ovenDryEach + " oven-dry in "
                + values.waterEach + ", " + values.timeEach + " each";
    }
}
