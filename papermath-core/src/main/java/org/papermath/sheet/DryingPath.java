package org.papermath.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;

/**
 * The way a sheet dries: from a moisture ratio, step by step under one restraint or another, to its end. Immutable.
 */
public final class DryingPath {
    private final Amount<MoistureRatio> start;
    private final List<Step> steps;

    /** One step. */
    public sealed interface Step permits HeldStep {
        /** {@return what holds the sheet} */
        Restraint restraint();

        /** {@return the moisture ratio at the end of the step} */
        Amount<MoistureRatio> end();
    }

    private record HeldStep(Restraint restraint, Amount<MoistureRatio> end) implements Step {
        @Override
        public String toString() {
            return restraint + " to " + end;
        }
    }

    private DryingPath(Amount<MoistureRatio> start, List<Step> steps) {
        this.start = start;
        this.steps = steps;
    }

    /**
     * Starts a path.
     *
     * @param pressed the moisture ratio out of the press
     * @return the path without steps
     * @throws Refused if the ratio is out of range
     */
    public static DryingPath from(Quantity<MoistureRatio> pressed) {
        return new DryingPath(Kinds.MOISTURE_RATIO.check(pressed, "moisture ratio at the start"), List.of());
    }

    /**
     * Starts a path at a sheet.
     *
     * @param sheet the pressed sheet
     * @return the path without steps
     */
    public static DryingPath from(PressedSheet sheet) {
        Objects.requireNonNull(sheet, "sheet");
        return from(sheet.ratio());
    }

    /**
     * Goes on under a restraint.
     *
     * @param restraint what holds the sheet
     * @param end the moisture ratio at the end of the step, at most that before
     * @return the longer path
     * @throws Refused if the sheet would become wetter
     */
    public DryingPath then(Restraint restraint, Quantity<MoistureRatio> end) {
        Amount<MoistureRatio> there = Kinds.MOISTURE_RATIO.check(end, "moisture ratio at the end of the step");
        Amount<MoistureRatio> here =
                steps.isEmpty() ? start : steps.get(steps.size() - 1).end();
        if (there.si() > here.si()) {
            throw Refused.of(
                    "drying.wetter",
                    "drying path: from " + here + " to " + there
                            + " given; a drying step cannot make the sheet wetter.",
                    "from",
                    here.toString(),
                    "to",
                    there.toString());
        }
        List<Step> more = new ArrayList<>(steps);
        more.add(new HeldStep(restraint, there));
        return new DryingPath(start, List.copyOf(more));
    }

    /**
     * Returns the moisture ratio at the start.
     *
     * @return the ratio
     */
    public Amount<MoistureRatio> start() {
        return start;
    }

    /**
     * Returns the steps.
     *
     * @return an unmodifiable list
     */
    public List<Step> steps() {
        return steps;
    }

    @Override
    public String toString() {
        return "from " + start + ": " + steps;
    }
}
