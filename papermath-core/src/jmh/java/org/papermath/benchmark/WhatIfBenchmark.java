package org.papermath.benchmark;

import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.percent;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.papermath.whatif.Input;
import org.papermath.whatif.Outcome;
import org.papermath.whatif.WhatIf;
import org.papermath.whatif.WhatIfTable;

/**
 * The time of a point of a what-if table, beside {@link Yardstick} in the same run. With Y for that: a point where an
 * assumption moves may take 5 Y on two cores. The one that is moved here moves the vat and all after it, the dearest there is.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 6, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class WhatIfBenchmark {
    private static final int MANY = 100_000;
    private static final int FEW = 10_000;
    private static final int READ = 1_000;

    private final YardstickJob job = new YardstickJob();

    private int next;

    /** Y: the forecast as written by hand, every time at other values. */
    @Benchmark
    public double[] yardstick() {
        next = next + 1 < job.points.size() ? next + 1 : 0;
        return job.yardstick.forecast(job.points.get(next).plain());
    }

    private static WhatIfTable lifts(WhatIf asked, int points) {
        return asked.vary(Input.lift(), percent(80), percent(120), points)
                .show(Outcome.grammage("leaflet"), Outcome.caliper("tag"))
                .table();
    }

    /** A point with the settings held, of a table of 100 000. */
    @Benchmark
    @OperationsPerInvocation(MANY)
    public WhatIfTable held() {
        return lifts(WhatIf.settingsHeld(job.order, job.studio), MANY);
    }

    /** The same of a table of 10 000. */
    @Benchmark
    @OperationsPerInvocation(FEW)
    public WhatIfTable heldFew() {
        return lifts(WhatIf.settingsHeld(job.order, job.studio), FEW);
    }

    /** A point with settings decided anew, of a table of 100 000. */
    @Benchmark
    @OperationsPerInvocation(MANY)
    public WhatIfTable decidedAnew() {
        return lifts(WhatIf.decidedAnew(job.order, job.studio), MANY);
    }

    /** A point for which the order is read anew, of a table of 1 000. */
    @Benchmark
    @OperationsPerInvocation(READ)
    public WhatIfTable readAnew() {
        return WhatIf.decidedAnew(job.order, job.studio)
                .vary(Input.beating("grey"), hours(1), hours(6), READ)
                .show(Outcome.grammage("leaflet"), Outcome.caliper("tag"))
                .table();
    }
}
