package org.papermath.plan;

import java.util.Optional;
import javax.measure.quantity.Area;
import javax.measure.quantity.Force;
import javax.measure.quantity.Time;
import org.papermath.press.Press;
import org.papermath.quantity.Amount;
import org.papermath.quantity.GaugePressure;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.SheetPressure;

/** How to set the press. */
public final class PressingPlan {
    private record Values(
            Press press,
            Amount<Force> force,
            Optional<Amount<GaugePressure>> gauge,
            Optional<Amount<Force>> pull,
            Amount<SheetPressure> pressure,
            Amount<Area> area,
            Amount<Time> time,
            Press.Part weakest,
            boolean limited) {}

    private final Values values;

    private PressingPlan(Values values) {
        this.values = values;
    }

    static Stage<PressingPlan> of(PlainNumbers in, int p) {
        org.papermath.engine.Pressing.Setting set = in.settings().press(p);
        if (in.studio().press().isEmpty()) {
            return Stage.notDone(
                    "press.none", "the studio has no press: let the sheets drain, or press them between blotters");
        }
        if (set == null) {
            return Stage.notDone(
                    "press.no-post",
                    "the wet sheet does not lie on the felts, so there is no post to press:"
                            + " let it drain, or press it between blotters");
        }
        Press press = in.studio().press().get();
        return Stage.done(new PressingPlan(new Values(
                press,
                Kinds.FORCE.ofSi(set.force(), "kN"),
                press.ram().map(ram -> ram.gaugeFor(Kinds.FORCE.ofSi(set.force(), "kN"))),
                press.pullFor(Kinds.FORCE.ofSi(set.force(), "kN")),
                Kinds.SHEET_PRESSURE.ofSi(set.pressure(), "kPa"),
                Kinds.AREA.ofSi(set.area(), "m2"),
                Kinds.TIME.ofSi(set.time(), "min"),
                press.weakestPart(),
                set.limited())));
    }

    /** {@return the press} */
    public Press press() {
        return values.press;
    }

    /** {@return the load} */
    public Amount<Force> force() {
        return values.force;
    }

    /** {@return what the gauge then shows, where the press has a ram with one} */
    public Optional<Amount<GaugePressure>> gauge() {
        return values.gauge;
    }

    /** {@return what each at the lever then pulls, where the press has a screw} */
    public Optional<Amount<Force>> pull() {
        return values.pull;
    }

    /** {@return the pressure it puts on the sheets, not on the felts} */
    public Amount<SheetPressure> pressure() {
        return values.pressure;
    }

    /** {@return the area of wet sheets that pressure is on: those of one felt, as far as the platen covers them} */
    public Amount<Area> area() {
        return values.area;
    }

    /** {@return how often a post is pressed, its felts exchanged in between} */
    public int times() {
        return values.press.pressings();
    }

    /** {@return how long it is held each time} */
    public Amount<Time> time() {
        return values.time;
    }

    /** {@return the part that bears least} */
    public Press.Part weakest() {
        return values.weakest;
    }

    /** {@return whether the weakest part, or the pull at the lever, held the load down} */
    public boolean limited() {
        return values.limited;
    }

    @Override
    public String toString() {
        return values.force + " (" + values.pressure + " on the sheet) for " + values.time;
    }
}
