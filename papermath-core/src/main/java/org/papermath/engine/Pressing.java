package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.equation.Moisture;
import org.papermath.equation.PressForce;
import org.papermath.equation.PressingLaw;
import org.papermath.evidence.Scope;
import org.papermath.numeric.Rounding;
import org.papermath.order.Studio;
import org.papermath.quantity.Kinds;

/** A post in the press: the force to set, and how dry the sheets leave it. */
public final class Pressing {
    static final StageFigures FIGURES = new StageFigures();

    public static final PieceFigure SOLIDS = FIGURES.piece("solids after pressing", Kinds.SOLIDS, "%", Scale.SHARE);

    /** The steps in which a press is set, N. */
    private static final double FORCE_STEP = 500;

    private final Workshop workshop;
    private final double weakest;
    private final Slot factor;
    private final Slot exponent;
    private final Slot reference;
    private final Slot timeConstant;
    private final Slot floor;
    private final Slot allowed;
    private final Slot wish;
    private final Slot hold;
    private final Slot partTime;
    private final Slot blotterSolids;
    private final @Nullable Slot measuredSolids;
    private final boolean blotters;

    /**
     * What to set the press to.
     *
     * @param force force on the post, N
     * @param pressure pressure on the sheet, Pa
     * @param time how long to hold it, s
     * @param limited whether a part of the press holds the force below what is wished
     */
    public record Setting(double force, double pressure, double time, boolean limited) {}

    Pressing(Known known, Workshop workshop, Studio studio, Scope measured, boolean blotters) {
        this.workshop = workshop;
        this.blotters = blotters;
        weakest = studio.press().map(one -> one.weakestPart().rating().si()).orElse(0.0);
        factor = known.slot("press.factor", workshop.press);
        exponent = known.slot("press.exponent", workshop.press);
        reference = known.slot("press.reference-pressure", workshop.press);
        timeConstant = known.slot("press.time-constant", workshop.press);
        floor = known.slot("press.floor", workshop.press);
        allowed = known.slot("press.allowed-share", workshop.press);
        wish = known.slot("press.pressure", workshop.press);
        hold = known.slot("labour.press-time", workshop.press);
        partTime = known.slot("labour.part-time");
        blotterSolids = known.slot("web.solids-blotter-exchange");
        measuredSolids = known.maybe("web.solids-pressed", measured);
    }

    /** The share of its rating the weakest part is used to. */
    public Slot allowed() {
        return allowed;
    }

    /** The pressure on the sheet that is wished for. */
    public Slot wish() {
        return wish;
    }

    /** Decides the force on a post of such sheets. */
    Setting decide(FormingSheets.Setting sheet, Values v) {
        double loaded = sheet.filled()
                * Fit.covered(sheet.openingWidth(), sheet.openingHeight(), workshop.platenWidth, workshop.platenLength);
        double most = v.of(allowed) * weakest;
        double wished = PressForce.force(v.of(wish), loaded);
        double force = Math.min(wished, most);
        double stepped = Math.floor(force / FORCE_STEP + Rounding.GUARD) * FORCE_STEP;
        double set = stepped > 0 ? stepped : force;
        return new Setting(set, PressForce.pressure(set, loaded), v.of(hold), wished > most * (1 + Rounding.GUARD));
    }

    /** How dry the sheets go to the dryer. */
    void forecast(Passage on) {
        on.pressedRatio = ratioAfter(on.settings.press(on.piece), on.couchedRatio, on.state, on.formed(), on.v);
        on.set(SOLIDS, Moisture.solidsOfRatio(on.pressedRatio));
    }

    /** The pressure a sheet gets. */
    static double pressure(@Nullable Setting set) {
        return set == null ? 0 : set.pressure;
    }

    /** Moisture ratio of a sheet as it goes to the dryer. */
    double ratioAfter(@Nullable Setting set, double couched, PreparingStock.State state, double grammage, Values v) {
        if (measuredSolids != null) {
            return Moisture.ratioOfSolids(v.of(measuredSolids));
        }
        double pressure = pressure(set);
        if (set != null && pressure > 0) {
            return new PressingLaw(v.of(factor), v.of(exponent), v.of(reference), v.of(floor), v.of(timeConstant))
                    .ratioAfter(couched, state.waterRetention(), pressure, grammage, set.time);
        }
        return blotters ? Math.min(couched, Moisture.ratioOfSolids(v.of(blotterSolids))) : couched;
    }

    /** Hands at the press, s: posts held, sheets parted from the felts. */
    double hours(@Nullable Setting set, int posts, int sheets, Values v) {
        return set == null ? 0 : posts * set.time + sheets * v.of(partTime);
    }
}
