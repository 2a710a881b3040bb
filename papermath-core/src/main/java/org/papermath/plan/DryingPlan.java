package org.papermath.plan;

import java.util.Optional;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.papermath.drying.Dryer;
import org.papermath.engine.DryingSheets;
import org.papermath.evidence.Estimate;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** How to dry. */
public final class DryingPlan {
    private record Values(
            Dryer dryer,
            int loads,
            int atOnce,
            int inLayer,
            int blotterChanges,
            Estimate<Time> time,
            Amount<Time> left,
            Optional<Amount<Time>> tighten,
            Estimate<Mass> water) {}

    private final Values values;

    private DryingPlan(Values values) {
        this.values = values;
    }

    static Stage<DryingPlan> of(PlainNumbers in, int p) {
        Dryer dryer = in.engine().piece(p).drying().dryer();
        if (dryer == null) {
            return Stage.notDone("dryer.none", "the studio has no dryer: say how the sheets dry");
        }
        if (!in.estimates().isKnown(DryingSheets.DRYING, p)) {
            return Stage.notDone(
                    "drying.never-saturated",
                    "in the air of this room (" + in.studio().room()
                            + ") the sheets never dry: bring in drier air, or warm it");
        }
        DryingSheets.Setting set = in.settings().drying(p);
        DryingSheets drying = in.engine().piece(p).drying();
        Estimate<Time> time = in.estimates().of(Kinds.TIME, DryingSheets.DRYING, p);
        double left = drying.stay(time.likely().si(), in.engine().likely());
        return Stage.done(new DryingPlan(new Values(
                dryer,
                set.loads(),
                set.atOnce(),
                set.inLayer(),
                set.blotterChanges(),
                time,
                Kinds.TIME.ofSi(left, "h"),
                Optional.of(drying.tighten(in.engine().likely()))
                        .filter(Double::isFinite)
                        .map(seconds -> Kinds.TIME.ofSi(seconds, "h")),
                in.estimates().of(Kinds.MASS, DryingSheets.EVAPORATED, p))));
    }

    /** {@return the dryer} */
    public Dryer dryer() {
        return values.dryer;
    }

    /** {@return how often it is filled} */
    public int loads() {
        return values.loads;
    }

    /** {@return how many sheets dry at once, or pieces of a shaped deckle where they are laid one by one} */
    public int atOnce() {
        return values.atOnce;
    }

    /** {@return how many of them lie side by side in one layer; one where the size of a layer is not given} */
    public int inLayer() {
        return values.inLayer;
    }

    /** {@return changes of blotters, zero for other dryers} */
    public int blotterChanges() {
        return values.blotterChanges;
    }

    /** {@return after how long one filling is dry} */
    public Estimate<Time> time() {
        return values.time;
    }

    /**
     * {@return how long one filling is left in the dryer: until it is dry, and in a stack or a loft a day or more by habit
     * ({@code drying.stack-left}, {@code drying.loft-left}); the days are counted by it}
     */
    public Amount<Time> left() {
        return values.left;
    }

    /**
     * {@return when the straps or weights of a stack are to be drawn tight once more, since drying sheets sink; empty
     * where no weight is given}
     */
    public Optional<Amount<Time>> tighten() {
        return values.tighten;
    }

    /** {@return water given off by all the sheets} */
    public Estimate<Mass> water() {
        return values.water;
    }

    @Override
    public String toString() {
        return values.dryer.name() + ", " + values.loads + " times, " + values.time;
    }
}
