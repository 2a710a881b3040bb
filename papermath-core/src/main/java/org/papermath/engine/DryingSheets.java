package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.drying.Dryer;
import org.papermath.equation.BlotterDrying;
import org.papermath.equation.FillerLaw;
import org.papermath.equation.HungDrying;
import org.papermath.equation.PieceLayout;
import org.papermath.equation.Room;
import org.papermath.equation.ShrinkageLaw;
import org.papermath.equation.StackDrying;
import org.papermath.equation.WetWeb;
import org.papermath.evidence.Assumption;
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
    private final Workshop workshop;
    private final @Nullable Slot restraint;
    /** The gap between sheets side by side; null where a layer holds one. */
    private final @Nullable Slot gap;

    private final @Nullable Weight weight;
    private final @Nullable Slot left;
    private final @Nullable Slot perChange;
    private final @Nullable Slot measuredAlong;
    private final @Nullable Slot measuredAcross;
    private final Slot endMargin;
    private final Slot perLoad;

    /**
     * What to do.
     *
     * @param loads fillings of the dryer
     * @param inLayer what lies side by side in one layer
     * @param atOnce what lies in one filling
     * @param each what is laid by itself, of a sheet: one, or the pieces of a shaped deckle where small ones lie side by
     *     side
     * @param blotterChanges how often blotters are changed in each; none for other dryers, {@code Integer.MAX_VALUE}
     *     where they never dry a sheet
     */
    public record Setting(int loads, int inLayer, int atOnce, int each, int blotterChanges) {
        /** The area of paper in a full layer, m2, of sheets of an area. */
        public double layerArea(double sheet) {
            return inLayer * (sheet / each);
        }
    }

    /**
     * What a dryer has to dry.
     *
     * @param solids oven-dry solids of one filling
     * @param grammage oven-dry solids on the area of a sheet
     * @param from moisture ratio to begin with
     * @param end moisture ratio to end with
     * @param equilibrium moisture ratio in the air of the room
     */
    private record Filling(double solids, double grammage, double from, double end, double equilibrium) {
        /** One face of all its sheets, m2. */
        double area() {
            return solids / grammage;
        }

        double water() {
            return Math.max(0, WetWeb.waterOut(solids, from, end));
        }
    }

    /**
     * What lies on a stack.
     *
     * @param mass of it, kg
     * @param least pressure that holds the sheets
     * @param known what is known of that
     * @param tighten when it is drawn tight once more
     */
    private record Weight(double mass, Slot least, Assumption known, Slot tighten) {
        static @Nullable Weight of(Known known, Dryer.FanStack stack) {
            if (stack.weight().isEmpty()) {
                return null;
            }
            Scope scope = Scope.at(stack.name());
            Assumption least = known.store().get("drying.stack-pressure", scope);
            return new Weight(
                    stack.weight().get().si(), known.slot(least), least, known.slot("drying.stack-tighten", scope));
        }
    }

    /** How a kind of dryer dries: its time from one moisture ratio to another. */
    private interface Method {
        /** The part of the drying that does not depend on the sheets and costs most to find. */
        double rate(Values v);

        /** Water (kg/s) that sheets of an area (one face of all, m2) give off while they are wet. */
        double evaporation(double area, double rate, Values v);

        /** Time to dry in air that stays as it is, s. */
        double time(Filling filling, double rate, Values v);

        /** Whether the water goes into the air of the room. */
        default boolean intoRoom() {
            return true;
        }

        default int blotterChanges(double from, double end, double equilibrium, Values v) {
            return 0;
        }
    }

    DryingSheets(Known known, Workshop workshop, PreparingStock stock, @Nullable Dryer dryer, Scope measured) {
        this.stock = stock;
        this.dryer = dryer;
        this.workshop = workshop;
        restraint = dryer == null ? null : known.slot("restraint.share", Scope.of(dryer.name(), dryer.restraint()));
        gap = dryer != null && dryer.layer().isPresent() ? known.slot("drying.gap", Scope.at(dryer.name())) : null;
        method = dryer == null ? null : method(known, workshop, dryer, Scope.at(dryer.name()));
        measuredAlong = known.maybe("shrinkage.measured-along", measured);
        measuredAcross = known.maybe("shrinkage.measured-across", measured);
        weight = dryer instanceof Dryer.FanStack stack ? Weight.of(known, stack) : null;
        left = left(known, dryer);
        perChange = dryer instanceof Dryer.Blotters ? known.slot("labour.blotter-change") : null;
        endMargin = known.slot("drying.end-margin");
        perLoad = known.slot("labour.dry-load");
    }

    private static @Nullable Slot left(Known known, @Nullable Dryer dryer) {
        return dryer instanceof Dryer.FanStack
                ? known.slot("drying.stack-left", Scope.at(dryer.name()))
                : dryer instanceof Dryer.Loft ? known.slot("drying.loft-left", Scope.at(dryer.name())) : null;
    }

    /** What the drying time rests on, as measured on this dryer where it was. */
    private static Method method(Known known, Workshop workshop, Dryer dryer, Scope scope) {
        if (dryer instanceof Dryer.FanStack stack) {
            boolean fan = stack.hasFan();
            return new Stack(
                    workshop,
                    stack.freeAirFlow().si(),
                    known.slot("drying.stack-conductance", scope),
                    known.slot("drying.stack-still", scope),
                    fan ? known.slot("drying.delivered-share", scope) : null,
                    known.slot("drying.critical-ratio", scope));
        }
        if (dryer instanceof Dryer.Blotters) {
            return new Blotters(
                    known.slot("drying.blotter-kept", scope),
                    known.slot("drying.blotter-hours", scope),
                    known.slot("drying.blotter-capacity", scope));
        }
        boolean hung = dryer instanceof Dryer.Loft;
        return new InAir(
                workshop,
                hung ? ((Dryer.Loft) dryer).sheetsInSpur() : 1,
                hung ? 2 : 1,
                known.slot("drying.film-still", scope),
                known.slot("drying.radiative", scope),
                hung ? known.slot("drying.loft-view", scope) : null,
                known.slot("drying.lewis", scope),
                known.slot("drying.loft-tail", scope));
    }

    private record Stack(
            Workshop workshop,
            double freeAir,
            Slot conductance,
            Slot still,
            @Nullable Slot delivered,
            Slot criticalRatio)
            implements Method {
        /** It depends on the faces of the sheets. */
        @Override
        public double rate(Values v) {
            return 0;
        }

        @Override
        public double evaporation(double area, double rate, Values v) {
            double flow = delivered == null ? 0 : freeAir * v.of(delivered);
            return law(v).evaporation(2 * area, flow, workshop.roomAir);
        }

        @Override
        public double time(Filling filling, double rate, Values v) {
            double evaporation = evaporation(filling.area(), rate, v);
            return law(v).time(filling.solids, evaporation, filling.from, filling.end, filling.equilibrium);
        }

        private StackDrying law(Values v) {
            return new StackDrying(v.of(conductance), v.of(still), v.of(criticalRatio));
        }
    }

    private record Blotters(Slot kept, Slot hours, Slot capacity) implements Method {
        /** It goes change by change. */
        @Override
        public double rate(Values v) {
            return 0;
        }

        /** The blotters take it, and are dried elsewhere. */
        @Override
        public double evaporation(double area, double rate, Values v) {
            return 0;
        }

        @Override
        public boolean intoRoom() {
            return false;
        }

        @Override
        public double time(Filling filling, double rate, Values v) {
            BlotterDrying law = law(v);
            return law.time(law.changes(filling.from, filling.end, filling.equilibrium));
        }

        @Override
        public int blotterChanges(double from, double end, double equilibrium, Values v) {
            double changes = law(v).changes(from, end, equilibrium);
            return Double.isInfinite(changes) ? Integer.MAX_VALUE : (int) changes;
        }

        private BlotterDrying law(Values v) {
            return new BlotterDrying(v.of(kept), v.of(hours), v.of(capacity));
        }
    }

    private record InAir(
            Workshop workshop,
            int inSpur,
            int faces,
            Slot film,
            Slot radiative,
            @Nullable Slot view,
            Slot lewis,
            Slot tail)
            implements Method {
        /** The flux from one wet face. */
        @Override
        public double rate(Values v) {
            return law(v).flux(workshop.roomCelsius, workshop.roomHumidity, 0);
        }

        @Override
        public double evaporation(double area, double rate, Values v) {
            return area * rate * faces / inSpur;
        }

        @Override
        public double time(Filling filling, double rate, Values v) {
            return law(v).time(filling.grammage, filling.from, filling.end, filling.equilibrium, inSpur, faces, rate);
        }

        private HungDrying law(Values v) {
            double fromRoom = v.of(radiative) * (view == null ? 1 : v.of(view));
            return new HungDrying(v.of(film), fromRoom, v.of(lewis), v.of(tail));
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
        int laid = gap == null ? sheet.sheets() : sheet.apart();
        int inLayer = inLayer(sheet, v);
        int atOnce = dryer == null ? laid : (int) Math.min(laid, (long) dryer.capacity() * inLayer);
        return new Setting(
                dryer == null ? 0 : (int) Rounding.ceil((double) laid / atOnce),
                inLayer,
                atOnce,
                laid / sheet.sheets(),
                method == null ? 0 : method.blotterChanges(pressedRatio, endRatio(state, v), state.roomRatio(), v));
    }

    /** What lies side by side in a layer; one where its size is not given, or one is too large for it. */
    private int inLayer(FormingSheets.Setting sheet, Values v) {
        Dryer.@Nullable Layer layer = layer();
        if (layer == null || gap == null) {
            return 1;
        }
        int room =
                PieceLayout.sideBySide(layer.width().si(), layer.length().si(), across(sheet), along(sheet), v.of(gap));
        return Math.max(1, Math.min(room, sheet.apart()));
    }

    /** The area of paper in a full layer, m2. */
    double layerArea(FormingSheets.Setting sheet, Values v) {
        return gap == null ? sheet.area() : inLayer(sheet, v) * (sheet.area() * sheet.sheets() / sheet.apart());
    }

    private Dryer.@Nullable Layer layer() {
        return dryer == null ? null : dryer.layer().orElse(null);
    }

    private static double across(FormingSheets.Setting sheet) {
        return sheet.shape() == null ? sheet.openingWidth() : sheet.pieceAcross();
    }

    private static double along(FormingSheets.Setting sheet) {
        return sheet.shape() == null ? sheet.openingHeight() : sheet.pieceAlong();
    }

    /** Whether the wet sheet, or the piece of a shaped deckle, lies in a layer of the dryer. */
    public boolean isLaid(FormingSheets.Setting sheet) {
        return isLaid(dryer, across(sheet), along(sheet));
    }

    static boolean isLaid(@Nullable Dryer dryer, double across, double along) {
        return dryer == null
                || dryer.layer()
                        .map(one -> Fit.within(
                                across, along, one.width().si(), one.length().si()))
                        .orElse(true);
    }

    // ------------------------------------------------------------------------------------------------ what comes of it

    /** What the sheets are dried to, and how much they shrink on the way. */
    void forecastShrinkage(Passage on) {
        on.endRatio = endRatio(on.state, on.v);
        on.shrink = shrinkage(
                on.state,
                on.fillerShare(),
                on.pressedRatio,
                on.endRatio,
                on.settings.drying(on.piece).layerArea(on.sheet().area()),
                on.v);
        on.dryArea = on.sheet().area() * (1 - on.shrink[0]) * (1 - on.shrink[1]);
        on.set(SHRINK_ALONG, on.shrink[0]);
        on.set(SHRINK_ACROSS, on.shrink[1]);
    }

    /** How long a filling takes, and the water all of them give off. */
    void forecast(Passage on) {
        double solids = on.run.solids();
        Setting set = on.settings.drying(on.piece);
        double filling = set.atOnce * (solids / set.each);
        double room = on.state.roomRatio();
        // Most of the water leaves before the sheet shrinks, so the first drying is that of the size it was formed in.
        on.set(
                DRYING,
                time(new Filling(filling, on.formed(), on.pressedRatio, on.endRatio, room), on.dryingRate, on.v));
        on.set(
                DRYING_AGAIN,
                on.gain == 0
                        ? 0
                        : time(
                                new Filling(filling, solids / on.dryArea, room + on.taken - on.gain, on.endRatio, room),
                                on.dryingRate,
                                on.v));
        on.set(EVAPORATED, evaporated(on.sheets() * solids, on.pressedRatio, on.lastRatio));
    }

    /**
     * Shrinkage along and across, of sheets taken from one moisture ratio to another.
     *
     * @param area of the sheets of a layer, which a weight lies on; not a number where it is not known yet, when the weight is taken
     *     to hold
     */
    double[] shrinkage(
            PreparingStock.State state,
            double fillerShare,
            double pressedRatio,
            double endRatio,
            double area,
            Values v) {
        ShrinkageLaw law = new ShrinkageLaw(v.of(stock.shrinkOnset()), v.of(stock.direction()));
        double[] free = law.directions(new FillerLaw(fillerShare, 0).shrinkage(state.freeShrinkage()));
        double[] to = {endRatio};
        double[] held = {held(area, v)};
        return new double[] {
            measuredAlong == null ? law.held(free[0], pressedRatio, to, held) : v.of(measuredAlong),
            measuredAcross == null ? law.held(free[1], pressedRatio, to, held) : v.of(measuredAcross)
        };
    }

    /** How fast water goes while sheets are wet, as the dryer counts it. */
    double rate(Values v) {
        return method == null ? 0 : method.rate(v);
    }

    /** Time a filling takes at such a rate, s; not a number without a dryer, infinite where it never dries. */
    private double time(Filling filling, double rate, Values v) {
        if (method == null) {
            return Double.NaN;
        }
        double time = method.time(filling, rate, v);
        return method.intoRoom() && Double.isFinite(time)
                ? time
                        + Room.delay(
                                filling.water(), workshop.ventilation, workshop.roomSaturated, workshop.roomAir.ratio())
                : time;
    }

    /** Water to dry out of so many solids, down to a last moisture ratio. */
    double evaporated(double solids, double pressed, double last) {
        return Math.max(0, WetWeb.waterOut(solids, pressed, last));
    }

    /** Hands at the dryer, s. */
    double hours(Setting set, int sheets, Values v) {
        double layers = Rounding.ceil((double) sheets / set.inLayer);
        double changes = perChange == null || set.blotterChanges == Integer.MAX_VALUE
                ? 0
                : set.blotterChanges * layers * v.of(perChange);
        return set.loads * v.of(perLoad) + changes;
    }

    // ------------------------------------------------------------------------------------------------ weight and habit

    /** The share of the free shrinkage that drying holds back, of layers of an area. */
    private double held(double area, Values v) {
        if (restraint == null) {
            return 0;
        }
        double share = v.of(restraint);
        return weight == null || Double.isNaN(area)
                ? share
                : StackDrying.held(share, StackDrying.pressure(weight.mass, area), v.of(weight.least));
    }

    /** Whether the weight on a stack is given, and too small for layers of an area. */
    public boolean isLight(double area, Values v) {
        return weight != null && StackDrying.pressure(weight.mass, area) < v.of(weight.least);
    }

    /** The pressure of the weight on layers of an area, Pa; not a number where no weight is given. */
    public double pressure(double area) {
        return weight == null ? Double.NaN : StackDrying.pressure(weight.mass, area);
    }

    /** Whether the weight on layers of an area may hold them or let them slip, as far as that is known. */
    boolean maySlip(double area) {
        return weight != null && pressure(area) > weight.known.lowSi() && pressure(area) < weight.known.highSi();
    }

    /** The least pressure that holds sheets, Pa; not a number where no weight is given. */
    public double leastPressure(Values v) {
        return weight == null ? Double.NaN : v.of(weight.least);
    }

    /** The least weight that holds layers of an area, kg; not a number where no weight is given. */
    public double leastWeight(double area, Values v) {
        return weight == null ? Double.NaN : weight.mass * v.of(weight.least) / pressure(area);
    }

    /** When a stack is drawn tight once more, s; not a number where no weight is given. */
    public double tighten(Values v) {
        return weight == null ? Double.NaN : v.of(weight.tighten);
    }

    /** How long sheets stay in the dryer that are dry after a time (s): in a stack or a loft a day at least. */
    public double stay(double dry, Values v) {
        return left == null ? dry : Math.max(dry, v.of(left));
    }

    /** Water (kg/s) that one face of so much paper (m2) gives off into open air while it is wet. */
    public double evaporation(double area, Values v) {
        return method == null ? 0 : method.evaporation(area, method.rate(v), v);
    }

    /** Whether the water goes into the air of the room. */
    public boolean intoRoom() {
        return method != null && method.intoRoom();
    }

    /** Whether it holds sheets flat, so that only their rims are wavy. */
    public boolean holdsFlat() {
        return dryer != null && !(dryer instanceof Dryer.Loft);
    }
}
