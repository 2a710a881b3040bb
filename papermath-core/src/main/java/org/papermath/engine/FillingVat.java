package org.papermath.engine;

import java.util.Arrays;
import java.util.Comparator;
import org.jspecify.annotations.Nullable;
import org.papermath.equation.VatBalance;
import org.papermath.equation.VatLaw;
import org.papermath.equation.WaterProperties;
import org.papermath.numeric.Rounding;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.text.Digits;

/**
 * The vat of a batch, or the pours where sheets are not dipped: the lift of a dip, the charge, what to give back after
 * which sheet, and what every sheet gets.
 */
public final class FillingVat {
    static final StageFigures FIGURES = new StageFigures();

    /** Below zero where the stock runs short, so it is read by itself. */
    public static final BatchFigure STOCK_LEFT = FIGURES.batch("stock put by", null, "kg", Scale.DIFFERENCE);

    public static final BatchFigure VAT_FIBRE = FIGURES.batch("fibre kept in the vat", Kinds.MASS, "g", Scale.ROOT);
    public static final BatchFigure WHITE_WATER =
            FIGURES.batch("fibre in the white water", Kinds.MASS, "g", Scale.ROOT);
    public static final PieceFigure LOAD = FIGURES.piece("share of filler", Kinds.NUMBER, "%", Scale.ROOT);
    public static final PieceFigure LIGHTEST = FIGURES.piece("lightest sheet", Kinds.NUMBER, "%", Scale.FACTOR);
    public static final PieceFigure HEAVIEST = FIGURES.piece("heaviest sheet", Kinds.NUMBER, "%", Scale.FACTOR);

    /** The steps in which a lift is given where they are fine enough, kg. */
    private static final double LIFT_STEP = 0.01;

    /** A step is fine enough up to this share of what is measured with it. */
    private static final double FINE = 0.01;

    /** The step in which water is measured in, m³. */
    private static final double WATER_STEP = 1e-4;

    /** Rounds in which a level and what sheets take at it come to agree. */
    private static final int ROUNDS = 4;

    private final Known known;
    private final Workshop workshop;
    private final PreparingStock stock;

    private final boolean asListed;
    private final double mostDips;
    private final double levelStep;
    private final Slot wall;
    private final Slot tolerance;
    private final Slot lift;
    private final Slot charging;

    /**
     * How the sheets of one piece are formed.
     *
     * @param dipped whether they are dipped from the vat; poured otherwise
     * @param vat how thick the vat is made for them, and why
     * @param turn the place among the pieces of the batch in which they are formed, from 0
     * @param dips dips a sheet is built up of, or would be where that is too many and it is poured
     * @param standing depth of stock the deckle holds while it drains, m; not a number where depth limits nothing
     * @param letDown what is taken out of the vat into a pail before the first sheet, kg
     * @param tooWide whether the mould is wider than the vat
     * @param leastVatVolume the least vat one lift keeps within its band, where the vat is smaller, m³; else zero
     * @param lift stock taken up by a dip, or poured, kg
     * @param wantedLift the lift before it is rounded to the scale, kg
     * @param wantedStock the most stock measured at a time before it is rounded to the jug, kg
     * @param every sheets between two recharges
     * @param start what is done before the first sheet
     * @param recharges what is done after every so many sheets
     * @param step what the steps of the tools do to the weight
     */
    public record Setting(
            boolean dipped,
            VatConsistency.Chosen vat,
            int turn,
            int dips,
            double standing,
            double letDown,
            boolean tooWide,
            double leastVatVolume,
            double lift,
            double wantedLift,
            double wantedStock,
            int every,
            Charge start,
            Charge[] recharges,
            Step step) {
        /** The same lift, with nothing given before the sheets or between them. */
        public Setting givingNothing() {
            Charge nothing = new Charge(0, 0, 0, 0, 0, false);
            return new Setting(
                    dipped,
                    vat,
                    turn,
                    dips,
                    standing,
                    0,
                    tooWide,
                    leastVatVolume,
                    lift,
                    wantedLift,
                    wantedStock,
                    every,
                    nothing,
                    new Charge[0],
                    step);
        }

        Setting with(Step steps) {
            return new Setting(
                    dipped,
                    vat,
                    turn,
                    dips,
                    standing,
                    letDown,
                    tooWide,
                    leastVatVolume,
                    lift,
                    wantedLift,
                    wantedStock,
                    every,
                    start,
                    recharges,
                    steps);
        }
    }

    /**
     * What is given to the vat at a time, kg.
     *
     * @param strained water strained out before anything is given, where the vat is run down
     * @param pail what is given back of what was let down, before any stock
     * @param stock stock to add
     * @param water about how much water brings the level to the mark
     * @param bail about how much is bailed to come back to it
     * @param level whether the level is brought to the mark at all; it is left where it stands almost there
     */
    public record Charge(double strained, double pail, double stock, double water, double bail, boolean level) {
        /** Nothing. */
        public static final Charge NONE = new Charge(0, 0, 0, 0, 0, true);
    }

    /**
     * What the steps of scale and jug do to the weight of the sheets.
     *
     * @param shift how far they move it, as a fraction
     * @param ofJug whether that comes of the step of the jug; of the scale otherwise
     * @param finer what a step of that tool should be, in its unit: kg or m³
     * @param evenConsistency the consistency, of the vat for the scale, of the stock for the jug, at which its own
     *     steps come out even
     */
    public record Step(double shift, boolean ofJug, double finer, double evenConsistency) {}

    /**
     * What the sheets of one piece got.
     *
     * @param fibre oven-dry fibre of a sheet, the mean of all, kg
     * @param solids the same with what it carries of additives
     * @param lightest oven-dry mass of the lightest sheet, kg
     * @param heaviest oven-dry mass of the heaviest sheet, kg
     * @param sheets fibre of each sheet
     * @param carried each additive (first index) of each sheet (second index)
     */
    record Sheets(double fibre, double solids, double lightest, double heaviest, double[] sheets, double[][] carried) {
        private static Sheets of(double[] sheets, double[][] carried, double[] whole) {
            System.arraycopy(sheets, 0, whole, 0, sheets.length);
            for (double[] additive : carried) {
                for (int i = 0; i < sheets.length; i++) {
                    whole[i] += additive[i];
                }
            }
            double fibre = 0;
            double solids = 0;
            double lightest = Double.POSITIVE_INFINITY;
            double heaviest = 0;
            for (int i = 0; i < sheets.length; i++) {
                fibre += sheets[i];
                solids += whole[i];
                lightest = Math.min(lightest, whole[i]);
                heaviest = Math.max(heaviest, whole[i]);
            }
            return new Sheets(fibre / sheets.length, solids / sheets.length, lightest, heaviest, sheets, carried);
        }
    }

    /** Where the sheets of a batch are put down as they are formed; a run overwrites what the one before has put there. */
    static final class Space {
        private final double[][] sheets;
        private final double[][][] carried;
        private final double[] whole;

        private Space(FormingSheets.Setting[] pieces, int additives) {
            sheets = new double[pieces.length][];
            carried = new double[pieces.length][][];
            int most = 0;
            for (int p = 0; p < pieces.length; p++) {
                sheets[p] = new double[pieces[p].sheets()];
                carried[p] = new double[additives][pieces[p].sheets()];
                most = Math.max(most, pieces[p].sheets());
            }
            whole = new double[most];
        }
    }

    /** New space for the sheets of the batch. */
    Space space(FormingSheets.Setting[] pieces) {
        return new Space(pieces, stock.wantedInStock().length);
    }

    /**
     * What a whole run comes to.
     *
     * @param pieces the sheets of each piece, in the order they are formed in
     * @param tank the vat at the end
     * @param stockLeft stock left in the pails; below zero where it runs short
     */
    record Run(Sheets[] pieces, RunningVat tank, double stockLeft) {}

    FillingVat(Known known, Workshop workshop, PreparingStock stock, boolean asListed) {
        this.known = known;
        this.workshop = workshop;
        this.stock = stock;
        this.asListed = asListed;
        mostDips = known.fixed("vat.most-dips", workshop.vat);
        levelStep = known.fixed("vat.level-step", workshop.vat);
        wall = known.slot("fibre.cell-wall-density");
        tolerance = known.slot("vat.tolerance", workshop.vat);
        lift = known.slot("vat.lift-factor", workshop.vat);
        charging = known.slot("labour.vat-charge");
    }

    /** The consistency up to which the pulp still stirs and forms, or the stock can be let down to. */
    public double mostConsistency(double drainability) {
        return Math.min(
                stock.vatConsistency().most(drainability),
                stock.vatConsistency().mostOfStock());
    }

    /** The deviation of single sheets that recharges keep the run within. */
    public Slot tolerance() {
        return tolerance;
    }

    /** Time the charging of the vat takes for some pieces, s, if any of them is dipped. */
    public double charging(Settings settings, int[] pieces, Values v) {
        Setting[] formed = new Setting[pieces.length];
        for (int i = 0; i < formed.length; i++) {
            formed[i] = settings.vat(pieces[i]);
        }
        return charging(formed, v);
    }

    /** Time the charging of the vat takes, if anything is dipped. */
    double charging(Setting[] settings, Values v) {
        boolean dipped = false;
        for (Setting one : settings) {
            dipped |= one.dipped;
        }
        return dipped ? v.of(charging) : 0;
    }

    /** What the vat holds at its mark, kg. */
    double full(double consistency, Values v) {
        return workshop.vatVolume * WaterProperties.stockDensity(consistency, v.of(wall), workshop.waterDensity);
    }

    // ------------------------------------------------------------------------------------------------ what to do

    /**
     * Decides how the sheets of all pieces are formed.
     *
     * @param forming the moulds of the pieces
     * @param settings filled with the setting of each piece
     * @return the stock it takes, kg
     */
    double decide(
            FormingSheets[] forming,
            FormingSheets.Setting[] pieces,
            PreparingStock.Kept kept,
            PreparingStock.State state,
            double stockDensity,
            Values v,
            Setting[] settings) {
        double c = stock.stockConsistency();
        double couched = state.couchedSolids();
        double[] inStock = stock.wantedInStock();
        Space space = space(pieces);
        RunningVat tank = new RunningVat(kept, c, inStock, workshop.isStrained);
        double before = Double.NaN;
        int[] turns = turns(pieces);
        for (int turn = 0; turn < turns.length; turn++) {
            int p = turns[turn];
            FormingSheets.Setting piece = pieces[p];
            double[] sheets = space.sheets[p];
            double[][] carried = space.carried[p];
            double onWire = piece.fibre() / piece.area();
            VatConsistency.Chosen vat = stock.vatConsistency()
                    .choose(onWire, kept.fibre(), state.drainability(), before, v.of(wall), workshop.waterDensity);
            double standing = forming[p].standing(piece, vat.consistency(), state, kept, v);
            boolean last = turn == turns.length - 1;
            Dip dip = workshop.hasVat ? dip(piece, vat, standing, turn, last, kept, stockDensity, v) : Dip.NONE;
            requireDrier(dip.possible ? vat.consistency() : c, kept, couched);
            Setting set = dip.possible
                    ? dipped(dip, before, stockDensity, couched, tank, sheets, carried)
                    : poured(piece, dip, kept, stockDensity, c);
            if (set.dipped) {
                before = vat.consistency();
            } else {
                tank.pour(set.lift, couched, sheets, carried, null, 0);
            }
            double all = 0;
            for (double sheet : sheets) {
                all += sheet;
            }
            settings[p] = steps(set, all / sheets.length / piece.fibre() - 1, stockDensity, c);
        }
        return tank.used();
    }

    /** The heaviest sheet first, so that the vat is only let down between pieces; or as the order has them. */
    private int[] turns(FormingSheets.Setting[] pieces) {
        Integer[] turns = new Integer[pieces.length];
        Arrays.setAll(turns, p -> p);
        if (!asListed) {
            Arrays.sort(turns, Comparator.comparingDouble((Integer p) -> -pieces[p].fibre() / pieces[p].area()));
        }
        return Arrays.stream(turns).mapToInt(Integer::intValue).toArray();
    }

    /** The lift of a dip, and whether the vat can give it. */
    private record Dip(
            boolean possible,
            VatConsistency.Chosen vat,
            int turn,
            int dips,
            double standing,
            boolean tooWide,
            double lift,
            double wanted,
            int every,
            double leastVatVolume,
            double least,
            double sheet,
            VatLaw law) {
        static final Dip NONE = new Dip(
                false,
                new VatConsistency.Chosen(0, VatConsistency.Why.DIP),
                0,
                1,
                Double.NaN,
                false,
                0,
                0,
                0,
                0,
                Double.NaN,
                0,
                new VatLaw(1, 0, 0));
    }

    private Dip dip(
            FormingSheets.Setting piece,
            VatConsistency.Chosen vat,
            double standing,
            int turn,
            boolean last,
            PreparingStock.Kept kept,
            double stockDensity,
            Values v) {
        double c = vat.consistency();
        double full = full(c, v);
        double depth =
                VatConsistency.depth(piece.fibre() / piece.area(), kept.fibre(), c, v.of(wall), workshop.waterDensity);
        int dips = depth > standing ? (int) Math.min(Few.MOST_DIPS, Rounding.ceil(depth / standing)) : 1;
        double wanted = VatBalance.liftedOfSheet(piece.fibre(), kept.fibre(), c) / v.of(lift) / dips;
        double step = liftStep(wanted);
        double lifted = Math.max(step, Rounding.roundTo(wanted, step));
        VatLaw law = new VatLaw(full, kept.fibre(), dips * lifted * v.of(lift));
        double band = v.of(tolerance);
        double least = law.leastFull(band);
        // What the jug may be wrong by is kept out of the band.
        double jug = workshop.jug / 2 * stockDensity * stock.stockConsistency() / (full * c);
        // Run down, the vat still has to keep two sheets within the band.
        double low = full * workshop.runDown / workshop.vatVolume;
        boolean runsDown = last && low >= least;
        boolean tooWide = !workshop.isInVat(piece.openingWidth(), piece.openingHeight());
        // A mould that does not go in, or a dip that may take more than there is, cannot be dipped.
        boolean possible =
                !tooWide && dips <= mostDips && dips * lifted * Math.max(v.of(lift), known.greatest(lift)) < full;
        return new Dip(
                possible,
                vat,
                turn,
                dips,
                standing,
                tooWide,
                lifted,
                wanted,
                // Of less stock a sheet takes more of the fibre, so fewer go before the next recharge.
                Math.min(
                        law.sheetsInBand(band - jug, piece.sheets()),
                        runsDown
                                ? new VatLaw(low, law.retention(), law.lifted())
                                        .sheetsInBand(band - jug, piece.sheets())
                                : Integer.MAX_VALUE),
                full < least ? workshop.vatVolume * least / full : 0,
                runsDown ? low : Double.NaN,
                piece.fibre(),
                law);
    }

    /** A lift is given in round figures where they are fine enough, else as finely as the scale can weigh it. */
    private double liftStep(double wanted) {
        return LIFT_STEP <= FINE * wanted ? Math.max(LIFT_STEP, workshop.scale) : workshop.scale;
    }

    /** A sheet that leaves the vat wetter than what was lifted would take more water away than there is. */
    private void requireDrier(double liftedConsistency, PreparingStock.Kept kept, double couched) {
        double lifted = liftedConsistency * kept.fibre() * (1 + kept.load());
        if (couched <= lifted) {
            throw Refused.of(
                    "vat.sheet-wetter-than-vat",
                    "recipe " + stock.name() + ": solids of the couched sheet: " + Digits.percent(couched)
                            + ", no more than the " + Digits.percent(lifted)
                            + " that is lifted with the mould. A sheet drains;"
                            + " check the value of web.couched-per-retention and the consistency of the recipe.",
                    "recipe",
                    stock.name(),
                    "given",
                    couched,
                    "least",
                    lifted,
                    "member",
                    "vatConsistency",
                    "id",
                    "web.couched-per-retention");
        }
    }

    /** The charge of the vat, the dips and the recharges between them. */
    private Setting dipped(
            Dip dip,
            double before,
            double stockDensity,
            double couched,
            RunningVat tank,
            double[] sheets,
            double[][] carried) {
        VatLaw law = dip.law;
        double inVat = dip.vat.consistency() * law.full();
        int events = Math.max(0, (sheets.length - 1) / dip.every);
        Charge start = Charge.NONE;
        Charge[] recharges = new Charge[events];
        double most = 0;
        double letDown = 0;
        double water = 0;
        boolean down = false;
        for (int e = 0; e <= events; e++) {
            int from = e * dip.every;
            int count = Math.min(dip.every, sheets.length - from);
            // The mean of so many sheets, each thinner than the one before by the same factor, is to be the target.
            double wanted = inVat * law.firstOverMean(count);
            if (e == 0 && dip.vat.consistency() < before && wanted < tank.fibreStanding()) {
                double out = tank.standing() * (1 - wanted / tank.fibreStanding());
                letDown = Rounding.roundTo(out / stockDensity, Math.max(workshop.jug, WATER_STEP)) * stockDensity;
                water = tank.letDown(law.full(), letDown, null, 0);
            }
            // Once water has been strained out the vat is not filled again.
            down |= e > 0 && lasts(tank, dip, sheets.length - from);
            Given given = down ? runDown(tank, dip, count) : charge(tank, law, wanted, stockDensity);
            Charge charge = given.charge;
            most = Math.max(most, given.wantedStock);
            if (e == 0) {
                start = new Charge(
                        charge.strained,
                        charge.pail,
                        charge.stock,
                        charge.water + level(water),
                        charge.bail,
                        charge.level);
            } else {
                recharges[e - 1] = charge;
            }
            tank.pull(count, law.lifted(), couched, sheets, carried, from);
        }
        return new Setting(
                true,
                dip.vat,
                dip.turn,
                dip.dips,
                dip.standing,
                letDown,
                dip.tooWide,
                dip.leastVatVolume,
                dip.lift,
                dip.wanted,
                most,
                dip.every,
                start,
                recharges,
                NO_STEP);
    }

    /** What is given at a time, and the stock for it before it is rounded to the jug. */
    private record Given(Charge charge, double wantedStock) {}

    /**
     * What is given at a time: first what was let down, then stock. A level that comes within a trifle of the mark is
     * left as it is.
     */
    private Given charge(RunningVat tank, VatLaw law, double wanted, double stockDensity) {
        double full = law.full();
        double window = levelStep * full;
        boolean empty = tank.standing() == 0;
        double pail = jug(tank.pailFor(law, wanted), stockDensity);
        double bailed = tank.fromPail(full, pail, null, 0);
        double untouched = tank.stockFor(wanted / full);
        boolean level = empty
                || Math.abs(tank.standing() + untouched - full) > window
                || wanted / full >= stock.stockConsistency();
        double wantedStock = level ? tank.stockFor(law, wanted) : untouched;
        double given = jug(wantedStock, stockDensity);
        double water = tank.recharge(full, given, level, null, 0);
        return new Given(
                new Charge(0, pail, given, level(Math.max(0, water)), level(bailed + Math.max(0, -water)), level),
                wantedStock);
    }

    /** Whether the fibre in the vat is enough for so many sheets, less what passes the sieve with the water. */
    private static boolean lasts(RunningVat tank, Dip dip, int sheets) {
        double thickness = dip.vat.consistency();
        double passes = (1 - dip.law.retention()) * thickness * Math.max(0, tank.standing() - dip.least);
        return tank.fibreStanding() - sheets * dip.sheet - passes >= thickness * dip.least;
    }

    /** There is fibre enough in the vat for the rest: water is strained out until it is as thick as it has to be. */
    private Given runDown(RunningVat tank, Dip dip, int count) {
        double thickness = dip.vat.consistency();
        double target = tank.fibreStanding() / thickness;
        // The first of the next sheets has to be above the mean again, by what the vat falls at that level.
        for (int i = 0; i < ROUNDS; i++) {
            VatLaw low = new VatLaw(Math.max(dip.least, target), dip.law.retention(), dip.law.lifted());
            target = tank.fibreStanding() / (thickness * low.firstOverMean(count));
        }
        double out = level(Math.max(0, tank.standing() - Math.max(dip.least, target)));
        tank.strain(out, null, 0);
        return new Given(new Charge(out, 0, 0, 0, 0, false), 0);
    }

    private double jug(double mass, double stockDensity) {
        return Rounding.roundTo(mass / stockDensity, workshop.jug) * stockDensity;
    }

    private static final Step NO_STEP = new Step(0, false, 0, 0);

    /** States about how much water brings the level to the mark; the mark itself is the setting. */
    private double level(double water) {
        return Rounding.roundTo(water, Math.max(workshop.jug, WATER_STEP) * workshop.waterDensity);
    }

    /** Where sheets are not dipped each is poured by itself; what the wire does not hold runs away. */
    private Setting poured(
            FormingSheets.Setting piece, Dip dip, PreparingStock.Kept kept, double stockDensity, double c) {
        double wanted = piece.fibre() / kept.fibre() / c;
        double pour = Math.max(workshop.jug, Rounding.roundTo(wanted / stockDensity, workshop.jug)) * stockDensity;
        return new Setting(
                false,
                dip.vat,
                0,
                dip.dips,
                dip.standing,
                0,
                dip.tooWide,
                dip.leastVatVolume,
                pour,
                dip.wanted,
                wanted,
                dip.every,
                Charge.NONE,
                new Charge[0],
                NO_STEP);
    }

    /** Works out what would help where a step of the scale or the jug moves the weight. */
    private Setting steps(Setting set, double shift, double stockDensity, double c) {
        boolean ofJug = !set.dipped || Math.abs(set.lift / set.wantedLift - 1) < Math.abs(shift) / 2;
        // A vat that is rich enough from the piece before takes no stock; what moved its weight is the filling.
        double most =
                set.wantedStock > 0 ? set.wantedStock : workshop.vatVolume * stockDensity * set.vat.consistency() / c;
        double measured = ofJug ? most / stockDensity : set.wantedLift;
        double step = ofJug ? workshop.jug : liftStep(measured);
        Step steps = new Step(
                shift,
                ofJug,
                Rounding.niceBelow(2 * FINE * measured),
                (ofJug ? c : set.vat.consistency()) * measured / (Rounding.ceil(measured / step) * step));
        return set.with(steps);
    }

    // ------------------------------------------------------------------------------------------------ what comes of it

    private static int[] byTurn(Setting[] settings) {
        int[] dipped = new int[settings.length];
        Arrays.fill(dipped, -1);
        for (int p = 0; p < settings.length; p++) {
            if (settings[p].dipped) {
                dipped[settings[p].turn] = p;
            }
        }
        int[] places = new int[settings.length];
        int next = 0;
        for (int p : dipped) {
            if (p >= 0) {
                places[next++] = p;
            }
        }
        // What is poured takes nothing from the vat, so it does not matter when.
        for (int p = 0; p < settings.length; p++) {
            if (!settings[p].dipped) {
                places[next++] = p;
            }
        }
        return places;
    }

    /** Works the vat through, or pours, sheet by sheet. */
    Run run(
            Space space,
            Setting[] settings,
            double stockMade,
            PreparingStock.Made made,
            PreparingStock.Kept kept,
            double couched,
            Values v,
            @Nullable Accounts accounts,
            int batch) {
        RunningVat tank = new RunningVat(kept, made.consistency(), made.inStock(), workshop.isStrained);
        Sheets[] all = new Sheets[settings.length];
        for (int p : byTurn(settings)) {
            Setting set = settings[p];
            double[] sheets = space.sheets[p];
            double[][] carried = space.carried[p];
            if (set.dipped) {
                form(tank, set, couched, sheets, carried, sheets.length, v, accounts, batch);
            } else {
                tank.pour(set.lift, couched, sheets, carried, accounts, batch);
            }
            all[p] = Sheets.of(sheets, carried, space.whole);
        }
        double left = stockMade * made.handled() - tank.used();
        // What is weighed for exactly what is used leaves nothing, neither a rounding error of it nor what was let pass
        // when it was rounded up to the scale.
        if (left < 1e-12 * tank.used() && left > -Rounding.GUARD * tank.used()) {
            left = 0;
        }
        return new Run(all, tank, left);
    }

    /** Forms so many sheets of a piece, with what is given to the vat before and between them. */
    private void form(
            RunningVat tank,
            Setting set,
            double couched,
            double[] sheets,
            double[][] carried,
            int count,
            Values v,
            @Nullable Accounts accounts,
            int batch) {
        double full = full(set.vat.consistency(), v);
        double lifted = set.dips * set.lift * v.of(lift);
        if (set.letDown > 0) {
            tank.letDown(full, set.letDown, accounts, batch);
        }
        for (int e = 0; e <= set.recharges.length; e++) {
            int from = e * set.every;
            // What would be given after the last of them is not given yet.
            if (e > 0 && from >= count) {
                return;
            }
            Charge charge = e == 0 ? set.start : set.recharges[e - 1];
            tank.strain(charge.strained, accounts, batch);
            tank.fromPail(full, charge.pail, accounts, batch);
            tank.recharge(full, charge.stock, charge.level, accounts, batch);
            // After the last charge the rest is formed without another.
            int here = e < set.recharges.length ? Math.min(set.every, count - from) : count - from;
            tank.pull(here, lifted, couched, sheets, carried, from);
        }
    }

    // ------------------------------------------------------------------------------------------------ in mid-run

    /**
     * A run in the middle of a piece.
     *
     * @param vat what is in the vat
     * @param last oven-dry mass of the last sheet, kg; not a number before the first
     */
    public record Midway(VatStanding vat, double last) {}

    /** The vat as the settings have it after so many sheets of a piece that is dipped. */
    Midway midway(
            FormingSheets.Setting[] pieces,
            Setting[] settings,
            PreparingStock.Made made,
            PreparingStock.Kept kept,
            double couched,
            Values v,
            int piece,
            int count) {
        RunningVat tank = new RunningVat(kept, made.consistency(), made.inStock(), workshop.isStrained);
        Space space = space(pieces);
        for (int p : byTurn(settings)) {
            double[] sheets = space.sheets[p];
            double[][] carried = space.carried[p];
            int until = p == piece ? count : sheets.length;
            form(tank, settings[p], couched, sheets, carried, until, v, null, 0);
            if (p == piece) {
                return new Midway(tank.now(), count == 0 ? Double.NaN : solids(sheets, carried, count - 1));
            }
        }
        throw new IllegalArgumentException("piece " + piece);
    }

    /** The vat and the last sheet after so many more sheets, with what the setting gives before and between them. */
    Midway formed(
            Setting set,
            VatStanding now,
            PreparingStock.Made made,
            PreparingStock.Kept kept,
            double couched,
            Values v,
            int count) {
        RunningVat tank = new RunningVat(kept, made.consistency(), made.inStock(), workshop.isStrained, now);
        double[] sheets = new double[count];
        double[][] carried = new double[now.additives().length][count];
        form(tank, set, couched, sheets, carried, count, v, null, 0);
        return new Midway(tank.now(), solids(sheets, carried, count - 1));
    }

    private static double solids(double[] sheets, double[][] carried, int sheet) {
        double solids = sheets[sheet];
        for (double[] additive : carried) {
            solids += additive[sheet];
        }
        return solids;
    }

    /**
     * The rest of a piece.
     *
     * @param setting what is given now and between the sheets
     * @param sheets oven-dry mass of each of them, kg
     * @param vat the vat after the last
     */
    public record Rest(Setting setting, double[] sheets, VatStanding vat) {}

    /**
     * Decides how the rest of a piece is formed from a vat as it stands, with what the jug and the mark allow, and forms it.
     *
     * @param piece the sheets still to form, their fibre and mould
     * @param vat how thick it is wanted
     * @param last whether nothing is formed from this vat after them
     * @param now the vat as it stands
     * @param made the stock as it is
     */
    Rest goOn(
            FormingSheets forming,
            FormingSheets.Setting piece,
            VatConsistency.Chosen vat,
            boolean last,
            VatStanding now,
            PreparingStock.Made made,
            PreparingStock.Kept kept,
            PreparingStock.State state,
            double stockDensity,
            Values v) {
        double standing = forming.standing(piece, vat.consistency(), state, kept, v);
        Dip dip = dip(piece, vat, standing, 0, last, kept, stockDensity, v);
        double couched = state.couchedSolids();
        double[] sheets = new double[piece.sheets()];
        double[][] carried = new double[now.additives().length][sheets.length];
        if (!dip.possible) {
            return new Rest(poured(piece, dip, kept, stockDensity, made.consistency()), sheets, now);
        }
        requireDrier(vat.consistency(), kept, couched);
        RunningVat deciding = new RunningVat(kept, made.consistency(), made.inStock(), workshop.isStrained, now);
        Setting set = dipped(dip, Double.POSITIVE_INFINITY, stockDensity, couched, deciding, sheets, carried);
        RunningVat tank = new RunningVat(kept, made.consistency(), made.inStock(), workshop.isStrained, now);
        form(tank, set, couched, sheets, carried, sheets.length, v, null, 0);
        double[] solids = new double[sheets.length];
        Arrays.setAll(solids, i -> solids(sheets, carried, i));
        return new Rest(set, solids, tank.now());
    }

    // ------------------------------------------------------------------------------------------------ told

    /** What is left of the stock at the end, and where fibre went. */
    static void forecast(int batch, Run run, Figures out) {
        out.set(STOCK_LEFT, batch, run.stockLeft);
        out.set(VAT_FIBRE, batch, run.tank.fibre());
        out.set(WHITE_WATER, batch, run.tank.white());
    }

    /** What the sheets of a piece are by themselves. */
    static void forecast(Passage on) {
        Sheets run = on.run;
        on.load = run.solids / run.fibre - 1;
        on.particles = on.kept.load() > 0 ? on.load * on.kept.particleLoad() / on.kept.load() : 0;
        on.set(LOAD, on.load);
        on.set(LIGHTEST, run.lightest / run.solids);
        on.set(HEAVIEST, run.heaviest / run.solids);
    }
}
