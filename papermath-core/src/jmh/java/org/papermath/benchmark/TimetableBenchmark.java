package org.papermath.benchmark;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.EnumSet;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.papermath.schedule.Chance;
import org.papermath.schedule.Phase;
import org.papermath.schedule.Resource;
import org.papermath.schedule.Task;
import org.papermath.schedule.Timetable;
import org.papermath.schedule.WorkingTime;
import org.papermath.schedule.Workload;

/**
 * The time of a timetable: ten orders of thirty tasks, which is to take less than a second, and a year of 120 of them, which is
 * to take well less than ten.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 3, time = 4)
@Fork(1)
public class TimetableBenchmark {
    private static final LocalDateTime START = LocalDateTime.of(2026, 11, 30, 9, 0);

    private final Workload ten = work(10);
    private final Workload year = work(120);
    private final Workload tenInOrder = inOrder(ten);
    private final Workload yearInOrder = inOrder(year);
    private final Timetable tenDays = Timetable.from(ten, START);

    /** Batches of a soak, a load, nine posts with their drying and sorting, and a finish: thirty tasks each. */
    private static Workload work(int batches) {
        SplittableRandom random = new SplittableRandom(batches);
        Workload.Builder work = Workload.in(
                        WorkingTime.of(Duration.ofHours(8), EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY)))
                .resource(Resource.of("person", 2))
                .resource(Resource.of("beater", 1))
                .resource(Resource.of("vat", 1))
                .resource(Resource.of("felts", 2))
                .resource(Resource.of("dryer", 6));
        for (int b = 0; b < batches; b++) {
            String batch = "batch " + b;
            work.task(Task.of(batch + " soak")
                    .group(batch)
                    .phase(hours(Phase.Kind.WAITING, "soak", 8 + random.nextInt(16)))
                    .build());
            work.task(Task.of(batch + " beat")
                    .group(batch)
                    .phase(hours(Phase.Kind.MACHINE, "beat", 2 + random.nextInt(4))
                            .holding("beater", 1))
                    .after(batch + " soak", Duration.ZERO, Duration.ofDays(7))
                    .build());
            Task.Builder finish = Task.of(batch + " finish")
                    .group(batch)
                    .phase(hours(Phase.Kind.HANDS_ON, "trim", 2).holding("person", 1));
            for (int p = 0; p < 9; p++) {
                String post = batch + " post " + p;
                work.task(Task.of(post)
                        .group(batch)
                        .phase(hours(Phase.Kind.HANDS_ON, "form", 1)
                                .holding("person", 1)
                                .holding("vat", 1)
                                .holding("felts", 1))
                        .phase(hours(Phase.Kind.MACHINE, "press", 1)
                                .unattended()
                                .holding("felts", 1))
                        .after(batch + " beat", Duration.ZERO, Duration.ofDays(14))
                        .build());
                work.task(Task.of(post + " dry")
                        .group(batch)
                        .phase(hours(Phase.Kind.WAITING, "dry", 12 + random.nextInt(24))
                                .between(Duration.ofHours(10), Duration.ofHours(48))
                                .holding("dryer", 1))
                        .after(post, Duration.ZERO, Duration.ofDays(2))
                        .build());
                work.task(Task.of(post + " sort")
                        .group(batch)
                        .phase(hours(Phase.Kind.HANDS_ON, "sort", 1).breakable().holding("person", 1))
                        .after(post + " dry")
                        .build());
                finish.after(post + " sort");
            }
            work.task(finish.build());
        }
        return work.build();
    }

    /** The same, placed once in the order of time, as plans have it. */
    private static Workload inOrder(Workload work) {
        Workload.Builder again = Workload.in(work.workingTime());
        work.resources().forEach(again::resource);
        return again.tasks(work.tasks()).inOrderOfTime().build();
    }

    private static Phase hours(Phase.Kind kind, String name, int hours) {
        Duration takes = Duration.ofHours(hours);
        return switch (kind) {
            case HANDS_ON -> Phase.handsOn(name, takes);
            case MACHINE -> Phase.machine(name, takes);
            case WAITING -> Phase.waiting(name, takes);
        };
    }

    /** Ten batches on from a day. */
    @Benchmark
    public Timetable tenBatches() {
        return Timetable.from(ten, START);
    }

    /** A year of batches on from a day. */
    @Benchmark
    public Timetable year() {
        return Timetable.from(year, START);
    }

    /** Ten batches over a month, in the order of time. */
    @Benchmark
    public Timetable tenBatchesInOrderOfTime() {
        return Timetable.from(tenInOrder, START);
    }

    /** A year of batches, in the order of time. */
    @Benchmark
    public Timetable yearInOrderOfTime() {
        return Timetable.from(yearInOrder, START);
    }

    /** Four hundred draws of ten batches. */
    @Benchmark
    public Chance chance() {
        return tenDays.chance(400, 1);
    }
}
