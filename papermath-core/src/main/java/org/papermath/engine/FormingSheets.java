package org.papermath.engine;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.papermath.drying.Dryer;
import org.papermath.equation.Drainage;
import org.papermath.equation.DrainageLaw;
import org.papermath.equation.Moisture;
import org.papermath.equation.PieceLayout;
import org.papermath.equation.Shrinkage;
import org.papermath.equation.WaterProperties;
import org.papermath.equation.WetWeb;
import org.papermath.evidence.Scope;
import org.papermath.mould.Mould;
import org.papermath.numeric.Rounding;
import org.papermath.order.Piece;
import org.papermath.order.Studio;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** At the mould: which one and what opening, how many sheets, what each must hold; how it drains and how it looks. */
public final class FormingSheets {
    static final StageFigures FIGURES = new StageFigures();

    /** The time at the vat bends where hands wait for draining moulds, or moulds for hands. */
    private static final double TURN = 1e-3;

    /** A drain bends where stuff at its limit is beaten no further. */
    private static final double STOPS = 0.3;

    public static final PieceFigure MAT = FIGURES.piece("thickness of the wet sheet", Kinds.LENGTH, "mm", Scale.FACTOR);
    public static final PieceFigure COUCHED = FIGURES.piece("mass of the couched sheet", Kinds.MASS, "g", Scale.FACTOR);
    public static final PieceFigure DRAIN = FIGURES.pieceIfKnown("time to drain", Kinds.TIME, "s", Scale.FACTOR, STOPS);

    public static final PieceFigure AT_VAT = FIGURES.piece("time at the vat", Kinds.TIME, "h", Scale.FACTOR, TURN);

    /** The step in which an opening is made, m. */
    private static final double OPENING_STEP = 1e-4;

    private final Workshop workshop;
    private final @Nullable Dryer dryer;
    private final PreparingStock stock;
    private final double[] mouldWidth;
    private final double[] mouldHeight;
    /** Depth of stock the deckle of each mould holds, m; not a number where it limits nothing. */
    private final double[] mouldDepth;

    private final int[] mouldsInTurn;
    private final double dipTime;
    private final double window;
    private final String name;
    private final boolean deckleEdge;
    private final ShapedDeckles shapedDeckles;
    /** The outline the piece is formed to; null for a sheet with four sides and for the blank of an envelope. */
    private final @Nullable FormedShape outline;

    private final boolean shaped;
    private final double trim;
    private final double gap;
    /** Between the openings of a shaped deckle, m; not a number where there is none. */
    private final double strip;

    private final int wanted;
    private final int trials;

    private final Slot sizeTolerance;
    private final Slot tellingLimit;
    private final Slot pouredConsistency;
    private final CoverDrainage cover;
    private final Slot wall;
    private final @Nullable Slot thickening;
    private final Slot sheetTimeCard;
    private final Slot sheetTimeSmall;
    private final Slot sheetTimeLarge;
    private final Slot cardSheet;
    private final Slot largeSheet;
    private final Slot dipCouch;

    /**
     * What to form.
     *
     * @param mould the place of the mould in the studio; -1 for one that has to be made
     * @param ownDeckle whether the deckle of that mould already has the opening a rim on every side needs
     * @param perSheet pieces on a sheet
     * @param rowAcross pieces in a row across the mould
     * @param rowAlong pieces in a row along it
     * @param turned whether they lie with their long side across
     * @param openingWidth the opening across, m; of several openings all over all
     * @param openingHeight the opening along, m
     * @param sheets sheets to pull
     * @param solids oven-dry solids a sheet must have, kg
     * @param fibre the fibre of them, kg
     * @param other the next best mould; null for none
     * @param shape the outline of each opening of a shaped or split deckle; null for a single opening with four sides
     * @param strip how far apart those openings are, m
     */
    public record Setting(
            int mould,
            boolean ownDeckle,
            int perSheet,
            int rowAcross,
            int rowAlong,
            boolean turned,
            double openingWidth,
            double openingHeight,
            int sheets,
            double solids,
            double fibre,
            @Nullable Other other,
            @Nullable FormedShape shape,
            double strip) {
        /** The area in which pulp settles. */
        public double area() {
            return wetArea(openingWidth, openingHeight, rowAcross, rowAlong, shape, strip);
        }

        /** So many sheets of another mould with a plain deckle, each with so much of fibre for its area. */
        public Setting on(double width, double height, int count) {
            double ratio = width * height / area();
            return new Setting(
                    -1, true, 1, 1, 1, false, width, height, count, ratio * solids, ratio * fibre, null, null, 0);
        }

        /** So many of the same sheets. */
        public Setting of(int count) {
            return new Setting(
                    mould,
                    ownDeckle,
                    perSheet,
                    rowAcross,
                    rowAlong,
                    turned,
                    openingWidth,
                    openingHeight,
                    count,
                    solids,
                    fibre,
                    other,
                    shape,
                    strip);
        }

        /** The area in which pulp settles, over that of the opening over all. */
        double filled() {
            return shape == null ? 1 : area() / (openingWidth * openingHeight);
        }

        /** What hands part, lay to dry and sort one by one: sheets, or the pieces of a shaped or split deckle. */
        int apart() {
            return shape == null ? sheets : sheets * perSheet;
        }

        /** One of several openings across, m. */
        public double pieceAcross() {
            return one(openingWidth, rowAcross, strip);
        }

        /** One of several openings along, m. */
        public double pieceAlong() {
            return one(openingHeight, rowAlong, strip);
        }
    }

    private static double one(double all, int row, double strip) {
        return (all - (row - 1) * strip) / row;
    }

    private static double wetArea(
            double width, double height, int rowAcross, int rowAlong, @Nullable FormedShape shape, double strip) {
        return shape == null
                ? width * height
                : rowAcross * rowAlong * shape.share() * one(width, rowAcross, strip) * one(height, rowAlong, strip);
    }

    /**
     * A mould that was not taken, or other openings of a deckle to be made for the one that was.
     *
     * @param mould its place in the studio
     * @param openings openings of its deckle where that is shaped or split; 0 for a single one with four sides
     * @param hands what it would take more of the time at the vat, s; below zero for less
     * @param area what it would take more of wet area, over that of the mould taken; below zero for less
     */
    public record Other(int mould, int openings, double hands, double area) {}

    /** A mould on which the pieces find room. */
    private record Candidate(Layout layout, int misfits, double hands, double area) {}

    /** A mould and how the pieces lie on it. */
    record Layout(
            int mould,
            boolean ownDeckle,
            int perSheet,
            int rowAcross,
            int rowAlong,
            boolean turned,
            double openingWidth,
            double openingHeight,
            @Nullable Other other,
            @Nullable FormedShape shape,
            double strip) {
        Layout(
                int mould,
                boolean ownDeckle,
                int perSheet,
                int rowAcross,
                int rowAlong,
                boolean turned,
                double openingWidth,
                double openingHeight,
                @Nullable Other other) {
            this(mould, ownDeckle, perSheet, rowAcross, rowAlong, turned, openingWidth, openingHeight, other, null, 0);
        }

        /** The area in which pulp settles. */
        double area() {
            return wetArea(openingWidth, openingHeight, rowAcross, rowAlong, shape, strip);
        }

        Layout with(Other next) {
            return new Layout(
                    mould,
                    ownDeckle,
                    perSheet,
                    rowAcross,
                    rowAlong,
                    turned,
                    openingWidth,
                    openingHeight,
                    next,
                    shape,
                    strip);
        }
    }

    FormingSheets(
            Known known,
            Workshop workshop,
            Studio studio,
            PreparingStock stock,
            CoverDrainage cover,
            Piece piece,
            Scope scope,
            @Nullable Dryer dryer) {
        this.workshop = workshop;
        this.dryer = dryer;
        this.stock = stock;
        List<Mould> moulds = studio.moulds();
        mouldWidth = moulds.stream()
                .mapToDouble(one -> one.deckle().opening().width().si())
                .toArray();
        mouldHeight = moulds.stream()
                .mapToDouble(one -> one.deckle().opening().height().si())
                .toArray();
        mouldDepth = moulds.stream()
                .mapToDouble(one -> one.deckle().depth().map(Amount::si).orElse(Double.NaN))
                .toArray();
        mouldsInTurn = moulds.stream().mapToInt(Mould::count).toArray();
        dipTime = known.fixed("vat.dip-time", workshop.vat);
        window = known.fixed("labour.mould-window", Scope.GENERAL);
        deckleEdge = piece.edge() != Piece.Edge.CUT;
        shaped = piece.edge() == Piece.Edge.SHAPED;
        shapedDeckles = new ShapedDeckles(workshop, moulds);
        outline = piece.outline().map(ShapedDeckles::shape).orElse(null);
        strip = !shaped
                ? Double.NaN
                : piece.gap().map(Amount::si).orElseGet(() -> known.fixed("order.deckle-strip", scope));
        trim = piece.trim().map(Amount::si).orElseGet(() -> known.fixed("order.trim", scope));
        gap = piece.gap().map(Amount::si).orElse(0.0);
        double spare = piece.spare().map(Amount::si).orElseGet(() -> known.fixed("order.spare-share", scope));
        name = piece.name();
        wanted = Few.sheets(Rounding.ceil(piece.count() * (1 + spare)) + piece.kept(), name);
        trials = piece.trials().orElseGet(() -> Few.sheets(Math.rint(known.fixed("order.trial-sheets", scope)), name));
        sheetTimeCard = known.slot("labour.sheet-time", PieceScope.of("card", piece.name()));
        sheetTimeSmall = known.slot("labour.sheet-time", PieceScope.of("small", piece.name()));
        sheetTimeLarge = known.slot("labour.sheet-time", PieceScope.of("large", piece.name()));
        sizeTolerance = known.slot("order.size-tolerance");
        tellingLimit = known.slot("drainage.drainability-limit");
        pouredConsistency = known.slot("vat.poured-consistency");
        this.cover = cover;
        wall = known.slot("fibre.cell-wall-density");
        thickening = stock.hasFormationAid() ? known.slot("drainage.aid-thickening") : null;
        largeSheet = known.slot("labour.large-sheet");
        cardSheet = known.slot("labour.card-sheet");
        dipCouch = known.slot("labour.dip-couch", workshop.vat);
    }

    boolean deckleEdge() {
        return deckleEdge;
    }

    double gap() {
        return gap;
    }

    /** Whether it is formed in a deckle cut to its outline. */
    boolean isShaped() {
        return shaped;
    }

    /** The outline the piece is formed to; null for a sheet with four sides and for the blank of an envelope. */
    @Nullable
    FormedShape outline() {
        return outline;
    }

    int wanted() {
        return wanted;
    }

    int trials() {
        return trials;
    }

    /** Moisture ratio of a sheet as it leaves the mould. */
    static double couchedRatio(PreparingStock.State state) {
        return Moisture.ratioOfSolids(state.couchedSolids());
    }

    // ------------------------------------------------------------------------------------------------ what to do

    /**
     * Chooses the opening and the sheets.
     *
     * @param width finished width, flat
     * @param height finished height, flat
     * @param shape the outline it is formed to; null for an opening with four sides
     * @param shrink shrinkage along and across
     * @param dryGrammage oven-dry fibre and filler of the finished sheet on its area
     * @param state the stuff
     * @param kept what stays in a sheet
     * @param pressed whether the sheets go to the press
     */
    Setting decide(
            double width,
            double height,
            @Nullable FormedShape shape,
            double[] shrink,
            double dryGrammage,
            PreparingStock.State state,
            PreparingStock.Kept kept,
            Rejects rejects,
            boolean pressed,
            Values v) {
        double pieceYield = rejects.ofSheets(pressed, v) * rejects.ofPieces(v);
        double areaFactor = (1 - shrink[0]) * (1 - shrink[1]);
        double drain = drain(dryGrammage * areaFactor / (1 + kept.load()), state, kept, v);
        Layout layout = shape == null
                ? opening(width, height, shrink, pieceYield, drain, v)
                : shapedOpening(width, height, shape, shrink, pieceYield, drain, v);
        double solids = dryGrammage * layout.area() * areaFactor;
        double fibre = solids / (1 + kept.load());
        int sheets = Few.sheets(Rounding.ceil(wanted / (layout.perSheet * pieceYield)) + trials, name);
        return new Setting(
                layout.mould,
                layout.ownDeckle,
                layout.perSheet,
                layout.rowAcross,
                layout.rowAlong,
                layout.turned,
                layout.openingWidth,
                layout.openingHeight,
                sheets,
                solids,
                fibre,
                layout.other,
                layout.shape,
                layout.strip);
    }

    /**
     * About how long a sheet of such fibre on its area drains, s, before the vat is settled: at the consistency it would
     * get if nothing were formed before it. It is the same on every mould.
     */
    private double drain(double onWire, PreparingStock.State state, PreparingStock.Kept kept, Values v) {
        double c = workshop.hasVat
                ? stock.vatConsistency()
                        .choose(
                                onWire,
                                kept.fibre(),
                                state.drainability(),
                                Double.NaN,
                                v.of(wall),
                                workshop.waterDensity)
                        .consistency()
                : Math.min(stock.stockConsistency(), v.of(pouredConsistency));
        Draining sheet = new Draining(c, state, kept, v);
        return sheet.time(Drainage.depth(onWire, kept.fibre(), sheet.perVolume));
    }

    /** The opening: one's own rim or several for a deckle edge, the best of the moulds for cut edges, or one to be made. */
    private Layout opening(double width, double height, double[] shrink, double pieceYield, double drain, Values v) {
        double tolerance = v.of(sizeTolerance);
        double edge = deckleEdge ? 0 : trim;
        double wide = width + 2 * edge;
        double high = height + 2 * edge;
        // Along is the long side of the mould; a piece lies with its long side along, or turned.
        double longSide = Math.max(wide, high);
        double shortSide = Math.min(wide, high);
        double needAlong = Shrinkage.wetLength(longSide, shrink[0]);
        double needAcross = Shrinkage.wetLength(shortSide, shrink[1]);
        Layout made = new Layout(
                -1,
                false,
                1,
                1,
                1,
                false,
                Rounding.roundTo(needAcross, OPENING_STEP),
                Rounding.roundTo(needAlong, OPENING_STEP),
                null);
        ShapedDeckles.Wet wet = ShapedDeckles.wet(longSide, shortSide, shrink);
        List<Candidate> candidates = new ArrayList<>();
        boolean owned = false;
        for (int m = 0; m < mouldWidth.length; m++) {
            if (shapedDeckles.isShaped(m)) {
                continue;
            }
            boolean isSplit = deckleEdge && shapedDeckles.isSplit(m);
            Layout split = isSplit ? shapedDeckles.inSplit(m, wet, tolerance) : null;
            double along = Math.max(mouldWidth[m], mouldHeight[m]);
            double across = Math.min(mouldWidth[m], mouldHeight[m]);
            PieceLayout.Layout layout = PieceLayout.best(
                    across,
                    along,
                    needAcross,
                    needAlong,
                    Shrinkage.wetLength(longSide, shrink[1]),
                    Shrinkage.wetLength(shortSide, shrink[0]),
                    gap,
                    gap);
            boolean own = isSplit
                    ? split != null
                    : deckleEdge && isNear(along, needAlong, tolerance) && isNear(across, needAcross, tolerance);
            if (layout.count() == 0 && !own) {
                continue;
            }
            // A deckle of one's own goes before one that has to be made.
            if (own && !owned) {
                candidates.clear();
                owned = true;
            }
            if (own == owned) {
                candidates.add(
                        split != null
                                ? candidate(
                                        split,
                                        split.openingWidth,
                                        split.openingHeight,
                                        split.area(),
                                        pieceYield,
                                        drain,
                                        v)
                                : candidate(m, own, across, along, layout, made, pieceYield, drain, v));
            }
        }
        return candidates.isEmpty() ? made : choose(candidates);
    }

    private Candidate candidate(
            int m,
            boolean own,
            double across,
            double along,
            PieceLayout.Layout layout,
            Layout made,
            double pieceYield,
            double drain,
            Values v) {
        // A mould takes a smaller deckle, which has to be made.
        Layout chosen = deckleEdge && !own
                ? new Layout(m, false, 1, 1, 1, false, made.openingWidth, made.openingHeight, null)
                : new Layout(
                        m,
                        own,
                        deckleEdge ? 1 : layout.count(),
                        deckleEdge ? 1 : layout.across(),
                        deckleEdge ? 1 : layout.along(),
                        !deckleEdge && layout.turned(),
                        across,
                        along,
                        null);
        return candidate(chosen, across, along, across * along, pieceYield, drain, v);
    }

    /**
     * A layout with what it costs.
     *
     * @param across the face that has to find room, across, m
     * @param along along, m
     * @param area what a sheet takes of wet area, m²
     * @param drain about how long a sheet drains, s
     */
    private Candidate candidate(
            Layout layout, double across, double along, double area, double pieceYield, double drain, Values v) {
        double sheets = PieceLayout.sheets(layout.perSheet, wanted / pieceYield, trials);
        return new Candidate(
                layout,
                workshop.misfits(across, along) + (DryingSheets.isLaid(dryer, across, along) ? 0 : 1),
                sheets * sheetTime(layout.mould, layout.area(), drain, v),
                sheets * area);
    }

    /** The deckle of a piece formed to its outline: the best of those the studio has, or of those it can make. */
    private Layout shapedOpening(
            double width,
            double height,
            FormedShape shape,
            double[] shrink,
            double pieceYield,
            double drain,
            Values v) {
        ShapedDeckles.Wet wet = ShapedDeckles.wet(Math.max(width, height), Math.min(width, height), shrink);
        List<Layout> layouts =
                shapedDeckles.choices(wet, shape, wanted / pieceYield, strip, v.of(sizeTolerance), new double[] {
                    v.of(cardSheet), v.of(largeSheet)
                });
        return layouts.isEmpty()
                ? ShapedDeckles.toMake(-1, 1, 1, false, wet, shape, strip)
                : choose(layouts.stream()
                        .map(one ->
                                candidate(one, one.openingWidth, one.openingHeight, one.area(), pieceYield, drain, v))
                        .toList());
    }

    /**
     * Of the moulds whose sheets felts, platen and vat take best, the one that costs hands the least time, and of those
     * near it the one that takes the least wet area; hands wait where the mould is busy longer. With the next best, unless all need the same deckle made.
     */
    private Layout choose(List<Candidate> candidates) {
        int fewest = candidates.stream().mapToInt(Candidate::misfits).min().orElseThrow();
        List<Candidate> fitting =
                candidates.stream().filter(one -> one.misfits == fewest).toList();
        int first = best(fitting);
        Candidate best = fitting.get(first);
        List<Candidate> rest = new ArrayList<>(fitting);
        rest.remove(first);
        if (rest.isEmpty() || (deckleEdge && !best.layout.ownDeckle && best.layout.shape == null)) {
            return best.layout;
        }
        Candidate next = rest.get(best(rest));
        return best.layout.with(new Other(
                next.layout.mould,
                next.layout.shape == null ? 0 : next.layout.perSheet,
                next.hands - best.hands,
                next.area / best.area - 1));
    }

    private int best(List<Candidate> candidates) {
        return PieceLayout.best(
                candidates.stream().mapToDouble(Candidate::hands).toArray(),
                candidates.stream().mapToDouble(Candidate::area).toArray(),
                window);
    }

    private static boolean isNear(double owned, double needed, double tolerance) {
        return Math.abs(owned - needed) <= tolerance * needed;
    }

    // ------------------------------------------------------------------------------------------------ what comes of it

    /** The wet sheet. */
    void forecast(Passage on) {
        on.couchedRatio = couchedRatio(on.state);
        on.set(MAT, mat(on.formed(), on.couchedRatio, on.v));
        on.set(COUCHED, on.run.solids() / on.state.couchedSolids());
    }

    /** How it drains. */
    void forecastDraining(Passage on) {
        Values v = on.v;
        FillingVat.Setting vat = on.settings.vat(on.piece);
        double c = vat.dipped() ? vat.vat().consistency() : Math.min(stock.stockConsistency(), v.of(pouredConsistency));
        Draining sheet = new Draining(c, on.state, on.kept, v);
        on.drains = sheet.time(Drainage.depth(on.run.fibre() / on.sheet().area(), on.kept.fibre(), sheet.perVolume));
        on.set(DRAIN, sheet.isKnown() ? on.drains : Double.NaN);
    }

    /** How long all the sheets take at the vat. */
    void forecastTime(Passage on) {
        on.set(AT_VAT, atVat(on.sheet(), on.drains, on.v));
    }

    /** Thickness of the wet mat, m, of oven-dry solids on its area. */
    double mat(double formed, double couchedRatio, Values v) {
        return WetWeb.thickness(formed, couchedRatio, v.of(wall), workshop.waterDensity);
    }

    DrainageLaw drainage(Values v) {
        return cover.law(v);
    }

    /**
     * Depth of stock a sheet can be formed from in one dip, m: what the deckle holds and what drains while the mould is in
     * the stock. Not a number where depth limits nothing.
     */
    double standing(Setting set, double consistency, PreparingStock.State state, PreparingStock.Kept kept, Values v) {
        double depth = set.mould < 0 ? Double.NaN : mouldDepth[set.mould];
        if (Double.isNaN(depth)) {
            return Double.NaN;
        }
        Draining sheet = new Draining(consistency, state, kept, v);
        double drained = sheet.isKnown() ? sheet.drained(depth, dipTime) : 0;
        return depth + Math.min(depth, drained);
    }

    /** A sheet of the pulp on its way through the cover. */
    private final class Draining {
        final double perVolume;
        private final double drainability;
        private final double alpha;
        private final double viscosity;
        private final Values v;

        Draining(double c, PreparingStock.State state, PreparingStock.Kept kept, Values v) {
            this.v = v;
            drainability = state.drainability();
            // Beyond what a tester can read a sheet takes as long as at that, or longer.
            double read = Math.min(drainability, v.of(tellingLimit));
            perVolume = cover.perVolume(c, v);
            // Filler in the mat is in the way of the water as so much fibre would be.
            alpha = cover.alpha(read, v) * (1 + kept.particleLoad());
            viscosity = thickening == null
                    ? workshop.waterViscosity
                    : WaterProperties.thickened(
                            workshop.waterViscosity, v.of(thickening), kept.dissolvedAid() * perVolume);
        }

        /** Whether the tester still says how it drains. */
        boolean isKnown() {
            return drainability <= v.of(tellingLimit);
        }

        double time(double depth) {
            return cover.law(v).time(depth, alpha, perVolume, viscosity, workshop.waterDensity);
        }

        double drained(double depth, double time) {
            return cover.law(v).drained(time, depth, alpha, perVolume, viscosity, workshop.waterDensity);
        }
    }

    /**
     * Time at the vat, s. A sheet takes what hands take for it, or as long as its mould is busy where that is longer: a
     * second mould then halves the wait.
     *
     * @param drain time to drain, s
     */
    private double atVat(Setting set, double drain, Values v) {
        return sheetTime(set.mould, set.area(), drain, v) * set.sheets;
    }

    private double sheetTime(int mould, double area, double drain, Values v) {
        return Math.max(handTime(area, v), busyTime(mould, drain, v));
    }

    /** How long hands are on one sheet. */
    public double handTime(double area, Values v) {
        return switch (PieceLayout.pace(area, v.of(cardSheet), v.of(largeSheet))) {
            case 0 -> v.of(sheetTimeCard);
            case 1 -> v.of(sheetTimeSmall);
            default -> v.of(sheetTimeLarge);
        };
    }

    /** How long the moulds keep one sheet waiting. */
    public double busyTime(Setting set, double drain, Values v) {
        return busyTime(set.mould, drain, v);
    }

    private double busyTime(int mould, double drain, Values v) {
        return (drain + v.of(dipCouch)) / (mould < 0 ? 1 : mouldsInTurn[mould]);
    }

    /** How many of its mould are worked in turn. */
    public int inTurn(Setting set) {
        return set.mould < 0 ? 1 : mouldsInTurn[set.mould];
    }
}
