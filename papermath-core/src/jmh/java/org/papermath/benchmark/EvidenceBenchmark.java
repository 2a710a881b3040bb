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
import org.openjdk.jmh.infra.Blackhole;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.drying.DryingModel;
import org.papermath.equation.ShrinkageLaw;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Role;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.press.PressingModel;
import org.papermath.pulp.BeatingState;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Solids;
import org.papermath.quantity.WaterRetention;
import org.papermath.sheet.CouchedSheet;
import org.papermath.sheet.DensityModel;
import org.papermath.sheet.FormedSheet;
import org.papermath.sheet.PressedSheet;
import org.papermath.sheet.ShrinkageModel;

/**
 * One row into a store, and models with their bands beside the evaluations a band takes: one at the likely values, and
 * one at either end of every assumption. A band may take at most five times as long as those.
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
    private final BeatingState beaten = BeatingState.after(store, rag, "", hours(3));
    private final int pressings =
            evaluations(Scope.GENERAL, "press.factor", "press.exponent", "press.floor", "press.time-constant");
    private final int dryings =
            evaluations(Scope.GENERAL, "drying.film-still", "drying.radiative", "drying.lewis", "drying.loft-tail");
    private final int shrinkages =
            evaluations(rag.scope(), "shrinkage.initial", "shrinkage.limit", "shrinkage.direction-difference");
    private final int densities = evaluations(
            rag.scope(),
            "sheet.density-unbeaten",
            "sheet.density-long-beaten",
            "sheet.density-exponent",
            "sheet.density-saturation-pressure",
            "sheet.thinnest");

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

    /** Presses as often as a band of it has to, the model made anew each time. */
    @Benchmark
    public void pressEvaluations(Blackhole sink) {
        for (int i = 0; i < pressings; i++) {
            sink.consume(PressingModel.from(store, Scope.GENERAL)
                    .press(couched, retention, pressure, minutes(10))
                    .solids());
        }
    }

    /** The solids after pressing with their band. */
    @Benchmark
    public Estimate<Solids> pressBand() {
        return PressingModel.from(store, Scope.GENERAL).solids(couched, retention, pressure, minutes(10));
    }

    /** Dries as often as a band of it has to, the model made anew each time. */
    @Benchmark
    public void dryEvaluations(Blackhole sink) {
        for (int i = 0; i < dryings; i++) {
            sink.consume(DryingModel.from(store, Scope.GENERAL)
                    .dry(boards, batch, room)
                    .hours());
        }
    }

    /** The time to dry with its band. */
    @Benchmark
    public Estimate<Time> dryBand() {
        return DryingModel.from(store, Scope.GENERAL).time(boards, batch, room);
    }

    /** The free shrinkage of rag both ways, from the store to the amount, as often as the two bands of it have to. */
    @Benchmark
    public void shrinkEvaluations(Blackhole sink) {
        for (int i = 0; i < shrinkages; i++) {
            for (int way = 0; way < 2; way++) {
                double free = new ShrinkageLaw.Ends(
                                store.si("shrinkage.initial", rag.scope()), store.si("shrinkage.limit", rag.scope()))
                        .free(beaten.of(rag.scope()).si());
                ShrinkageLaw law = new ShrinkageLaw(
                        store.si("shrinkage.onset", rag.scope()),
                        store.si("shrinkage.direction-difference", rag.scope()));
                sink.consume(Kinds.LINEAR_SHRINKAGE.ofSi(law.directions(free)[way], "%"));
            }
        }
    }

    /** The free shrinkage of rag, which always has its two bands. */
    @Benchmark
    public ShrinkageModel.Result shrinkBand() {
        return ShrinkageModel.from(store, rag).free(beaten);
    }

    /** The density of rag as often as the bands of density, caliper and grammage have to, the model made anew. */
    @Benchmark
    public void densityEvaluations(Blackhole sink) {
        for (int i = 0; i < densities; i++) {
            for (int figure = 0; figure < 3; figure++) {
                sink.consume(DensityModel.from(store, rag).density(pressure, beaten));
            }
        }
    }

    /** Density, caliper and grammage of a sheet of rag, which always have their bands. */
    @Benchmark
    public DensityModel.Result densityBand() {
        return DensityModel.from(store, rag).of(Grammage.gsm(130), pressure, beaten);
    }

    /** The evaluations a band takes: the likely one, and one at either end of every assumption that has a band. */
    private int evaluations(Scope scope, String... ids) {
        int evaluations = 1;
        for (String id : ids) {
            Assumption one = store.get(id, scope);
            evaluations += one.role() == Role.PHYSICAL && one.low() < one.high() ? 2 : 0;
        }
        return evaluations;
    }
}
