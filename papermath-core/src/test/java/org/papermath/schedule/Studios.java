package org.papermath.schedule;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.EnumSet;
import java.util.SplittableRandom;

/** Days of work like those of a studio, by seed. */
final class Studios {
    static final WorkingTime WEEK = WorkingTime.builder()
            .on(EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY), LocalTime.of(9, 0), LocalTime.of(12, 30))
            .on(EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY), LocalTime.of(13, 0), LocalTime.of(17, 0))
            .build();
    static final LocalDateTime MONDAY = LocalDateTime.of(2026, 11, 30, 9, 0);

    private Studios() {}

    private static Duration minutes(long minutes) {
        return Duration.ofMinutes(minutes);
    }

    /**
     * Batches of soaking, beating, some posts formed, pressed and dried, and finishing; one or two persons, one beater,
     * one vat, felts for one post, a press, places in the dryer. Durations go in steps of a quarter of an hour.
     */
    static Workload any(long seed, int mostBatches) {
        SplittableRandom random = new SplittableRandom(seed);
        int batches = 1 + random.nextInt(mostBatches);
        int posts = 1 + random.nextInt(3);
        Workload.Builder work = Workload.in(WEEK)
                .resource(Resource.of("person", 1 + random.nextInt(2)))
                .resource(Resource.of("beater", 1))
                .resource(Resource.of("vat", 1))
                .resource(Resource.of("felts", 1))
                .resource(Resource.of("press", 1))
                .resource(Resource.of("dryer", 2 + random.nextInt(3)));
        for (int b = 0; b < batches; b++) {
            batch(work, random, "batch " + b, posts);
        }
        return work.build();
    }

    static void batch(Workload.Builder work, SplittableRandom random, String batch, int posts) {
        work.task(Task.of(batch + " soak")
                .group(batch)
                .phase(Phase.handsOn("weigh", minutes(15)).holding("person", 1))
                .phase(Phase.waiting("soak", minutes(60L * (8 + random.nextInt(16)))))
                .build());
        long beat = 15L * (8 + random.nextInt(17));
        work.task(Task.of(batch + " beat")
                .group(batch)
                .together("rag")
                .phase(Phase.handsOn("load", minutes(30)).holding("person", 1).holding("beater", 1))
                .phase(Phase.machine("beat", minutes(beat))
                        .between(minutes(beat - beat / 4), minutes(beat + beat / 2))
                        .holding("beater", 1))
                .phase(Phase.handsOn("empty", minutes(15)).holding("person", 1).holding("beater", 1))
                .after(batch + " soak", Duration.ZERO, Duration.ofDays(3))
                .build());
        for (int p = 0; p < posts; p++) {
            String post = batch + " post " + p;
            work.task(Task.of(post)
                    .group(batch)
                    .phase(Phase.handsOn("form", minutes(15L * (3 + random.nextInt(6))))
                            .holding("person", 1)
                            .holding("vat", 1)
                            .holding("felts", 1))
                    .phase(Phase.machine("press", minutes(30))
                            .unattended()
                            .holding("press", 1)
                            .holding("felts", 1))
                    .phase(Phase.handsOn("part", minutes(15))
                            .holding("person", 1)
                            .holding("felts", 1)
                            .holding("press", 1))
                    .after(batch + " beat", Duration.ZERO, Duration.ofDays(4))
                    .build());
            long dry = 60L * (12 + random.nextInt(30));
            work.task(Task.of(post + " dry")
                    .group(batch)
                    .phase(Phase.handsOn("hang", minutes(15))
                            .holding("person", 1)
                            .holding("dryer", 1))
                    .phase(Phase.waiting("dry", minutes(dry))
                            .between(minutes(dry - dry / 4), minutes(dry + dry / 2))
                            .holding("dryer", 1))
                    .phase(Phase.handsOn("take down", minutes(15))
                            .holding("person", 1)
                            .holding("dryer", 1))
                    .after(post, Duration.ZERO, Duration.ofHours(20))
                    .build());
        }
        Task.Builder finish = Task.of(batch + " finish")
                .group(batch)
                .phase(Phase.handsOn("trim", minutes(15L * (4 + random.nextInt(20))))
                        .breakable()
                        .holding("person", 1));
        for (int p = 0; p < posts; p++) {
            finish.after(batch + " post " + p + " dry");
        }
        work.task(finish.build());
    }
}
