package org.papermath.plan;

import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.engine.PreparingStock;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** How to soak the fibre. */
public final class SoakingPlan {
    private record Values(Amount<Volume> water, Amount<Time> time) {}

    private final Values values;

    private SoakingPlan(Values values) {
        this.values = values;
    }

    static SoakingPlan of(PreparingStock.Setting set) {
        return new SoakingPlan(
                new Values(Kinds.VOLUME.ofSi(set.soakWater(), "L"), Kinds.TIME.ofSi(set.soakTime(), "h")));
    }

    /** {@return the water to soak all of it in} */
    public Amount<Volume> water() {
        return values.water;
    }

    /** {@return how long} */
    public Amount<Time> time() {
        return values.time;
    }

    @Override
    public String toString() {
        return values.water + " for " + values.time;
    }
}
