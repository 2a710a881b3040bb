package org.papermath.benchmark;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.papermath.card.MakingCard;
import org.papermath.engine.Engine;
import org.papermath.engine.Figures;
import org.papermath.engine.Settings;
import org.papermath.plan.MakingPlan;

/**
 * A plan and the parts it is made of beside {@link Yardstick}, the same forecast written by hand for this one order, in
 * the same run. With Y for the time of the yardstick: a forecast may take 2 Y, a bare plan 20 Y, a plan with bands
 * 110 Y. The small collector is asked for, so that no other thread of the machine takes part of the time.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 12, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(
        value = 2,
        jvmArgsAppend = {"-XX:+UseSerialGC", "-Xmx1g"})
public class PlanBenchmark {
    private final YardstickJob job = new YardstickJob();

    private int next;

    /** Refuses to go on where yardstick and engine do not give the same. */
    @Setup
    public void compare() {
        List<String> differences = job.differences();
        if (!differences.isEmpty()) {
            throw new IllegalStateException(String.join(System.lineSeparator(), differences));
        }
    }

    private YardstickJob.Point point() {
        next = next + 1 < job.points.size() ? next + 1 : 0;
        return job.points.get(next);
    }

    /** Y: the forecast as written by hand, every time at other values. */
    @Benchmark
    public double[] yardstick() {
        return job.yardstick.forecast(point().plain());
    }

    /** The forecast of the engine at the same values, of a job that was read once. */
    @Benchmark
    public Figures forecast() {
        return job.engine.forecast(job.settings, point().values());
    }

    /** Reads the job. */
    @Benchmark
    public Engine read() {
        return Engine.of(job.order, job.studio);
    }

    /** Decides what to do. */
    @Benchmark
    public Settings decide() {
        return job.engine.decide(job.engine.likely());
    }

    /** Plans at the likely values only. */
    @Benchmark
    public MakingPlan bare() {
        return MakingPlan.withoutBands(job.order, job.studio);
    }

    /** Plans with bands. */
    @Benchmark
    public MakingPlan withBands() {
        return MakingPlan.of(job.order, job.studio);
    }

    /** Plans with bands and reads every notice and the card. */
    @Benchmark
    public String withBandsAndCard() {
        return MakingCard.of(MakingPlan.of(job.order, job.studio)).toString();
    }
}
