package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.equation.Moisture;
import org.papermath.equation.PressForce;
import org.papermath.equation.PressingLaw;
import org.papermath.evidence.Scope;
import org.papermath.numeric.Rounding;
import org.papermath.order.Studio;
import org.papermath.press.Press;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** A post in the press: the force to set, and how dry the sheets leave it. */
public final class Pressing {
    static final StageFigures FIGURES = new StageFigures();

    public static final PieceFigure SOLIDS = FIGURES.piece("solids after pressing", Kinds.SOLIDS, "%", Scale.SHARE);

    /** The steps in which a press is set, N. */
    private static final double FORCE_STEP = 500;

    private final Workshop workshop;
    private final double weakest;
    /** What the people at the lever press with; infinite where there is none. */
    private final double byLever;

    private final Slot factor;
    private final Slot exponent;
    private final Slot reference;
    private final Slot timeConstant;
    private final Slot floor;
    private final Slot rewet;
    private final Slot allowed;
    private final Slot wish;
    private final Slot hold;
    private final Slot partTime;
    private final @Nullable Slot gap;
    private final int pressings;
    private final @Nullable Slot secondFactor;
    private final @Nullable Slot thirdFactor;
    private final @Nullable Slot secondTime;
    private final @Nullable Slot byHand;
    private final @Nullable Slot measuredSolids;

    /**
     * What to set the press to.
     *
     * @param force force on the post, N
     * @param area the wet sheets of one layer under the platen, m²
     * @param pressure pressure on the sheets, Pa
     * @param onFelt sheets on one felt
     * @param times how often a post is pressed
     * @param time how long to hold it each time, s
     * @param limited whether a part of the press or the pull at its lever holds the force below what is wished
     * @param byPull whether that is the pull at the lever
     */
    public record Setting(
            double force,
            double area,
            double pressure,
            int onFelt,
            int times,
            double time,
            boolean limited,
            boolean byPull) {}

    Pressing(Known known, Workshop workshop, Studio studio, Scope measured, boolean blotters) {
        this.workshop = workshop;
        weakest = studio.press().map(one -> one.weakestPart().rating().si()).orElse(0.0);
        byLever = studio.press().flatMap(Press::byHands).map(Amount::si).orElse(Double.POSITIVE_INFINITY);
        factor = known.slot("press.factor", workshop.press);
        exponent = known.slot("press.exponent", workshop.press);
        reference = known.slot("press.reference-pressure", workshop.press);
        timeConstant = known.slot("press.time-constant", workshop.press);
        floor = known.slot("press.floor", workshop.press);
        rewet = known.slot("press.rewet", workshop.press);
        allowed = known.slot("press.allowed-share", workshop.press);
        wish = known.slot("press.pressure", workshop.press);
        hold = known.slot("labour.press-time", workshop.press);
        partTime = known.slot("labour.part-time");
        gap = workshop.hasPress && workshop.hasFelts ? known.slot("felt.gap") : null;
        pressings = studio.press().map(Press::pressings).orElse(1);
        secondFactor = pressings > 1 ? known.slot("press.second-factor", workshop.press) : null;
        thirdFactor = pressings > 2 ? known.slot("press.third-factor", workshop.press) : null;
        secondTime = pressings > 1 ? known.slot("labour.second-press", workshop.press) : null;
        byHand = blotters ? known.slot("press.blotter-pressure", workshop.press) : null;
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

    /**
     * Decides the force on a post of such sheets. Small ones lie side by side, as many as the press has the force for.
     */
    Setting decide(FormingSheets.Setting sheet, Values v) {
        double covered = sheet.filled()
                * Fit.covered(sheet.openingWidth(), sheet.openingHeight(), workshop.platenWidth, workshop.platenLength);
        double most = Math.min(v.of(allowed) * weakest, byLever);
        double enough = Math.floor(most / PressForce.force(v.of(wish), covered) + Rounding.GUARD);
        int room = gap == null
                ? 1
                : Math.min(sheet.sheets(), workshop.onFelt(sheet.openingWidth(), sheet.openingHeight(), v.of(gap)));
        int onFelt = (int) Math.max(1, Math.min(room, enough));
        double loaded = onFelt * covered;
        double wished = PressForce.force(v.of(wish), loaded);
        double force = Math.min(wished, most);
        double stepped = Math.floor(force / FORCE_STEP + Rounding.GUARD) * FORCE_STEP;
        double set = stepped > 0 ? stepped : force;
        return new Setting(
                set,
                loaded,
                PressForce.pressure(set, loaded),
                onFelt,
                pressings,
                v.of(hold),
                wished > most * (1 + Rounding.GUARD),
                wished > most * (1 + Rounding.GUARD) && most == byLever);
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
        double ratio = couched;
        if (set == null && byHand == null) {
            return ratio;
        }
        PressingLaw law = new PressingLaw(
                v.of(factor), v.of(exponent), v.of(reference), v.of(floor), v.of(timeConstant), v.of(rewet));
        double retention = state.waterRetention();
        if (set != null && set.pressure > 0) {
            ratio = law.ratioAfter(ratio, retention, set.pressure, grammage, set.time);
            if (secondFactor != null) {
                PressingLaw again = law.again(v.of(secondFactor));
                ratio = again.ratioAfter(ratio, retention, set.pressure, grammage, set.time);
                if (thirdFactor != null) {
                    ratio = again.again(v.of(thirdFactor))
                            .ratioAfter(ratio, retention, set.pressure, grammage, set.time);
                }
            }
        }
        // Whoever dries between blotters presses by hand with the first of them, whatever press came before.
        return byHand == null ? ratio : law.ratioAtRest(ratio, retention, v.of(byHand), grammage);
    }

    /** How long the press holds posts for the first time, s. */
    static double held(@Nullable Setting set, int posts) {
        return set == null ? 0 : posts * set.time;
    }

    /** Hands at the press, s: posts exchanged and pressed again, sheets parted from the felts. */
    double hours(@Nullable Setting set, int posts, int sheets, Values v) {
        if (set == null) {
            return 0;
        }
        double again = secondTime == null ? 0 : (set.times - 1) * v.of(secondTime);
        return posts * again + sheets * v.of(partTime);
    }
}
