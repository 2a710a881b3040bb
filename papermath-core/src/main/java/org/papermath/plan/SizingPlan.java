package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.grams;

import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.SizingSheets;
import org.papermath.evidence.Estimate;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** The size bath. */
public final class SizingPlan {
    private record Values(
            Amount<Volume> bath,
            Amount<Mass> drySize,
            Amount<Volume> taken,
            Estimate<Dimensionless> gained,
            Stage<Estimate<Time>> dryAgain) {}

    private final Values values;

    private SizingPlan(Values values) {
        this.values = values;
    }

    static Stage<SizingPlan> of(PlainNumbers in, int p) {
        if (!in.engine().piece(p).sizing().isDone()) {
            return Stage.notDone("size.none", "the recipe has no size bath");
        }
        SizingSheets.Setting set = in.settings().sizing(p);
        return Stage.done(new SizingPlan(new Values(
                Kinds.VOLUME.ofSi(set == null ? 0 : set.bath(), "L"),
                grams(set == null ? 0 : set.drySize()),
                in.litresOfWater(set == null ? 0 : set.taken()),
                in.estimates().of(Kinds.NUMBER, SizingSheets.SIZE, p),
                in.known(
                        DryingSheets.DRYING_AGAIN,
                        p,
                        "drying.not-known",
                        "how the sheets dry is not known",
                        () -> in.estimates().of(Kinds.TIME, DryingSheets.DRYING_AGAIN, p)))));
    }

    /** {@return bath to make} */
    public Amount<Volume> bath() {
        return values.bath;
    }

    /** {@return dry size to weigh for it} */
    public Amount<Mass> drySize() {
        return values.drySize;
    }

    /** {@return bath the sheets take up} */
    public Amount<Volume> taken() {
        return values.taken;
    }

    /** {@return dry size over the oven-dry sheet} */
    public Estimate<Dimensionless> gained() {
        return values.gained;
    }

    /** {@return how long one filling of the dryer takes after sizing, or why it is not known} */
    public Stage<Estimate<Time>> dryAgain() {
        return values.dryAgain;
    }

    @Override
    public String toString() {
        return values.bath + " of bath with " + values.drySize + " of dry size";
    }
}
