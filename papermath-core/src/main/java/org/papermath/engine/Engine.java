package org.papermath.engine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.papermath.equation.DrainageLaw;
import org.papermath.fibre.Fibre;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.quantity.Amount;

/**
 * The work on an order from weighed fibre to finished card. An order is read once, when every stage looks up what it
 * needs; then settings are decided from values of the assumptions, and figures forecast from settings and values, as
 * often as is wished. Pure functions: no text, no amounts.
 */
public final class Engine {
    /** How often settings are chosen again for the loads they come to. */
    private static final int MOST_PASSES = 4;

    /** Loads that gain the same within this do not change a sheet that one could weigh. */
    private static final double SAME_GAIN = 1e-3;

    private final Known known;
    private final Workshop workshop;
    private final PreparingStock[] stocks;
    private final FillingVat[] vats;
    private final PieceWork[] pieces;
    /** The pieces of each batch, in the order they are formed in. */
    private final int[][] ofBatch;

    /** Batches of one stuff, in the order they stand in; most are alone. */
    private final int[][] beatenTogether;

    private final Map<Fibre, Amount<Mass>> onHand;

    private final Values likely;

    private Engine(Order order, Studio studio) {
        known = new Known(studio.assumptions());
        workshop = new Workshop(order, studio);
        List<Recipe> recipes = usedRecipes(order);
        int n = recipes.size();
        stocks = new PreparingStock[n];
        vats = new FillingVat[n];
        SizingSheets[] sizings = new SizingSheets[n];
        for (int b = 0; b < n; b++) {
            stocks[b] = new PreparingStock(known, studio, workshop, recipes.get(b));
            vats[b] = new FillingVat(known, workshop, stocks[b], order.isAsListed());
            sizings[b] = new SizingSheets(known, workshop, recipes.get(b));
        }
        Posts posts = new Posts(known, workshop, studio);
        CoverDrainage cover = new CoverDrainage(known, workshop);
        List<Piece> ordered = order.pieces();
        pieces = new PieceWork[ordered.size()];
        for (boolean envelopes : new boolean[] {false, true}) {
            for (int p = 0; p < pieces.length; p++) {
                Piece piece = ordered.get(p);
                if (piece.envelopeFor().isPresent() == envelopes) {
                    int batch = IntStream.range(0, n)
                            .filter(b -> recipes.get(b).name().equals(piece.recipe()))
                            .findFirst()
                            .orElseThrow();
                    pieces[p] = new PieceWork(
                            known,
                            workshop,
                            studio,
                            stocks[batch],
                            posts,
                            cover,
                            sizings[batch],
                            piece,
                            recipes.get(batch),
                            p,
                            batch,
                            held(piece, ordered));
                }
            }
        }
        ofBatch = new int[n][];
        for (int b = 0; b < n; b++) {
            int batch = b;
            ofBatch[b] = IntStream.range(0, pieces.length)
                    .filter(p -> pieces[p].batch() == batch)
                    .toArray();
        }
        beatenTogether = beatenTogether(recipes);
        onHand = studio.onHand();
        likely = known.likely();
    }

    private static int[][] beatenTogether(List<Recipe> recipes) {
        List<int[]> together = new ArrayList<>();
        boolean[] done = new boolean[recipes.size()];
        for (int b = 0; b < done.length; b++) {
            if (!done[b]) {
                Optional<String> stuff = recipes.get(b).stuff();
                int first = b;
                int[] same = IntStream.range(b, done.length)
                        .filter(other -> other == first
                                || (stuff.isPresent()
                                        && recipes.get(other).stuff().equals(stuff)))
                        .toArray();
                for (int other : same) {
                    done[other] = true;
                }
                together.add(same);
            }
        }
        return together.toArray(int[][]::new);
    }

    /** The batches that are beaten together with one, itself among them. */
    public int[] beatenWith(int batch) {
        return Arrays.stream(beatenTogether)
                .filter(together -> Arrays.stream(together).anyMatch(b -> b == batch))
                .findFirst()
                .orElseThrow()
                .clone();
    }

    /** What goes into an envelope; it has been read before. */
    private @Nullable PieceWork held(Piece piece, List<Piece> ordered) {
        return piece.envelopeFor()
                .map(inside -> pieces[
                        IntStream.range(0, pieces.length)
                                .filter(i -> ordered.get(i).name().equals(inside))
                                .findFirst()
                                .orElseThrow()])
                .orElse(null);
    }

    /** Reads an order and a studio; refused where the order cannot be made at all. */
    public static Engine of(Order order, Studio studio) {
        return new Engine(order, studio);
    }

    /** The recipes that a piece is made from, in the order they stand in. */
    public static List<Recipe> usedRecipes(Order order) {
        return order.recipes().stream()
                .filter(recipe ->
                        order.pieces().stream().anyMatch(piece -> piece.recipe().equals(recipe.name())))
                .toList();
    }

    /** Every assumption a stage asked for. */
    public Known known() {
        return known;
    }

    /** The likely values. */
    public Values likely() {
        return likely;
    }

    /** What a band varies. */
    public List<Known.Varied> varied() {
        return known.varied();
    }

    /** What draws vary. */
    public List<Known.Drawn> drawn() {
        return known.drawn();
    }

    /** The studio in plain numbers. */
    public Workshop workshop() {
        return workshop;
    }

    /** The number of batches. */
    public int batches() {
        return stocks.length;
    }

    /** The stock of a batch. */
    public PreparingStock stock(int batch) {
        return stocks[batch];
    }

    /** The vat of a batch. */
    public FillingVat vat(int batch) {
        return vats[batch];
    }

    /** The work on a piece. */
    public PieceWork piece(int piece) {
        return pieces[piece];
    }

    /** The number of pieces. */
    public int pieces() {
        return pieces.length;
    }

    // ------------------------------------------------------------------------------------------------ what to do

    /** Chooses the settings. Envelopes come after what goes into them, the furnish after all the sheets it is for. */
    public Settings decide(Values v) {
        double[][] gains = new double[stocks.length][];
        int[][] loads = new int[stocks.length][];
        for (int b = 0; b < stocks.length; b++) {
            stocks[b].require(v);
            gains[b] = new double[stocks[b].runs()];
            loads[b] = new int[stocks[b].runs()];
            Arrays.fill(gains[b], 1);
        }
        Settings settings = decide(v, gains, loads);
        // Smaller loads are beaten further, which changes what the sheets take a little, and that the loads.
        for (int pass = 1; pass < MOST_PASSES; pass++) {
            boolean changed = false;
            for (int b = 0; b < stocks.length; b++) {
                for (int run = 0; run < gains[b].length; run++) {
                    double gain = stocks[b].gain(settings.stock(b), run);
                    changed |= Math.abs(gain - gains[b][run]) > SAME_GAIN * gain;
                    gains[b][run] = gain;
                    // Never fewer than before, or two numbers of loads might take turns.
                    loads[b][run] = settings.stock(b).runs().get(run).loads();
                }
            }
            if (!changed) {
                break;
            }
            settings = decide(v, gains, loads);
        }
        return settings;
    }

    private Settings decide(Values v, double[][] gains, int[][] leastLoads) {
        Settings settings = new Settings(stocks.length, pieces.length);
        PreparingStock.State[] states = new PreparingStock.State[stocks.length];
        PreparingStock.Kept[] kepts = new PreparingStock.Kept[stocks.length];
        for (int b = 0; b < stocks.length; b++) {
            states[b] = stocks[b].state(v, gains[b]);
            kepts[b] = stocks[b].kept(v);
        }
        for (PieceWork piece : pieces) {
            if (!piece.isEnvelope()) {
                piece.decide(settings, states, kepts, v);
            }
        }
        for (PieceWork piece : pieces) {
            if (piece.isEnvelope()) {
                piece.decide(settings, states, kepts, v);
            }
        }
        requireFew(settings);
        double[] used = new double[stocks.length];
        for (int b = 0; b < stocks.length; b++) {
            FillingVat.Setting[] formed = new FillingVat.Setting[ofBatch[b].length];
            used[b] = vats[b].decide(
                    forming(b), sheets(settings, b), kepts[b], states[b], stocks[b].stockDensity(v), v, formed);
            for (int i = 0; i < formed.length; i++) {
                settings.set(ofBatch[b][i], formed[i]);
            }
        }
        beat(settings, v, used, leastLoads);
        for (PieceWork piece : pieces) {
            piece.decideHandling(settings, states[piece.batch()], v);
        }
        return settings;
    }

    /** What is beaten for each batch, or for several at once. */
    private void beat(Settings settings, Values v, double[] used, int[][] leastLoads) {
        Shelf shelf = new Shelf(onHand);
        for (int[] together : beatenTogether) {
            double ovenDry = 0;
            for (int b : together) {
                ovenDry += stocks[b].toBeat(v, used[b]);
            }
            int[] least = leastLoads[together[0]].clone();
            for (int b : together) {
                for (int run = 0; run < least.length; run++) {
                    least[run] = Math.max(least[run], leastLoads[b][run]);
                }
            }
            PreparingStock.Beaten beaten = stocks[together[0]].beat(v, ovenDry, least, shelf);
            for (int b : together) {
                settings.set(b, stocks[b].decide(v, used[b], stocks[b].stockDensity(v), beaten, together.length == 1));
            }
        }
    }

    private void requireFew(Settings settings) {
        double all = 0;
        for (PieceWork piece : pieces) {
            all += settings.sheet(piece.index()).sheets();
            Few.sheets(all, piece.name());
        }
    }

    private FormingSheets.Setting[] sheets(Settings settings, int batch) {
        FormingSheets.Setting[] sheets = new FormingSheets.Setting[ofBatch[batch].length];
        for (int i = 0; i < sheets.length; i++) {
            sheets[i] = settings.sheet(ofBatch[batch][i]);
        }
        return sheets;
    }

    private FormingSheets[] forming(int batch) {
        return Arrays.stream(ofBatch[batch]).mapToObj(p -> pieces[p].forming()).toArray(FormingSheets[]::new);
    }

    private FillingVat.Setting[] formed(Settings settings, int batch) {
        FillingVat.Setting[] formed = new FillingVat.Setting[ofBatch[batch].length];
        for (int i = 0; i < formed.length; i++) {
            formed[i] = settings.vat(ofBatch[batch][i]);
        }
        return formed;
    }

    // ------------------------------------------------------------------------------------------------ what comes of it

    /**
     * From which share of its squared band on the forecast at a place is taken not to be smooth: that of its figure, or 0
     * where a limit lies so near that several assumptions may pass it together and none by itself.
     *
     * @param forecast the forecasts at the likely values
     */
    public double bend(Settings settings, Figures forecast, int place) {
        Figure figure = forecast.figure(place);
        if (figure == null) {
            return StageFigures.NEVER;
        }
        int piece = forecast.pieceAt(place);
        int batch = piece < 0 ? forecast.batchAt(place) : pieces[piece].batch();
        boolean isNear = stocks[batch].isNearLimit(figure, forecast.of(PreparingStock.DRAINABILITY, batch), likely)
                || (piece >= 0 && pieces[piece].maySlip(settings, figure));
        return isNear ? StageFigures.ALWAYS : figure.bend();
    }

    /** The forecasts that follow from one other alone, for the places in some figures of this job. */
    public List<Follows> follows(Settings settings, Figures places) {
        return Arrays.stream(pieces)
                .flatMap(piece -> piece.follows(settings, places).stream())
                .toList();
    }

    /** Forecasts what comes out of the settings at these values. */
    public Figures forecast(Settings settings, Values v) {
        Figures out = new Figures(stocks.length, pieces.length);
        forecast(settings, v, out, null);
        return out;
    }

    /** The same, and keeps the accounts. */
    public Figures forecast(Settings settings, Values v, Accounts accounts) {
        Figures out = new Figures(stocks.length, pieces.length);
        forecast(settings, v, out, accounts);
        return out;
    }

    /** New accounts for a forecast. */
    public Accounts accounts() {
        return new Accounts(stocks);
    }

    /** New figures for a forecast. */
    public Figures figures() {
        return new Figures(stocks.length, pieces.length);
    }

    void forecast(Settings settings, Values v, Figures out, @Nullable Accounts accounts) {
        for (int b = 0; b < stocks.length; b++) {
            forecastBatch(b, settings, v, out, accounts);
        }
        sum(settings, out);
    }

    private void forecastBatch(int b, Settings settings, Values v, Figures out, @Nullable Accounts accounts) {
        PreparingStock.State state = stateOf(b, settings, v);
        PreparingStock.forecast(b, state, out);
        FillingVat.Run run = run(b, settings, space(settings, b), state, v, out, accounts);
        PreparingStock.Kept kept = stocks[b].kept(v);
        for (int i = 0; i < ofBatch[b].length; i++) {
            PieceWork piece = pieces[ofBatch[b][i]];
            piece.forecast(
                    new Passage(settings, piece.index(), state, kept, run.pieces()[i], piece.dryingRate(v), v, out),
                    accounts);
        }
        hours(b, settings, v, out);
        if (accounts != null) {
            accounts.close(b, run.tank(), run.stockLeft(), stocks[b].made(settings.stock(b), v));
        }
    }

    private PreparingStock.State stateOf(int b, Settings settings, Values v) {
        return stocks[b].state(v, stocks[b].gains(settings.stock(b)));
    }

    private FillingVat.Space space(Settings settings, int b) {
        return vats[b].space(sheets(settings, b));
    }

    private FillingVat.Run run(
            int b,
            Settings settings,
            FillingVat.Space space,
            PreparingStock.State state,
            Values v,
            Figures out,
            @Nullable Accounts accounts) {
        PreparingStock.Setting set = settings.stock(b);
        PreparingStock.Made made = stocks[b].made(set, v);
        if (accounts != null) {
            accounts.open(b, made);
        }
        FillingVat.Run run = vats[b].run(
                space,
                formed(settings, b),
                made.stock(),
                made,
                stocks[b].kept(v),
                state.couchedSolids(),
                v,
                accounts,
                b);
        PreparingStock.forecast(b, set, made, out);
        FillingVat.forecast(b, run, out);
        return run;
    }

    /** The vat as the settings have it after so many sheets of a piece. */
    public FillingVat.Midway midway(Settings settings, int piece, int sheets) {
        int b = pieces[piece].batch();
        PreparingStock.State state = stateOf(b, settings, likely);
        return vats[b].midway(
                sheets(settings, b),
                formed(settings, b),
                stocks[b].made(settings.stock(b), likely),
                stocks[b].kept(likely),
                state.couchedSolids(),
                likely,
                placeInBatch(piece),
                sheets);
    }

    /**
     * The vat after so many more sheets of a piece.
     *
     * @param set the lift, and what is given before and between them
     * @param stock how thick the stock is, over what it was made to be
     */
    public FillingVat.Midway formed(
            Settings settings, int piece, FillingVat.Setting set, VatStanding now, double stock, int sheets) {
        int b = pieces[piece].batch();
        return vats[b].formed(
                set,
                now,
                stocks[b].made(settings.stock(b), likely).thicker(stock),
                stocks[b].kept(likely),
                stateOf(b, settings, likely).couchedSolids(),
                likely,
                sheets);
    }

    /**
     * The rest of a piece from a vat as it stands.
     *
     * @param form the sheets still to form
     * @param vat how thick the vat is wanted, fibre over stock
     * @param stock how thick the stock is, over what it was made to be
     */
    public FillingVat.Rest goOn(
            Settings settings, int piece, FormingSheets.Setting form, double vat, VatStanding now, double stock) {
        int b = pieces[piece].batch();
        PreparingStock.Made made = stocks[b].made(settings.stock(b), likely);
        boolean last = Arrays.stream(formed(settings, b))
                .noneMatch(other ->
                        other.dipped() && other.turn() > settings.vat(piece).turn());
        return vats[b].goOn(
                forming(b)[placeInBatch(piece)],
                form,
                new VatConsistency.Chosen(vat, settings.vat(piece).vat().why()),
                last,
                now,
                made.thicker(stock),
                stocks[b].kept(likely),
                stateOf(b, settings, likely),
                settings.stock(b).stockDensity(),
                likely);
    }

    /** The stock that reaches the vat in all, kg. */
    public double stockMade(Settings settings, int batch) {
        PreparingStock.Made made = stocks[batch].made(settings.stock(batch), likely);
        return made.stock() * made.handled();
    }

    /** Solids of a sheet as it leaves the vat. */
    public double couchedSolids(Settings settings, int batch) {
        return stateOf(batch, settings, likely).couchedSolids();
    }

    /** What the vat holds at its mark for a piece, kg; the consistency of the stock as made. */
    public double fullVat(Settings settings, int piece) {
        return vats[pieces[piece].batch()].full(settings.vat(piece).vat().consistency(), likely);
    }

    /** How the sheets of a piece drain. */
    public DrainageLaw drainageLaw(int piece) {
        return forming(pieces[piece].batch())[placeInBatch(piece)].drainage(likely);
    }

    private int placeInBatch(int piece) {
        int[] of = ofBatch[pieces[piece].batch()];
        for (int i = 0; i < of.length; i++) {
            if (of[i] == piece) {
                return i;
            }
        }
        throw new IllegalStateException("piece " + piece + " is in no batch");
    }

    private void hours(int b, Settings settings, Values v, Figures out) {
        stocks[b].forecastHours(b, settings.stock(b), vats[b].charging(formed(settings, b), v), v, out);
    }

    /** Oven-dry solids of a sheet of a piece, the mean of all, kg. */
    public double sheetSolids(int piece, Settings settings, Values v) {
        int b = pieces[piece].batch();
        FillingVat.Run run = run(b, settings, space(settings, b), stateOf(b, settings, v), v, figures(), null);
        return run
                .pieces()[
                IntStream.range(0, ofBatch[b].length)
                        .filter(i -> ofBatch[b][i] == piece)
                        .findFirst()
                        .orElseThrow()]
                .solids();
    }

    /** What needs more than one piece: pairs, and the hours of the whole. */
    private void sum(Settings settings, Figures out) {
        double hours = 0;
        for (int b = 0; b < stocks.length; b++) {
            hours += out.of(PreparingStock.HOURS, b);
        }
        for (PieceWork piece : pieces) {
            piece.together(settings, out);
            hours += out.of(PieceWork.HOURS, piece.index());
        }
        out.setHours(hours);
    }

    /** Makes forecasts at values that differ in few assumptions, doing again only what these can move. */
    public Shifts shifts(Settings settings) {
        return new Shifts(settings);
    }

    /**
     * Forecasts at the likely values with some of them changed. What a part of the work reads is marked once, at the
     * likely values; what a part read decides what it does, so a part none of whose readings changed comes out the
     * same, to the bit.
     */
    public final class Shifts {
        private final Settings settings;
        private final Figures base;
        private final PreparingStock.State[] states = new PreparingStock.State[stocks.length];
        private final PreparingStock.Kept[] kepts = new PreparingStock.Kept[stocks.length];
        private final FillingVat.Run[] runs = new FillingVat.Run[stocks.length];
        private final boolean[][] stateReads = new boolean[stocks.length][likely.size()];
        private final boolean[][] runReads = new boolean[stocks.length][likely.size()];
        private final boolean[][] hourReads = new boolean[stocks.length][likely.size()];
        private final boolean[][] rateReads = new boolean[pieces.length][likely.size()];
        private final Passage[] passages = new Passage[pieces.length];
        /** The first part of the way of each piece that reads an assumption. */
        private final int[][] firstReads = new int[pieces.length][likely.size()];

        private Shifts(Settings settings) {
            this.settings = settings;
            base = figures();
            for (int b = 0; b < stocks.length; b++) {
                states[b] = stateOf(b, settings, likely.marking(stateReads[b]));
                PreparingStock.forecast(b, states[b], base);
                Values marking = likely.marking(runReads[b]);
                kepts[b] = stocks[b].kept(marking);
                runs[b] = run(b, settings, space(settings, b), states[b], marking, base, null);
                for (int i = 0; i < ofBatch[b].length; i++) {
                    int p = ofBatch[b][i];
                    double rate = pieces[p].dryingRate(likely.marking(rateReads[p]));
                    Passage on = new Passage(settings, p, states[b], kepts[b], runs[b].pieces()[i], rate, likely, base);
                    passages[p] = on;
                    Arrays.fill(firstReads[p], PieceWork.PARTS);
                    for (int part = 0; part < PieceWork.PARTS; part++) {
                        boolean[] reads = new boolean[likely.size()];
                        on.v = likely.marking(reads);
                        pieces[p].forecast(part, on);
                        for (int slot = 0; slot < reads.length; slot++) {
                            if (reads[slot]) {
                                firstReads[p][slot] = Math.min(firstReads[p][slot], part);
                            }
                        }
                    }
                }
                hours(b, settings, likely.marking(hourReads[b]), base);
            }
            sum(settings, base);
        }

        /** The figures at the likely values. */
        public Figures base() {
            return base;
        }

        /** Fills in the figures with some assumptions at other values; any number of threads may. */
        public void at(Slot[] slots, double[] changed, Figures out) {
            new InTurn(out).at(slots, changed);
        }

        /** Many forecasts, one after the other, that share the space they are worked out in; for one thread. */
        public final class InTurn {
            private final Figures out;
            private final FillingVat.Space[] spaces = new FillingVat.Space[stocks.length];
            private final Passage[] ways = new Passage[pieces.length];
            /** The likely values but while figures are filled in. */
            private final Values shifted = likely.copy();

            /** Forecasts that are all put down in the same figures. */
            public InTurn(Figures out) {
                this.out = out;
                for (int p = 0; p < ways.length; p++) {
                    Passage way = passages[p];
                    ways[p] = new Passage(settings, p, way.state, way.kept, way.run, way.dryingRate, likely, out);
                }
            }

            /** Fills in the figures with some assumptions at other values; says whether any part was done again. */
            public boolean at(Slot[] slots, double[] changed) {
                try {
                    return at(slots, shifted.shift(slots, changed));
                } finally {
                    shifted.back(slots, likely);
                }
            }

            private boolean at(Slot[] slots, Values v) {
                out.copyFrom(base);
                boolean any = false;
                for (int b = 0; b < stocks.length; b++) {
                    boolean moved = isRead(stateReads[b], slots);
                    boolean runMoved = isRead(runReads[b], slots);
                    PreparingStock.State state = states[b];
                    if (moved) {
                        state = stateOf(b, settings, v);
                        PreparingStock.forecast(b, state, out);
                        // Of what the stuff is the vat reads only how wet it is couched.
                        runMoved |= Double.compare(state.couchedSolids(), states[b].couchedSolids()) != 0;
                    }
                    PreparingStock.Kept kept = kepts[b];
                    FillingVat.Run run = runs[b];
                    if (runMoved) {
                        moved = true;
                        kept = stocks[b].kept(v);
                        if (spaces[b] == null) {
                            spaces[b] = space(settings, b);
                        }
                        run = run(b, settings, spaces[b], state, v, out, null);
                    }
                    for (int i = 0; i < ofBatch[b].length; i++) {
                        int p = ofBatch[b][i];
                        boolean rateMoved = isRead(rateReads[p], slots);
                        int part = moved ? 0 : rateMoved ? PieceWork.DRIED : PieceWork.PARTS;
                        for (Slot slot : slots) {
                            part = Math.min(part, firstReads[p][slot.at]);
                        }
                        if (part < PieceWork.PARTS) {
                            double rate = rateMoved ? pieces[p].dryingRate(v) : passages[p].dryingRate;
                            ways[p].again(passages[p], state, kept, run.pieces()[i], rate, v);
                            for (; part < PieceWork.PARTS; part++) {
                                pieces[p].forecast(part, ways[p]);
                            }
                            any = true;
                        }
                    }
                    if (isRead(hourReads[b], slots)) {
                        hours(b, settings, v, out);
                        any = true;
                    }
                    any |= moved;
                }
                if (any) {
                    sum(settings, out);
                }
                return any;
            }
        }

        private static boolean isRead(boolean[] reads, Slot[] slots) {
            for (Slot slot : slots) {
                if (reads[slot.at]) {
                    return true;
                }
            }
            return false;
        }
    }
}
