package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.drying.Dryer;
import org.papermath.equation.BlotterDrying;
import org.papermath.equation.FillerLaw;
import org.papermath.equation.HungDrying;
import org.papermath.equation.ShrinkageLaw;
import org.papermath.equation.StackDrying;
import org.papermath.equation.WetWeb;
import org.papermath.evidence.Scope;
import org.papermath.numeric.Rounding;
import org.papermath.quantity.Kinds;

/** From wet to dry: how many fillings of the dryer, how long each takes, and how much the sheets shrink on the way. */
public final class DryingSheets {
    static final StageFigures FIGURES = new StageFigures();

    public static final PieceFigure DRYING = FIGURES.pieceIfKnown("time to dry", Kinds.TIME, "h", Scale.FACTOR);
    public static final PieceFigure DRYING_AGAIN =
            FIGURES.pieceIfKnown("time to dry after sizing", Kinds.TIME, "h", Scale.ROOT);
    public static final PieceFigure EVAPORATED = FIGURES.piece("water to dry out", Kinds.MASS, "kg", Scale.ROOT);
    public static final PieceFigure SHRINK_ALONG =
            FIGURES.piece("shrinkage along", Kinds.LINEAR_SHRINKAGE, "%", Scale.ROOT);
    public static final PieceFigure SHRINK_ACROSS =
            FIGURES.piece("shrinkage across", Kinds.LINEAR_SHRINKAGE, "%", Scale.ROOT);

    private final PreparingStock stock;
    private final @Nullable Dryer dryer;
    private final @Nullable Method method;
    private final @Nullable Slot restraint;
    private final @Nullable Slot measuredAlong;
    private final @Nullable Slot measuredAcross;
    private final Slot endMargin;
    private final Slot perLoad;

    /**
     * What to do.
     *
     * @param loads fillings of the dryer
     * @param blotterChanges how often blotters are changed in each; none for other dryers, {@code Integer.MAX_VALUE}
     *     where they never dry a sheet
     */
    public record Setting(int loads, int blotterChanges) {}

    /** How a kind of dryer dries: its time from one moisture ratio to another. */
    private interface Method {
        /** How fast water goes while sheets are wet: the part of the time that does not depend on them. */
        double rate(Values v);

        /**
         * Time to dry, s.
         *
         * @param load oven-dry solids of one filling
         * @param grammage oven-dry solids on the area of a sheet
         * @param from moisture ratio to begin with
         * @param end moisture ratio to end with
         * @param equilibrium moisture ratio in the air of the room
         * @param rate as explained above
         */
        double time(
                Setting set,
                double load,
                double grammage,
                double from,
                double end,
                double equilibrium,
                double rate,
                Values v);

        default int blotterChanges(double from, double end, Values v) {
            return 0;
        }
    }

    DryingSheets(Known known, Workshop workshop, PreparingStock stock, @Nullable Dryer dryer, Scope measured) {
        this.stock = stock;
        this.dryer = dryer;
        restraint = dryer == null ? null : known.slot("restraint.share", Scope.of(dryer.name(), dryer.restraint()));
        method = dryer == null ? null : method(known, workshop, dryer, Scope.at(dryer.name()));
        measuredAlong = known.maybe("shrinkage.measured-along", measured);
        measuredAcross = known.maybe("shrinkage.measured-across", measured);
        endMargin = known.slot("drying.end-margin");
        perLoad = known.slot("labour.dry-load");
    }

    /** What the drying time rests on, as measured on this dryer where it was. */
    private static Method method(Known known, Workshop workshop, Dryer dryer, Scope scope) {
        if (dryer instanceof Dryer.FanStack stack) {
            return new Stack(
                    workshop,
                    stack.freeAirFlow().si(),
                    known.slot("drying.fan-efficiency", scope),
                    known.slot("drying.delivered-share", scope),
                    known.slot("drying.critical-ratio", scope));
        }
        if (dryer instanceof Dryer.Blotters) {
            return new Blotters(known.slot("drying.blotter-kept", scope), known.slot("drying.blotter-hours", scope));
        }
        boolean hung = dryer instanceof Dryer.Loft;
        return new InAir(
                workshop,
                hung ? ((Dryer.Loft) dryer).sheetsInSpur() : 1,
                hung ? 2 : 1,
                known.slot("drying.film-still", scope),
                known.slot("drying.radiative", scope),
                known.slot("drying.lewis", scope),
                known.slot("drying.loft-tail", scope));
    }

    private record Stack(Workshop workshop, double freeAir, Slot efficiency, Slot delivered, Slot criticalRatio)
            implements Method {
        @Override
        public double rate(Values v) {
            return law(v).evaporation(freeAir * v.of(delivered), workshop.roomAir);
        }

        @Override
        public double time(
                Setting set,
                double load,
                double grammage,
                double from,
                double end,
                double equilibrium,
                double rate,
                Values v) {
            return law(v).time(load, rate, from, end, equilibrium);
        }

        private StackDrying law(Values v) {
            return new StackDrying(v.of(efficiency), v.of(criticalRatio));
        }
    }

    private record Blotters(Slot kept, Slot hours) implements Method {
        /** It goes change by change. */
        @Override
        public double rate(Values v) {
            return 0;
        }

        @Override
        public double time(
                Setting set,
                double load,
                double grammage,
                double from,
                double end,
                double equilibrium,
                double rate,
                Values v) {
            return law(v).time(set.blotterChanges == Integer.MAX_VALUE ? Double.POSITIVE_INFINITY : set.blotterChanges);
        }

        @Override
        public int blotterChanges(double from, double end, Values v) {
            double changes = law(v).changes(from, end);
            return Double.isInfinite(changes) ? Integer.MAX_VALUE : (int) changes;
        }

        private BlotterDrying law(Values v) {
            return new BlotterDrying(v.of(kept), v.of(hours));
        }
    }

    private record InAir(Workshop workshop, int inSpur, int faces, Slot film, Slot radiative, Slot lewis, Slot tail)
            implements Method {
        @Override
        public double rate(Values v) {
            return law(v).flux(workshop.roomCelsius, workshop.roomHumidity, 0);
        }

        @Override
        public double time(
                Setting set,
                double load,
                double grammage,
                double from,
                double end,
                double equilibrium,
                double rate,
                Values v) {
            return law(v).time(grammage, from, end, equilibrium, inSpur, faces, rate);
        }

        private HungDrying law(Values v) {
            return new HungDrying(v.of(film), v.of(radiative), v.of(lewis), v.of(tail));
        }
    }

    /** The dryer, if the studio has one. */
    public @Nullable Dryer dryer() {
        return dryer;
    }

    /** Moisture ratio the sheets are dried to. */
    double endRatio(PreparingStock.State state, Values v) {
        return state.roomRatio() + v.of(endMargin);
    }

    // ------------------------------------------------------------------------------------------------ what to do

    Setting decide(FormingSheets.Setting sheet, double pressedRatio, PreparingStock.State state, Values v) {
        return new Setting(
                dryer == null ? 0 : (int) Rounding.ceil((double) sheet.sheets() / dryer.capacity()),
                method == null ? 0 : method.blotterChanges(pressedRatio, endRatio(state, v), v));
    }

    // ------------------------------------------------------------------------------------------------ what comes of it

    /** What the sheets are dried to, and how much they shrink on the way. */
    void forecastShrinkage(Passage on) {
        on.endRatio = endRatio(on.state, on.v);
        on.shrink = shrinkage(on.state, on.fillerShare(), on.pressedRatio, on.endRatio, on.v);
        on.dryArea = on.sheet().area() * (1 - on.shrink[0]) * (1 - on.shrink[1]);
        on.set(SHRINK_ALONG, on.shrink[0]);
        on.set(SHRINK_ACROSS, on.shrink[1]);
    }

    /** How long a filling takes, and the water all of them give off. */
    void forecast(Passage on) {
        Setting set = on.settings.drying(on.piece);
        double solids = on.run.solids();
        double filling = filling(on.sheets(), solids);
        double room = on.state.roomRatio();
        // Most of the water leaves before the sheet shrinks, so the first drying is that of the size it was formed in.
        on.set(DRYING, time(set, filling, on.formed(), on.pressedRatio, on.endRatio, room, on.dryingRate, on.v));
        on.set(
                DRYING_AGAIN,
                on.gain == 0
                        ? 0
                        : time(
                                set,
                                filling,
                                solids / on.dryArea,
                                room + on.taken - on.gain,
                                on.endRatio,
                                room,
                                on.dryingRate,
                                on.v));
        on.set(EVAPORATED, evaporated(on.sheets() * solids, on.pressedRatio, on.lastRatio));
    }

    /** Shrinkage along and across, of sheets taken from one moisture ratio to another. */
    double[] shrinkage(PreparingStock.State state, double fillerShare, double pressedRatio, double endRatio, Values v) {
        ShrinkageLaw law = new ShrinkageLaw(v.of(stock.shrinkOnset()), v.of(stock.direction()));
        double[] free = law.directions(new FillerLaw(fillerShare, 0).shrinkage(state.freeShrinkage()));
        double[] to = {endRatio};
        double[] held = {restraint == null ? 0 : v.of(restraint)};
        return new double[] {
            measuredAlong == null ? law.held(free[0], pressedRatio, to, held) : v.of(measuredAlong),
            measuredAcross == null ? law.held(free[1], pressedRatio, to, held) : v.of(measuredAcross)
        };
    }

    /** Oven-dry solids of one filling. */
    double filling(int sheets, double solids) {
        double inOne = Math.min(sheets, dryer == null ? sheets : dryer.capacity());
        return inOne * solids;
    }

    /** How fast water goes while sheets are wet, as the dryer counts it. */
    double rate(Values v) {
        return method == null ? 0 : method.rate(v);
    }

    /** Time a filling takes at such a rate, s; not a number without a dryer, infinite where it never dries. */
    double time(
            Setting set,
            double load,
            double grammage,
            double from,
            double end,
            double equilibrium,
            double rate,
            Values v) {
        return method == null ? Double.NaN : method.time(set, load, grammage, from, end, equilibrium, rate, v);
    }

    /** Water to dry out of so many solids, down to a last moisture ratio. */
    double evaporated(double solids, double pressed, double last) {
        return Math.max(0, WetWeb.waterOut(solids, pressed, last));
    }

    /** Hands at the dryer, s. */
    double hours(Setting set, Values v) {
        return set.loads * v.of(perLoad);
    }
}
