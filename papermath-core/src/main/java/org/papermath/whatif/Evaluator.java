package org.papermath.whatif;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.papermath.engine.Engine;
import org.papermath.engine.Figures;
import org.papermath.engine.Settings;
import org.papermath.engine.Slot;
import org.papermath.engine.Values;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Press;
import org.papermath.pulp.Beater;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;
import org.papermath.uncertainty.FigureBands;
import org.papermath.uncertainty.FirstOrderBands;
import org.papermath.uncertainty.MonteCarloBands;

/**
 * Works out outcomes of a job with its inputs at some values. Assumptions that enter by their slot alone are moved there;
 * everything else makes a job of its own. Immutable; asked on several threads.
 */
final class Evaluator {
    private final Job job;
    private final List<Input<?>> inputs;
    private final List<Outcome<?>> outcomes;
    private final boolean bands;
    /** The settings that are held fixed; null where they are decided anew. */
    private final @Nullable Settings held;
    /** What the held settings belong to. */
    private final List<Object> shape;
    /** Whether an input is an assumption that may be moved in its slot. */
    private final boolean[] moved;

    private static final boolean[] CLOSED = {};

    /** The values of one point. */
    static final class Point {
        final double[] likely;
        final double[] low;
        final double[] high;
        final boolean[] openBelow;
        final boolean[] openAbove;

        @Nullable
        PapermathException reason;

        /** A point without bands has its likely values for their ends. */
        Point(int n, boolean bands) {
            likely = new double[n];
            low = bands ? new double[n] : likely;
            high = bands ? new double[n] : likely;
            openBelow = bands ? new boolean[n] : CLOSED;
            openAbove = bands ? new boolean[n] : CLOSED;
        }

        static Point unknown(int n, PapermathException reason) {
            Point point = new Point(n, false);
            Arrays.fill(point.likely, Double.NaN);
            point.reason = reason;
            return point;
        }

        boolean isOpenBelow(int at) {
            return openBelow.length > 0 && openBelow[at];
        }

        boolean isOpenAbove(int at) {
            return openAbove.length > 0 && openAbove[at];
        }
    }

    /** A job as it was read once, to be worked out for many values of the inputs that have slots. */
    private final class Read {
        private final Engine engine;
        private final Slot[] slots;
        private final Assumption[] rows;
        private final Assumptions store;
        private final Names read;
        private final Engine.@Nullable Shifts shifts;

        Read(Engine engine, Job read, Slot[] slots, Assumption[] rows) {
            this.engine = engine;
            this.slots = slots;
            this.rows = rows;
            store = read.studio().assumptions();
            this.read = names(read.order());
            shifts = held == null ? null : engine.shifts(held);
        }

        Point at(double[] si) {
            double[] changed = new double[slots.length];
            int n = 0;
            for (int i = 0; i < si.length; i++) {
                if (moved[i]) {
                    Assumption row = rows[n];
                    double value = inputs.get(i).amount(si[i]).in(row.unit());
                    if (!(value > row.least() && value < row.most())) {
                        // Refused here where the assumption cannot have the value.
                        store.given(row.id(), row.scope(), value);
                    }
                    changed[n++] = Units.toSi(value, row.unit());
                }
            }
            if (shifts != null) {
                Figures out = engine.figures();
                shifts.at(slots, changed, out);
                return point(FigureBands.without(out), held, null, read);
            }
            Values values = engine.likely().with(slots, changed);
            Settings settings = engine.decide(values);
            return point(FigureBands.without(engine.forecast(settings, values)), settings, null, read);
        }
    }

    Evaluator(boolean holds, Job job, List<Input<?>> inputs, List<Outcome<?>> outcomes, boolean bands) {
        this.job = job;
        this.inputs = List.copyOf(inputs);
        this.outcomes = List.copyOf(outcomes);
        this.bands = bands;
        Engine engine = Engine.of(job.order(), job.studio());
        held = holds ? engine.decide(engine.likely()) : null;
        shape = shape(job);
        names(job.order());
        moved = new boolean[inputs.size()];
        for (int i = 0; i < moved.length; i++) {
            moved[i] = !bands && inputs.get(i).assumption() != null;
        }
    }

    /** Whether an input is moved in its slot, so that the job need not be read again for its values. */
    boolean isMoved(int input) {
        return moved[input];
    }

    /** What the batches and pieces of a job are called, and where the outcomes stand among them. */
    private record Names(List<String> recipes, List<String> pieces, int[] places) {}

    /** Refused where the job has no such piece or recipe. */
    private Names names(Order order) {
        List<String> recipes =
                Engine.usedRecipes(order).stream().map(Recipe::name).toList();
        List<String> pieces = order.pieces().stream().map(Piece::name).toList();
        int[] places = new int[outcomes.size()];
        for (int i = 0; i < places.length; i++) {
            Outcome<?> outcome = outcomes.get(i);
            List<String> names = outcome.isOfBatch() ? recipes : pieces;
            places[i] = outcome.isOfBatch() || outcome.isOfPiece() ? names.indexOf(outcome.whose()) : 0;
            if (places[i] < 0) {
                throw Refused.of(
                        "whatif.no-outcome",
                        outcome + ": the order has no " + (outcome.isOfBatch() ? "recipe" : "piece") + " \""
                                + outcome.whose() + "\" that is made; it has: " + names + ".",
                        "outcome",
                        outcome.words(),
                        "given",
                        outcome.whose());
            }
        }
        return new Names(recipes, pieces, places);
    }

    /** What has to stay the same for settings of one job to be those of another. */
    private static List<Object> shape(Job job) {
        List<Object> shape = new ArrayList<>();
        for (Piece piece : job.order().pieces()) {
            shape.add(List.of(
                    piece.name(),
                    piece.recipe(),
                    piece.envelopeFor(),
                    piece.dryer(),
                    piece.outline().isPresent()));
        }
        for (Recipe recipe : Engine.usedRecipes(job.order())) {
            shape.add(List.of(
                    recipe.name(),
                    recipe.furnish().fibres(),
                    recipe.beatingApart().keySet(),
                    recipe.additives().stream()
                            .map(one -> one.additive().name())
                            .toList(),
                    recipe.sizeBath().isPresent()));
        }
        Studio studio = job.studio();
        shape.add(studio.beater().map(Beater::name));
        shape.add(studio.vat().isPresent());
        shape.add(studio.moulds());
        shape.add(studio.stuffOnHand());
        shape.add(studio.press().map(Press::name));
        shape.add(studio.press().map(Press::pressings));
        shape.add(studio.felts().isPresent());
        shape.add(studio.dryers());
        return shape;
    }

    private void requireSame(Job changed) {
        if (held != null && !shape(changed).equals(shape)) {
            throw Refused.of(
                    "whatif.other-work",
                    "settings held fixed: the job has other pieces, recipes, additives or equipment with this input, so"
                            + " that what was set before does not fit it. Ask what would be decided anew.");
        }
    }

    /**
     * A way to work out points that have the values of all inputs but the moved ones in common; what reading the job refuses
     * is the reason of every point.
     */
    Function<double[], Point> at(double[] common) {
        Job changed = job;
        try {
            for (int i = 0; i < moved.length; i++) {
                if (!moved[i]) {
                    changed = inputs.get(i).applied(changed, common[i]);
                }
            }
            requireSame(changed);
            Read read = read(changed);
            Job whole = changed;
            return si -> {
                try {
                    return read != null ? read.at(si) : alone(whole, si);
                } catch (PapermathException reason) {
                    return Point.unknown(outcomes.size(), reason);
                }
            };
        } catch (PapermathException reason) {
            return si -> Point.unknown(outcomes.size(), reason);
        }
    }

    /** Reads a job for all values of the moved inputs; null where one of them enters otherwise than by its slot. */
    private @Nullable Read read(Job changed) {
        Job given = changed;
        List<Assumption> rows = new ArrayList<>();
        for (int i = 0; i < moved.length; i++) {
            Input.Named named = inputs.get(i).assumption();
            if (moved[i] && named != null) {
                Assumptions store = given.studio().assumptions();
                Scope scope = named.scope().apply(given);
                if (store.find(named.id(), scope).isEmpty()) {
                    return null;
                }
                given = new Job(
                        given.order(),
                        given.studio()
                                .withAssumptions(store.given(
                                        named.id(),
                                        scope,
                                        store.get(named.id(), scope).likely())));
                rows.add(given.studio().assumptions().get(named.id(), scope));
            }
        }
        if (rows.isEmpty()) {
            return null;
        }
        Engine engine = Engine.of(given.order(), given.studio());
        Slot[] slots = new Slot[rows.size()];
        for (int i = 0; i < slots.length; i++) {
            Slot slot = engine.known().onlySlot(rows.get(i));
            if (slot == null) {
                return null;
            }
            slots[i] = slot;
        }
        return new Read(engine, given, slots, rows.toArray(Assumption[]::new));
    }

    /** A point by itself: the job is made and read for it alone. */
    private Point alone(Job changed, double[] si) {
        Job whole = changed;
        for (int i = 0; i < moved.length; i++) {
            if (moved[i]) {
                whole = inputs.get(i).applied(whole, si[i]);
            }
        }
        requireSame(whole);
        Engine engine = Engine.of(whole.order(), whole.studio());
        Settings settings = held != null ? held : engine.decide(engine.likely());
        Names names = names(whole.order());
        if (!bands) {
            return point(FigureBands.without(engine.forecast(settings, engine.likely())), settings, null, names);
        }
        FigureBands found = FirstOrderBands.of(engine, settings);
        return point(found, settings, new Banded(found, engine, settings), names);
    }

    /** Bands, and those from draws where a figure is not smooth. */
    private static final class Banded {
        private final FigureBands bands;
        private final Engine engine;
        private final Settings settings;
        private @Nullable FigureBands drawn;

        Banded(FigureBands bands, Engine engine, Settings settings) {
            this.bands = bands;
            this.engine = engine;
            this.settings = settings;
        }

        FigureBands of(int at) {
            return bands.orOfDraws(at, () -> {
                FigureBands known = drawn == null ? MonteCarloBands.ofBent(engine, settings, bands) : drawn;
                drawn = known;
                return known;
            });
        }
    }

    private Point point(FigureBands found, @Nullable Settings settings, @Nullable Banded banded, Names names) {
        // What no plan would be given for is none of a table either.
        found.require(names.recipes, names.pieces);
        Figures figures = found.likely();
        int[] places = names.places;
        Point point = new Point(places.length, banded != null);
        for (int i = 0; i < places.length; i++) {
            Outcome<?> outcome = outcomes.get(i);
            int at = outcome.at(figures, places[i]);
            double value = at >= 0 ? figures.at(at) : settings == null ? Double.NaN : outcome.of(settings, places[i]);
            point.likely[i] = outcome.kind().holds(value) ? value : Double.NaN;
            point.low[i] = point.likely[i];
            point.high[i] = point.likely[i];
            if (at >= 0 && banded != null && !Double.isNaN(point.likely[i])) {
                FigureBands band = banded.of(at);
                point.low[i] = band.low(at);
                point.high[i] = band.high(at);
                point.openBelow[i] = band.isOpenBelow(at);
                point.openAbove[i] = band.isOpenAbove(at);
                if (!outcome.kind().holds(point.low[i]) || !outcome.kind().holds(point.high[i])) {
                    point.likely[i] = Double.NaN;
                }
            }
        }
        return point;
    }

    /** Refuses an input that nothing of the job asks for, or that moves no forecast while settings are held. */
    void requireTelling(int input, double from, double to) {
        Input.Named named = inputs.get(input).assumption();
        Input<?> one = inputs.get(input);
        try {
            if (named != null) {
                Job given = one.applied(job, from);
                Assumption row = given.studio()
                        .assumptions()
                        .get(named.id(), named.scope().apply(given));
                if (!Engine.of(given.order(), given.studio()).known().isAsked(row)) {
                    throw Refused.of(
                            "whatif.not-asked",
                            one + ": the plan does not ask for " + row.key()
                                    + ". Give the scope under which it is asked, as MakingPlan.assumptionsUsed() lists it.",
                            "input",
                            one.toString(),
                            "key",
                            row.key());
                }
            }
        } catch (Refused refused) {
            if (refused.code().equals("whatif.not-asked")) {
                throw refused;
            }
            return;
        }
        if (held == null || from == to) {
            return;
        }
        Figures first = figures(one, from);
        Figures last = figures(one, to);
        if (first != null && last != null) {
            for (int at = 0; at < first.size(); at++) {
                if (Double.compare(first.at(at), last.at(at)) != 0) {
                    return;
                }
            }
            throw Refused.of(
                    "whatif.moves-nothing",
                    one
                            + ": with the settings held fixed it moves no forecast, because it only enters where settings are"
                            + " chosen. Ask what would be decided anew; for a hand that dips as before in a vat of"
                            + " another consistency ask the vat itself (VatCharge).",
                    "input",
                    one.toString());
        }
    }

    private @Nullable Figures figures(Input<?> one, double value) {
        try {
            Job changed = one.applied(job, value);
            requireSame(changed);
            Engine engine = Engine.of(changed.order(), changed.studio());
            return held == null ? null : engine.forecast(held, engine.likely());
        } catch (PapermathException refused) {
            return null;
        }
    }

    /** Why an outcome of a point is not known. */
    static PapermathException reason(@Nullable PapermathException reason, Outcome<?> outcome) {
        if (reason != null) {
            return reason;
        }
        return Refused.of(
                "whatif.not-known",
                outcome + ": it cannot be told here. " + outcome.missing() + "; the plan of this job says more.",
                "outcome",
                outcome.toString());
    }
}
