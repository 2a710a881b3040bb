package org.papermath.benchmark;

import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;

import java.util.concurrent.TimeUnit;
import javax.measure.quantity.Time;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.drying.DryingModel;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.press.PressingModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Solids;
import org.papermath.quantity.WaterRetention;
import org.papermath.sheet.CouchedSheet;
import org.papermath.sheet.FormedSheet;
import org.papermath.sheet.PressedSheet;
import org.papermath.sheet.ShrinkageModel;

/**
 * One row into a store, and models with their bands beside one evaluation of the same: the band may cost at most five
 * times its 2k + 1 evaluations, for the k assumptions it varies.
 */
@State(org.openjdk.jmh.annotations.Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class EvidenceBenchmark {
    private final Assumptions store = Assumptions.standard();
    private final Assumption row = store.get("press.factor", Scope.GENERAL).given(Scope.at("big press"), 1);
    private final CouchedSheet couched =
            FormedSheet.of(grams(10), mm(300), mm(400)).couched();
    private final Amount<WaterRetention> retention = WaterRetention.gramsPerGram(1.5);
    private final Amount<SheetPressure> pressure = Kinds.SHEET_PRESSURE.of(0.345, "MPa");
    private final PressedSheet pressed = couched.pressed(Solids.percent(33));
    private final Air room = Air.of(celsius(18), RelativeHumidity.percent(58));
    private final Dryer boards = Dryer.boards("boards", 24);
    private final DryingModel.Batch batch = DryingModel.standard().batch(pressed, 24, SorptionModel.standard(), room);
    private final Furnish rag = Furnish.of(Fibres.COTTON_RAG);

    /** Lays one row over the shipped table. */
    @Benchmark
    public Assumptions oneRow() {
        return store.with(row);
    }

    /** Looks a value up that stands in the general scope, from a narrow one that is made anew. */
    @Benchmark
    public Assumption lookUp() {
        return store.get("press.factor", Scope.at("big press"));
    }

    /** Presses at the likely values, the model made anew. */
    @Benchmark
    public Amount<Solids> press() {
        return PressingModel.from(store, Scope.GENERAL)
                .press(couched, retention, pressure, minutes(10))
                .solids();
    }

    /** The same with its band, of four assumptions. */
    @Benchmark
    public Estimate<Solids> pressBand() {
        return PressingModel.from(store, Scope.GENERAL).solids(couched, retention, pressure, minutes(10));
    }

    /** Dries at the likely values, the model made anew. */
    @Benchmark
    public Amount<Time> dry() {
        return DryingModel.from(store, Scope.GENERAL).dry(boards, batch, room).hours();
    }

    /** The same with its band, of four assumptions. */
    @Benchmark
    public Estimate<Time> dryBand() {
        return DryingModel.from(store, Scope.GENERAL).time(boards, batch, room);
    }

    /** The free shrinkage of rag, which always has its band. */
    @Benchmark
    public Estimate<LinearShrinkage> shrinkBand() {
        return ShrinkageModel.from(store, rag).free(hours(3)).along();
    }
}
