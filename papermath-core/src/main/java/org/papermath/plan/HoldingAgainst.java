package org.papermath.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;
import org.papermath.engine.CuttingAndFolding;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.Engine;
import org.papermath.engine.Figures;
import org.papermath.engine.FinishedSheet;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.PieceFigure;
import org.papermath.engine.PieceWork;
import org.papermath.engine.PreparingStock;
import org.papermath.engine.Pressing;
import org.papermath.engine.Rejects;
import org.papermath.engine.Settings;
import org.papermath.engine.Slot;
import org.papermath.engine.Values;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Reading;
import org.papermath.numeric.Roots;
import org.papermath.order.Recipe;
import org.papermath.pulp.AdditiveDose;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.record.BatchRecord;
import org.papermath.record.Measurement;

/** Holds the readings of a batch against the plan of it, and puts them into its forecast one stage after the other. */
final class HoldingAgainst {
    /** How far off a value a reading is looked for: factors from 1/8 to 8. */
    private static final double REACH = Math.log(8);

    /** A stage that takes away less of a difference does not explain it. */
    private static final double LEAST_EXPLAINED = 1.0 / 3;

    /** What lies closer to the plan than this nobody calls a difference. */
    private static final double LEAST_DIFFERENCE = 0.005;

    private final BatchRecord record;
    private final Engine engine;
    private final Settings settings;
    private final Estimates numbers;
    private final BatchPlan batch;
    private final int p;
    private final int b;
    private final List<Assumption> rows;
    private final List<PlannedAndMade.FoundLine> lines = new ArrayList<>();
    private final Map<StageOfWork, Values> steps = new LinkedHashMap<>();
    private Values now;

    HoldingAgainst(BatchRecord record, Engine engine, Settings settings, Estimates numbers, BatchPlan batch, int p) {
        this.record = record;
        this.engine = engine;
        this.settings = settings;
        this.numbers = numbers;
        this.batch = batch;
        this.p = p;
        this.b = engine.piece(p).batch();
        this.rows = engine.known().rows();
        this.now = engine.likely();
    }

    // ------------------------------------------------------------------------------------------------ readings

    /** Several readings of one thing: their mean and how they scatter, in coherent SI. */
    private record Mean(double value, double scatter, int count) {
        static @Nullable Mean of(double[] values, double error) {
            if (values.length == 0) {
                return null;
            }
            double mean = DoubleStream.of(values).average().orElseThrow();
            double square = 0;
            for (double one : values) {
                square += (one - mean) * (one - mean);
            }
            return new Mean(mean, values.length > 1 ? Math.sqrt(square / (values.length - 1)) : error, values.length);
        }

        double error() {
            return scatter / Math.sqrt(count);
        }
    }

    private <M extends Measurement> @Nullable Mean mean(Class<M> sort, ToDoubleFunction<M> value, double error) {
        return Mean.of(
                record.measurements(sort).stream()
                        .mapToDouble(value)
                        .filter(Double::isFinite)
                        .toArray(),
                error);
    }

    private <M extends Measurement> @Nullable Mean readings(
            Class<M> sort, Function<M, Optional<? extends Reading<?>>> reading) {
        double[] values = record.measurements(sort).stream()
                .flatMap(one -> reading.apply(one).stream())
                .mapToDouble(one -> one.value().si())
                .toArray();
        double error = record.measurements(sort).stream()
                .flatMap(one -> reading.apply(one).stream())
                .mapToDouble(HoldingAgainst::error)
                .findFirst()
                .orElse(0);
        return Mean.of(values, error);
    }

    /** The error of a reading in coherent SI. */
    static double error(Reading<?> reading) {
        return reading.error().si();
    }

    private <Q extends Quantity<Q>> void line(
            StageOfWork stage,
            String what,
            Kind<Q> kind,
            String unit,
            double planned,
            double low,
            double high,
            Mean made) {
        if (planned > 0 && Double.isFinite(planned) && made.value > 0) {
            lines.add(new PlannedAndMade.FoundLine(
                    stage,
                    what,
                    kind.ofSi(planned, unit),
                    kind.ofSi(Double.isFinite(low) ? low : planned, unit),
                    kind.ofSi(Double.isFinite(high) ? high : planned, unit),
                    kind.ofSi(made.value, unit),
                    made.scatter,
                    made.count));
        }
    }

    private void line(StageOfWork stage, String what, PieceFigure figure, Mean made) {
        Figures likely = numbers.bands().likely();
        int at = likely.place(figure, p);
        Kind<?> kind = figure.kind();
        if (kind != null && likely.at(at) > 0 && Double.isFinite(likely.at(at))) {
            line(
                    stage,
                    what,
                    kind,
                    figure.unit(),
                    likely.at(at),
                    numbers.bands().low(at),
                    numbers.bands().high(at),
                    made);
        }
    }

    // ------------------------------------------------------------------------------------------------ handles

    private Slot[] slots(String... ids) {
        return rows.stream()
                .filter(row -> List.of(ids).contains(row.id()))
                .map(row -> engine.known().slotOf(row))
                .toArray(Slot[]::new);
    }

    /** The values with those of some assumptions so many times as large. */
    private static Values times(Values v, Slot[] slots, double factor) {
        double[] changed = new double[slots.length];
        for (int i = 0; i < slots.length; i++) {
            changed[i] = v.of(slots[i]) * factor;
        }
        return v.with(slots, changed);
    }

    /** So many times the fibre in the same water. */
    private Values fibre(Values v, double factor) {
        Slot[] slots = slots("fibre.moisture-as-bought");
        double[] changed = new double[slots.length];
        for (int i = 0; i < slots.length; i++) {
            changed[i] = 1 - (1 - v.of(slots[i])) * factor;
        }
        return v.with(slots, changed);
    }

    /** Moves the values until the forecast is what was read; leaves them where it cannot be. */
    private boolean meet(double read, DoubleFunction<Values> moved, ToDoubleFunction<Values> forecast) {
        try {
            double factor = Math.exp(Roots.between(
                    -REACH, REACH, x -> forecast.applyAsDouble(moved.apply(Math.exp(x))) / read - 1));
            now = moved.apply(factor);
            return true;
        } catch (ArithmeticException never) {
            return false;
        }
    }

    private double of(PieceFigure figure, Values v) {
        return engine.forecast(settings, v).of(figure, p);
    }

    private double solids(Values v) {
        return engine.sheetSolids(p, settings, v);
    }

    private void done(StageOfWork stage) {
        steps.put(stage, now);
    }

    // ------------------------------------------------------------------------------------------------ the stages

    PlannedAndMade found() {
        double fibre = fibre();
        additives();
        beating();
        vat(fibre);
        sheets();
        Mean drying = readings(Measurement.Dried.class, one -> Optional.of(one.time()));
        if (drying != null) {
            line(StageOfWork.DRYING, "time to dry", DryingSheets.DRYING, drying);
        }
        shrinking();
        Mean weight = mean(
                Measurement.Finished.class,
                one -> one.mass().value().si()
                        / (one.width().value().si() * one.height().value().si()),
                0);
        Mean thick = readings(Measurement.Finished.class, Measurement.Finished::caliper);
        Mean area = mean(
                Measurement.Finished.class,
                one -> one.width().value().si() * one.height().value().si(),
                0);
        if (weight != null) {
            line(StageOfWork.LIFT, "grammage", FinishedSheet.GRAMMAGE, weight);
        }
        if (thick != null) {
            line(StageOfWork.DENSITY, "caliper", FinishedSheet.CALIPER, thick);
        }
        Values ofSheet = now;
        counts();
        hours();
        List<PlannedAndMade.FoundOutcome> outcomes = new ArrayList<>();
        outcome(outcomes, PlannedAndMade.GRAMMAGE, FinishedSheet.GRAMMAGE, weight, null);
        size(outcomes, area);
        if (thick != null) {
            outcome(outcomes, PlannedAndMade.CALIPER, FinishedSheet.CALIPER, thick, caliperAt(ofSheet, weight));
        }
        if (drying != null) {
            outcome(outcomes, PlannedAndMade.DRYING, DryingSheets.DRYING, drying, of(DryingSheets.DRYING, ofSheet));
        }
        record.measurements(Measurement.Formed.class).stream()
                .reduce((one, other) -> other)
                .ifPresent(one -> good(outcomes, one));
        if (steps.containsKey(StageOfWork.HOURS)) {
            double made = of(PieceWork.HOURS, now);
            outcome(outcomes, PlannedAndMade.HOURS, PieceWork.HOURS, new Mean(made, 0, 1), null);
        }
        outcomes.sort(Comparator.comparing((PlannedAndMade.FoundOutcome one) -> !one.isMoreThanChance())
                .thenComparing(PlannedAndMade.FoundOutcome::insideBand)
                .thenComparingDouble(one -> -one.bands()));
        lines.sort(Comparator.comparing(PlannedAndMade.FoundLine::stage));
        return new PlannedAndMade(record.name(), lines, outcomes);
    }

    /** The caliper that sheets of the weight they came to would have: what the weight is off is no matter of density. */
    private double caliperAt(Values v, @Nullable Mean weight) {
        Values kept = now;
        now = v;
        if (weight != null) {
            ToDoubleFunction<Values> grammage = values -> of(FinishedSheet.GRAMMAGE, values);
            boolean met = meet(weight.value, k -> times(v, slots("vat.lift-factor"), k), grammage)
                    || meet(weight.value, k -> fibre(v, k), grammage);
            if (!met) {
                now = v;
            }
        }
        double expected = of(FinishedSheet.CALIPER, now);
        now = kept;
        return expected;
    }

    /** Returns how many times the fibre of the plan was weighed. */
    private double fibre() {
        double all = 0;
        double known = 0;
        Recipe recipe = batch.recipe();
        for (FibreToWeigh.Line kind : batch.fibre().kinds()) {
            double weighed = record.measurements(Measurement.FibreWeighed.class).stream()
                    .filter(one -> one.fibre().id().equals(kind.fibre().id()))
                    .mapToDouble(one -> one.asBought().value().si())
                    .sum();
            double share = recipe.furnish().share(kind.fibre()).si();
            double planned = kind.asBought().si();
            if (weighed > 0 && planned > 0) {
                double error = record.measurements(Measurement.FibreWeighed.class).stream()
                        .mapToDouble(one -> error(one.asBought()))
                        .max()
                        .orElse(0);
                line(
                        StageOfWork.FIBRE,
                        kind.fibre().id() + " weighed",
                        Kinds.MASS,
                        "g",
                        planned,
                        planned,
                        planned,
                        new Mean(weighed, error, 1));
                all += share * weighed / planned;
                known += share;
            } else {
                all += share;
            }
        }
        if (known == 0) {
            return 1;
        }
        now = fibre(now, all);
        done(StageOfWork.FIBRE);
        return all;
    }

    private void additives() {
        boolean any = false;
        for (int a = 0; a < batch.recipe().additives().size(); a++) {
            AdditiveDose dose = batch.recipe().additives().get(a);
            List<Measurement.AdditiveWeighed> portions = record.measurements(Measurement.AdditiveWeighed.class).stream()
                    .filter(one -> one.additive().name().equals(dose.additive().name()))
                    .toList();
            if (!portions.isEmpty()) {
                double weighed = portions.stream()
                        .mapToDouble(one -> one.product().value().si())
                        .sum();
                double planned = batch.additives().get(a).productInAll().si();
                line(
                        StageOfWork.ADDITIVES,
                        dose.additive().name() + " weighed",
                        Kinds.MASS,
                        "g",
                        planned,
                        planned,
                        planned,
                        new Mean(weighed, error(portions.get(0).product()), 1));
                // So many times the additive stays in the sheet as so many times its retention would leave there.
                now = times(now, new Slot[] {engine.stock(b).retention(a)}, weighed / planned);
                any = true;
            }
        }
        if (any) {
            done(StageOfWork.ADDITIVES);
        }
    }

    private void beating() {
        double longest = record.measurements(Measurement.NumberRead.class).stream()
                .mapToDouble(one -> one.beating().value().si())
                .max()
                .orElse(Double.NaN);
        List<Measurement.NumberRead> last = record.measurements(Measurement.NumberRead.class).stream()
                .filter(one -> one.beating().value().si() == longest)
                .toList();
        Mean read = last.isEmpty()
                ? null
                : Mean.of(
                        last.stream()
                                .mapToDouble(one -> one.number().value().si())
                                .toArray(),
                        error(last.get(0).number()));
        if (read == null) {
            return;
        }
        Figures likely = numbers.bands().likely();
        int at = likely.place(PreparingStock.DRAINABILITY, b);
        line(
                StageOfWork.BEATING,
                "drainability",
                Kinds.SCHOPPER_RIEGLER,
                "SR",
                likely.at(at),
                numbers.bands().low(at),
                numbers.bands().high(at),
                read);
        Values before = now;
        Slot[] rates = slots("beating.rate");
        if (meet(
                read.value,
                k -> times(before, rates, k),
                v -> engine.forecast(settings, v).of(PreparingStock.DRAINABILITY, b))) {
            done(StageOfWork.BEATING);
        }
    }

    /** What the vat has from the scale is the scale's. */
    private void vat(double fibre) {
        if (!settings.vat(p).dipped()) {
            return;
        }
        Mean read = readings(Measurement.VatStood.class, one -> Optional.of(one.consistency()));
        if (read == null) {
            return;
        }
        double planned = settings.vat(p).vat().consistency();
        Figures likely = numbers.bands().likely();
        int at = likely.place(PreparingStock.STOCK_CONSISTENCY, b);
        line(
                StageOfWork.VAT,
                "vat consistency",
                Kinds.CONSISTENCY,
                "%",
                planned,
                planned * numbers.bands().low(at) / likely.at(at),
                planned * numbers.bands().high(at) / likely.at(at),
                read);
        now = fibre(now, read.value / planned / fibre);
        done(StageOfWork.VAT);
    }

    private void sheets() {
        Mean dry = readings(Measurement.WeighedSheet.class, one -> Optional.of(one.ovenDry()));
        if (dry == null) {
            return;
        }
        Figures likely = numbers.bands().likely();
        int weight = likely.place(FinishedSheet.GRAMMAGE, p);
        double planned = solids(engine.likely());
        // It is as sure as the grammage that comes of it.
        line(
                StageOfWork.LIFT,
                "sheet oven-dry",
                Kinds.MASS,
                "g",
                planned,
                planned * numbers.bands().low(weight) / likely.at(weight),
                planned * numbers.bands().high(weight) / likely.at(weight),
                dry);
        Values before = now;
        if (meet(dry.value, k -> times(before, slots("vat.lift-factor"), k), this::solids)
                || meet(dry.value, k -> fibre(before, k), this::solids)) {
            done(StageOfWork.LIFT);
        }
        Mean couched = mean(
                Measurement.WeighedSheet.class,
                one -> one.ovenDry().value().si() / one.couched().value().si(),
                0);
        Mean wet = readings(Measurement.WeighedSheet.class, one -> Optional.of(one.couched()));
        if (couched != null && wet != null) {
            line(StageOfWork.COUCHING, "sheet as couched", FormingSheets.COUCHED, wet);
            Values lifted = now;
            double sheet = solids(lifted);
            Slot[] solids = slots("web.solids-couched");
            if (meet(
                    couched.value,
                    k -> times(lifted, solids.length > 0 ? solids : slots("web.couched-per-retention"), k),
                    v -> sheet / of(FormingSheets.COUCHED, v))) {
                done(StageOfWork.COUCHING);
            }
        }
        Mean pressed = mean(
                Measurement.WeighedSheet.class,
                one -> one.pressed()
                        .map(mass -> one.ovenDry().value().si() / mass.value().si())
                        .orElse(Double.NaN),
                0);
        if (pressed != null) {
            line(StageOfWork.PRESSING, "solids after pressing", Pressing.SOLIDS, pressed);
            Values couchedSo = now;
            Slot[] solids = slots("web.solids-pressed");
            if (meet(
                    pressed.value,
                    k -> times(couchedSo, solids.length > 0 ? solids : slots("press.factor"), k),
                    v -> of(Pressing.SOLIDS, v))) {
                done(StageOfWork.PRESSING);
            }
        }
    }

    private void shrinking() {
        Mean across = readings(Measurement.Finished.class, one -> Optional.of(one.width()));
        Mean along = readings(Measurement.Finished.class, one -> Optional.of(one.height()));
        if (across == null || along == null) {
            return;
        }
        line(StageOfWork.SHRINKING, "width", CuttingAndFolding.WIDTH, across);
        line(StageOfWork.SHRINKING, "height", CuttingAndFolding.HEIGHT, along);
        Values before = now;
        Slot[] slots = slots(
                "shrinkage.initial",
                "shrinkage.limit",
                "shrinkage.per-water-retention",
                "shrinkage.water-retention-intercept",
                "shrinkage.measured-along",
                "shrinkage.measured-across");
        if (meet(across.value * along.value, k -> times(before, slots, k), this::area)) {
            done(StageOfWork.SHRINKING);
        }
    }

    private double area(Values v) {
        Figures figures = engine.forecast(settings, v);
        return figures.of(CuttingAndFolding.WIDTH, p) * figures.of(CuttingAndFolding.HEIGHT, p);
    }

    private void counts() {
        boolean any = false;
        for (Measurement.Count one : record.measurements(Measurement.Count.class)) {
            Slot[] slots = slots(id(one.step()));
            double[] share = new double[slots.length];
            Arrays.fill(share, (double) one.rejected() / one.handled());
            now = now.with(slots, share);
            any |= slots.length > 0;
        }
        if (any) {
            done(StageOfWork.COUNTS);
        }
    }

    private static String id(Measurement.Step step) {
        return switch (step) {
            case FORMING -> "reject.forming";
            case PRESSING -> "reject.pressing";
            case DRYING -> "reject.drying";
            case SIZING -> "reject.sizing";
            case CUTTING -> "reject.cutting";
            case FOLDING_CARDS, FOLDING_ENVELOPES -> "reject.folding";
        };
    }

    private void good(List<PlannedAndMade.FoundOutcome> outcomes, Measurement.Formed one) {
        int sheets = settings.sheet(p).sheets();
        line(
                StageOfWork.COUNTS,
                "sheets formed",
                Kinds.NUMBER,
                "1",
                sheets,
                sheets,
                sheets,
                new Mean(one.sheets(), 0, 1));
        Mean good = new Mean(
                one.good(), Math.sqrt(Math.max(1, sheets * settings.sheet(p).perSheet() - one.good())), 1);
        line(StageOfWork.COUNTS, "good pieces", Rejects.GOOD, good);
        if (one.good() > 0) {
            outcome(outcomes, PlannedAndMade.GOOD, Rejects.GOOD, good, (double) one.good());
        }
    }

    private void hours() {
        boolean any = false;
        for (Measurement.Hours one : record.measurements(Measurement.Hours.class)) {
            Slot[] slots = slots(one.work().assumption());
            Mean each = new Mean(one.time().value().si() / one.count(), error(one.time()) / one.count(), 1);
            if (one.work() == Measurement.Work.FORMING) {
                Figures likely = numbers.bands().likely();
                int at = likely.place(FormingSheets.AT_VAT, p);
                int sheets = settings.sheet(p).sheets();
                line(
                        StageOfWork.HOURS,
                        one.work().word() + ", each",
                        Kinds.TIME,
                        "min",
                        likely.at(at) / sheets,
                        numbers.bands().low(at) / sheets,
                        numbers.bands().high(at) / sheets,
                        each);
            } else {
                rows.stream()
                        .filter(row -> row.id().equals(one.work().assumption()))
                        .findFirst()
                        .ifPresent(row -> line(
                                StageOfWork.HOURS,
                                one.work().word() + ", each",
                                Kinds.TIME,
                                "min",
                                row.likelySi(),
                                row.lowSi(),
                                row.highSi(),
                                each));
            }
            double[] times = new double[slots.length];
            Arrays.fill(times, each.value);
            now = now.with(slots, times);
            any |= slots.length > 0;
        }
        if (any) {
            done(StageOfWork.HOURS);
        }
    }

    // ------------------------------------------------------------------------------------------------ the end

    private void size(List<PlannedAndMade.FoundOutcome> outcomes, @Nullable Mean area) {
        if (area == null) {
            return;
        }
        Figures likely = numbers.bands().likely();
        double low = 1;
        double high = 1;
        for (PieceFigure side : List.of(CuttingAndFolding.WIDTH, CuttingAndFolding.HEIGHT)) {
            int at = likely.place(side, p);
            low *= numbers.bands().low(at);
            high *= numbers.bands().high(at);
        }
        outcomes.add(outcome(PlannedAndMade.SIZE, this::area, low, high, area, StageOfWork.SHRINKING, null));
    }

    /**
     * What explains an outcome.
     *
     * @param own the outcome with all but its own stage put in, which takes what is left; null for an outcome that has none
     */
    private void outcome(
            List<PlannedAndMade.FoundOutcome> outcomes,
            String what,
            PieceFigure figure,
            @Nullable Mean made,
            @Nullable Double own) {
        Figures likely = numbers.bands().likely();
        int at = likely.place(figure, p);
        if (made != null && likely.at(at) > 0 && Double.isFinite(likely.at(at))) {
            StageOfWork stage = switch (what) {
                case PlannedAndMade.CALIPER -> StageOfWork.DENSITY;
                case PlannedAndMade.DRYING -> StageOfWork.DRYING;
                case PlannedAndMade.GOOD -> StageOfWork.COUNTS;
                default -> StageOfWork.HOURS;
            };
            outcomes.add(outcome(
                    what,
                    v -> of(figure, v),
                    numbers.bands().low(at),
                    numbers.bands().high(at),
                    made,
                    stage,
                    own));
        }
    }

    private PlannedAndMade.FoundOutcome outcome(
            String what,
            ToDoubleFunction<Values> figure,
            double low,
            double high,
            Mean made,
            StageOfWork ownStage,
            @Nullable Double own) {
        double planned = figure.applyAsDouble(engine.likely());
        double difference = Math.log(made.value / planned);
        List<PlannedAndMade.Effect> effects = new ArrayList<>();
        double before = planned;
        @Nullable StageOfWork most = null;
        double takes = 0;
        for (Map.Entry<StageOfWork, Values> step : steps.entrySet()) {
            double after = figure.applyAsDouble(step.getValue());
            double effect = Math.log(after / before);
            before = after;
            boolean isOwn = own != null && step.getKey() == ownStage;
            if (isOwn || !Double.isFinite(effect)) {
                continue;
            }
            effects.add(new PlannedAndMade.FoundEffect(step.getKey(), Math.expm1(effect)));
            if (effect * difference > 0 && Math.abs(effect) > Math.abs(takes)) {
                takes = effect;
                most = step.getKey();
            }
        }
        if (own != null) {
            double effect = what.equals(PlannedAndMade.GOOD) ? difference : Math.log(made.value / own);
            effects.add(new PlannedAndMade.FoundEffect(ownStage, Math.expm1(effect)));
            if (effect * difference > 0 && Math.abs(effect) > Math.abs(takes)) {
                takes = effect;
                most = ownStage;
            }
        }
        double explained = difference == 0 ? 0 : takes / difference;
        double slack = 2 * made.error();
        boolean moreThanChance = Math.abs(made.value - planned) > Math.max(slack, LEAST_DIFFERENCE * planned);
        return new PlannedAndMade.FoundOutcome(
                what,
                made.value / planned - 1,
                made.value >= low - slack && made.value <= high + slack,
                moreThanChance,
                moreThanChance && explained >= LEAST_EXPLAINED ? Optional.ofNullable(most) : Optional.empty(),
                explained,
                List.copyOf(effects),
                low > 0 && low < high ? Math.abs(difference) / Math.log(high / low) : Math.abs(difference));
    }
}
